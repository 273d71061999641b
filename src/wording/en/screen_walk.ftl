### The screen Walk, and the round in prompts.

# (behind, all, minutes)
walk_progress = { $behind } of { $all } · { $minutes } min of looking
walk_work = { $time } of work
walk_all_done = { $stops ->
    [one] The round is done: { $stops } stop
   *[other] The round is done: { $stops } stops
}
walk_skipped_count = { $stops } skipped
walk_closing = The round in short
walk_let_go_today = { $stops ->
    [one] { $stops } stop let go
   *[other] { $stops } stops let go
}
walk_planted_today = { $plants ->
    [one] { $plants } plant went into the ground
   *[other] { $plants } plants went into the ground
}
# (plants, trays)
walk_counted_today = { $trays ->
    [one] Counted: { $plants } in { $trays } tray
   *[other] Counted: { $plants } in { $trays } trays
}
walk_lost_today = Lost: { $plants }
walk_culled_today = Thrown out: { $plants }
walk_given_today = Given out or sold: { $plants }
walk_waits_for_tomorrow = { $stops ->
    [one] { $stops } stop waits for tomorrow
   *[other] { $stops } stops wait for tomorrow
}
walk_rest = { $stops } can wait: + shows them
walk_rest_shown = { $stops } can wait: - hides them
walk_can_wait = Can wait
walk_done = done
walk_over = no longer due
walk_new = new
# (now, before)
walk_said_again = { $now } (before: { $before })
# (stops, sentence)
walk_rest_new = { $stops } new · { $sentence }
walk_skipped = skipped
walk_where = Where
walk_why = Why
walk_last = Last
# (figure, day)
walk_last_figure = { $figure }, { $day }
walk_expect = Expect
walk_good_enough = { $what } good enough to go
walk_until = When
walk_without = Without it
walk_more_right = { $lines ->
    [one] { $lines } more line: right arrow
   *[other] { $lines } more lines: right arrow
}
walk_all_of_it = All of it: right arrow
walk_more_left = back: left arrow
walk_load_today = today { $load }
walk_load_no_hands = { $load }, no hands today
walk_large_hint = Enter, number, Enter
walk_nothing_comes = nothing comes up any more
walk_set_apart = set apart
walk_sign = Sign
plain_begin = Answer with a number, a word or a letter; ? says which.
# (number, all)
plain_prompt = Stop { $number } of { $all }:
plain_not_understood = { $answer } is no answer here; ? says what is.
plain_next = next stop
plain_before = stop before
plain_quit = quit
plain_also = About a tray also: { $list }
plain_empty_does = Nothing and Enter does what the stop asks for. In a question, ? explains it, q leaves it.
plain_way_out = Enter takes what stands in [ ]; ? explains; q leaves it.
plain_name_wanted = { $answer } is no name here: write the name, or Enter for the one in [ ].
plain_write_it = Write it? y yes, n no, m more fields:
plain_take_back = Take it back? y yes, n no:
plain_left = Nothing was written.
plain_loses_most = This loses most by waiting.
plain_writing_day = What is written now is for { $day }.
plain_more = { $lines } more lines. Enter says them, anything else is enough:
plain_only_tray = That is written about a tray, and here is none.
walk_mark_short = ! loses most
