### The frame of the dashboard.

screen_walk = Walk
screen_trays = Trays
screen_beds = Beds
screen_going_out = Going out
screen_seed = Seed
screen_season = Season
screen_journal = Journal
answers_walk = What do I do today, in the order I walk?
answers_trays = What do I have, how is it doing, when is it ready?
answers_beds = Which ground is ready for what?
answers_going_out = Which tray goes to which bed, and why not?
answers_seed = What seed is there, and how long does it live?
answers_season = How does the year go for each tray and bed?
answers_journal = What was written, and what no longer counts?
banner_back = Looking back: { $day }. { $KEY_D }: another day
banner_ahead = Looking ahead: { $day }, if nothing more is done. { $KEY_D }: another day
banner_writing_day = What is written is for { $day }. { $KEY_B }: another day
banner_gone = { $entries ->
    [one] One entry that was saved here is gone: outplant check
   *[other] { $entries } entries that were saved here are gone: outplant check
}
banner_read_only = Reading only
banner_handbook = Handbook alone. { $KEY_Z }, then { $KEY_H }: back
banner_doubts = { $doubts ->
    [one] One doubt
   *[other] { $doubts } doubts
}
saving = saving ...
said_saved = Saved: { $what }
# (what, doubt)
said_saved_doubt = Saved: { $what }. But now this cannot be right: { $doubt }
said_refused = Not written: { $why }
said_not_written = Not written.
said_taken_back = { $entries ->
    [one] Taken back: one entry
   *[other] Taken back: { $entries } entries
}
said_read_only = Nothing can be written now: reading only ({ $KEY_Z }).
said_looking = Nothing is written while looking at another day (d).
said_no_reason = Nothing is chosen that has reasons.
said_not_found = Nothing is called { $what }.
said_kept_form = A form left half-filled is kept: { $form }. { $KEY_N }, Enter goes on with it.
said_draft_kept = { $form }: not written; the draft is kept.
help_title = Keys of this screen, and keys that mean the same everywhere
help_here = On this screen
help_signs = Signs
sign_loses_most = loses most by waiting
sign_over = no longer due, or let go
sign_new = came up since the round began
sign_sent = handed in, not in the file yet
sign_no_day = nobody can say from when
sign_not_before = not before that day; something else holds it back too
sign_past = that day is past
sign_not_read = never read, or too long ago
sign_nurse_shade = shade of nurse plants: growing, useful, ended
sign_more_missing = so many more things are missing; { $KEY_Y } names them
help_everywhere = Everywhere
help_in_form = In a form
help_find = { $KEY_F }: look for a word
help_search = Looking for: { $what }
help_none = No key has to do with that.
find_title = Find: type or scan a code or a name
find_none = Nothing is called so. Enter looks for the nearest.
# (species, place)
find_is_tray = tray, { $species }, { $place }
find_is_bed = bed in { $field }
find_is_lot = seed lot, { $species }
find_is_place = place
kinds_title = What do you want to write down? Type a word of it.
kinds_line = Enter reads it as a line, and opens its form filled in.
kinds_line_several = That is several entries: write them one at a time here, or with outplant write.
kinds_none = Nothing to write down is called so.
kinds_go_on = go on: { $form }
day_title = Look at which day?
day_hint = A date, "yesterday", +7 or -30 days, or empty for today. Left and right: a day; up and down: a week.
day_write_title = Of which day is what you write next?
day_write_hint = A date, "yesterday" or -1, or empty for today.
day_not_read = { $written } is no day: write 2026-03-14, 14/3, yesterday, +7 or -1.
day_not_coming = What has not happened yet cannot be written.
news_title = What changed since { $day }
news_waiting = Looking ...
options_title = Options
option_lang = language
option_contrast = high contrast
option_ascii = plain characters only
option_read_only = reading only
option_mouse = mouse
option_handbook = handbook alone (set aside what was learned here)
option_on = on
option_off = off
confirm_title = Take this back?
confirm_waiting = Looking what it would undo ...
confirm_keys = { $KEY_W }: take it back. { $KEY_Q }: leave it.
leave_title = Leave?
leave_kept = What is written is in the file, and a form left half-filled is kept.
leave_keys = Enter: leave. { $KEY_Q } or Esc: stay.
confirm_rests = { $entries } entries in all, with what rests on them.
confirm_why = taken back in the dashboard
why_none = No reasons are known.
why_rest_in_beds = With sources and entries: the bed on screen Beds, then { $KEY_Y }.
why_more = { $lines ->
    [one] one more line
   *[other] { $lines } more lines
}
empty_walk = Nothing is due today. Rest, or look at the beds.
empty_begin = write the first: plants that stand there already, seed, a bed
no_trays = No trays yet: { $KEY_N }, then "sow", writes the first sowing.
no_beds = No beds yet: { $KEY_N }, then "bed", lays one out.
no_lots = No seed yet: { $KEY_N }, then "lot", writes the first lot.
no_entries = Nothing is written yet.
# (tray, was, is)
outcome_tray = { $tray }: { $was } → { $is }
# (tray, is)
outcome_tray_new = { $tray }, new: { $is }
# (plants, stage)
outcome_standing = { $plants } living, { $stage }
outcome_not_seen = { $plants ->
    [one] { $plants } not seen to die
   *[other] { $plants } not seen to die
}
# (tray, plants, standing)
outcome_gap_told = { $tray }: fills the gap that was counted, { $plants } of it; still { $standing } living
outcome_place = at { $place }
outcome_no_place = no place
# (tray, was, is)
outcome_plantable = { $tray }: can be planted { $was } → { $is }
outcome_ready = ready
outcome_not_ready = not ready
# (bed, species, was, is)
outcome_bed = { $bed }, { $species }: { $was } → { $is } living
# (bed, species, was, is)
outcome_standing_of_bed = { $bed }, { $species }: { $was } → { $is }
# (bed, trays)
outcome_fits_now = { $bed }: now fit { $trays }
# (bed, trays)
outcome_fits_no_more = { $bed }: no longer fit { $trays }
# (bed, was, is)
outcome_light = { $bed }: light { $was } → { $is }
# (lot, was, is)
outcome_lot = { $lot }: { $was } → { $is } seeds
outcome_seeds_unknown = ?
outcome_none = Written down; no number changes and nothing turns.
outcome_more = and { $more } more
outcome_looking = looking what it does ...
weekday = { $day ->
    [0] Mon
    [1] Tue
    [2] Wed
    [3] Thu
    [4] Fri
    [5] Sat
   *[other] Sun
}
