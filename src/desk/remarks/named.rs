//! Places and kinds of container that are new to the book: a slip of the pen makes a second one without a word.

use std::collections::{BTreeMap, BTreeSet};

use crate::base::text::folded;
use crate::base::{ContainerName, PlaceName, TrayCode, name_search};
use crate::desk::judge::Trial;
use crate::desk::names::names_of;
use crate::nursery::entry::shape::{NameOf, Shape};
use crate::nursery::entry::{TrayEntry, What, kind_of_entry};
use crate::nursery::envelope::Draft;
use crate::reckon::Fold;

/// A place or a kind of container that the book does not know.
#[derive(Clone, PartialEq, Debug)]
pub struct NewName {
    /// Whether it is a place.
    pub is_place: bool,
    /// As written.
    pub name: String,
    /// The nearest names of its sort.
    pub nearest: Vec<String>,
}

/// Names by what they are of, each with how it is spelled.
type Names = BTreeMap<NameOf, BTreeMap<String, String>>;

/// Places and containers that nobody described and on or in which nothing stands; of a book that knows none, nothing is
/// asked. Each is asked about once.
pub(super) fn new_names(fold: &Fold, trial: &Trial) -> Vec<(usize, NewName)> {
    let named: Vec<(usize, NameOf, String)> = trial
        .drafts
        .iter()
        .enumerate()
        .flat_map(|(at, draft)| names_in(draft).into_iter().map(move |(name_of, name)| (at, name_of, name)))
        .collect();
    let site = fold.site();
    let is_described = |name_of: NameOf, name: &str| match name_of {
        NameOf::Place => PlaceName::new(name).is_ok_and(|name| site.places.contains_key(&name)),
        _ => ContainerName::new(name).is_ok_and(|name| site.containers.contains_key(&name)),
    };
    if named.iter().all(|(_, name_of, name)| is_described(*name_of, name)) {
        return Vec::new();
    }
    let mut known = known_names(fold);
    let asks: BTreeSet<NameOf> = known.keys().copied().collect();
    for (name_of, name) in trial.drafts.iter().filter_map(described) {
        known.entry(name_of).or_default().insert(folded(&name), name);
    }
    let mut asked = Vec::new();
    for (at, name_of, name) in named {
        let of_sort = known.entry(name_of).or_default();
        let was = of_sort.insert(folded(&name), name.clone());
        if was.is_none() && asks.contains(&name_of) {
            let others = of_sort.values().filter(|other| **other != name).map(String::as_str);
            let nearest = name_search::nearest(&name, others);
            asked.push((at, NewName { is_place: name_of == NameOf::Place, name, nearest }));
        }
    }
    asked
}

/// Every place and kind of container of the book.
pub(in crate::desk) fn known_names(fold: &Fold) -> Names {
    let mut known = Names::new();
    for (name_of, name) in names_of(fold) {
        if matches!(name_of, NameOf::Place | NameOf::Container) {
            known.entry(name_of).or_default().insert(folded(&name), name);
        }
    }
    known
}

/// The place or container that an entry describes.
fn described(draft: &Draft) -> Option<(NameOf, String)> {
    let (name_of, field) = match draft.kind.as_str() {
        "place_set" => (NameOf::Place, "place"),
        "container_set" => (NameOf::Container, "container"),
        _ => return None,
    };
    Some((name_of, draft.body.get(field)?.as_str()?.to_string()))
}

/// The places and containers an entry names without describing them.
fn names_in(draft: &Draft) -> Vec<(NameOf, String)> {
    let Some(known) = kind_of_entry(&draft.kind).filter(|_| described(draft).is_none()) else { return Vec::new() };
    let named = known.fields.iter().filter_map(|field| match field.shape {
        Shape::Code(name_of @ (NameOf::Place | NameOf::Container)) => {
            Some((name_of, draft.body.get(field.name)?.as_str()?.to_string()))
        }
        _ => None,
    });
    named.collect()
}

/// Plants moved on into a new tray of which nobody says in what they stand there.
pub(super) fn no_container(fold: &Fold, trial: &Trial) -> Vec<(usize, TrayCode)> {
    let mut made = BTreeSet::new();
    let mut told = Vec::new();
    for (at, entry) in trial.tried.iter().enumerate() {
        let What::Tray(TrayEntry::MovedOn(moved)) = &entry.what else { continue };
        let stands = fold.trays().get(&moved.to).is_some_and(|story| story.origin.is_some());
        if !stands && made.insert(moved.to.clone()) && moved.container.is_none() {
            told.push((at, moved.to.clone()));
        }
    }
    told
}
