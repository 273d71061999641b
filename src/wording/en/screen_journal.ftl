### The screen Journal.

journal_search = Holding:
journal_day = Day
journal_what = What
journal_who = Who
journal_recorded = Written
journal_number = Number
journal_taken_back = Taken back
journal_by = by { $entry }; it no longer counts
journal_counts = It counts. { $KEY_R } takes it back, and says first what goes with it.
journal_none = Nothing written holds { $search }.
confirm_waiting_short = Looking ...
