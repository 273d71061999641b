//! What a line of a screen names.

use crate::dashboard::context::ScreenContext;
use crate::nursery::entry::subject::Subject;

/// What a line of a screen names: the longest name of the book that stands in it whole.
pub(crate) fn named_in(line: &str, cx: &ScreenContext<'_>) -> Option<Subject> {
    let picture = &cx.book.picture;
    let trays = picture.trays.keys().map(|code| (code.to_string(), Subject::Tray(code.clone())));
    let beds = picture.beds.keys().map(|name| (name.to_string(), Subject::Bed(name.clone())));
    let lots = picture.lots.keys().map(|code| (code.to_string(), Subject::Lot(code.clone())));
    let places = picture.site.places.keys().map(|name| (name.to_string(), Subject::Place(name.clone())));
    let there = |(name, _): &(String, Subject)| stands_whole(line, name);
    // What a tray is about counts before where it stands.
    let first =
        trays.chain(lots).find(there).or_else(|| beds.chain(places).filter(there).max_by_key(|(name, _)| name.len()));
    first.map(|(_, subject)| subject)
}

fn stands_whole(line: &str, name: &str) -> bool {
    let part_of_a_name = |letter: char| letter.is_alphanumeric() || letter == '-';
    line.match_indices(name).any(|(at, _)| {
        let (before, behind) = (&line[..at], &line[at + name.len()..]);
        !before.ends_with(part_of_a_name) && !behind.starts_with(part_of_a_name)
    })
}
