//! Weather, notes and withdrawals in a sentence.

use crate::nursery::entry::BookEntry;
use crate::wording::{Wording, theme};

/// Entries named in a sentence about a withdrawal; the rest are counted.
const ENTRIES_NAMED: usize = 3;

impl Wording {
    pub(super) fn book_sentence(&self, entry: &BookEntry) -> String {
        match entry {
            BookEntry::Weather(weather) => {
                let rain = weather.rain_mm.map(|rain| self.part_rain(self.number(rain.0, 2)));
                let [tmin, tmax] = [weather.tmin_c, weather.tmax_c].map(|t| t.map(|t| self.number(t.0, 2)));
                let heat = match (tmin, tmax) {
                    (Some(tmin), Some(tmax)) => Some(self.part_tmin_tmax(tmin, tmax)),
                    (Some(tmin), None) => Some(self.part_tmin(tmin)),
                    (None, Some(tmax)) => Some(self.part_tmax(tmax)),
                    (None, None) => None,
                };
                let parts: Vec<String> = [rain, heat].into_iter().flatten().collect();
                format!("{}: {}", self.entry_weather(), if parts.is_empty() { "-".into() } else { parts.join(", ") })
            }
            BookEntry::Noted(note) => match &note.about {
                Some(about) => self.entry_noted_about(&about.0, &note.text.0),
                None => self.entry_noted(&note.text.0),
            },
            BookEntry::Settled(settled) => {
                let what = self.of_word(theme::ALARM, settled.what);
                match &settled.of {
                    Some(of) => self.entry_settled_of(what, &of.0),
                    None => self.entry_settled(what),
                }
            }
            BookEntry::Withdrawn(withdrawal) => {
                let entries = &withdrawal.entries;
                let mut list: Vec<String> = entries.iter().take(ENTRIES_NAMED).map(ToString::to_string).collect();
                if entries.len() > ENTRIES_NAMED {
                    list.push(self.change_more((entries.len() - ENTRIES_NAMED) as i64));
                }
                self.entry_withdrawn(entries.len() as i64, list.join(" "), &withdrawal.why.0)
            }
        }
    }
}
