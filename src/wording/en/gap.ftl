### Why a question has no answer, and the part of a bed that was seen.

# (species, write)
gap_no_shade_band = the profile of { $species } has no shade band at planting out: { $write }
# (species, write)
gap_no_most_days = the profile of { $species } does not say how many days its bag holds it: { $write }
gap_read_dry = the soil was read dry, which says nothing: read again two days after a soaking
gap_rod_too_hard = the rod was pushed with { $mpa } MPa, so hard that it goes into hard ground too: push with about { $ROOT_LIMIT_MPA } MPa
# (mpa, depth)
gap_rod_too_hard_at = the rod went { $depth } cm deep under { $mpa } MPa, so hard a push that it goes into hard ground too: push with about { $ROOT_LIMIT_MPA } MPa
# (mpa, depth)
gap_rod_too_weak = the rod stopped at { $depth } cm under only { $mpa } MPa, too weak a push to say: push with about { $ROOT_LIMIT_MPA } MPa
# (depth, needed)
gap_read_too_shallow = the ground was read soft only down to { $depth } cm, the plants go to { $needed } cm: read deeper
# (read, of, mm)
gap_gauge_partly = the gauge was read on { $read } of the last { $of } days, { $mm } mm: write the days between, noughts too
gap_coming_day = a coming day: nobody knows its rain yet
# (what, day)
gap_no_waiting_time = { $what } was used on { $day } and its waiting time is not written: unknown is not safe. Read the label, then write it again with that day and safe_after_days
# (sentence, rows)
part_rows = { $sentence }; read only in rows { $rows }
# (sentence, rows, of)
part_rows_of = { $sentence }; read only in rows { $rows } of { $of }
# (sentence, places)
part_places = { $places ->
    [one] { $sentence }; read at { $places } named place only
   *[other] { $sentence }; read at { $places } named places only
}
# (sentence, rows)
part_done_rows = { $sentence }; only in rows { $rows }
# (sentence, rows, of)
part_done_rows_of = { $sentence }; only in rows { $rows } of { $of }
# (sentence, places)
part_done_places = { $places ->
    [one] { $sentence }; at { $places } named place only
   *[other] { $sentence }; at { $places } named places only
}
