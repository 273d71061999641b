### La pantalla Ronda, y la ronda por preguntas.

walk_progress = { $behind } de { $all } · { $minutes } min de mirar
walk_work = { $time } de trabajo
walk_all_done = { $stops ->
    [one] La ronda está hecha: { $stops } parada
   *[other] La ronda está hecha: { $stops } paradas
}
walk_skipped_count = { $stops ->
    [one] { $stops } saltada
   *[other] { $stops } saltadas
}
walk_closing = La ronda en breve
walk_let_go_today = { $stops ->
    [one] { $stops } tarea dejada pasar
   *[other] { $stops } tareas dejadas pasar
}
walk_planted_today = { $plants ->
    [one] { $plants } planta quedó sembrada en el campo
   *[other] { $plants } plantas quedaron sembradas en el campo
}
walk_counted_today = { $trays ->
    [one] Contadas: { $plants } en { $trays } bandeja
   *[other] Contadas: { $plants } en { $trays } bandejas
}
walk_lost_today = Perdidas: { $plants }
walk_culled_today = Descartadas: { $plants }
walk_given_today = Regaladas o vendidas: { $plants }
walk_waits_for_tomorrow = { $stops ->
    [one] { $stops } parada espera para mañana
   *[other] { $stops } paradas esperan para mañana
}
walk_rest = { $stops } pueden esperar: + las muestra
walk_rest_shown = { $stops } pueden esperar: - las esconde
walk_can_wait = Pueden esperar
walk_done = hecho
walk_over = ya no hace falta
walk_new = nueva
walk_said_again = { $now } (antes: { $before })
walk_rest_new = { $stops ->
    [one] { $stops } nueva · { $sentence }
   *[other] { $stops } nuevas · { $sentence }
}
walk_skipped = se saltó
walk_where = Dónde
walk_why = Por qué
walk_last = Anotado
walk_last_figure = { $figure }, { $day }
walk_expect = Se espera
walk_good_enough = { $what } buenas para salir
walk_until = Plazo
walk_without = Si no
walk_more_right = { $lines ->
    [one] { $lines } línea más: flecha derecha
   *[other] { $lines } líneas más: flecha derecha
}
walk_all_of_it = Todo: flecha derecha
walk_more_left = volver: flecha izquierda
walk_load_today = hoy { $load }
walk_load_no_hands = { $load }, hoy sin manos
walk_large_hint = Enter, número, Enter
walk_nothing_comes = ya no brota nada
walk_set_apart = espaciadas
walk_sign = Señal
plain_begin = Responda con un número, una palabra o una letra; ? dice cuáles.
plain_prompt = Parada { $number } de { $all }:
plain_not_understood = { $answer } no vale aquí; ? dice qué vale.
plain_next = siguiente parada
plain_before = parada anterior
plain_quit = salir
plain_also = De una bandeja también: { $list }
plain_empty_does = Nada y Enter hace lo que pide la parada. En una pregunta, ? la explica y q la deja.
plain_way_out = Enter toma lo que está entre [ ]; ? explica; q lo deja.
plain_name_wanted = { $answer } no es un nombre aquí: escriba el nombre, o Enter para el que está entre [ ].
plain_write_it = ¿Apuntarlo? s sí, n no, m más campos:
plain_take_back = ¿Retirarlo? s sí, n no:
plain_left = No se anotó nada.
plain_loses_most = Es lo que más pierde si espera.
plain_writing_day = Lo que se anota ahora es del { $day }.
plain_more = { $lines } líneas más. Enter las dice, otra cosa basta:
plain_only_tray = Eso se anota de una bandeja, y aquí no hay.
walk_mark_short = ! pierde más
