saved = { $entries ->
    [one] written: { $entries } entry
   *[other] written: { $entries } entries
}
saved_entry = written as { $entry }
saved_taken_back_by = all of it is taken back by: outplant undo { $entry } --all
saved_with_doubt = it is written, but now this cannot be right: { $doubt }
tried_with_doubt = it could be written, but then this cannot be right: { $doubt }
dry_run = { $entries ->
    [one] { $entries } entry could be written; nothing was
   *[other] { $entries } entries could be written; nothing was
}
taken = { $entries ->
    [one] taken in: { $entries } entry
   *[other] taken in: { $entries } entries
}
already_here = { $entries ->
    [one] { $entries } entry was here already
   *[other] { $entries } entries were here already
}
import_read = { $lines } lines read
import_written = { $lines } entries written
import_looked_up = { $lines } entries put in their places
import_judged = looking for what cannot be right: { $share } % done
import_saving = saving
import_stopped_at = the import was stopped after line { $line }; nothing was taken in
import_cancelled = the import was stopped; nothing was taken in
undo_done = { $entries ->
    [one] taken back: { $entries } entry
   *[other] taken back: { $entries } entries
}
undo_asks = { $entries ->
    [one] take back { $entries } entry? (y/n)
   *[other] take back all { $entries } entries? (y/n)
}
undo_would = { $entries ->
    [one] undo would take back { $entries } entry; nothing was written
   *[other] undo would take back { $entries } entries; nothing was written
}
undo_left = nothing was taken back
undo_came_together = { $entry } came in together with others: --only would take it back alone
# (name, file)
begun = the book of { $name } is begun in { $file }
sample_made = the sample nursery stands in { $file }
# (file, entries)
backup_made = { $entries ->
    [one] copied and checked: { $entries } entry in { $file }
   *[other] copied and checked: { $entries } entries in { $file }
}
# (features, file)
exported_map = { $features ->
    [one] { $features } feature in { $file }.
   *[other] { $features } features in { $file }.
}
# (entries, file)
exported = { $entries ->
    [one] { $entries } entry in { $file }
   *[other] { $entries } entries in { $file }
}
check_sound = { $entries ->
    [one] the file is sound: { $entries } entry, chain, books and replay agree
   *[other] the file is sound: { $entries } entries, chain, books and replay agree
}
check_doubts = { $doubts ->
    [one] { $doubts } doubt waits to be settled
   *[other] { $doubts } doubts wait to be settled
}
# (today, newest, entry)
clock_behind = the clock says { $today }, but the newest entry, { $entry }, is of { $newest }. If the clock is right now: outplant undo { $entry }, then outplant write settled what=clock
# (today, entries, newest, undo)
clock_behind_several = the clock says { $today }, but { $entries ->
    [one] one entry is of a later day
   *[other] { $entries } entries are of later days
}, the newest of { $newest }. If the clock is right now, take them back: { $undo }; then outplant write settled what=clock
# (today, built)
clock_before_built = the clock says { $today }, but this program was built on { $built }
# (today, built)
clock_long_after_built = the clock says { $today }, more than ten years after this program was built on { $built }
clock_behind_writing = the clock says { $today }, but this copy wrote at a later hour of a later day. If the clock is right now: outplant write settled what=clock
# (today, newest)
clock_ahead = the clock says { $today }, more than a year after the newest entry of { $newest }
clock_asks = is the clock right? (y/n)
