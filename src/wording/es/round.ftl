### La ronda: qué hay que hacer, por qué ahora, y qué se pierde.

task_gauge = Leer el pluviómetro
task_go_out = Llevar al campo
task_last_day = Último día
task_count = Contar
task_stop_waiting = No esperar más
task_sow_again = ¿Resembrar?
task_prick_out = Repicar
task_pot_on = Cambiar de bolsa o descartar
task_cut_roots = Podar las raíces
task_cull = Descartar
task_space_out = Espaciar
task_begin_hardening = Empezar a endurecer
task_shade = Dar más luz
task_into_shade = A la sombra
task_water = Regar menos
task_measure = Medir
task_check_plug = Sacar un pilón
task_read_label = Leer la etiqueta
task_treatment_over = Mirar otra vez
task_sick = Plantas enfermas
task_test_lot = Probar la semilla
task_sow_lot = Sembrar la semilla
task_throw_out_lot = Descartar la semilla
task_clear = Limpiar
task_holes = Hacer hoyos
task_weed = Deshierbar
task_mulch = Poner cobertura
task_fence = Cercar
task_water_bed = Regar o mirar
task_count_nurses = Contar nodrizas
task_cut_bunches = Cortar racimos
task_lift_tubers = Sacar yuca
task_cut_for_light = Cortar por luz
task_set_nurses = Poner nodrizas
task_remove_nurses = Sacar nodrizas
task_read_light = Leer la luz
task_check_soil = Meter la varilla
task_count_survivors = Contar las vivas
tasks_gauge = el pluviómetro
tasks_go_out = { $n ->
    [one] { $n } bandeja para llevar al campo
   *[other] { $n } bandejas para llevar al campo
}
tasks_last_day = { $n ->
    [one] { $n } último día
   *[other] { $n } últimos días
}
tasks_count = { $n ->
    [one] { $n } conteo
   *[other] { $n } conteos
}
tasks_sow_again = { $n ->
    [one] { $n } siembra por repetir
   *[other] { $n } siembras por repetir
}
tasks_stop_waiting = { $n ->
    [one] { $n } siembra que no hay que esperar más
   *[other] { $n } siembras que no hay que esperar más
}
tasks_prick_out = { $n ->
    [one] { $n } bandeja por repicar
   *[other] { $n } bandejas por repicar
}
tasks_pot_on = { $n ->
    [one] { $n } bandeja por cambiar de bolsa
   *[other] { $n } bandejas por cambiar de bolsa
}
tasks_cut_roots = { $n ->
    [one] { $n } bandeja con raíces por podar
   *[other] { $n } bandejas con raíces por podar
}
tasks_cull = { $n ->
    [one] { $n } bandeja por descartar
   *[other] { $n } bandejas por descartar
}
tasks_space_out = { $n ->
    [one] { $n } bandeja por espaciar
   *[other] { $n } bandejas por espaciar
}
tasks_begin_hardening = { $n ->
    [one] { $n } endurecimiento por empezar
   *[other] { $n } endurecimientos por empezar
}
tasks_shade = { $n ->
    [one] { $n } paso de luz
   *[other] { $n } pasos de luz
}
tasks_into_shade = { $n ->
    [one] { $n } bandeja a la sombra
   *[other] { $n } bandejas a la sombra
}
tasks_water = { $n ->
    [one] { $n } paso de riego
   *[other] { $n } pasos de riego
}
tasks_measure = { $n ->
    [one] { $n } muestra
   *[other] { $n } muestras
}
tasks_check_plug = { $n ->
    [one] { $n } pilón
   *[other] { $n } pilones
}
tasks_read_label = { $n ->
    [one] { $n } etiqueta por leer
   *[other] { $n } etiquetas por leer
}
tasks_sick = { $n ->
    [one] { $n } caso de plantas enfermas
   *[other] { $n } casos de plantas enfermas
}
tasks_treatment_over = { $n ->
    [one] { $n } revisión tras tratar
   *[other] { $n } revisiones tras tratar
}
tasks_test_lot = { $n ->
    [one] { $n } prueba de semilla
   *[other] { $n } pruebas de semilla
}
tasks_sow_lot = { $n ->
    [one] { $n } lote por sembrar
   *[other] { $n } lotes por sembrar
}
tasks_throw_out_lot = { $n ->
    [one] { $n } lote de semilla muerta
   *[other] { $n } lotes de semilla muerta
}
tasks_clear = { $n ->
    [one] { $n } parcela por limpiar
   *[other] { $n } parcelas por limpiar
}
tasks_holes = { $n ->
    [one] { $n } parcela por hoyar
   *[other] { $n } parcelas por hoyar
}
tasks_weed = { $n ->
    [one] { $n } parcela por deshierbar
   *[other] { $n } parcelas por deshierbar
}
tasks_mulch = { $n ->
    [one] { $n } parcela por cubrir
   *[other] { $n } parcelas por cubrir
}
tasks_fence = { $n ->
    [one] { $n } parcela por cercar
   *[other] { $n } parcelas por cercar
}
tasks_water_bed = { $n ->
    [one] { $n } parcela por regar
   *[other] { $n } parcelas por regar
}
tasks_count_nurses = { $n ->
    [one] { $n } conteo de nodrizas
   *[other] { $n } conteos de nodrizas
}
tasks_cut_bunches = { $n ->
    [one] { $n } parcela con racimos maduros
   *[other] { $n } parcelas con racimos maduros
}
tasks_lift_tubers = { $n ->
    [one] { $n } parcela con yuca por sacar
   *[other] { $n } parcelas con yuca por sacar
}
tasks_cut_for_light = { $n ->
    [one] { $n } parcela por cortar por luz
   *[other] { $n } parcelas por cortar por luz
}
tasks_set_nurses = { $n ->
    [one] { $n } parcela donde poner nodrizas
   *[other] { $n } parcelas donde poner nodrizas
}
tasks_remove_nurses = { $n ->
    [one] { $n } parcela de donde sacar nodrizas
   *[other] { $n } parcelas de donde sacar nodrizas
}
tasks_read_light = { $n ->
    [one] { $n } lectura de luz
   *[other] { $n } lecturas de luz
}
tasks_check_soil = { $n ->
    [one] { $n } prueba de varilla
   *[other] { $n } pruebas de varilla
}
tasks_count_survivors = { $n ->
    [one] { $n } conteo de vivas
   *[other] { $n } conteos de vivas
}
round_heading = { $stops ->
    [one] Ronda: { $stops } parada, unos { $minutes } min de { $allowed }
   *[other] Ronda: { $stops } paradas, unos { $minutes } min de { $allowed }
}
round_mark_means = ! lo que más pierde si espera
look_first = primero véalas: se trataron con { $what }, la espera terminó el { $day } y nadie las ha visto desde entonces
stay_away = No toque ni entre: { $what }: { $why }
round_nothing = No hay nada pendiente.
round_on_the_way = Al salir
round_no_place = Bandejas sin lugar
round_seed_store = Donde se guarda la semilla
round_bed = Parcela { $bed }
round_can_wait = { $stops ->
    [one] { $stops } puede esperar: { $list }.
   *[other] { $stops } pueden esperar: { $list }.
}
round_let_go = Para dejar una: outplant write "dejar { $task } hasta { $until }"
round_about = { $task } { $subject }
round_about_species = { $task } { $subject }, { $species }
round_reckoned = { $plants } plantas en { $days } d = { $a_day } por día de espera; { $minutes } min de revisar
round_last = anotado: { $figure }, { $day }
round_expect = se espera: { $what }
round_expect_good = buenas: { $what }
lose_seedlings = pueden perderse { $plants } plántulas
lose_seed = puede perderse semilla para { $plants } plantas
lose_planted = aquí pueden perderse { $plants } plantas
lose_time = { $plants } plantas pueden no salir a tiempo
lose_planting = { $plants } plantas pueden perder las lluvias
or_else = o { $lost }
round_gauge = falta anotar hoy; el cero también cuenta
round_emerging = se miró hace { $days } d, cada { $every } d mientras brota
round_emerging_never = ya debe brotar y nadie ha mirado
round_up = { $emerged } brotadas
round_up_of = han brotado { $emerged } de unas { $expected }
round_count_old = contada hace { $days } d, cada { $every } d mientras está { $stage }
round_count_never = nunca se contó
round_part_counted = { $standing ->
    [one] solo se contó una parte, { $standing } en { $seen } de { $cells } celdas, y el libro dice otra cosa: cuéntela entera
   *[other] solo se contó una parte, { $standing } en { $seen } de { $cells } celdas, y el libro dice otra cosa: cuéntela entera
}
round_sick = visto: { $what }; mire cada { $every } d
round_losses = pérdidas recientes: mire cada { $every } d
round_counted_ago = contada hace { $days } d
round_emergence_over = nada nuevo, el último día fue el { $day }: brotaron { $emerged } de { $sown } semillas
round_old_enough = { $age } d desde la siembra, toca desde { $from }
round_in_container = { $days } d en su bolsa
round_in_container_of = { $days } d en su bolsa, que aguanta { $limit }
round_in_container_circling = { $days } d en su bolsa, que aguanta { $limit }; raíces enrolladas: pódelas también
round_roots_circle = las raíces están enrolladas, y en una bolsa más grande siguen igual hasta que se podan
round_container_overdue = demasiado tiempo en su bolsa
round_sample_fails = { $pass } de las { $of } medidas sirven; unas { $rest } son chicas o delgadas para su edad
round_lanky = altas y delgadas: altura / cuello { $sturdiness }, a lo más { $limit }
round_hardening_by = toma { $length } d, podría estar lista el { $day }
round_hardening_since = toma { $length } d, tiene la edad desde el { $day }
round_hardening = toma { $length } d y no ha empezado
round_step_settled = último cambio hace { $days } d
round_step_first = todavía sin pasos
round_step_light = de { $now } a { $next } de luz
round_step_end = al final { $end }
round_step_place = hay lugar en { $place }
round_step_open = ninguna mesa con lugar da esa luz: a cielo abierto, sin malla
round_step_cloth = ninguna mesa con lugar da esa luz: a cielo abierto bajo malla de { $shade } % de sombra
round_step_layers = ninguna mesa con lugar da esa luz: a cielo abierto bajo malla de { $shade } % de sombra, o bajo dos capas de { $layer } %
round_step_then = a los { $LAST_STEP_DAYS } días o más, a { $light } de luz: { $place }
round_step_then_cloth = a los { $LAST_STEP_DAYS } días o más, a { $light } de luz, bajo malla
round_step_water = { $days ->
    [one] regar cada día
   *[other] regar cada { $days } días
}
round_never_measured = nunca se midió
round_measure = { $plants ->
    [one] mida { $plants } planta
   *[other] mida { $plants } plantas
}
round_measure_all = { $plants ->
    [one] mida la única que hay
   *[other] mida las { $plants }
}
round_place_light = { $trays ->
    [one] { $trays } bandeja lo espera: ¿cuánta sombra da la malla de aquí? O lea la luz
   *[other] { $trays } bandejas la esperan: ¿cuánta sombra da la malla de aquí? O lea la luz
}
round_never_measured_near = { $days ->
    [one] nunca se midió, le falta { $days } d de edad
   *[other] nunca se midió, le faltan { $days } d de edad
}
round_never_measured_past = nunca se midió, y tiene la edad desde hace { $days } d
round_sample_old = medida hace { $days } d
round_no_plug = ningún pilón sacado todavía
round_plug_ago = último pilón hace { $days } d
round_plug_to_least = { $days ->
    [one] le falta { $days } d de edad
   *[other] le faltan { $days } d de edad
}
round_plug_past_least = ya tiene edad de salir
round_plug_to_limit = { $days ->
    [one] le queda { $days } d en su bolsa
   *[other] le quedan { $days } d en su bolsa
}
round_plug_past_limit = ya pasó su tiempo en la bolsa
round_eats_open = { $what }, visto el { $day }, y nada hecho desde entonces: busque de dónde viene, use o ponga algo en contra (trampas, protectores, un gato, alguien que vigile) y anótelo como tratamiento; o mire otra vez y anote el porcentaje
round_sick_open = { $what }, visto el { $day }, y nada hecho desde entonces: descarte lo que lo tiene con su tierra, en bolsa, quemado o enterrado lejos, en ningún montón que use el vivero; o trate según la etiqueta. Anote cuál
round_sick_next = { $what }, visto el { $day }: { $next }
round_sick_apart = Aparte la bandeja, y pregunte si hay que avisar
round_sick_of_soil = Aparte la bandeja, donde de ella no escurra agua a otras
round_leaves_lost = { $what }, visto el { $day }: no se va con ninguna planta. Cuente las que conservan hojas sanas ({ $leaves }), y mida una muestra con sus hojas, o anote el porcentaje de las que no
round_sick_damping = Riegue poco y nunca sobre las hojas, y deje entrar aire
round_sick_few = { $what }, visto el { $day }, en pocas, y nadie lo miró desde entonces: mire otra vez, deje las que lo tengan, y anote el porcentaje de ahora, 0 donde ya no está
round_sick_again = { $what }, visto el { $day } y atendido: mire otra vez y anote la parte que queda, 0 donde ya no está
round_label_both = { $what }, usado el { $day }: ¿cuánto dice la etiqueta que hay que quedarse afuera, y cuánto antes de sembrar? Léala desde afuera y anote los dos; hasta entonces nadie entra y nada se siembra
round_label_planting = { $what }, usado el { $day }: ¿cuánto dice la etiqueta que hay que esperar antes de sembrar? Léala y anótelo; hasta entonces no se siembra nada
round_label_home = { $what }, usado el { $day }: ¿cuánto hay que esperar? Anote lo que dice su etiqueta, 0 si no tiene etiqueta; hasta entonces nadie entra y nada sale
round_label = { $what }, usado el { $day }: ¿cuánto dice la etiqueta que hay que esperar? Léala desde afuera y anótelo; hasta entonces nadie entra y nada sale
round_treated = { $what }: la espera anotada terminó el { $day }; ¿sirvió?
round_untested = { $seeds }, { $days } d sin prueba
round_tested = { $seeds }, última prueba hace { $days } d
round_life_ends = { $days ->
    [0] { $kept }, vive { $life } d: hoy es el último
    [one] { $kept }, vive { $life } d: queda { $days }
   *[other] { $kept }, vive { $life } d: quedan { $days }
}
round_lot_past = pasó su vida indicada desde el { $day }: abra diez, siémbrela enseguida si algunas están firmes y claras por dentro, si no descártela
round_lot_killed = muerta: el frío bajo { $celsius } °C la mata, y así estuvo desde el { $day }. Abra diez: descártela si todas están pardas, secas, babosas o vacías, y anote que no queda nada; si no, anote una prueba
round_lot_dead = muerta por todo lo que se sabe: su vida terminó el { $day }. Abra diez: descártela si todas están pardas, secas, babosas o vacías, y anote que no queda nada; si no, siémbrela enseguida o anote una prueba
round_lot_tested_dead = muerta según su prueba: de { $seeds } no nació ninguna hasta el { $day }. Abra diez: descártela si todas están pardas, secas, babosas o vacías, anote que no queda nada y consiga semilla fresca; si no, anote una prueba
round_seeds_left = quedan { $seeds }
round_fence_eaten = aquí entraron el { $day } animales que una cerca detiene, y nadie ha cercado desde entonces
round_work_never = no está anotado
round_work_old = hecho el { $day }, hace mucho
round_for_tray = para { $tray } ({ $species }), lista el { $day }
round_for_tray_not_before = para { $tray } ({ $species }), no lista antes del { $day }
round_for_tray_now = para { $tray } ({ $species }), ya lista
round_rings = { $plants ->
    [one] { $plants } planta joven, sin plateo hace { $days } d
   *[other] { $plants } plantas jóvenes, sin plateo hace { $days } d
}
round_young_dry = { $plants ->
    [one] { $plants } planta joven, { $days } d sin lluvia
   *[other] { $plants } plantas jóvenes, { $days } d sin lluvia
}
round_young_found_dry = { $plants ->
    [one] { $plants } planta joven, la tierra hallada seca el { $day }
   *[other] { $plants } plantas jóvenes, la tierra hallada seca el { $day }
}
round_young_short = { $plants ->
    [one] { $plants } planta joven, quedan { $left } de { $full } mm para sus raíces
   *[other] { $plants } plantas jóvenes, quedan { $left } de { $full } mm para sus raíces
}
round_young_unread = { $plants ->
    [one] { $plants } planta joven fuera de las lluvias, y hace { $days } d que no se anota lluvia que moje, dedo que halle mojado ni riego que la sostenga
   *[other] { $plants } plantas jóvenes fuera de las lluvias, y hace { $days } d que no se anota lluvia que moje, dedo que halle mojado ni riego que las sostenga
}
round_water_feet = { $sentence }: donde un dedo halle seca la tierra al pie, eche ahí de { $FOOT_LEAST_LITRES } a { $FOOT_MOST_LITRES } litros, despacio, y anote el riego. Con eso la tierra de la parcela no queda mojada
round_bunches = salieron { $bunches } racimos de { $nurse } y maduran hacia el { $day }; corte cada tallo con su racimo
round_tubers = raíces de { $plants } plantas de { $nurse }: después del { $day } se ponen leñosas
round_tubers_loosen = { $sentence }; al sacarlas queda suelto el suelo de { $positions } hoyos aún libres
round_too_dark = { $light } de luz ahora, { $species } necesita { $least } al menos y viene una bandeja: el porqué de esta parcela dice qué cortes ayudan ya; si no, por pasos de un mes, no más de { $share } de la sombra cada uno
round_past_life = { $plants } plantas de { $nurse } pasaron su vida hacia el { $day }: saque lo muerto, deje lo que da sombra, y cuéntelo
round_nurses = { $alive } según el libro, sin contar hace { $days } d
round_light_never = nunca se leyó
round_light_old = leída el { $day }, ya vieja
round_soil_dry = se metió en suelo seco, no dice nada
round_soil_never = suelo sin revisar
round_survival = { $months ->
    [one] mes { $months }: { $planted } de { $species } plantadas el { $day }, { $living } vivas según el libro
   *[other] mes { $months }: { $planted } de { $species } plantadas el { $day }, { $living } vivas según el libro
}
round_to_bed = { $plants } a { $bed }
round_fits_taken = lista, sin lugar en { $beds }: antes van las que menos pueden esperar
round_not_sorted = es una estimación, nadie las midió: clasifique al cargar; lo chico o delgado se queda
round_stays = { $plants ->
    [one] { $plants } no sirve
   *[other] { $plants } no sirven
}
stumps_care = manténgalas paradas a la sombra, húmedas y sin viento, con el extremo de abajo hacia abajo; se siembran en esa misma posición
slips_care = manténgalos secos y aireados a la sombra hasta que sequen los cortes, nunca en un montón mojado
suckers_care = manténgalos pelados a la sombra y sin viento; quite lo pardo antes de sembrar
vines_care = manténgalas a la sombra con aire, sin sol ni viento
round_bare_left = { $left ->
    [one] { $left } de estas raíces desnudas no tiene lugar: embólsela hoy, con sombra densa y humedad, o regálela; su último día es el { $day }
   *[other] { $left } de estas raíces desnudas no tienen lugar: embólselas hoy, con sombra densa y humedad, o regálelas; su último día es el { $day }
}
round_stumps_left = { $left ->
    [one] { $left } de estos tocones o estacas no tiene lugar: embólselo, siémbrelo en otra parte o regálelo; su último día es el { $day }
   *[other] { $left } de estos tocones o estacas no tienen lugar: embólselos, siémbrelos en otra parte o regálelos; su último día es el { $day }
}
round_stumps_near = tocones o estacas, ninguna parcela los recibe; { $days ->
    [0] hoy es el último día
    [one] queda { $days } día
   *[other] quedan { $days } días
}
bare_roots_care = tenga las raíces enterradas o en sacos mojados, a la sombra, nunca al sol ni al viento; báñelas en barro antes de plantar
round_bag_at_once = a raíz desnuda, y así no viven: embólselas enseguida, sombra densa y humedad, y déjelas ir cuando un pilón aguante
round_bare_unmeasured = a raíz desnuda y sin medir: si dan la altura y el grosor, hasta { $plants } van a { $bed }; si no, embólselas, su último día es el { $day }
round_shade_for_roots = se cortaron o se rompieron raíces, y está al sol: llévela hoy a la sombra, hasta el { $until }
round_shade_for_grafts = injertos recientes, y están al sol: llévelos hoy a la sombra, hasta { $until }
round_shade_after_leap = pasó de golpe a mucho sol el { $since }: a la sombra hoy mismo, y mire si hay hojas quemadas
round_bag_ends = la bolsa termina el { $ends }, antes de las lluvias del { $rains }: saque un pilón y cámbielas de bolsa a tiempo, o descártelas
round_bare_taken = sin parcela. Nadie anotó cuánto aguantan, se toma hasta el { $day }: { $alive }; anote el día que vea
round_bare_near = a raíz desnuda y sin parcela; { $days ->
    [0] hoy es el último día
    [one] queda { $days } día
   *[other] quedan { $days } días
}
kept_in_pod = en el fruto
kept_mucilage_on = con mucílago
kept_washed_moist = lavada y húmeda
kept_in_parchment = en pergamino
kept_dry_sealed = seca y cerrada
kept_dry_open = seca, abierta
kept_cold = en frío
kept_other = guardada de otro modo
kept_unknown = no se sabe cómo se guardó
sign_triangle = triángulo
sign_circle = círculo
sign_square = cuadrado
sign_diamond = rombo
sign_star = estrella
sign_cross = cruz
round_plants_between = { $low } a { $high } plantas
teach_sheet = O traiga de una vez todas las bandejas que ya están, en una hoja con las columnas bandeja, especie y cuántas:
round_mean = altura media { $mean } cm
round_until = hasta el { $day }
until_rains = hasta el { $day }, mientras las lluvias son seguras
until_container = hasta el { $day }, antes de que se pase en su bolsa
until_last_day = hasta el { $day }, su último día
until_hardened = hasta el { $day }, para llegar endurecida a las lluvias
until_roots = hasta el { $day }, antes de que sufran las raíces
until_ready = hasta el { $day }, cuando ya tenga edad
until_rains_begin = hasta el { $day }, cuando empiezan las lluvias
until_waits = hasta el { $day }: una bandeja la espera
until_sow_by = hasta el { $day }, para las lluvias a las que debe llegar
until_seed_life = hasta el { $day }, mientras vive la semilla
until_today = hoy
until_overdue = atrasada desde el { $day }
until_overdue_planted = atrasada desde el { $day }, cuando se plantaron las jóvenes
until_not_known = no se sabe el último día
lose_rain = la lluvia de hoy queda sin saberse
lose_food = comida que se pierde
lose_bench = ocupa la mesa para nada
lose_sowing = alguien puede sembrarla para nada
lose_room = gasta lugar y agua para nada
lose_no_place = hoy no se pierde nada
lose_little = se pierde menos de una planta
lose_reading = queda sin saberse
work_minutes = { $minutes } min
work_hours = { $hours } h
work_takes = cerca de { $time } de trabajo
work_heading = Los minutos son los de mirar y anotar, hasta { $allowed }. El trabajo que se halla al pasar toma a una persona cerca de { $time } más, y no se recorta.
work_heading_none = Los minutos son los de mirar y anotar, hasta { $allowed }.
work_part = { $task }: { $done }
tasks_no_place = { $n ->
    [one] { $n } bandeja lista sin lugar
   *[other] { $n } bandejas listas sin lugar
}
round_hands_rest = hoy hay manos para { $plants } de ellas, las demás hasta el { $day }
round_hands_not_today = hoy no hay manos para ellas: hasta el { $day }
round_hands_late = { $plants } se quedan sin manos antes de su último día: busque más manos, o cámbielas de bolsa
round_no_place_left = { $plants ->
    [one] { $plants } más sirve, sin lugar
   *[other] { $plants } más sirven, sin lugar
}
round_too_late = tarde para estas lluvias, seguras hasta el { $day }: para las próximas, desde el { $next }
round_too_late_for_all = tarde para estas lluvias, seguras hasta el { $day }
round_for_tray_today = para { $tray } ({ $species }), que sale hoy
round_for_more = { $trays ->
    [one] y { $trays } bandeja más
   *[other] y { $trays } bandejas más
}
go_by_rains = hasta el { $day } (lluvias)
ends_before_container = la bolsa aguanta hasta el { $day }: antes saque un pilón, cámbielas de bolsa o descártelas
ends_before_bare = sirven solo hasta el { $day }: embólselas
go_by_container = hasta el { $day } (bolsa)
go_by_last_day = hasta el { $day } (último día)
offer_tray = { $tray }: a { $number } parcelas ({ $beds }) se les ofrece lo mismo: { $plants } plantas en total
offer_bed = { $bed }: a { $number } bandejas ({ $trays }) se les ofrece lo mismo: { $places } lugares para { $species } en total
