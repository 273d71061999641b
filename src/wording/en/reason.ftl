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
container_outgrown = in its bag { $days } days, the bag holds it { $most }: pot on or cull
container_circles = the roots circle: over what the bag holds, whatever the days
# (pass, of)
sample_too_few = { $pass } of { $of } pass, but too few stand for a load
# (pass, of, mean)
height_met = { $pass } of { $of } are the right height, mean { $mean }
# (pass, of, mean, least)
height_short = only { $pass } of { $of } are the right height, mean { $mean }, at least { $least } needed: let them grow
# (pass, of, mean, most)
height_tall = only { $pass } of { $of } are the right height, mean { $mean }, above { $most }: grown too long for their bags
# (pass, of, mean)
collar_met = { $pass } of { $of } stems are thick enough, mean { $mean }
# (pass, of, mean, needed)
collar_thin = only { $pass } of { $of } stems are thick enough, mean { $mean }; needed { $needed }: give them room and light
# (pass, of, mean)
leaves_met = { $pass } of { $of } have leaves enough, mean { $mean }
# (pass, of, mean, needed)
leaves_few = only { $pass } of { $of } have leaves enough, mean { $mean }; needed { $needed }
plug_met = the plug holds together
plug_crumbles = the plug falls apart: wait until the roots hold it
plug_circles = the roots circle: pot on, or cut them, or cull
flush_met = no soft new leaves
flush_unmet_on = soft new leaves seen { $day }: wait until they are firm
# (days, least)
hardening_met = { $days ->
    [one] hardening for { $days } day, { $least } needed
   *[other] hardening for { $days } days, { $least } needed
}
# (days, short, least)
hardening_short = { $days ->
    [one] hardening for { $days } day, { $short } short of { $least }
   *[other] hardening for { $days } days, { $short } short of { $least }
}
hardening_soft = goes out soft: nothing to harden
hardening_not_begun = hardening has not begun, it takes { $least } days: bring it toward the light, water more rarely
# (day, least)
hardening_put_back = the shade was put back up on { $day }: hardening, { $least } days, begins again with the next step toward the light
# (days, day, from)
hardening_fresh = hardening for { $days } days, but the last step toward the light was on { $day } and must be { $LAST_STEP_DAYS } days old: from { $from }
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
# (from, to, ratio, steps)
step_too_bright_tray = stands in { $from } light, its species goes into { $to } at least: { $ratio } times as bright, bring it out in { $steps } steps
# (from, to)
step_too_dark = stood in { $from } light, this bed has { $to }: much darker than it is used to
# (from, to)
step_too_dark_tray = stands in { $from } light, its species goes into { $to } at most: much darker than it is used to
held_met = nobody holds it back
held_unmet_said = held back: { $why }
# (why, day)
held_unmet_until = held back until { $day }: { $why }
treated_met = no treatment still at work
treated_unmet_said = treated with { $what }, and the waiting time still runs
# (what, day)
treated_unmet_until = treated with { $what }: waiting time as written ends { $day }
living_met_plants = living: { $plants }
living_unmet = nothing lives in it
load_met = enough can be planted: { $plants }
# (plants, least)
load_unmet = too few can be planted: { $plants }; a load is { $least }
good_until_met = good until { $day }
good_until_unmet = its last day was { $day }: look at the roots, cull what is dry
# (light, band)
light_met = { $light } light in this bed, inside its { $band }
# (light, band)
light_near = { $light } light in this bed, next to its { $band }: a reading is no better than that
# (light, most)
light_too_bright = { $light } light in this bed, more than { $most }: let more shade grow first
# (light, least)
light_too_dark = { $light } light in this bed, less than { $least }: cut back the shade first
# (light, band)
light_coming_met = { $light } light to come, inside its { $band }
# (light, most)
light_coming_bright = { $light } light to come, more than { $most }: plan shade in time
# (light, least)
light_coming_dark = { $light } light to come, less than { $least }: plan to cut back the shade
soil_met = the ground gives way at { $mpa } MPa
# (mpa, most)
soil_hard = the ground resists with { $mpa } MPa, roots get through { $most }: loosen it, or grow tubers first
soil_rod_met = the rod went in { $depth } cm
# (depth, needed)
soil_rod_short = the rod stopped at { $depth } cm, { $needed } cm needed: loosen it, or grow tubers first
soil_lifted = tubers were lifted here { $days } days ago: the ground is open
soil_tubers_met = the ground is open: { $tubers }
soil_tubers_thin = lifted tubers are pinched thin: the ground is hard, loosen it
cleared_on = cleared on { $day }
holes_on = holes dug by { $day }
weeded_on = weeded on { $day }
mulched_on = mulched on { $day }
fenced_on = fenced on { $day }
# (day, lasts)
cleared_stale = cleared on { $day }, which counts for { $lasts } days: clear what has grown back, then write it
# (day, lasts)
holes_stale = holes dug on { $day }, which counts for { $lasts } days: open them again, then write it
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
fenced_unmet = a fence is not written down: close it against cattle, then write it
# (mm, days)
water_met = { $days ->
    [one] { $mm } mm of rain in { $days } day
   *[other] { $mm } mm of rain in { $days } days
}
water_usual = no gauge was read for { $NO_GAUGE_DAYS } days, but it is the time of the usual rains: dig a finger into the ground
# (mm, days, needed)
water_short = { $days ->
    [one] only { $mm } mm of rain in { $days } day, { $needed } needed: wait for rain
   *[other] only { $mm } mm of rain in { $days } days, { $needed } needed: wait for rain
}
season_met = rains enough are left; the last safe day is { $day }
season_past = the last safe day was { $day }: wait for the next rains
season_from = the rains left are too short: wait until { $day }
open_positions_met = { $positions ->
    [one] { $positions } position is open
   *[other] { $positions } positions are open
}
open_positions_unmet = no position is open in this bed
