### Seed lots: what they are still worth.

# (lot, species)
lot_heading = Lot { $lot }, { $species }
lot_none_left = nothing is left by the books
lot_label_left = left
lot_label_kept = kept
lot_label_life = life
lot_label_alive = alive today
lot_label_sown = sown from it
# (tray, up, seeds)
lot_sown_from = { $tray }: { $up } of { $seeds } up
lot_label_old = down to { $OLD_SHARE } %
lot_label_half = down to half
lot_label_reckoned = reckoned
lot_label_test = test
lot_label_retest = test again
lot_left_about = about { $seeds }
lot_left_unknown = nobody knows how many
# (kept, day)
lot_kept_since = { $kept } since { $day }
# (day, days)
lot_collected = collected { $day }, { $days } d ago
lot_moisture = moisture { $percent }
lot_temperature = { $celsius } °C
# (life, day, days, last)
lot_life_left = lives { $life } d from { $day }: { $days ->
    [0] today is the last day
    [one] { $days } day left, to { $last }
   *[other] { $days } days left, to { $last }
}
# (life, day, days, last)
lot_life_left_collected = lives { $life } d from the day of collection, { $day }: { $days ->
    [0] today is the last day
    [one] { $days } day left, to { $last }
   *[other] { $days } days left, to { $last }
}
# (day, celsius)
lot_life_killed = ended on { $day }: cold below { $celsius } °C kills it
# (life, day, last, days)
lot_life_over = lives { $life } d from { $day }: over since { $last }, { $days ->
    [one] { $days } day ago
   *[other] { $days } days ago
}
# (life, day, last, days)
lot_life_over_collected = lives { $life } d from the day of collection, { $day }: over since { $last }, { $days ->
    [one] { $days } day ago
   *[other] { $days } days ago
}
lot_life_not_received = not known: nobody wrote that this lot came in
lot_life_no_species = not known: its species is not known here
lot_life_no_figure = not known: the profile has no days for seed kept { $kept }
lot_verdict_hardly = hardly any of the seed lives today, about { $share }. Get fresh seed
lot_verdict_good = { $share } of the seed is expected to live today
# (day, share)
lot_verdict_ending = sow it at once, its life ends { $day }: about { $share } of the seed is expected to live today
# (day, celsius)
lot_verdict_killed = dead: cold below { $celsius } °C kills it, and so it lay since { $day }. Get fresh seed
lot_verdict_dead = dead by all that is known of its life. Get fresh seed. { $cut }
# (seeds, day, cut)
lot_verdict_tested_dead = dead by its test: none of { $seeds } came up by { $day }. { $cut }; throw it out where none lives, and get fresh seed
lot_verdict_past_short = past its stated life, and a test takes too long. { $cut }; sow at once what is alive, or get fresh seed
lot_verdict_past = past its stated life: test it, or sow the rest thickly at once
lot_verdict_unknown = what lives of it today is not known: test it, or write how it was kept
lot_alive_about = about { $share }
# (low, high)
lot_alive_unsaid = anything from { $low } to { $high }, as nobody wrote how it was kept
# (short, long, day)
lot_life_unsaid = lives { $short } to { $long } d from { $day }, by how it was kept, which nobody wrote
# (share, low, high)
lot_alive = { $share } ({ $low } to { $high })
# (share, low, high, day)
lot_from_test = from { $share } ({ $low } to { $high }) in the test laid out { $day }
# (share, day)
lot_from_arrival = from { $share } written on arrival, { $day }
# (share, day)
lot_from_handbook = from { $share } of fresh seed by the handbook, { $day }: never tested
# (days, low, high, share)
lot_falls_in = in about { $days ->
    [one] { $days } day
   *[other] { $days } days
} ({ $low } to { $high }): { $share }
lot_falls_already = already: { $share } or less
# (moisture, celsius, sigma)
lot_by_equation = v = Ki - p / sigma; at { $moisture } moisture and { $celsius } °C the probit falls by one in { $sigma } d
lot_by_cold = cold kills seed of this species
lot_by_equation_outside = moisture or temperature is outside what the equation is good for (5 to 25 %, -20 to 90 °C): read it with doubt
# (species, paper)
lot_by_equation_source = Ellis & Roberts 1980, Annals of Botany 45:13; constants of { $species }: { $paper }
# (life, spread)
lot_by_life = level for a while, then falling (probits in time, Ellis & Roberts 1980): half is gone after { $life } d, which may be half as long or twice, spread { $spread } of that (ours)
lot_by_life_store = for this species there is an equation, for seed in a closed vessel with moisture and temperature written
lot_no_start = not known: neither a test nor a figure for fresh seed
lot_no_figures = not known: there are no constants for this species and no days for the way it is kept
lot_no_store = not known: there are constants for this species, but moisture or temperature of the store is not written
lot_open_air = not known: the constants of this species are for seed in a closed vessel, and in the open air it takes up water again: test it
lot_outlived = not known: it was alive after twice its stated life; only a test tells
# (day, germinated, seeds, share, low, high)
lot_tested = { $day }: { $germinated } of { $seeds }, { $share } ({ $low } to { $high }, { $TEST_LEVEL } % sure)
# (day, germinated, seeds, days, share, until)
lot_tested_short = { $day }: { $germinated } of { $seeds } after { $days ->
    [one] { $days } day
   *[other] { $days } days
}, too early to tell: at least { $share } lives; to be counted until { $until }
lot_replicates_agree = replicates { $counts } agree
lot_replicates_apart = replicates { $counts } are further apart than chance explains
lot_replicates_cannot_tell = replicates { $counts }: too few seeds to tell whether they agree
# (range, most)
lot_replicates_most = range { $range } of { $most } tolerated
lot_replicates_chance = by chance { $chance } of the time
lot_never_tested = never tested
# (day, why)
lot_retest_due = due since { $day }: { $why }
# (day, why)
lot_retest_later = on { $day }: { $why }
lot_retest_never = { $days } d since collection without a test
lot_retest_old = { $days } d since the last test
lot_retest_falling = a third of the way to { $OLD_SHARE } % of the beginning, { $days } d after the last test or collection
lot_retest_apart = the replicates of the last test do not agree
# (days, cut)
lot_retest_too_late = no: a test takes about { $days } days, longer than it lives. { $cut }; sow at once what lives today, or get fresh seed
lot_retest_tested_dead = no: dead by its test
lot_retest_killed = no: cold killed it
lot_retest_few = no: { $seeds } left, a test takes { $TEST_SEEDS }: cut some open instead
lot_retest_unknown_seeds = not said: nobody knows how many seeds are left
lot_retest_no_day = not said: neither collection nor test is dated
lot_retest_source = common practice: 2 x 25 seeds, every { $TEST_AFTER_DAYS } days (ours); where the loss is reckoned a third of the days to { $OLD_SHARE } %, FAO 2014, Genebank Standards (from memory)
round_replicates_apart = the replicates of the test { $days ->
    [one] { $days } d ago
   *[other] { $days } d ago
} do not agree: test again

## help_: by word

help_why_lot = What a seed lot is still worth, and how many to sow
help_why_lot_lot = The code on its bag
help_why_lot_plants = How many to sow for so many plants; without it, for the places open in the beds
help_why_lot_sure = How sure of them, percent; 95 where nothing is said
help_why_lot_all = Also what it is reckoned from: formulas, figures, sources
help_why_species = What this nursery knows of a species, what is coming of it, and how many to sow without a lot
help_why_species_species = Its name
help_why_species_plants = How many to sow for so many plants; without it, for the places open in the beds
help_why_species_sure = How sure of them, percent; 95 where nothing is said
help_why_species_all = Also what it is reckoned from: formulas, figures, sources
help_value_lot = LOT
help_value_plants = PLANTS
help_value_sure = PERCENT
