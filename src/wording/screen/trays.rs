//! The screen Trays.

use crate::wording::messages::messages;

messages! {
    trays_group(name: text, trays: count, plants: text);
    trays_column_tray();
    trays_column_species();
    trays_column_age();
    trays_now();
    trays_sorted(column: text);
    trays_empty_hidden(trays: count);
    trays_all_empty(trays: count);
    trays_none_fits(written: text);
    trays_only();
    trays_filter_typing();
    trays_filter_kept();
    trays_verdict_empty();
    trays_verdict_ready(plants: text);
    trays_verdict_ready_before(plants: text, day: text);
    trays_verdict_overdue(reason: text);
    trays_verdict_not(reason: text);
    trays_verdict_not_before(day: text, reason: text);
    trays_verdict_waits();
    trays_failing(up: count, seeds: count);
    trays_failing_sow_by(up: count, seeds: count, day: text);
    trays_counted(plants: text, day: text);
    trays_never_counted(plants: text);
    trays_light(light: text);
    trays_label_container();
    trays_in_container(container: text, days: text);
    trays_label_sown();
    trays_sown(day: text, age: text);
    trays_sown_from(day: text, age: text, lots: text);
    trays_reasons();
    trays_where_to();
    trays_fits(bed: text, plants: text);
    trays_bed_waits(bed: text, positions: count);
    trays_more_beds(beds: count);
    trays_expected();
    trays_not_before(day: text);
    trays_label_up();
    trays_up_of(seedlings: count, seeds: text);
    trays_came_up();
    trays_stood();
    trays_heights();
    trays_legend_forecast(day: text);
    trays_legend_growth(low: text, high: text);
    trays_legend_counted();
    trays_legend_heights(low: text, high: text);
    trays_legend_heights_only();
    trays_sown_on(day: text);
    trays_day(day: count);
    trays_history();
    trays_more_below(lines: count);
    trays_back_above();
}
