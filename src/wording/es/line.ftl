### Líneas de archivos y lo que se escribió.

line_too_long = la línea pasa de { $most } y no se leyó
line_without_end = la línea no termina nunca; lo que sigue no se leyó. ¿Es este el archivo?
line_not_utf8 = el byte { $byte } no es UTF-8: guarde el archivo como UTF-8 e inténtelo de nuevo
line_not_json = esto no es JSON: una línea es un registro entre llaves, como los escribe export
line_cut_short = la línea termina antes de tiempo: falta cerrar un corchete o una comilla
line_too_deep = listas dentro de listas dentro de listas: una anotación no es tan honda
line_number_too_large = un número es demasiado grande para ser cierto
line_not_a_record = una línea es un solo registro entre llaves
line_name_twice = { $field } está escrito dos veces: deje uno solo
line_at_and_clock = la hora está en at y en clock: deje una sola
line_unseen = el carácter { $place } no se ve o mueve la pantalla: { $shown }. Escriba el texto de nuevo sin él
line_envelope = { $what }
line_id_alone = una línea con id es de una exportación, y aquí falta { $missing }: tómela tal como se exportó, o quite el id para hacer una anotación nueva
line_coming_day = el { $day } todavía no llega
line_too_long_ago = el { $day } es antes del { $first }: ¿está bien el año?
line_not_a_moment = '{ $written }' no es un momento como 2026-03-14T18:00:00.000Z
line_not_a_hash = '{ $written }' no es una huella de 64 cifras y letras de la a a la f
line_wrong_hash = { $entry } se cambió después de escrita: su huella no coincide con lo que dice. Tómela de otra copia
line_no_equals = '{ $written }' no tiene = : escriba campo=valor
line_quote_open = falta cerrar una comilla
line_bracket_open = falta cerrar un corchete
line_no_blank = falta un espacio después de la comilla o del corchete
line_not_days_before = '{ $written }' no es un número de días antes de hoy, como -30, 0 o -30/-28
line_recorded_before = anotado antes de que pasara: el segundo número debe ser el día más cercano
line_day_cut_short = la línea termina antes de decir día, persona y clase
sheet_workbook = esto es un libro de cálculo: import --as trays o --as beds lo lee; para lo demás guarde la hoja como CSV (texto) e inténtelo de nuevo
sheet_workbook_unread = no se puede leer este libro de cálculo: guarde la hoja otra vez (.xlsx u .ods), o como CSV (texto), e inténtelo de nuevo
sheet_far_cell = una celda lejos de la tabla, { $cell }, tiene algo escrito: bórrela, guarde la hoja e inténtelo de nuevo
sheet_not_in_workbook = el libro no tiene la hoja '{ $wanted }'; sus hojas: { $there }
sheet_none_in_text = --sheet nombra una hoja de un libro de cálculo (.xlsx, .ods), y este archivo es de texto: quítelo
sheet_too_long = la hoja pasa de { $most } y no se leyó
sheet_not_in_encoding = el byte { $byte } no significa nada en la codificación de la hoja: guárdela como UTF-8 e inténtelo de nuevo
sheet_is_a_database = esto es una base de datos y no una hoja; el archivo de un vivero se abre con --nursery ARCHIVO
sheet_is_none = esto no es texto ni un libro de cálculo: guarde la hoja como CSV (texto) o .xlsx e inténtelo de nuevo
sheet_no_names = la hoja no tiene la fila con los nombres de las columnas
sheet_too_many_columns = la hoja tiene más de { $most } columnas
sheet_column_without_name = hay una columna con datos y sin nombre
sheet_too_many_cells = la fila tiene más celdas que columnas la hoja ({ $columns })
sheet_letters_behind_quote = hay letras después de la comilla que cierra una celda
sheet_day_in_other_order = '{ $written }' solo es un día con día y mes al revés que en lo demás: escríbalo AAAA-MM-DD
at_line = línea { $line }: { $sentence }
at_cell = celda { $cell }: { $sentence }
at_column = columna { $column }: { $sentence }
on_field = { $field }: { $sentence }
more_faults = { $faults ->
    [one] y una más
   *[other] y { $faults } más
}
nothing_written = no se escribió nada
undo_leaves = si se { $entries ->
    [one] retira esta anotación
   *[other] retiran estas { $entries } anotaciones
}, otras posteriores quedan sin base ({ $list }): { $rest }. Diga --together para retirarlas también
profile_refused = { $species }: { $what }
sheet_empty_tray = 0 plantas: ¿está vacía la bandeja? Quite su fila, o escriba cuántas hay
sheet_count_not_known = '{ $written }': una bandeja entra con su número de plantas: cuéntelas, o escriba más o menos cuántas, por ejemplo ~40
sheet_new_name = '{ $written }' no se conoce aquí: escriba el nombre conocido, o diga --yes si es nuevo
sheet_no_container = '{ $written }': sin bolsa, ¿cómo están? Escríbalo en una columna Forma: raíz desnuda, tocón, pilón o bolsa
sheet_name_asked = { $rows ->
    [one] '{ $name }': aquí nadie lo conoce, en una fila. ¿Es
   *[other] '{ $name }': aquí nadie lo conoce, en { $rows } filas. ¿Es
}
sheet_name_new = una especie nueva
sheet_name_like = ¿los datos de cuál especie valen para { $name } mientras no haya mejores (Enter: de ninguna)?
sheet_no_volume = en '{ $written }' no cabe nada: escriba el volumen de la bolsa, por ejemplo 2 l
sheet_no_rows = la hoja tiene nombres de columnas y ninguna fila debajo
sheet_no_column = ninguna columna se llama "{ $name }"; hay: { $seen }
sheet_no_header = la primera fila debe nombrar las columnas, por ejemplo { $example }; dice: { $seen }
sheet_in_the_book = { $name } ya está en el libro: quite su fila y anote lo que cambió (counted, lost, carried)
sheet_all_in_the_book = todas las filas de esta hoja ya están en el libro, { $rows } en total: no se anota nada dos veces. Lo que cambió se anota con outplant write; outplant undo retira la importación anterior
day_not_understood = '{ $written }' no es un día: escríbalo 2026-03-14, 14/3/2026, 14 de marzo de 2026, marzo 2026 o "hace 3 meses"
which_day = '{ $written }' puede ser { $first } o { $second }: escriba el que es
day_or_year = '{ $written }' puede ser un día o un año: escriba 24 de noviembre de 2026 o noviembre 2024, lo que sea
number_in_words = '{ $written }' es un número en letras: escriba { $figures }
paper_which_species = ahí hay varias especies ({ $list }): escriba cuál antes del número
refused_unknown_task = no hay una tarea '{ $task }': outplant walk da el nombre de cada una
paper_no_lines = ahí no hay nada escrito: ninguna línea dice algo
sheet_columns_mean_the_same = dos columnas dicen lo mismo: { $field }; quite una
sheet_same_as_line = { $written } ya está en la línea { $line }: cada una va una sola vez
line_unknown_name = aquí nadie conoce '{ $written }'
sheet_not_an_age = '{ $written }' no es una edad: escriba días, o "3 meses"
sheet_not_a_spacing = '{ $written }' no es una distancia: escríbala así: 2.5 x 2
sheet_not_one_for_each = { $numbers } números para { $species } especies: ponga uno para cada una, unidos con +
paper_not_understood = no se entendió '{ $written }'; outplant write --batch - --help muestra las formas cortas
paper_too_many_lines = la hoja tiene más de { $most } líneas
refused_before_the_book = { $tray } entró al libro el { $day } con lo que tenía en pie entonces: lo de antes ya está en ese número. Quite la línea, o póngale un día posterior
