### The screen Seed.

seed_lots = { $lots ->
    [one] { $lots } lot, what must be sown first on top
   *[other] { $lots } lots, what must be sown first on top
}
seed_hidden = { $lots ->
    [one] { $lots } used-up one hidden ({ $KEY_V })
   *[other] { $lots } used-up ones hidden ({ $KEY_V })
}
seed_all_used_up = { $lots ->
    [one] The only lot is used up: { $KEY_V } shows it. { $KEY_N }, then "lot", writes the next.
   *[other] All { $lots } lots are used up: { $KEY_V } shows them. { $KEY_N }, then "lot", writes the next.
}
seed_column_lot = lot
seed_column_state = state
seed_column_left = left
seed_column_days_left = days left
seed_column_test = test
seed_column_kept = kept
seed_column_next_test = next test
seed_column_came_up = came up
seed_column_collected = collected
seed_about = about { $seeds }
seed_left_unknown = not known
# (left, seeds)
seed_left_of = { $left } of { $seeds } seeds
# (lot, species)
seed_heading = Seed lot { $lot }, { $species }
seed_verdict_used_up = Used up: nothing is left.
# (day, why)
seed_verdict_held_until = Held back until { $day }: { $why }.
seed_verdict_held = Held back: { $why }.
# (kept, days, day)
seed_verdict_keeps = Keeps until { $day }, { $days } more: { $kept }.
# (kept, days, day)
seed_verdict_ending = Sow it now: its life ends { $day }, in { $days }: { $kept }.
# (day, dead)
seed_verdict_over = Its life was over on { $day }: less and less comes up, nothing after { $dead }.
seed_verdict_dead = Dead by all that is known: its life was over on { $day }.
seed_verdict_unknown = How long it lives is not known of seed kept so: { $kept }. A test tells.
seed_label_source = from
seed_tests = Germination tests
seed_never_tested = Never tested.
seed_how_many = How many to sow
seed_for_plants = How many to sow for how many plants? { $typed }
seed_none_open = No bed has an open place for it; { $KEY_I } asks for a number of plants.
# (likely, low, high)
seed_share = { $likely } % (95 % sure: { $low } to { $high } %)
seed_sowings = Sown from it
seed_not_sown = Nothing was sown from it in trays yet (s).
seed_unknown_seeds = seeds nobody counted
# (tray, day, seeds, seedlings)
seed_sown_in = { $tray }, { $day }: { $seeds }, { $seedlings } came up
seed_more_may_come = more may come
seed_with_other_seed = other seed lies in the tray too
# (seedlings, seeds)
seed_came_up_in_all = Where nothing more comes: { $seedlings } of { $seeds } came up
seed_history = What was written of it, newest first

## seed_state_: by word

seed_state_keeps = keeps
seed_state_ending = sow now
seed_state_over = life over
seed_state_dead = dead
seed_state_life_unknown = life unknown
seed_state_used_up = used up
seed_state_held = held back
