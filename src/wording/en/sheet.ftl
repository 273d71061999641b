### Sheets of the first day and of a walk.

marked_heading = Remarks
marked_written = the sheet with what is wrong behind each row: { $file }
marked_not_written = no copy with remarks was written: it needs the sheet as a file

# (rows, entries)
sheet_taken = { $rows ->
    [one] { $rows } row read, { $entries } written
   *[other] { $rows } rows read, { $entries } written
}
# (rows, entries)
sheet_tried = { $rows ->
    [one] { $rows } row read, { $entries } could be written; nothing was
   *[other] { $rows } rows read, { $entries } could be written; nothing was
}
sheet_in_workbook = The sheet is '{ $sheet }' of a workbook.
# (encoding, delimiter)
sheet_written_as = The sheet is { $encoding }, its cells parted by { $delimiter }.
sheet_tab = tabs
sheet_comma = commas
sheet_semicolon = semicolons
# (column, nearest)
sheet_passed_over_near = { $column } (rename it if it means: { $nearest })
sheet_passed_over = Columns passed over, they mean nothing here: { $columns }
sheet_understood = Understood so:
# (written, day)
taken_day = '{ $written }' is { $day }
# (written, day)
taken_about_day = '{ $written }' is about { $day }
# (written, days)
taken_age = '{ $written }' is { $days } days
# (written, count)
taken_count = '{ $written }' is { $count }
# (written, count)
taken_about_count = '{ $written }' is about { $count }
# (written, percent)
taken_percent = '{ $written }' is { $percent }
taken_field = no field is named: { $field }
# (row, in_row)
taken_spacing = no spacing is named: the usual { $row } x { $in_row } m
# (what, rows)
sheet_understood_more = { $rows ->
    [one] { $what }; and { $rows } more row
   *[other] { $what }; and { $rows } more rows
}
sheet_unknown_heading = Not known yet; what costs least to find out comes first:
# (name, of)
still_container_volume = the volume of '{ $name }', for { $of }
still_container = the container of { $of }
still_age = the age of { $of }
# (name, of)
still_place_shade = the shade over '{ $name }', for { $of }
still_place = the place of { $of }
still_measured = height and collar of { $of }: measure { $USUAL_SAMPLE } plants of a tray near planting out
still_bed_light = the light in { $of }
still_bed_soil = the ground of { $of }: push a rod two days after a soaking
still_bed_work = what was cleared, dug, weeded or fenced in { $of }
# (name, of)
still_nurse_count = how many { $name } stand in { $of }
# (name, of)
still_nurse_planted = when the { $name } of { $of } were planted
# (name, of)
still_nurse_spacing = how far apart the { $name } of { $of } stand
# (name, of)
still_noted_sickness = what the notes of { $name } ({ $of }) mean: they name a pest or a sickness, and are kept as they are; a note holds no plants back
# (name, of)
still_noted_use = what was used on { $name } ({ $of }) by its notes, and how long to stay away: they are kept as they are; a note makes nobody wait
sheet_fill = fill the column "{ $column }" in the sheet; outplant undo takes this import back
sheet_fill_first = fill the column "{ $column }" in the sheet before you import it
sheet_hardening = Plants that stood already wait until it is known since when they are in their light. Write the shade of each bench, and for each tray that stands toward the light the true day on which that began:
sheet_hardening_batch = or many at once with outplant write --batch FILE: a line with the day, then a line "{ $tray } hardening" for each tray.
# (ready, trays)
sheet_now_trays = Now { $ready } of { $trays } ready to go out.
# (trays, list)
sheet_now_wait = { $trays } wait, first of all for: { $list }.
sheet_now_beds = Beds: { $list }.
# (of, lines, number)
sheet_lines = { $number ->
    [one] { $of } (line { $lines })
   *[other] { $of } (lines { $lines })
}
sheet_now_hint = Each with its reason: outplant ready
# (lines, entries)
paper_taken = { $lines ->
    [one] { $lines } line read, { $entries } written
   *[other] { $lines } lines read, { $entries } written
}
# (lines, entries)
paper_tried = { $lines ->
    [one] { $lines } line read, { $entries } could be written; nothing was
   *[other] { $lines } lines read, { $entries } could be written; nothing was
}
refused_beside_batch = with --batch only happened= and who= may stand, not '{ $written }'
# (name, of)
still_least_days = from how many days on { $name } goes out, for { $of }: until somebody says, no age holds it back
# (name, of)
still_species_shade = how much shade '{ $name }' stands at planting out, for { $of }
# (name, of)
still_species_most_days = how many days its bag holds '{ $name }', for { $of }
# (written, ml)
taken_volume = '{ $written }' holds { $ml } ml
sheet_columns = Columns: { $list }
# (column, means)
sheet_column_means = { $column } → { $means }
sheet_names = Species: { $list }
# (written, species, rows)
sheet_name_is = { $written } → { $species } ({ $rows })
# (written, rows)
sheet_name_unknown = { $written } → not known ({ $rows })
sheet_rows_heading = Each row as it is understood:
# (line, entry)
sheet_row_is = line { $line }: { $entry }
sheet_order_day_first = Days are read with the day first
sheet_order_month_first = Days are read with the MONTH first
# (order, written, line)
sheet_order_shown = { $order }: '{ $written }' in line { $line } can only be read so.
sheet_order_taken = { $order }; none of them shows it.
sheet_order_read = So read: { $list }.
# (written, line, day)
sheet_order_one = '{ $written }' (line { $line }) is { $day }
sheet_total_passed = Line { $line } is a total and was passed over.
# (line, days, from, until)
sheet_gap = After line { $line } nothing is told of { $days } days, { $from } to { $until }: they are reckoned as days that nobody read.
sheet_gaps_more = And { $gaps } gaps more.
# (line, written, counted)
sheet_total_differs = Line { $line } is a total and was passed over; it says { $written }, the rows sum up to { $counted }: was a row forgotten?
sheet_containers_since_sowing = How long they have stood in their bags is not in the sheet: it is taken that it was since they were sown. Where a tray was potted on later, a lifted plug says more.
sheet_answers_heading = The first answers it would give:
paper_days = As of { $list }.
# (day, lines)
paper_day = { $day } ({ $lines })
