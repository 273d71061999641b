### El archivo de ajustes, y dónde se guarda cada cosa.

# (file, line, what)
settings_wrong_line = { $file }, línea { $line }: { $what }. La línea se dejó de lado
# (file, what)
settings_wrong_file = { $file }: { $what }. Se dejó de lado
settings_no_file = esto no es un archivo
settings_too_long = esto es demasiado largo para ser ajustes
settings_no_text = esto no es texto (no es UTF-8)
settings_no_setting = esto no se lee como nombre = valor; el texto va entre comillas: who = "Mara"
settings_unknown = no hay ajuste '{ $name }'
settings_takes_text = { $name } lleva un texto entre comillas
settings_takes_yes_or_no = { $name } lleva true o false
settings_twice = { $name } ya está en la línea { $first }
# (name, values)
settings_takes_one_of = { $name } lleva uno de: { $values }
settings_takes_letters = { $name } lleva letras entre llaves, cada una con aquella a la que pasa: c = "v"
settings_no_letter = { $name } pasa letras de la a a la z de la pantalla; '{ $written }' no lo es
settings_letter_twice = { $name } pone dos cosas en la letra { $letter }: cada letra hace una
settings_hide_nursery = por eso no se sabe de qué vivero se trata: corríjalo, o nombre el vivero con --nursery
paths_settings = ajustes
paths_notes = notas de esta copia
paths_data = viveros
paths_nursery = este vivero
paths_sample = ejemplo
paths_not_there = no está
paths_set = Lo que está ajustado, y dónde:
paths_usual = sin ajustar
paths_from_option = dicho con la orden
paths_from_environment = entorno
paths_from_settings = ajustes
paths_from_system = sistema
man_written = las páginas están en { $folder }
