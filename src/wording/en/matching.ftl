### The plan of going out over the coming weeks.

# (plants, trips, weeks, day)
match_heading = { $plants ->
    [one] { $plants } plant goes out, in { $trips } trips, in the { $weeks } weeks from { $day }
   *[other] { $plants } plants go out, in { $trips } trips, in the { $weeks } weeks from { $day }
}
match_living = about { $living } of them live a year later, if all goes as usual
match_proven = No plan brings more plants to life.
match_best_so_far = { $plants ->
    [one] The best plan found in the time; none is better by more than { $plants } plant.
   *[other] The best plan found in the time; none is better by more than { $plants } plants.
}
match_nothing = Nothing can go out in these weeks.
# (plants, trips)
match_given_up = { $plants } plants fewer than could go, to walk { $trips } trips less
match_no_hands = Nobody wrote how many plants are planted in a day: hands limit nothing here. Write it with the place of the nursery: outplant write nursery_set --help
# (day, week)
match_hands = hands for { $day } plants a day, { $week } a week
# (first, last)
match_week = { $first } to { $last }
# (tray, species, plants, day)
match_load_from = { $tray } ({ $species }): { $plants }, from { $day }
match_first = before: { $list }
match_pinned = said by hand
match_left_heading = What stays behind
# (plants, cause)
match_left = { $plants }: { $cause }
match_empty_heading = What stays empty
# (bed, species)
match_bed_species = { $bed }, { $species }
match_positions = { $positions ->
    [one] { $positions } position
   *[other] { $positions } positions
}
match_cause_no_bed = no bed plans this species
match_cause_work = no hands are left in the weeks in which it could go
match_cause_work_of_bed = no hands are left in the weeks in which it is open
match_cause_positions = the beds that it fits are filled by others
match_cause_window = it is ready only when no fitting bed is open
match_cause_window_of_bed = it is open only when no fitting tray is ready
match_cause_stock = no plants of this species are left for it
match_cause_least_load = too few for a trip of their own
match_cause_by_hand = said by hand
match_more_heading = What one more would bring
# (plants, day)
match_more_day = { $plants ->
    [one] one more day of planting in the week from { $day }: { $plants } plant more goes out
   *[other] one more day of planting in the week from { $day }: { $plants } plants more go out
}
# (plants, positions, bed, species)
match_more_positions = { $plants ->
    [one] { $positions } positions more for { $species } in { $bed }: { $plants } plant more goes out
   *[other] { $positions } positions more for { $species } in { $bed }: { $plants } plants more go out
}
# (written, example)
match_pin_unreadable = "{ $written }" is no such line: write it as { $example }
# (tray, pinned, there)
match_pin_too_many_of_tray = { $tray }: { $pinned } plants are said by hand, and { $there } can go in these weeks
# (bed, pinned, open)
match_pin_too_many_to_bed = { $bed }: { $pinned } plants are said by hand, and { $open } of its positions are open
# (tray, bed)
match_pin_never = { $tray } goes to { $bed } in none of these weeks: outplant why pair { $tray } "{ $bed }" says why
match_too_large = more trays, beds and weeks than can be reckoned at once: take fewer weeks
# (weeks, most)
match_weeks_outside = { $weeks } weeks: a plan has 1 to { $most }
match_pin_form = TRAY:BED=PLANTS
match_pair_form = TRAY:BED

## help_: by word
help_match = The best plan of trays to beds over the coming weeks, what stays behind and why
help_match_more = Only time passes in the plan, and work that hands do in a day is done before; what nobody knows today is no ground for it. It changes nothing in the book.
help_match_weeks = How many weeks, today's first (12; 52 at most)
help_match_pin = So many plants of a tray go to a bed, whatever else is better: TRAY:BED=PLANTS
help_match_forbid = This tray never goes to this bed: TRAY:BED
help_match_leave_out = Nothing goes to this bed
help_value_pin = TRAY:BED=PLANTS
help_value_pair = TRAY:BED
help_value_weeks = WEEKS
