### Por qué no hay respuesta, y la parte de la era que se vio.

gap_no_shade_band = el perfil de { $species } no dice con cuánta sombra se siembra: { $write }
gap_no_most_days = el perfil de { $species } no dice cuántos días aguanta en su bolsa: { $write }
gap_read_dry = el suelo se leyó en seco, eso no dice nada: lea otra vez dos días después de un buen riego o lluvia
gap_rod_too_hard = la varilla se empujó con { $mpa } MPa, tan fuerte que entra también en suelo duro: empuje con unos { $ROOT_LIMIT_MPA } MPa
gap_rod_too_hard_at = la varilla entró { $depth } cm con { $mpa } MPa, tan fuerte que entra también en suelo duro: empuje con unos { $ROOT_LIMIT_MPA } MPa
gap_rod_too_weak = la varilla se frenó a { $depth } cm con solo { $mpa } MPa, muy poco empuje para saber: empuje con unos { $ROOT_LIMIT_MPA } MPa
gap_read_too_shallow = el suelo se leyó blando solo hasta { $depth } cm, las plantas van a { $needed } cm: lea más hondo
gap_gauge_partly = el pluviómetro se leyó { $read } de los últimos { $of } días, { $mm } mm: anote los días que faltan, también los ceros
gap_coming_day = es un día por venir: su lluvia todavía no se sabe
gap_no_waiting_time = se usó { $what } el { $day } y no está anotado el tiempo de espera: lo que no se sabe no es seguro. Lea la etiqueta y anótelo otra vez con ese día y safe_after_days
part_rows = { $sentence }; leído solo en las hileras { $rows }
part_rows_of = { $sentence }; leído solo en las hileras { $rows } de { $of }
part_places = { $places ->
    [one] { $sentence }; leído solo en { $places } punto
   *[other] { $sentence }; leído solo en { $places } puntos
}
part_done_rows = { $sentence }; solo en las hileras { $rows }
part_done_rows_of = { $sentence }; solo en las hileras { $rows } de { $of }
part_done_places = { $places ->
    [one] { $sentence }; solo en { $places } punto
   *[other] { $sentence }; solo en { $places } puntos
}
