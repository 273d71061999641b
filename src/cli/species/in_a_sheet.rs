//! Names of a sheet that nobody knows: said beforehand to be new, or asked about at a terminal.

use std::path::Path;

use super::made::new_species;
use crate::base::SpeciesKey;
use crate::cli::answer::{answered, numbered};
use crate::cli::run::{Exit, Run};
use crate::desk::{NameMeant, NameTaken};
use crate::nursery::species::Catalogue;

/// The names that are said to be new: `NAME`, `NAME like SPECIES`.
pub(crate) fn as_new(run: &Run, said: &[String], species: &Catalogue) -> Result<Vec<NameMeant>, Exit> {
    let one = |text: &String| {
        let words: Vec<&str> = text.split_whitespace().collect();
        let at = words.iter().position(|word| matches!(word.to_lowercase().as_str(), "like" | "como"));
        let (name, like) = words.split_at(at.unwrap_or(words.len()));
        let like = like.get(1..).unwrap_or_default().join(" ");
        made(run, &name.join(" "), Some(like).filter(|like| !like.is_empty()), species)
    };
    said.iter().map(one).collect()
}

fn made(run: &Run, name: &str, like: Option<String>, species: &Catalogue) -> Result<NameMeant, Exit> {
    let entry = new_species(run, name, like.as_deref(), species)?;
    Ok(NameMeant { written: name.to_string(), key: SpeciesKey::new(name), entry: Some(entry) })
}

/// What a person says of each name that nobody knows; nothing where nobody can be asked, or where one is left open.
pub(crate) fn asked(run: &Run, file: &Path, names: &[NameTaken], species: &Catalogue) -> Vec<NameMeant> {
    if !run.can_ask() || run.everywhere.yes || file.as_os_str() == "-" {
        return Vec::new();
    }
    let unknown = names.iter().filter(|name| name.species.is_none());
    let meant: Vec<Option<NameMeant>> = unknown.map(|name| meant_by(run, name, species)).collect();
    meant.into_iter().collect::<Option<Vec<NameMeant>>>().unwrap_or_default()
}

fn meant_by(run: &Run, name: &NameTaken, species: &Catalogue) -> Option<NameMeant> {
    let near: Vec<String> = species.nearest(&name.written);
    run.note(&run.wording.sheet_name_asked(&name.written, name.rows as i64));
    let lines: Vec<String> = near.iter().cloned().chain([run.wording.sheet_name_new()]).collect();
    let at = numbered(&lines, &run.wording.words_ask_which(lines.len() as i64))?;
    if let Some(known) = near.get(at) {
        return Some(NameMeant { written: name.written.clone(), key: species.find(known)?, entry: None });
    }
    /// How often it is asked for where the answer is no species.
    const MOST_ASKED: usize = 3;
    for _ in 0..MOST_ASKED {
        let answer = answered(&run.wording.sheet_name_like(&name.written));
        let like = Some(answer.trim().to_string()).filter(|like| !like.is_empty());
        match made(run, &name.written, like, species) {
            Ok(meant) => return Some(meant),
            Err(exit) => exit.lines.iter().for_each(|line| run.note(line)),
        }
    }
    None
}
