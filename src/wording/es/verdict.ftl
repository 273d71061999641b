### Lo que dicen los veredictos: por qué un criterio está como está, por qué no se sabe, de dónde viene su regla.

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
container_outgrown = lleva { $days } días en la bolsa, que aguanta { $most }: saque un pilón, luego cámbielas de bolsa o descártelas
container_too_old = lleva { $days } días en la bolsa, que aguanta { $most }: después de tanto ningún pilón dice cómo dan vuelta las raíces adentro. Lave la tierra de algunas y mire; descarte las que dan vuelta y cambie de bolsa el resto
container_far_beyond = lleva { $days } días en la bolsa, que aguanta { $most }: tan tarde no basta un pilón que sostiene. Mida hoy una muestra y anótela, o cámbielas de bolsa o descártelas
container_cut_lately = lleva { $days } días en la bolsa, que aguanta { $most }; se cortaron raíces, y ningún pilón dice nada antes del { $day }: déjela hasta entonces
container_circles = raíces enrolladas, sin importar los días: pódelas o descártelas; una bolsa más grande sola no las arregla
seedbed_holds = { $days ->
    [one] lleva { $days } día en el semillero, que sirve { $most }
   *[other] lleva { $days } días en el semillero, que sirve { $most }
}
seedbed_outgrown = lleva { $days } días en el semillero, que sirve { $most }: repique lo que queda, o descártelo
sample_too_few = { $pass } de { $of } cumplen, pero quedan muy pocas para un viaje
sample_of_before = { $sentence }; la muestra es de antes de salir { $plants }
height_met = { $pass } de las { $of } medidas tienen buena altura, media { $mean }
height_short = { $pass ->
    [0] ninguna de { $of } tiene buena altura, media { $mean }, mínimo { $least }: déjelas crecer
   *[other] solo { $pass } de { $of } tienen buena altura, media { $mean }, mínimo { $least }: déjelas crecer
}
height_met_tall = { $pass } de las { $of } medidas tienen altura suficiente, media { $mean }, más de { $most }: mire tallo y pilón, que dicen si ya es tarde
height_met_of_few = { $pass } de las { $of } medidas tienen buena altura, media { $mean }: pocas para hablar por todas, mida { $USUAL_SAMPLE } o todas las que hay
height_tall = { $pass ->
    [0] ninguna de { $of } tiene buena altura, media { $mean }, más de { $most }: muy largas para su bolsa
   *[other] solo { $pass } de { $of } tienen buena altura, media { $mean }, más de { $most }: muy largas para su bolsa
}
collar_under_floor = { $pass } de { $of } tallos medidos tienen grosor para su altura, media { $mean }; algunos no llegan a { $floor }, un mínimo que ninguna publicación da: mire si se sostienen solos
collar_met = { $pass } de { $of } tallos medidos tienen buen grosor, media { $mean }
collar_thin = { $pass ->
    [0] ninguno de { $of } tallos tiene buen grosor, media { $mean }; hace falta { $needed }: deles espacio y luz
   *[other] solo { $pass } de { $of } tallos tienen buen grosor, media { $mean }; hace falta { $needed }: deles espacio y luz
}
leaves_met = { $pass } de { $of } tienen hojas suficientes, media { $mean }
leaves_few = { $pass ->
    [0] ninguna de { $of } tiene hojas suficientes, media { $mean }; hace falta { $needed }
   *[other] solo { $pass } de { $of } tienen hojas suficientes, media { $mean }; hace falta { $needed }
}
grafted_met = injertadas
grafted_heals = recién injertadas: espere hasta el { $day }, cuando haya pegado el injerto, se quite la cinta y estén firmes las hojas nuevas
grafted_heals_look = injertadas hace poco, y ya se ve cuáles prendieron: mire, afloje la cinta donde la unión está gruesa, anote como pérdida las que fallaron y cuente las demás. Esperan hasta el { $day }, sin cinta y con las hojas nuevas firmes
grafted_few = { $plants ->
    [one] { $plants } de ellas se injertó hace poco: déjela aquí hasta el { $day }
   *[other] { $plants } de ellas se injertaron hace poco: deje esas { $plants } aquí hasta el { $day }
}
grafted_look = injertadas, y desde entonces nadie anotó si prendieron: mire si ya no tienen cinta, anote como pérdida las que fallaron y cuente las demás
grafted_none = son de semilla, y esta especie se suele injertar: injértelas y anótelo, o déjelas ir de semilla, que cargan tarde y no salen como la madre
grafted_some = solo { $grafted } de { $standing } están injertadas, como se suele con esta especie: injerte las demás o déjelas ir de semilla
plug_met = el pilón sostiene
plug_few_wild = el pilón aguanta; unas pocas vinieron del monte hace poco: déjelas aquí
plug_crumbles = el pilón se desmorona: espere a que las raíces lo sostengan
plug_one_apart = un pilón se desmoronó y otro aguanta: saque más; si { $PLUGS_AGAINST_ONE } aguantan, salen; si no, espere { $PLUG_AGAIN_DAYS } días
plug_circles = raíces enrolladas: pódelas o descártelas; el cambio de bolsa solo no las arregla
flush_met = sin hojas tiernas
flush_unmet_on = hojas nuevas tiernas, vistas el { $day }: espere a que maduren
flush_few = hojas nuevas tiernas vistas el { $day } en pocas de ellas: deje aquí las tiernas hasta que estén firmes
flush_feel = hojas nuevas tiernas, vistas el { $day }: toque si ya están firmes y oscuras; si están tiernas, espere unos días más
hardening_met = { $days ->
    [one] { $days } día de endurecimiento, hacen falta { $least }
   *[other] { $days } días de endurecimiento, hacen falta { $least }
}
hardening_below_advice = { $days } días de endurecimiento, hacen falta { $least } y se aconsejan { $advised }: unos días más cuidan las hojas
hardening_short = { $days ->
    [one] { $days } día de endurecimiento, faltan { $short } para { $least }
   *[other] { $days } días de endurecimiento, faltan { $short } para { $least }
}
hardening_stood_below = lleva { $days } días con esta luz, hacen falta { $least } y se aconsejan { $advised }: unos días más cuidan las hojas
hardening_stood = lleva { $days } días con esta luz, y adonde va no hay más: no hay que endurecerla
hardening_stood_tray = lleva { $days } días con esta luz, como pueden tener las parcelas de su especie: no hay que endurecerla
hardening_small_step_tray = lleva { $days } días con esta luz, y de ahí el paso a parcelas de su especie es pequeño: no hay que endurecerla
hardening_small_step = lleva { $days } días con esta luz, y de ahí el paso es pequeño: no hay que endurecerla
hardening_steps_taken = lleva { $days } días con luz bastante para este paso: no hay más que endurecer
hardening_stood_here = lleva { $days } días con esta luz, hacen falta { $least }
hardening_stood_short = { $days ->
    [0] está con esta luz desde hoy, hacen falta { $least } días: déjela ahí, si su parcela no tiene más luz
    [one] lleva { $days } día con esta luz, faltan { $short } para { $least }: déjela ahí, si su parcela no tiene más luz
   *[other] lleva { $days } días con esta luz, faltan { $short } para { $least }: déjela ahí, si su parcela no tiene más luz
}
hardening_soft = sale tierna: no hay que endurecerla
hardening_no_brighter = esta parcela no tiene más luz que donde estaba: no hay que endurecerla para ella
hardening_rests = a la sombra hasta el { $until }, por sus raíces o injertos; después empieza el endurecimiento, que toma { $least } días
of_those_joined = { $plants ->
    [one] { $sentence }. Es por la planta que se juntó con ellas el { $day }
   *[other] { $sentence }. Es por las { $plants } plantas que se juntaron con ellas el { $day }
}
hardening_not_before = no ha empezado el endurecimiento, que toma { $least } días: hay tiempo desde el { $day }
hardening_not_begun = no ha empezado el endurecimiento, que toma { $least } días: acérquela a la luz y riegue menos
hardening_begun_today = se endurece desde hoy, toma { $least } días: déjela ahí
hardening_leapt = el paso del { $on } fue muy grande y no endurece: cuenta desde el { $from }, y toma entonces { $least } días
hardening_said_alone = anotado como empezado el { $day }, pero donde está la luz nunca cambió, y esta parcela es más clara: páselo a más luz por pasos, o anote la luz que tiene; luego toma { $least } días
hardening_put_back = la sombra se volvió a subir el { $day }: el endurecimiento, { $least } días, empieza de nuevo con el próximo paso hacia la luz
hardening_fresh = el último paso hacia la luz fue el { $day } y debe tener { $LAST_STEP_DAYS } días: desde el { $from }
step_met = estaba con { $from } de luz, esta parcela tiene { $to }: un paso pequeño
step_same = estaba con { $from } de luz, esta parcela tiene la misma
step_darker = estaba con { $from } de luz, esta parcela tiene { $to }: más sombra, no hay que endurecerla para eso
step_met_tray = está con { $from } de luz, su especie va a { $to } o más: un paso pequeño
step_inside_tray = está con { $from } de luz, como pueden tener las parcelas para su especie
step_darker_tray = está con { $from } de luz, su especie va a { $to } o menos: más sombra, no hay que endurecerla para eso
step_watch = estaba con { $from } de luz, esta parcela tiene { $to }: { $ratio } veces la luz, cuide que no se quemen las hojas
step_watch_tray = está con { $from } de luz, su especie va a { $to } o más: { $ratio } veces la luz, mejor otro paso antes
step_too_bright = estaba con { $from } de luz, esta parcela tiene { $to }: { $ratio } veces la luz, sáquela antes en { $steps } pasos
step_after_rest = está con { $from } de luz y va a { $to }: { $ratio } veces la luz. A la sombra hasta el { $day } por sus raíces, y luego hacia la luz por pasos
step_too_bright_tray = está con { $from } de luz, su especie va a { $to } o más: { $ratio } veces la luz, sáquela en { $steps } pasos
step_too_dark = estaba con { $from } de luz, esta parcela tiene { $to }: mucha más sombra de la que conoce
step_too_dark_tray = está con { $from } de luz, su especie va a { $to } o menos: mucha más sombra de la que conoce
step_back_from_shade = { $days ->
    [one] { $sentence }. Volvió de { $days } día a la sombra: mire si hay hojas quemadas el { $look }
   *[other] { $sentence }. Volvió de { $days } días a la sombra: mire si hay hojas quemadas el { $look }
}
step_after_burn = { $sentence }. Pasó a { $now } de luz el { $since }, un paso muy grande: téngala a la sombra hasta el { $until } y mire si hay hojas quemadas
step_in_sun = { $sentence }. Pasó a { $now } de luz el { $since }, un paso muy grande, y sigue ahí: a la sombra hoy mismo, y mire si hay hojas quemadas. Se queda hasta que esté a la sombra, o hasta que se cuente el { $shows } o después y no esté quemada
met_held = sin retener
met_treated = sin espera de tratamiento
met_plant_back = sin espera antes de sembrar
met_pest = sin plaga ni enfermedad
met_flush = hojas firmes
held_met = nadie la retiene
held_unmet_said = retenida: { $why }
held_stood = estuvo en { $place } mientras estaba retenido: { $why }. Pregunte si estas pueden salir y, si pueden, anótela libre otra vez
held_unmet_until = retenida hasta el { $day }: { $why }
treated_met = sin tratamiento activo
treated_unmet_said = tratada con { $what }, y la espera sigue
treated_plants_until = aquí hay plantas de { $tray }, tratada con { $what }: hasta el { $day }, según su espera anotada, nadie trabaja con las manos en esta parcela
treated_beside_until = { $tray }, tratada con { $what }, está o estuvo en esta mesa: hasta el { $day }, según la espera anotada, nadie trabaja aquí con las manos
treated_dries = tratada con { $what }: nadie trabaja aquí con las manos hasta que seque. Desde el { $day } se puede
treated_of_day = tratada con { $what }: nadie trabaja aquí con las manos ese día. Desde el { $day } se puede
treated_beside_of_day = { $tray }, tratada con { $what }, está o estuvo en esta mesa: nadie trabaja aquí con las manos ese día. Desde el { $day } se puede
treated_beside_dries = { $tray }, tratada con { $what }, está o estuvo en esta mesa: nadie trabaja aquí con las manos hasta que seque. Desde el { $day } se puede
treated_here_until = esta mesa se trató con { $what }: hasta el { $day }, según la espera anotada, nadie trabaja aquí con las manos
treated_drifted_until = estas plantas estaban junto a { $tray } cuando se trató con { $what }, y la deriva llega: hasta el { $day }, según la espera anotada, nadie las toma con las manos
treated_stood_until = estas plantas se pusieron en { $place } después de tratarlo con { $what }: hasta el { $day } tome bolsas y hojas con guantes, y lávese
treated_unmet_until = tratada con { $what }: la espera anotada termina el { $day }
plant_back_met = nada contra malezas espera aún en la tierra
plant_back_bench = esta mesa se trató con { $what } antes de que llegaran, y puede quedar en su tierra: ponga las bolsas donde las raíces no la toquen, y mire las hojas más nuevas antes de que salgan
plant_back_said = aquí se usó { $what }, y su tiempo antes de sembrar sigue
plant_back_until = aquí se usó { $what }: su etiqueta no deja sembrar antes del { $day }
pest_met = no hay plaga ni enfermedad anotada que siga sin resolver
pest_on_few = visto el { $day }: { $what }, en { $share } de las plantas. Mire otra vez antes de que salgan y deje las que lo tengan
pest_not_counted = visto el { $day }: { $what }; nadie anotó en cuántas, y por eso se retiene. Cuente y anótelo con su porcentaje
pest_on_many = visto el { $day }: { $what }, en { $share } de las plantas. Se va con ellas a la parcela: descarte o trate, luego mire y anote el porcentaje que queda, 0 si ya no hay
pest_of_soil = visto el { $day }: { $what }. Va con tierra y raíces: { $next }
pest_of_soil_apart = visto el { $day }: { $what }. Va con tierra y raíces: aparte la bandeja, pregunte si hay que avisar, y { $next }
pest_in_stem = visto el { $day }: { $what }. Vive dentro del tallo y se va con la planta: { $next }
pest_may_spread = visto el { $day }: { $what }. Puede ser una enfermedad que se pega: aparte la bandeja, y { $next }
pest_beside_tray = estas plantas están o estuvieron junto a { $tray }, donde se vio { $what } el { $day }: mírelas antes de que salgan, y anote porcentaje 0 si ninguna lo tiene
pest_beside_place = estas plantas están o estuvieron donde se vio { $what } el { $day }: mírelas antes de que salgan, y anote porcentaje 0 si ninguna lo tiene
pest_leaves_many = visto el { $day }: { $what }, en { $share } de las plantas. No se va con ninguna planta, pero la que perdió sus hojas no pega: cuente las que conservan hojas sanas ({ $leaves }), y mida una muestra con sus hojas, o anote el porcentaje de las que no
pest_leaves_few = visto el { $day }: { $what }, en { $share } de las plantas. No se va con ninguna planta: deje las que no conservan hojas sanas ({ $leaves })
pest_leaves_uncounted = visto el { $day }: { $what }; nadie anotó en cuántas, y por eso se retiene. No se va con ninguna planta: anote el porcentaje de las que no conservan hojas sanas ({ $leaves })
pest_spreads = visto el { $day }: { $what }. Basta una planta que lo tenga: aparte la bandeja, pregunte si hay que avisar, y { $next }
pest_unknown = visto el { $day }: { $what }. Este nombre no se conoce aquí, y lo que nadie sabe no es seguro: anótelo otra vez con "se pega de planta a planta" sí o no
pest_sign = si usted sabe que no es enfermedad (falta de agua, falta de abono, quemadura de sol), anótelo otra vez con "se pega de planta a planta" no; si no lo sabe, { $next }
pest_next_kind = anótelo otra vez con "se pega de planta a planta" sí o no: su nombre no lo dice
pest_next_share = cuente en cuántas plantas está, y anótelo otra vez con ese día y su porcentaje
pest_next_out = descarte lo que lo tenga con su tierra, en una bolsa, quemado o enterrado lejos de aquí, en ninguna abonera que use el vivero; anótelo como descarte: al menos { $least } de sus plantas ({ $so_far })
pest_next_out_or_treat = descarte lo que lo tenga con su tierra, en una bolsa, quemado o enterrado lejos de aquí, en ninguna abonera que use el vivero; anótelo como descarte: al menos { $least } de sus plantas ({ $so_far }). O trate toda la bandeja según la etiqueta, y anótelo
pest_next_taken_out = arranque lo que lo tenga con sus raíces y la tierra de ellas, en una bolsa, quemado o enterrado lejos de aquí; anótelo como plantas perdidas, al menos { $least } ({ $so_far } hasta hoy)
pest_next_taken_out_or_treat = arranque lo que lo tenga con sus raíces y la tierra de ellas, en una bolsa, quemado o enterrado lejos de aquí; anótelo como plantas perdidas, al menos { $least } ({ $so_far } hasta hoy). O trate la tierra según la etiqueta, y anótelo
pest_next_rest = deje descansar esta tierra hasta el { $day } con plantas en las que no vive, y no saque de ella tierra ni herramientas sin lavar: dura años, y en la tierra nadie lo ve. Después mire lo que crece allí, y si ninguna planta lo tiene anote porcentaje 0
pest_so_far = hasta hoy { $so_far }
pest_so_far_and_died = hasta hoy { $so_far }; se cuentan también { $died } que murieron de eso
pest_next_whole_tray = descarte toda la bandeja con su tierra y sus bolsas, quemada o enterrada lejos de aquí, y anótelo como descarte: lo tienen tantas que también lo tiene la tierra que comparten. No use más esa tierra, y lave la mesa
pest_next_or_count = { $next }. También basta un conteo de toda la bandeja desde el { $day }, si desde entonces murieron pocas
pest_next_deed = trate la tierra, déjela descansar o arranque lo que lo tenga, y anótelo como tratamiento, o anote las plantas sacadas; mirar no basta
pest_next_look_from = { $look }. No antes del { $day }: se nota tarde
pest_early_look = { $look }. El { $day } era muy temprano para mirar
pest_look_plants = mire al menos { $plants } de sus plantas; si ninguna lo tiene anote porcentaje 0, y cuántas se miraron
pest_look_roots = mire las raíces de al menos { $plants } de sus plantas; si ninguna lo tiene anote porcentaje 0, cuántas se miraron, y que se miraron las raíces
pest_look_ground = cave en varios puntos y mire; si no hay anote porcentaje 0
pest_look_rested = ya descansó: mire lo que crece allí, y si ninguna planta lo tiene anote porcentaje 0
pest_look_roots_grown = saque { $plants } plantas que hayan crecido en esta tierra desde entonces (malezas, frijol o tomate sembrados para eso) y mire sus raíces; si ninguna lo tiene anote porcentaje 0, cuántas se miraron, y que se miraron las raíces
pest_look_hosts_grown = en la tierra nadie lo ve: mande analizar la tierra, o haga crecer en ella { $plants } plantas tiernas de lo que ataca y mire sus raíces; si no, déjela descansar con plantas en las que no vive. Si ninguna lo tiene anote porcentaje 0, cuántas se miraron, y que se miraron las raíces
pest_look_bed = mire las plantas de esta parcela; si ninguna lo tiene anote porcentaje 0
pest_brought = plantadas aquí: { $plants } plantas de { $tray }, donde se vio { $what } el { $day }. Arranque lo que lo tenga con su tierra, y mire { $look_at } de ellas antes de plantar más. Si ninguna lo tiene anote porcentaje 0 de esta parcela, y cuántas se miraron
pest_brought_with = plantadas aquí: { $plants } plantas de { $tray }, que estuvieron en una misma bandeja con las de { $other }, donde se vio { $what } el { $day }. Arranque lo que lo tenga con su tierra, y mire { $look_at } de ellas antes de plantar más. Si ninguna lo tiene anote porcentaje 0 de esta parcela, y cuántas se miraron
pest_brought_place = plantadas aquí: { $plants } plantas de { $tray }, que estaban en { $place } cuando se vio allí { $what } el { $day }. Arranque lo que lo tenga con su tierra, y mire { $look_at } de ellas antes de plantar más. Si ninguna lo tiene anote porcentaje 0 de esta parcela, y cuántas se miraron
pest_brought_place_left = plantadas aquí: { $plants } plantas de { $tray }, que estuvieron en { $place } hasta el { $left }; allí se vio { $what } el { $day }, y eso se esconde en las plantas antes de que se vea. Arranque lo que lo tenga con su tierra, y mire { $look_at } de ellas antes de plantar más. Si ninguna lo tiene anote porcentaje 0 de esta parcela, y cuántas se miraron
after_wait_until = desde el { $day }, cuando termine la espera, y no antes: { $sentence }
after_wait_unwritten = solo cuando se sepa la espera y haya terminado: { $sentence }
pest_out_of = { $plants } de estas salieron de { $tray }, donde se vio { $what } el { $day }: se esconde en las plantas antes de que se vea. Aparte la bandeja, y { $next }
pest_together = estas estuvieron en una misma bandeja con las de { $tray } hasta el { $left }, y allí se vio { $what } el { $day }: se esconde en las plantas antes de que se vea. Aparte la bandeja, y { $next }
pest_set_out_of = otras de { $tray } se plantaron en { $bed } el { $left }, y allí se vio { $what } el { $day }: se esconde en las plantas antes de que se vea. Aparte la bandeja, y { $next }
pest_where_they_stood = { $what } en { $place }, donde estas plantas estuvieron hasta el { $left }
pest_eats_bed = en esta parcela el { $day }, en muchas plantas: { $what }. Lo que se plante ahora se lo comen: busque de dónde viene, use o ponga algo en su contra (trampas, protectores, un gato, alguien que vigile: sin etiqueta) y anótelo como tratado, o vuelva a mirar y anote porcentaje 0
pest_eats_bed_uncounted = visto en esta parcela el { $day }: { $what }; nadie anotó en cuántas plantas, y por eso no entra nada. Cuente las que perdieron hojas y anótelo con ese porcentaje; o use o ponga algo en su contra y anótelo como tratado
pest_on_shade = { $plants ->
    [one] visto en esta parcela el { $day }: { $what }. Sale { $plants } de las plantas que le dan sombra: sáquela antes de plantar, y lea la luz después
   *[other] visto en esta parcela el { $day }: { $what }. Salen { $plants } de las plantas que le dan sombra: sáquelas antes de plantar, y lea la luz después
}
pest_hurt_ground = visto en esta parcela el { $day }: { $what }. Puede haber matado lo que había aquí, y con ello la sombra y la cobertura: mire de nuevo la tierra, la sombra y las labores, anote lo que halle, y después porcentaje 0 de eso
pest_stings = visto en esta parcela el { $day }: { $what }. Pica o muerde a la gente y no daña las plantas: nadie trabaja en esta parcela; marque el sitio, y quien sea alérgico que quede lejos. Que lo traslade alguien que sepa; cuando ya no esté, anote porcentaje 0
pest_stings_here = visto en esta mesa el { $day }: { $what }. Pica o muerde a la gente y no daña las plantas: nadie trabaja aquí; marque el sitio, y quien sea alérgico que quede lejos. Que lo traslade alguien que sepa; cuando ya no esté, anote porcentaje 0
pest_in_bed = visto en esta parcela el { $day }: { $what }. Búsquelo antes de plantar
pest_in_ground = visto en esta parcela el { $day }: { $what }. Espera raíces tiernas: antes de plantar, { $next }
pest_holds_bed = visto en esta parcela el { $day }: { $what }. Espera raíces y plantas tiernas, y por eso no se planta nada: { $next }
living_met_plants = vivas: { $plants }
living_unmet = no hay nada en pie
load_met = alcanza para salir: { $plants }
load_unmet = { $least ->
    [one] muy pocas para salir: { $plants }; un viaje es { $least }
   *[other] muy pocas para salir: { $plants }; un viaje son { $least }
}
good_until_met = sirven hasta el { $day }; { $care }
good_until_long = sirven hasta el { $day } según lo anotado, y a raíz desnuda rara vez duran más de { $HEELED_IN_KEEP_DAYS } días: { $alive }; { $care }
bare_roots_met = su especie vive a raíz desnuda, con las hojas recortadas
bare_roots_unmet = su especie no vive a raíz desnuda: embólselas ya, con mucha sombra y humedad, y que salgan cuando el pilón sostenga
bare_roots_wildling = arrancadas del monte con raíces rotas: embólselas enseguida, sombra densa y humedad de tres a cuatro meses, y luego hacia la luz por pasos
good_until_unmet = su último día fue el { $day }: { $alive }; descarte lo muerto
good_until_long_gone = su último día fue el { $day }, y a raíz desnuda no aguantan semanas: descártelas
good_until_taken = nadie anotó cuánto aguantan, se toma hasta el { $day }: { $alive }. Lo que vive: plántelo o embólselo hoy, y cuéntelo
alive_roots = mírelas: raicillas húmedas y corteza verde, vivas; raíces secas y corteza parda, muertas
alive_bark = raspe la corteza: verde y húmeda vive, parda y seca está muerta
alive_heart_leaves = mire la base y el cogollo: firme y verde vive, blando, podrido o arrugado está muerto
alive_corm = mire el cormo en el corte: firme y blanco vive, blando o pardo está muerto
alive_spear_leaf = mire la hoja flecha y el coco: flecha verde que no se suelta y coco sano viven, si la flecha sale al jalarla está muerta
alive_rhizome = mírelos: firmes y con yemas sanas, vivos; blandos, con moho o arrugados, muertos
alive_vine = mire los nudos: firmes y verdes, vivos; flojos, negros o arrugados, muertos
alive_clump = mire la base: firme y clara o verde vive, seca por dentro o podrida está muerta
good_until_looked = pasado el { $day }, que nadie anotó, y contadas vivas hoy: que salgan hoy
light_met = { $light } de luz en esta parcela, dentro de { $band }
light_near = { $light } de luz en esta parcela, al lado de { $band }: una lectura no da para más
light_apart = { $sentence }. Las lecturas desde el { $since } van de { $low } a { $high }: lea otra vez, en varios puntos
light_too_bright = { $light } de luz en esta parcela, más de { $most }: deje crecer la sombra primero
light_too_dark = { $light } de luz en esta parcela, menos de { $least }: pode la sombra primero
light_reckoned_met = { $light } según el cálculo, sin lectura, dentro de { $band }: lea la luz antes de llevar muchas plantas
light_reckoned_bright = { $light } según el cálculo, sin lectura, más de { $most }: deje crecer la sombra primero, o lea la luz
light_reckoned_dark = { $light } según el cálculo, sin lectura, menos de { $least }: pode la sombra primero, o lea la luz
light_coming_met = viene { $light } de luz, dentro de { $band }
light_coming_bright = viene { $light } de luz, más de { $most }: prevea sombra a tiempo
light_coming_dark = viene { $light } de luz, menos de { $least }: prevea podar la sombra
soil_met = el suelo cede con { $mpa } MPa
soil_hard = el suelo resiste con { $mpa } MPa, las raíces entran bien hasta { $most }
soil_rod_met = la varilla entró { $depth } cm
soil_rod_short = la varilla se frenó a { $depth } cm, hacen falta { $needed } cm, hasta donde llega el pilón
soil_beneath_short = la varilla se frenó { $depth } cm bajo el fondo del hoyo, { $all } cm con el hoyo; las raíces necesitan { $needed } cm
soil_beneath_taken = la varilla se detuvo { $depth } cm bajo el fondo de un hoyo tomado por { $hole } cm, lo que pide su pilón: nadie anotó cuánto tiene; las raíces necesitan { $needed } cm en total
soil_beneath_if = blanda { $depth } cm bajo el fondo del hoyo; las raíces necesitan { $needed } cm en total, y falta anotar la profundidad del hoyo. Basta si el hoyo tiene { $hole } cm, como pide su pilón: mídalo y anote otra vez los hoyos con su profundidad
soil_beneath_unknown = la varilla se detuvo { $depth } cm bajo el fondo del hoyo, y nadie anotó qué tan hondo es; las raíces necesitan { $needed } cm en total. Anote otra vez los hoyos con su hondura
soil_beside_short = la varilla se frenó a { $depth } cm al lado del hoyo; las raíces que salen de él necesitan { $needed } cm
soil_lifted = aquí se sacaron tubérculos hace { $days } días: el suelo está suelto
soil_tubers_met = el suelo está suelto: { $tubers }
soil_tubers_thin = los tubérculos sacados salieron de cuello delgado: el suelo está duro
soil_loosen_first = { $hard }: cave o afloje el suelo, o siembre antes tubérculos
soil_hole_is_a_pot = { $hard }: el hoyo es una maceta en suelo duro. Afloje fondo y lados con la barra, o hágalo más hondo y ancho, y meta la varilla otra vez
soil_around_hole = { $hard }: alrededor del hoyo las raíces crecen a la mitad o menos. Haga el hoyo más ancho, o afloje el suelo al lado y debajo
cleared_on = limpiada el { $day }
holes_on = hoyos hechos al { $day }
weeded_on = deshierbada el { $day }
mulched_on = cobertura puesta el { $day }
fenced_on = cercada el { $day }
cleared_stale = limpiada el { $day }, y eso dura { $lasts } días: limpie lo que volvió a crecer, luego anótelo
holes_stale = hoyos hechos el { $day }, y eso dura { $lasts } días: ábralos de nuevo, luego anótelo
holes_shallow = los hoyos del { $day } son muy bajos para la bolsa de { $cm } cm: hágalos más hondos, luego anote la hondura
weeded_stale = deshierbada el { $day }, y eso dura { $lasts } días: deshierbe otra vez alrededor de los hoyos, luego anótelo
mulched_stale = cobertura puesta el { $day }, y eso dura { $lasts } días: ponga cobertura nueva, luego anótelo
fenced_stale = cercada el { $day }, y eso dura { $lasts } días: revise la cerca
cleared_unmet = la limpia no está anotada: limpie hierba y monte, luego anótelo
holes_unmet = los hoyos no están anotados: hágalos, luego anótelo
weeded_unmet = la deshierba no está anotada: deshierbe junto a los hoyos, luego anótelo
mulched_unmet = la cobertura no está anotada: póngala alrededor de los hoyos, luego anótelo
fenced_eaten = aquí entraron el { $day } animales que una cerca detiene, y nadie ha cercado desde entonces: cerque la parcela, y anótelo
fenced_eaten_beside = en otra parcela de este terreno entraron el { $day } animales que una cerca detiene: mire la cerca de esta, o cerque la parcela, y anótelo; o anote porcentaje 0 si aquí no entró ninguno
fenced_unmet = la cerca no está anotada: cerque la parcela contra el ganado, luego anótelo
water_met = { $days ->
    [one] { $mm } mm de lluvia en { $days } día
   *[other] { $mm } mm de lluvia en { $days } días
}
water_usual = nadie leyó el pluviómetro en { $NO_GAUGE_DAYS } días, pero es época de las lluvias usuales: meta un dedo en la tierra
water_left_met = { $days ->
    [0] quedan { $left } de { $full } mm para raíces jóvenes: alcanza para hoy, y no más sin lluvia
    [one] quedan { $left } de { $full } mm para raíces jóvenes: alcanza para { $days } día sin lluvia
   *[other] quedan { $left } de { $full } mm para raíces jóvenes: alcanza para { $days } días sin lluvia
}
water_left_seen = { $days ->
    [0] tierra hallada mojada el { $day }, quedan { $left } de { $full } mm para raíces jóvenes: alcanza para hoy, y no más sin lluvia
    [one] tierra hallada mojada el { $day }, quedan { $left } de { $full } mm para raíces jóvenes: alcanza para { $days } día sin lluvia
   *[other] tierra hallada mojada el { $day }, quedan { $left } de { $full } mm para raíces jóvenes: alcanza para { $days } días sin lluvia
}
water_left_since_dry = { $days ->
    [0] tierra hallada seca el { $day }; con la lluvia desde entonces quedan { $left } de { $full } mm para raíces jóvenes: alcanza para hoy, y no más sin lluvia
    [one] tierra hallada seca el { $day }; con la lluvia desde entonces quedan { $left } de { $full } mm para raíces jóvenes: alcanza para { $days } día sin lluvia
   *[other] tierra hallada seca el { $day }; con la lluvia desde entonces quedan { $left } de { $full } mm para raíces jóvenes: alcanza para { $days } días sin lluvia
}
water_left_usual = { $days ->
    [one] quedan { $left } de { $full } mm para raíces jóvenes, si cayó la lluvia usual en { $days } día que nadie leyó: meta un dedo en la tierra
   *[other] quedan { $left } de { $full } mm para raíces jóvenes, si cayó la lluvia usual en { $days } días que nadie leyó: meta un dedo en la tierra
}
water_left_near = quedan { $left } de { $full } mm para raíces jóvenes, hacen falta { $needed }: no más lejos de lo que yerra un pluviómetro. Meta un dedo en la tierra y siembre donde esté mojada
water_left_short = solo quedan { $left } de { $full } mm para raíces jóvenes, hacen falta { $needed }: espere unos { $rain } mm de lluvia, o anote la tierra como mojada donde un dedo la halle así
water_found_dry = tierra hallada seca el { $day }, diga lo que diga la cuenta: espere unos { $rain } mm de lluvia, o revise otra vez y anote la tierra como mojada donde un dedo la halle así
water_short_since_dry = tierra hallada seca el { $day }; con la lluvia desde entonces quedan solo { $left } de { $full } mm para raíces jóvenes, hacen falta { $needed }: espere unos { $rain } mm de lluvia, o revise otra vez y anote la tierra como mojada donde un dedo la halle así
water_left_at_feet = { $sentence }. Lo hallado mojado el { $day } cuenta como el pie regado de las plantas: revise entre ellas, y anote esa revisión con donde="sin cavar"
water_short = { $days ->
    [one] solo { $mm } mm de lluvia en { $days } día, hacen falta { $needed }: espere la lluvia, o anote la tierra como mojada donde un dedo la halle así
   *[other] solo { $mm } mm de lluvia en { $days } días, hacen falta { $needed }: espere la lluvia, o anote la tierra como mojada donde un dedo la halle así
}
water_near = { $days ->
    [one] { $mm } mm de lluvia en { $days } día, hacen falta { $needed }: no más lejos de lo que yerra un pluviómetro. Meta un dedo en la tierra y siembre donde esté mojada
   *[other] { $mm } mm de lluvia en { $days } días, hacen falta { $needed }: no más lejos de lo que yerra un pluviómetro. Meta un dedo en la tierra y siembre donde esté mojada
}
water_drained = cayeron { $mm } mm de lluvia en dos días hasta el { $day }: mire si hay agua en los hoyos, y no siembre en los que la tengan
water_drowned = cayeron { $mm } mm de lluvia en dos días hasta el { $day }: la tierra está llena de agua y las raíces no hallan aire. Espere a que drene, no antes del { $drained }, y mire: sin agua en el hoyo
season_met = quedan lluvias; el último día seguro es el { $day }
season_past = el último día seguro fue el { $day }: espere las próximas lluvias
season_begins = fuera de las lluvias: espere hasta el { $day }
season_from = las lluvias que quedan no alcanzan: espere hasta el { $day }
open_positions_met = { $positions ->
    [one] { $positions } hoyo libre
   *[other] { $positions } hoyos libres
}
open_positions_unmet = no hay hoyos libres en esta parcela

gap_no_shade_band = el perfil de { $species } no dice con cuánta sombra se siembra: { $write }
gap_no_bare_roots = el perfil de { $species } no dice si vive a raíz desnuda: plante unas pocas y vea, o embólselas. Cuando lo sepa: { $write }
gap_no_most_days = el perfil de { $species } no dice cuántos días aguanta en su bolsa: { $write }
gap_read_after_rain = el suelo se leyó suave el { $day }, tras { $mm } mm de lluvia: empapado se lee suave. Lea otra vez a los dos días de escurrir
gap_read_soaked = el suelo se leyó suave el { $day } estando empapado, y empapado se lee suave. Lea otra vez dos días después
gap_read_dry = el suelo se leyó en seco, eso no dice nada: lea otra vez dos días después de un buen riego o lluvia
gap_rod_too_hard = la varilla se empujó con { $pushed }, tan fuerte que también entra en suelo duro: empuje con unos { $right } kg
gap_rod_too_hard_at = la varilla bajó { $depth } cm con { $pushed }, un empuje tan fuerte que también entra en suelo duro: empuje con unos { $right } kg
gap_rod_too_weak = la varilla se frenó a { $depth } cm con apenas { $pushed }, muy poco empuje para saber: empuje con unos { $right } kg
gap_around_hole = los hoyos están hechos, pero nadie vio el suelo alrededor: a los dos días de mojarse bien, meta la varilla en el fondo de un hoyo y al lado, { $push }, hasta { $depth } cm: las raíces salen del hoyo, y el pilón solo no lo dice
gap_read_too_shallow = el suelo se leyó blando solo hasta { $depth } cm, las plantas van a { $needed } cm: lea más hondo
gap_gauge_partly = el pluviómetro se leyó { $read } de los últimos { $of } días, { $mm } mm: anote los días que faltan, también los ceros
shade_goes_with_bunches = cerca de { $month } se va { $share } de la sombra, al cortar { $bunches } racimos de { $nurse }
shade_goes_with_stems = cerca de { $month } se va { $share } de la sombra, cuando tallos de { $nurse } ya dieron fruto
shade_goes_by_age = cerca de { $month } se va { $share } de la sombra, cuando { $nurse } cumple su tiempo
shade_set_next = { $sentence }: las siguientes nodrizas dan sombra a tiempo si se siembran hasta el { $day }
shade_set_late = { $sentence }: ya es tarde para las nodrizas que siguen, había que sembrarlas a más tardar el { $day } para que dieran sombra a tiempo
gap_light_reckoned = no se leyó la luz; calculada por las nodrizas es de { $light }: lea la luz en esta parcela
gap_light_no_crown = no se sabe la luz, y nada dice de las copas de { $plant } ahí: lea la luz en esta parcela
gap_light_no_age = no se sabe la luz, y nadie anotó cuándo se sembró { $nurse }: lea la luz en esta parcela, o mida { $nurse } con una cinta
gap_light_trees = no se sabe la luz, y dan sombra plantas sin especie anotada: lea la luz en esta parcela
gap_light_too_many = no se sabe la luz, y tantas nodrizas no se calculan: lea la luz en esta parcela
gap_light_since = su luz se sabe apenas desde el { $since }: déjela ahí hasta el { $until }, o anote con su llegada desde cuándo está así
gap_height_on_arrival = { $cm } cm de alto el { $day }, cuando llegaron, según lo anotado, y sin medir aquí: mida una muestra de { $USUAL_SAMPLE }, o todas las que hay
gap_roots_cut = se cortaron raíces el { $day }: a la sombra hasta el { $until }, cuando haya nuevas; ningún pilón sacado en los primeros { $CUT_ROOTS_UNSEEN_DAYS } días dice si ya las hay
gap_potted_on = pasada a otra tierra el { $day }: hasta el { $until } el pilón puede deshacerse; espere, o saque un pilón y vea que sostiene
gap_not_looked_at = raíces desnudas desde el { $day }, y la mayoría se seca en { $days } días, diga lo que diga el último día escrito: mírelas hoy, raicillas húmedas y corteza verde bajo la uña, y escriba hoy cuántas viven
gap_sample_old = se midió el { $day }, hace más de { $SAMPLE_LASTS_DAYS } días, y las plantas crecen: mida otra vez una muestra de { $USUAL_SAMPLE }, o todas las que hay
gap_came_after_sample = se midió el { $day }, antes de juntar otras con ellas: mida otra vez una muestra de { $USUAL_SAMPLE }, o todas las que hay
gap_kept_too_long = el { $day } se pusieron aquí plantas a raíz desnuda pasadas de su último día: sombra y humedad hasta el { $until }; solo un pilón sacado desde entonces dice si viven
gap_wildlings_among = hay plántulas del monte entre estas, en bolsa desde el { $day }: sombra densa y humedad hasta el { $until }, y luego hacia la luz por pasos. Un pilón sacado antes no dice nada, porque puede ser de las otras
gap_wildlings = plántulas del monte, en bolsa desde el { $day }: sombra densa y humedad hasta el { $until }, o saque un pilón y vea que aguanta, y luego hacia la luz por pasos
gap_no_plant_back = aquí se usó { $what } el { $day }, y no está anotado cuánto pide la etiqueta esperar antes de sembrar: lo que mata malezas mata raíces tiernas. Lea la etiqueta y anótelo otra vez con ese día y a los cuántos días se puede sembrar
gap_coming_day = es un día por venir: su lluvia todavía no se sabe
gap_coming_after_dry = { $days ->
    [one] un día por venir tras { $days } día seco, el último el { $day }: las plantas salen solo si antes llueve bien
   *[other] un día por venir tras { $days } días secos, el último el { $day }: las plantas salen solo si antes llueve bien
}
gap_coming_after_dry_look = es un día por venir, y la tierra se halló seca el { $day }: las plantas salen solo si antes llueve bien, o un dedo la halla mojada
gap_unread_after_dry = { $days ->
    [one] { $days } día seco, el último el { $day }, y la lluvia desde entonces no está anotada: lea el pluviómetro y anótela, también los ceros, o anote la tierra como mojada donde un dedo la halle así
   *[other] { $days } días secos, el último el { $day }, y la lluvia desde entonces no está anotada: lea el pluviómetro y anótela, también los ceros, o anote la tierra como mojada donde un dedo la halle así
}
gap_most_of_bed_died = hasta el { $day } murieron aquí { $dead } de nadie sabe qué y { $alive } viven: primero busque la causa, y anótela como plaga o enfermedad de esta parcela, o como ninguna, o el conteo otra vez con su causa; si no, cuente otra vez desde el { $again }
gap_ground_kills = hasta el { $day } murieron aquí { $dead } de { $what } y { $alive } viven: puede matar también lo que se plante ahora. Primero mire el suelo y las que viven, y anote lo que halle como plaga o enfermedad de esta parcela, o ninguna, porcentaje 0, si ya pasó; si no, cuente otra vez desde el { $again }
gap_came_from_dying = { $plants } de estas salieron de { $tray }, donde hasta el { $day } había { $gone } muertas o perdidas y { $alive } vivas, y nadie anotó de qué: busque la causa y anótela de estas o de { $tray } como plaga o enfermedad, o como ninguna; si no, cuente estas otra vez desde el { $again }
gap_left_dying = { $plants } de estas salieron de { $tray }, donde hasta el { $day } había { $gone } muertas o perdidas y { $alive } vivas, y nadie anotó de qué: mire estas antes de que salgan, y anote ninguna, porcentaje 0, si no hay planta enferma
gap_set_out_from_dying = plantadas aquí: { $plants } plantas que salieron de { $tray }, donde hasta el { $day } había { $gone } muertas o perdidas y { $alive } vivas, y nadie anotó de qué: mire estas antes de plantar más, y anote ninguna, porcentaje 0, de esta parcela si no hay planta enferma
gap_died_beside = estas plantas están o estuvieron junto a { $tray }, donde hasta el { $day } había { $gone } muertas o perdidas y { $alive } vivas, y nadie anotó de qué: mírelas antes de que salgan, y anote ninguna, porcentaje 0, si no hay planta enferma
gap_died_in_bed = se plantaron plantas de { $tray } en { $bed }, donde hasta el { $day } había { $gone } muertas o perdidas y { $alive } vivas, y nadie anotó de qué: mire estas antes de seguir, y anote ninguna, porcentaje 0, si no hay planta enferma
gap_sick_in_bed = se plantaron plantas de { $tray } en { $bed }, donde se vio { $what } el { $day }: puede que estuviera escondido en las que salieron de { $tray } con ellas. Mire estas antes de seguir, y anote ninguna, porcentaje 0, si no hay planta enferma
gap_many_died = hasta el { $day } había { $gone } muertas o perdidas y { $alive } vivas, y nadie anotó de qué: busque la causa y anótela como plaga o enfermedad, o como ninguna; si no, cuente otra vez desde el { $again }
gap_fresh_dung = aquí se puso { $what } el { $day }: el estiércol fresco y la urea queman raíces jóvenes. Siembre desde el { $until }; si estaba bien curtido, anótelo así, o los días hasta sembrar
gap_frost = la noche del { $day } tuvo { $celsius } °C: busque heladas, hojas y brotes cafés, negros o vidriosos. Después cuente o mida las plantas, o anote que al mirar no halló nada
gap_great_heat = el { $day } tuvo { $celsius } °C: busque hojas quemadas y brotes secos. Después cuente o mida las plantas, o anote que al mirar no halló nada
gap_harmed = hasta el { $day } se perdieron { $gone } por { $what }, y quedan { $alive }: mire primero esas, si sigue pasando y si están sanas. Después cuéntelas o mídalas, o anote que al mirar no halló nada
gap_no_plant_back_plants = tratada con { $what } el { $day }: nadie sabe aquí si daña las plantas, y no está anotado cuánto pide la etiqueta esperar antes de sembrar. Lea la etiqueta y anótelo otra vez con ese día y a los cuántos días se puede sembrar, 0 si no es contra malezas. También basta contar las vivas desde el { $alive }
gap_may_be_scorched = tratada con { $what } el { $day }: mata lo que moja y tarda de una a tres semanas en verse, diga lo que diga su etiqueta sobre sembrar. Déjelas aquí, y cuente las vivas desde el { $alive }, sin las que amarillean o se secan
or_no_label = { $sentence }, 0 si no tiene etiqueta
gap_plug_tells = no se sabe cuánto aguanta aún en su bolsa; el pilón que se sacó el { $day } aguanta, y eso basta hasta el { $until }
gap_no_waiting_time_plants = aquí hay plantas de { $tray }, tratada con { $what } el { $day }, y no está anotado su tiempo de espera: hasta anotarlo nadie trabaja con las manos en esta parcela. Lea la etiqueta y anótelo otra vez con ese día y a los cuántos días es seguro
gap_no_waiting_time_beside = { $tray }, tratada con { $what } el { $day }, está o estuvo en esta mesa, y no está anotado su tiempo de espera: hasta anotarlo nadie trabaja aquí con las manos. Lea la etiqueta y anótelo otra vez con ese día y a los cuántos días es seguro
gap_no_waiting_time_here = esta mesa se trató con { $what } el { $day }, y no está anotado el tiempo de espera: hasta anotarlo nadie trabaja aquí con las manos. Lea la etiqueta y anótelo otra vez con ese día y a los cuántos días es seguro
gap_no_waiting_time_drifted = estas plantas estaban junto a { $tray } cuando se trató con { $what } el { $day }, la deriva llega, y no está anotado el tiempo de espera: hasta anotarlo nadie las toma con las manos. Lea la etiqueta y anótelo otra vez para esa bandeja con ese día y a los cuántos días es seguro
gap_no_waiting_time_stood = estas plantas se pusieron en { $place } después de tratarlo con { $what } el { $day }, y no está anotado el tiempo de espera: tome bolsas y hojas con guantes, y lávese. Lea la etiqueta y anótelo otra vez con ese día y a los cuántos días es seguro
gap_no_waiting_time = se usó { $what } el { $day } y no está anotado el tiempo de espera: lo que no se sabe no es seguro. Lea la etiqueta y anótelo otra vez con ese día y a los cuántos días es seguro
part_rows = { $sentence }; leído solo en las hileras { $rows }
part_rows_of = { $sentence }; leído solo en las hileras { $rows } de { $of }
part_places = { $places ->
    [one] { $sentence }; leído solo en { $places } punto
   *[other] { $sentence }; leído solo en { $places } puntos
}
part_done_rows = { $sentence }; solo en las hileras { $rows }
part_done_rows_of = { $sentence }; solo en las hileras { $rows } de { $of }
part_done_places = { $places ->
    [one] { $sentence }; solo en { $places } punto
   *[other] { $sentence }; solo en { $places } puntos
}

unknown_days_since_sowing = nadie anotó cuándo se sembró: mida una muestra de { $USUAL_SAMPLE }, o todas las que haya: dice lo mismo
unknown_days_in_container = nadie anotó desde cuándo está en esta bolsa: saque un pilón y mire las raíces
unknown_height = falta medir la altura: mida { $USUAL_SAMPLE } plantas, o todas las que hay
unknown_collar = falta medir el cuello de la raíz: mida una muestra con calibrador
unknown_leaves = falta contar las hojas: cuéntelas en una muestra
unknown_grafted = no se sabe si están injertadas: mire más abajo de las hojas y anótelo
unknown_plug = todavía no se ha sacado ningún pilón: saque uno antes de que salgan; si se desmorona, se quedan
unknown_flush = nadie ha visto las hojas nuevas: mire si están tiernas
unknown_hardening = nadie anotó con qué luz ha estado: lea la luz aquí
unknown_exposure_step = no se sabe la luz donde está: léala ahí
unknown_age_measured = falta anotar cuándo se sembró; su medida dice lo mismo
unknown_age_of_nurse = falta anotar cuándo se sembró: se siembra como viene
unknown_exposure_step_pair = no se sabe el cambio de luz: lea la luz en la bandeja y en la parcela
unknown_plant_back = no se sabe cuánto esperar antes de sembrar: lea la etiqueta y anótelo
unknown_pest = no se sabe si tiene plaga: mire y anótelo
unknown_bare_roots = no se sabe si su especie vive a raíz desnuda: plante unas pocas y vea
unknown_held = no se sabe si alguien la retiene: pregunte y anótelo
unknown_treated = no se sabe el tiempo de espera: lea la etiqueta y anótelo
unknown_living = no se sabe cuántas viven: haga un conteo
unknown_load = no se sabe cuántas se pueden sembrar: cuente y mida una muestra
unknown_good_until = falta anotar su último día: mire las raíces y anótelo
unknown_light_now = no se sabe la luz: lea la luz en esta parcela
unknown_light_coming = por lo anotado no se va pronto mucha sombra; decide la luz de hoy
unknown_soil = no se sabe cómo está el suelo: meta una varilla dos días después de un buen riego o lluvia
unknown_cleared = no se sabe si está limpia: mire y anótelo
unknown_holes = no se sabe si hay hoyos: mire y anótelo
unknown_weeded = no se sabe si está deshierbada: mire los plateos y anótelo
unknown_mulched = no se sabe si tiene cobertura: mire y anótelo
unknown_fenced = no se sabe si la cerca está en pie: recórrala y anótelo
unknown_water = no se sabe la lluvia de estos días: lea el pluviómetro y anótelo, también los ceros
unknown_season = faltan las lluvias usuales: anote desde cuándo y hasta cuándo llueve
unknown_open_positions = no se sabe cuántos hoyos hay libres: cuente las vivas en esta parcela

source_common_practice = práctica común
source_load = un viaje son { $LOAD_PLANTS } plantas, o todas las que hay si son menos (nuestro, práctica común)
source_light_step = luz de la parcela junto a la luz de la bandeja en sus últimos { $LAST_LIGHT_DAYS } días: más de { $LARGE_STEP } de la luz plena y { $LARGE_STEP_RATIO } veces la luz quema, y también más de { $STEEP_RATIO } veces con más de { $SMALL_STEP }; sobre { $FITS_UP_TO } veces, y bajo { $DARKER_WARNS_BELOW }, cuidado (nuestro; ninguna publicación da un número seguro)
source_waiting_beside = el tiempo de espera anotado con el tratamiento, para toda la mesa: propio, porque la etiqueta cuenta el área tratada y una mesa es una sola
source_waiting_time = el tiempo de espera anotado con el tratamiento; mandan la etiqueta y las normas del lugar
source_pest = nuestro: una plaga en { $PEST_HOLDS_PCT } % de las plantas o más, hojas perdidas en un tercio de ellas, toda la del suelo y las raíces, todo virus, escoba de bruja, marchitez u otra enfermedad de la que basta una planta, y toda la que nadie conoce, llega al campo; se nota tarde, y por eso mirar sirve a los { $LOOK_AFTER_DAYS } días, a los { $LOOK_AFTER_INCURABLE_DAYS } si nada la cura; la tierra en la que dura sin verse descansa { $GROUND_RESTS_DAYS } días. Práctica común: solo salen plantas sanas
source_flush = práctica común: las hojas nuevas tardan 2-3 semanas en endurecer
source_stumps_keep = nadie anotó cuánto aguantan: se toman { $STUMPS_KEEP_DAYS } días para tocones y estacas, húmedos y a la sombra (nuestro, de práctica común: de una a tres semanas); raspe la corteza, verde está viva
source_last_day_taken = nadie anotó cuánto aguantan: se toman { $BARE_ROOTS_KEEP_DAYS } días, { $HEELED_IN_KEEP_DAYS } si están enterradas en fresco y húmedo (de memoria: Jaenicke 1999, Good tree nursery practices, ICRAF); mire las raíces
source_last_day_written = el último día que se anotó cuando llegaron: práctica común
source_hardening = 3-4 semanas: Malawi moringa guide; 4-6 semanas: Tearfund, Pillars guide F14; no sale con menos de { $HARDENING_LEAST_DAYS } días, y el último paso con { $LAST_STEP_DAYS } días: nuestro, práctica común
source_holding = los días máximos de la especie, según la raíz cúbica del volumen de la bolsa (nuestro, práctica común; relacionado: Poorter et al. 2012, Functional Plant Biology 39:839); mirar el pilón vale más
source_graft_heals = los injertos pegan en 3 a 8 semanas (Hartmann y Kester, Plant Propagation, de memoria); { $GRAFT_HEALS_DAYS } días, ya sin cinta y con hojas firmes: nuestro
source_grafted_height = la altura mínima de la especie; los injertos salen con 60 a { $GRAFTED_MOST_CM } cm (Nakasone y Paull 1998, Tropical Fruits, de memoria)
source_nurse_days = nuestra: { $NURSE_AFTER_EMERGENCE_DAYS } días después de que deba salir lo último de la semilla o de los brotes
source_plug = práctica común: el pilón que sostiene y tiene puntas blancas está listo, el que se desmorona está tierno
source_root_limit = Bengough et al. 2011, Journal of Experimental Botany 62:59
source_rod = Bengough et al. 2011, Journal of Experimental Botany 62:59; empuje sobre el área de la punta de la varilla, práctica común
source_tuber_shape = práctica común: el tubérculo que sale delgado habla de suelo duro
source_tubers_lifted = práctica común: sacar tubérculos afloja el suelo hasta unos 0.4 m; se cuenta por dos épocas de lluvia, o un año si no hay lluvias descritas (nuestro)
source_safe_rains = práctica común: se siembra hasta 8 semanas antes del fin de las lluvias usuales, o hasta la mitad si son cortas
source_written_here = según lo anotado en este vivero
source_rain = nuestro, con la lluvia con que Sivakumar 1988 fecha el inicio de las lluvias (Agricultural and Forest Meteorology 42:295, de memoria); un día sin lectura del pluviómetro no se sabe, nunca es seco
source_wildlings = práctica común: las plántulas del monte quedan embolsadas en sombra densa de tres a cuatro meses ({ $WILDLING_DAYS } días lo menos) antes de sacarlas
source_any_size = nuestro: no se conoce el tamaño de esta especie; plántulas de otros árboles salen con { $ANY_LEAST_CM } cm o más
source_fresh_dung = nuestro, práctica común: el estiércol reposa { $BURNS_ROOTS_DAYS } días en la tierra antes de que haya plantas
source_plant_back = el tiempo antes de sembrar anotado con lo que se usó contra malezas; mandan la etiqueta y las normas del lugar
source_drowned = nuestro: { $DROWNED_MM } mm en dos días es tres veces lo que guarda la tierra alrededor de un pilón; la capacidad de campo llega a los dos o tres días (práctica común), en arena en un día, en arcilla en { $CLAY_DRAINS_DAYS }, y con cada { $DAY_MORE_MM } mm más un día después; en hondonadas más tarde
source_usual_rains = sin lectura del pluviómetro en { $NO_GAUGE_DAYS } días: las lluvias usuales de la época (nuestro, práctica común)
source_water_left = balance diario de FAO-56 (ecuaciones 82 a 88), por el pluviómetro, con lo que toma el aire según Hargreaves (ecuación 52); los primeros { $ROOT_DEPTH_CM } cm, el agua que guarda cada textura según el Departamento de Agricultura de Estados Unidos, de la que raíces jóvenes toman fácil { $EASILY_TAKEN_SHARE } % (nuestro)
source_light_to_come = nuestro: { $SHADE_ENDS_SHARE } % de la sombra o más que acaba dentro de { $SHADE_AHEAD_DAYS } días; vida de los tallos por el perfil, racimos cortados { $BUNCH_DAYS } días después de verlos (práctica común)
source_positions = práctica común: hoyos del trazo de la parcela como se trazó, contando una vez el que comparten dos especies, menos los impedidos y las plantas vivas
source_no_figure = el perfil de la especie, que no lo dice
source_counting = práctica común: cada 1-2 días hasta que sale la mitad, luego cada 3-4; después cada { $COUNT_EVERY_DAYS } días, { $COUNT_NEAR_EVERY_DAYS } en endurecimiento o lista, { $COUNT_SICK_EVERY_DAYS } si está enferma (nuestro)
source_sow_again = nuestra: a media emergencia nació menos del { $POOR_EMERGENCE_SHARE } % de lo esperado (práctica común); el último día de siembra es el último día seguro de las lluvias menos los días usuales hasta salir
source_stop_waiting = práctica común: pasado el último día de la especie y nada nuevo en { $NOTHING_NEW_DAYS } días o en un cuarto de los días hasta la media emergencia
source_prick_out = el lugar de siembra de la especie; práctica común: de 2 cotiledones a 2 hojas verdaderas, unas 3 semanas después de que sale la mitad
source_pot_on = práctica común: cambiar a una bolsa de 2-3 veces el volumen, podar raíces o descartar; el tiempo, como en los días en la bolsa
source_grading = altura sobre cuello mayor de { $LANKY_ABOVE }: apartar, mayor de { $CULL_LANKY_ABOVE }: descartar (nuestro, práctica común; bueno hasta 6: Jaenicke 1999, de memoria)
source_measuring = práctica común: { $SAMPLE_PLANTS } plantas al mes cerca de la salida, una celda de cada tantas, con los bordes
source_lift_plug = práctica común: sacar un pilón cerca de la salida y cerca del fin de lo que aguanta la bolsa
source_steps = el plan de endurecimiento de la especie; un paso cada 7-10 días, hasta { $FITS_UP_TO } veces la luz cabe; a lo más { $LARGE_STEP } de la luz plena en un paso, y { $STEEP_RATIO } veces donde está oscuro (nuestro)
source_treatment_over = el tiempo de espera anotado con el tratamiento
source_seed_test = práctica común: 2 x 25 semillas antes de contar con un lote; cada { $TEST_AFTER_DAYS } días (nuestro)
source_seed_life_kept = nuestro: los días de la especie a temperatura ambiente, más si la semilla que se puede secar está cerrada o en frío, menos si se guarda seca la que muere al secarse, y { $RECALCITRANT_DAYS } para esta si su ficha no da días; si nadie sabe cómo se guardó, los menos de estos
source_seed_life = los días que aguanta la semilla de la especie según cómo se guarda
source_ground_ahead = práctica común: limpia y hoyos en las 6 semanas antes de sembrar, deshierba y cobertura en las últimas 2
source_rings = práctica común: plateos cada 4 semanas en los meses 1-6
source_nurse_work = uso común: los racimos unas 12 semanas después de salir, la yuca antes del fin de la vida de sus plantas, las nodrizas siguientes tanto antes de que acabe la sombra como tardan en darla; los días, nuestros
source_nurses = nuestro: la copa de una nodriza cambia en dos meses
source_light_ahead = práctica común: la luz se revisa 3 meses antes de sembrar; una lectura vale { $READING_LASTS_DAYS } días (nuestro)
source_soil_ahead = práctica común: la varilla con el suelo a capacidad de campo antes de sembrar; Bengough et al. 2011 para el límite
source_survival = práctica común: a 1, 3, 6 y 12 meses; Evans & Turnbull 2004, de memoria
source_young_water = práctica común: se riegan o se miran las plantas jóvenes tras una semana sin lluvia en sus primeras 8 semanas; FAO-56 para lo que queda en la tierra
source_going_out = nuestro: nada impide la salida de la bandeja a la parcela; antes de que acaben lo que aguanta la bolsa y las lluvias seguras
source_gauge = práctica común: se lee cada mañana
source_collar = cuello de al menos la altura / 8, y nunca menos que el mínimo: nuestro, práctica común (Jaenicke 1999 tiene 6, de memoria); mínimo: { $floor }
source_light_reckoned = { $band }; calculado: luz a través de las copas de las nodrizas (Monsi & Saeki 1953) por edad o cinta, hojas por su perfil y la última lectura; cuatro de cinco veces dentro del rango (nuestro)
source_light_readings = { $band }; lecturas de menos de { $READING_LASTS_DAYS } días, las nuevas pesan más, ninguna de antes del último corte o pérdida grande (nuestro)
source_ground_work = { $days ->
    [one] nuestro, práctica común: lo que no está anotado no está hecho, y cuenta por { $days } día
   *[other] nuestro, práctica común: lo que no está anotado no está hecho, y cuenta por { $days } días
}

rule_days_since_sowing = días desde la siembra
rule_days_in_container = días en la bolsa
rule_height = altura
rule_collar = cuello de la raíz
rule_leaves = hojas
rule_grafted = injerto
rule_plug = pilón
rule_flush = hojas nuevas
rule_hardening = endurecimiento
rule_exposure_step = cambio de luz
rule_plant_back = tiempo antes de sembrar
rule_pest = plaga o enfermedad
rule_bare_roots = raíz desnuda
rule_held = retenida
rule_treated = tratamiento
rule_living = plantas vivas
rule_load = plantas para un viaje
rule_good_until = último día
rule_light_now = luz ahora
rule_light_coming = luz que viene
rule_soil = suelo
rule_cleared = limpia
rule_holes = hoyos
rule_weeded = deshierba
rule_mulched = cobertura
rule_fenced = cerca
rule_water = agua
rule_season = lluvias que quedan
rule_open_positions = hoyos libres
