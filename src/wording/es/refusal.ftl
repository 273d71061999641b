refused_unknown_tray = ninguna bandeja se llama { $name }
refused_unknown_lot = ningún lote de semilla se llama { $name }
refused_unknown_bed = ninguna era se llama { $name }
refused_unknown_species = no se conoce ninguna especie como { $name }
refused_unknown_place = ningún banco o ramada se llama { $name }
refused_unknown_container = ninguna bolsa o celda se llama { $name }
refused_unknown_field = ningún terreno se llama { $name }
refused_more_out = { $tray }: salen { $wanted }, pero por los libros había { $stands } el { $day }: cuente la bandeja y anote el conteo primero
refused_more_seed = { $lot }: salen { $wanted } semillas, pero por los libros el lote tenía { $holds } el { $day }: cuente lo que queda y anote lot_counted primero
refused_more_dead = { $bed }: { $wanted } de { $species } muertas, pero por los libros vivían { $lives } el { $day }: anote mejor un conteo de sobrevivencia
refused_more_out_than_positions = { $bed }: salen { $wanted } de { $species }, pero el { $day } el plan tiene { $open } hoyos libres: anote primero un conteo de sobrevivencia o lo perdido, o el plan (bed_set) tal como se planta
refused_no_such_position = { $bed } tiene { $rows } hileras de hasta { $places } plantas: no existe { $written } (hilera.puesto); mire el plan de la era, o trácela de nuevo
refused_sample_larger = { $tray }: { $sample } plantas medidas, pero por los libros había { $stands } el { $day }: cuente la bandeja y anote el conteo primero
refused_two_species = { $tray } tiene { $species }, no { $other }: tome una bandeja propia, o revise los códigos
refused_cannot_be = { $what }: corrija uno de los dos
refused_tray_renamed = { $was } se llama { $is } desde el { $since }: escriba { $is }
refused_future = el { $day } no ha llegado, hoy es { $today }: anote lo hecho cuando esté hecho
refused_tray_code_in_use = { $tray } es el código de otra bandeja: escoja uno libre
refused_lot_code_in_use = { $lot } es el código de otro lote: escoja uno libre
refused_nothing_to_undo = no hay nada que retirar: esta copia no ha anotado nada que siga contando
refused_unknown_entry = aquí no existe la anotación { $entry }
refused_already_withdrawn = { $entry } fue retirada el { $day } por { $who } ({ $by }): outplant undo { $by } la devuelve
refused_only_the_beginning = solo queda el comienzo del libro ({ $what }): outplant undo { $entry } retira también eso
refused_one_of_many = { $entry } entró junto con otras, { $all } anotaciones en total: { $list }. Diga --all para retirarlas todas, --only para { $entry } sola
refused_other_copy = { $entry } se anotó en otra copia: nómbrela con withdrawn si debe salir
refused_undo_below_zero = { $entries ->
    [one] sin ella { $entries } anotación posterior quedaría bajo cero: { $list }: retírelas juntas o déjela
   *[other] sin ella { $entries } anotaciones posteriores quedarían bajo cero: { $list }: retírelas juntas o déjela
}
refused_while_looking = se está mirando otro día (--on o --known): quítelos para anotar
refused_not_planned = { $bed } no tiene { $species } en su plan: agréguela al plan o nombre otra era
refused_line = línea { $line }: { $sentence }
refused_lines = { $lines ->
    [one] no se anotó nada: hay que corregir { $lines } línea
   *[other] no se anotó nada: hay que corregir { $lines } líneas
}
refused_no_nursery = aquí todavía no hay vivero: outplant begin crea uno, outplant sample muestra uno
file_not_there = { $file } no existe: revise el nombre o créelo con outplant begin
input_not_there = no hay ningún archivo { $file } que leer: revise el nombre
folder_not_there = no hay ninguna carpeta { $folder }: créela antes o escoja otra; no se escribió nada
file_already_there = { $file } ya existe: no se cambió nada; escoja otro nombre
file_not_ours = { $file } no es el diario de un vivero: revise el nombre
file_foreign_log = el registro previo { $log } no es el de { $file }: es de otro vivero, o de otro día de este; no se abrió ni se cambió nada: lleve ese registro a otra carpeta, no borre nada y abra otra vez; antes de eso outplant rescue saca lo que hay en los dos
file_newer = { $file } fue escrito por un outplant más nuevo: instálelo para leerlo; no se cambió nada
file_busy = otro outplant está escribiendo en { $file }: espere un momento y pruebe otra vez
file_full = no queda espacio en el disco de { $file }: no se anotó nada; haga espacio y pruebe otra vez
file_read_only = { $file } se puede leer pero no escribir: revise de quién es, o cópielo
file_damaged = { $file } está dañado: { $what }: lo anotado todavía se puede leer; outplant check dice qué está a salvo
file_other = { $file } no se puede usar: { $what }
chain_gap = faltan las anotaciones { $device }:{ $first } a { $device }:{ $last }: tome una exportación más nueva y completa de esa copia
chain_fork = { $entry } ya está aquí con otro texto: una de las dos fue cambiada; no se tomó nada
chain_wrong_hash = { $entry } no lleva el sello de su propio texto: fue cambiada en el camino; no se tomó nada
chain_follows_another = { $entry } sigue a otra anotación de su copia que la que está aquí: una de las dos fue cambiada; no se tomó nada
chain_other_nursery = estas anotaciones son de otro vivero: no se tomó nada
