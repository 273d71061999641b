### Lines of files and what was typed.

line_too_long = the line is longer than { $most } and was not read
line_without_end = the line never ends; nothing behind it was read. Is this the right file?
line_not_utf8 = byte { $byte } is not UTF-8: save the file as UTF-8 and try again
line_not_json = this is not JSON: a line is one record in braces, as export writes them
line_cut_short = the line ends too early: a bracket or quotation mark is not closed
line_too_deep = lists in lists in lists: an entry is not that deep
line_number_too_large = a number is too large to be true
line_not_a_record = a line is one record in braces
line_name_twice = { $field } is written twice: keep one of them
line_at_and_clock = the time of day is written under at and under clock: keep one of them
# (place, shown)
line_unseen = character { $place } cannot be seen or steers the screen: { $shown }. Write the text again without it
line_envelope = { $what }
line_id_alone = a line with an id is one that an export wrote, and { $missing } is missing here: take the line as it was exported, or leave the id out to write a new entry
line_coming_day = { $day } has not come yet
# (day, first)
line_too_long_ago = { $day } is before { $first }: is the year right?
line_not_a_moment = '{ $written }' is not a moment such as 2026-03-14T18:00:00.000Z
line_not_a_hash = '{ $written }' is not a hash of 64 digits and letters a to f
line_wrong_hash = { $entry } was changed after it was written: its hash does not fit what it says. Take it from another copy
line_no_equals = '{ $written }' has no = : write field=value
line_quote_open = a quotation mark is not closed
line_bracket_open = a bracket is not closed
line_no_blank = a blank is missing behind the closing quotation mark or bracket
line_not_days_before = '{ $written }' is not a number of days before today, such as -30, 0 or -30/-28
line_recorded_before = written down before it happened: the second number must be the nearer day
line_day_cut_short = the line ends before day, person and kind are written
sheet_workbook = this is a workbook: import --as trays or --as beds reads it; for anything else save the sheet as CSV (text) and try again
sheet_workbook_unread = this workbook cannot be read: save the sheet anew (.xlsx or .ods), or as CSV (text), and try again
sheet_far_cell = one cell far from the table, { $cell }, holds something: delete it, save the sheet and try again
# (wanted, there)
sheet_not_in_workbook = the workbook has no sheet '{ $wanted }'; its sheets: { $there }
sheet_none_in_text = --sheet names a sheet of a workbook (.xlsx, .ods), and this file is text: leave it out
sheet_too_long = the sheet is longer than { $most } and was not read
sheet_not_in_encoding = byte { $byte } means nothing in the encoding of the sheet: save it as UTF-8 and try again
sheet_is_a_database = this is a database and no sheet; the file of a nursery is opened by --nursery FILE
sheet_is_none = this is neither text nor a workbook: save the sheet as CSV (text) or .xlsx and try again
sheet_no_names = the sheet has no row with the names of its columns
sheet_too_many_columns = the sheet has more than { $most } columns
sheet_column_without_name = a column holds something and has no name
sheet_too_many_cells = the row has more cells than the sheet has columns ({ $columns })
sheet_letters_behind_quote = letters stand behind the closing quotation mark of a cell
sheet_day_in_other_order = '{ $written }' is a day only with day and month the other way round than in the rest: write it as YYYY-MM-DD
# (line, sentence)
at_line = line { $line }: { $sentence }
# (cell, sentence)
at_cell = cell { $cell }: { $sentence }
# (column, sentence)
at_column = column { $column }: { $sentence }
# (field, sentence)
on_field = { $field }: { $sentence }
more_faults = { $faults ->
    [one] and one more
   *[other] and { $faults } more
}
nothing_written = nothing was written
# (entries, list, rest)
undo_leaves = taking back { $entries ->
    [one] this entry
   *[other] these { $entries } entries
} leaves later ones without ground ({ $list }): { $rest }. Say --together to take them back as well
# (species, what)
profile_refused = { $species }: { $what }
sheet_empty_tray = 0 plants: is the tray empty? Then leave its row out, else write how many stand there
sheet_count_not_known = '{ $written }': a tray comes in with a number of plants: count them, or write about how many, for example ~40
sheet_new_name = '{ $written }' is not known here: write the name that is, or say --yes where it is new
sheet_no_container = '{ $written }': in no bag, how do they stand? Write it in a column Form: bare root, stump, plug or bag
# (name, rows)
sheet_name_asked = { $rows ->
    [one] '{ $name }': nobody knows it here, in one row. Is it
   *[other] '{ $name }': nobody knows it here, in { $rows } rows. Is it
}
sheet_name_new = a new species
sheet_name_like = the figures of which species hold for { $name } until you know better (Enter: of none)?
sheet_no_volume = '{ $written }' holds nothing: write the volume of the bag, for example 2 l
sheet_no_rows = the sheet has names of columns and no row below them
# (name, seen)
sheet_no_column = no column is named "{ $name }"; found: { $seen }
# (example, seen)
sheet_no_header = the first row must name the columns, such as { $example }; it holds: { $seen }
sheet_in_the_book = { $name } is in the book already: take its row away, and write what changed (counted, lost, carried)
sheet_all_in_the_book = every row of this sheet is in the book already, { $rows } in all: nothing is written twice. What changed since goes in with outplant write; outplant undo takes the earlier import back
day_not_understood = '{ $written }' is no day: write it as 2026-03-14, 14/3/2026, 14 March 2026, March 2026 or "3 months ago"
# (written, first, second)
which_day = '{ $written }' may be { $first } or { $second }: write the one that is meant
day_or_year = '{ $written }' may be a day or a year: write 24 November 2026 or November 2024, whichever is meant
# (written, figures)
number_in_words = '{ $written }' is a number in words: write { $figures }
paper_which_species = several species stand there ({ $list }): write which one before the number
refused_unknown_task = there is no task '{ $task }': outplant walk gives each task its name
paper_no_lines = nothing is written there: no line holds an entry
sheet_columns_mean_the_same = two columns mean the same: { $field }; take one away
# (written, line)
sheet_same_as_line = { $written } stands in line { $line } already: each stands once
line_unknown_name = nobody knows '{ $written }' here
sheet_not_an_age = '{ $written }' is no age: write days, or "3 months"
sheet_not_a_spacing = '{ $written }' is no spacing: write it as 2.5 x 2
# (species, numbers)
sheet_not_one_for_each = { $numbers } numbers for { $species } species: write one for each, joined by +
paper_not_understood = '{ $written }' was not understood; outplant write --batch - --help shows the short forms
paper_too_many_lines = the sheet has more than { $most } lines
# (tray, day)
refused_before_the_book = { $tray } came into the book on { $day } with what stood in it then: what happened before is in that number already. Leave the line out, or write it with a later day
