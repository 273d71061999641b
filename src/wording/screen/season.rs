//! The screen Season.

use crate::wording::Wording;

impl Wording {
    /// Three letters of a month, 1 to 12.
    pub(crate) fn month_letters(&self, month: u32) -> String {
        let at = (month as usize).saturating_sub(1);
        self.season_months().split(' ').nth(at).unwrap_or_default().to_string()
    }
}
