### What a tray will come to.

forecast_heading = What to expect
forecast_too_early = too early to say
forecast_on_its_way = on its way
forecast_slow = slow, and still coming
forecast_failing = failing
forecast_finished = finished coming up
because_before_day = whether it comes up as it should is not told before { $day }
because_not_counted = nobody has counted since anything could be up: count it
# (emerged, due, expected, day)
because_up = { $emerged } up on { $day }, about { $due } were due by then and { $expected } expected in all
# (seedlings, day)
because_will_be = { $seedlings } by { $day }, the species' last day
because_over = the species' last day was { $day }, and nobody counted since: count first
# (days, needed)
because_quiet = nothing new for { $days } d, { $needed } d are enough
because_little = { $seedlings } still to come
# (sowings, seedlings, day)
because_several = { $sowings ->
    [one] { $sowings } sowing
   *[other] { $sowings } sowings
} in one tray, forecast together; of those up { $seedlings } came of the sowing of { $day }
because_not_apart = which the counts cannot tell well
because_deaths = seedlings disappeared unseen, so more may have come up
seedlings_count = { $n ->
    [one] { $n } seedling
   *[other] { $n } seedlings
}
# (low, likely, high)
seedlings_between = { $low } to { $high } seedlings, likely { $likely }
label_sowing = sowing
label_in_the_end = in the end
label_last_to_come = last up
label_waiting = wait
label_sow_again = sow again?
label_will_give = will give
will_give_fewer = { $said }; losses until then are taken off
will_give_more = { $said }; the smaller ones grow on until then
label_known_here = known here
label_worth = worth it
# (seedlings, seeds)
forecast_in_the_end = { $seedlings } of { $seeds } seeds, { $RANGE_LEVEL } % sure
forecast_last_day = { $day }
forecast_wait_until = until { $day }; then free the bench
forecast_waited = not any longer: since { $day } hardly anything is to come, free the bench
again_fewer = about { $missing ->
    [one] { $missing } seedling
   *[other] { $missing } seedlings
} fewer than this sowing was to give
again_missing = about { $missing ->
    [one] { $missing } plant will be missing
   *[other] { $missing } plants will be missing
}
# (by, safe, days)
again_same = sown again by { $by } it still goes out in the rains that are safe until { $safe } ({ $days } d from sowing)
# (missed, was, by, safe, days)
again_later = too late for the rains that are safe until { $missed } (the last day was { $was }); sown by { $by } it goes out in those safe until { $safe } ({ $days } d from sowing)
# (missed, was, days)
again_too_late = too late for the rains that are safe until { $missed }: the last day was { $was } ({ $days } d from sowing)
again_no_rains = no rains are described, so no last day is known; it takes { $days } d from sowing
stock_line = { $plants } good enough to go out
# (plants, month, low, high)
stock_about = { $plants } good enough to go out, about { $month } (between { $low } and { $high })
# (plants, day)
stock_on = { $plants } good enough to go out, { $day }
stock_not_dated = { $plants } good enough to go out; when nobody can say, its age is not known
# (plants, what)
stock_waits = { $plants } good enough to go out; when nobody can say, it waits for: { $what }
learned_days = days to planting out
learned_germination = germination
learned_survival = live through the nursery
learned_culls = thrown out when grading
# (what, handbook, here, trays, used)
learned_both = { $what }: handbook { $handbook }; here { $here } from { $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
}; used { $used }
# (figure, low, high)
learned_between = { $figure } ({ $low } to { $high })
# (what, here, trays)
learned_here = { $what }: here { $here } from { $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
}
# (what, handbook)
learned_handbook = { $what }: handbook { $handbook }
learned_open = { $trays ->
    [one] { $trays } tray has not come that far yet
   *[other] { $trays } trays have not come that far yet
}
learned_heading = Handbook and this nursery
learned_ignored = This nursery's own records are set aside: the handbook alone is used.
learned_days_of = { $days } d
stock_coming_heading = Coming
# (month, year, plants, trays)
coming_month = { $month } { $year }: { $plants } ({ $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
})
# (plants, trays)
stock_coming_undated = no day known: { $plants } ({ $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
})
worth_heading = Worth looking at first
# (what, minutes, plants)
worth_line = { $what }: { $minutes } min, { $plants } plants hang on it
# (task, chance, plants, minutes)
worth_said = { $task }: it { $chance } what is done; { $plants } plants hang on it, { $minutes } min
chance_probably = probably changes
chance_may_well = may well change
chance_may = may change
chance_hardly = hardly changes
# (task, chance, plants, near, minutes, saved)
worth_reckoning = { $task }: chance { $chance } that it changes what is done x { $plants } plants x nearness { $near } / { $minutes } min = { $saved } plants a minute
worth_by = the decision falls by { $day }
# (up, will)
round_sow_again = { $up }; { $will }
round_sow_again_lot = it came from { $lot }: test that lot first, or get fresh seed
round_sow_again_fresh = get fresh seed: no lot here is within its life
label_formula = formula
label_beforehand = before it
# (d, b, t50)
forecast_formula = up on day t after sowing: d / (1 + exp(-b (ln t - ln t50))), likely d { $d }, b { $b }, t50 { $t50 } d; how many still come is summed over all curves that the counts leave likely
forecast_formula_several = of several sowings each begins on its own day, and d is the mean of all seeds
# (half, low, high, share, share_low, share_high)
forecast_beforehand = half of it up after { $half } d ({ $low } to { $high }), { $share } come up ({ $share_low } to { $share_high }), { $RANGE_LEVEL } % sure: by the species' days and germination, then what this nursery sowed before and what is known of the lot
forecast_beforehand_learned = { $sowings ->
    [one] { $sowings } earlier sowing here is in it
   *[other] { $sowings } earlier sowings here are in it
}
forecast_source = Ritz, Pipper & Streibig 2013, European Journal of Agronomy 45:1 (from memory); what is known beforehand and the judgement: ours, with common practice for the { $SOW_AGAIN_SHARE } % at the half day, the quiet days and the { $WORTH_WAITING_SHARE } %
# (from, survival, culls)
stock_formula = { $from } standing and still to come x { $survival } that live on x (1 - { $culls } thrown out when grading)
stock_formula_ready = what is good enough today
stock_source = common practice for survival and culls; what this nursery taught: product limit, Kaplan & Meier 1958 (from memory); the handbook weighs as five trays (ours)
