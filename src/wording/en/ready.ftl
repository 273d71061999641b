page_unnamed = This nursery
page_today = today, { $day }
page_back = LOOKING BACK to { $day }: what was so then, by all that is written now
page_ahead = LOOKING AHEAD to { $day }: nothing more is taken as done, only time passes
page_known = ONLY what had been written down by { $day }
ready_heading = Ready to go out today
ready_heading_on = Ready to go out on { $day }
ready_none = No tray fits a bed today.
ready_none_on = No tray fits a bed on { $day }.
day_plan_heading = Plan of today: what to load, most urgent first
day_plan_heading_on = Plan of { $day }: what to load, most urgent first
# (plants, list)
plan_hands = Hands for { $plants } plants a day. Not today: { $list }
# (tray, plants, day, last)
plan_rest_by = { $tray } { $plants } by { $day } (last day { $last })
# (tray, plants, day)
plan_rest_on = { $tray } { $plants } by { $day }
# (tray, plants)
plan_of_tray = { $tray } { $plants }
plan_late = No hands before their last day: { $list }. Find more hands, or pot them on
# (trays, codes)
plan_places_filled = { $trays ->
    [one] Ready too, but the others fill its places: { $codes }
   *[other] Ready too, but the others fill their places: { $codes }
}
waiting_heading = Not yet: the shortest wait first
ready_more = and { $more } more
ready_all_hint = The rest: outplant ready --all
open_beds = Open: { $list }
# (bed, species, places)
bed_open_for = { $bed } ({ $species }, { $places })
# (bed, species)
bed_and_species = { $bed }, { $species }
# (questions, list, all)
why_met = { $questions ->
    [one] met: { $list } ({ $all } says why)
   *[other] met: { $list } ({ $all } says why each)
}
# (count, all)
why_met_many = { $count } more are met ({ $all } says which and why)
why_unknown_many = not known, and not holding it back: { $names }
why_rest = { $all } says the rest: figures, sources, entries.
no_bed_heading = Ready, but no bed today
no_bed_heading_on = Ready, but no bed on { $day }
no_bed_plans = no bed plans { $species }
no_bed_plans_nurse = no bed plans { $species }, and nurse plants need no plan: write in which bed they go
not_yet_heading = Not yet
empty_trays = empty: { $codes }
# (place, tray)
spared_carried_off = { $place }: { $tray } was treated before it came there, and alone makes the others wait. Carried off again, in gloves, to a corner of its own, it opens the bench
# (place, tray, others)
spared_apart = { $place }: { $others } trays wait for { $tray }, treated among them. In a corner of its own, where nothing else stands, a spray makes no other tray wait
comes_from = from { $day }
was_from = since { $day }
more_reasons = { $reasons ->
    [one] +{ $reasons } more
   *[other] +{ $reasons } more
}
# (bed, reason)
in_bed = { $bed }: { $reason }
beds_heading = Beds
# (light, day)
bed_light = { $light } light, read { $day }
# (light, low, high, since, day)
bed_light_apart = { $light } light, readings of { $since } to { $day } from { $low } to { $high }
# (light, now, since)
tray_light_changed = { $light } in the mean of { $LAST_LIGHT_DAYS } days; { $now } since { $since }
take_care = take care: { $what }
bed_light_reckoned = light not read, reckoned { $light }
bed_light_unknown = light not read
bed_plans_nothing = nothing is planned here
# (open, positions)
bed_has_open = { $open } of { $positions } positions open
bed_in_light = { $plants } in good light
bed_nothing_waits = waits for nothing
doubts_heading = Doubts: what cannot be right as written
unplanned_heading = Gaps of the plans
# (tray, species)
unplanned_tray = { $tray } is ready, but no bed plans { $species }: add it to the plan of a bed
hint_why_tray = Every reason: outplant why tray { $tray }
teach_first_tray = No tray is written down yet. When you sow one, write it like this:
teach_first_tray_command = outplant write sown tray=cof-001 species=coffee lot=unknown seeds=60 container=bag
teach_standing_tray = Plants that stand already are written so:
teach_standing_tray_command = outplant write plants_received tray=cof-001 species=coffee count=40 from=opening form=bag
no_bed_asked = No bed plans it.
teach_first_bed = No bed is laid out yet: outplant write bed_set, with bed, field, length_m, width_m and plan.
teach_plan = { $bed } plans no species: lay it out again with a plan
# (tray, species)
why_tray_heading = Tray { $tray }, { $species }
# (bed, species)
why_bed_heading = Bed { $bed }, for { $species }
# (tray, bed)
why_pair_heading = Tray { $tray } for bed { $bed }
why_ready = ready to go out
why_place_heading = Place { $place }
why_place_open = nothing keeps hands out of it
place_trays = { $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
}
# (trays, most)
place_trays_of = { $trays } of { $most } trays that it holds
place_light_shade = { $light } light, by its shade
why_ready_no_bed = ready, but no bed takes it: { $why }
why_not_ready = not ready
# (beds, why)
why_ready_for = ready for { $beds }; for brighter beds not yet: { $why }
# (task, reason)
why_due = { $task }: { $reason }
reckoning_heading = How it is reckoned
light_reckoning_heading = How the light is reckoned
light_reckoning_heading_of = How the light is reckoned for { $species }
light_from_nurses = reckoned from the nurse plants { $light }
label_light_unread = without a reading
label_light_leaves = leaves by the reading
label_light_corrected = with that reading
light_ahead_heading = Light to come
# (now, half_year, band)
light_ahead_inside = { $now } of the open positions inside { $band } now, { $half_year } on average over six months
# (said, month, why)
light_turns_bright = { $said }; too bright from { $month } on: { $why }
# (said, month, why)
light_turns_dark = { $said }; too dark from { $month } on: { $why }
# (said, month, why)
light_turns_inside = { $said }; inside it from { $month } on: { $why }
light_turns_by_bunches = bunches of { $nurse } are cut
light_turns_by_stems = stems of { $nurse } are cut with their bunches
light_turns_by_age = { $nurse } comes to its end
light_turns_by_thinning = nurse plants lose leaves or end
light_turns_by_growth = the nurse plants grow
shade_to_come_heading = Shade that ends
beside_heading = Shade of the beds beside
# (bed, taken)
beside_takes = nurse plants of { $bed } take { $taken } of the open light here, which the figures of this bed leave out
beside_not_placed = { $beds }: nurse plants stand there too, and where both beds lie is not written (corner and bearing of the rows), so their shade is not reckoned
cuts_heading = More light by the fewest cuts
label_cuts_advice = what to cut
label_cuts_bring = what it brings
# (band, line, positions)
cuts_tried = inside { $band }: { $line } ({ $positions } positions were looked at)
cuts_none_made = no cut: { $inside }
# (nurse, along, across)
cut_stem_at = the stem of the { $nurse } { $along } m along the bed and { $across } m across
# (nurse, along, across)
cut_leaves_at = two thirds of the leaves of the { $nurse } { $along } m along the bed and { $across } m across
# (nurse, along, across)
cut_lifted_at = lift the { $nurse } { $along } m along the bed and { $across } m across
cuts_proven = { $list }; every other set of as many was tried and none brings more
cuts_found = { $list }; the best that was found, not every set was tried
cuts_places_unknown = { $sentence }; nobody wrote where each of them stands, they are taken as evenly spread
cuts_no_advice = no cut helps that leaves three quarters of the shade and gives no living plant more than { $MOST_STEP } times its light
cuts_too_little = no cut is worth it: those that leave three quarters of the shade bring too few positions into the band
# (after, before, lost, kg)
cuts_bring = over six months { $after } of the open positions are inside on average, { $before } without; { $lost } of the shade goes, and about { $kg } kg of dry leaves fall as mulch
# (sentence, least, most)
cuts_food = { $sentence }, and they give { $least } to { $most } kg to eat
# (sentence, times)
cuts_step = { $sentence }; no living plant gets more than { $times } times its light
new_nurses_heading = Nurse plants that would bring the light into the band
# (plants, nurse, row, in_row, set_by, from, inside)
new_nurses_set = { $plants } plants of { $nurse } at { $row } x { $in_row } m, set by { $set_by }: over the half year from { $from } on { $inside } of the open positions are inside on average
# (plants, nurse, row, in_row, from, inside, wanted)
new_nurses_late = { $plants } plants of { $nurse } at { $row } x { $in_row } m, set now: they suit only from { $from } on, after { $wanted }; over the half year then { $inside } of the open positions are inside on average
# (sentence, parts)
new_nurses_parts = { $sentence }; set in { $parts } parts, a month apart, no month takes more than a quarter of their shade when they end
food_heading = Food on the way
# (month, bunches, least, most)
food_bunches_counted = about { $month } { $bunches } bunches, as counted, { $least } to { $most } kg
# (month, bunches, least, most)
food_bunches_by_age = about { $month } { $bunches } bunches, by the age of the stems, { $least } to { $most } kg
# (from, until, plants, least, most)
food_tubers = from { $from } to { $until } the tubers of { $plants } plants, { $least } to { $most } kg
# (from, until, plants, least, most)
food_grain = from { $from } to { $until } the grain of { $plants } plants, { $least } to { $most } kg
# (sentence, positions)
food_loosens = { $sentence }; lifting them loosens the ground of { $positions } positions still open
food_taken_heading = Food taken
# (month, plants, kg)
food_taken_weighed = { $month } from { $plants } plants { $kg } kg
# (month, plants, kg)
food_taken_partly = { $month } from { $plants } plants { $kg } kg and what nobody weighed
# (month, plants)
food_taken_unweighed = { $month } from { $plants } plants, and nobody wrote how much
water_ahead_heading = Water of the weeks after planting
label_water_today = planted today
water_ahead_today = in ground that is full, { $share } of drawn weathers leave it no more than { $STRESS_BORNE_DAYS } days in a row without easily taken water within 6 weeks
label_water_lasts = without rain
water_lasts = easily taken water of ground that is full lasts { $days } days
label_litres = litres a day
# (plants, litres)
litres_young = its young plants ({ $plants }) take about { $litres } litres a day at the foot while it does not rain
# (plants, litres)
litres_open = planted at all of its open positions ({ $plants }), about { $litres } litres a day more
# (plants, litres)
litres_bench = { $plants } plants take about { $litres } litres a day in this light; what falls beside their containers comes on top
label_water_last_safe = last safe day
# (day, share)
water_ahead_last_safe = { $day }, by { $share } of drawn weathers
# (from, until, share)
water_ahead_never_safe = none of { $from } to { $until }: on no day do { $share } of drawn weathers go well; water at the foot
label_rains_began = rains began
rains_began_by_gauge = { $day } by the gauge and the rule of the climate service (calc rains has it); days that nobody read count as dry
water_drawn_from_gauge = ours: 200 weathers drawn from weeks of the gauge at this time of the year, the balance of FAO-56 for each
water_drawn_from_usual = ours: 200 weathers drawn by the usual rain of the months, the balance of FAO-56 for each
water_drawn_from_both = ours: 200 weathers drawn from weeks of the gauge, where these are too few by the usual rain of the months, the balance of FAO-56 for each
label_light_months = month by month
# (month, year, light)
light_of_month = { $month } { $year } { $light }
# (month, year, light)
light_of_month_at_most = { $month } { $year } at most { $light }
# (light, why)
light_at_most = at most { $light } light: { $why }
label_light_positions = from position to position
# (read, day, expected, factor)
light_leaves_told = { $read } light read on { $day }, where leaves as the profile says would let through { $expected }: density x { $factor }
# (read, day, expected)
light_leaves_not_told = { $read } light read on { $day }, where leaves as the profile says would let through { $expected }: no leaves explain it, the crowns are drawn too small, too large or in the wrong place: measure some with a tape
# (low, high)
light_positions = { $low } to { $high }
# (low, high, share, band)
light_positions_in_band = { $low } to { $high }, { $share } of them inside { $band }
source_light_model = height and crown by age of the profile or by tape, leaf density from the light that its closed stand lets through, about 40 % either way (ours); Monsi & Saeki 1953; half of the light from the sky (ours); neighbouring beds are left out, and a slope that is not written
why_fits = fits: { $plants } can go
why_fits_not = does not fit
why_nothing_asked = nothing is asked of it
state_met = met
state_blocks = holds it back
state_unmet = not met
state_unknown = not known
state_unknown_blocks = not known, holds it back
state_warns = take care
label_why = why
label_needed = needed
label_known = known
label_expected = expected
label_source = source
label_entries = entries
label_stage = stage
label_standing = standing
label_place = place
label_plantable = plantable
label_ready_from = ready from
label_ready_since = ready since
label_best_before = best before
label_counted = counted
label_grafted = grafted
label_light = light
# (known, basis)
known_how = { $known } ({ $basis })
# (first, usual)
ready_at_the_earliest = { $first } at the earliest, usually { $usual }
# (day, bed)
ready_for_bed = { $day } for { $bed }
# (likely, low, high)
day_between = { $likely } (between { $low } and { $high })
species_unknown = species not known
