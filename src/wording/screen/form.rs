//! Forms.

use crate::wording::messages::messages;

messages! {
    form_day();
    form_today();
    form_optional();
    form_rows(rows: count);
    form_row_hint(fields: text);
    form_list_hint();
    form_count_hint();
    form_number_hint(least: text, most: text);
    form_number_hint_least(least: text);
    form_day_hint();
    form_month_day_hint();
    form_choice_hint();
    form_text_hint();
    form_open_hint();
    form_spot_hint();
    form_missing(field: text);
    form_effect();
    form_keys();
    form_keys_short();
    form_sample(measured: count, mean: text);
    form_sample_more(more: count);
    form_sample_enough();
    form_pick_digit();
    form_most_used();
    form_picks(list: text);
    form_is_kept();
    caution_shown(text: text);
}
