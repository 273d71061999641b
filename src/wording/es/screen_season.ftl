### The screen Season.

season_rains = lluvias
season_food = comida
season_food_to_take = hay comida para cosechar
season_food_none = sin comida para cosechar
season_shade = sombra nodriza
season_shade_none = sin nodrizas
season_shade_growing = las nodrizas crecen, aún sin sombra útil
season_shade_useful = se espera sombra útil
season_shade_ended = pasó la vida de las nodrizas
season_not_there = ese día no está
season_drawing = { $days ->
    [one] Aún se dibuja { $days } día: ·
   *[other] Aún se dibujan { $days } días: ·
}
season_on = { $day } · { $what }: { $state }
season_trays_marks = Bandejas: { $marks }
season_beds_marks = Parcelas: { $marks }   Sombra: ░ crece  █ útil  ! acabó
season_ahead = A la derecha de hoy: lo que viene si no se hace nada más. Enter mira el día.
season_months = ene feb mar abr may jun jul ago sep oct nov dic
