### Where rules come from. Names of publications stay as they are.

source_collar = collar at least max(floor, height / 8), after Jaenicke 1999, from memory; floor: { $floor }
source_light_readings = { $band }; readings under { $READING_LASTS_DAYS } days old, newer ones weigh more, none from before the last great cut or loss (ours)
source_ground_work = { $days ->
    [one] ours, common practice: what is not written down is not done, and it counts for { $days } day
   *[other] ours, common practice: what is not written down is not done, and it counts for { $days } days
}

## source_: by word

source_common_practice = common practice
source_load = a load is { $LOAD_PLANTS } plants, or all that stand where fewer do (ours, common practice)
source_light_step = light of the bed beside the light of the tray in its last { $LAST_LIGHT_DAYS } days: more than { $LARGE_STEP } of full light and { $LARGE_STEP_RATIO } times as bright burns, and so does more than { $STEEP_RATIO } times with more than { $SMALL_STEP }; above { $FITS_UP_TO } times take care (ours; no publication gives a safe number)
source_waiting_time = the waiting time written down with the treatment; the label and local rules lead
source_flush = common practice: new leaves take 2-3 weeks to harden
source_last_day_taken = nobody wrote how long they keep: taken as { $BARE_ROOTS_KEEP_DAYS } days, { $HEELED_IN_KEEP_DAYS } where heeled in cool and moist (from memory: Jaenicke 1999, Good tree nursery practices, ICRAF); look at the roots
source_last_day_written = the last day written down when they came: common practice
source_hardening = 3-4 weeks: Malawi moringa guide; 4-6 weeks: Tearfund, Pillars guide F14; held back below { $HARDENING_LEAST_DAYS } days, the last step { $LAST_STEP_DAYS } days old: ours, common practice
source_holding = the species' most days, scaled by the cube root of the container's volume (ours, common practice; related: Poorter et al. 2012, Functional Plant Biology 39:839); a plug check overrules
source_nurse_days = ours: { $NURSE_AFTER_EMERGENCE_DAYS } days after the last of the seed or the shoots is due
source_grafted_height = the species' least height; grafts and buds leave at 60 to { $GRAFTED_MOST_CM } cm (Nakasone & Paull 1998, Tropical Fruits, from memory)
source_plug = common practice: a plug that holds with white tips is ready, one that crumbles is too early
source_root_limit = Bengough et al. 2011, Journal of Experimental Botany 62:59
source_rod = Bengough et al. 2011, Journal of Experimental Botany 62:59; push over the area of the rod's tip, common practice
source_tuber_shape = common practice: a tuber pinched thin tells of hard ground
source_tubers_lifted = common practice: lifting tubers loosens the ground to about 0.4 m; counted for two wet seasons, or a year where no rains are described (ours)
source_safe_rains = common practice: planted by the end of the usual rains less 8 weeks, or less half of short rains
source_written_here = as written by this nursery
source_rain = ours, with the rain by which Sivakumar 1988 dates the start of the rains (Agricultural and Forest Meteorology 42:295, from memory); a day without a gauge line is unknown, never dry
source_usual_rains = no gauge was read for { $NO_GAUGE_DAYS } days: the season's usual rains (ours, common practice)
source_light_to_come = ours: needs a model of the nurse plants' light, which is still to come
source_positions = common practice: positions of the bed's grid, both edges counted, less blocked spots and living plants
source_no_figure = the profile of the species, which does not say
source_counting = common practice: every 1-2 days until half is up, then every 3-4; every { $COUNT_EVERY_DAYS } days later, { $COUNT_NEAR_EVERY_DAYS } when it hardens or is ready, { $COUNT_SICK_EVERY_DAYS } while it is sick (ours)
source_sow_again = ours: at the half day less than { $POOR_EMERGENCE_SHARE } % of what was expected is up (common practice); the last day of sowing is the last safe day of the rains less the usual days to planting out
source_stop_waiting = common practice: past the species' last day and nothing new for { $NOTHING_NEW_DAYS } days or a quarter of the days to half emergence
source_prick_out = the species' sowing place; common practice: at 2 cotyledons to 2 true leaves, about 3 weeks after half are up
source_pot_on = common practice: pot on into 2-3 times the volume, prune the roots, or cull; holding time as for the days in the bag
source_grading = height over collar above { $LANKY_ABOVE }: set apart, above { $CULL_LANKY_ABOVE }: cull (common practice; Jaenicke 1999, from memory)
source_measuring = common practice: { $SAMPLE_PLANTS } plants monthly near planting out, every k-th cell with the edges
source_lift_plug = common practice: lift one plug near planting out and near the end of the holding time
source_steps = the species' hardening template; a step every 7-10 days, up to { $FITS_UP_TO } times as bright fits; at most { $LARGE_STEP } of full light in one step, and { $STEEP_RATIO } times where it is dark (ours)
source_treatment_over = the waiting time written down with the treatment
source_seed_test = common practice: 2 x 25 seeds before a lot is relied on; every { $TEST_AFTER_DAYS } days (ours)
source_seed_life_kept = ours: the species' days at room temperature, longer where seed that can be dried is sealed or cold, shorter where seed that dies when dried lies dry
source_seed_life = the species' storage days for the way it is kept
source_ground_ahead = common practice: cleared and dug in the 6 weeks before planting, weeded and mulched in the last 2
source_rings = common practice: rings weeded every 4 weeks in months 1-6
source_nurses = ours: a nurse plant's crown changes in two months
source_light_ahead = common practice: light is checked 3 months before planting; a reading lasts { $READING_LASTS_DAYS } days (ours)
source_soil_ahead = common practice: the rod at field capacity before planting; Bengough et al. 2011 for the limit
source_survival = common practice: at 1, 3, 6 and 12 months; Evans & Turnbull 2004, from memory
source_going_out = ours: nothing blocks the pair of tray and bed; before the holding time and the safe rains end
source_gauge = common practice: read every morning
