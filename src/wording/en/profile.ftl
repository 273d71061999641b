### Why a species profile cannot stand.

profile_no_source = { $name } names no source
profile_not_a_number = { $name } is not a number
# (name, written)
profile_negative = { $name } cannot be negative; { $written } was written
profile_zero = { $name } cannot be 0
# (name, most, written)
profile_more_than = { $name } cannot be more than { $most }; { $written } was written
profile_unseen = { $name } holds an invisible or control character: write it anew
# (name, most)
profile_too_long = { $name } is longer than { $most } characters
# (least, low, most, high)
profile_out_of_order = { $least } is { $low }, which is more than { $most } at { $high }
# (points, most)
profile_growth_count = 'growth_points' holds { $points } points; 1 to { $most } can be read
profile_growth_month = 'growth_points' reaches month { $month }; 1200 is the last
# (month, after)
profile_growth_order = 'growth_points': month { $month } follows month { $after }
# (steps, most)
profile_step_count = 'hardening_steps' holds { $steps } steps; { $most } is the most
profile_step_days = 'hardening_steps' counts days from 1 to 365
# (days, after)
profile_step_order = 'hardening_steps' go toward planting out, but { $days } days before follows { $after }
# (name, count, most)
profile_too_many = { $name } holds { $count } texts; { $most } is the most
profile_empty_text = { $name } holds an empty text
profile_no_common_name = a species needs a name in English or Spanish
profile_bad_code = a species' code is three letters a to z; '{ $written }' is not
profile_key_changed = the key of a species cannot be changed
profile_unknown_role = unknown role '{ $written }': nursery or nurse
profile_unknown_flag = '{ $written }' does not say how far a figure can be trusted: seen, memory, common practice, ours or own
profile_unknown_figure = unknown figure '{ $written }'; `outplant species coffee` shows the names
# (written, nearest)
profile_unknown_figure_near = unknown figure '{ $written }'; the nearest is { $nearest }
profile_not_text = { $name } is a text
profile_not_texts = { $name } is a text or a list of texts
profile_not_names = 'names' holds 'en' and 'es', each a name or a list of names
profile_names_language = 'names' holds 'en' and 'es', not '{ $written }'
profile_not_yes_or_no = { $name } is true or false
# (name, words)
profile_not_the_word = { $name } is one of: { $words }
profile_not_points = { $name } is a list of records with month, height_m and radius_m
profile_not_steps = { $name } is a list of records with days_before and shade_pct, bed_shade, water_every_days or soak
profile_no_name = a species needs a name
profile_name_unseen = the species' name holds an invisible or control character: { $shown }
profile_name_too_long = a species' name has at most { $most } characters
profile_no_letters = '{ $name }' has no letters a to z: give the species a code of three letters
profile_no_free_code = no code is free for '{ $name }': give the species a code of three letters
# (name, other)
profile_name_taken = '{ $name }' already names { $other }
part_profile_code = code
part_profile_scientific = scientific name
part_profile_role = role
part_profile_names = names
part_profile_notes = notes
part_profile_cautions = cautions
