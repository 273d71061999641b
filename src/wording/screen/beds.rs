//! The screen Beds.

use crate::wording::messages::messages;

messages! {
    beds_bed();
    beds_species();
    beds_standing();
    beds_open();
    beds_light();
    beds_missing();
    beds_nothing();
    bed_size(length: text, width: text);
    bed_size_bearing(length: text, width: text, degrees: text);
    bed_ready_for();
    plan_heading(species: text);
    plan_none();
    plan_scale(column: text, line: text);
    plan_part(begin: text, end: text, length: text);
    plan_thinned();
    plan_hidden(species: text);
    plan_living(species: text, plants: count);
    plan_dead(plants: count);
    plan_open(positions: count);
    plan_blocked(positions: count);
    plan_unsaid(living: count, places: count);
    plan_unsaid_rows(rows: text, living: count, places: count);
    plan_other(species: text, living: count, positions: count);
    plan_nurse_all(nurse: text, planted: count);
    plan_nurse_some(nurse: text, planted: count, alive: count);
    plan_nurse_elsewhere(nurse: text, alive: count);
    light_heading();
    light_old(light: text, day: text);
    light_row(light: text, day: text);
    light_legend();
    nurses_heading();
    nurse_line(nurse: text, alive: count, planted: count, age: text);
    nurse_counted(day: text);
    nurse_shades_from(day: text);
    nurse_shades_since(day: text);
    nurse_ends(day: text);
    nurse_past_end(day: text);
    nurses_gone(nurses: text);
    survival_heading();
    survival_from_tray(species: text, tray: text, day: text, planted: count, living: count);
    survival_at_stake(species: text, day: text, planted: count, living: count);
    survival_found(species: text, day: text, planted: count, living: count);
    survival_rows(rows: text);
    survival_count(months: count, alive: count, share: text);
    survival_with_others();
    survival_not_counted();
}
