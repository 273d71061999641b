### Formulas: sentences, sources and help.

calc_formula = Formula:
calc_source = Source:
calc_none = none
calc_yes = yes
calc_no = no
calc_nothing_given = nothing was given. As here: outplant calc { $example }
calc_not_json = give options (see --help), or pipe in one JSON object: { $fault }
# (input, written, known)
calc_word = { $input } is '{ $written }', known are: { $known }
wrong_missing = { $input } is missing
wrong_not_a_number = { $input } is not a number
wrong_not_positive = { $input } must be more than 0
# (input, low, high)
wrong_outside = { $input } must be from { $low } to { $high }
# (input, value)
wrong_exactly = { $input } must be { $value }
# (input, low)
wrong_below = { $input } must be { $low } or more
wrong_not_whole = { $input } must be whole numbers
# (input, other)
wrong_uneven = { $input } and { $other } must be equally many
wrong_out_of_order = the days in { $input } must go up from one to the next
# (input, part, other, whole)
wrong_more_than = { $input } has { $part }, more than the { $whole } of { $other }
# (input, most)
wrong_too_many = { $input }: at most { $most } can be reckoned at once
wrong_too_large = these numbers give an answer too large to be a number
# (germinated, seeds, percent, mean, half)
calc_germination_some = { $germinated } of { $seeds } seeds germinated ({ $percent }), on average after { $mean } days; half of them by day { $half }.
calc_germination_none = None of { $seeds } seeds germinated; there is nothing more to say of them.
calc_germination_formula = mean time = sum n t / N; median on a straight line between counts at N/2 (Farooq) or (N+1)/2 (Coolbear); velocity = 100 N / sum n t; rate index = sum n / t; synchrony = pairs of one count / all pairs; uncertainty = - sum f log2 f
calc_germination_source = Coolbear et al. 1984; Farooq et al. 2005; Maguire 1962; Ranal & Santana 2006 (from memory; checked against printed output)
# (up, seeds, percent, low, high, plants)
calc_emergence_some = { $up } of { $seeds } are up; in the end about { $plants } ({ $percent }), from { $low } to { $high } (95 % sure).
calc_emergence_half = Half of those by day { $day }.
# (up, seeds)
calc_emergence_unknown = { $up } of { $seeds } are up; these looks do not tell how many more will come: seedlings must have come up in three intervals between looks or more.
# (day, plants)
calc_emergence_by = By day { $day }: about { $plants }.
calc_emergence_formula = F(t) = d / (1 + exp(-b (ln t - ln t50))); the d, b, t50 that maximise sum n ln(F(end) - F(begin)) + (not up) ln(1 - F(last look)); interval of d by profile likelihood; in the end: what is up + the binomial of the rest over that interval; no prior
calc_emergence_source = Ritz, Pipper & Streibig 2013; Onofri, Mesgaran & Ritz 2022; Venzon & Moolgavkar 1988 (from memory; checked against two other libraries)
# (seeds, wanted, confidence, success, divided, short)
calc_sowing_some = { $seeds } seeds for { $wanted } plants, { $confidence } sure; dividing by { $success } would give { $divided } and be too few { $short } of the time.
calc_sowing_formula = smallest n with P(X >= wanted) >= confidence, X binomial(n, g s); g and s known or beta: g ~ beta(prior a + germinated, prior b + not germinated), s ~ beta(survival)
calc_sowing_source = Skellam 1948, beta-binomial (from memory; checked against another library)
# (found, looked_at, share, low, high, level)
calc_interval_some = { $found } of { $looked_at } is { $share }; the true share is { $low } to { $high }, { $level } sure (Wilson).
calc_interval_formula = Wilson: (p + z²/2n ± z sqrt(p(1-p)/n + z²/4n²)) / (1 + z²/n); Clopper-Pearson: beta quantiles (x, n-x+1) and (x+1, n-x); Jeffreys: beta quantiles (x+1/2, n-x+1/2)
calc_interval_source = Wilson 1927; Clopper & Pearson 1934; Brown, Cai & DasGupta 2001 (from memory)
# (range, most, mean)
calc_replicates_agree = The replicates agree: they differ by { $range }, and { $most } is tolerated at a mean of { $mean }.
# (range, most, mean)
calc_replicates_apart = The replicates do not agree: they differ by { $range }, and only { $most } is tolerated at a mean of { $mean }. Test again.
# (range, chance)
calc_replicates_by_chance = The replicates differ by { $range }; by chance alone they would differ at least so much { $chance } of the time. The table is for 4 x 100 seeds.
# (range, seeds, least)
calc_replicates_cannot_tell = The replicates differ by { $range }; { $seeds } seeds are too few to tell whether they agree: that takes { $least }.
calc_replicates_same = All replicates gave { $mean }: there is nothing to compare.
calc_replicates_formula = range against the row of the mean rounded half up; chi-squared = sum (x - mean)² / (n p (1 - p)), one degree of freedom fewer than replicates
calc_replicates_source = 7 CFR 201.55 for means of 70 to 99 %; Miles 1963 below (from memory)
# (initial, left, days, half)
calc_viability_some = Of { $initial } % viable { $left } % are left after { $days } days; half of the seed lives { $half } days.
# (target, days)
calc_viability_target = Down to { $target } % after { $days } days.
calc_viability_ends = From 0 or 100 % of an unknown number of seeds nothing follows; say how many were tested.
# (driest, wettest, coldest, warmest)
calc_viability_outside = Caution: the equation is good for { $driest } to { $wettest } % moisture and { $coldest } to { $warmest } °C only.
calc_viability_formula = v = Ki - days / sigma; log10 sigma = KE - CW log10(moisture) - CH t - CQ t²; v and Ki are probits of the viable share
calc_viability_source = Ellis & Roberts 1980, Annals of Botany 45:13. For seed that can be dried; seed that dies when dried has no equation
calc_quality_good = Sturdiness { $quotient }: good.
calc_quality_weed_free = Sturdiness { $quotient }: will do in a bed without weeds.
calc_quality_space_out = Sturdiness { $quotient }: lanky; hold it and space the plants out.
calc_quality_cull = Sturdiness { $quotient }: too lanky to live outside; throw out.
# (index, least)
calc_quality_dickson = Dickson index { $index }; { $least } is a usual least. Compare within one species, age and container only.
calc_quality_formula = sturdiness = height cm / collar mm; Dickson = (shoot + root) / (sturdiness + shoot / root), dry g
calc_quality_source = Jaenicke 1999, bands above 6 common practice; Dickson, Leaf & Hosner 1960 (from memory); 0.20 Hunt 1990, of conifers (from memory), taken over for coffee by Oliveira et al. 2015
# (sampled, confidence)
calc_sample_size_some = Look at { $sampled } to be { $confidence } sure.
# (sampled, population, many, confidence)
calc_sample_size_of = Look at { $sampled } of the { $population } to be { $confidence } sure; { $many } of very many.
calc_sample_size_formula = share: z² p (1 - p) / E²; mean: smallest n with t(n-1) s / sqrt(n) <= E; at least one: ln(1 - c) / ln(1 - p); of N only n / (1 + (n - 1) / N); rounded up
calc_sample_size_source = Cochran 1977, Sampling Techniques (from memory); usual survey formulas
calc_growth_logistic = Logistic
calc_growth_gompertz = Gompertz
# (name, height)
calc_growth_ends = { $name }: growth ends at { $height }.
calc_growth_no_end = { $name }: no end in sight: these heights do not tell where growth ends.
# (name, height, day)
calc_growth_reaches = { $name }: { $height } is reached on day { $day }.
# (name, height, day, low, high)
calc_growth_reaches_between = { $name }: { $height } is reached on day { $day } ({ $low } to { $high }, 95 % sure).
# (name, height)
calc_growth_never = { $name }: { $height } is never reached.
# (name, days)
calc_growth_few = { $name }: so few days tell neither a day nor an end, the curve runs through them whatever they are; measure on at least { $days } days.
calc_growth_untold = { $name }: these heights do not tell a curve; measure on at least four days while they grow.
calc_growth_formula = logistic y = A / (1 + exp(-k (t - t0))); Gompertz y = A exp(-exp(-k (t - t0))); least squares; days by the delta method with Student's t of n - 3
calc_growth_source = Verhulst 1838; Gompertz 1825; Bates & Watts 1988 (from memory; checked against two other libraries)
calc_matching_group_twice = groups: { $group } is there twice
# (bed, species)
calc_matching_opening_twice = beds: { $bed } is open to { $species } twice; put the positions together
calc_matching_too_many = more groups, beds and weeks than can be reckoned at once: take fewer weeks
calc_matching_formula = most sum of plants x worth; worth = base, less waiting (weeks after the ready one), less ground that suits badly, less carrying; within plants, positions, work of each week and the share of one source in a bed
calc_matching_source = Dantzig 1951; Land & Doig 1960 (from memory; checked against two other solvers)

## help_: by word

help_calc = One formula of the trade with its source; opens no nursery
help_calc_more = Examples: outplant calc sowing --wanted 100 --germination 70
    outplant calc interval --x 38 --n 50
    Without options a topic reads one JSON object from standard input and answers with one.
help_calc_germination = How much, how fast and how evenly seed germinated
help_calc_germination_times = Days since sowing on which somebody looked: 7,10,14
help_calc_germination_counts = Newly germinated at each look: 3,8,5
help_calc_germination_seeds = Seeds sown
help_calc_emergence = The curve of emergence: how many will come in the end
help_calc_emergence_edges = Days since sowing on which somebody looked: 7,10,14
help_calc_emergence_counts = Newly emerged at each look: 3,8,5
help_calc_emergence_seeds = Seeds sown
help_calc_emergence_last_day = How many will be up on this day
help_calc_sowing = How many seeds to sow for so many plants
help_calc_sowing_wanted = Plants wanted
help_calc_sowing_confidence = How sure, in % (95)
help_calc_sowing_species = A species nobody tested, by the handbook alone (with this nursery's records: why species)
help_calc_sowing_germination = Germination in %, taken as known
help_calc_sowing_sown = Seeds tested
help_calc_sowing_germinated = How many of them germinated
help_calc_sowing_prior_a = Belief before the test, germinated (0.5)
help_calc_sowing_prior_b = Belief before the test, not germinated (0.5)
help_calc_sowing_survival = Seedlings that become plants, in %, taken as known
help_calc_sowing_survival_beta = The same as a beta distribution: 45,5
help_calc_interval = How sure a share found in a sample is
help_calc_interval_x = How many had it
help_calc_interval_n = How many were looked at
help_calc_interval_level = How sure, in % (95)
help_calc_replicates = Whether the replicates of a germination test agree
help_calc_replicates_replicates = Germinated in each: 84,79,88,81
help_calc_replicates_n_each = Seeds in each
help_calc_viability = What storage leaves of a lot that can be dried
help_calc_viability_species = Scientific name of a species with published constants
help_calc_viability_ke = Constant of the species
help_calc_viability_cw = Constant of moisture
help_calc_viability_ch = Constant of temperature
help_calc_viability_cq = Constant of temperature squared
help_calc_viability_initial = Viable at the beginning, in %
help_calc_viability_tested = Seeds tested at the beginning; needed for 0 and 100 %
help_calc_viability_moisture = Moisture of the seed, % of fresh weight
help_calc_viability_temp = Temperature of the store, °C
help_calc_viability_days = Days in store
help_calc_viability_target = When it is down to this, in %
help_calc_quality = Sturdiness and Dickson's index of a plant
help_calc_quality_height = Height in cm
help_calc_quality_collar = Root collar in mm
help_calc_quality_shoot = Dry shoot in g
help_calc_quality_root = Dry root in g
help_calc_sample_size = How many plants to look at or to measure
help_calc_sample_size_kind = proportion, mean or detection
help_calc_sample_size_confidence = How sure, in % (95)
help_calc_sample_size_p = The share expected, in % (50)
help_calc_sample_size_cv = How far plants differ, in % of their mean: usual is 20 to 25
help_calc_sample_size_prevalence = Share that has what is looked for, in %
help_calc_sample_size_half_width = How far off is allowed, in % (10)
help_calc_sample_size_population = Plants there are
help_calc_growth = Curves of growth, and when plants are tall enough
help_calc_growth_t = Days of the measurements: 20,40,60,80
help_calc_growth_y = Heights on them: 3,8,17,24
help_calc_growth_target = Heights asked about: 25,30
help_calc_matching = The best plan of groups of seedlings to beds and weeks, read as JSON
