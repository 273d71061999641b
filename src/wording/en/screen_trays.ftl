### The screen Trays.

# (name, trays, plants)
trays_group = { $name } · { $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
}, { $plants }
trays_column_tray = tray
trays_column_species = species
trays_column_age = days old
trays_now = now
trays_sorted = by { $column }
trays_empty_hidden = { $trays ->
    [one] { $trays } empty one hidden ({ $KEY_V })
   *[other] { $trays } empty ones hidden ({ $KEY_V })
}
trays_all_empty = { $trays ->
    [one] The only tray is empty: { $KEY_V } shows it.
   *[other] All { $trays } trays are empty: { $KEY_V } shows them.
}
trays_none_fits = No tray has "{ $written }" in its code, species, stage, place or lot. { $KEY_Q } shows all again.
trays_only = Only:
trays_filter_typing = Enter keeps it
trays_filter_kept = { $KEY_I } changes it, { $KEY_Q } shows all
trays_verdict_empty = Empty: nothing stands here and no seed is waited for.
trays_verdict_ready = Ready to go out: { $plants }.
# (plants, day)
trays_verdict_ready_before = Ready to go out, best before { $day }: { $plants }.
trays_verdict_overdue = Overdue: { $reason }.
trays_verdict_not = Not ready: { $reason }.
# (day, reason)
trays_verdict_not_before = Not ready before { $day }: { $reason }.
trays_verdict_waits = Not ready, and nothing is known that holds it back.
# (up, seeds)
trays_failing = This sowing is failing: { $up } of { $seeds } seeds came up.
# (up, seeds, day)
trays_failing_sow_by = This sowing is failing: { $up } of { $seeds } seeds came up. Sow again by { $day }.
# (plants, day)
trays_counted = { $plants }, counted { $day }
trays_never_counted = { $plants }, never counted
trays_light = { $light } of the open light, its last { $LAST_LIGHT_DAYS } days
trays_label_container = container
# (container, days)
trays_in_container = { $container }, for { $days }
trays_label_sown = sown
# (day, age)
trays_sown = { $day }, { $age } ago
# (day, age, lots)
trays_sown_from = { $day }, { $age } ago, from { $lots }
trays_reasons = What is asked of it
trays_where_to = Where it could go
# (bed, plants)
trays_fits = { $bed }: { $plants } can go today
# (bed, positions)
trays_bed_waits = { $bed } only waits for the tray: { $positions ->
    [one] { $positions } open position
   *[other] { $positions } open positions
}
trays_more_beds = { $beds ->
    [one] and { $beds } more bed
   *[other] and { $beds } more beds
}
trays_expected = What to expect
trays_not_before = not before { $day }; of something else nobody can say when it ends
trays_label_up = came up
# (seedlings, seeds)
trays_up_of = { $seedlings } of { $seeds }
trays_came_up = What came up
trays_stood = How many stood
trays_heights = Heights
trays_legend_forecast = ● came up by the counts; ─ the likely curve; · between these lines, { $RANGE_LEVEL } % sure; │ the last are due { $day }; : today
# (low, high)
trays_legend_growth = ● mean of a sample; ○ its plants; ─ the likely curve; = the least height is reached between these days, 95 % sure; · the height it goes out at: { $low } to { $high } cm
trays_legend_counted = ● by the counts
# (low, high)
trays_legend_heights = ● mean of a sample; ○ its plants; · the height it goes out at: { $low } to { $high } cm
trays_legend_heights_only = ● mean of a sample; ○ its plants
trays_sown_on = sown { $day }
trays_day = day { $day }
trays_history = What was written of it, newest first
trays_more_below = { $lines ->
    [one] { $lines } more line below (.)
   *[other] { $lines } more lines below (.)
}
trays_back_above = That is all; up again (,)
