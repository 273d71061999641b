measure_days = { $days } d
measure_days_at_least = al menos { $days } d
measure_days_at_most = a lo más { $days } d
measure_day_span = al menos { $least } d, lo usual { $usual }, a lo más { $most }
measure_height_band = { $least } a { $most } cm
measure_collar_rule = un mm de cuello por cada 8 cm de altura, y { $floor } mm o más
measure_sample = { $pass } de { $of } cumplen, media { $mean }
measure_leaves_at_least = al menos { $leaves } hojas
measure_leaf_pairs_at_least = al menos { $pairs } pares de hojas
measure_pest = { $what } en { $share }
measure_light = { $light } de luz
measure_light_reckoned = cerca de { $light } de luz ({ $low } a { $high })
measure_light_band = { $least } a { $most } de luz
measure_ratio_at_most = a lo más { $ratio } veces la luz
measure_light_step = de { $from } a { $to } de luz, { $ratio } veces
measure_light_step_from_dark = de { $from } a { $to } de luz
measure_plants_at_least = { $plants ->
    [one] al menos { $plants } planta
   *[other] al menos { $plants } plantas
}
measure_positions = { $positions ->
    [one] { $positions } hoyo libre
   *[other] { $positions } hoyos libres
}
measure_resistance_at_most = suave hasta { $depth } cm: { $push }
measure_resistance = { $mpa } MPa
measure_resistance_at = { $mpa } MPa a { $depth } cm
measure_rod_stopped = frenada a { $depth } cm con { $push }
push_on_rod = { $kg } kg en varilla de { $mm } mm
measure_tubers_lifted = tubérculos sacados hace { $days } d
measure_rain = { $days ->
    [one] { $mm } mm en { $days } día
   *[other] { $mm } mm en { $days } días
}
measure_rain_at_least = { $days ->
    [one] al menos { $mm } mm en { $days } día
   *[other] al menos { $mm } mm en { $days } días
}
measure_water_left = quedan { $mm } de { $full } mm
measure_water_at_least = al menos { $mm } mm
measure_work_within = { $work }, hace a lo más { $days } d
measure_fresh_step = { $days } d, último paso el { $day }
measure_until = hasta el { $day }
measure_yes = sí
measure_no = no
mean_in_cm = { $mean } cm
mean_in_mm = { $mean } mm
roots_crumbles = el pilón se desmorona
roots_holds = el pilón sostiene
roots_circling = raíces enrolladas
tubers_thin_necked = tubérculos de cuello delgado
tubers_even = tubérculos parejos
tubers_full = tubérculos gruesos
work_cleared = limpiada
work_holes = hoyos hechos
work_weeded = deshierbada
work_mulched = con cobertura
work_fenced = cercada
