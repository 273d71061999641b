reason_met_plain = { $rule }: as it should be
reason_unmet_plain = { $rule }: not yet as it should be
reason_met_known = { $rule }: { $known }
reason_unmet_known = { $rule }: { $known }; needed { $needed }
old_enough = { $days ->
    [one] { $days } day old, { $least } needed
   *[other] { $days } days old, { $least } needed
}
old_without_least = { $days ->
    [one] { $days } day old; the profile of its species names no least age
   *[other] { $days } days old; the profile of its species names no least age
}
too_young = { $days ->
    [one] { $days } day old, { $short } short of { $least }
   *[other] { $days } days old, { $short } short of { $least }
}
container_holds = { $days ->
    [one] in its bag { $days } day, the bag holds it { $most }
   *[other] in its bag { $days } days, the bag holds it { $most }
}
container_outgrown = in its bag { $days } days, the bag holds it { $most }: pot on or cull
container_circles = the roots circle: over what the bag holds, whatever the days
sample_too_few = { $pass } of { $of } pass, but too few stand for a load
height_met = { $pass } of { $of } are the right height, mean { $mean }
height_short = only { $pass } of { $of } are the right height, mean { $mean }, at least { $least } needed: let them grow
height_tall = only { $pass } of { $of } are the right height, mean { $mean }, above { $most }: grown too long for their bags
collar_met = { $pass } of { $of } stems are thick enough, mean { $mean }
collar_thin = only { $pass } of { $of } stems are thick enough, mean { $mean }; needed { $needed }: give them room and light
leaves_met = { $pass } of { $of } have leaves enough, mean { $mean }
leaves_few = only { $pass } of { $of } have leaves enough, mean { $mean }; needed { $needed }
plug_met = the plug holds together
plug_crumbles = the plug falls apart: wait until the roots hold it
plug_circles = the roots circle: pot on, or cut them, or cull
flush_met = no soft new leaves
flush_unmet = soft new leaves: wait until they are firm
flush_unmet_on = soft new leaves seen { $day }: wait until they are firm
hardening_met = { $days ->
    [one] hardening for { $days } day, { $least } needed
   *[other] hardening for { $days } days, { $least } needed
}
hardening_short = { $days ->
    [one] hardening for { $days } day, { $short } short of { $least }
   *[other] hardening for { $days } days, { $short } short of { $least }
}
hardening_not_begun = hardening has not begun, it takes { $least } days: bring it toward the light, water more rarely
hardening_put_back = the shade was put back up on { $day }: hardening, { $least } days, begins again with the next step toward the light
hardening_fresh = hardening for { $days } days, but the last step toward the light was on { $day } and must be 7 days old: from { $from }
hardening_unmet = not hardened yet: leave it in its light
step_met = stood in { $from } light, this bed has { $to }: a small step
step_same = stood in { $from } light, this bed has the same
step_darker = stood in { $from } light, this bed has { $to }: darker, no step to harden for
step_met_tray = stands in { $from } light, its species goes into { $to } at least: a small step
step_inside_tray = stands in { $from } light, as beds for its species may have
step_darker_tray = stands in { $from } light, its species goes into { $to } at most: darker, no step to harden for
step_watch = stood in { $from } light, this bed has { $to }: { $ratio } times as bright, watch for scorched leaves
step_watch_tray = stands in { $from } light, its species goes into { $to } at least: { $ratio } times as bright, one more step is better
step_too_bright = stood in { $from } light, this bed has { $to }: { $ratio } times as bright, bring it out in { $steps } steps first
step_too_bright_tray = stands in { $from } light, its species goes into { $to } at least: { $ratio } times as bright, bring it out in { $steps } steps
step_too_dark = stood in { $from } light, this bed has { $to }: much darker than it is used to
step_too_dark_tray = stands in { $from } light, its species goes into { $to } at most: much darker than it is used to
held_met = nobody holds it back
held_unmet = held back
held_unmet_said = held back: { $why }
held_unmet_until = held back until { $day }: { $why }
treated_met = no treatment still at work
treated_unmet = treated, and the waiting time still runs
treated_unmet_said = treated with { $what }, and the waiting time still runs
treated_unmet_until = treated with { $what }: waiting time as written ends { $day }
living_met = plants live there
living_met_plants = living: { $plants }
living_unmet = nothing lives in it
load_met = enough can be planted: { $plants }
load_unmet = too few can be planted: { $plants }; a load is { $least }
good_until_met = good until { $day }
good_until_unmet = its last day was { $day }: look at the roots, cull what is dry
light_met = { $light } light in this bed, inside its { $band }
light_near = { $light } light in this bed, next to its { $band }: a reading is no better than that
light_too_bright = { $light } light in this bed, more than { $most }: let more shade grow first
light_too_dark = { $light } light in this bed, less than { $least }: cut back the shade first
light_coming_met = { $light } light to come, inside its { $band }
light_coming_bright = { $light } light to come, more than { $most }: plan shade in time
light_coming_dark = { $light } light to come, less than { $least }: plan to cut back the shade
soil_met = the ground gives way at { $mpa } MPa
soil_hard = the ground resists with { $mpa } MPa, roots get through { $most }: loosen it, or grow tubers first
soil_rod_met = the rod went in { $depth } cm
soil_rod_short = the rod stopped at { $depth } cm, { $needed } cm needed: loosen it, or grow tubers first
soil_lifted = tubers were lifted here { $days } days ago: the ground is open
soil_tubers_met = the ground is open: { $tubers }
soil_tubers_thin = lifted tubers are pinched thin: the ground is hard, loosen it
soil_read_dry = the soil was read dry, which says nothing: read again two days after a soaking
cleared_on = cleared on { $day }
holes_on = holes dug by { $day }
weeded_on = weeded on { $day }
mulched_on = mulched on { $day }
fenced_on = fenced on { $day }
cleared_stale = cleared on { $day }, which counts for { $lasts } days: clear what has grown back, then write it
holes_stale = holes dug on { $day }, which counts for { $lasts } days: open them again, then write it
weeded_stale = weeded on { $day }, which counts for { $lasts } days: weed the rings again, then write it
mulched_stale = mulched on { $day }, which counts for { $lasts } days: lay new mulch
fenced_stale = fenced on { $day }, which counts for { $lasts } days: look after the fence
cleared_unmet = clearing is not written down: clear grass and brush, then write it
holes_unmet = holes are not written down: dig them, then write it
weeded_unmet = weeding is not written down: weed the rings, then write it
mulched_unmet = mulch is not written down: lay it around the holes, then write it
fenced_unmet = a fence is not written down: close it against cattle, then write it
water_met = { $days ->
    [one] { $mm } mm of rain in { $days } day
   *[other] { $mm } mm of rain in { $days } days
}
water_usual = no gauge was read for 10 days, but it is the time of the usual rains: dig a finger into the ground
water_short = { $days ->
    [one] only { $mm } mm of rain in { $days } day, { $needed } needed: wait for rain
   *[other] only { $mm } mm of rain in { $days } days, { $needed } needed: wait for rain
}
season_met = rains enough are left; the last safe day is { $day }
season_unmet = too little of the rains is left: wait for the next
season_past = the last safe day was { $day }: wait for the next rains
season_from = the rains left are too short: wait until { $day }
open_positions_met = { $positions ->
    [one] { $positions } position is open
   *[other] { $positions } positions are open
}
open_positions_unmet = no position is open in this bed
