### Hojas del primer día y de la ronda.

marked_heading = Observaciones
marked_written = la hoja con lo que está mal detrás de cada fila: { $file }
marked_not_written = no se escribió una copia con observaciones: hace falta la hoja como archivo

sheet_taken = { $rows ->
    [one] { $rows } fila leída, { $entries } en el libro
   *[other] { $rows } filas leídas, { $entries } en el libro
}
sheet_tried = { $rows ->
    [one] { $rows } fila leída, se podría anotar { $entries }; no se anotó nada
   *[other] { $rows } filas leídas, se podrían anotar { $entries }; no se anotó nada
}
sheet_in_workbook = La hoja es '{ $sheet }' de un libro de cálculo.
sheet_written_as = La hoja está en { $encoding }, con las celdas separadas por { $delimiter }.
sheet_tab = tabulaciones
sheet_comma = comas
sheet_semicolon = punto y coma
sheet_passed_over_near = { $column } (cámbiele el nombre si es: { $nearest })
sheet_passed_over = Columnas que aquí no dicen nada y se dejaron: { $columns }
sheet_understood = Se entendió así:
taken_day = '{ $written }' es el { $day }
taken_about_day = '{ $written }' es hacia el { $day }
taken_age = '{ $written }' son { $days } días
taken_count = '{ $written }' son { $count }
taken_about_count = '{ $written }' es { $count }, más o menos
taken_percent = '{ $written }' es { $percent }
taken_field = sin terreno escrito: { $field }
taken_spacing = sin distancia escrita: la usual, { $row } x { $in_row } m
sheet_understood_more = { $rows ->
    [one] { $what }; y { $rows } fila más
   *[other] { $what }; y { $rows } filas más
}
sheet_unknown_heading = Todavía no se sabe; primero lo que menos cuesta averiguar:
still_container_volume = el volumen de '{ $name }', de { $of }
still_container = la bolsa de { $of }
still_age = la edad de { $of }
still_place_shade = la sombra sobre '{ $name }', de { $of }
still_place = el lugar de { $of }
still_measured = altura y cuello de { $of }: mida { $USUAL_SAMPLE } plantas de cada bandeja que esté cerca de salir
still_bed_light = la luz de { $of }
still_bed_soil = el suelo de { $of }: meta una varilla dos días después de mojarse bien
still_bed_work = lo que se limpió, hoyó, deshierbó o cercó en { $of }
still_nurse_count = cuántas plantas de { $name } hay en { $of }
still_nurse_planted = cuándo se plantó { $name } en { $of }
still_nurse_spacing = a qué distancia está { $name } en { $of }
still_noted_sickness = qué dicen las notas de { $name } ({ $of }): nombran una plaga o enfermedad, y quedan como están; una nota no retiene ninguna planta
still_noted_use = qué se usó en { $name } ({ $of }) según sus notas, y cuánto hay que esperar: quedan como están; una nota no hace esperar a nadie
sheet_fill = llene la columna "{ $column }" de la hoja; outplant undo retira esta importación
sheet_fill_first = llene la columna "{ $column }" de la hoja antes de importarla
sheet_hardening = Las plantas que ya estaban esperan hasta saber desde cuándo tienen esa luz. Anote la sombra de cada mesa, y para cada bandeja que está hacia la luz el día verdadero en que empezó:
sheet_hardening_batch = o muchas a la vez con outplant write --batch ARCHIVO: una línea con el día, luego una línea "{ $tray } endurecimiento" por bandeja.
sheet_now_trays = Listas para salir ahora: { $ready } de { $trays }.
sheet_now_wait = { $trays } esperan, antes que nada: { $list }.
sheet_now_beds = Parcelas: { $list }.
sheet_lines = { $number ->
    [one] { $of } (línea { $lines })
   *[other] { $of } (líneas { $lines })
}
sheet_now_hint = Cada una con su razón: outplant ready
paper_taken = { $lines ->
    [one] { $lines } línea leída, { $entries } en el libro
   *[other] { $lines } líneas leídas, { $entries } en el libro
}
paper_tried = { $lines ->
    [one] { $lines } línea leída, se podría anotar { $entries }; no se anotó nada
   *[other] { $lines } líneas leídas, se podrían anotar { $entries }; no se anotó nada
}
refused_beside_batch = con --batch solo pueden ir dia= y quien=, no '{ $written }'
still_least_days = desde cuántos días sale { $name }, para { $of }: mientras nadie lo diga, ninguna edad la detiene
still_species_shade = con cuánta sombra se siembra '{ $name }', para { $of }
still_species_most_days = cuántos días aguanta '{ $name }' en su bolsa, para { $of }
taken_volume = a '{ $written }' le caben { $ml } ml
sheet_columns = Columnas: { $list }
sheet_column_means = { $column } → { $means }
sheet_names = Especies: { $list }
sheet_name_is = { $written } → { $species } ({ $rows })
sheet_name_unknown = { $written } → no se conoce ({ $rows })
sheet_rows_heading = Cada fila como se entendió:
sheet_row_is = línea { $line }: { $entry }
sheet_order_day_first = Las fechas se leen con el día primero
sheet_order_month_first = Las fechas se leen con el MES primero
sheet_order_shown = { $order }: '{ $written }' en la línea { $line } solo se puede leer así.
sheet_order_taken = { $order }; ninguna lo muestra.
sheet_order_read = Leídas así: { $list }.
sheet_order_one = '{ $written }' (línea { $line }) es el { $day }
sheet_total_passed = La línea { $line } es un total y se dejó aparte.
sheet_gap = Después de la línea { $line } nada se dice de { $days } días, del { $from } al { $until }: se calculan como días que nadie leyó.
sheet_gaps_more = Y { $gaps } huecos más.
sheet_total_differs = La línea { $line } es un total y se dejó aparte; dice { $written }, la suma de las filas es { $counted }: ¿falta una fila?
sheet_containers_since_sowing = Desde cuándo están en su bolsa no lo dice la hoja: se toma que desde la siembra. Si una bandeja se cambió de bolsa después, un pilón levantado dice más.
sheet_answers_heading = Las primeras respuestas que daría:
paper_days = Con fecha del { $list }.
paper_day = { $day } ({ $lines })
