### Lotes de semilla: qué valen todavía.

lot_heading = Lote { $lot }, { $species }
lot_none_left = según el libro no queda nada
lot_label_left = queda
lot_label_kept = guardado
lot_label_life = vida
lot_label_alive = viva hoy
lot_label_sown = sembrado de él
lot_sown_from = { $tray }: nacieron { $up } de { $seeds }
lot_label_old = baja al { $OLD_SHARE } %
lot_label_half = baja a la mitad
lot_label_reckoned = cálculo
lot_label_test = prueba
lot_label_retest = probar otra vez
lot_left_about = unas { $seeds }
lot_left_unknown = nadie sabe cuántas
lot_kept_since = { $kept } desde el { $day }
lot_collected = cosechado el { $day }, hace { $days } d
lot_moisture = humedad { $percent }
lot_temperature = { $celsius } °C
lot_life_left = vive { $life } d desde el { $day }: { $days ->
    [0] hoy es el último día
    [one] queda { $days } día, hasta el { $last }
   *[other] quedan { $days } días, hasta el { $last }
}
lot_life_left_collected = vive { $life } d desde la cosecha, el { $day }: { $days ->
    [0] hoy es el último día
    [one] queda { $days } día, hasta el { $last }
   *[other] quedan { $days } días, hasta el { $last }
}
lot_life_killed = terminó el { $day }: el frío bajo { $celsius } °C la mata
lot_life_over = vive { $life } d desde el { $day }: se acabó el { $last }, hace { $days ->
    [one] { $days } día
   *[other] { $days } días
}
lot_life_over_collected = vive { $life } d desde la cosecha, el { $day }: se acabó el { $last }, hace { $days ->
    [one] { $days } día
   *[other] { $days } días
}
lot_life_not_received = no se sabe: nadie anotó que llegó este lote
lot_life_no_species = no se sabe: aquí no se conoce su especie
lot_life_no_figure = no se sabe: la ficha no da días para semilla guardada { $kept }
lot_verdict_hardly = casi nada de la semilla vive hoy, cerca del { $share }. Consiga semilla fresca
lot_verdict_good = se espera que hoy viva { $share } de la semilla
lot_verdict_ending = hay que sembrarla ya, su vida termina el { $day }: se espera que hoy viva cerca de { $share }
lot_verdict_killed = muerta: el frío bajo { $celsius } °C la mata, y así estuvo desde el { $day }. Consiga semilla fresca
lot_verdict_dead = muerta por lo que se sabe de su vida. Consiga semilla fresca. { $cut }
lot_verdict_tested_dead = muerta según su prueba: de { $seeds } no nació ninguna hasta el { $day }. { $cut }; descártela si ninguna vive, y consiga semilla fresca
lot_verdict_past_short = pasó su vida indicada, y una prueba tarda demasiado. { $cut }; siembre ya lo que viva o consiga semilla fresca
lot_verdict_past = pasó su vida indicada: pruébela, o siembre ya el resto bien tupido
lot_verdict_unknown = no se sabe cuánta vive hoy: pruébela, o anote cómo se guardó
lot_alive_about = cerca de { $share }
lot_alive_unsaid = entre { $low } y { $high }, porque falta anotar cómo se guardó
lot_life_unsaid = vive de { $short } a { $long } d desde el { $day }, según cómo se guardó, lo que falta anotar
lot_alive = { $share } ({ $low } a { $high })
lot_from_test = de { $share } ({ $low } a { $high }) en la prueba puesta el { $day }
lot_from_arrival = de { $share } anotado al llegar, el { $day }
lot_from_handbook = de { $share } de la semilla fresca según el manual, el { $day }: nunca se probó
lot_falls_in = en cerca de { $days ->
    [one] { $days } día
   *[other] { $days } días
} ({ $low } a { $high }): { $share }
lot_falls_already = ya: { $share } o menos
lot_by_equation = v = Ki - p / sigma; con { $moisture } de humedad y { $celsius } °C el probit baja uno en { $sigma } d
lot_by_cold = el frío mata la semilla de esta especie
lot_by_equation_outside = la humedad o la temperatura sale de lo que vale la ecuación (5 a 25 %, -20 a 90 °C): léalo con duda
lot_by_equation_source = Ellis y Roberts 1980, Annals of Botany 45:13; constantes de { $species }: { $paper }
lot_by_life = pareja por un tiempo y luego baja (probits en el tiempo, Ellis y Roberts 1980): tras { $life } d se ha ido la mitad, que pueden ser la mitad o el doble de días, con dispersión de { $spread } (nuestro)
lot_by_life_store = para esta especie hay una ecuación, para semilla en envase cerrado con humedad y temperatura anotadas
lot_no_start = no se sabe: no hay prueba ni cifra de semilla fresca
lot_no_figures = no se sabe: no hay constantes de esta especie ni días para como se guarda
lot_no_store = no se sabe: hay constantes de esta especie, pero no está anotada la humedad o la temperatura
lot_open_air = no se sabe: las constantes de esta especie son para semilla en envase cerrado, y al aire vuelve a tomar humedad: pruébela
lot_outlived = no se sabe: vivía pasado el doble de su vida indicada; solo una prueba lo dice
lot_tested = { $day }: { $germinated } de { $seeds }, { $share } ({ $low } a { $high }, con { $TEST_LEVEL } % de seguridad)
lot_tested_short = { $day }: { $germinated } de { $seeds } a { $days ->
    [one] { $days } día
   *[other] { $days } días
}, muy pronto para saber: vive al menos { $share }; hay que contar hasta el { $until }
lot_replicates_agree = las repeticiones { $counts } concuerdan
lot_replicates_apart = las repeticiones { $counts } se apartan más de lo que explica el azar
lot_replicates_cannot_tell = repeticiones { $counts }: muy pocas semillas para decir si concuerdan
lot_replicates_most = diferencia { $range } de { $most } que se tolera
lot_replicates_chance = por azar { $chance } de las veces
lot_never_tested = nunca se probó
lot_retest_due = toca desde el { $day }: { $why }
lot_retest_later = el { $day }: { $why }
lot_retest_never = { $days } d desde la cosecha sin prueba
lot_retest_old = { $days } d desde la última prueba
lot_retest_falling = un tercio del camino al { $OLD_SHARE } % del comienzo, { $days } d tras la última prueba o la cosecha
lot_retest_apart = las repeticiones de la última prueba no concuerdan
lot_retest_too_late = no: una prueba tarda cerca de { $days } días, más de lo que vive. { $cut }; siembre ya lo que viva hoy, o consiga semilla fresca
lot_retest_tested_dead = no: muerta según su prueba
lot_retest_killed = no: la mató el frío
lot_retest_few = no: quedan { $seeds }, una prueba toma { $TEST_SEEDS }: abra algunas con cuchillo
lot_retest_unknown_seeds = no se dice: nadie sabe cuántas semillas quedan
lot_retest_no_day = no se dice: ni la cosecha ni una prueba tienen fecha
lot_retest_source = práctica común: 2 x 25 semillas, cada { $TEST_AFTER_DAYS } días (nuestro); donde se calcula la pérdida, un tercio de los días al { $OLD_SHARE } %, FAO 2014, Normas para bancos de germoplasma (de memoria)
round_replicates_apart = las repeticiones de la prueba de hace { $days ->
    [one] { $days } d
   *[other] { $days } d
} no concuerdan: probar otra vez
help_why_lot = Qué vale todavía un lote de semilla, y cuántas sembrar
help_why_lot_lot = El código de su bolsa
help_why_lot_plants = Cuántas sembrar para tantas plantas; sin esto, para los lugares abiertos en las parcelas
help_why_lot_sure = Con qué seguridad, en por ciento; 95 si no se dice
help_why_lot_all = También de qué se calcula: fórmulas, cifras, fuentes
help_why_species = Lo que este vivero sabe de una especie, lo que viene de ella y cuántas sembrar sin lote
help_why_species_species = Su nombre
help_why_species_plants = Cuántas sembrar para tantas plantas; sin esto, para los lugares abiertos en las parcelas
help_why_species_sure = Con cuánta seguridad, en por ciento; 95 si no se dice
help_why_species_all = También de qué se calcula: fórmulas, cifras, fuentes
help_value_lot = LOTE
help_value_plants = PLANTAS
help_value_sure = PORCENTAJE
