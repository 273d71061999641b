## rule_: by word

rule_days_since_sowing = days since sowing
rule_days_in_container = days in its container
rule_height = height
rule_collar = root collar
rule_leaves = leaves
rule_plug = plug
rule_flush = new leaves
rule_hardening = hardening
rule_exposure_step = step in light
rule_held = held back
rule_treated = treatment
rule_living = living plants
rule_load = a load of plants
rule_good_until = last day
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

## basis_: by word

basis_counted = counted
basis_measured = measured
basis_reckoned = reckoned
basis_assumed = assumed
basis_unknown = not known

## stage_: by word

stage_sown = sown
stage_emerging = emerging
stage_pricked_out = pricked out
stage_growing_on = growing on
stage_hardening = hardening
stage_ready = ready
stage_overdue = overdue
stage_spent = spent

## standing_: by word

standing_bare = bare
standing_nursing = nursing
standing_open = open
standing_dry = dry
standing_full = full
standing_refill = refill
