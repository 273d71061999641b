//! The screen Going out.

use crate::wording::messages::messages;

messages! {
    fits_heading();
    misses_heading();
    fits_heading_on(day: text);
    misses_heading_on(day: text);
    no_plants();
    items_more(items: count);
    load_heading();
    load_empty();
    load_listed(plants: count);
    load_how_many();
    load_no_bed();
    load_nothing_left();
    load_said(plants: count, tray: text, bed: text);
    load_taken_off(tray: text, bed: text);
    load_number(tray: text, bed: text, plants: count);
    load_number_listed(tray: text, bed: text, plants: count);
    load_room();
    load_line(plants: count, species: text, tray: text);
    load_line_at(plants: count, species: text, tray: text, place: text);
    load_bed_sum(bed: text, plants: count);
    load_sum(lines: count, plants: count);
    load_tray_promised(tray: text, listed: count, plantable: count, standing: count);
    load_bed_promised(bed: text, species: text, listed: count, open: count);
    load_fits_not(tray: text, bed: text, why: text);
    load_warnings(warnings: count);
    load_gone(tray: text, bed: text);
    load_caution();
    load_caution_short();
    load_confirm_hint();
    load_ask(day: text, lines: count, plants: count);
    load_ask_keys();
    pair_fits_well();
    coming_heading(weeks: count);
    coming_none();
    coming_week(first: text, last: text);
    coming_undated();
    coming_tray(tray: text, species: text, standing: count);
    coming_bed(bed: text, species: text, open: count);
}
