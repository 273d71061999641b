### Lo que dará una bandeja.

forecast_heading = Qué esperar
forecast_too_early = demasiado pronto para decir
forecast_on_its_way = va bien
forecast_slow = lenta, y todavía nace
forecast_failing = está fallando
forecast_finished = terminó de nacer
because_before_day = si viene como debe no se sabe antes del { $day }
because_not_counted = nadie ha contado desde que algo podía haber nacido: cuéntela
because_up = { $emerged } nacidas el { $day }, para entonces debían ser cerca de { $due } y en total se esperaban { $expected }
because_will_be = { $seedlings } hasta el { $day }, el último día de la especie
because_over = el último día de la especie fue el { $day }, y nadie contó desde entonces: cuente primero
because_quiet = nada nuevo en { $days } d, bastan { $needed } d
because_little = { $seedlings } por nacer
because_several = { $sowings ->
    [one] { $sowings } siembra
   *[other] { $sowings } siembras
} en una bandeja, pronosticadas juntas; de las brotadas, vienen { $seedlings } de la siembra del { $day }
because_not_apart = lo que los conteos no distinguen bien
because_deaths = desaparecieron plántulas sin que nadie lo viera, así que pueden haber nacido más
seedlings_count = { $n ->
    [one] { $n } plántula
   *[other] { $n } plántulas
}
seedlings_between = { $low } a { $high } plántulas, lo probable { $likely }
label_sowing = siembra
label_in_the_end = al final
label_last_to_come = últimas
label_waiting = esperar
label_sow_again = ¿resembrar?
label_will_give = dará
will_give_fewer = { $said }; ya sin lo que se pierde hasta entonces
will_give_more = { $said }; las más pequeñas crecen hasta entonces
label_known_here = sabido aquí
label_worth = vale
forecast_in_the_end = { $seedlings } de { $seeds } semillas, con { $RANGE_LEVEL } % de seguridad
forecast_last_day = el { $day }
forecast_wait_until = hasta el { $day }; después desocupe la mesa
forecast_waited = ya no: desde el { $day } casi nada queda por nacer, desocupe la mesa
again_fewer = esta siembra da cerca de { $missing ->
    [one] { $missing } plántula
   *[other] { $missing } plántulas
} menos de lo esperado
again_missing = { $missing ->
    [one] faltará cerca de { $missing } planta
   *[other] faltarán cerca de { $missing } plantas
}
again_same = resembrada hasta el { $by } todavía sale en las lluvias que son seguras hasta el { $safe } ({ $days } d desde la siembra)
again_later = tarde para las lluvias que son seguras hasta el { $missed } (el último día fue el { $was }); sembrada hasta el { $by } sale en las seguras hasta el { $safe } ({ $days } d desde la siembra)
again_too_late = tarde para las lluvias que son seguras hasta el { $missed }: el último día fue el { $was } ({ $days } d desde la siembra)
again_no_rains = no hay lluvias descritas, así que no se sabe el último día; tarda { $days } d desde la siembra
stock_line = { $plants } con tamaño para salir
stock_about = { $plants } con tamaño para salir, hacia { $month } (entre el { $low } y el { $high })
stock_on = { $plants } con tamaño para salir, { $day }
stock_not_dated = { $plants } con tamaño para salir; cuándo nadie lo sabe, falta la edad
stock_waits = { $plants } con tamaño para salir; cuándo nadie lo sabe, le falta: { $what }
learned_days = días hasta salir al campo
learned_germination = germinación
learned_survival = viven hasta salir del vivero
learned_culls = descartadas al clasificar
learned_both = { $what }: manual { $handbook }; aquí { $here } de { $trays ->
    [one] { $trays } bandeja
   *[other] { $trays } bandejas
}; se usa { $used }
learned_between = { $figure } ({ $low } a { $high })
learned_here = { $what }: aquí { $here } de { $trays ->
    [one] { $trays } bandeja
   *[other] { $trays } bandejas
}
learned_handbook = { $what }: manual { $handbook }
learned_open = { $trays ->
    [one] { $trays } bandeja aún no ha llegado a eso
   *[other] { $trays } bandejas aún no han llegado a eso
}
learned_heading = El manual y este vivero
learned_ignored = Los registros propios de este vivero se dejan de lado: solo vale el manual.
learned_days_of = { $days } d
stock_coming_heading = Lo que viene
coming_month = { $month } { $year }: { $plants } ({ $trays ->
    [one] { $trays } bandeja
   *[other] { $trays } bandejas
})
stock_coming_undated = sin día conocido: { $plants } ({ $trays ->
    [one] { $trays } bandeja
   *[other] { $trays } bandejas
})
worth_heading = Lo que más vale mirar
worth_line = { $what }: { $minutes } min, de eso dependen { $plants } plantas
worth_said = { $task }: { $chance } lo que se hace; de eso dependen { $plants } plantas, { $minutes } min
chance_probably = probablemente cambia
chance_may_well = bien puede cambiar
chance_may = puede cambiar
chance_hardly = apenas cambia
worth_reckoning = { $task }: probabilidad { $chance } de que cambie lo que se hace x { $plants } plantas x cercanía { $near } / { $minutes } min = { $saved } plantas por minuto
worth_by = hay que decidir hasta el { $day }
round_sow_again = { $up }; { $will }
round_sow_again_lot = salió de { $lot }: pruebe antes ese lote, o consiga semilla fresca
round_sow_again_fresh = consiga semilla fresca: ningún lote de aquí está dentro de su vida
label_formula = fórmula
label_beforehand = antes
forecast_formula = nacidas el día t después de sembrar: d / (1 + exp(-b (ln t - ln t50))), lo probable d { $d }, b { $b }, t50 { $t50 } d; cuántas faltan se suma sobre todas las curvas que los conteos dejan como probables
forecast_formula_several = de varias siembras cada una empieza en su día, y d es la media de todas las semillas
forecast_beforehand = la mitad nacida en { $half } d ({ $low } a { $high }), nace { $share } ({ $share_low } a { $share_high }), con { $RANGE_LEVEL } % de seguridad: por los días y la germinación de la especie, luego lo que este vivero sembró antes y lo que se sabe del lote
forecast_beforehand_learned = { $sowings ->
    [one] incluye { $sowings } siembra anterior de aquí
   *[other] incluye { $sowings } siembras anteriores de aquí
}
forecast_source = Ritz, Pipper & Streibig 2013, European Journal of Agronomy 45:1 (de memoria); lo sabido de antes y el juicio: nuestros, con práctica común para el { $SOW_AGAIN_SHARE } % en el día medio, los días quietos y el { $WORTH_WAITING_SHARE } %
stock_formula = { $from } en pie y por nacer x { $survival } que siguen vivas x (1 - { $culls } descartadas al clasificar)
stock_formula_ready = lo que hoy ya tiene tamaño
stock_source = práctica común para supervivencia y descarte; lo que enseñó este vivero: producto límite, Kaplan & Meier 1958 (de memoria); el manual pesa como cinco bandejas (nuestro)
