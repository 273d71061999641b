doubt_more_out_than_stood = { $tray }: salieron { $out } el { $day }, pero por los libros había { $stood }: cuente y anote un recuento
doubt_more_seed_than_held = { $lot }: salieron { $out } semillas el { $day }, pero por los libros el lote tenía { $held }: cuente lo que queda
doubt_more_dead_than_lived = { $bed }: { $dead } de { $species } muertas el { $day }, pero por los libros vivían { $lived }: cuente otra vez las vivas
doubt_alive_again = { $bed }: { $alive } de { $species } vivas el { $day }, pero por el último conteo y lo sembrado después vivían { $lived }: cuente otra vez, o anote la siembra
doubt_more_alive_than_planted = { $bed }: { $alive } de { $species } vivas el { $day }, pero por los libros se sembraron { $planted }: ¿faltó anotar una siembra?
doubt_more_seen_than_planted = { $bed }: { $alive } de { $species } vivas y { $dead } muertas el { $day }, pero por los libros se sembraron { $planted }: ¿faltó anotar una siembra?
doubt_more_cut_than_stood = { $bed }: se cortaron { $cut } de { $species } el { $day }, pero por los libros había { $stood }: cuente otra vez las vivas
doubt_cut_of_none = { $bed }: se cortó { $species } el { $day }, pero por los libros ya no quedaba ninguna: cuente otra vez las vivas
doubt_more_than_seed = { $tray }: { $counted } contadas el { $day }, su semilla pudo dar { $most }: ¿faltó anotar una siembra o una llegada?
doubt_rise_without_seed = { $tray }: { $counted } contadas el { $day }, por los libros había { $books } y no se espera semilla: ¿entraron plantas?
doubt_unknown_tray = { $tray }: hay anotaciones del { $day }, pero nadie anotó de dónde salió esta bandeja
doubt_unknown_lot = { $lot }: hay anotaciones del { $day }, pero nadie anotó que llegó este lote
doubt_unknown_bed = { $bed }: hay anotaciones del { $day }, pero nadie trazó esta parcela
doubt_unknown_species = { $species }: anotada el { $day }, pero no se conoce especie con ese nombre
doubt_twice_made = { $tray }: este código se dio a otra bandeja el { $day }: cambie una etiqueta
doubt_twice_received = { $lot }: este lote llegó otra vez el { $day }: retire una anotación o dele otro código
doubt_order_matters = { $tray }: dos copias anotaron el { $day } y el orden cambia los números: cuente hoy y anote un recuento, no otro conteo de ese día
doubt_not_in_plan = { $bed }: entró { $species } el { $day }, pero el plan de la parcela no la nombra
doubt_off_the_grid = { $plants ->
    [one] { $bed }: { $plants } de { $species } quedó fuera de las hileras desde que se trazó de nuevo la parcela
   *[other] { $bed }: { $plants } de { $species } quedaron fuera de las hileras desde que se trazó de nuevo la parcela
}
doubt_bad_profile = { $species }: no se pueden leer los datos anotados el { $day }: { $what }
doubt_part_count_apart = { $standing ->
    [one] { $tray }: { $standing } planta en { $seen } de { $cells } celdas el { $day }, pero según el libro hay { $books }: cuente la bandeja entera
   *[other] { $tray }: { $standing } plantas en { $seen } de { $cells } celdas el { $day }, pero según el libro hay { $books }: cuente la bandeja entera
}
doubt_look_at_empty = { $tray }: revisada el { $day }, pero no hay nada y no se espera semilla
doubt_more_out_than_positions = { $bed }: salieron { $out } de { $species } el { $day }, pero el plan tiene { $open } hoyos libres: anote un conteo de sobrevivencia o lo perdido, o el plan tal como se plantó
doubt_no_such_position = { $bed }: se anotó { $written } el { $day }, pero la parcela tiene { $rows } hileras de hasta { $places } plantas: retírelo, o trace la parcela como es
doubt_sample_larger = { $tray }: se midieron { $sample } plantas el { $day }, pero por los libros había { $stood }: cuente la bandeja
doubt_worked_on_more = { $tray }: se anotó trabajo en { $worked } plantas el { $day }, pero por los libros había { $stood }: cuente la bandeja
doubt_cannot_be = { $what }: retírelo y anótelo como fue
cannot_lowest_above_highest = { $day }: la mínima de { $lowest } °C pasa de la máxima de { $highest } °C
cannot_collected_later = { $lot }: cosechado el { $collected }, pero entró el { $day }
cannot_day_later = { $field } { $later } es posterior al día de la anotación, { $day }
cannot_more_of = { $day }: { $part } { $parts } es más que { $whole } { $wholes }
cannot_ends_before = acabaría el { $until }, antes de empezar el { $day }
doubt_two_species = { $tray } tiene { $species }, pero entró { $other } el { $day }: retírelo, o anótelo en una bandeja propia
