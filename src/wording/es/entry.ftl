### Cualquier anotación en una frase.

about_tray = bandeja { $tray }
about_lot = lote { $lot }
about_bed = parcela { $bed }
about_place = lugar { $place }
about_nothing = sin nombrar
entry_part_rows = hileras { $rows }
part_spots = en { $spots }
part_until = hasta el { $day }
part_heeled_in = enterradas en fresco y húmedo
part_not_heeled_in = sin enterrar
part_spreads = se pega de planta a planta
part_spreads_not = no se pega de planta a planta
part_plants_seen = { $plants ->
    [one] { $plants } planta mirada
   *[other] { $plants } plantas miradas
}
part_roots_seen = raíces miradas
part_roots_unseen = raíces sin mirar
part_stands_since = en esta luz desde el { $day }
part_at_place = en { $place }
part_container = en { $container }
part_cells = { $cells ->
    [one] { $cells } celda
   *[other] { $cells } celdas
}
part_sign = seña { $sign }
from_opening = ya estaban
from_bought = compradas
from_wildling = rescatadas
from_cutting = esquejes
from_graft = injertos
from_gift = regaladas
form_plug = en pilón
form_bag = en bolsa
form_bare_root = a raíz desnuda
form_stump = tocones
moved_pricked_out = repicadas
moved_potted_on = cambio de bolsa
moved_merged = juntadas
cut_leaves = hojas
cut_stem = tallos
cut_harvest = cosecha
cut_felled = tumbado
sky_overcast = nublado
sky_clear = despejado
entry_nursery_set = vivero { $name }: { $latitude }°, { $longitude }°, { $altitude }
altitude_said = { $metres } m
altitude_unknown = altitud desconocida
part_clock_offset = UTC{ $hours }
part_plants_a_day = { $plants ->
    [one] { $plants } planta por día
   *[other] { $plants } plantas por día
}
part_planting_days = { $days ->
    [one] { $days } día de plantar por semana
   *[other] { $days } días de plantar por semana
}
part_walk_minutes = ronda de { $minutes } min
part_water_a_day = { $litres } l de agua por día
entry_season_set = lluvias { $rains }
season_from_until = { $from } a { $until }
season_no_rains = en ninguna época
part_rain_normals = con lluvia mensual
part_heat_normals = con temperaturas mensuales
entry_species_set = { $species }: datos propios ({ $figures })
entry_place_set = lugar { $place }: número { $order } de la ronda, { $shade } de sombra
part_holds_trays = { $trays ->
    [one] caben { $trays } bandeja
   *[other] caben { $trays } bandejas
}
entry_container_set = envase { $container }: { $volume } ml
part_depth = { $cm } cm de hondo
entry_field_set = terreno { $field } descrito
part_slope = { $percent } de pendiente
part_texture = suelo { $texture }
entry_bed_set = parcela { $bed } en { $field }: { $length } × { $width } m
part_bearing = hileras hacia { $degrees }°
part_ground_falls = el suelo baja { $percent } hacia { $degrees }°
part_corner = esquina en { $latitude }, { $longitude }
part_edges = primeras hileras { $edges }
part_plan_share = { $percent } de sus puestos
part_keeps_spot = guarda sus puestos
part_row_offset = hileras corridas { $metres } m
part_plan = para { $plan }
plan_line = { $species } { $row } × { $in_row } m: { $positions ->
    [one] { $positions } puesto
   *[other] { $positions } puestos
}, { $per_ha } por hectárea
entry_positions_blocked = { $positions ->
    [one] parcela { $bed }: { $positions } hoyo tapado ({ $spots }), { $why }
   *[other] parcela { $bed }: { $positions } hoyos tapados ({ $spots }), { $why }
}
entry_lot_received = lote { $lot } recibido: { $species } de { $source }
part_fruits = { $fruits ->
    [one] { $fruits } fruto
   *[other] { $fruits } frutos
}
part_seeds_per_fruit = { $seeds } semillas por fruto
part_seeds_per_kg = { $seeds } semillas por kg
part_collected = cosechado el { $day }
part_moisture = { $percent } de humedad
part_store = guardado a { $celsius } °C
part_initial = viva al inicio: { $percent }
entry_lot_kept = lote { $lot } ahora { $kept }
entry_lot_counted = lote { $lot } contado: { $amount }
entry_lot_tested = { $days ->
    [one] lote { $lot } probado: brotaron { $germinated } de { $seeds } semillas en { $days } día
   *[other] lote { $lot } probado: brotaron { $germinated } de { $seeds } semillas en { $days } días
}
entry_sown = bandeja { $tray } sembrada: { $amount } del lote { $lot } en { $container }
entry_sown_lot_unknown = bandeja { $tray } sembrada: { $amount } de lote desconocido en { $container }
part_shares_tray = comparte { $tray }
entry_resown = { $seeds ->
    [one] bandeja { $tray } resembrada: { $seeds } semilla del lote { $lot }
   *[other] bandeja { $tray } resembrada: { $seeds } semillas del lote { $lot }
}
entry_plants_received = bandeja { $tray } recibida: { $plants } { $species }, { $from }, { $form }
part_age_days = { $days ->
    [one] { $days } día de edad
   *[other] { $days } días de edad
}
part_height = { $cm } cm de alto
part_source = de { $source }
part_shade_now = estaban a { $shade } de sombra
entry_counted = bandeja { $tray } contada: { $living } vivas
part_dead = { $dead } muertas
reason_not_said = sin decir por qué
no_cause_said = causa no dicha
who_unknown = alguien
part_about = más o menos
part_cells_seen = { $cells ->
    [one] { $cells } celda mirada
   *[other] { $cells } celdas miradas
}
part_cells_filled = { $cells } llenas
entry_lost = bandeja { $tray }: { $plants } perdidas, { $cause }
entry_culled = bandeja { $tray }: { $plants } descartadas, { $why }
entry_moved_on = { $plants } de bandeja { $tray } a bandeja { $to }, { $how }
entry_carried = bandeja { $tray } llevada a { $place }
entry_measured = { $plants ->
    [one] bandeja { $tray } medida: { $plants } planta, { $height } cm
   *[other] bandeja { $tray } medida: { $plants } plantas, media { $height } cm
}
part_collar = cuello { $mm } mm
part_leaf_pairs = { $pairs } hojas o pares de hojas
part_leaves = { $leaves } hojas
entry_plug_checked = bandeja { $tray }: { $roots }
entry_roots_cut = bandeja { $tray }: raíces enrolladas podadas
entry_roots_cut_of = { $plants ->
    [one] bandeja { $tray }: raíces enrolladas de { $plants } planta podadas
   *[other] bandeja { $tray }: raíces enrolladas de { $plants } plantas podadas
}
entry_grafted = { $plants ->
    [one] bandeja { $tray }: { $plants } planta injertada
   *[other] bandeja { $tray }: { $plants } plantas injertadas
}
part_variety = variedad { $variety }
part_rootstock = sobre { $stock }
entry_flushed = bandeja { $tray }: hojas nuevas tiernas
entry_shade_set = { $about }: sombra puesta en { $shade }
entry_watering_set = { $about }: riego cada { $days } días
entry_watering_daily = { $about }: riego cada día
entry_hardening_begun = bandeja { $tray }: empieza a endurecer
part_for_bed = para parcela { $bed }
entry_held = { $about } se retiene: { $why }
entry_released = { $about } libre otra vez
entry_pest_seen = { $about }: visto: { $pest }
part_on_share = en { $share }
entry_treated = { $about }: tratamiento con { $means }
part_plant_after = sembrar tras { $days } días
part_safe_after = seguro tras { $days } días
part_safe_after_hours = { $hours ->
    [one] seguro tras { $hours } hora
   *[other] seguro tras { $hours } horas
}
entry_stocktaken = bandeja { $tray } inventariada: { $living } vivas
entry_given_out_somewhere = bandeja { $tray }: { $plants } entregadas, sin decir a quién
entry_given_out = bandeja { $tray }: { $plants } entregadas a { $to }
entry_relabelled = bandeja { $was } se llama ahora { $tray }
entry_label_renewed = bandeja { $tray }: rótulo nuevo
entry_let_go = tarea { $task } dejada
part_never = para siempre
entry_sown_in_bed = { $holes ->
    [one] parcela { $bed }: { $holes } hoyo de { $species } sembrado, { $seeds } semillas
   *[other] parcela { $bed }: { $holes } hoyos de { $species } sembrados, { $seeds } semillas cada uno
}
part_of_lot = lote { $lot }
entry_plants_found = parcela { $bed }: había { $plants } de { $species } en pie
part_planted_about = del { $day } más o menos
entry_nurse_planted = parcela { $bed }: { $plants } de { $species } plantadas, { $row } × { $in_row } m
part_offset = a { $metres } m del borde
entry_nurse_counted = parcela { $bed }: { $living } de { $species } vivas
part_bunches = { $bunches ->
    [one] { $bunches } racimo a la vista
   *[other] { $bunches } racimos a la vista
}
entry_nurse_measured = parcela { $bed }: { $species } { $height } m de alto, copa de { $radius } m de radio
entry_nurse_cut = parcela { $bed }: { $species } con corte ({ $what })
part_share = { $share } del total
part_yield = { $kg } kg
entry_light_read = { $about }: { $light } leída
light_of_pairs = { $pairs ->
    [one] { $light } de luz ({ $pairs } par)
   *[other] { $light } de luz ({ $pairs } pares)
}
entry_soil_checked = parcela { $bed }: suelo revisado
part_resistance = { $mpa } MPa
part_rod = varilla de { $mm } mm empujada con { $kg } kg
part_rod_only = varilla de { $mm } mm
part_push_only = empujada con { $kg } kg
part_at_depth = a { $cm } cm
part_since_soaking = { $days } días tras un remojo
part_beneath_hole = en el fondo del hoyo
part_beside_hole = al lado del hoyo
part_undug = donde no se ha cavado
part_wet = bien mojado
part_not_wet = no bien mojado
entry_plants_watered = parcela { $bed }: plantas jóvenes regadas al pie
part_litres_each = { $litres } l cada una
entry_prepared = parcela { $bed } { $work }
entry_outplanted = { $plants } de bandeja { $tray } plantadas en parcela { $bed }
part_nurse_row = como nodrizas, a { $row } × { $in_row } m
entry_plants_lost = parcela { $bed }: { $plants } de { $species } perdidas, { $cause }
entry_survival = parcela { $bed }: { $living } de { $species } vivas, { $dead } muertas
part_from_tray = de bandeja { $tray }
part_outplanted_on = plantadas el { $day }
entry_weather = tiempo
part_rain = { $mm } mm de lluvia
part_tmin = mínima { $tmin } °C
part_tmax = máxima { $tmax } °C
part_tmin_tmax = { $tmin } a { $tmax } °C
entry_settled = entendido: { $what }
entry_settled_of = entendido: { $what } ({ $of })
entry_noted = nota: { $text }
entry_noted_about = nota sobre { $about }: { $text }
entry_withdrawn = { $entries ->
    [one] retirada: { $entries } anotación ({ $list }), { $why }
   *[other] retiradas: { $entries } anotaciones ({ $list }), { $why }
}
entry_foreign = { $kind }, escrita por un outplant más nuevo

# What a kind is called where one is chosen or filled in.
alarm_restored = faltan anotaciones que aquí se habían guardado
alarm_clock = el reloj estaba equivocado
kind_nursery_set = El vivero
kind_season_set = Las épocas de lluvia
kind_species_set = Cifras propias de una especie
kind_place_set = Un lugar para bandejas
kind_container_set = Un envase o bolsa
kind_field_set = Un lote de terreno
kind_bed_set = Una parcela, trazada de nuevo
kind_positions_blocked = Puestos donde no se puede sembrar
kind_lot_received = Entra un lote de semilla
kind_lot_kept = Un lote guardado de otra forma
kind_lot_counted = Semilla que queda en un lote
kind_lot_tested = Una prueba de germinación
kind_sown = Sembrar una bandeja
kind_resown = Resembrar huecos
kind_plants_received = Entran plantas
kind_counted = Contar una bandeja
kind_lost = Plántulas perdidas
kind_culled = Descartar
kind_moved_on = Repicar o cambiar de bolsa
kind_carried = Llevar una bandeja a otro lugar
kind_measured = Medir una muestra
kind_plug_checked = Revisar un pilón
kind_roots_cut = Podar raíces enrolladas
kind_grafted = Injertar
kind_flushed = Hojas nuevas tiernas
kind_shade_set = Un paso de la sombra
kind_watering_set = Un paso del riego
kind_hardening_begun = Empieza el endurecimiento
kind_held = Retener
kind_released = Soltar
kind_pest_seen = Una plaga o enfermedad
kind_treated = Un tratamiento
kind_stocktaken = Recuento que ajusta el libro
kind_given_out = Regalado o vendido
kind_relabelled = Una etiqueta nueva
kind_let_go = Dejar pasar una tarea
kind_sown_in_bed = Sembrar directo en una parcela
kind_plants_found = Plantas halladas en una parcela
kind_nurse_planted = Sembrar plantas nodrizas
kind_nurse_counted = Contar nodrizas
kind_nurse_measured = Medir una nodriza
kind_nurse_cut = Cortar o cosechar nodrizas
kind_light_read = Leer la luz
kind_soil_checked = Revisar el suelo
kind_plants_watered = Regar plantas jóvenes
kind_prepared = Trabajo del suelo hecho
kind_outplanted = Llevar al campo
kind_plants_lost = Plantas perdidas en una parcela
kind_survival_counted = Contar sobrevivientes
kind_weather = Lluvia y temperatura
kind_noted = Una nota
kind_settled = Una alarma del archivo entendida
kind_withdrawn = Retirar anotaciones
