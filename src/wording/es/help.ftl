### Ayuda de órdenes y opciones.

help_outplant = Qué bandejas están listas para salir a qué parcela preparada, y por qué
help_outplant_more = Sin orden abre el vivero en toda la pantalla; sin terminal muestra lo que está listo.
    Las fechas se escriben 2026-03-14, 14/3, ayer o +7. Termina con 0 hecho, 1 rechazado, 2 uso, 3 el archivo, 5 ocupado, 6 dañado, 130 o 143 detenido.
help_any_nursery = El archivo del vivero (si no, OUTPLANT_NURSERY, los ajustes o la carpeta de datos)
help_any_on = Mirar otro día, pasado o por venir
help_any_known = Usar solo lo que se había anotado hasta el fin de este día
help_any_lang = en o es
help_any_json = Responder con un objeto JSON, para programas
help_any_format = Para personas, un objeto JSON, o una lista de él como tabla
help_any_list = Qué lista de la respuesta es la tabla, como trays, beds o can_wait; si no, la principal de la orden
help_value_format = FORMA
help_value_list = LISTA
help_any_plain = La ronda como preguntas numeradas, para lectores de pantalla y terminales sencillas
help_any_yes = Sí a todo lo que se preguntaría
help_any_handbook = Pronostica solo con el manual, sin lo que este vivero aprendió (si no, los ajustes)
help_any_who = Quién anota (si no, los ajustes o el usuario del sistema)
help_any_color = Cuándo se usa color (si no, los ajustes, NO_COLOR, o si va a una pantalla)
help_any_ascii = Respuestas en ASCII puro (si no, los ajustes, o lo que la terminal puede mostrar)
help_any_help = Mostrar la ayuda
help_any_version = Mostrar la versión
help_sample = Una copia del vivero de muestra, con sus días contados desde hoy
help_sample_into = Solo hacer este archivo; se rechaza si ya existe
help_begin = Un vivero vacío
help_begin_more = Ejemplo: outplant begin --name "Terraza de Piedra" --lat -1.2 --lon 36.1 --altitude 1650
help_begin_name = Cómo lo llama la gente
help_begin_lat = Latitud en grados, sur negativa
help_begin_lon = Longitud en grados, oeste negativa
help_begin_altitude = Altitud en m
help_begin_utc_offset = Horas respecto a UTC (si no, longitud / 15, redondeada)
help_ready = Qué bandejas están listas hoy para qué parcela, y qué esperan las otras
help_why = Cada pregunta de un veredicto: lo necesario, lo sabido, cómo se sabe, si se cumple, para cuándo, la fuente
help_why_more = Ejemplos: outplant why cof-021   outplant why "School 1"   outplant why cof-021 "School 1"   outplant why tray cof-021
help_why_tray = Por qué una bandeja está lista o no
help_why_tray_tray = El código de su etiqueta
help_why_bed = Por qué una parcela está abierta o no
help_why_bed_bed = Su nombre
help_why_bed_species = Solo para esta especie
help_why_pair = Por qué una bandeja va a una parcela o no
help_why_pair_tray = El código de la bandeja
help_why_pair_bed = El nombre de la parcela
help_why_pair_how = Decir también qué hacer con cada cosa que la detiene
help_why_tray_all = También lo que se cumple, pregunta por pregunta
help_why_bed_all = También lo que se cumple, pregunta por pregunta
help_why_pair_all = También lo que se cumple, pregunta por pregunta
help_write = Anotar una cosa vista o hecha
help_write_more = Ejemplos:
    outplant write contada bandeja=cof-031 paradas=41
    outplant write perdidas bandeja=cof-031 cuantas=3 causa=ratas dia=2026-03-12
    outplant write murieron 3 cof-031 por ratas
    outplant write "planté 30 cof-031 en Upper 1"
    Sin clase, muestra lo que se puede anotar.
help_write_kind = Qué es: contada, perdidas, sembrada, plantadas ...; o la primera palabra de una línea
help_write_fields = Sus campos, campo=valor; las listas como JSON; o las otras palabras de una línea
help_log = Lo que se anotó, lo más nuevo primero, con el número con que se retira cada anotación
help_log_more = Ejemplos: outplant log   outplant log c1   outplant log ayer   outplant log ratas Amani
help_log_words = Un nombre, una palabra, un día o una persona; si son varios, valen todos
help_log_most = No más de tantas (si no, 30)
help_value_words = PALABRA
help_value_n = N
help_value_names = NOMBRE
help_ready_name = Solo la bandeja o la parcela de este nombre
help_undo = Retirar lo último que anotó esta copia, o lo nombrado; la anotación vieja sigue legible
help_undo_entry = El número de la anotación, como lo muestra outplant log: k3f9:12
help_undo_together = Retirar también las posteriores que se apoyan en ella
help_undo_all = Todo lo que entró junto con la anotación, sea cuanto sea
help_undo_only = Solo la anotación nombrada
help_undo_dry_run = Solo decir qué se retiraría
help_undo_why = Por qué se retira
help_import = Tomar un archivo, entero o nada
help_import_more = Una hoja de bandejas (--as trays) tiene las columnas Bandeja, Especie, Cuántas; puede tener Sembrada hacia o
    Edad, Funda, Mesa, Altura, Sombra, Forma, Origen, Notas. Una hoja de parcelas (--as beds) tiene Parcela, Largo, Ancho,
    Especie; puede tener Campo, Distancia, En pie, Nodrizas, Nodrizas plantadas, Plantadas hacia, Luz. Nombres en español o
    inglés, comas o punto y coma, cualquier codificación usual.
help_import_file = El archivo; - lee lo que llega por la tubería
help_import_what = entries, un objeto JSON por línea; trays o beds, una hoja con una fila por cada una
help_import_sheet = Cuál hoja de un libro de cálculo (.xlsx, .ods) se lee; sin esto, la primera que tenga algo
help_import_marked = Si una hoja de bandejas o parcelas no se toma: un archivo nuevo con la hoja y una columna de observaciones
help_import_dry_run = No anotar nada; de una hoja, mostrar cómo se entienden columnas, nombres y filas, y las primeras respuestas
help_export = Sacar todas las anotaciones
help_export_what = entries, que import vuelve a leer, o csv para una hoja de cálculo
help_export_excel = El csv como lo abren los programas de oficina: marca UTF-8, punto y coma, coma decimal
help_export_to = Escribir este archivo en vez de la pantalla
help_check = Probar el archivo: cadena, cuentas, repaso; solo lee
help_rescue = Sacar todas las anotaciones sanas de un archivo dañado; solo lee
help_rescue_to = El archivo nuevo, que import lee
help_rescue_no_backup = Si ningún respaldo tiene lo perdido: lo que está detrás de una pérdida sigue como otro equipo
help_backup = Hacer una copia comprobada
help_backup_to = El archivo nuevo
help_paths = Dónde se guarda cada cosa, y qué está ajustado dónde
help_completions = Un guion con el que la consola completa las órdenes
help_completions_shell = La consola
help_man = La página para man; con --to, una página por orden
help_man_to = Ponerlas en esta carpeta
help_value_when = CUÁNDO
help_value_shell = CONSOLA
help_value_folder = CARPETA
help_schema = El esquema JSON de una respuesta para programas
help_schema_answer = La respuesta
help_species = Las especies, y de dónde sale cada una de sus cifras
help_species_name = Una especie, por cualquiera de sus nombres; o una nueva con los datos de otra: add NOMBRE como ESPECIE
help_species_sources = Cuántos datos se leyeron en su fuente, son de memoria, de práctica común, nuestros o de su vivero
help_ready_since = Solo los veredictos que cambiaron desde el fin de este día, y qué los cambió
help_ready_tray = Solo esta bandeja, con las parcelas que planean su especie
help_ready_bed = Solo esta parcela, con las bandejas de las especies que planea
help_ready_fits = Solo bandejas y parcelas que se corresponden
help_ready_all = Todo: cada bandeja y parcela, no solo el plan del día y lo primero del resto
help_walk = La ronda de hoy: qué contar, mover, sombrear, regar, llevar al campo
help_write_batch = Una hoja de líneas cortas, entera o nada; - lee lo que llega por la tubería
help_write_happened = El día en que se vio o se hizo: 2026-03-14, ayer, 12/11, 24 nov; sin esto, hoy
help_write_dry_run = No anotar nada; de --batch, mostrar en qué se vuelve cada línea
short_forms_heading = Líneas para --batch, o una de ellas detrás de write: cortas, o en palabras propias, como las últimas. Lo que puede decir varias cosas se pregunta, o se rechaza con las líneas que quizá se quisieron escribir. Un día solo vale para las líneas que siguen, un día antes de una línea para esa línea; entre las partes puede ir coma:
help_usage = Uso:
help_commands = Órdenes:
help_arguments = Argumentos:
help_options = Opciones:
help_some_options = [OPCIONES]
help_value_answer = RESPUESTA
help_value_file = ARCHIVO
help_value_date = FECHA
help_value_lang = IDIOMA
help_value_name = NOMBRE
help_value_deg = GRADOS
help_value_m = M
help_value_h = H
help_value_text = TEXTO
help_value_command = ORDEN
help_value_kind = CLASE
help_value_fields = CAMPO=VALOR
help_value_tray = BANDEJA
help_value_bed = PARCELA
help_value_species = ESPECIE
help_value_entry = ANOTACIÓN
help_value_what = QUÉ
help_value_to = ARCHIVO
help_choice = { $help } [uno de: { $values }]
help_choice_usual = { $help } [uno de: { $values }; si no se dice: { $usual }]
