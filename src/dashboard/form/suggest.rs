//! What a form offers beside a field: names of the book that fit what is typed, and for causes those used most.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::field::FieldLine;
use crate::base::text::folded;
use crate::base::{BedName, PlaceName, SpeciesKey, TrayCode};
use crate::dashboard::context::ScreenContext;
use crate::nursery::cause::Cause;
use crate::nursery::entry::shape::{NameOf, Shape};
use crate::reckon::picture::{Picture, Stage, TrayPicture};
use crate::reckon::round::stop::handled::nurses;
use crate::reckon::seed::lots_to_sow;

/// The most names offered.
const MOST: usize = 6;
/// What the other fields of the form hold, by name.
pub(crate) type Others<'a> = &'a dyn Fn(&str) -> Option<String>;

/// The names to offer for a field of a form; what the other fields hold says which come first.
pub(crate) fn picks(line: &FieldLine, kind: &str, others: Others<'_>, cx: &ScreenContext<'_>) -> Vec<String> {
    let typed = line.typed.text();
    let all = all_names(line, kind, others, cx);
    match line.field.shape {
        Shape::Text if line.is_open() => all.into_iter().take(MOST).collect(),
        _ => fitting(&typed, all),
    }
}

/// The only name that is meant by what is typed: none where that is a name itself, or where a new one may be written.
pub(crate) fn only_one_meant(line: &FieldLine, kind: &str, others: Others<'_>, cx: &ScreenContext<'_>) -> Vec<String> {
    let typed = folded(&line.typed.text());
    let all = all_names(line, kind, others, cx);
    if line.is_open() || may_be_new(line.field.name, kind) || all.iter().any(|name| folded(name) == typed) {
        return Vec::new();
    }
    fitting(&typed, all)
}

/// Whether something that a field can name is called so.
pub(crate) fn is_named(line: &FieldLine, kind: &str, others: Others<'_>, name: &str, cx: &ScreenContext<'_>) -> bool {
    let wanted = folded(name);
    all_names(line, kind, others, cx).iter().any(|known| folded(known) == wanted)
}

fn all_names(line: &FieldLine, kind: &str, others: Others<'_>, cx: &ScreenContext<'_>) -> Vec<String> {
    match line.field.shape {
        Shape::Code(_) if is_new(line.field.name, kind) => Vec::new(),
        Shape::Code(name_of) => names(name_of, (kind, line.field.name), others, cx),
        Shape::Species => species_for(kind, others, &cx.book.picture).iter().map(|key| cx.species(Some(key))).collect(),
        Shape::Text if matches!(line.field.name, "cause" | "why" | "with" | "what" | "causes") => {
            most_used(line.field.name, kind, cx)
        }
        Shape::Text
        | Shape::Count
        | Shape::Number { .. }
        | Shape::Flag
        | Shape::Day
        | Shape::MonthDay
        | Shape::Clock
        | Shape::Word(_)
        | Shape::Spot
        | Shape::Entry
        | Shape::List(_)
        | Shape::Record(_)
        | Shape::Open => Vec::new(),
    }
}

/// Every species, or of a bed its nurse plants: first those that are meant where the entry goes (what a bed is planned for), then
/// those that stand in the nursery.
fn species_for<'a>(kind: &str, others: Others<'_>, picture: &'a Picture) -> Vec<&'a SpeciesKey> {
    let bed = others("bed").and_then(|bed| picture.beds.get(&BedName::new(&bed).ok()?));
    let of_bed: Vec<SpeciesKey> = match bed {
        Some(bed) if matches!(kind, "nurse_counted" | "nurse_measured" | "nurse_cut") => nurses(bed),
        Some(bed) if kind != "nurse_planted" => bed.species.iter().map(|line| line.species.clone()).collect(),
        Some(_) | None => Vec::new(),
    };
    // Of nurse plants only those that live there can be counted, measured or cut.
    if matches!(kind, "nurse_counted" | "nurse_measured" | "nurse_cut") && !of_bed.is_empty() {
        let known = picture.site.species.iter().map(|(key, _)| key);
        let mut there: Vec<&SpeciesKey> = known.filter(|key| of_bed.contains(key)).collect();
        there.sort_by_key(|key| of_bed.iter().position(|of| of == *key));
        return there;
    }
    let standing: BTreeSet<&SpeciesKey> = picture
        .trays
        .values()
        .filter(|tray| tray.standing > 0 || tray.seed > 0)
        .filter_map(|tray| tray.species.as_ref())
        .collect();
    let mut all: Vec<&SpeciesKey> = picture.site.species.iter().map(|(key, _)| key).collect();
    all.sort_by_key(|key| (of_bed.iter().position(|of| of == *key).unwrap_or(usize::MAX), !standing.contains(key)));
    all
}

/// Whether a field takes the name of something the entry makes: no name of the book fits.
fn is_new(field: &str, kind: &str) -> bool {
    matches!(
        (kind, field),
        ("sown" | "plants_received" | "relabelled", "tray") | ("lot_received", "lot") | ("bed_set", "bed")
    )
}

/// Whether a field may name something new beside what the book has.
pub(crate) fn may_be_new(field: &str, kind: &str) -> bool {
    is_new(field, kind)
        || matches!(
            (kind, field),
            ("moved_on", "to")
                | ("place_set", "place")
                | ("container_set", "container")
                | ("field_set" | "bed_set", "field")
                | ("species_set", "species")
        )
}

/// Every name of one sort in the book that can be meant, the likeliest first.
fn names(name_of: NameOf, field: (&str, &str), others: Others<'_>, cx: &ScreenContext<'_>) -> Vec<String> {
    let picture = &cx.book.picture;
    let tray_of = |name: &str| others(name).and_then(|code| picture.trays.get(&TrayCode::new(&code).ok()?));
    match name_of {
        NameOf::Tray => {
            let from = tray_of("from").filter(|_| field == ("moved_on", "to"));
            let living = picture.trays.values().filter(|tray| tray.stage != Stage::Spent);
            // Plants of another species cannot go into the same tray.
            let fits = |tray: &&Arc<TrayPicture>| {
                from.is_none_or(|from| tray.species == from.species && tray.code != from.code)
            };
            living.filter(fits).map(|tray| tray.code.to_string()).collect()
        }
        NameOf::Lot => {
            let typed = || picture.site.species.find(&others("species")?);
            let wanted = tray_of("tray").and_then(|tray| tray.species.clone()).or_else(typed);
            let lots = match wanted {
                Some(wanted) => lots_to_sow(&wanted, picture),
                None => {
                    let mut lots: Vec<_> = picture.lots.values().collect();
                    lots.sort_by_key(|lot| lot.seeds_left == Some(0));
                    lots
                }
            };
            lots.iter().map(|lot| lot.code.to_string()).collect()
        }
        NameOf::Bed => beds_for(tray_of("tray"), picture),
        NameOf::Field => {
            let mut fields: Vec<String> = picture.beds.values().map(|bed| bed.field.to_string()).collect();
            fields.dedup();
            fields
        }
        NameOf::Place => match tray_of("tray").filter(|_| field == ("carried", "place")) {
            Some(tray) => places_for(tray, picture).into_iter().map(ToString::to_string).collect(),
            None => picture.site.places.keys().map(ToString::to_string).collect(),
        },
        NameOf::Container => picture.site.containers.keys().map(ToString::to_string).collect(),
    }
}

/// Places a tray can be carried to: those a step brighter than where it stands first, the nearest before the brightest.
pub(super) fn places_for<'a>(tray: &TrayPicture, picture: &'a Picture) -> Vec<&'a PlaceName> {
    let mut places: Vec<&PlaceName> =
        picture.site.places.keys().filter(|name| tray.place.as_ref() != Some(*name)).collect();
    places.sort_by(|a, b| {
        let (a, b) = (brighter_by(tray, a, picture), brighter_by(tray, b, picture));
        match (a, b) {
            (Some(a), Some(b)) => a.total_cmp(&b),
            _ => b.is_some().cmp(&a.is_some()),
        }
    });
    places
}

/// By how much a place is brighter than where a tray stands, as a share of the open light; none where it is not, or nobody knows.
pub(super) fn brighter_by(tray: &TrayPicture, place: &PlaceName, picture: &Picture) -> Option<f64> {
    let light = |name: &PlaceName| {
        let change = picture.places.get(name)?.light_on(picture.day)?;
        change.read.or(change.nominal)
    };
    let here = tray.light_share.or_else(|| light(tray.place.as_ref()?))?;
    Some(light(place)? - here).filter(|more| *more > 0.0)
}

/// Beds: those a tray fits first, best first, then those that plan its species.
fn beds_for(tray: Option<&Arc<TrayPicture>>, picture: &Picture) -> Vec<String> {
    let mut beds: Vec<&BedName> = picture.beds.keys().collect();
    if let Some(tray) = tray {
        let fits: Vec<&BedName> =
            picture.pairs.of(&tray.code).iter().filter(|pair| pair.fits).map(|pair| pair.bed()).collect();
        let plans = |bed: &BedName| {
            let lines = picture.beds.get(bed).map(|bed| bed.species.as_slice()).unwrap_or_default();
            lines.iter().any(|line| Some(&line.species) == tray.species.as_ref())
        };
        beds.sort_by_key(|bed| (fits.iter().position(|other| other == bed).unwrap_or(usize::MAX), !plans(bed)));
    }
    beds.into_iter().map(ToString::to_string).collect()
}

/// Names that hold what is typed, those that begin with it first; accents and case do not count. Their order stays.
fn fitting(typed: &str, names: Vec<String>) -> Vec<String> {
    let wanted = folded(typed);
    let fits = |name: &String| folded(name).contains(&wanted) && folded(name) != wanted;
    let mut all: Vec<String> = Vec::new();
    for name in names.into_iter().filter(fits) {
        if !all.contains(&name) {
            all.push(name);
        }
    }
    all.sort_by_key(|name| !folded(name).starts_with(&wanted));
    all.truncate(MOST);
    all
}

/// Words used for a field before, those used most first, then those to begin with.
fn most_used(field: &str, kind: &str, cx: &ScreenContext<'_>) -> Vec<String> {
    let mut used: BTreeMap<String, u64> = BTreeMap::new();
    for tray in cx.book.picture.trays.values() {
        let accounts = &tray.story.accounts;
        let written = match (kind, field) {
            ("lost", "cause") => &accounts.lost,
            ("culled", "why") => &accounts.culled,
            _ => continue,
        };
        for (word, count) in written {
            *used.entry(cx.wording.cause_told(word)).or_default() += *count;
        }
    }
    let mut by_use: Vec<(u64, String)> = used.into_iter().map(|(cause, count)| (count, cause)).collect();
    by_use.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
    let mut words: Vec<String> = by_use.into_iter().map(|(_, word)| word).collect();
    let first: &[Cause] = match kind {
        "lost" | "plants_lost" => &Cause::FIRST_LOSSES,
        "culled" => &Cause::FIRST_CULLS,
        _ => &[],
    };
    for word in first.iter().map(|cause| cx.wording.cause_name(*cause)) {
        if !words.iter().any(|known| folded(known) == folded(&word)) {
            words.push(word);
        }
    }
    words
}
