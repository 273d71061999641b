### Por qué una línea en palabras propias no se anota como está, y las líneas que quizá se quisieron escribir.

why_not_done = la línea dice que no se hizo ("{ $word }")
why_intent = todavía está por hacer ("{ $word }"): anótelo cuando esté hecho
why_coming = es de un día por venir ("{ $word }"): anótelo cuando esté hecho
why_unsure = no es seguro ("{ $word }"): anote lo que es seguro
why_range = son { $low } o { $high }: escriba un solo número
why_question = es una pregunta, no algo que se vio
why_question_of = es una pregunta sobre { $name }, no algo que se vio
why_no_number = ¿cuántas? Falta el número
why_not_whole = las plantas se cuentan enteras, no { $value }
why_unknown_name = aquí nadie conoce '{ $name }'
why_no_tray = ¿cuál bandeja?
why_no_place = ¿a cuál mesa o lugar, a dónde?
why_no_lot = ¿de cuál lote de semilla?
why_no_remedy = ¿con qué se trató?
why_no_unit = ¿en qué unidad: mm, litros, %, horas?
why_each_or_all = un número para { $trays }: ¿cuántas de cada una?
why_bad_day = no existe el día '{ $day }'
why_far_open = ¿qué día fue? '{ $day }' lo deja abierto
why_over_half = más de la mitad de las { $standing } que hay: ¿es pérdida o conteo?
why_more_than_there = más de lo que hay: { $there }
why_more_than_all = { $alive } vivas de { $all }: más que todas
why_in_use = { $name } es el código de otra bandeja: escoja uno libre
why_crossed = la mínima, { $low }, es más alta que la máxima, { $high }
why_both = { $name } es el nombre de dos cosas: ¿es la bandeja, la parcela o el lote de semilla?
why_correction = «{ $word }» se refiere a una línea anterior: retírela (outplant undo, o u en la pantalla) y anótela bien
why_of_a_part = «{ $word }» se dice de algunas plantas: ¿cuántas viven, o cuántas murieron?
why_not_thrown_away = «{ $word }»: lo que se descarta ya no está; lo regalado, vendido o plantado es otra línea, como c1 regalé 10 a NOMBRE
why_graft_took = «{ $word }»: si un injerto prendió es por ahora una nota, como nota c1: fallaron 2 injertos; injertado es para el día del injerto
why_away_from = «{ $word }»: las plantas que salen de una parcela no se plantan en ella: anote una nota, o lo que se perdió allí
why_several = puede decir varias cosas
why_no_reading = no se entiende; outplant write --help muestra líneas que se entienden
why_no_reading_of = no se entiende '{ $words }'
why_not_said = falta { $part }
why_lacks = { $kind }: todavía falta: { $parts }
why_which_tray = ¿de cuál bandeja: { $trays }?
why_which_container = varios son de ese tamaño: ¿{ $containers }?
why_cause_nearly = la causa '{ $written }': ¿será { $known }?
words_meant = { $why } Quizá quiso decir:
words_ask_which = ¿cuál de estas { $lines } es? Su número, o Enter para no anotar nada:
words_to_fill = { $why } Escríbalo entero, como aquí:

### Palabras de las que se hacen nuestras líneas; el lector de líneas cortas las conoce todas.

line_word_dead = muertas
line_word_alive = vivas
line_word_given = dadas
line_word_recount = recuento
line_word_shade = sombra
line_word_water = riego
line_word_rain = lluvia
line_word_hardening = endurecimiento
line_word_flush = brotes
line_word_light = luz
line_word_note = nota
