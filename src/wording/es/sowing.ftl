### Cuántas semillas sembrar.

sowing_heading = Cuántas sembrar para { $plants ->
    [one] { $plants } planta
   *[other] { $plants } plantas
}
sowing_for_open = { $places ->
    [one] { $places } lugar está abierto en las parcelas que la planean
   *[other] { $places } lugares están abiertos en las parcelas que la planean
}
sowing_net = hacen falta { $needed }, de lo que está en bandeja o sembrado saldrán unas { $coming } ({ $low } a { $high }): { $still ->
    [one] falta criar { $still }
   *[other] falta criar { $still }
}
sowing_met = No hay que sembrar: hacen falta { $needed }, y de lo que está en bandeja o sembrado saldrán unas { $coming } ({ $low } a { $high })
sowing_gross = si no hubiera nada en bandeja: { $seeds ->
    [one] { $seeds } semilla
   *[other] { $seeds } semillas
} para todas: { $needed }
sowing_none_open = ninguna parcela tiene un lugar abierto: pregunte con --plants
sowing_number = { $seeds ->
    [one] { $seeds } semilla
   *[other] { $seeds } semillas
} para { $wanted ->
    [one] { $wanted } planta
   *[other] { $wanted } plantas
}, con { $sure } de seguridad; dividir por { $success } daría cerca de { $divided } y fallaría cerca de { $fails }
sowing_fails_share = { $share } de las veces
sowing_fails_half = la mitad de las veces
sowing_label_comes_up = sale
sowing_label_becomes = llega a planta
sowing_label_weight = peso
sowing_label_left = en el lote
sowing_label_containers = envases
sowing_comes_up = { $share } de la semilla: el manual
sowing_and_sowings = { $sowings ->
    [one] { $sowings } siembra de aquí
   *[other] { $sowings } siembras de aquí
}
sowing_and_test = la prueba del lote, { $germinated } de { $seeds }
sowing_and_kept = de lo que vivía entonces queda { $share }
sowing_and_life_unknown = nadie sabe cuánta vive todavía: esto es de semilla fresca
sowing_becomes = { $share } de las plántulas: descartes y pérdidas usuales
sowing_becomes_here = { $share } de las plántulas: descartes y pérdidas usuales, { $trays ->
    [one] { $trays } bandeja terminada de aquí
   *[other] { $trays } bandejas terminadas de aquí
} (salieron { $good }, perdidas o descartadas { $bad })
sowing_weighs = cerca de { $weight }
sowing_weighs_between = de { $low } a { $high }, según lo que pese su semilla: pese cien
sowing_grams = { $grams } g
sowing_kilograms = { $kilograms } kg
sowing_weight_unknown = no se sabe: no está anotado cuántas semillas tiene un kilogramo
sowing_left_enough = quedan { $seeds }: alcanza
sowing_left_short = quedan { $seeds }: faltan { $missing }; todas juntas alcanzarían { $share } de las veces
sowing_if_tested = pruébela primero: si { $tests } germinan como se espera, bastan { $seeds }
sowing_one_each = { $containers } con una semilla cada uno
sowing_several = o { $containers } con { $each } semillas cada uno ({ $seeds } semillas), raleando a una
sowing_seedbed = sembrar en semillero; { $containers } para las plántulas que se repican
sowing_too_poor = o semillero y { $containers } para repicar: salen tan pocas que ni { $MOST_EACH } en cada uno bastan
sowing_formula = el menor n con P(plantas >= deseadas) >= seguridad; lo que sale y lo que llega a planta son distribuciones beta, así que las plantas son una mezcla de binomiales
sowing_source = Skellam 1948, beta-binomial (de memoria); semillas por envase: Dumroese, Luna y Landis 2009, Manual de agricultura 730 del USDA (de memoria); pesos de lo que se cree: nuestros
sowing_unknown_species = No se puede decir cuántas sembrar: no se conoce la especie de este lote
sowing_dead = Sin número: no se espera que viva nada de la semilla. Consiga semilla fresca. { $cut }
cut_some_open = Abra diez con cuchillo: firme y clara por dentro vive; café, seca, babosa o vana está muerta
sowing_life_unknown = Sin número: nadie sabe cuánta de este lote vive todavía. Pruébela, o anote cómo se guardó. De semilla fresca bastarían { $fresh } para { $plants ->
    [one] { $plants } planta
   *[other] { $plants } plantas
}
sowing_too_many_late = Sin número: habría que sembrar más de { $times } semillas por planta, y antes de que una prueba diga algo se acaba su vida. Siembre ya lo que viva y consiga semilla fresca. { $cut }
sowing_too_many = Sin número: habría que sembrar más de { $times } semillas por planta. Pruébela o consiga semilla fresca
sowing_too_many_tested = Sin número: según su prueba habría que sembrar más de { $times } semillas por planta. Consiga semilla fresca
sowing_too_many_unsure = Sin número seguro: se sabe tan poco de cuánta sale que habría que sembrar más de { $times } semillas por planta. Pruébela o consiga semilla fresca. Si es tan buena como de costumbre, { $seeds } semillas dan { $plants } la mitad de las veces
sowing_wrong = No se puede decir cuántas sembrar: { $why }
sowing_wrong_sure = --sure es un porcentaje mayor que 0 y menor que 100
sowing_wrong_plants = --plants es 1 o más
