### Forms.

form_day = Day
title_noted_about = About what
title_given_out_to = To whom
title_moved_on_from = From tray
form_today = today
form_optional = may be left empty
form_star = * is needed
form_number_hint_above_nought = a number above 0
form_number_hint_above = a number above 0, at most { $most }
let_go_heading = Let go: { $task }
let_go_until = let go until { $day }
let_go_ask_again = Ask again from
let_go_for_good = let go for good
form_rows = { $rows } rows
form_row_hint = each row: { $fields }; Enter adds the row, Enter on an empty one goes on
form_list_hint = parted by blanks
form_count_hint = a whole number
# (least, most)
form_number_hint = a number from { $least } to { $most }
form_number_hint_least = a number from { $least }
form_day_hint = a day: 2026-03-14, 14/3 or -1
form_month_day_hint = month and day: 03-14
form_choice_hint = left and right change it
form_name_hint = a name that is in the book
form_new_name_hint = a name, a new one too
form_text_hint = any words
form_open_hint = name=value, parted by blanks
form_spot_hint = row.place: 2.7
form_rows_hint = rows by number: 2-4 or 1, 3
form_row_example = for instance { $row }
form_plan_example = for instance: coffee square 3 2
form_in_book = { $plants ->
    [one] In the book { $plants } plant stands there
   *[other] In the book { $plants } plants stand there
}
form_counted_on = count of { $day }
form_no_waiting_time_asks = How many days does its label say to stay away? Enter leaves it out; then nobody is sent in and nothing goes out.
form_no_container_asks = In what do they stand now? Enter leaves it out; then nobody knows how long it holds them.
form_no_place = No place: the round will not know where the tray stands.
form_rows_not_read = { $written } names no rows: write them by number, 2-4 or 1, 3.
form_share_hint = in percent: 60; 0.6 says the same
form_enter_again = Nothing is written yet: Enter once more writes it all the same.
# (number, field)
form_light_for_readings = { $number } %? Tab puts it into { $field }
form_only_fit = Tab or Enter: { $name }
# (typed, name)
form_completed = { $typed } → { $name }. Enter writes it so; Backspace changes it.
form_missing = { $field } is missing.
# (row, sentence)
form_in_row = row { $row }: { $sentence }
# (one, other)
form_or = { $one } or { $other }
# (one, other)
form_and = { $one } and { $other }
form_effect = What it does
form_keys = Enter: write it. Tab: next field. Esc: leave it unwritten; the draft stays.
form_keys_short = Enter writes, Tab next, Esc does not
# (measured, mean)
form_sample = { $measured } measured, mean { $mean } cm
form_sample_more = { $more } more would do
form_sample_enough = that is enough
form_is_kept = taken up again where it was left
