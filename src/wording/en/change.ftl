### What changed a verdict.

# (changes, day)
change_heading = { $changes ->
    [one] One verdict changed since the end of { $day }
   *[other] { $changes } verdicts changed since the end of { $day }
}
change_none = No verdict changed since the end of { $day }.
change_since_yesterday = Since yesterday: { $list }.
# (what, is)
change_named = { $what } { $is }
change_more = +{ $changes } more
# (what, was, is)
change_turned = { $what }: { $was } → { $is }
# (tray, species)
change_tray = { $tray } ({ $species })
# (bed, species)
change_bed = { $bed }, { $species }
# (tray, bed)
change_pair = { $tray } for { $bed }
# (day, who, what)
change_entry = { $day }, { $who }: { $what }
change_hint = All of today: outplant ready
# (day, on)
change_day_not_before = { $day } is not before { $on }: name an earlier day
state_new = not there
state_gone = not there
state_fits = fits
state_fits_not = does not fit
state_not_planned = not planned
# (day, what)
change_by_days = { $day }, nothing written: { $what }
# (list, cause)
change_because = { $list } ({ $cause })
change_more_causes = { $causes ->
    [one] { $causes } cause more, see outplant ready --since
   *[other] { $causes } causes more, see outplant ready --since
}
change_since_day_before = Since the day before: { $list }.

## passage_: by word

passage_old_enough = it came of age
passage_holding_time = its container's time ended
passage_last_day = its last day passed
passage_hardened = days of hardening, or of its light, passed
passage_leaves_hardened = the new leaves hardened
passage_hold_ended = the hold or the waiting time ended
passage_reading_old = a reading grew too old
passage_work_old = the work grew over
passage_rains = the safe days of the rains are over
passage_rains_began = the rains began
passage_rain_old = the last good rain is too long ago
passage_rain_unknown = the gauge was not read
passage_time = time passed
