measure_days = { $days } d
measure_days_at_least = at least { $days } d
measure_days_at_most = at most { $days } d
# (least, usual, most)
measure_day_span = at least { $least } d, usually { $usual }, at most { $most }
# (least, most)
measure_height_band = { $least } to { $most } cm
measure_collar_rule = a mm of collar for each 8 cm of height, and { $floor } mm or more
# (pass, of, mean)
measure_sample = { $pass } of { $of } pass, mean { $mean }
measure_leaves_at_least = at least { $leaves } leaves
measure_leaf_pairs_at_least = at least { $pairs } pairs of leaves
# (what, share)
measure_pest = { $what } on { $share }
measure_light = { $light } light
# (light, low, high)
measure_light_reckoned = about { $light } light ({ $low } to { $high })
# (least, most)
measure_light_band = { $least } to { $most } light
measure_ratio_at_most = at most { $ratio } times as bright
# (from, to, ratio)
measure_light_step = { $from } to { $to } light, { $ratio } times as bright
# (from, to)
measure_light_step_from_dark = { $from } to { $to } light
measure_plants_at_least = { $plants ->
    [one] at least { $plants } plant
   *[other] at least { $plants } plants
}
measure_positions = { $positions ->
    [one] { $positions } open position
   *[other] { $positions } open positions
}
# (depth, push)
measure_resistance_at_most = soft down to { $depth } cm: { $push }
measure_resistance = { $mpa } MPa
# (mpa, depth)
measure_resistance_at = { $mpa } MPa at { $depth } cm
# (depth, push)
measure_rod_stopped = stopped at { $depth } cm under { $push }
# (kg, mm)
push_on_rod = { $kg } kg on a rod of { $mm } mm
measure_tubers_lifted = tubers lifted { $days } d ago
# (mm, days)
measure_rain = { $days ->
    [one] { $mm } mm in { $days } day
   *[other] { $mm } mm in { $days } days
}
# (mm, days)
measure_rain_at_least = { $days ->
    [one] at least { $mm } mm in { $days } day
   *[other] at least { $mm } mm in { $days } days
}
# (mm, full)
measure_water_left = { $mm } of { $full } mm left
measure_water_at_least = at least { $mm } mm left
# (work, days)
measure_work_within = { $work }, at most { $days } d ago
# (days, day)
measure_fresh_step = { $days } d, last step on { $day }
measure_until = by { $day }
measure_yes = yes
measure_no = no
mean_in_cm = { $mean } cm
mean_in_mm = { $mean } mm

## roots_: by word

roots_crumbles = plug falls apart
roots_holds = plug holds
roots_circling = roots circle

## tubers_: by word

tubers_thin_necked = tubers pinched thin
tubers_even = tubers even
tubers_full = tubers full

## work_: by word

work_cleared = cleared
work_holes = holes dug
work_weeded = weeded
work_mulched = mulched
work_fenced = fenced
