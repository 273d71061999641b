//! The screen Season.

use crate::wording::Wording;
use crate::wording::messages::messages;

messages! {
    season_rains();
    season_shade();
    season_shade_none();
    season_shade_growing();
    season_shade_useful();
    season_shade_ended();
    season_not_there();
    season_on(day: text, what: text, state: text);
    season_trays_marks(marks: text);
    season_beds_marks(marks: text);
    season_ahead();
    season_months();
}

impl Wording {
    /// Three letters of a month, 1 to 12.
    pub fn month_letters(&self, month: u32) -> String {
        let at = (month as usize).saturating_sub(1);
        self.season_months().split(' ').nth(at).unwrap_or_default().to_string()
    }
}
