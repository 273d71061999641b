page_unnamed = Este vivero
page_today = hoy, { $day }
page_back = MIRANDO ATRÁS al { $day }: cómo estaba entonces, con todo lo anotado hasta ahora
page_ahead = MIRANDO ADELANTE al { $day }: no se da nada más por hecho, solo pasa el tiempo
page_known = SOLO lo que estaba anotado hasta el { $day }
ready_heading = Listas para salir hoy
ready_heading_on = Listas para salir el { $day }
ready_none = Hoy ninguna bandeja tiene parcela.
ready_none_on = El { $day } ninguna bandeja tiene parcela.
day_plan_heading = Plan de hoy: qué cargar, lo más urgente primero
day_plan_heading_on = Plan del { $day }: qué cargar, lo más urgente primero
plan_hands = Manos para { $plants } plantas al día. Hoy no: { $list }
plan_rest_by = { $tray } { $plants }, para el { $day } (último día { $last })
plan_rest_on = { $tray } { $plants }, para el { $day }
plan_of_tray = { $tray } { $plants }
plan_late = Sin manos antes de su último día: { $list }. Busque más manos, o cámbielas de bolsa
plan_places_filled = { $trays ->
    [one] También está lista, pero otras llenan sus hoyos: { $codes }
   *[other] También están listas, pero otras llenan sus hoyos: { $codes }
}
waiting_heading = Todavía no: primero lo que menos espera
ready_more = y { $more } más
ready_all_hint = Lo demás: outplant ready --all
open_beds = Abiertas: { $list }
bed_open_for = { $bed } ({ $species }, { $places })
bed_and_species = { $bed }, { $species }
why_met = { $questions ->
    [one] en orden: { $list } ({ $all } dice por qué)
   *[other] en orden: { $list } ({ $all } dice por qué cada cosa)
}
why_met_many = { $count } más en orden ({ $all } dice cuáles y por qué)
why_unknown_many = no se sabe, y no hace esperar: { $names }
why_rest = { $all } dice lo demás: cifras, fuentes, anotaciones.
no_bed_heading = Listas, pero hoy sin parcela
no_bed_heading_on = Listas, pero sin parcela el { $day }
no_bed_plans = ninguna parcela tiene { $species } en su plan
no_bed_plans_nurse = ninguna parcela tiene { $species } en su plan, y las nodrizas no lo necesitan: anote a qué parcela van
not_yet_heading = Todavía no
empty_trays = vacías: { $codes }
spared_carried_off = { $place }: { $tray } se trató antes de llegar ahí, y solo por ella esperan las demás. Llevada otra vez, con guantes, a un rincón aparte, la mesa queda libre
spared_apart = { $place }: { $others } bandejas esperan por { $tray }, tratada entre ellas. En un rincón aparte, donde no haya nada más, lo que se fumiga no hace esperar a otras
comes_from = desde el { $day }
was_from = desde el { $day }
more_reasons = { $reasons ->
    [one] +{ $reasons } razón
   *[other] +{ $reasons } razones
}
in_bed = { $bed }: { $reason }
beds_heading = Parcelas
bed_light = { $light } de luz, leída el { $day }
bed_light_apart = { $light } de luz, lecturas del { $since } al { $day } de { $low } a { $high }
tray_light_changed = { $light } en la media de { $LAST_LIGHT_DAYS } días; { $now } desde el { $since }
take_care = con cuidado: { $what }
bed_light_reckoned = luz sin leer, calculada { $light }
bed_light_unknown = luz sin leer
bed_plans_nothing = aquí no hay nada en el plan
bed_has_open = { $open } de { $positions } hoyos libres
bed_in_light = { $plants } con buena luz
bed_nothing_waits = no espera nada
doubts_heading = Dudas: lo que no puede ser como está anotado
unplanned_heading = Faltas en los planes
unplanned_tray = { $tray } está lista, y ningún plan tiene { $species }: póngala en el de una parcela
hint_why_tray = Todas las razones: outplant why tray { $tray }
teach_first_tray = Todavía no hay bandejas anotadas. Cuando siembre una, anótela así:
teach_first_tray_command = outplant write sown tray=caf-001 species=café lot=unknown seeds=60 container=bolsa
teach_standing_tray = Las plantas que ya están en el vivero se anotan así:
teach_standing_tray_command = outplant write plants_received tray=caf-001 species=café count=40 from=inicio form=bolsa
no_bed_asked = Ninguna parcela la tiene en su plan.
teach_first_bed = Todavía no hay parcelas trazadas: outplant write bed_set, con bed, field, length_m, width_m y plan.
teach_plan = { $bed } no tiene especies en su plan: trácela otra vez con un plan
why_tray_heading = Bandeja { $tray }, { $species }
why_bed_heading = Parcela { $bed }, para { $species }
why_pair_heading = Bandeja { $tray } para la parcela { $bed }
why_ready = lista para salir
why_place_heading = Lugar { $place }
why_place_open = nada impide trabajar ahí con las manos
place_trays = { $trays ->
    [one] { $trays } bandeja
   *[other] { $trays } bandejas
}
place_trays_of = { $trays } de { $most } bandejas que caben
place_light_shade = { $light } de luz, según su sombra
why_ready_no_bed = lista, pero ninguna parcela la recibe: { $why }
why_not_ready = todavía no está lista
why_ready_for = lista para { $beds }; para parcelas con más luz todavía no: { $why }
why_due = { $task }: { $reason }
reckoning_heading = Cómo se calcula
light_reckoning_heading = Cómo se calcula la luz
light_reckoning_heading_of = Cómo se calcula la luz para { $species }
light_from_nurses = calculada por las nodrizas { $light }
label_light_unread = sin lectura
label_light_leaves = hojas según la lectura
label_light_corrected = con esa lectura
light_ahead_heading = Luz que viene
light_ahead_inside = { $now } de los hoyos libres dentro de { $band } ahora, { $half_year } en promedio en seis meses
light_turns_bright = { $said }; demasiado clara desde { $month }: { $why }
light_turns_dark = { $said }; demasiado oscura desde { $month }: { $why }
light_turns_inside = { $said }; adentro desde { $month }: { $why }
light_turns_by_bunches = se cortan racimos de { $nurse }
light_turns_by_stems = se cortan tallos de { $nurse } con sus racimos
light_turns_by_age = { $nurse } llega a su fin
light_turns_by_thinning = nodrizas pierden hojas o acaban
light_turns_by_growth = crecen las nodrizas
shade_to_come_heading = Sombra que acaba
label_light_months = mes a mes
light_of_month = { $month } { $year } { $light }
label_light_positions = de hoyo en hoyo
light_leaves_told = el { $day } se leyó { $read } de luz, donde hojas como dice el perfil dejarían pasar { $expected }: densidad x { $factor }
light_leaves_not_told = el { $day } se leyó { $read } de luz, donde hojas como dice el perfil dejarían pasar { $expected }: ningunas hojas lo explican, las copas están dibujadas muy pequeñas, muy grandes o en otro lugar: mida algunas con cinta
light_positions = { $low } a { $high }
light_positions_in_band = { $low } a { $high }, { $share } de ellos dentro de { $band }
source_light_model = altura y copa por la edad del perfil o por cinta, densidad de hojas por la luz que deja pasar su siembra cerrada, cerca de 40 % a cada lado (nuestro); Monsi & Saeki 1953; la mitad de la luz viene del cielo (nuestro); sin parcelas vecinas ni una pendiente sin anotar
why_fits = va bien: pueden salir { $plants }
why_fits_not = no va
why_nothing_asked = no se le pide nada
state_met = en orden
state_blocks = por esto espera
state_unmet = todavía no
state_unknown = no se sabe
state_unknown_blocks = no se sabe, y por eso espera
state_warns = con cuidado
label_why = por qué
label_needed = lo que pide
label_known = lo que hay
label_expected = se espera
label_source = fuente
label_entries = anotaciones
label_stage = etapa
label_standing = en pie
label_place = lugar
label_plantable = para salir
label_ready_from = lista desde
label_ready_since = lista desde
label_best_before = antes del
label_counted = conteo
label_grafted = injertadas
label_light = luz
known_how = { $known } ({ $basis })
ready_at_the_earliest = lo más pronto el { $first }, por lo común el { $usual }
ready_for_bed = { $day } para { $bed }
day_between = { $likely } (entre { $low } y { $high })
species_unknown = especie sin saber
