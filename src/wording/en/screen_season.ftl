### The screen Season.

season_rains = rains
season_food = food
season_food_to_take = food can be taken
season_food_none = no food to take
season_shade = nurse shade
season_shade_none = no nurse plants
season_shade_growing = nurse plants grow, no useful shade yet
season_shade_useful = useful shade expected
season_shade_ended = past the life of the nurse plants
season_not_there = not there on that day
season_drawing = { $days ->
    [one] { $days } day is still being drawn: ·
   *[other] { $days } days are still being drawn: ·
}
# (day, what, state)
season_on = { $day } · { $what }: { $state }
season_trays_marks = Trays: { $marks }
season_beds_marks = Beds: { $marks }   Shade: ░ growing  █ useful  ! ended
season_ahead = Right of today: what comes if nothing more is done. Enter looks at the day.
season_months = Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec
