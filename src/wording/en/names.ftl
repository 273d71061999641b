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
