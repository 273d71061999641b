### Forms.

form_day = Día
form_today = hoy
form_optional = puede quedar vacío
form_rows = { $rows } filas
form_row_hint = cada fila: { $fields }; Enter agrega la fila, Enter en una vacía sigue
form_list_hint = separados por espacios
form_count_hint = un número entero
form_number_hint = un número de { $least } a { $most }
form_number_hint_least = un número desde { $least }
form_day_hint = un día: 2026-03-14, 14/3 o -1
form_month_day_hint = mes y día: 03-14
form_choice_hint = izquierda y derecha lo cambian
form_text_hint = cualquier texto
form_open_hint = nombre=valor, separados por espacios
form_spot_hint = hilera.puesto: 2.7
form_missing = Falta: { $field }.
form_effect = Qué hace
form_keys = Enter: apuntarlo. Tab: otro campo. Esc: dejarlo; lo escrito queda.
form_keys_short = Enter apunta, Tab otro, Esc deja
form_sample = { $measured } medidas, media { $mean } cm
form_sample_more = bastan { $more } más
form_sample_enough = ya basta
form_is_kept = retomado donde quedó
