### How many seeds to sow.

sowing_heading = How many to sow for { $plants ->
    [one] { $plants } plant
   *[other] { $plants } plants
}
sowing_for_open = { $places ->
    [one] { $places } place is open in the beds that plan it
   *[other] { $places } places are open in the beds that plan it
}
# (needed, coming, low, high, still)
sowing_net = { $needed } needed, about { $coming } ({ $low } to { $high }) will come of what stands or is sown: { $still ->
    [one] { $still } is still to be raised
   *[other] { $still } are still to be raised
}
# (needed, coming, low, high)
sowing_met = Nothing to sow: { $needed } needed, and about { $coming } ({ $low } to { $high }) will come of what stands or is sown
# (seeds, needed)
sowing_gross = if nothing stood: { $seeds ->
    [one] { $seeds } seed
   *[other] { $seeds } seeds
} for all { $needed }
sowing_none_open = no bed has an open place for it: ask with --plants
# (seeds, wanted, sure, success, divided, fails)
sowing_number = { $seeds ->
    [one] { $seeds } seed
   *[other] { $seeds } seeds
} for { $wanted ->
    [one] { $wanted } plant
   *[other] { $wanted } plants
}, { $sure } sure; dividing by { $success } would give about { $divided } and fail about { $fails }
sowing_fails_share = { $share } of the time
sowing_fails_half = half the time
sowing_label_comes_up = comes up
sowing_label_becomes = becomes a plant
sowing_label_weight = weight
sowing_label_left = in the lot
sowing_label_containers = containers
sowing_comes_up = { $share } of the seed: the handbook
sowing_and_sowings = { $sowings ->
    [one] { $sowings } sowing here
   *[other] { $sowings } sowings here
}
# (germinated, seeds)
sowing_and_test = the lot's test, { $germinated } of { $seeds }
sowing_and_kept = of what lived then { $share } is left
sowing_and_life_unknown = how much of it still lives nobody knows: this is of fresh seed
sowing_becomes = { $share } of the seedlings: usual culls and losses
# (share, trays, good, bad)
sowing_becomes_here = { $share } of the seedlings: usual culls and losses, { $trays ->
    [one] { $trays } finished tray here
   *[other] { $trays } finished trays here
} ({ $good } went out, { $bad } lost or thrown out)
sowing_weighs = about { $weight }
# (low, high)
sowing_weighs_between = from { $low } to { $high }, by how heavy its seed is: weigh a hundred
sowing_grams = { $grams } g
sowing_kilograms = { $kilograms } kg
sowing_weight_unknown = not known: seeds in a kilogram are not written
sowing_left_enough = { $seeds } left: enough
# (seeds, missing, share)
sowing_left_short = { $seeds } left: { $missing } too few; all of them would do { $share } of the time
# (tests, seeds)
sowing_if_tested = test it first: if { $tests } germinate as expected, { $seeds } will do
sowing_one_each = { $containers } with one seed each
# (containers, each, seeds)
sowing_several = or { $containers } with { $each } seeds each ({ $seeds } seeds), thinned to one
sowing_seedbed = sow in a seedbed; { $containers } for the seedlings pricked out
sowing_too_poor = or a seedbed and { $containers } for pricking out: so few come up that even { $MOST_EACH } in each leave many empty
sowing_formula = smallest n with P(plants >= wanted) >= confidence; what comes up and what becomes a plant are beta distributions, so plants are a mixture of binomials
sowing_source = Skellam 1948, beta-binomial (from memory); seeds in a container: Dumroese, Luna & Landis 2009, USDA Agriculture Handbook 730 (from memory); weights of what is believed: ours
sowing_unknown_species = How many to sow cannot be said: the species of this lot is not known
sowing_dead = No number: none of the seed is expected to live. Get fresh seed. { $cut }
cut_some_open = Cut ten open: firm and pale inside lives, brown, dry, slimy or empty is dead
# (plants, fresh)
sowing_life_unknown = No number: how much of this lot still lives nobody knows. Test it, or write how it was kept. Of fresh seed { $fresh } would do for { $plants ->
    [one] { $plants } plant
   *[other] { $plants } plants
}
# (times, cut)
sowing_too_many_late = No number: more than { $times } seeds would have to be sown for each plant, and before a test tells its life is over. Sow at once what is alive, and get fresh seed. { $cut }
sowing_too_many = No number: more than { $times } seeds would have to be sown for each plant. Test it or get fresh seed
sowing_too_many_tested = No number: by its test more than { $times } seeds would have to be sown for each plant. Get fresh seed
# (times, seeds, plants)
sowing_too_many_unsure = No number to be sure of: how much of it comes up is so little known that more than { $times } seeds would have to be sown for each plant. Test it or get fresh seed. If it is as good as usual, { $seeds } seeds give { $plants } half the time
sowing_wrong = How many to sow cannot be said: { $why }
sowing_wrong_sure = --sure is a percentage above 0 and below 100
sowing_wrong_plants = --plants is 1 or more
