### The screen Going out.

fits_heading = Fits today
fits_hands = There is room; hands plant { $number } a day, the most urgent first.
misses_heading = Not today, and the nearest bed
full_heading = No room any more: the loading list takes it
fits_heading_on = Fits on { $day }
misses_heading_on = Not on { $day }, and the nearest bed
no_plants = No tray holds living plants.
items_more = { $items } more below
load_heading = Loading list
load_empty = Nothing is on the loading list: choose a tray for a bed, { $KEY_O } puts it there.
load_listed = on the list: { $plants }
load_how_many = How many?
load_no_bed = No bed plans this species.
load_choose_tray = Trays go on the list: choose one for { $bed }, { $KEY_V } shows those of today.
load_nothing_left = Nothing is left to load of this tray for this bed. Space sets a number all the same.
load_full = nothing left: the loading list takes the places or the plants
load_same_places = the same places as { $trays }
load_same_plants = the same plants as for { $beds }
load_no_more = { $why }. + once more puts it on all the same, with a doubt
# (plants, tray, bed)
load_said = On the list: { $plants } from { $tray } for { $bed }
# (tray, bed)
load_taken_off = Off the list: { $tray } for { $bed }
# (tray, bed, plants)
load_number = { $tray } → { $bed }: { $plants }
# (tray, bed, plants)
load_number_listed = { $tray } → { $bed }: { $plants }, on the list
load_room = room
# (plants, species, tray)
load_line = { $plants } { $species } from { $tray }
# (plants, species, tray, place)
load_line_at = { $plants } { $species } from { $tray }, standing at { $place }
# (bed, plants)
load_bed_sum = { $bed }: { $plants }
# (lines, plants)
load_sum = { $lines ->
    [one] { $lines } line on the list, { $plants } plants
   *[other] { $lines } lines on the list, { $plants } plants
}
# (tray, listed, plantable, standing)
load_tray_promised = { $tray }: { $listed } promised, { $plantable } likely plantable of { $standing } standing
# (bed, species, listed, open)
load_bed_promised = { $bed }, { $species }: { $listed } promised, { $open } places open
# (tray, bed, why)
load_fits_not = { $tray } does not fit { $bed } today: { $why }
load_warnings = { $warnings } things to look at: { $KEY_C } says so before anything is written
# (tray, bed)
load_gone = { $tray } for { $bed }: the tray is empty or gone, or the bed no longer plans its species
load_caution = Usual caution: a tray of watered bags weighs 15 to 40 kg. Two people or fewer bags, legs bent, close to the body. Heavy work early and late, shade, water before thirst. Headache, cramps, dizziness: stop, shade, drink.
load_caution_short = Heavy: two people or fewer bags, legs bent. Heat: early or late, shade, water before thirst.
load_confirm_hint = When they stand in the ground, { $KEY_C } writes all of it at once.
# (day, lines, plants)
load_ask = Write as planted on { $day }: { $plants } plants in { $lines ->
    [one] { $lines } line
   *[other] { $lines } lines
}?
load_ask_keys = { $KEY_W }: write all of it. { $KEY_Q }: not yet.
pair_fits_well = nothing holds it back, nothing to take care of
coming_heading = What becomes ready in the next { $weeks } weeks
coming_none = Nothing has a day in these weeks.
# (first, last)
coming_week = { $first } to { $last }
coming_undated = No day until somebody does or looks
# (tray, species, standing)
coming_tray = { $tray }, { $species }, { $standing } standing
# (bed, species, open)
coming_bed = { $bed } for { $species }, { $open } open
sign_fits_today = fits the bed today
sign_held_back = something known holds it back
sign_not_known = only what nobody knows holds it back
sign_no_place = no bed plans it, or the list leaves it no place
sign_take_care = to take care of, or doubtful
sign_tray_to_come = a tray that becomes ready
sign_bed_to_come = a bed that becomes ready
