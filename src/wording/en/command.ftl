### Around the work of commands.

today_unreadable = OUTPLANT_TODAY is '{ $written }'; write it as 2026-03-14
begun_next = Next: the trays you have, from a sheet saved as CSV with the columns Tray, Species, How many, Sown about, Bag, Bench: outplant import trays.csv --as trays (first with --dry-run, to see how it is understood). Beds come with --as beds. outplant write lists everything else that can be written, outplant ready says what is ready.
begin_name_asked = what is the nursery called?
begin_latitude_asked = latitude, as -1.2 or 9°42'N (south negative)?
begin_longitude_asked = longitude, as 36.1 or 84°6'W (west negative)?
begin_altitude_asked = how high above the sea, in m (Enter: not known)?
sample_look = This is an invented nursery, kept in { $file }. Begin your own: outplant begin --name "..." --lat ... --lon ... --altitude ...
write_lists_kinds = What can be written, each as outplant write KIND key=value ... ; [ ] may be left out, happened= and who= stand beside any:
value_number = number
value_flag = true|false
value_entry = k3f9:12
clock_set_it = set the clock, or say OUTPLANT_TODAY=2026-03-14 before the command
clock_say_yes = nothing was written: a clock that is wrong would mark every later entry. Set the clock, or say --yes
refused_no_pipe = - stands for what is piped; this is made in a place of its own: name it (./- where it is to be called so)
how_settings = settings: { $file }
how_opens = opens { $file }
# (entries, time)
how_opened = { $entries ->
    [one] one entry, open after { $time }
   *[other] { $entries } entries, open after { $time }
}
# (code, time)
how_ended = ended with { $code } after { $time }
answer_not_shown = the answer could not be shown: there was no room, or nowhere, to put it. Where the command writes in the book, it is written
refused_empty_tray = nothing stands in { $tray }: there is nothing to send out
check_damaged = { $faults ->
    [one] The file is damaged in one place:
   *[other] The file is damaged in { $faults } places:
}
others_write = Other people of this machine can write to { $file }, past this program too. Where that is not meant: chmod 600
others_read = Other people of this machine can read { $file }. Where that is not meant: chmod 600
import_of_a_nursery = { $file } is a nursery itself, not an export of one: outplant --nursery { $file } export --to lines.jsonl, and then import that
check_cancelled = stopped before the file was proved; a check only reads
look_sqlite = SQLite looks through the pages of the file, { $seconds } s so far
look_entries = { $entries } entries proved
# (done, all)
look_bytes = { $done } of { $all } MB looked through
rescue_cancelled = stopped before all of the file was looked through; nothing was brought out, and the file is as it was
check_what_now = Do not write in it. Keep it as it is, and bring out what is undamaged: outplant rescue rescued.jsonl
check_undamaged = { $entries ->
    [0] No undamaged entry was found.
    [one] One entry is undamaged and can be brought out.
   *[other] { $entries } entries are undamaged and can be brought out.
}
# (device, first)
lost_one = lost: { $device }:{ $first }
# (device, first, last, entries)
lost_many = { $entries ->
    [one] lost: { $device }:{ $first }
   *[other] lost: { $device }:{ $first } to { $device }:{ $last }, { $entries } entries
}
# (entries, file)
rescued = { $entries ->
    [one] brought out: { $entries } undamaged entry in { $file }
   *[other] brought out: { $entries } undamaged entries in { $file }
}
rescued_all = Nothing is lost: the file is whole.
rescued_not_needed = There is nothing to rescue: go on with the file as it is. { $file } is the same as an export of it.
rescued_none_named = The file is damaged, but no number of an entry is missing up to the last one that was found. Compare with the newest backup.
rescued_lost = Nothing undamaged was found of these:
rescued_nothing = No undamaged entry was found; nothing was written. Take the newest backup.
# (first, last, device)
rescued_apart = { $first } to { $last } stand behind a loss: they go on as { $device }, from number 1
rescued_into_new = Next: keep the damaged file, begin a new nursery, and there outplant import { $file }
rescued_into_backup = Next: keep the damaged file, take a copy of the newest backup, and there outplant import { $file }: what the backup has is not lost. Where no backup has it: outplant rescue --no-backup
damage_header = the header of the file is destroyed, but entries lie behind it
damage_foreign_log = the log (-wal) beside the file is not its own: it is of another nursery, or of another day of this one; what follows is said of the file alone
damage_sqlite = SQLite says: { $what }
damage_schema = '{ $name }' is missing or is not what it should be
damage_row = a row cannot be read; in the machine's words: { $what }
# (entry, what)
damage_entry = { $entry } cannot be read: { $what }
# (device, first, last)
damage_gap = { $device }:{ $first } to { $device }:{ $last } are missing
damage_hash = { $entry }: its hash is not that of what it says
damage_previous = { $entry } follows on another entry than the one before it
check_unbalanced = the books of { $name } do not add up: please report this
check_kept_stories_differ = what is kept to begin quickly is not what the entries give; no entry is touched by that. It was thrown away and is made anew at the next start: please report this
check_replay_differs = replaying the entries in another order gives other books: please report this
check_unknown_kinds = { $entries ->
    [one] one entry is of a kind that a newer version wrote; it is kept
   *[other] { $entries } entries are of kinds that a newer version wrote; they are kept
}
# (file, program, sqlite)
check_versions = file version { $file }, this program knows { $program }; SQLite { $sqlite }
note_read_only_file = the file may only be read: nothing can be written
note_read_only_folder = the folder may only be read: nothing can be written
note_no_room = no room is left on the disk: it can be read, nothing can be written
note_no_log = this disk cannot keep a write-ahead log; entries are saved more slowly and as safely
note_kept_before = the file was brought up to this version; as it was before it is kept in { $file }
note_new_device = this file was copied or restored: from now on its entries stand under a new device
note_device_of_this_run = the settings' folder cannot be written ({ $why }): this run's entries stand under a device of their own
note_device_not_noted = the entry is saved, but the settings' folder could not be written ({ $why })
# (device, from, to)
gone_of_device = { $device }:{ $from } to { $to }
gone_of_more = { $devices ->
    [one] and of one more copy
   *[other] and of { $devices } more copies
}
# (entries, which)
note_gone = { $entries ->
    [one] one entry that was saved here is gone
   *[other] { $entries } entries that were saved here are gone
} ({ $which }): an older copy was put in place of the file, or its log was deleted. Put the newer file back, or import an export that has them; if it is meant: outplant write settled what=restored
gone_asks = Write anyway? [y/N]
gone_not_written = Nothing was written: put the newer file back first.
note_devices_put_aside = the list of devices could not be read and was put aside in { $file }
how_heading = { $things ->
    [0] Nothing holds it back.
    [one] What to do, one thing:
   *[other] What to do, { $things } things:
}
log_more = { $entries } shown, there are more: --most shows more of them
log_take_back = outplant undo with the number before an entry takes it back; with --all, everything that came in with it
# (name, commands)
named_several = { $name } is the name of several things: { $commands }
man_part_name = NAME
man_part_synopsis = USE
man_part_description = WHAT IT DOES
man_part_options = OPTIONS
man_part_commands = COMMANDS
man_part_examples = MORE
man_part_version = VERSION
