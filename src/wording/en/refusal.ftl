refused_unknown_tray = no tray is called { $name }
refused_unknown_lot = no seed lot is called { $name }
refused_unknown_bed = no bed is called { $name }
refused_unknown_place = no place is called { $name }
refused_unknown_species = no species is known as { $name } (a new one: outplant species add NAME like SPECIES)
species_add_differs = "{ $words }" is not read as what differs: say days 90 to 200, light 60 to 100, shade 0 to 40, height 30, collar 5 or spacing 3x2
species_add_how = write the new name and the species whose figures hold for it until you know better: outplant species add NAME like SPECIES
# (name, near)
species_add_near = { $name } is nearly { $near }, which is known here: a plant of its own, or a slip?
# (known, name)
species_add_known = { $name } is known already, as { $known }: nothing was written
# (like, plants)
species_add_which = { $like } may mean several plants: { $plants }. Write one of them
# (tray, wanted, stands, day)
refused_more_out = { $tray }: { $wanted } out, but by the books { $stands } stood there on { $day }: count the tray and write the count first
# (lot, wanted, holds, day)
refused_more_seed = { $lot }: { $wanted } seeds out, but by the books the lot held { $holds } on { $day }: count what is left of the lot and write that first
# (bed, species, wanted, lives, day)
refused_more_dead = { $bed }: { $wanted } { $species } dead, but by the books { $lives } lived there on { $day }: write a survival count instead
so_many_alive = { $alive } alive
# (alive, dead, all)
so_many_seen = { $alive } alive and { $dead } dead, { $all } in all
# (bed, species, seen, planted, day)
refused_more_alive = { $bed }, { $species }: { $seen } on { $day }, but by the books { $planted } were planted there: count again, or write first what was planted and not written
# (bed, species, cut, stands, day)
refused_more_cut = { $bed }: { $cut } { $species } cut, but by the books { $stands } stood there on { $day }: was the cut written already? If more stand, write a count of nurse plants first
# (bed, species, day)
refused_cut_of_none = { $bed }: by the books no { $species } stood there any more on { $day }: was the cut written already? If some stand, write a count of nurse plants first
# (bed, species, wanted, open, day)
refused_more_out_than_positions = { $bed }: { $wanted } { $species } out, but on { $day } the plan has { $open } positions open: write a survival count or what was lost first, or the plan of the bed as it is planted
# (bed, rows, places, written)
refused_no_such_position = { $bed } has { $rows } rows of up to { $places } places: there is no { $written } (row.place); look at the bed's plan, or lay it out anew
# (tray, sample, stands, day)
refused_sample_larger = { $tray }: { $sample } plants measured, but by the books { $stands } stood there on { $day }: count the tray and write the count first
# (tray, worked, stands, day)
refused_worked_on_more = { $tray }: work on { $worked } plants, but by the books { $stands } stood there on { $day }: count the tray and write the count first
# (tray, species, other)
refused_two_species = { $tray } holds { $species }, not { $other }: take a tray of its own, or look at the codes again
refused_cannot_be = { $what }: mend one of the two
# (was, until)
refused_code_before = more is written of { $was } until { $until }, and it would be nobody's: write the new code with that day or a later one, after it
# (was, is, since)
refused_tray_renamed = { $was } is called { $is } since { $since }: write { $is }
# (day, today)
refused_future = { $day } has not come yet, today is { $today }: write what was done when it is done
refused_tray_code_in_use = { $tray } is the code of another tray: choose one that is free
# (name, other)
refused_tray_named_as_bed = a bed is called { $other }: lines could not tell the tray { $name } from it; give the tray another code
# (name, other)
refused_bed_named_as_tray = a tray is called { $other }: lines could not tell the bed { $name } from it; give the bed another name
refused_mixed_alphabets = in { $name } letters of two alphabets stand in one word, which look alike: write it again with the letters of the keyboard
refused_lot_code_in_use = { $lot } is the code of another seed lot: choose one that is free
refused_nothing_to_undo = there is nothing to take back: this copy has written nothing that still counts
refused_unknown_entry = there is no entry { $entry } here
# (entry, day, who, by)
refused_already_withdrawn = { $entry } was taken back on { $day } by { $who } ({ $by }): outplant undo { $by } brings it back
# (what, entry)
refused_only_the_beginning = only the beginning of the book is left ({ $what }): outplant undo { $entry } takes even that back
# (entry, all, list)
refused_one_of_many = { $entry } came in together with others, { $all } entries in all: { $list }. Say --all to take all of them back, --only for { $entry } alone
refused_while_looking = another day is looked at (--on or --known): leave these out to write
# (bed, species)
refused_not_planned = { $bed } does not plan { $species }: add it to the bed's plan, or name another bed
refused_no_nursery = there is no nursery here yet: outplant begin makes one, outplant sample shows one
file_not_there = { $file } is not there: check the name, or make it with outplant begin
input_not_there = there is no file { $file } to read: check the name
folder_not_there = there is no folder { $folder }: make it first, or choose another; nothing was written
file_already_there = { $file } is there already: nothing was changed; choose another name
file_not_ours = { $file } is not a nursery's journal: check the name
# (file, log)
file_foreign_log = the log { $log } is not that of { $file }: it is of another nursery, or of another day of this one; nothing was opened or changed: move the log to another folder, delete nothing, then open again; before that outplant rescue brings out what both hold
# (file, names)
file_changed_schema = { $file } was changed by another program ({ $names }): what is written might not stay, so nothing is; it can still be read: outplant export it, or put the last backup in its place
file_taken_away = { $file } was taken away or replaced while it was open: nothing was written; leave, look for the file, then open it again
# (file, entry)
file_not_written = { $file } did not keep { $entry }: nothing was written; look at it with outplant check
file_newer = { $file } was written by a newer outplant: install that one to read it; nothing was changed
file_busy = another outplant is writing in { $file }: wait a moment and try again
file_full = no room is left on the disk of { $file }: nothing was written; make room and try again
file_read_only = { $file } may be read but not written: check whose it is, or copy it
# (file, what)
file_damaged = { $file } is damaged: do not write in it. outplant check says what is whole, outplant rescue FILE brings it out ({ $what })
damage_found = found, in the machine's words: "{ $what }"
# (file, what)
file_other = { $file } cannot be used: { $what }
input_waits = waiting for what is piped into { $file }
input_typed = type the lines; Ctrl-D on an empty line ends them
system_not_allowed = reading or writing it is not allowed here
system_not_there = it is not there
system_no_room = there is no room left
system_too_large = it would grow larger than is allowed here
system_read_only = nothing can be written there
system_is_folder = it is a folder
system_no_folder = something before it is no folder
system_already_there = something is there already
system_broken = the disk could not read or write it
system_loop = it is a link that leads back to itself
system_not_opened = it, or what has to lie beside it, could not be opened
system_number = the system refused, fault { $number }
system_other = the system says: { $text }
# (device, first, last)
chain_gap = entries { $device }:{ $first } to { $device }:{ $last } are missing: take a later export of that copy, whole
chain_fork = { $entry } is here already with another text: one of the two was changed, or two copies of one book each went on by themselves; nothing was taken
chain_wrong_hash = { $entry } does not carry the seal of its own text: it was changed on the way; nothing was taken
chain_follows_another = { $entry } follows on another entry of its device than the one that is here: one of the two was changed; nothing was taken
