match_heading = { $plants ->
    [one] Sale { $plants } planta, en { $trips } viajes, en las { $weeks } semanas desde el { $day }
   *[other] Salen { $plants } plantas, en { $trips } viajes, en las { $weeks } semanas desde el { $day }
}
match_living = unas { $living } de ellas viven un año después, si todo va como suele
match_proven = Ningún plan hace vivir más plantas.
match_best_so_far = { $plants ->
    [one] El mejor plan hallado en este tiempo; ninguno es mejor en más de { $plants } planta.
   *[other] El mejor plan hallado en este tiempo; ninguno es mejor en más de { $plants } plantas.
}
match_nothing = En estas semanas no puede salir nada.
match_given_up = { $plants } plantas menos de las que podrían salir, para caminar { $trips } viajes menos
match_no_hands = Nadie anotó cuántas plantas se siembran al día: aquí las manos no limitan nada. Anótelo con el lugar del vivero: outplant write nursery_set --help
match_hands = manos para { $day } plantas al día, { $week } a la semana
match_week = del { $first } al { $last }
match_load_from = { $tray } ({ $species }): { $plants }, desde el { $day }
match_first = antes: { $list }
match_pinned = dicho a mano
match_left_heading = Lo que se queda
match_left = { $plants }: { $cause }
match_empty_heading = Lo que queda vacío
match_bed_species = { $bed }, { $species }
match_positions = { $positions ->
    [one] { $positions } hoyo
   *[other] { $positions } hoyos
}
match_cause_no_bed = ninguna parcela tiene esta especie en su plan
match_cause_work = no quedan manos en las semanas en que podría salir
match_cause_work_of_bed = no quedan manos en las semanas en que está abierta
match_cause_positions = otras llenan las parcelas que le van
match_cause_window = solo está lista cuando ninguna parcela que le va está abierta
match_cause_window_of_bed = solo está abierta cuando ninguna bandeja que le va está lista
match_cause_stock = no quedan plantas de esta especie para ella
match_cause_least_load = muy pocas para un viaje propio
match_cause_by_hand = dicho a mano
match_more_heading = Qué daría uno más
match_more_day = { $plants ->
    [one] un día más de siembra en la semana del { $day }: sale { $plants } planta más
   *[other] un día más de siembra en la semana del { $day }: salen { $plants } plantas más
}
match_more_positions = { $plants ->
    [one] { $positions } hoyos más para { $species } en { $bed }: sale { $plants } planta más
   *[other] { $positions } hoyos más para { $species } en { $bed }: salen { $plants } plantas más
}
match_pin_unreadable = «{ $written }» no se entiende: escríbalo como { $example }
match_pin_too_many_of_tray = { $tray }: se dijeron { $pinned } plantas a mano, y en estas semanas pueden salir { $there }
match_pin_too_many_to_bed = { $bed }: se dijeron { $pinned } plantas a mano, y están abiertos { $open } de sus hoyos
match_pin_never = { $tray } no va a { $bed } en ninguna de estas semanas: outplant why pair { $tray } "{ $bed }" dice por qué
match_too_large = más bandejas, parcelas y semanas de las que se pueden calcular a la vez: tome menos semanas
match_weeks_outside = { $weeks } semanas: un plan tiene de 1 a { $most }
match_pin_form = BANDEJA:PARCELA=PLANTAS
match_pair_form = BANDEJA:PARCELA
help_match = El mejor plan de bandejas a parcelas en las próximas semanas, qué se queda y por qué
help_match_more = En el plan solo pasa el tiempo, y el trabajo que las manos hacen en un día se hace antes; lo que hoy nadie sabe no sirve de base. No cambia nada en el cuaderno.
help_match_weeks = Cuántas semanas, primero la de hoy (12; 52 a lo más)
help_match_pin = Tantas plantas de una bandeja van a una parcela, aunque otra cosa sea mejor: BANDEJA:PARCELA=PLANTAS
help_match_forbid = Esta bandeja nunca va a esta parcela: BANDEJA:PARCELA
help_match_leave_out = A esta parcela no va nada
help_value_pin = BANDEJA:PARCELA=PLANTAS
help_value_pair = BANDEJA:PARCELA
help_value_weeks = SEMANAS
