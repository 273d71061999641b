### The frame of the dashboard.

screen_walk = Ronda
screen_trays = Bandejas
screen_beds = Parcelas
screen_going_out = Al campo
screen_seed = Semilla
screen_season = Época
screen_journal = Diario
answers_walk = ¿Qué hago hoy, en el orden en que camino?
answers_trays = ¿Qué tengo, cómo está, cuándo está listo?
answers_beds = ¿Qué suelo está listo para qué?
answers_going_out = ¿Qué va a qué parcela, y por qué no?
answers_seed = ¿Qué semilla hay, y cuánto vive?
answers_season = ¿Cómo va el año de cada bandeja y parcela?
answers_journal = ¿Qué se anotó, y qué ya no cuenta?
banner_back = Mirando atrás: { $day }. { $KEY_D }: otro día
banner_ahead = Mirando adelante: { $day }, si no se hace nada más. { $KEY_D }: otro día
banner_writing_day = Lo que se anota es del { $day }. { $KEY_B }: otro día
banner_gone = { $entries ->
    [one] Falta una anotación que aquí se había guardado: outplant check
   *[other] Faltan { $entries } anotaciones que aquí se habían guardado: outplant check
}
banner_read_only = Solo lectura
banner_handbook = Solo el manual. { $KEY_Z }, luego { $KEY_H }: volver
banner_doubts = { $doubts ->
    [one] Una duda
   *[other] { $doubts } dudas
}
saving = guardando ...
said_saved = Guardado: { $what }
said_saved_doubt = Guardado: { $what }. Pero ahora esto no puede ser: { $doubt }
said_refused = No se anotó: { $why }
said_not_written = No se anotó.
said_taken_back = { $entries ->
    [one] Retirada: una anotación
   *[other] Retiradas: { $entries } anotaciones
}
said_read_only = Ahora no se puede anotar: solo lectura ({ $KEY_Z }).
said_looking = No se anota mientras se mira otro día (d).
said_no_reason = No hay nada elegido que tenga razones.
said_not_found = No hay nada que se llame { $what }.
said_kept_form = Quedó una anotación a medias: { $form }. Con { $KEY_N }, Enter se sigue.
said_draft_kept = { $form }: no se anotó; queda el borrador.
help_title = Teclas de esta pantalla, y teclas que valen en todas
help_here = En esta pantalla
help_signs = Signos
sign_loses_most = lo que más pierde si espera
sign_over = ya no hace falta, o se dejó pasar
sign_new = surgió después de empezar la ronda
sign_sent = entregado, todavía no está en el archivo
sign_no_day = nadie puede decir desde cuándo
sign_not_before = no antes de ese día; además algo más lo retiene
sign_past = ese día ya pasó
sign_not_read = nunca leída, o hace mucho
sign_nurse_shade = sombra de nodrizas: crece, útil, acabó
sign_more_missing = tantas cosas más faltan; { $KEY_Y } las nombra
help_everywhere = En todas partes
help_in_form = En un formulario
help_find = { $KEY_F }: buscar una palabra
help_search = Buscando: { $what }
help_none = Ninguna tecla tiene que ver con eso.
find_title = Buscar: escriba o escanee un código o nombre
find_none = Nada se llama así. Enter busca lo más parecido.
find_is_tray = bandeja, { $species }, { $place }
find_is_bed = parcela en { $field }
find_is_lot = lote de semilla, { $species }
find_is_place = lugar
kinds_title = ¿Qué quiere anotar? Escriba una palabra.
kinds_line = Enter lo lee como una línea y abre su formulario ya lleno.
kinds_line_several = Son varias anotaciones: aquí anote una a la vez, o use outplant write.
kinds_none = No hay nada que anotar con ese nombre.
kinds_go_on = seguir: { $form }
day_title = ¿Qué día mirar?
day_hint = Una fecha, "ayer", +7 o -30 días, o vacío para hoy. Izquierda y derecha: un día; arriba y abajo: una semana.
day_write_title = ¿De qué día es lo que va a anotar?
day_write_hint = Una fecha, "ayer" o -1, o vacío para hoy.
day_not_read = { $written } no es un día: escriba 2026-03-14, 14/3, ayer, +7 o -1.
day_not_coming = No se puede anotar lo que aún no pasó.
news_title = Qué cambió desde el { $day }
news_waiting = Mirando ...
options_title = Opciones
option_lang = idioma
option_contrast = alto contraste
option_ascii = solo letras simples
option_read_only = solo lectura
option_mouse = ratón
option_handbook = solo el manual (dejar de lado lo aprendido aquí)
option_on = sí
option_off = no
confirm_title = ¿Retirar esto?
confirm_waiting = Mirando qué se desharía ...
confirm_keys = { $KEY_W }: retirarla. { $KEY_Q }: dejarla.
leave_title = ¿Salir?
leave_kept = Lo anotado está en el archivo, y una anotación a medias queda guardada.
leave_keys = Enter: salir. { $KEY_Q } o Esc: quedarse.
confirm_rests = { $entries } anotaciones en total, con lo que se apoya en ellas.
confirm_why = retirado en la pantalla
why_none = No se conocen razones.
why_rest_in_beds = Con fuentes y anotaciones: la parcela en la pantalla Parcelas, y luego { $KEY_Y }.
why_more = { $lines ->
    [one] una línea más
   *[other] { $lines } líneas más
}
empty_walk = Hoy no toca nada. Descanse, o mire las parcelas.
empty_begin = anotar lo primero: plantas que ya están, semilla, una parcela
no_trays = Aún no hay bandejas: { $KEY_N }, y luego "sembrar", anota la primera.
no_beds = Aún no hay parcelas: { $KEY_N }, y luego "parcela", traza una.
no_lots = Aún no hay semilla: { $KEY_N }, y luego "lote", anota el primero.
no_entries = Aún no hay nada anotado.
outcome_tray = { $tray }: { $was } → { $is }
outcome_tray_new = { $tray }, nueva: { $is }
outcome_standing = { $plants } vivas, { $stage }
outcome_not_seen = { $plants ->
    [one] { $plants } que nadie vio morir
   *[other] { $plants } que nadie vio morir
}
outcome_gap_told = { $tray }: explica { $plants } de lo que faltaba en el conteo; en pie como antes: { $standing }
outcome_place = en { $place }
outcome_no_place = sin lugar
outcome_plantable = { $tray }: se pueden plantar { $was } → { $is }
outcome_ready = lista
outcome_not_ready = no lista
outcome_bed = { $bed }, { $species }: { $was } → { $is } vivas
outcome_standing_of_bed = { $bed }, { $species }: { $was } → { $is }
outcome_fits_now = { $bed }: ahora puede recibir { $trays }
outcome_fits_no_more = { $bed }: ya no recibe { $trays }
outcome_light = { $bed }: luz { $was } → { $is }
outcome_lot = { $lot }: { $was } → { $is } semillas
outcome_seeds_unknown = ?
outcome_none = Queda anotado; no cambia ningún número ni veredicto.
outcome_more = y { $more } más
outcome_looking = mirando qué hace ...
weekday = { $day ->
    [0] lun
    [1] mar
    [2] mié
    [3] jue
    [4] vie
    [5] sáb
   *[other] dom
}
