### What verdicts say: why a criterion is as it is, why it is not known, where its rule comes from.

# (days, least)
old_enough = { $days ->
    [one] { $days } day old, { $least } needed
   *[other] { $days } days old, { $least } needed
}
old_without_least = { $days ->
    [one] { $days } day old; the profile of its species names no least age
   *[other] { $days } days old; the profile of its species names no least age
}
# (days, short, least)
too_young = { $days ->
    [one] { $days } day old, { $short } short of { $least }
   *[other] { $days } days old, { $short } short of { $least }
}
# (days, most)
container_holds = { $days ->
    [one] in its bag { $days } day, the bag holds it { $most }
   *[other] in its bag { $days } days, the bag holds it { $most }
}
# (days, most)
container_outgrown = in its bag { $days } days, the bag holds it { $most }: lift a plug, then pot on or cull
# (days, most)
container_too_old = in its bag { $days } days, the bag holds it { $most }: after so long no plug tells how the roots wind within. Wash the soil off some and look; cull what winds round, pot on the rest
# (days, most)
container_far_beyond = in its bag { $days } days, the bag holds it { $most }: so late one plug that holds is not enough. Measure a sample of today and write it, or pot on or cull
# (days, most, day)
container_cut_lately = in its bag { $days } days, the bag holds it { $most }; roots were cut, and no plug tells before { $day }: leave it until then
container_circles = the roots circle, whatever the days: cut them, or cull; a larger bag alone does not mend it
# (days, most)
seedbed_holds = { $days ->
    [one] in its seedbed { $days } day, good for { $most }
   *[other] in its seedbed { $days } days, good for { $most }
}
# (days, most)
seedbed_outgrown = in its seedbed { $days } days, good for { $most }: prick out what is left, or cull
# (pass, of)
sample_too_few = { $pass } of { $of } pass, but too few stand for a load
# (sentence, plants)
sample_of_before = { $sentence }; measured before { $plants } of it went out
# (pass, of, mean)
height_met = { $pass } of { $of } measured are the right height, mean { $mean }
# (pass, of, mean, most)
height_met_tall = { $pass } of { $of } measured are tall enough, mean { $mean }, above { $most }: look at stem and plug, they say whether it is too late for them
# (pass, of, mean)
height_met_of_few = { $pass } of { $of } measured are the right height, mean { $mean }: few to speak for all, measure { $USUAL_SAMPLE } or all that stand
# (pass, of, mean, least)
height_short = { $pass ->
    [0] none of { $of } are the right height, mean { $mean }, at least { $least } needed: let them grow
   *[other] only { $pass } of { $of } are the right height, mean { $mean }, at least { $least } needed: let them grow
}
# (pass, of, mean, most)
height_tall = { $pass ->
    [0] none of { $of } are the right height, mean { $mean }, above { $most }: grown too long for their bags
   *[other] only { $pass } of { $of } are the right height, mean { $mean }, above { $most }: grown too long for their bags
}
# (pass, of, mean)
collar_met = { $pass } of { $of } measured stems are thick enough, mean { $mean }
# (pass, of, mean, floor)
collar_under_floor = { $pass } of { $of } measured stems are thick enough for their height, mean { $mean }; some are under { $floor }, a floor that no publication gives: look whether they stand by themselves
# (pass, of, mean, needed)
collar_thin = { $pass ->
    [0] none of { $of } stems are thick enough, mean { $mean }; needed { $needed }: give them room and light
   *[other] only { $pass } of { $of } stems are thick enough, mean { $mean }; needed { $needed }: give them room and light
}
# (pass, of, mean)
leaves_met = { $pass } of { $of } have leaves enough, mean { $mean }
# (pass, of, mean, needed)
leaves_few = { $pass ->
    [0] none of { $of } have leaves enough, mean { $mean }; needed { $needed }
   *[other] only { $pass } of { $of } have leaves enough, mean { $mean }; needed { $needed }
}
grafted_met = grafted or budded
grafted_heals = grafted a short while ago: wait until { $day }, when the union has knit, the tie is off and the new leaves are firm
grafted_heals_look = grafted a short while ago, and by now it shows which took: look, loosen the tie where the union is thick, write those that failed as lost, and count the others. They wait until { $day }, when the tie is off and the new leaves are firm
# (plants, day)
grafted_few = { $plants ->
    [one] { $plants } of them was grafted a short while ago: leave it here until { $day }
   *[other] { $plants } of them were grafted a short while ago: leave those { $plants } here until { $day }
}
grafted_look = grafted, and nobody wrote since whether they took: look whether the tie is off, write those that failed as lost, and count the others
grafted_none = seedlings, and this species is usually grafted or budded: graft them and write it, or let them go as seedlings that bear late and not as their mother does
# (grafted, standing)
grafted_some = only { $grafted } of { $standing } are grafted or budded, as is usual for this species: graft the rest, or let it go as seedlings
plug_met = the plug holds together
plug_few_wild = the plug holds together; a few of them came from the wild a short while ago: leave those here
plug_crumbles = the plug falls apart: wait until the roots hold it
plug_one_apart = one plug fell apart and another holds: lift more; { $PLUGS_AGAINST_ONE } that hold let them go, else wait { $PLUG_AGAIN_DAYS } days
plug_circles = the roots circle: cut them, or cull; potting on alone does not mend it
flush_met = no soft new leaves
flush_unmet_on = soft new leaves seen { $day }: wait until they are firm
flush_few = soft new leaves seen { $day } on few of them: leave those that are soft here until they are firm
flush_feel = soft new leaves seen { $day }: feel whether they are firm and dark; where they are soft, wait some days more
# (days, least)
hardening_met = { $days ->
    [one] hardening for { $days } day, { $least } needed
   *[other] hardening for { $days } days, { $least } needed
}
# (days, least, advised)
hardening_below_advice = hardening for { $days } days, { $least } needed and { $advised } advised: a few days more spare leaves
# (days, short, least)
hardening_short = { $days ->
    [one] hardening for { $days } day, { $short } short of { $least }
   *[other] hardening for { $days } days, { $short } short of { $least }
}
# (days, least, advised)
hardening_stood_below = has stood { $days } days in this light, { $least } needed and { $advised } advised: a few days more spare leaves
hardening_stood = has stood { $days } days in this light, and where it goes is no brighter: nothing to harden for
hardening_stood_tray = has stood { $days } days in this light, as beds for its species may have: nothing to harden for
hardening_small_step_tray = has stood { $days } days in this light, and from there it is a small step into beds for its species: nothing to harden for
hardening_small_step = has stood { $days } days in this light, and from there it is a small step: nothing to harden for
hardening_steps_taken = has stood { $days } days in light enough for this step: nothing more to harden for
# (days, least)
hardening_stood_here = has stood { $days } days in this light, { $least } needed
# (days, short, least)
hardening_stood_short = { $days ->
    [0] stands in this light since today, { $least } days needed: leave it there, unless its bed is brighter
    [one] has stood { $days } day in this light, { $short } short of { $least }: leave it there, unless its bed is brighter
   *[other] has stood { $days } days in this light, { $short } short of { $least }: leave it there, unless its bed is brighter
}
hardening_soft = goes out soft: nothing to harden
hardening_no_brighter = this bed is no brighter than where it stood: nothing to harden for
# (until, least)
hardening_rests = in the shade until { $until }, for its roots or grafts; then hardening begins, and takes { $least } days
# (plants, sentence, day)
of_those_joined = { $plants ->
    [one] { $sentence }. So it is for the one plant that was put to them on { $day }
   *[other] { $sentence }. So it is for the { $plants } plants that were put to them on { $day }
}
# (least, day)
hardening_not_before = hardening has not begun, it takes { $least } days: time enough from { $day } on
hardening_not_begun = hardening has not begun, it takes { $least } days: bring it toward the light, water more rarely
hardening_begun_today = hardening since today, it takes { $least } days: leave it there
# (on, from, least)
hardening_leapt = the step of { $on } was too large and hardens nothing: it counts from { $from }, and then takes { $least } days
# (day, least)
hardening_said_alone = written as begun on { $day }, but where it stands the light never changed, and this bed is brighter: step it up to more light, or write the light it has; then it takes { $least } days
# (day, least)
hardening_put_back = the shade was put back up on { $day }: hardening, { $least } days, begins again with the next step toward the light
# (day, from)
hardening_fresh = the last step toward the light was on { $day } and must be { $LAST_STEP_DAYS } days old: from { $from }
# (from, to)
step_met = stood in { $from } light, this bed has { $to }: a small step
step_same = stood in { $from } light, this bed has the same
# (from, to)
step_darker = stood in { $from } light, this bed has { $to }: darker, no step to harden for
# (from, to)
step_met_tray = stands in { $from } light, its species goes into { $to } at least: a small step
step_inside_tray = stands in { $from } light, as beds for its species may have
# (from, to)
step_darker_tray = stands in { $from } light, its species goes into { $to } at most: darker, no step to harden for
# (from, to, ratio)
step_watch = stood in { $from } light, this bed has { $to }: { $ratio } times as bright, watch for scorched leaves
# (from, to, ratio)
step_watch_tray = stands in { $from } light, its species goes into { $to } at least: { $ratio } times as bright, one more step is better
# (from, to, ratio, steps)
step_too_bright = stood in { $from } light, this bed has { $to }: { $ratio } times as bright, bring it out in { $steps } steps first
# (from, to, ratio, day)
step_after_rest = stands in { $from } light and goes into { $to }: { $ratio } times as bright. In the shade until { $day } for its roots, then out in steps
# (from, to, ratio, steps)
step_too_bright_tray = stands in { $from } light, its species goes into { $to } at least: { $ratio } times as bright, bring it out in { $steps } steps
# (from, to)
step_too_dark = stood in { $from } light, this bed has { $to }: much darker than it is used to
# (from, to)
step_too_dark_tray = stands in { $from } light, its species goes into { $to } at most: much darker than it is used to
# (days, sentence, look)
step_back_from_shade = { $days ->
    [one] { $sentence }. It came back from { $days } day in the shade: look for scorched leaves on { $look }
   *[other] { $sentence }. It came back from { $days } days in the shade: look for scorched leaves on { $look }
}
# (sentence, now, since, until)
step_after_burn = { $sentence }. It came into { $now } light on { $since }, too large a step: keep it in shade until { $until } and look for scorched leaves
# (sentence, now, since, shows)
step_in_sun = { $sentence }. It came into { $now } light on { $since }, too large a step, and stands there still: back into the shade today, and look for scorched leaves. It stays until it is in the shade, or was counted on { $shows } or later and is not scorched
met_held = not held back
met_treated = no wait of a treatment
met_plant_back = no wait before planting
met_pest = no pest or sickness
met_flush = firm leaves
held_met = nobody holds it back
held_unmet_said = held back: { $why }
# (place, why)
held_stood = stood at { $place } while it was held: { $why }. Ask whether these may go, and write the tray as released where they may
# (why, day)
held_unmet_until = held back until { $day }: { $why }
treated_met = no treatment still at work
treated_unmet_said = treated with { $what }, and the waiting time still runs
# (tray, what, day)
treated_plants_until = plants from { $tray }, treated with { $what }, stand here: until { $day }, as their waiting time is written, nobody works in this bed with hands
# (tray, what, day)
treated_beside_until = { $tray }, treated with { $what }, stands or stood on this bench: until { $day }, as its waiting time is written, nobody works here with hands
# (tray, what, day)
treated_drifted_until = these plants stood beside { $tray } when it was treated with { $what }, and it drifts: until { $day }, as its waiting time is written, nobody takes them in hand
# (place, what, day)
treated_stood_until = these plants were put down at { $place } after it was treated with { $what }: until { $day } take bags and leaves with gloves, and wash
# (what, day)
treated_dries = treated with { $what }: nobody works here with hands until it has dried. From { $day } on one may
# (what, day)
treated_of_day = treated with { $what }: nobody works here with hands on that day. From { $day } on one may
# (tray, what, day)
treated_beside_of_day = { $tray }, treated with { $what }, stands or stood on this bench: nobody works here with hands on that day. From { $day } on one may
# (tray, what, day)
treated_beside_dries = { $tray }, treated with { $what }, stands or stood on this bench: nobody works here with hands until it has dried. From { $day } on one may
# (what, day)
treated_here_until = this bench was treated with { $what }: until { $day }, as its waiting time is written, nobody works here with hands
# (what, day)
treated_unmet_until = treated with { $what }: waiting time as written ends { $day }
plant_back_met = nothing against weeds still waits in the ground
plant_back_bench = this bench was treated with { $what } before these came, and it may lie in its ground: set the bags where roots do not touch it, and look at the youngest leaves before they go
plant_back_said = { $what } was used here, and its time before planting still runs
# (what, day)
plant_back_until = { $what } was used here: its label lets nothing be planted before { $day }
pest_met = no pest or sickness is written that was not settled since
# (what, day, share)
pest_on_few = seen on { $day }: { $what }, on { $share } of the plants. Look again before they go, and leave those that it is on or has hurt
# (what, day)
pest_not_counted = seen on { $day }: { $what }; nobody wrote on how many, so it holds back. Count, then write it with its share
# (what, day, share)
pest_on_many = seen on { $day }: { $what }, on { $share } of the plants. It goes along into the bed: throw out or treat, then look and write the share left, 0 where it is gone
# (what, day, next)
pest_of_soil = seen on { $day }: { $what }. It goes along with soil and roots: { $next }
# (what, day, next)
pest_of_soil_apart = seen on { $day }: { $what }. It goes along with soil and roots: set the tray apart, ask whether it must be reported, and { $next }
# (what, day, next)
pest_in_stem = seen on { $day }: { $what }. It sits inside the stem and goes along: { $next }
# (what, day, next)
pest_may_spread = seen on { $day }: { $what }. It may be a sickness that goes along: set the tray apart, and { $next }
# (tray, what, day)
pest_beside_tray = these plants stand or stood beside { $tray }, where { $what } was seen on { $day }: look at them before they go, and write share 0 where none has it
# (what, day)
pest_beside_place = these plants stand or stood where { $what } was seen on { $day }: look at them before they go, and write share 0 where none has it
# (what, day, share, leaves)
pest_leaves_many = seen on { $day }: { $what }, on { $share } of the plants. It goes along with no plant, but one that lost its leaves does not start: count those that keep their sound leaves ({ $leaves }), and measure a sample with its leaves, or write the share of those that do not
# (what, day, share, leaves)
pest_leaves_few = seen on { $day }: { $what }, on { $share } of the plants. It goes along with no plant: leave those that do not keep their sound leaves ({ $leaves })
# (what, day, leaves)
pest_leaves_uncounted = seen on { $day }: { $what }; nobody wrote on how many, so it holds back. It goes along with no plant: write the share of those that do not keep their sound leaves ({ $leaves })
# (what, day, next)
pest_spreads = seen on { $day }: { $what }. One plant that has it is enough: set the tray apart, ask whether it must be reported, and { $next }
# (what, day)
pest_unknown = seen on { $day }: { $what }. This name is not known here, and what nobody knows is not safe: write it again with "goes along with plants" yes or no
# (next)
pest_sign = where you know that it is none (no water, no food, burned by the sun), write it again with "goes along with plants" no; else { $next }
pest_next_kind = write it again with "goes along with plants" yes or no: its name does not say it
pest_next_share = count on how many plants it is, and write it again with that day and its share
# (least, so_far)
pest_next_out = throw out what has it with its soil, in a bag, burned or buried far from here, on no heap that the nursery uses; write it as culled, at least { $least } of its plants ({ $so_far })
# (least, so_far)
pest_next_out_or_treat = throw out what has it with its soil, in a bag, burned or buried far from here, on no heap that the nursery uses; write it as culled, at least { $least } of its plants ({ $so_far }). Or treat the whole tray by the label, and write it
# (least, so_far)
pest_next_taken_out = dig out what has it with its roots and the soil on them, in a bag, burned or buried far from here; write it as plants lost, at least { $least } ({ $so_far } so far)
# (least, so_far)
pest_next_taken_out_or_treat = dig out what has it with its roots and the soil on them, in a bag, burned or buried far from here; write it as plants lost, at least { $least } ({ $so_far } so far). Or treat the ground by the label, and write it
# (day)
pest_next_rest = let this ground rest until { $day } with what it does not live on, and carry no soil or tools from it: it keeps for years, and nobody sees it in the ground. Then look at what stands there, and where none has it write share 0
pest_so_far = { $so_far } so far
# (so_far, died)
pest_so_far_and_died = { $so_far } so far; { $died } that died of it since are counted
pest_next_whole_tray = throw out the whole tray with its soil and bags, burned or buried far from here, and write it as culled: so many have it that the soil they share has it too. Use none of this soil again, and wash the bench
# (next, day)
pest_next_or_count = { $next }. A count of the whole tray from { $day } on answers it too, where few died since
pest_next_deed = treat the ground, rest it or dig out what has it, and write it as treated, or write the plants taken out; a look alone is not believed
# (look, day)
pest_next_look_from = { $look }. Not before { $day }: it shows late
# (look, day)
pest_early_look = { $look }. The look of { $day } was too early
# (plants)
pest_look_plants = look at { $plants } of its plants at least; where none has it write share 0, and how many were looked at
# (plants)
pest_look_roots = look at the roots of { $plants } of its plants at least; where none has it write share 0, how many were looked at, and that roots were
pest_look_ground = dig in some places and look; where there is none write share 0
pest_look_rested = it has rested: look at what stands there, and where none has it write share 0
pest_look_roots_grown = lift { $plants } plants that grew in this ground since (weeds, beans or tomatoes sown for it) and look at their roots; where none has it write share 0, how many were looked at, and that roots were
pest_look_hosts_grown = nobody sees it in soil: have the soil tested, or grow { $plants } young plants of what it lives on in it and look at their roots; else let it rest with what it does not live on. Where none has it write share 0, how many were looked at, and that roots were
pest_look_bed = look at the plants of this bed; where none has it write share 0
# (plants, tray, what, day, look_at)
pest_brought = set out here: { $plants } plants from { $tray }, where { $what } was seen on { $day }. Take out what has it with its soil, and look at { $look_at } of them before you plant more. Where none has it write share 0 for this bed, and how many were looked at
# (plants, tray, other, what, day, look_at)
pest_brought_with = set out here: { $plants } plants from { $tray }, which had stood in one tray with those of { $other }, where { $what } was seen on { $day }. Take out what has it with its soil, and look at { $look_at } of them before you plant more. Where none has it write share 0 for this bed, and how many were looked at
# (plants, tray, place, what, day, look_at)
pest_brought_place = set out here: { $plants } plants from { $tray }, which stood at { $place } when { $what } was seen there on { $day }. Take out what has it with its soil, and look at { $look_at } of them before you plant more. Where none has it write share 0 for this bed, and how many were looked at
# (plants, tray, place, left, what, day, look_at)
pest_brought_place_left = set out here: { $plants } plants from { $tray }, which stood at { $place } until { $left }; { $what } was seen there on { $day }, and it hides in plants before it is seen. Take out what has it with its soil, and look at { $look_at } of them before you plant more. Where none has it write share 0 for this bed, and how many were looked at
# (sentence, day)
after_wait_until = from { $day } on, when the waiting time is over, and not before: { $sentence }
after_wait_unwritten = only when the waiting time is known and over: { $sentence }
# (what, place, left)
pest_where_they_stood = { $what } at { $place }, where these plants stood until { $left }
# (plants, tray, what, day, next)
pest_out_of = { $plants } of these came out of { $tray }, in which { $what } was seen on { $day }: it hides in plants before it is seen. Set the tray apart, and { $next }
# (tray, left, what, day, next)
pest_together = these stood in one tray with those of { $tray } until { $left }, and { $what } was seen there on { $day }: it hides in plants before it is seen. Set the tray apart, and { $next }
# (tray, bed, left, what, day, next)
pest_set_out_of = others of { $tray } were set out in { $bed } on { $left }, and { $what } was seen there on { $day }: it hides in plants before it is seen. Set the tray apart, and { $next }
# (what, day)
pest_eats_bed = seen in this bed on { $day }, on many plants: { $what }. What goes in now is eaten: find where it comes from, use or set something against it (traps, guards, a cat, somebody who watches: no label) and write it as treated, or look again and write share 0
# (what, day)
pest_eats_bed_uncounted = seen in this bed on { $day }: { $what }; nobody wrote on how many plants, so nothing goes in. Count those that lost leaves and write it with that share; or use or set something against it and write it as treated
# (what, day, plants)
pest_on_shade = { $plants ->
    [one] seen in this bed on { $day }: { $what }. { $plants } of the plants that give its shade goes: take it out before you plant, and read the light after it
   *[other] seen in this bed on { $day }: { $what }. { $plants } of the plants that give its shade go: take them out before you plant, and read the light after them
}
# (what, day)
pest_hurt_ground = seen in this bed on { $day }: { $what }. It may have killed what stood here, the shade and the mulch with it: look at the ground, the shade and the work anew, write what you find, and then share 0 of it
# (what, day)
pest_stings = seen in this bed on { $day }: { $what }. It stings or bites people and harms no plants: nobody works in this bed; mark the place, and who is allergic stays far off. Let somebody who knows how move it; where it is gone write share 0
# (what, day)
pest_stings_here = seen on this bench on { $day }: { $what }. It stings or bites people and harms no plants: nobody works here; mark the place, and who is allergic stays far off. Let somebody who knows how move it; where it is gone write share 0
# (what, day)
pest_in_bed = seen in this bed on { $day }: { $what }. Look for it before you plant
# (what, day, next)
pest_in_ground = seen in this bed on { $day }: { $what }. It waits for young roots: before you plant { $next }
# (what, day, next)
pest_holds_bed = seen in this bed on { $day }: { $what }. It waits for young roots and plants, so nothing is planted: { $next }
living_met_plants = living: { $plants }
living_unmet = nothing stands in it
load_met = enough can be planted: { $plants }
# (plants, least)
load_unmet = too few can be planted: { $plants }; a load is { $least }
# (day, care)
good_until_met = good until { $day }; { $care }
# (day, alive, care)
good_until_long = good until { $day } as written, and bare roots rarely last more than { $HEELED_IN_KEEP_DAYS } days: { $alive }; { $care }
bare_roots_met = its species lives from bare roots, leaves cut back
bare_roots_unmet = its species does not live from bare roots: bag them at once, deep shade and moist, and let them go when a plug holds
bare_roots_wildling = pulled in the wild with torn roots: bag them at once, deep shade and moist for three to four months, then out toward the light in steps
# (day, alive)
good_until_unmet = its last day was { $day }: { $alive }; cull what is dead
good_until_long_gone = its last day was { $day }, and bare roots do not lie for weeks: cull them
# (day, alive)
good_until_taken = nobody wrote how long they keep, taken to { $day }: { $alive }. What lives: plant or bag it today, and count it
alive_roots = look at them: fine roots moist and bark green under the nail live, roots dry and bark brown are dead
alive_bark = scratch the bark: green and moist lives, brown and dry is dead
alive_heart_leaves = look at the base and the heart leaves: firm and green lives, soft, rotten or shrivelled is dead
alive_corm = look at the corm where it is cut: firm and white lives, soft or brown is dead
alive_spear_leaf = look at the spear leaf and the nut: a green spear that holds and a sound nut live, a spear that pulls out is dead
alive_rhizome = look at them: firm, with sound eyes lives, soft, mouldy or shrivelled is dead
alive_vine = look at the nodes: firm and green lives, limp, black or shrivelled is dead
alive_clump = look at the base: firm and pale or green lives, dry through or rotten is dead
good_until_looked = past { $day }, which nobody wrote, and counted alive today: out today
# (light, band)
light_met = { $light } light in this bed, inside its { $band }
# (light, band)
light_near = { $light } light in this bed, next to its { $band }: a reading is no better than that
# (sentence, low, high, since)
light_apart = { $sentence }. Its readings since { $since } go from { $low } to { $high }: read it again, at several spots
# (light, most)
light_too_bright = { $light } light in this bed, more than { $most }: let more shade grow first
# (light, least)
light_too_dark = { $light } light in this bed, less than { $least }: cut back the shade first
# (light, band)
light_reckoned_met = { $light } by reckoning, not read, inside its { $band }: read the light before many plants go
# (light, most)
light_reckoned_bright = { $light } by reckoning, not read, more than { $most }: let more shade grow first, or read the light
# (light, least)
light_reckoned_dark = { $light } by reckoning, not read, less than { $least }: cut back the shade first, or read the light
# (light, band)
light_coming_met = { $light } light to come, inside its { $band }
# (light, most)
light_coming_bright = { $light } light to come, more than { $most }: plan shade in time
# (light, least)
light_coming_dark = { $light } light to come, less than { $least }: plan to cut back the shade
soil_met = the ground gives way at { $mpa } MPa
# (mpa, most)
soil_hard = the ground resists with { $mpa } MPa, roots go on well up to { $most }
soil_rod_met = the rod went in { $depth } cm
# (depth, needed)
soil_rod_short = the rod stopped at { $depth } cm, { $needed } cm needed, as deep as the ball goes
# (depth, all, needed)
soil_beneath_short = the rod stopped { $depth } cm under the bottom of the hole, { $all } cm deep with the hole; roots need { $needed } cm
# (depth, hole, needed)
soil_beneath_taken = the rod stopped { $depth } cm under the bottom of a hole taken as { $hole } cm, as its ball needs: nobody wrote its depth; roots need { $needed } cm in all
# (depth, hole, needed)
soil_beneath_if = soft { $depth } cm under the bottom of the hole; roots need { $needed } cm in all, and nobody wrote how deep the hole is. It is enough where the hole is { $hole } cm, as its ball needs: measure it, and write the holes again with their depth
# (depth, needed)
soil_beneath_unknown = the rod stopped { $depth } cm under the bottom of the hole, and nobody wrote how deep the hole is; roots need { $needed } cm in all. Write the holes again with their depth
# (depth, needed)
soil_beside_short = the rod stopped { $depth } cm deep beside the hole; roots that leave it need { $needed } cm
soil_lifted = tubers were lifted here { $days } days ago: the ground is open
soil_tubers_met = the ground is open: { $tubers }
soil_tubers_thin = lifted tubers are pinched thin: the ground is hard
soil_loosen_first = { $hard }: dig or loosen it, or grow tubers first
soil_hole_is_a_pot = { $hard }: the hole is a pot in hard ground. Loosen its bottom and its sides with a bar, or dig it deeper and wider, then push the rod again
soil_around_hole = { $hard }: around the dug hole roots grow at half their speed or less. Dig it wider, or loosen the ground beside and beneath it
cleared_on = cleared on { $day }
holes_on = holes dug by { $day }
weeded_on = weeded on { $day }
mulched_on = mulched on { $day }
fenced_on = fenced on { $day }
# (day, lasts)
cleared_stale = cleared on { $day }, which counts for { $lasts } days: clear what has grown back, then write it
# (day, lasts)
holes_stale = holes dug on { $day }, which counts for { $lasts } days: open them again, then write it
# (day, cm)
holes_shallow = holes dug on { $day } are too shallow for the { $cm } cm bag: dig them deeper, then write the depth
# (day, lasts)
weeded_stale = weeded on { $day }, which counts for { $lasts } days: weed the rings again, then write it
# (day, lasts)
mulched_stale = mulched on { $day }, which counts for { $lasts } days: lay new mulch
# (day, lasts)
fenced_stale = fenced on { $day }, which counts for { $lasts } days: look after the fence
cleared_unmet = clearing is not written down: clear grass and brush, then write it
holes_unmet = holes are not written down: dig them, then write it
weeded_unmet = weeding is not written down: weed the rings, then write it
mulched_unmet = mulch is not written down: lay it around the holes, then write it
fenced_eaten = animals that a fence keeps out were here on { $day }, and nobody fenced since: close it, then write it
fenced_eaten_beside = animals that a fence keeps out were in another bed of this field on { $day }: look at the fence of this one, or close it, and write it; or write share 0 where none of them came in
fenced_unmet = a fence is not written down: close it against cattle, then write it
# (mm, days)
water_met = { $days ->
    [one] { $mm } mm of rain in { $days } day
   *[other] { $mm } mm of rain in { $days } days
}
water_usual = no gauge was read for { $NO_GAUGE_DAYS } days, but it is the time of the usual rains: dig a finger into the ground
# (left, full, days)
water_left_met = { $days ->
    [0] { $left } of { $full } mm left for young roots: enough for today, and no longer without rain
    [one] { $left } of { $full } mm left for young roots: enough for { $days } day without rain
   *[other] { $left } of { $full } mm left for young roots: enough for { $days } days without rain
}
# (day, left, full, days)
water_left_seen = { $days ->
    [0] found wet on { $day }, { $left } of { $full } mm left for young roots: enough for today, and no longer without rain
    [one] found wet on { $day }, { $left } of { $full } mm left for young roots: enough for { $days } day without rain
   *[other] found wet on { $day }, { $left } of { $full } mm left for young roots: enough for { $days } days without rain
}
# (day, left, full, days)
water_left_since_dry = { $days ->
    [0] found dry on { $day }, and by the rain since { $left } of { $full } mm left for young roots: enough for today, and no longer without rain
    [one] found dry on { $day }, and by the rain since { $left } of { $full } mm left for young roots: enough for { $days } day without rain
   *[other] found dry on { $day }, and by the rain since { $left } of { $full } mm left for young roots: enough for { $days } days without rain
}
# (left, full, days)
water_left_usual = { $days ->
    [one] { $left } of { $full } mm left for young roots, if the usual rain fell on { $days } day that nobody read: dig a finger into the ground
   *[other] { $left } of { $full } mm left for young roots, if the usual rain fell on { $days } days that nobody read: dig a finger into the ground
}
# (left, full, needed)
water_left_near = { $left } of { $full } mm left for young roots, { $needed } needed: no further from it than a gauge errs. Dig a finger into the ground, and plant where it is wet
# (left, full, needed, rain)
water_left_short = only { $left } of { $full } mm left for young roots, { $needed } needed: wait for about { $rain } mm of rain, or write the ground as wet where a finger finds it so
# (day, rain)
water_found_dry = found dry on { $day }, whatever is reckoned: wait for about { $rain } mm of rain, or look again and write the ground as wet where a finger finds it so
# (day, left, full, needed, rain)
water_short_since_dry = found dry on { $day }, and by the rain since only { $left } of { $full } mm left for young roots, { $needed } needed: wait for about { $rain } mm of rain, or look again and write the ground as wet where a finger finds it so
# (sentence, day)
water_left_at_feet = { $sentence }. What was found wet on { $day } counts as the feet that were watered: look between the plants, and write that look with where=undug
# (mm, days, needed)
water_short = { $days ->
    [one] only { $mm } mm of rain in { $days } day, { $needed } needed: wait for rain, or write the ground as wet where a finger finds it so
   *[other] only { $mm } mm of rain in { $days } days, { $needed } needed: wait for rain, or write the ground as wet where a finger finds it so
}
# (mm, days, needed)
water_near = { $days ->
    [one] { $mm } mm of rain in { $days } day, { $needed } needed: no further from it than a gauge errs. Dig a finger into the ground, and plant where it is wet
   *[other] { $mm } mm of rain in { $days } days, { $needed } needed: no further from it than a gauge errs. Dig a finger into the ground, and plant where it is wet
}
# (mm, day)
water_drained = { $mm } mm of rain fell by { $day } in two days: look whether water stands in the holes, and plant none that hold water
# (mm, day, drained)
water_drowned = { $mm } mm of rain fell by { $day } in two days: the ground stands full of water and roots find no air. Wait until it has drained, { $drained } at the earliest, and look: no water in the hole
season_met = rains enough are left; the last safe day is { $day }
season_past = the last safe day was { $day }: wait for the next rains
season_begins = outside the rains: wait until { $day }
season_from = the rains left are too short: wait until { $day }
open_positions_met = { $positions ->
    [one] { $positions } position is open
   *[other] { $positions } positions are open
}
open_positions_unmet = no position is open in this bed

# (species, write)
gap_no_shade_band = the profile of { $species } has no shade band at planting out: { $write }
# (species, write)
gap_no_bare_roots = the profile of { $species } does not say whether it lives from bare roots: plant a few and see, or bag them. Once known: { $write }
# (species, write)
gap_no_most_days = the profile of { $species } does not say how many days its bag holds it: { $write }
# (day, mm)
gap_read_after_rain = the soil was read soft on { $day }, after { $mm } mm of rain: soaked ground reads soft. Read again two days after it drained
gap_read_soaked = the soil was read soft on { $day } while it was soaked, and soaked ground reads soft. Read again two days later
gap_read_dry = the soil was read dry, which says nothing: read again two days after a soaking
# (pushed, right)
gap_rod_too_hard = the rod was pushed with { $pushed }, so hard that it goes into hard ground too: push with about { $right } kg
# (depth, pushed, right)
gap_rod_too_hard_at = the rod went { $depth } cm deep under { $pushed }, so hard a push that it goes into hard ground too: push with about { $right } kg
# (depth, pushed, right)
gap_rod_too_weak = the rod stopped at { $depth } cm under only { $pushed }, too weak a push to say: push with about { $right } kg
# (depth, push)
gap_around_hole = holes are dug, but nobody looked at the ground around them: two days after a soaking push a rod in the bottom of a hole and beside it, { $push }, down to { $depth } cm: roots leave the hole, and the ball alone does not tell
# (depth, needed)
gap_read_too_shallow = the ground was read soft only down to { $depth } cm, the plants go to { $needed } cm: read deeper
# (read, of, mm)
gap_gauge_partly = the gauge was read on { $read } of the last { $of } days, { $mm } mm: write the days between, noughts too
# (month, share, bunches, nurse)
shade_goes_with_bunches = about { $month } { $share } of the shade goes, when { $bunches } bunches of { $nurse } are cut
# (month, share, nurse)
shade_goes_with_stems = about { $month } { $share } of the shade goes, when stems of { $nurse } have fruited
# (month, share, nurse)
shade_goes_by_age = about { $month } { $share } of the shade goes, when { $nurse } has lived its time
# (sentence, day)
shade_set_next = { $sentence }: the next nurse plants shade in time if set by { $day }
# (sentence, day)
shade_set_late = { $sentence }: the next nurse plants are late, set by { $day } they would have shaded in time
gap_light_reckoned = the light was not read; reckoned from the nurse plants it is { $light }: read the light in this bed
gap_light_no_crown = the light is not known, and nothing tells of the crowns of { $plant } there: read the light in this bed
gap_light_no_age = the light is not known, and nobody wrote when { $nurse } was planted: read the light in this bed, or measure { $nurse } with a tape
gap_light_trees = the light is not known, and plants of no written species shade it: read the light in this bed
gap_light_too_many = the light is not known, and so many nurse plants are not reckoned: read the light in this bed
# (since, until)
gap_light_since = its light is known only since { $since }: leave it there until { $until }, or write with its arrival since when it has stood so
# (cm, day)
gap_height_on_arrival = { $cm } cm tall on { $day } when they came, as written, and not measured here: measure a sample of { $USUAL_SAMPLE }, or all that stand
# (day, until)
gap_roots_cut = roots were cut on { $day }: in the shade until { $until }, when new ones have grown; no plug lifted in the first { $CUT_ROOTS_UNSEEN_DAYS } days tells whether they have
# (day, until)
gap_potted_on = moved into other soil on { $day }: until { $until } the ball may fall apart; wait, or lift a plug and see it hold
# (day, days)
gap_not_looked_at = bare roots since { $day }, and most dry out within { $days } days whatever last day was written: look at them today, fine roots moist and bark green under the nail, and write today how many live
gap_sample_old = measured on { $day }, more than { $SAMPLE_LASTS_DAYS } days ago, and plants grow: measure a sample of { $USUAL_SAMPLE } again, or all that stand
# (day)
gap_came_after_sample = measured on { $day }, before others were put with them: measure a sample of { $USUAL_SAMPLE } again, or all that stand
# (day, until)
gap_kept_too_long = on { $day } bare roots were put in that had lain past their last day: shade and moist until { $until }; only a plug lifted from then on tells whether they live
# (day, until)
gap_wildlings_among = wildlings are among these, in their bags since { $day }: deep shade and moist until { $until }, then out in steps. A plug lifted before tells nothing, for it may be one of the others
# (day, until)
gap_wildlings = wildlings, in their bags since { $day }: deep shade and moist until { $until }, or lift a plug and see it hold, then out in steps
# (what, day)
gap_no_plant_back = { $what } was used here on { $day }, and how long before planting its label asks to wait is not written: what kills weeds kills young roots. Read the label, then write it again with that day and after how many days one may plant
# (day, dead, alive, again)
gap_most_of_bed_died = by { $day } { $dead } had died here of nobody knows what and { $alive } live: look for the cause first, and write it as a pest or sickness of this bed, or as none, or the count again with its cause; else count again from { $again } on
# (day, dead, what, alive, again)
gap_ground_kills = by { $day } { $dead } had died here of { $what } and { $alive } live: it may kill what goes in now as well. Look at the ground and at those that live first, and write what is found as a pest or sickness of this bed, or none, share 0, where it is over; else count again from { $again } on
# (day, gone, alive, again)
gap_many_died = by { $day } { $gone } were dead or gone and { $alive } alive, and nobody wrote of what: look for the cause and write it as a pest or sickness, or as none; else count again from { $again } on
# (plants, tray, day, gone, alive, again)
gap_came_from_dying = { $plants } of these came out of { $tray }, in which by { $day } { $gone } were dead or gone and { $alive } alive, and nobody wrote of what: look for the cause and write it of these or of { $tray } as a pest or sickness, or as none; else count these again from { $again } on
# (plants, tray, day, gone, alive)
gap_left_dying = { $plants } of these came out of { $tray }, in which by { $day } { $gone } were dead or gone and { $alive } alive, and nobody wrote of what: look at these before they go, and write none, share 0, where no plant is sick
# (plants, tray, day, gone, alive)
gap_set_out_from_dying = set out here: { $plants } plants out of { $tray }, in which by { $day } { $gone } were dead or gone and { $alive } alive, and nobody wrote of what: look at these before you plant more, and write none, share 0, for this bed where no plant is sick
# (tray, day, gone, alive)
gap_died_beside = these plants stand or stood beside { $tray }, in which by { $day } { $gone } were dead or gone and { $alive } alive, and nobody wrote of what: look at them before they go, and write none, share 0, where no plant is sick
# (tray, bed, day, gone, alive)
gap_died_in_bed = plants of { $tray } were set out in { $bed }, where by { $day } { $gone } were dead or gone and { $alive } alive, and nobody wrote of what: look at these before you go on, and write none, share 0, where no plant is sick
# (tray, bed, what, day)
gap_sick_in_bed = plants of { $tray } were set out in { $bed }, where { $what } was seen on { $day }: it may have been hidden in those that came out of { $tray } with them. Look at these before you go on, and write none, share 0, where no plant is sick
# (what, day, until)
gap_fresh_dung = { $what } was put here on { $day }: fresh dung and urea burn young roots. Plant from { $until } on; where it was well rotted, write it so, or the days until planting
# (day, celsius)
gap_frost = the night of { $day } had { $celsius } °C: look for frost, leaves and tips that are brown, black or glassy. Then count or measure the plants, or write a look that found none
# (day, celsius)
gap_great_heat = { $day } had { $celsius } °C: look for scorched leaves and dried tips. Then count or measure the plants, or write a look that found none
# (gone, alive, day, what)
gap_harmed = { $gone } were lost to { $what } by { $day }, and { $alive } are left: look at those first, whether it goes on and whether they are sound. Then count or measure them, or write a look that found none
# (what, day, alive)
gap_no_plant_back_plants = treated with { $what } on { $day }: nobody here knows whether it harms plants, and how long before planting its label asks to wait is not written. Read the label, then write it again with that day and after how many days one may plant, 0 where it is nothing against weeds. A count of those alive from { $alive } on answers it too
# (what, day, alive)
gap_may_be_scorched = treated with { $what } on { $day }: it kills what it wets and shows only after one to three weeks, whatever its label says of planting. Keep these here, and count those alive from { $alive } on, without what yellows or dries
# (sentence)
or_no_label = { $sentence }, 0 where it has no label
# (day, until)
gap_plug_tells = how long its bag still holds it is not known; the plug lifted on { $day } holds, which tells as much until { $until }
gap_coming_day = a coming day: nobody knows its rain yet
# (days, day)
gap_coming_after_dry = { $days ->
    [one] a coming day after { $days } dry day, the last on { $day }: plants go only if it rains well before
   *[other] a coming day after { $days } dry days, the last on { $day }: plants go only if it rains well before
}
gap_coming_after_dry_look = a coming day, and the ground was found dry on { $day }: plants go only if it rains well before, or a finger finds it wet
# (days, day)
gap_unread_after_dry = { $days ->
    [one] { $days } dry day, the last on { $day }, and the rain since is not written: read the gauge and write it, noughts too, or write the ground as wet where a finger finds it so
   *[other] { $days } dry days, the last on { $day }, and the rain since is not written: read the gauge and write it, noughts too, or write the ground as wet where a finger finds it so
}
# (tray, what, day)
gap_no_waiting_time_plants = plants from { $tray }, treated with { $what } on { $day }, stand here, and its waiting time is not written: until it is, nobody works in this bed with hands. Read the label, then write it again with that day and after how many days it is safe
# (tray, what, day)
gap_no_waiting_time_beside = { $tray }, treated with { $what } on { $day }, stands or stood on this bench, and its waiting time is not written: until it is, nobody works here with hands. Read the label, then write it again with that day and after how many days it is safe
# (what, day)
gap_no_waiting_time_here = this bench was treated with { $what } on { $day }, and its waiting time is not written: until it is, nobody works here with hands. Read the label, then write it again with that day and after how many days it is safe
# (tray, what, day)
gap_no_waiting_time_drifted = these plants stood beside { $tray } when it was treated with { $what } on { $day }, it drifts, and its waiting time is not written: until it is, nobody takes them in hand. Read the label, then write it again for that tray with that day and after how many days it is safe
# (place, what, day)
gap_no_waiting_time_stood = these plants were put down at { $place } after it was treated with { $what } on { $day }, and its waiting time is not written: take bags and leaves with gloves, and wash. Read the label, then write it again with that day and after how many days it is safe
# (what, day)
gap_no_waiting_time = { $what } was used on { $day } and its waiting time is not written: unknown is not safe. Read the label, then write it again with that day and after how many days it is safe
# (sentence, rows)
part_rows = { $sentence }; read only in rows { $rows }
# (sentence, rows, of)
part_rows_of = { $sentence }; read only in rows { $rows } of { $of }
# (sentence, places)
part_places = { $places ->
    [one] { $sentence }; read at { $places } named place only
   *[other] { $sentence }; read at { $places } named places only
}
# (sentence, rows)
part_done_rows = { $sentence }; only in rows { $rows }
# (sentence, rows, of)
part_done_rows_of = { $sentence }; only in rows { $rows } of { $of }
# (sentence, places)
part_done_places = { $places ->
    [one] { $sentence }; at { $places } named place only
   *[other] { $sentence }; at { $places } named places only
}

unknown_age_measured = nobody wrote down when it was sown; its measure tells as much
unknown_age_of_nurse = nobody wrote down when it was sown: it is planted as it comes
unknown_exposure_step_pair = the step in light is not known: read the light at the tray and in the bed

source_collar = collar at least max(floor, height / 8): ours, common practice (Jaenicke 1999 has 6, from memory); floor: { $floor }
source_light_reckoned = { $band }; reckoned: light through the crowns of the nurse plants (Monsi & Saeki 1953) by age or tape, leaves by their profile and the last reading; four times in five inside the range (ours)
source_light_readings = { $band }; readings under { $READING_LASTS_DAYS } days old, newer ones weigh more, none from before the last great cut or loss (ours)
source_ground_work = { $days ->
    [one] ours, common practice: what is not written down is not done, and it counts for { $days } day
   *[other] ours, common practice: what is not written down is not done, and it counts for { $days } days
}

## rule_: by word

rule_days_since_sowing = days since sowing
rule_days_in_container = days in its container
rule_height = height
rule_collar = root collar
rule_leaves = leaves
rule_grafted = grafting
rule_plug = plug
rule_flush = new leaves
rule_hardening = hardening
rule_exposure_step = step in light
rule_held = held back
rule_treated = treatment
rule_plant_back = time before planting
rule_pest = pest or sickness
rule_living = living plants
rule_load = a load of plants
rule_good_until = last day
rule_bare_roots = bare roots
rule_light_now = light now
rule_light_coming = light to come
rule_soil = soil
rule_cleared = clearing
rule_holes = holes
rule_weeded = weeding
rule_mulched = mulch
rule_fenced = fence
rule_water = water
rule_season = rains left
rule_open_positions = open positions

## unknown_: by word

unknown_days_since_sowing = nobody wrote down when it was sown: measure a sample of { $USUAL_SAMPLE }, or all that stand: that tells as much
unknown_days_in_container = nobody wrote down since when it is in this bag: lift a plug and look at the roots
unknown_height = height is not measured: measure { $USUAL_SAMPLE } plants, or all that stand
unknown_collar = root collars are not measured: measure a sample with a caliper
unknown_leaves = leaves are not counted: count them on a sample
unknown_grafted = whether they are grafted is not known: look below the lowest leaves, then write it
unknown_plug = no plug was lifted yet: lift one before they go out; where the ball falls apart they stay
unknown_flush = nobody looked at the new leaves: see whether they are soft
unknown_hardening = nobody wrote down what light it stood in: read the light here
unknown_exposure_step = the light where it stands is not known: read it there
unknown_held = whether somebody holds it back is not known: ask, then write it
unknown_treated = the waiting time is not known: read the label, then write it
unknown_plant_back = how long before planting to wait is not known: read the label, then write it
unknown_pest = whether a pest is on it is not known: look, then write it
unknown_living = how many live is not known: count them
unknown_load = how many can be planted is not known: count, and measure a sample
unknown_good_until = its last day is not written down: look at the roots, then write it
unknown_bare_roots = whether its species lives from bare roots is not known: plant a few and see
unknown_light_now = the light is not known: read the light in this bed
unknown_light_coming = nothing that is written ends much of the shade soon; the light of today decides
unknown_soil = the soil is not known: push a rod two days after a soaking
unknown_cleared = whether it is cleared is not known: look, then write it
unknown_holes = whether holes are dug is not known: look, then write it
unknown_weeded = whether it is weeded is not known: look at the rings, then write it
unknown_mulched = whether mulch lies there is not known: look, then write it
unknown_fenced = whether the fence stands is not known: walk it, then write it
unknown_water = the rain of these days is not known: read the gauge and write it, noughts too
unknown_season = the usual rains are not written down: write from when until when it rains
unknown_open_positions = how many positions are open is not known: count the living in this bed

## source_: by word

source_common_practice = common practice
source_load = a load is { $LOAD_PLANTS } plants, or all that stand where fewer do (ours, common practice)
source_light_step = light of the bed beside the light of the tray in its last { $LAST_LIGHT_DAYS } days: more than { $LARGE_STEP } of full light and { $LARGE_STEP_RATIO } times as bright burns, and so does more than { $STEEP_RATIO } times with more than { $SMALL_STEP }; above { $FITS_UP_TO } times, and below { $DARKER_WARNS_BELOW }, take care (ours; no publication gives a safe number)
source_waiting_beside = the waiting time written down with the treatment, for the whole bench: ours, for a label counts the treated area and a bench is one
source_waiting_time = the waiting time written down with the treatment; the label and local rules lead
source_pest = ours: a pest on { $PEST_HOLDS_PCT } % of the plants or more, lost leaves on a third of them, and any of the soil and the roots, any virus, witches' broom, wilt or other sickness of which one plant is enough, and any that nobody knows, is carried into the field; it shows late, so a look tells after { $LOOK_AFTER_DAYS } days, { $LOOK_AFTER_INCURABLE_DAYS } of what nothing cures; ground in which it keeps unseen rests { $GROUND_RESTS_DAYS } days. Common practice: only healthy plants go out
source_flush = common practice: new leaves take 2-3 weeks to harden
source_stumps_keep = nobody wrote how long they keep: taken as { $STUMPS_KEEP_DAYS } days for stumps and stakes, moist and in the shade (ours, from common practice: one to three weeks); scratch the bark, green is alive
source_last_day_taken = nobody wrote how long they keep: taken as { $BARE_ROOTS_KEEP_DAYS } days, { $HEELED_IN_KEEP_DAYS } where heeled in cool and moist (from memory: Jaenicke 1999, Good tree nursery practices, ICRAF); look at the roots
source_last_day_written = the last day written down when they came: common practice
source_hardening = 3-4 weeks: Malawi moringa guide; 4-6 weeks: Tearfund, Pillars guide F14; held back below { $HARDENING_LEAST_DAYS } days, the last step { $LAST_STEP_DAYS } days old: ours, common practice
source_holding = the species' most days, scaled by the cube root of the container's volume (ours, common practice; related: Poorter et al. 2012, Functional Plant Biology 39:839); a plug check overrules
source_graft_heals = unions knit in 3 to 8 weeks (Hartmann & Kester, Plant Propagation, from memory); { $GRAFT_HEALS_DAYS } days, with the tie off and firm leaves: ours
source_grafted_height = the species' least height; grafts and buds leave at 60 to { $GRAFTED_MOST_CM } cm (Nakasone & Paull 1998, Tropical Fruits, from memory)
source_nurse_days = ours: { $NURSE_AFTER_EMERGENCE_DAYS } days after the last of the seed or the shoots is due
source_plug = common practice: a plug that holds with white tips is ready, one that crumbles is too early
source_root_limit = Bengough et al. 2011, Journal of Experimental Botany 62:59
source_rod = Bengough et al. 2011, Journal of Experimental Botany 62:59; push over the area of the rod's tip, common practice
source_tuber_shape = common practice: a tuber pinched thin tells of hard ground
source_tubers_lifted = common practice: lifting tubers loosens the ground to about 0.4 m; counted for two wet seasons, or a year where no rains are described (ours)
source_safe_rains = common practice: planted by the end of the usual rains less 8 weeks, or less half of short rains
source_written_here = as written by this nursery
source_rain = ours, with the rain by which Sivakumar 1988 dates the start of the rains (Agricultural and Forest Meteorology 42:295, from memory); a day without a gauge line is unknown, never dry
source_wildlings = common practice: wildlings stand in bags in deep shade for three to four months ({ $WILDLING_DAYS } days are the least) before they are brought out
source_any_size = ours: the size of this species is not known; seedlings of other trees go out at { $ANY_LEAST_CM } cm and more
source_fresh_dung = ours, common practice: dung lies { $BURNS_ROOTS_DAYS } days in the ground before plants stand in it
source_plant_back = the time before planting written down with what was used against weeds; the label and local rules lead
source_drowned = ours: { $DROWNED_MM } mm in two days is three times what the soil around a ball holds; field capacity comes two or three days after (common practice), on sand in a day, on clay in { $CLAY_DRAINS_DAYS }, and with each further { $DAY_MORE_MM } mm a day later; hollows stay wet longer
source_usual_rains = no gauge was read for { $NO_GAUGE_DAYS } days: the season's usual rains (ours, common practice)
source_water_left = daily balance of FAO-56 (equations 82 to 88), from the gauge, with what the air takes by Hargreaves (equation 52); the top { $ROOT_DEPTH_CM } cm, water held by texture as the United States Department of Agriculture has it, { $EASILY_TAKEN_SHARE } % of it taken easily by young roots (ours)
source_light_to_come = ours: { $SHADE_ENDS_SHARE } % of the shade or more ending within { $SHADE_AHEAD_DAYS } days; life of stems by the profile, bunches cut { $BUNCH_DAYS } days after they are seen (common practice)
source_positions = common practice: positions of the bed's grid as it is laid, a spot that species share counted once, less blocked spots and living plants
source_no_figure = the profile of the species, which does not say
source_counting = common practice: every 1-2 days until half is up, then every 3-4; every { $COUNT_EVERY_DAYS } days later, { $COUNT_NEAR_EVERY_DAYS } when it hardens or is ready, { $COUNT_SICK_EVERY_DAYS } while it is sick (ours)
source_sow_again = ours: at the half day less than { $POOR_EMERGENCE_SHARE } % of what was expected is up (common practice); the last day of sowing is the last safe day of the rains less the usual days to planting out
source_stop_waiting = common practice: past the species' last day and nothing new for { $NOTHING_NEW_DAYS } days or a quarter of the days to half emergence
source_prick_out = the species' sowing place; common practice: at 2 cotyledons to 2 true leaves, about 3 weeks after half are up
source_pot_on = common practice: pot on into 2-3 times the volume, prune the roots, or cull; holding time as for the days in the bag
source_grading = height over collar above { $LANKY_ABOVE }: set apart, above { $CULL_LANKY_ABOVE }: cull (ours, common practice; good up to 6: Jaenicke 1999, from memory)
source_measuring = common practice: { $SAMPLE_PLANTS } plants monthly near planting out, every k-th cell with the edges
source_lift_plug = common practice: lift one plug near planting out and near the end of the holding time
source_steps = the species' hardening template; a step every 7-10 days, up to { $FITS_UP_TO } times as bright fits; at most { $LARGE_STEP } of full light in one step, and { $STEEP_RATIO } times where it is dark (ours)
source_treatment_over = the waiting time written down with the treatment
source_seed_test = common practice: 2 x 25 seeds before a lot is relied on; every { $TEST_AFTER_DAYS } days (ours)
source_seed_life_kept = ours: the species' days at room temperature, longer where seed that can be dried is sealed or cold, shorter where seed that dies when dried lies dry, and { $RECALCITRANT_DAYS } of such seed where its profile names none; where nobody knows how it was kept, the shortest of these
source_seed_life = the species' storage days for the way it is kept
source_ground_ahead = common practice: cleared and dug in the 6 weeks before planting, weeded and mulched in the last 2
source_rings = common practice: rings weeded every 4 weeks in months 1-6
source_nurse_work = common practice: bunches about 12 weeks after they show, tubers before the end of their plants' life, the next nurse plants so long before the shade ends as they take to shade; the days ours
source_nurses = ours: a nurse plant's crown changes in two months
source_light_ahead = common practice: light is checked 3 months before planting; a reading lasts { $READING_LASTS_DAYS } days (ours)
source_soil_ahead = common practice: the rod at field capacity before planting; Bengough et al. 2011 for the limit
source_survival = common practice: at 1, 3, 6 and 12 months; Evans & Turnbull 2004, from memory
source_young_water = common practice: young plants are watered, or looked at, after a week without rain in their first 8 weeks; FAO-56 for what is left in the ground
source_going_out = ours: nothing blocks the pair of tray and bed; before the holding time and the safe rains end
source_gauge = common practice: read every morning
