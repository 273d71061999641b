### Qué cambió un veredicto.

passage_old_enough = cumplió su edad
passage_holding_time = se acabó su tiempo en la bolsa
passage_last_day = pasó su último día
passage_hardened = pasaron días de endurecimiento o con esa luz
passage_leaves_hardened = maduraron las hojas nuevas
passage_hold_ended = terminó la retención o la espera
passage_reading_old = una lectura quedó vieja
passage_work_old = el trabajo se volvió a cerrar
passage_rains = se acabaron los días seguros de las lluvias
passage_rains_began = empezaron las lluvias
passage_rain_old = la última buena lluvia ya queda lejos
passage_rain_unknown = no se leyó el pluviómetro
passage_time = pasó el tiempo
change_heading = { $changes ->
    [one] Cambió un veredicto desde el fin del { $day }
   *[other] Cambiaron { $changes } veredictos desde el fin del { $day }
}
change_none = Ningún veredicto cambió desde el fin del { $day }.
change_since_yesterday = Desde ayer: { $list }.
change_named = { $what } { $is }
change_more = +{ $changes } más
change_turned = { $what }: { $was } → { $is }
change_tray = { $tray } ({ $species })
change_bed = { $bed }, { $species }
change_pair = { $tray } para { $bed }
change_entry = { $day }, { $who }: { $what }
change_hint = Todo lo de hoy: outplant ready
change_day_not_before = el { $day } no es anterior al { $on }: nombre un día anterior
state_new = no estaba
state_gone = ya no está
state_fits = va bien
state_fits_not = no va
state_not_planned = sin plan
change_by_days = { $day }, sin anotar nada: { $what }
change_because = { $list } ({ $cause })
change_more_causes = { $causes ->
    [one] { $causes } causa más, vea outplant ready --since
   *[other] { $causes } causas más, vea outplant ready --since
}
change_since_day_before = Desde el día anterior: { $list }.
