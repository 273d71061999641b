old_enough = { $days ->
    [one] tiene { $days } día, hacen falta { $least }
   *[other] tiene { $days } días, hacen falta { $least }
}
old_without_least = { $days ->
    [one] { $days } día de edad; el perfil de su especie no da una edad mínima
   *[other] { $days } días de edad; el perfil de su especie no da una edad mínima
}
too_young = { $days ->
    [one] tiene { $days } día, le faltan { $short } para { $least }
   *[other] tiene { $days } días, le faltan { $short } para { $least }
}
container_holds = { $days ->
    [one] lleva { $days } día en la bolsa, que aguanta { $most }
   *[other] lleva { $days } días en la bolsa, que aguanta { $most }
}
container_outgrown = lleva { $days } días en la bolsa, que aguanta { $most }: cambie de bolsa o descarte
container_circles = raíces enrolladas: pasó lo que aguanta la bolsa, sin importar los días
sample_too_few = { $pass } de { $of } cumplen, pero quedan muy pocas para un viaje
height_met = { $pass } de { $of } tienen buena altura, media { $mean }
height_short = solo { $pass } de { $of } tienen buena altura, media { $mean }, mínimo { $least }: déjelas crecer
height_tall = solo { $pass } de { $of } tienen buena altura, media { $mean }, más de { $most }: muy largas para su bolsa
collar_met = { $pass } de { $of } tallos tienen buen grosor, media { $mean }
collar_thin = solo { $pass } de { $of } tallos tienen buen grosor, media { $mean }; hace falta { $needed }: deles espacio y luz
leaves_met = { $pass } de { $of } tienen hojas suficientes, media { $mean }
leaves_few = solo { $pass } de { $of } tienen hojas suficientes, media { $mean }; hace falta { $needed }
plug_met = el cepellón sostiene
plug_crumbles = el cepellón se desmorona: espere a que las raíces lo sostengan
plug_circles = raíces enrolladas: cambie de bolsa, pódelas o descarte
flush_met = sin hojas tiernas
flush_unmet_on = hojas nuevas tiernas, vistas el { $day }: espere a que maduren
hardening_met = { $days ->
    [one] { $days } día de endurecimiento, hacen falta { $least }
   *[other] { $days } días de endurecimiento, hacen falta { $least }
}
hardening_short = { $days ->
    [one] { $days } día de endurecimiento, faltan { $short } para { $least }
   *[other] { $days } días de endurecimiento, faltan { $short } para { $least }
}
hardening_soft = sale tierna: no hay que endurecerla
hardening_not_begun = no ha empezado el endurecimiento, que toma { $least } días: acérquela a la luz y riegue menos
hardening_put_back = la sombra se volvió a subir el { $day }: el endurecimiento, { $least } días, empieza de nuevo con el próximo paso hacia la luz
hardening_fresh = { $days } días de endurecimiento, pero el último paso hacia la luz fue el { $day } y debe tener { $LAST_STEP_DAYS } días: desde el { $from }
step_met = estaba con { $from } de luz, esta era tiene { $to }: un paso pequeño
step_same = estaba con { $from } de luz, esta era tiene la misma
step_darker = estaba con { $from } de luz, esta era tiene { $to }: más sombra, no hay que endurecerla para eso
step_met_tray = está con { $from } de luz, su especie va a { $to } o más: un paso pequeño
step_inside_tray = está con { $from } de luz, como pueden tener las eras para su especie
step_darker_tray = está con { $from } de luz, su especie va a { $to } o menos: más sombra, no hay que endurecerla para eso
step_watch = estaba con { $from } de luz, esta era tiene { $to }: { $ratio } veces la luz, cuide que no se quemen las hojas
step_watch_tray = está con { $from } de luz, su especie va a { $to } o más: { $ratio } veces la luz, mejor otro paso antes
step_too_bright = estaba con { $from } de luz, esta era tiene { $to }: { $ratio } veces la luz, sáquela antes en { $steps } pasos
step_too_bright_tray = está con { $from } de luz, su especie va a { $to } o más: { $ratio } veces la luz, sáquela en { $steps } pasos
step_too_dark = estaba con { $from } de luz, esta era tiene { $to }: mucha más sombra de la que conoce
step_too_dark_tray = está con { $from } de luz, su especie va a { $to } o menos: mucha más sombra de la que conoce
held_met = nadie la retiene
held_unmet_said = retenida: { $why }
held_unmet_until = retenida hasta el { $day }: { $why }
treated_met = sin tratamiento activo
treated_unmet_said = tratada con { $what }, y la espera sigue
treated_unmet_until = tratada con { $what }: la espera anotada termina el { $day }
living_met_plants = vivas: { $plants }
living_unmet = no hay nada vivo
load_met = alcanza para salir: { $plants }
load_unmet = { $least ->
    [one] muy pocas para salir: { $plants }; un viaje es { $least }
   *[other] muy pocas para salir: { $plants }; un viaje son { $least }
}
good_until_met = buena hasta el { $day }
good_until_unmet = su último día fue el { $day }: mire las raíces, descarte lo seco
light_met = { $light } de luz en esta era, dentro de { $band }
light_near = { $light } de luz en esta era, al lado de { $band }: una lectura no da para más
light_too_bright = { $light } de luz en esta era, más de { $most }: deje crecer la sombra primero
light_too_dark = { $light } de luz en esta era, menos de { $least }: pode la sombra primero
light_coming_met = viene { $light } de luz, dentro de { $band }
light_coming_bright = viene { $light } de luz, más de { $most }: prevea sombra a tiempo
light_coming_dark = viene { $light } de luz, menos de { $least }: prevea podar la sombra
soil_met = el suelo cede con { $mpa } MPa
soil_hard = el suelo resiste { $mpa } MPa, las raíces pasan con { $most }: aflójelo o siembre tubérculos antes
soil_rod_met = la varilla entró { $depth } cm
soil_rod_short = la varilla se frenó a { $depth } cm, hacen falta { $needed } cm: afloje o siembre tubérculos antes
soil_lifted = aquí se sacaron tubérculos hace { $days } días: el suelo está suelto
soil_tubers_met = el suelo está suelto: { $tubers }
soil_tubers_thin = los tubérculos salen delgados: el suelo está duro, aflójelo
cleared_on = limpiada el { $day }
holes_on = hoyos hechos al { $day }
weeded_on = deshierbada el { $day }
mulched_on = cobertura puesta el { $day }
fenced_on = cercada el { $day }
cleared_stale = limpiada el { $day }, lo que vale { $lasts } días: limpie lo que volvió a crecer, luego anótelo
holes_stale = hoyos hechos el { $day }, lo que vale { $lasts } días: ábralos de nuevo, luego anótelo
weeded_stale = deshierbada el { $day }, lo que vale { $lasts } días: haga de nuevo los plateos, luego anótelo
mulched_stale = con cobertura desde el { $day }, lo que vale { $lasts } días: ponga cobertura nueva
fenced_stale = cercada el { $day }, lo que vale { $lasts } días: revise la cerca
cleared_unmet = la limpia no está anotada: limpie hierba y monte, luego anótelo
holes_unmet = los hoyos no están anotados: hágalos, luego anótelo
weeded_unmet = la deshierba no está anotada: haga los plateos, luego anótelo
mulched_unmet = la cobertura no está anotada: póngala alrededor de los hoyos, luego anótelo
fenced_unmet = la cerca no está anotada: ciérrela contra el ganado, luego anótelo
water_met = { $days ->
    [one] { $mm } mm de lluvia en { $days } día
   *[other] { $mm } mm de lluvia en { $days } días
}
water_usual = nadie leyó el pluviómetro en { $NO_GAUGE_DAYS } días, pero es época de las lluvias usuales: meta un dedo en la tierra
water_short = { $days ->
    [one] solo { $mm } mm de lluvia en { $days } día, hacen falta { $needed }: espere la lluvia
   *[other] solo { $mm } mm de lluvia en { $days } días, hacen falta { $needed }: espere la lluvia
}
season_met = quedan lluvias; el último día seguro es el { $day }
season_past = el último día seguro fue el { $day }: espere las próximas lluvias
season_from = las lluvias que quedan no alcanzan: espere hasta el { $day }
open_positions_met = { $positions ->
    [one] { $positions } hoyo libre
   *[other] { $positions } hoyos libres
}
open_positions_unmet = no hay hoyos libres en esta era
