### Forms.

form_day = Day
form_today = today
form_optional = may be left empty
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
form_text_hint = any words
form_open_hint = name=value, parted by blanks
form_spot_hint = row.place: 2.7
form_missing = { $field } is missing.
form_effect = What it does
form_keys = Enter: write it. Tab: next field. Esc: leave it, what you typed stays.
form_keys_short = Enter writes, Tab next, Esc leaves
# (measured, mean)
form_sample = { $measured } measured, mean { $mean } cm
form_sample_more = { $more } more would do
form_sample_enough = that is enough
form_is_kept = taken up again where it was left
