### The screen Seed.

seed_lots = { $lots ->
    [one] { $lots } lote, arriba lo que hay que sembrar primero
   *[other] { $lots } lotes, arriba lo que hay que sembrar primero
}
seed_hidden = { $lots ->
    [one] { $lots } agotado oculto ({ $KEY_V })
   *[other] { $lots } agotados ocultos ({ $KEY_V })
}
seed_all_used_up = { $lots ->
    [one] El único lote está agotado: { $KEY_V } lo muestra. { $KEY_N } y luego "lote" anota el siguiente.
   *[other] Los { $lots } lotes están agotados: { $KEY_V } los muestra. { $KEY_N } y luego "lote" anota el siguiente.
}
seed_column_lot = lote
seed_column_state = estado
seed_column_left = queda
seed_column_days_left = días más
seed_column_test = prueba
seed_column_kept = guardado
seed_column_next_test = otra prueba
seed_column_came_up = nació
seed_column_collected = cosecha
seed_about = unas { $seeds }
seed_left_unknown = no se sabe
seed_left_of = { $left } de { $seeds } semillas
seed_state_keeps = se guarda
seed_state_ending = sembrar ya
seed_state_over = vida vencida
seed_state_dead = muerto
seed_state_life_unknown = vida sin dato
seed_state_used_up = agotado
seed_state_held = retenido
seed_heading = Lote de semilla { $lot }, { $species }
seed_verdict_used_up = Agotado: no queda nada.
seed_verdict_held_until = Retenido hasta el { $day }: { $why }.
seed_verdict_held = Retenido: { $why }.
seed_verdict_keeps = Se guarda hasta el { $day }, { $days } más: { $kept }.
seed_verdict_ending = Hay que sembrarlo ya: su vida termina el { $day }, en { $days }: { $kept }.
seed_verdict_over = Su vida terminó el { $day }: nace cada vez menos, y nada después del { $dead }.
seed_verdict_dead = Muerto por lo que se sabe: su vida terminó el { $day }.
seed_verdict_unknown = No se sabe cuánto vive la semilla guardada así: { $kept }. Una prueba lo dice.
seed_label_source = de
seed_tests = Pruebas de germinación
seed_never_tested = Nunca se probó.
seed_how_many = Cuántas sembrar
seed_for_plants = ¿Cuántas sembrar para cuántas plantas? { $typed }
seed_none_open = Ninguna parcela tiene un lugar abierto para él; { $KEY_I } pregunta por un número de plantas.
seed_share = { $likely } % (con 95 % de seguridad: { $low } a { $high } %)
seed_sowings = Lo que se sembró de él
seed_not_sown = Todavía no se sembró nada de él en bandejas (s).
seed_unknown_seeds = semillas que nadie contó
seed_sown_in = { $tray }, { $day }: { $seeds }, nacieron { $seedlings }
seed_more_may_come = pueden nacer más
seed_with_other_seed = en la bandeja hay también otra semilla
seed_came_up_in_all = Donde ya no nace más: nacieron { $seedlings } de { $seeds }
seed_history = Lo que se anotó de él, lo último primero
