### Forms.

form_day = Día
title_noted_about = De qué
title_given_out_to = A quién
title_moved_on_from = De la bandeja
form_today = hoy
form_optional = puede quedar vacío
form_star = * hace falta
form_number_hint_above_nought = un número mayor que 0
form_number_hint_above = un número mayor que 0, a lo más { $most }
let_go_heading = Dejar pasar: { $task }
let_go_until = dejada hasta el { $day }
let_go_ask_again = Preguntar otra vez desde
let_go_for_good = dejada para siempre
form_rows = { $rows } filas
form_row_hint = cada fila: { $fields }; Enter agrega la fila, Enter en una vacía sigue
form_list_hint = separados por espacios
form_count_hint = un número entero
form_number_hint = un número de { $least } a { $most }
form_number_hint_least = un número desde { $least }
form_day_hint = un día: 2026-03-14, 14/3 o -1
form_month_day_hint = mes y día: 03-14
form_choice_hint = izquierda y derecha lo cambian
form_name_hint = un nombre que está en el libro
form_new_name_hint = un nombre, también uno nuevo
form_text_hint = cualquier texto
form_open_hint = nombre=valor, separados por espacios
form_spot_hint = hilera.puesto: 2.7
form_rows_hint = hileras por número: 2-4 o 1, 3
form_row_example = por ejemplo { $row }
form_plan_example = por ejemplo: café cuadrado 3 2
form_in_book = { $plants ->
    [one] En el libro hay { $plants } planta
   *[other] En el libro hay { $plants } plantas
}
form_counted_on = conteo del { $day }
form_no_waiting_time_asks = ¿Cuántos días de espera dice su etiqueta? Con Enter no se dice, y entonces nadie entra y nada sale.
form_no_container_asks = ¿En qué quedan ahora? Con Enter no se dice, y entonces no se sabe cuánto las aguanta.
form_no_place = Sin lugar la ronda no sabrá dónde está la bandeja.
form_rows_not_read = { $written } no nombra hileras: escríbalas por número, 2-4 o 1, 3.
form_share_hint = en porcentaje: 60; 0.6 dice lo mismo
form_enter_again = Aún no se anotó nada: Enter otra vez lo anota de todos modos.
form_light_for_readings = ¿{ $number } %? Tab lo pone en { $field }
form_only_fit = Tab o Enter: { $name }
form_completed = { $typed } → { $name }. Enter lo anota así; Retroceso lo cambia.
form_missing = Falta: { $field }.
form_in_row = fila { $row }: { $sentence }
form_or = { $one } o { $other }
form_and = { $one } y { $other }
form_effect = Qué hace
form_keys = Enter: anotarlo. Tab: otro campo. Esc: salir sin anotar; queda el borrador.
form_keys_short = Enter anota, Tab otro, Esc no anota
form_sample = { $measured } medidas, media { $mean } cm
form_sample_more = bastan { $more } más
form_sample_enough = ya basta
form_is_kept = retomado donde quedó
