### The screen Trays.

trays_group = { $name } · { $trays ->
    [one] { $trays } bandeja
   *[other] { $trays } bandejas
}, { $plants }
trays_column_tray = bandeja
trays_column_species = especie
trays_column_age = días
trays_now = ya
trays_sorted = por { $column }
trays_empty_hidden = { $trays ->
    [one] { $trays } vacía oculta ({ $KEY_V })
   *[other] { $trays } vacías ocultas ({ $KEY_V })
}
trays_all_empty = { $trays ->
    [one] La única bandeja está vacía: { $KEY_V } la muestra.
   *[other] Las { $trays } bandejas están vacías: { $KEY_V } las muestra.
}
trays_none_fits = Ninguna bandeja tiene "{ $written }" en su código, especie, etapa, lugar o lote. { $KEY_Q } muestra todas otra vez.
trays_only = Solo:
trays_filter_typing = Enter la deja así
trays_filter_kept = { $KEY_I } la cambia, { $KEY_Q } muestra todas
trays_verdict_empty = Vacía: aquí no hay plantas ni se espera semilla.
trays_verdict_ready = Lista para salir: { $plants }.
trays_verdict_ready_before = Lista para salir, antes del { $day }: { $plants }.
trays_verdict_overdue = Pasada de tiempo: { $reason }.
trays_verdict_not = Todavía no está lista: { $reason }.
trays_verdict_not_before = No está lista antes del { $day }: { $reason }.
trays_verdict_waits = Todavía no está lista, y no se sabe qué la retiene.
trays_failing = Esta siembra está fallando: nacieron { $up } de { $seeds } semillas.
trays_failing_sow_by = Esta siembra está fallando: nacieron { $up } de { $seeds } semillas. Resiembre hasta el { $day }.
trays_counted = { $plants }, conteo del { $day }
trays_never_counted = { $plants }, sin conteo
trays_light = { $light } de la luz abierta, en sus últimos { $LAST_LIGHT_DAYS } días
trays_label_container = envase
trays_in_container = { $container }, desde hace { $days }
trays_label_sown = sembrada
trays_sown = { $day }, hace { $age }
trays_sown_from = { $day }, hace { $age }, de { $lots }
trays_reasons = Lo que se le pregunta
trays_where_to = A dónde podría ir
trays_fits = { $bed }: hoy pueden ir { $plants }
trays_bed_waits = { $bed } solo espera a la bandeja: { $positions ->
    [one] { $positions } puesto abierto
   *[other] { $positions } puestos abiertos
}
trays_more_beds = { $beds ->
    [one] y { $beds } parcela más
   *[other] y { $beds } parcelas más
}
trays_expected = Lo que se espera
trays_not_before = no antes del { $day }; de otra cosa no se sabe cuándo termina
trays_label_up = nacieron
trays_up_of = { $seedlings } de { $seeds }
trays_came_up = Lo que nació
trays_stood = Cuántas estaban en pie
trays_heights = Alturas
trays_legend_forecast = ● nacidas por los conteos; ─ la curva probable; · entre estas líneas, con { $RANGE_LEVEL } % de seguridad; │ las últimas se esperan el { $day }; : hoy
trays_legend_growth = ● media de una muestra; ○ sus plantas; ─ la curva probable; = entre estos días llega a la altura mínima, con 95 % de seguridad; · la altura con que sale: { $low } a { $high } cm
trays_legend_counted = ● según los conteos
trays_legend_heights = ● promedio de la muestra; ○ sus plantas; · la altura para salir: { $low } a { $high } cm
trays_legend_heights_only = ● promedio de la muestra; ○ sus plantas
trays_sown_on = sembrada { $day }
trays_day = día { $day }
trays_history = Lo que se anotó de ella, lo último primero
trays_more_below = { $lines ->
    [one] { $lines } línea más abajo (.)
   *[other] { $lines } líneas más abajo (.)
}
trays_back_above = Es todo; otra vez arriba (,)
