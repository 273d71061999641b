//! `species add NAME like SPECIES`: a species of the nursery's own, with the figures of another until better ones are
//! written.

use serde_json::{Value, json};

use super::differs::differing;
use super::made::new_species;
use crate::base::name_search::distance;
use crate::base::text;
use crate::cli::answer::{Ending, said_yes};
use crate::cli::run::{Exit, Run};
use crate::cli::write::write_drafts;
use crate::nursery::species::{Catalogue, Found};

/// Words that a new species is asked for by, and those before the one it is like.
const ADD: [&str; 3] = ["add", "agregar", "nueva"];
const LIKE: [&str; 2] = ["like", "como"];

/// What was asked for: the name, and the species it is like; none where no species is to be added.
pub(super) fn asked(words: &[String]) -> Option<(String, String)> {
    let (first, rest) = words.split_first()?;
    if !ADD.contains(&text::folded(first).as_str()) {
        return None;
    }
    let at = rest.iter().position(|word| LIKE.contains(&text::folded(word).as_str()));
    let (name, like) = rest.split_at(at.unwrap_or(rest.len()));
    Some((name.join(" "), like.get(1..).unwrap_or_default().join(" ")))
}

/// Writes the species, or says what is known by its name or which species may be meant.
pub(super) fn run(run: &Run, name: &str, like: &str) -> Result<Ending, Exit> {
    run.only_today()?;
    if name.is_empty() || like.is_empty() {
        return Err(Exit::refused(run.wording.species_add_how()));
    }
    let mut desk = run.desk_to_write()?;
    let catalogue = desk.fold().site().species.clone();
    // "hule, rubber": the first is the name it goes by, the others are local ones.
    let names: Vec<&str> = name.split(',').map(str::trim).filter(|name| !name.is_empty()).collect();
    let Some(name) = names.first() else { return Err(Exit::refused(run.wording.species_add_how())) };
    for other in &names {
        if let Some(key) = catalogue.find(other) {
            let known = run.wording.species_of(&key, &catalogue);
            return Err(Exit::refused(run.wording.species_add_known(known, *other)));
        }
        agreed_on_name(run, other, &catalogue)?;
    }
    let (like, differs) = apart(like, &catalogue);
    let mut draft = new_species(run, name, Some(&like), &catalogue)?;
    if let Some(Value::Object(profile)) = draft.body.get_mut("profile") {
        if !differs.is_empty() {
            let differs: Vec<&str> = differs.iter().map(String::as_str).collect();
            let read = differing(&differs);
            profile.extend(read.ok_or_else(|| Exit::refused(run.wording.species_add_differs(differs.join(" "))))?);
        }
        if names.len() > 1 {
            profile.insert("names".to_string(), json!({"en": names, "es": names}));
        }
    }
    write_drafts(run, &mut desk, vec![draft], false)
}

/// The species it is like: as many words as name one; and what stands behind.
fn apart(like: &str, catalogue: &Catalogue) -> (String, Vec<String>) {
    let words: Vec<String> = like.split_whitespace().map(str::to_string).collect();
    let names = |taken: &usize| catalogue.resolve(&words[..*taken].join(" ")) != Found::Nothing;
    // What names nothing is refused as it stands.
    let taken = (1..=words.len()).rev().find(names).unwrap_or(words.len());
    (words[..taken].join(" "), words[taken..].to_vec())
}

/// A name a slip or two away from that of a known plant: at a terminal it is asked, without one it is written only where
/// that is agreed to beforehand.
fn agreed_on_name(run: &Run, name: &str, catalogue: &Catalogue) -> Result<(), Exit> {
    /// So many letters away it may be a slip of the pen (ours).
    const MOST_SLIPS: usize = 2;
    let letters = |name: &str| text::folded(name).chars().collect::<Vec<char>>();
    let is_near = |near: &&String| {
        let slips = |one: &str, other: &str| distance(&letters(one), &letters(other));
        let (one, other): (Vec<&str>, Vec<&str>) = (near.split(' ').collect(), name.split(' ').collect());
        // Of several words none is another word: "poró blanco" is no slip for "palo blanco".
        let is_slip = |one: &str, other: &str| slips(one, other) * 5 <= other.chars().count() * MOST_SLIPS;
        let each = one.len() != other.len() || one.iter().zip(&other).all(|(one, other)| is_slip(one, other));
        slips(near, name) <= MOST_SLIPS && each
    };
    let near = catalogue.nearest(name);
    let Some(near) = near.iter().find(is_near).filter(|_| !run.everywhere.yes) else { return Ok(()) };
    let asked = run.wording.species_add_near(name, near);
    if !run.can_ask() {
        return Err(Exit { ending: Ending::Refused, lines: vec![asked, run.wording.remark_if_meant()] });
    }
    run.note(&asked);
    if said_yes(&run.wording.remark_asks()) {
        return Ok(());
    }
    Err(Exit { ending: Ending::Refused, lines: vec![run.wording.nothing_written()] })
}
