# (tray, out, stood, day)
doubt_more_out_than_stood = { $tray }: { $out } went out on { $day }, but { $stood } stood there by the books: count it and write a stocktake
# (lot, out, held, day)
doubt_more_seed_than_held = { $lot }: { $out } seeds went out on { $day }, but the lot held { $held } by the books: count what is left
# (bed, species, dead, lived, day)
doubt_more_dead_than_lived = { $bed }: { $dead } { $species } dead on { $day }, but { $lived } lived there by the books: count the living again
# (bed, species, alive, lived, day)
doubt_alive_again = { $bed }: { $alive } { $species } alive on { $day }, but { $lived } lived there by the last count and what was planted since: count again, or write the planting
# (bed, species, alive, planted, day)
doubt_more_alive_than_planted = { $bed }: { $alive } { $species } alive on { $day }, but { $planted } were planted by the books: was a planting not written?
# (bed, species, alive, dead, planted, day)
doubt_more_seen_than_planted = { $bed }: { $alive } { $species } alive and { $dead } dead on { $day }, but { $planted } were planted by the books: was a planting not written?
# (bed, species, cut, stood, day)
doubt_more_cut_than_stood = { $bed }: { $cut } { $species } cut on { $day }, but { $stood } stood there by the books: count the living again
# (bed, species, day)
doubt_cut_of_none = { $bed }: { $species } cut on { $day }, but none stood there any more by the books: count the living again
# (tray, counted, most, day)
doubt_more_than_seed = { $tray }: { $counted } counted on { $day }, its seed can have given { $most }: was a sowing or an arrival not written?
# (tray, books, counted, day)
doubt_rise_without_seed = { $tray }: { $counted } counted on { $day }, { $books } stood by the books and no seed is due: did plants come in?
# (tray, day)
doubt_unknown_tray = { $tray }: written about on { $day }, but nobody wrote where this tray came from
# (lot, day)
doubt_unknown_lot = { $lot }: written about on { $day }, but nobody wrote that this lot came in
# (bed, day)
doubt_unknown_bed = { $bed }: written about on { $day }, but nobody laid this bed out
# (species, day)
doubt_unknown_species = { $species }: written on { $day }, but no profile is known by this name
# (tray, day)
doubt_twice_made = { $tray }: this code was given to a second tray on { $day }: relabel one of them
# (lot, day)
doubt_twice_received = { $lot }: this lot was received again on { $day }: withdraw one, or give it a code of its own
# (tray, day)
doubt_order_matters = { $tray }: two copies wrote about it on { $day } and the order changes the numbers: count it today and write a stocktake, not one more count of that day
# (bed, species, day)
doubt_not_in_plan = { $bed }: { $species } went in on { $day }, but the plan of the bed does not name it
# (bed, species, plants)
doubt_off_the_grid = { $plants ->
    [one] { $bed }: { $plants } { $species } stands off the rows since the bed was laid out anew
   *[other] { $bed }: { $plants } { $species } stand off the rows since the bed was laid out anew
}
# (species, what, day)
doubt_bad_profile = { $species }: the figures written on { $day } cannot be read: { $what }
# (tray, standing, seen, cells, books, day)
doubt_part_count_apart = { $standing ->
    [one] { $tray }: { $standing } plant in { $seen } of { $cells } cells on { $day }, but the books hold { $books }: count the whole tray
   *[other] { $tray }: { $standing } plants in { $seen } of { $cells } cells on { $day }, but the books hold { $books }: count the whole tray
}
# (tray, day)
doubt_look_at_empty = { $tray }: looked at on { $day }, but nothing stands there and no seed is due
# (bed, species, out, open, day)
doubt_more_out_than_positions = { $bed }: { $out } { $species } went out on { $day }, but the plan has { $open } positions open: write a survival count or what was lost, or the plan as it was planted
# (bed, written, rows, places, day)
doubt_no_such_position = { $bed }: { $written } was written on { $day }, but the bed has { $rows } rows of up to { $places } places: withdraw it, or lay the bed out as it is
# (tray, sample, stood, day)
doubt_sample_larger = { $tray }: { $sample } plants were measured on { $day }, but { $stood } stood there by the books: count the tray
# (tray, worked, stood, day)
doubt_worked_on_more = { $tray }: work on { $worked } plants was written on { $day }, but { $stood } stood there by the books: count the tray
doubt_cannot_be = { $what }: withdraw it and write it as it was
# (day, lowest, highest)
cannot_lowest_above_highest = { $day }: the lowest temperature { $lowest } °C lies above the highest { $highest } °C
# (lot, collected, day)
cannot_collected_later = { $lot }: collected on { $collected }, but it came in on { $day }
# (field, later, day)
cannot_day_later = { $field } { $later } lies after the day it was written for, { $day }
# (day, part, parts, whole, wholes)
cannot_more_of = { $day }: { $part } { $parts } is more than { $whole } { $wholes }
# (until, day)
cannot_ends_before = it would end on { $until }, before it begins on { $day }
# (tray, species, other, day)
doubt_two_species = { $tray } holds { $species }, but { $other } came in on { $day }: withdraw that, or write it for a tray of its own
