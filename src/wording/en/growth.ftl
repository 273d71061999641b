### How the plants of a tray grow.

growth_heading = Growth
growth_label_height = height
growth_label_collar = collar
growth_label_lanky = tall and thin
growth_label_sample = sample
growth_label_formula = formula
growth_cm = { $value } cm
growth_mm = { $value } mm
# (mean, day, target)
growth_there = { $mean } on average on { $day }, at least { $target }: there
# (mean, target, day, samples)
growth_expected = { $mean } on average; { $target } on { $day } by its own curve from { $samples ->
    [one] { $samples } day
   *[other] { $samples } days
} of measuring
# (mean, target, day, low, high, samples)
growth_expected_between = { $mean } on average; { $target } on { $day } ({ $low } to { $high }, 95 % sure) by its own curve from { $samples ->
    [one] { $samples } day
   *[other] { $samples } days
} of measuring
# (target, why)
growth_unknown = { $target } needed: { $why }
# (mean, target, why)
growth_unknown_mean = { $mean } on average, { $target } needed: { $why }
growth_why_never_measured = never measured
growth_why_few = { $have ->
    [one] measured on one day; it takes { $LEAST_SAMPLES } days to tell a day
   *[other] measured on { $have } days; it takes { $LEAST_SAMPLES } days to tell a day
}
growth_why_no_age = the day of sowing is not known
growth_why_no_end = the samples do not tell where growth ends
growth_why_wide = the samples tell the day to no better than a year
growth_why_ends_below = by its own curve it ends at { $at }
growth_species_day = the species' least day is { $least }
# (least, usual)
growth_species_days = by the species' days { $least } at the least, usually { $usual }
# (sturdiness, day, limit)
growth_lanky_now = height / collar { $sturdiness } on { $day }, at most { $limit }: set apart now
# (sturdiness, day, limit, on)
growth_lanky_on = height / collar { $sturdiness } on { $day }, passes { $limit } about { $on }: set apart before
# (sturdiness, day, limit)
growth_lanky_not = height / collar { $sturdiness } on { $day }, at most { $limit }: not in sight
# (sturdiness, day, limit)
growth_lanky_one = height / collar { $sturdiness } on { $day }, at most { $limit }; one sample tells no trend
# (plants, day, within)
growth_sample = { $plants ->
    [one] { $plants } plant
   *[other] { $plants } plants
} on { $day }: the mean is known to within { $within }
# (plants, day, within, more)
growth_sample_more = { $plants ->
    [one] { $plants } plant
   *[other] { $plants } plants
} on { $day }: the mean is known to within { $within }; measure { $more } more
# (day, more)
growth_sample_one = one plant on { $day }: measure { $more } more
growth_formula = logistic A / (1 + exp(-k (t - t0))) or Gompertz A exp(-exp(-k (t - t0))), least squares over all plants, the better of the two; here { $curve }
growth_source = Verhulst 1838, Gompertz 1825; Bates & Watts 1988 (from memory); height over collar up to 6: Jaenicke 1999 (from memory); above: ours, common practice
# (a, k, t0)
growth_curve_logistic = logistic: A { $a }, k { $k } a day, t0 day { $t0 }
# (a, k, t0)
growth_curve_gompertz = Gompertz: A { $a }, k { $k } a day, t0 day { $t0 }
# (sturdiness, limit, day)
round_lanky_soon = growing tall and thin: height / collar { $sturdiness }, passes { $limit } about { $day }
# (more, within, least)
round_sample_small = measure { $more } more: the mean is known to within { $within } and lies that near to { $least }
