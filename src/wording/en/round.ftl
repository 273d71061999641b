### The round: what there is to do, why now, and what is lost.

# (stops, minutes, allowed)
round_heading = { $stops ->
    [one] Walk: { $stops } stop, about { $minutes } min of { $allowed }
   *[other] Walk: { $stops } stops, about { $minutes } min of { $allowed }
}
round_mark_means = ! loses most by waiting
# (what, why)
stay_away = Stay away from { $what }: { $why }
# (what, day)
look_first = first look at them: treated with { $what }, the waiting time ended { $day } and nobody looked since
round_nothing = Nothing is due.
round_on_the_way = On the way out
round_no_place = Trays without a place
round_seed_store = Seed store
round_bed = Bed { $bed }
# (stops, list)
round_can_wait = { $stops ->
    [one] { $stops } can wait: { $list }.
   *[other] { $stops } can wait: { $list }.
}
# (task, until)
round_let_go = To let one go: outplant write let_go task="{ $task }" until={ $until }
# (task, subject)
round_about = { $task } { $subject }
# (task, subject, species)
round_about_species = { $task } { $subject }, { $species }
# (plants, days, a_day, minutes)
round_reckoned = { $plants } plants within { $days } d = { $a_day } a day of waiting; { $minutes } min of looking
# (figure, day)
round_last = last: { $figure }, { $day }
round_expect = expect: { $what }
round_expect_good = good enough: { $what }
lose_seedlings = { $plants } seedlings may be lost
lose_seed = seed for { $plants } plants may be lost
lose_planted = { $plants } plants here may be lost
lose_time = { $plants } plants may not go out in time
lose_planting = { $plants } plants may miss the rains
or_else = or { $lost }
round_gauge = today's line is not written; a nought counts too
# (days, every)
round_emerging = looked at { $days } d ago, every { $every } d while it comes up
round_emerging_never = seed is due and nobody looked yet
round_up = { $emerged } up
# (emerged, expected)
round_up_of = { $emerged } of about { $expected } up
# (days, every, stage)
round_count_old = counted { $days } d ago, every { $every } d while { $stage }
round_count_never = never counted
# (standing, seen, cells)
round_part_counted = { $standing ->
    [one] only part was counted, { $standing } in { $seen } of { $cells } cells, and the books say otherwise: count it whole
   *[other] only part was counted, { $standing } in { $seen } of { $cells } cells, and the books say otherwise: count it whole
}
# (what, every)
round_sick = { $what } seen: look every { $every } d
round_losses = losses lately: look every { $every } d
round_counted_ago = counted { $days } d ago
# (day, emerged, sown)
round_emergence_over = nothing new, last day was { $day }: { $emerged } of { $sown } seeds came up
# (age, from)
round_old_enough = { $age } d since sowing, due from { $from }
round_in_container = { $days } d in its container
# (days, limit)
round_in_container_of = { $days } d in its container, which holds { $limit }
# (days, limit)
round_in_container_circling = { $days } d in its container, which holds { $limit }; roots circle: cut them too
round_roots_circle = roots circle, and go on circling in a larger container until they are cut
round_container_overdue = too long in its container
# (pass, of, rest)
round_sample_fails = { $pass } of { $of } measured are good enough; about { $rest } are too small or thin for their age
# (sturdiness, limit)
round_lanky = tall and thin: height / collar { $sturdiness }, at most { $limit }
# (length, day)
round_hardening_by = takes { $length } d, could be ready { $day }
# (length, day)
round_hardening_since = takes { $length } d, old enough since { $day }
round_hardening = takes { $length } d and has not begun
round_step_settled = last step { $days } d ago
round_step_first = no step yet
# (now, next)
round_step_light = from { $now } to { $next } light
round_step_end = { $end } in the end
round_step_place = room on { $place }
round_step_open = no bench with room gives such light: in the open, without cloth
round_step_cloth = no bench with room gives such light: in the open under cloth of { $shade } % shade
# (shade, layer)
round_step_layers = no bench with room gives such light: in the open under cloth of { $shade } % shade, or under two layers of { $layer } %
# (light, place)
round_step_then = after { $LAST_STEP_DAYS } days or more to { $light } light: { $place }
round_step_then_cloth = after { $LAST_STEP_DAYS } days or more to { $light } light, under cloth
round_step_water = { $days ->
    [one] water every day
   *[other] water every { $days } days
}
round_never_measured = never measured
round_measure = { $plants ->
    [one] measure { $plants } plant
   *[other] measure { $plants } plants
}
round_measure_all = { $plants ->
    [one] measure the one that stands
   *[other] measure all { $plants }
}
round_place_light = { $trays ->
    [one] { $trays } tray waits for it: how much shade does the cloth here give? Or read the light
   *[other] { $trays } trays wait for it: how much shade does the cloth here give? Or read the light
}
round_never_measured_near = never measured, { $days } d to its least age
round_never_measured_past = never measured, old enough since { $days } d
round_sample_old = measured { $days } d ago
round_no_plug = no plug lifted yet
round_plug_ago = last plug { $days } d ago
round_plug_to_least = { $days } d to its least age
round_plug_past_least = old enough to go
round_plug_to_limit = { $days } d left in its container
round_plug_past_limit = its container's time is over
# (what, day)
round_eats_open = { $what }, seen { $day }, and nothing done since: find where it comes from, use or set something against it (traps, guards, a cat, somebody who watches) and write it as treated; or look again and write the share
# (what, day)
round_sick_open = { $what }, seen { $day }, and nothing done since: throw out what has it with its soil, in a bag, burned or buried far from here, on no heap that the nursery uses; or treat by the label. Write which
# (what, day, next)
round_sick_next = { $what }, seen { $day }: { $next }
round_sick_apart = Set the tray apart, and ask whether it must be reported
round_sick_of_soil = Set the tray apart, where no water runs from it to others
# (what, day, leaves)
round_leaves_lost = { $what }, seen { $day }: it goes along with no plant. Count those that keep their sound leaves ({ $leaves }), and measure a sample with its leaves, or write the share of those that do not
round_sick_damping = Water seldom and never over the leaves, and let air in
# (what, day)
round_sick_few = { $what }, seen { $day }, on few, and not looked at since: look again, leave those that have it, and write the share now, 0 where it is gone
# (what, day)
round_sick_again = { $what }, seen { $day }, and answered: look again, and write the share left, 0 where it is gone
# (what, day)
round_label_both = { $what }, used { $day }: how long does its label say to stay away, and how long before planting? Read it from outside, and write both; until then nobody is sent in and nothing is planted
# (what, day)
round_label_planting = { $what }, used { $day }: how long before planting does its label say to wait? Read it and write it; until then nothing is planted
# (what, day)
round_label_home = { $what }, used { $day }: how long to stay away? Write what its label says, 0 where it has no label; until then nobody is sent in and nothing goes out
# (what, day)
round_label = { $what }, used { $day }: how long does its label say to stay away? Read it from outside, and write it; until then nobody is sent in and nothing goes out
# (what, day)
round_treated = { $what }: waiting time as written ended { $day }; did it work?
# (seeds, days)
round_untested = { $seeds }, { $days } d without a test
# (seeds, days)
round_tested = { $seeds }, last test { $days } d ago
# (kept, life, days)
round_life_ends = { $days ->
    [0] { $kept }, lives { $life } d: today is the last
   *[other] { $kept }, lives { $life } d: { $days } left
}
round_lot_past = past its stated life since { $day }: cut ten open, sow at once where some are firm and pale inside, else throw it out
# (day, celsius)
round_lot_killed = dead: cold below { $celsius } °C kills it, and so it lay since { $day }. Cut ten open: throw it out where all are brown, dry, slimy or empty, and write that none is left; else write a test
round_lot_dead = dead by all that is known: its life was over on { $day }. Cut ten open: throw it out where all are brown, dry, slimy or empty, and write that none is left; else sow it at once, or write a test
# (seeds, day)
round_lot_tested_dead = dead by its test: none of { $seeds } came up by { $day }. Cut ten open: throw it out where all are brown, dry, slimy or empty, write that none is left, and get fresh seed; else write a test
round_seeds_left = { $seeds } left
round_fence_eaten = animals that a fence keeps out were here on { $day }, and nobody fenced since
round_work_never = not written down
round_work_old = done { $day }, too long ago
# (tray, species, day)
round_for_tray = for { $tray } ({ $species }), ready { $day }
# (tray, species, day)
round_for_tray_not_before = for { $tray } ({ $species }), not ready before { $day }
# (tray, species)
round_for_tray_now = for { $tray } ({ $species }), ready now
# (plants, days)
round_rings = { $plants ->
    [one] { $plants } young plant, rings not weeded for { $days } d
   *[other] { $plants } young plants, rings not weeded for { $days } d
}
# (plants, days)
round_young_dry = { $plants ->
    [one] { $plants } young plant, { $days } d without rain
   *[other] { $plants } young plants, { $days } d without rain
}
# (plants, day)
round_young_found_dry = { $plants ->
    [one] { $plants } young plant, the ground found dry on { $day }
   *[other] { $plants } young plants, the ground found dry on { $day }
}
# (plants, left, full)
round_young_short = { $plants ->
    [one] { $plants } young plant, { $left } of { $full } mm left for its roots
   *[other] { $plants } young plants, { $left } of { $full } mm left for their roots
}
# (plants, days)
round_young_unread = { $plants ->
    [one] { $plants } young plant outside the rains, and for { $days } d no rain that wets, no wet finger and no watering written that keeps it
   *[other] { $plants } young plants outside the rains, and for { $days } d no rain that wets, no wet finger and no watering written that keeps them
}
# (sentence)
round_water_feet = { $sentence }: where a finger finds the ground dry at the foot, pour { $FOOT_LEAST_LITRES } to { $FOOT_MOST_LITRES } litres there, slowly, and write the watering. That makes no wet ground of the bed
# (bunches, nurse, day)
round_bunches = { $bunches } bunches of { $nurse } showed and are ripe about { $day }; cut each stem with its bunch
# (plants, nurse, day)
round_tubers = tubers of { $plants } plants of { $nurse }: after { $day } they turn to wood
# (sentence, positions)
round_tubers_loosen = { $sentence }; lifting them loosens the ground of { $positions } positions still open
# (light, species, least, share)
round_too_dark = { $light } light now, { $species } needs { $least } at least and a tray of it comes: why of this bed says which cuts help at once; else in steps a month apart, no more than { $share } of the shade each
# (plants, nurse, day)
round_past_life = { $plants } plants of { $nurse } are past their life since about { $day }: take out what is dead, keep what shades, and count it
# (alive, days)
round_nurses = { $alive } by the books, not counted for { $days } d
round_light_never = never read
round_light_old = read { $day }, too old
round_soil_dry = pushed in dry ground, says nothing
round_soil_never = ground not checked
# (months, planted, species, day, living)
round_survival = { $months ->
    [one] month { $months }: { $planted } { $species } planted { $day }, { $living } living by the books
   *[other] month { $months }: { $planted } { $species } planted { $day }, { $living } living by the books
}
# (plants, bed)
round_to_bed = { $plants } to { $bed }
round_fits_taken = ready, no place left in { $beds }: trays that can wait less go first
round_not_sorted = a guess, nobody measured them: sort while you load, what is small or thin stays
round_stays = { $plants } not good enough
stumps_care = keep them upright in the shade, moist and out of the wind, the lower end down; plant them the same way up
slips_care = keep them dry and airy in the shade until the cut ends are cured, never in a wet heap
suckers_care = keep them pared in the shade, out of the wind; cut away what is brown before planting
vines_care = keep them in airy shade, out of sun and wind
# (left, day)
round_bare_left = { $left ->
    [one] { $left } of these bare roots finds no place: bag it today, deep shade and moist, or give it away; its last day is { $day }
   *[other] { $left } of these bare roots find no place: bag them today, deep shade and moist, or give them away; their last day is { $day }
}
# (left, day)
round_stumps_left = { $left ->
    [one] { $left } of these stumps or stakes finds no place: bag it, plant it elsewhere or give it away; its last day is { $day }
   *[other] { $left } of these stumps or stakes find no place: bag them, plant them elsewhere or give them away; their last day is { $day }
}
round_stumps_near = stumps or stakes, no bed takes them; { $days ->
    [0] today is the last day
    [one] { $days } day left
   *[other] { $days } days left
}
bare_roots_care = keep the roots heeled in or in wet sacking, in the shade, never in sun or wind; dip them in mud before planting
round_bag_at_once = bare roots that do not live so: bag them at once, deep shade and moist, and let them go when a plug holds
# (bed, plants, day)
round_bare_unmeasured = bare roots that nobody measured: if tall and thick enough, up to { $plants } go to { $bed }; else bag them, their last day is { $day }
round_shade_for_roots = roots were cut or torn, and it stands in the sun: carry it into the shade today, until { $until }
round_shade_for_grafts = fresh grafts, and they stand in the sun: carry them into the shade today, until { $until }
round_shade_after_leap = came too far into the sun on { $since }: back into the shade today, and look for scorched leaves
# (ends, rains)
round_bag_ends = its bag ends { $ends }, before the rains of { $rains }: lift a plug, then pot on in time, or cull
# (day, alive)
round_bare_taken = no bed takes them. Nobody wrote how long they keep, taken to { $day }: { $alive }; write the day you see
round_bare_near = bare roots, no bed takes them; { $days ->
    [0] today is the last day
    [one] { $days } day left
   *[other] { $days } days left
}
sign_triangle = triangle
sign_circle = circle
sign_square = square
sign_diamond = diamond
sign_star = star
sign_cross = cross
# (low, high)
round_plants_between = { $low } to { $high } plants
teach_sheet = Or bring all trays that stand at once, in a sheet with the columns tray, species and how many:
round_mean = mean height { $mean } cm
round_until = by { $day }
until_rains = by { $day }, while the rains are safe
until_container = by { $day }, before it is too old for its bag
until_last_day = by { $day }, its last day
until_hardened = by { $day }, to be hardened for the rains
until_roots = by { $day }, before the roots suffer
until_ready = by { $day }, when it is old enough
until_rains_begin = by { $day }, when the rains begin
until_waits = by { $day }: a tray waits for it
until_sow_by = by { $day }, for the rains it is sown for
until_seed_life = by { $day }, while the seed lives
until_today = today
until_overdue = overdue since { $day }
until_overdue_planted = overdue since { $day }, when the young plants were set
until_not_known = no last day is known
lose_rain = today's rain stays unknown
lose_food = food that spoils
lose_bench = it holds the bench for nothing
lose_sowing = somebody may sow it for nothing
lose_room = it takes room and water for nothing
lose_no_place = nothing lost today
lose_little = less than a plant may be lost
lose_reading = it stays unknown
work_minutes = { $minutes } min
work_hours = { $hours } h
work_takes = about { $time } of work
# (allowed, time)
work_heading = The minutes are those of looking and writing down, cut at { $allowed }. The work found on the way takes one person about { $time } more, and is not cut.
work_heading_none = The minutes are those of looking and writing down, cut at { $allowed }.
# (task, done)
work_part = { $task }: { $done }
tasks_no_place = { $n ->
    [one] { $n } tray ready with no place left
   *[other] { $n } trays ready with no place left
}
# (plants, day)
round_hands_rest = hands for { $plants } of them today, the rest by { $day }
# (day)
round_hands_not_today = no hands for them today: by { $day }
# (plants)
round_hands_late = { $plants } have no hands before their last day: find more hands, or pot them on
round_no_place_left = { $plants ->
    [one] { $plants } more is good enough, no place left
   *[other] { $plants } more are good enough, no place left
}
# (day, next)
round_too_late = too late for these rains, safe until { $day }: for the next, from { $next }
round_too_late_for_all = too late for these rains, safe until { $day }
# (tray, species)
round_for_tray_today = for { $tray } ({ $species }), goes today
round_for_more = { $trays ->
    [one] and { $trays } tray more
   *[other] and { $trays } trays more
}
go_by_rains = by { $day } (rains)
ends_before_container = its bag ends before, { $day }: lift a plug in time, pot on or cull
ends_before_bare = good only until { $day }: bag them
go_by_container = by { $day } (bag)
go_by_last_day = by { $day } (last day)
# (plants, tray, number, beds)
offer_tray = { $tray }: { $number } beds ({ $beds }) are offered the same { $plants } plants
# (places, species, bed, number, trays)
offer_bed = { $bed }: { $number } trays ({ $trays }) are offered the same { $places } places for { $species }

## kept_: by word

kept_in_pod = in the fruit
kept_mucilage_on = mucilage on
kept_washed_moist = washed and moist
kept_in_parchment = in parchment
kept_dry_sealed = dry and closed
kept_dry_open = dry, in the open
kept_cold = cold
kept_other = kept otherwise
kept_unknown = nobody knows how it was kept

## task_: by word

task_gauge = Read the rain gauge
task_go_out = Send out
task_last_day = Last day
task_count = Count
task_stop_waiting = Stop waiting
task_sow_again = Sow again?
task_prick_out = Prick out
task_pot_on = Pot on or cull
task_cut_roots = Cut the roots
task_cull = Cull
task_space_out = Set apart
task_begin_hardening = Begin hardening
task_shade = Give more light
task_into_shade = Into the shade
task_water = Water more rarely
task_measure = Measure
task_check_plug = Lift a plug
task_read_label = Read the label
task_treatment_over = Look again
task_sick = Sick plants
task_test_lot = Test the seed
task_sow_lot = Sow the seed
task_throw_out_lot = Throw out the seed
task_clear = Clear
task_holes = Dig holes
task_weed = Weed
task_mulch = Mulch
task_fence = Fence
task_water_bed = Water or look
task_count_nurses = Count nurse plants
task_cut_bunches = Cut bunches
task_lift_tubers = Lift tubers
task_cut_for_light = Cut for light
task_set_nurses = Set nurse plants
task_remove_nurses = Take out nurse plants
task_read_light = Read the light
task_check_soil = Push the rod
task_count_survivors = Count survivors

## tasks_: by word (n)

tasks_gauge = the rain gauge
tasks_go_out = { $n ->
    [one] { $n } tray to send out
   *[other] { $n } trays to send out
}
tasks_last_day = { $n ->
    [one] { $n } last day
   *[other] { $n } last days
}
tasks_count = { $n ->
    [one] { $n } count
   *[other] { $n } counts
}
tasks_sow_again = { $n ->
    [one] { $n } sowing to make again
   *[other] { $n } sowings to make again
}
tasks_stop_waiting = { $n ->
    [one] { $n } sowing to stop waiting for
   *[other] { $n } sowings to stop waiting for
}
tasks_prick_out = { $n ->
    [one] { $n } tray to prick out
   *[other] { $n } trays to prick out
}
tasks_pot_on = { $n ->
    [one] { $n } tray to pot on
   *[other] { $n } trays to pot on
}
tasks_cut_roots = { $n ->
    [one] { $n } tray whose roots to cut
   *[other] { $n } trays whose roots to cut
}
tasks_cull = { $n ->
    [one] { $n } tray to cull
   *[other] { $n } trays to cull
}
tasks_space_out = { $n ->
    [one] { $n } tray to set apart
   *[other] { $n } trays to set apart
}
tasks_begin_hardening = { $n ->
    [one] { $n } hardening to begin
   *[other] { $n } hardenings to begin
}
tasks_shade = { $n ->
    [one] { $n } step of light
   *[other] { $n } steps of light
}
tasks_into_shade = { $n ->
    [one] { $n } tray into the shade
   *[other] { $n } trays into the shade
}
tasks_water = { $n ->
    [one] { $n } step of water
   *[other] { $n } steps of water
}
tasks_measure = { $n ->
    [one] { $n } sample
   *[other] { $n } samples
}
tasks_check_plug = { $n ->
    [one] { $n } plug
   *[other] { $n } plugs
}
tasks_read_label = { $n ->
    [one] { $n } label to read
   *[other] { $n } labels to read
}
tasks_sick = { $n ->
    [one] { $n } case of sick plants
   *[other] { $n } cases of sick plants
}
tasks_treatment_over = { $n ->
    [one] { $n } look after a treatment
   *[other] { $n } looks after a treatment
}
tasks_test_lot = { $n ->
    [one] { $n } seed test
   *[other] { $n } seed tests
}
tasks_sow_lot = { $n ->
    [one] { $n } lot to sow
   *[other] { $n } lots to sow
}
tasks_throw_out_lot = { $n ->
    [one] { $n } lot of dead seed
   *[other] { $n } lots of dead seed
}
tasks_clear = { $n ->
    [one] { $n } bed to clear
   *[other] { $n } beds to clear
}
tasks_holes = { $n ->
    [one] { $n } bed to dig
   *[other] { $n } beds to dig
}
tasks_weed = { $n ->
    [one] { $n } bed to weed
   *[other] { $n } beds to weed
}
tasks_mulch = { $n ->
    [one] { $n } bed to mulch
   *[other] { $n } beds to mulch
}
tasks_fence = { $n ->
    [one] { $n } bed to fence
   *[other] { $n } beds to fence
}
tasks_water_bed = { $n ->
    [one] { $n } bed to water
   *[other] { $n } beds to water
}
tasks_count_nurses = { $n ->
    [one] { $n } count of nurse plants
   *[other] { $n } counts of nurse plants
}
tasks_cut_bunches = { $n ->
    [one] { $n } bed with ripe bunches
   *[other] { $n } beds with ripe bunches
}
tasks_lift_tubers = { $n ->
    [one] { $n } bed of tubers to lift
   *[other] { $n } beds of tubers to lift
}
tasks_cut_for_light = { $n ->
    [one] { $n } bed to cut for light
   *[other] { $n } beds to cut for light
}
tasks_set_nurses = { $n ->
    [one] { $n } bed to set nurse plants in
   *[other] { $n } beds to set nurse plants in
}
tasks_remove_nurses = { $n ->
    [one] { $n } bed to take nurse plants out of
   *[other] { $n } beds to take nurse plants out of
}
tasks_read_light = { $n ->
    [one] { $n } light reading
   *[other] { $n } light readings
}
tasks_check_soil = { $n ->
    [one] { $n } push of the rod
   *[other] { $n } pushes of the rod
}
tasks_count_survivors = { $n ->
    [one] { $n } survival count
   *[other] { $n } survival counts
}
