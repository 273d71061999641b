//! Rows of a page in columns, or as lines where the page is too narrow for them.

use super::page_text::Face;
use super::sheet::Ink;
use crate::base::columns::{left_aligned, right_aligned, shortened, width_of};
use crate::page::rows::{Named, Offer, TrayRow};

/// The narrowest page that gets columns; below it each row takes two lines.
const WIDE: usize = 60;
/// The fewest columns a species' name is shortened to.
const LEAST_NAME: usize = 8;
/// The most columns of a species' name in front of a reason.
const MOST_NAME: usize = 18;
/// Columns that a reason needs behind a tray.
const LEAST_REASON: usize = 34;

impl Face<'_> {
    /// Trays that can go, with their beds under each other.
    pub(super) fn offers(&mut self, offers: &[Offer]) {
        let Some(columns) = OfferColumns::of(offers, self.sheet.width()) else {
            offers.iter().flat_map(Offer::lines).for_each(|line| self.line(&line));
            return;
        };
        for offer in offers {
            for (number, (plants, bed)) in offer.to.iter().enumerate() {
                let (beginning, rest) = columns.line(offer, number == 0, plants, bed);
                self.sheet.hanging(&beginning, Ink::Ready, &rest, Ink::Plain);
            }
            offer.care_line().iter().for_each(|line| self.line(line));
        }
    }

    /// Trays under their headings: mark, code, species, number standing, and a text that folds under itself.
    pub(super) fn trays(&mut self, groups: &[(Option<String>, Vec<TrayRow>)]) {
        let all = || groups.iter().flat_map(|(_, rows)| rows);
        let code_room = all().map(|row| width_of(&row.tray)).max().unwrap_or(0);
        let number_room = all().map(|row| row.standing.to_string().len()).max().unwrap_or(0);
        let width = self.sheet.width();
        let is_wide = width >= WIDE && code_room + number_room + MOST_NAME + LEAST_REASON <= width;
        for (heading, rows) in groups {
            heading.iter().for_each(|heading| self.sheet.indented(2, heading, Ink::Bold));
            for row in rows {
                if !is_wide {
                    row.lines().iter().for_each(|line| self.line(line));
                    continue;
                }
                let (mark, ink) = self.mark(Some(&row.mark));
                let name = left_aligned(&shortened(&row.species, MOST_NAME), MOST_NAME);
                let code = left_aligned(&row.tray, code_room);
                let standing = right_aligned(&row.standing.to_string(), number_room);
                self.sheet.hanging(&format!("{mark}{code}  {name}  {standing}  "), ink, &row.text, Ink::Plain);
            }
        }
    }

    /// Names with what is said of each.
    pub(super) fn named(&mut self, rows: &[Named]) {
        let room = rows.iter().map(|row| width_of(&row.name)).max().unwrap_or(0).min(MOST_NAME);
        for row in rows {
            let (mark, ink) = self.mark(Some(&row.mark));
            let name = left_aligned(&shortened(&row.name, room), room);
            self.sheet.hanging(&format!("  {mark}{name}  "), ink, &row.text, Ink::Plain);
        }
    }
}

/// The columns of trays that can go; none where the page is too narrow for them.
struct OfferColumns {
    tray: usize,
    species: usize,
    plants: usize,
    bed: usize,
}

impl OfferColumns {
    fn of(offers: &[Offer], width: usize) -> Option<OfferColumns> {
        let widest = |part: fn(&Offer) -> &str| offers.iter().map(|offer| width_of(part(offer))).max().unwrap_or(0);
        let (tray, before) = (widest(|offer| &offer.tray), widest(|offer| &offer.before));
        let to = || offers.iter().flat_map(|offer| &offer.to);
        let plants = to().map(|(plants, _)| width_of(plants)).max().unwrap_or(0);
        let bed = to().map(|(_, bed)| width_of(bed)).max().unwrap_or(0);
        // Mark and blank, then the gaps between columns with the arrow before the bed.
        let taken = 2 + tray + 2 + 2 + plants + 3 + bed + 2 + before;
        let species = width.checked_sub(taken)?.min(widest(|offer| &offer.species));
        (width >= WIDE && species >= LEAST_NAME).then_some(OfferColumns { tray, species, plants, bed })
    }

    /// What stands before and behind the tray's name.
    fn line(&self, offer: &Offer, is_first: bool, plants: &str, bed: &str) -> (String, String) {
        let plants = right_aligned(plants, self.plants);
        if !is_first {
            let blanks = 2 + self.tray + 2 + self.species + 2;
            return (String::new(), format!("{}{plants} → {bed}", " ".repeat(blanks)));
        }
        let species = left_aligned(&shortened(&offer.species, self.species), self.species);
        let rest = format!("{species}  {plants} → {}  {}", left_aligned(bed, self.bed), offer.before);
        (format!("+ {}  ", left_aligned(&offer.tray, self.tray)), rest)
    }
}
