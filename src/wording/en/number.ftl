month_short = { $month ->
    [1] Jan
    [2] Feb
    [3] Mar
    [4] Apr
    [5] May
    [6] Jun
    [7] Jul
    [8] Aug
    [9] Sep
    [10] Oct
    [11] Nov
   *[12] Dec
}
# (day, month, year)
day_full = { $day } { $month } { $year }
# (day, month)
day_in_year = { $day } { $month }
days = { $days ->
    [one] { $days } day
   *[other] { $days } days
}
plants = { $plants ->
    [one] { $plants } plant
   *[other] { $plants } plants
}
seeds = { $seeds ->
    [one] { $seeds } seed
   *[other] { $seeds } seeds
}
trays = { $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
}
beds = { $beds ->
    [one] { $beds } bed
   *[other] { $beds } beds
}
entries = { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
}
# (low, likely, high)
plants_between = { $low } to { $high } plants, likely { $likely }
rough_up_to = up to { $most }
rough_one = one or two
rough_few = a few
# (low, high)
rough_between = { $low } to { $high }
# (share, percent)
share_asked = { $share } %: is that { $percent } %? Write { $percent }
one_percent_asked = 1 %: is that 100 %? Write 100, or add --yes where it is 1 %
percent_of = { $percent } %
