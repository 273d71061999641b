//! The screen Journal.

use crate::wording::messages::messages;

messages! {
    journal_search();
    journal_day();
    journal_what();
    journal_who();
    journal_recorded();
    journal_number();
    journal_taken_back();
    journal_by(entry: text);
    journal_counts();
    journal_none(search: text);
    confirm_waiting_short();
}
