fault_not_json = this line cannot be read as one record: { $what }
fault_no_kind = the line does not say what kind of entry it is: write kind, for instance counted
fault_unknown_kind = there is no kind of entry called '{ $kind }'
# (kind, sentence)
fault_in_kind = { $kind }: { $sentence }
# (sentence, names)
with_nearest = { $sentence }; nearest: { $names }
problem_missing_all = these are missing: { $fields }
# (sentence, form)
fault_for_instance = { $sentence }. Whole: { $form }
problem_missing = { $field } is missing: write it
problem_unknown = there is no field { $field } here
# (field, written)
problem_not_a_number = { $field } is a number, not '{ $written }'
# (field, written)
problem_letters_behind = { $field } is a number: write the number alone, not '{ $written }'
# (field, written, unit)
problem_letters_behind_unit = { $field } is in { $unit }: write the number alone, not '{ $written }'
# (field, written)
problem_not_whole = { $field } is counted in whole ones, not '{ $written }'
# (field, written)
problem_below_zero = { $field } cannot be below 0; '{ $written }' was written
# (field, least, most)
problem_outside_ends = { $field } is between { $least } and { $most }: check the number and its unit
problem_above_nought = { $field } must be more than 0: check the number and its unit
# (field, most)
problem_above_nought_to = { $field } must be more than 0 and at most { $most }: check the number and its unit
# (field, most)
problem_too_many = { $field } is { $most } at the most: check the number
# (field, least)
problem_below_least = { $field } must be { $least } or more: check the number and its unit
problem_not_true_or_false = { $field } is true or false
problem_not_text = { $field } is a text
problem_empty = { $field } is empty: write it, or leave the field out
# (field, most)
problem_too_long = { $field } is too long: at most { $most }
# (field, shown)
problem_unseen = { $field } holds characters that cannot be seen: { $shown }: type it again
# (field, written)
problem_not_a_day = { $field } is a day written like 2026-03-14, not '{ $written }'
# (field, written)
problem_not_a_month_day = { $field } is a day of the year written like 03-15, not '{ $written }'
# (field, written)
problem_not_a_clock = { $field } is a time written like 07:40, not '{ $written }'
# (field, written)
problem_not_an_entry = { $field } names an entry like k3f9:12, not '{ $written }'
# (field, written)
problem_not_a_spot = { $field } is a row and a place in it like 2.7, not '{ $written }'
# (field, written, known)
problem_not_the_word = { $field } cannot be '{ $written }'; one of: { $known }
problem_not_a_list = { $field } is a list, in [ ]
problem_not_a_record = { $field } is a record of fields with their values
problem_one_of = one of these is needed: { $fields }
problem_only_one_of = it is about one of these, and more are written: { $fields }: write an entry for each
# (field, months)
problem_twelve_months = { $field } has a number for each month: write 12, not { $months }
problem_same_tray = plants cannot move from { $tray } into { $tray } itself: write another tray
problem_twice = { $field } is written twice: keep one
problem_unreadable = its fields do not make an entry together: look at each of them
# (field, fields)
problem_unknown_of = there is no field { $field } here; it has: { $fields }
# (field, form)
problem_unknown_inside = there is no field { $field } here; it stands inside of another: { $form }
unit_degrees = degrees
unit_hours = hours
unit_whole_days = days
unit_litres_a_day = litres a day
fault_kinds_listed = { $sentence }; `outplant write` alone lists them all
