### Alrededor del trabajo de las órdenes.

today_unreadable = OUTPLANT_TODAY es '{ $written }'; escríbalo así: 2026-03-14
begun_next = Ahora: las bandejas que tiene, de una hoja guardada como CSV con las columnas Bandeja, Especie, Cuántas, Sembrada hacia, Funda, Mesa: outplant import bandejas.csv --as trays (primero con --dry-run, para ver cómo se entiende). Las parcelas entran con --as beds. outplant write muestra todo lo demás que se puede anotar, outplant ready dice qué está listo.
begin_name_asked = ¿cómo se llama el vivero?
begin_latitude_asked = ¿latitud, como -1.2 o 9°42'N (sur negativo)?
begin_longitude_asked = ¿longitud, como 36.1 o 84°6'O (oeste negativo)?
begin_altitude_asked = ¿a qué altura sobre el mar, en m (Enter: no se sabe)?
sample_look = Este es un vivero inventado, guardado en { $file }. Empiece el suyo: outplant begin --name "..." --lat ... --lon ... --altitude ...
write_lists_kinds = Lo que se puede anotar, cada cosa como outplant write CLASE campo=valor ... ; lo que va entre [ ] puede faltar; dia= y quien= acompañan a cualquiera:
value_number = número
value_flag = sí|no
value_entry = k3f9:12
clock_set_it = ponga el reloj en hora, o diga OUTPLANT_TODAY=2026-03-14 antes de la orden
clock_say_yes = no se anotó nada: un reloj equivocado marcaría todo lo que se anote después. Ponga el reloj en hora, o diga --yes
refused_no_pipe = - quiere decir lo que pasa por una tubería; esto se hace en un lugar propio: nómbrelo (./- si ha de llamarse así)
how_settings = ajustes: { $file }
how_opens = se abre { $file }
how_opened = { $entries ->
    [one] una anotación, abierto tras { $time }
   *[other] { $entries } anotaciones, abierto tras { $time }
}
how_ended = terminó con { $code }, en { $time }
answer_not_shown = no se pudo mostrar la respuesta: no hubo dónde o no hubo lugar. Si la orden anota en el libro, está anotado
refused_empty_tray = en { $tray } no queda nada en pie: no hay qué llevar al campo
check_damaged = { $faults ->
    [one] El archivo está dañado en un lugar:
   *[other] El archivo está dañado en { $faults } lugares:
}
others_write = Otras personas de esta máquina pueden escribir en { $file }, también sin este programa. Si no es la intención: chmod 600
others_read = Otras personas de esta máquina pueden leer { $file }. Si no es la intención: chmod 600
import_of_a_nursery = { $file } es él mismo un vivero, no una exportación: outplant --nursery { $file } export --to lineas.jsonl, y después importe eso
check_cancelled = se detuvo antes de probar el archivo; la comprobación solo lee
look_sqlite = SQLite revisa las páginas del archivo, { $seconds } s hasta ahora
look_entries = { $entries } anotaciones comprobadas
look_bytes = { $done } de { $all } MB revisados
rescue_cancelled = se detuvo antes de revisar todo el archivo; no se sacó nada y el archivo está como estaba
check_what_now = No escriba en él. Guárdelo como está y saque lo que está sano: outplant rescue rescatado.jsonl
check_undamaged = { $entries ->
    [0] No se halló ninguna anotación sana.
    [one] Una anotación está sana y se puede sacar.
   *[other] { $entries } anotaciones están sanas y se pueden sacar.
}
lost_one = perdida: { $device }:{ $first }
lost_many = { $entries ->
    [one] perdida: { $device }:{ $first }
   *[other] perdidas: { $device }:{ $first } a { $device }:{ $last }, { $entries } anotaciones
}
rescued = { $entries ->
    [one] rescatada: { $entries } anotación sana en { $file }
   *[other] rescatadas: { $entries } anotaciones sanas en { $file }
}
rescued_all = No se perdió nada: el archivo está entero.
rescued_not_needed = No hay nada que rescatar: siga con el archivo como está. { $file } es lo mismo que una exportación.
rescued_none_named = El archivo está dañado, pero hasta la última anotación hallada no falta ningún número. Compare con el respaldo más nuevo.
rescued_lost = De estas no se halló nada sano:
rescued_nothing = No se halló ninguna anotación sana; no se escribió nada. Tome el respaldo más nuevo.
rescued_apart = { $first } a { $last } están detrás de una pérdida: siguen como { $device }, desde el número 1
rescued_into_new = Ahora: guarde el archivo dañado, empiece un vivero nuevo y en él outplant import { $file }
rescued_into_backup = Ahora: guarde el archivo dañado, tome una copia del respaldo más nuevo y en ella outplant import { $file }: lo que el respaldo tiene no está perdido. Si ningún respaldo lo tiene: outplant rescue --no-backup
damage_header = la cabecera del archivo está destruida, pero detrás hay anotaciones
damage_foreign_log = el registro previo (-wal) junto al archivo no es el suyo: es de otro vivero, o de otro día de este; lo que sigue vale solo para el archivo
damage_sqlite = SQLite dice: { $what }
damage_schema = '{ $name }' falta o no es lo que debería ser
damage_row = una fila no se puede leer; en palabras de la máquina: { $what }
damage_entry = { $entry } no se puede leer; en palabras de la máquina: { $what }
damage_gap = faltan { $device }:{ $first } a { $device }:{ $last }
damage_hash = { $entry }: su sello no es el de lo que dice
damage_previous = { $entry } sigue a otra anotación que la que está antes
check_unbalanced = las cuentas de { $name } no cuadran: avise, por favor
check_kept_stories_differ = lo que se guarda para empezar rápido no es lo que dan las anotaciones; eso no toca ninguna anotación. Se ha tirado y se rehará al abrir: avise, por favor
check_replay_differs = al repasar las anotaciones en otro orden salen otras cuentas: avise, por favor
check_unknown_kinds = { $entries ->
    [one] una anotación es de una clase que escribió una versión más nueva; se conserva
   *[other] { $entries } anotaciones son de clases que escribió una versión más nueva; se conservan
}
check_versions = versión del archivo { $file }, este programa conoce { $program }; SQLite { $sqlite }
note_read_only_file = el archivo solo se puede leer: no se puede anotar nada
note_read_only_folder = la carpeta solo se puede leer: no se puede anotar nada
note_no_room = no queda espacio en el disco: se puede leer, no se puede anotar nada
note_no_log = este disco no admite el registro previo; se guarda más despacio e igual de seguro
note_kept_before = el archivo se puso al día; como estaba antes se conserva en { $file }
note_new_device = este archivo es una copia o se restauró: desde ahora sus anotaciones llevan un equipo nuevo
note_device_of_this_run = no se puede escribir en la carpeta de ajustes ({ $why }): lo anotado en esta sesión lleva un equipo propio
note_device_not_noted = la anotación está guardada, pero no se pudo escribir en la carpeta de ajustes ({ $why })
gone_of_device = { $device }:{ $from } a { $to }
gone_of_more = { $devices ->
    [one] y de una copia más
   *[other] y de { $devices } copias más
}
note_gone = { $entries ->
    [one] falta una anotación que aquí se había guardado
   *[other] faltan { $entries } anotaciones que aquí se habían guardado
} ({ $which }): se puso una copia más vieja en lugar del archivo, o se borró su registro previo. Vuelva a poner el archivo más nuevo, o importe una exportación que las tenga; si fue a propósito: outplant write settled what=restored
gone_asks = ¿Anotar de todos modos? [s/N]
gone_not_written = No se anotó nada: primero vuelva a poner el archivo más nuevo.
note_devices_put_aside = no se pudo leer la lista de equipos y se apartó en { $file }
how_heading = { $things ->
    [0] Nada la detiene.
    [one] Qué hacer, una cosa:
   *[other] Qué hacer, { $things } cosas:
}
log_more = se muestran { $entries }, hay más: --most muestra más
log_take_back = outplant undo con el número de delante retira la anotación; con --all, todo lo que entró con ella
named_several = { $name } es el nombre de varias cosas: { $commands }
man_part_name = NOMBRE
man_part_synopsis = USO
man_part_description = QUÉ HACE
man_part_options = OPCIONES
man_part_commands = ÓRDENES
man_part_examples = MÁS
man_part_version = VERSIÓN
