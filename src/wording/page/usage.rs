//! What was typed wrongly, said with what to type.

use crate::wording::messages::messages;

messages! {
    usage_unknown_command(word: text);
    usage_unknown_option(option: text);
    usage_unexpected(word: text);
    usage_needs_value(option: text);
    usage_one_of(value: text, option: text, values: text);
    usage_not_a_day(value: text, option: text);
    usage_not_a_number(value: text, option: text);
    usage_not_an_entry(value: text, option: text);
    usage_bad_name(value: text, option: text);
    usage_missing(arguments: text);
    usage_twice(option: text);
    usage_not_together(option: text, other: text);
    usage_not_readable();
    usage_other();
    usage_more(help: text);
}
