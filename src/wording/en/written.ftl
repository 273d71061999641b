### The parts of a short line by what they mean.

named_tray = the tray
named_bed = the bed
named_place = the bench
named_lot = the seed lot
named_species = the species
named_count = the number of plants
named_standing = the number of plants
named_dead = the number of the dead
named_alive = the number of the living
named_cause = the cause
named_container = the bag or cell
named_shade_pct = the shade in percent
named_every_days = the number of days between waterings
named_roots = what the plug shows
named_plants = the heights
named_height_cm = the height in cm
named_collar_mm = the root collar in mm
named_share = the share (0.5 is half)
named_light_share = the light in percent
named_rain_mm = the rain in mm
named_tmin_c = the lowest temperature
named_tmax_c = the highest temperature
named_text = the text
named_why = the reason
named_until = the last day
named_task = the task
named_with = what it was treated with
named_what = what was seen
named_rows = the rows
named_seeds = the number of seeds
named_mass_g = the weight in g
named_days = the number of days
named_germinated = the number germinated
named_rod_mm = the rod in mm
named_push_kg = the push in kg
named_depth_cm = the depth in cm
named_resistance_mpa = the resistance in MPa
named_happened = the day
named_spacing = the spacing in metres: between rows and in the row, as 3x3
named_from = where they come from
named_form = the form they come in
named_source = from whom or where the seed is
named_collected = the day it was picked
named_kept = how it is kept
named_holes = the number of holes
named_seeds_per_hole = the seeds in each hole
named_to = where they went

remark_again = the same was written already at { $at }: again?
# (on, at)
remark_again_on = the same was written already on { $on } at { $at }: again?
# (day, before, now, both)
remark_rain_twice = of { $day } { $before } mm of rain stand written already; { $now } mm takes their place (both together: { $both } mm): is that so?
remark_same_as_line = the same as line { $line }: again?
# (tray, days, usual)
remark_kept_long = { $tray }: without soil good for { $days } days? They rarely last more than { $usual }: is that so?
# (tray, gone, stood)
remark_half_lost = { $tray }: { $gone } of { $stood } plants lost, more than half: is that so, or is it the count of what is left?
# (tray, gone, stood)
remark_half_gone = { $tray }: { $gone } of { $stood } plants gone: is that so?
# (bed, alive, lived)
remark_alive_again = { $bed }: { $alive } alive, but { $lived } lived there by the last count and what was planted since, and the dead do not come back: is the number right, or was a planting not written?
# (bed, plants, species, from, to)
remark_light_jumps = { $bed }: so much cut at once brings { $plants } plants of { $species } that stand there from { $from } to { $to } of full light, more than { $MOST_STEP } times as much, and leaves burn: cut a part of it now and the rest in 3 to 4 weeks?
# (about, day)
remark_look_early = take care: at { $about } this look came too early to tell: only one from { $day } on does
# (about, reasons)
remark_lets_go_of_all = by this all that holds { $about } back ends: { $reasons }. Is that so? Name a reason to end it alone
# (tray, counted, most)
remark_many_more = { $tray }: { $counted } plants are many more than { $most }, the most to be expected: is the number right?
# (tray, counted, most)
remark_more_than_seed = { $tray }: { $counted } seedlings, but its seed can have given { $most }: is the number right, or was a sowing not written?
# (tray, measured, stood)
remark_more_measured = { $tray }: { $measured } measured, but { $stood } stood at the last count, and seed is still due: is the number right? If more came up, write the count first
# (tray, counted, sown)
remark_before_emergence = { $tray }: { $counted } seedlings, but it was sown on { $sown }: are those the seeds?
remark_first_days = The first come up about { $days } days after sowing.
# (lot, day, cut)
remark_seed_past = take care: the seed of { $lot } is past its stated life since { $day }. { $cut }
# (lot, germinated, seeds, days, last, day)
remark_test_early = take care: { $germinated } of { $seeds } of { $lot } after { $days } d tells only that so many live: the last of this species are due { $last } d after laying out. Count on until { $day }, take this line back then and write the whole count
# (lot, why)
remark_seed_dead = take care: the seed of { $lot } is { $why }
# (tray, bed, why)
remark_not_ready = take care: { $tray } was not ready to go out to { $bed }: { $why }
# (tray, why)
remark_given_unfit = take care: nobody should get plants of { $tray } yet: { $why }
# (tray, planted, ready)
remark_more_than_ready = take care: of { $tray } { $planted } go out, and by its sample about { $ready } were good enough: leave the others on the bench, or write them as they are
# (about, why)
remark_hands_in_wait = take care: this takes hands into { $about } while a waiting time runs there: { $why }. Gloves and sleeves, or wait; then wash hands, arms and clothes
remark_unknown_pest = take care: whether "{ $what }" goes along with plants is not known here, so it holds back: write it again with "goes along with plants" yes or no
remark_may_scorch = take care: "{ $what }" kills the plants that it wets and shows after one to three weeks: they stay here until those alive are counted, { $SHOWS_AFTER_DAYS } days later or more
# (tray, day, came)
remark_before_it_came = { $tray }: { $day } is before the first day written of it, { $came }: is the day right?
remark_new_place = "{ $name }" would be a new place, nothing here is called so yet
remark_new_container = "{ $name }" would be a new kind of container, nothing here is called so yet
remark_no_container = { $tray }: in what they stand there is not written, so how long it holds them stays unknown
remark_about_nothing = nothing here is called "{ $about }": is the note about that?
remark_no_waiting_time = take care: { $asks }
waiting_days_asked = Days to stay away by its label (Enter: not known):
planting_days_asked = Days until planting by its label (Enter: not known):
waiting_days_not_read = "{ $written }" is no number of days up to ten years: write 7, or nothing where it is not known
refused_dots = "..." stands for what is still to be written: write it in its place
remark_kills_weeds = take care: "{ $what }" kills weeds and what is planted into it. How many days does its label say until planting? Write them too; nothing is planted there until then
remark_planted_at_once = "{ $what }" kills weeds and what is planted into it: does its label say 0 days until planting?
remark_may_kill = take care: whether "{ $what }" harms plants is not known here, so nothing is planted until its time before planting is written too: 0 where it is nothing against weeds
# (tray, what)
remark_loss_names = take care: "{ $what }" names a sickness, or what may be one, so it counts as seen in { $tray } and holds it back. Where living plants have it too, write it as a pest or sickness with their share
# (tray, to, why)
remark_hold_goes_along = take care: plants of { $tray } go into { $to }, and what holds them back goes along: { $why }
# (tray, place, why)
remark_leaves_held = take care: { $tray } leaves { $place }, which is held: { $why }
# (tray, what)
remark_from_sick = take care: { $what } is not settled in { $tray }, and plants, soil, hands and knives carry it on: settle it first, or keep these plants apart, and wash before you touch others
# (place, what)
remark_to_sick = take care: { $what } was seen at { $place }, or a tray with it stands or stood there: take another place, or look at these plants before they go
remark_only_named = take care: "{ $what }" names a sickness, and this line holds no plants back: write it as a pest or sickness too, with the share of the plants
remark_only_used = take care: "{ $what }" names something that was used, and a note makes nobody wait: write it as treated too, with its waiting time
# (bed, area)
remark_large_bed = { $bed }: { $area } ha are more than a bed has: are length and width in metres?
# (bed, species)
remark_no_positions = { $bed }: { $species } has no position there by this spacing, or more than can be counted: are the distances in metres?
remark_rows_unread = rows "{ $rows }" cannot be read, and all would be meant: write 1-3,7 or every 3
# (bed, species, density, row, in_row)
remark_spacing = { $bed }: { $species } would stand { $density } to the hectare, usual is { $row } × { $in_row } m: is the spacing right?
remark_until_and_never = until { $until } and never are both said, and never would count: which is meant?
remark_nothing_gone = nothing is missing here, so there is nothing to settle: is that so?
# (entry, day)
remark_still_to_come = { $entry } is of { $day }, still to come, so the clock stays in doubt: take it back first (outplant undo { $entry })
remark_of_no_entry = there is no entry called "{ $of }" here, and none is missed: is that so?
# (tray, collar, height)
remark_thick = { $tray }: { $collar } mm thick at { $height } cm tall is thicker than young trees are: is the point in its place?
# (tray, now, then, day)
remark_far_height = { $tray }: { $now } cm tall in the mean, and { $then } cm on { $day }: is the point in its place?
# (tray, now, then, day)
remark_far_collar = { $tray }: { $now } mm thick in the mean, and { $then } mm on { $day }: is the point in its place?
# (bed, depth)
remark_deep_hole = { $bed }: holes { $depth } cm deep: is it centimetres?
# (species, figures)
remark_asked_no_more = { $species }: by this its young plants are no longer asked about { $figures }, and may go out where they could not: is that so?
remark_no_place = after this nothing says where the nursery lies, and its days, rains and light can no longer be reckoned: is that so?
remark_asks = write it all the same?
remark_if_meant = nothing was written; if it is meant so, write it again with --yes
