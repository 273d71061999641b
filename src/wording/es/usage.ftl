### Lo que se escribió mal.

usage_unknown_command = no existe la orden '{ $word }'
usage_unknown_option = aquí no existe la opción '{ $option }'
usage_unexpected = aquí sobra '{ $word }'; un nombre de varias palabras va entre comillas, como "Upper 1"
usage_needs_value = { $option } necesita un valor detrás
usage_one_of = { $option } no puede ser '{ $value }'; es uno de: { $values }
usage_not_a_day = { $option }: '{ $value }' no es un día; escríbalo así: 2026-03-14, 14/3, ayer o +7
usage_not_a_number = { $option }: '{ $value }' no es un número
usage_decimal_comma = { $option }: '{ $value }' no es un número aquí: escriba { $point }
usage_not_an_entry = { $option }: '{ $value }' no es el número de una anotación: son como k3f9:12, y outplant log los muestra
usage_not_so_many = { $option } no puede ser { $value }: un número entero desde 1 hasta unos millones
usage_long_name = { $option } no lleva más letras que { $most }, y { $value } es más largo
usage_bad_name = { $option } no puede ser '{ $value }': un nombre o código lleva letras, sin espacios a los lados ni caracteres invisibles
usage_missing = todavía falta: { $arguments }
usage_twice = { $option } está dos veces; basta una
usage_not_together = { $option } y { $other } no van juntas
usage_not_readable = lo escrito tiene caracteres que no se pueden leer (no es UTF-8)
usage_other = esto no se puede leer como orden
usage_more = Más: { $help }
