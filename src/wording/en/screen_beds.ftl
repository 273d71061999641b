### The screen Beds.

beds_bed = Bed
beds_species = Planned
beds_standing = Standing
beds_open = Open
beds_light = Light
beds_missing = Missing next
beds_nothing = nothing
# (length, width)
bed_size = { $length } m long, { $width } m wide
# (length, width, degrees)
bed_size_bearing = { $length } m long, { $width } m wide, rows at { $degrees }° from north
bed_ready_for = nothing holds it back
plan_heading = Plan for { $species }
plan_none = The plan of this species gives no positions that can be drawn.
# (column, line)
plan_scale = Scale: a letter is { $column } m along, a line { $line } m across.
# (begin, end, length)
plan_part = Shown: { $begin } to { $end } m of { $length } m. Left and right move along.
plan_thinned = Drawn closer than they stand: one mark can be several positions.
plan_hidden = Where two marks meet, that of { $species } is shown.
# (species, plants)
plan_living = { $species } living: { $plants }
plan_dead = died here: { $plants }
plan_open = open: { $positions }
plan_blocked = rock or stump, nothing can stand: { $positions }
# (living, places)
plan_unsaid = plant or gap: { $living } live in { $places } places, which ones is not written.
# (rows, living, places)
plan_unsaid_rows = plant or gap: in rows { $rows }, { $living } live in { $places } places, which ones is not written.
# (species, living, positions)
plan_other = { $species }: { $living } living, { $positions } positions
# (nurse, planted)
plan_nurse_all = { $nurse }, nurse plant: { $planted } as planted
# (nurse, planted, alive)
plan_nurse_some = { $nurse }, nurse plant: places of { $planted } as planted, { $alive } live, which ones is not written
# (nurse, alive)
plan_nurse_elsewhere = { $nurse }: { $alive } live, places not written.
light_heading = Light
# (light, day)
light_old = last read { $light } on { $day }: too old, or from before a cut or loss
# (light, day)
light_row = { $light }, { $day }
light_legend = █ under 25 %, ▒ to 50 %, ░ to 75 %, - brighter
# (bed, species, month)
light_month_heading = { $bed }, { $species }: light in { $month }
# (light, share, band)
light_month_told = { $light }; { $share } of the open positions inside { $band }
light_being_reckoned = The light is being reckoned.
light_no_nurses = No nurse plant was written in this bed: there is no shade to reckon.
# (month, why)
light_not_from = From { $month } on: { $why }
light_digits = A digit is light in tenths: 3 is 30 to 39 % of full sun. - and + go a month back and on.
light_digits_at_most = Something that shades is not in it: each figure is the most light there may be, and < says so in the line of months.
light_underlined = Underlined: outside { $band }.
light_chart_heading = Light month by month
light_chart_legend = ● likely, ○ the month shown, │ four times in five in between.
light_chart_band = Dots behind: { $band }.
plan_north = { $eighth ->
    [0] North is up on this plan.
    [1] North is up and to the right on this plan.
    [2] North is to the right on this plan.
    [3] North is down and to the right on this plan.
    [4] North is down on this plan.
    [5] North is down and to the left on this plan.
    [6] North is to the left on this plan.
   *[7] North is up and to the left on this plan.
}
ground_heading = Soil and water
food_chart_kg = { $most } kg
food_chart_legend = █ least, │ at most: food of each month, by the age of the plants and the last count.
nurses_heading = Nurse plants
# (nurse, alive, planted, age)
nurse_line = { $nurse }: { $alive } of { $planted } live, { $age } old
nurse_counted = counted { $day }
nurse_shades_from = useful shade from { $day }
nurse_shades_since = useful shade since { $day }
nurse_ends = ends about { $day }
nurse_past_end = past its usual end, { $day }
nurses_gone = gone: { $nurses }
survival_heading = What became of each outplanting
# (species, tray, day, planted, living)
survival_from_tray = { $species } from { $tray }, { $day }: { $planted } planted, { $living } living
# (species, day, planted, living)
survival_at_stake = { $species }, sown at stake { $day }: { $planted } holes, { $living } living
# (species, day, planted, living)
survival_found = { $species }, found standing, { $day }: { $planted } plants, { $living } living
survival_rows = rows { $rows }
# (months, alive, share)
survival_count = { $months } mo: { $alive } alive, { $share }
survival_with_others = (with others)
survival_not_counted = not counted yet
