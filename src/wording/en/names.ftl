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
standing_soaked = full of water
standing_full = full
standing_refill = refill

## cause_: by word

cause_damping_off = damping-off
cause_drought = drought
cause_rats = rats
cause_insects = insects
cause_snails = snails
cause_broken = broken
cause_stem_broken = stem broken
cause_found_dead = found dead
cause_washed_out = washed out
cause_ants = ants
cause_grasshoppers = grasshoppers
cause_cutworm = cutworm
cause_weevil = weevil
cause_birds = birds
cause_goats = goats
cause_cattle = cattle
cause_wind = wind
cause_flood = flood
cause_wilted = wilted
cause_dried_out = dried out
cause_too_small = too small
cause_forked = forked
cause_bent_roots = bent roots
cause_thinned = thinned
