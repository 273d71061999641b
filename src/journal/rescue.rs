//! Brings every undamaged entry out of a damaged file: what SQLite can still read, then what lies in the bytes. An entry
//! is undamaged where its hash is that of what it says.

use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use super::carve::Bytes;
use super::check::{self, CheckReport, Fault};
use super::connection;
use super::error::JournalError;
use super::look::LookProgress;
use crate::base::{DeviceId, EntryId};
use crate::nursery::entry::{BookEntry, What, reading};
use crate::nursery::envelope::{Draft, Hash, Sealed};

/// Numbers of a device that nothing undamaged was found of.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Lost {
    /// The device.
    pub device: DeviceId,
    /// The first number.
    pub from: u64,
    /// The last number.
    pub to: u64,
}

/// Entries behind a loss that go on as another device.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Apart {
    /// The first of them, as it was written.
    pub first: EntryId,
    /// The last of them, as it was written.
    pub last: EntryId,
    /// The device they stand under now, from number 1.
    pub now: DeviceId,
}

/// What was brought out of a file.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Rescued {
    /// Every undamaged entry, by device and number.
    pub entries: Vec<Sealed>,
    /// Whether anything was found wrong with the file.
    pub damaged: bool,
    /// What is known to be lost.
    pub lost: Vec<Lost>,
    /// Entries that go on as another device, where that was asked for.
    pub apart: Vec<Apart>,
}

/// Finds every undamaged entry of a file, whole or damaged, and its log. Reads only. `shelf` is the folder beside the
/// settings: its note tells what was saved in this very file, so that a cut end is noticed.
///
/// # Errors
/// Nothing at all can be read, or it was stopped by the one who is told how far it is.
pub fn rescue(path: &Path, shelf: Option<&Path>, told: &mut LookProgress<'_>) -> Result<Rescued, JournalError> {
    connection::refuse_what_is_no_file(path)?;
    let bytes = Bytes::of(path)?;
    let mut found: BTreeMap<EntryId, Sealed> = BTreeMap::new();
    let looked = check::look_through(path, shelf, told, &mut |sealed| {
        found.entry(sealed.id.clone()).or_insert(sealed);
    });
    if let Err(JournalError::Cancelled) = looked {
        return Err(JournalError::Cancelled);
    }
    let is_whole = looked.as_ref().is_ok_and(|report| report.faults.is_empty());
    if !is_whole {
        let mut in_file = BTreeSet::new();
        bytes.entries(told, &mut |sealed, is_log| {
            if !is_log {
                in_file.insert(sealed.id.device.clone());
            }
            found.entry(sealed.id.clone()).or_insert(sealed);
        })?;
        let log_is_foreign = looked.as_ref().is_ok_and(|report| report.faults.contains(&Fault::ForeignLog));
        let strangers = strangers(&found, &in_file, log_is_foreign);
        found.retain(|id, _| !strangers.contains(&id.device));
    }
    let report = match looked {
        Ok(report) => report,
        Err(error @ (JournalError::Busy | JournalError::NotThere(_) | JournalError::Io { .. })) => return Err(error),
        // Whatever stopped SQLite: what lies in the bytes is there.
        Err(error) if found.is_empty() => return Err(error),
        Err(_) => CheckReport::default(),
    };
    let ends = if is_whole { BTreeMap::new() } else { indexed_ends(&bytes, &found, told)? };
    let lost = lost_of(&found, &report.faults, ends);
    Ok(Rescued { entries: found.into_values().collect(), damaged: !is_whole, lost, apart: Vec::new() })
}

/// The last number of each device that the index speaks of. A number far from all others is taken for a damaged one.
fn indexed_ends(
    bytes: &Bytes,
    found: &BTreeMap<EntryId, Sealed>,
    told: &mut LookProgress<'_>,
) -> Result<BTreeMap<DeviceId, u64>, JournalError> {
    const NEAR: u64 = 16;
    let mut ends: BTreeMap<DeviceId, u64> = BTreeMap::new();
    for id in found.keys() {
        ends.insert(id.device.clone(), id.seq);
    }
    let devices: Vec<DeviceId> = ends.keys().cloned().collect();
    let indexed = bytes.indexed(&devices, told)?;
    for (device, end) in &mut ends {
        let Some(numbers) = indexed.get(device) else { continue };
        for seq in numbers.iter().copied() {
            let company = numbers.range(seq.saturating_sub(NEAR)..=seq.saturating_add(NEAR)).count() > 2
                || seq <= end.saturating_add(NEAR);
            *end = if company { seq.max(*end) } else { *end };
        }
    }
    Ok(ends)
}

/// Devices that only the log knows, where it is not the file's own or they do not begin with their first entry: the log of
/// another nursery lies beside the file.
fn strangers(
    found: &BTreeMap<EntryId, Sealed>,
    in_file: &BTreeSet<DeviceId>,
    log_is_foreign: bool,
) -> BTreeSet<DeviceId> {
    let devices: BTreeSet<&DeviceId> = found.keys().map(|id| &id.device).collect();
    let strange = devices.into_iter().filter(|device| {
        let has_first = found.contains_key(&EntryId { device: (*device).clone(), seq: 1 });
        !in_file.contains(*device) && (log_is_foreign || !has_first)
    });
    strange.cloned().collect()
}

fn lost_of(found: &BTreeMap<EntryId, Sealed>, faults: &[Fault], ends: BTreeMap<DeviceId, u64>) -> Vec<Lost> {
    let mut ends = ends;
    let gaps = faults
        .iter()
        .filter_map(|fault| if let Fault::Gap { device, to, .. } = fault { Some((device, *to)) } else { None });
    for (device, end) in found.keys().map(|id| (&id.device, id.seq)).chain(gaps) {
        let known = ends.entry(device.clone()).or_default();
        *known = (*known).max(end);
    }
    let mut lost = Vec::new();
    for (device, end) in &ends {
        let mut expected = 1;
        let first = EntryId { device: device.clone(), seq: 0 };
        for seq in found.range(first..).take_while(|(id, _)| id.device == *device).map(|(id, _)| id.seq) {
            if seq > expected {
                lost.push(Lost { device: device.clone(), from: expected, to: seq - 1 });
            }
            expected = seq + 1;
        }
        if *end >= expected {
            lost.push(Lost { device: device.clone(), from: expected, to: *end });
        }
    }
    // Rows that name themselves, though nothing says whether the name is right.
    for id in faults.iter().filter(|fault| !matches!(fault, Fault::WrongPrevious(_))).filter_map(Fault::entry) {
        let named = lost.iter().any(|one| one.device == id.device && (one.from..=one.to).contains(&id.seq));
        if !named && !found.contains_key(id) {
            lost.push(Lost { device: id.device.clone(), from: id.seq, to: id.seq });
        }
    }
    lost
}

impl Rescued {
    /// The same entries, so that they can be imported where nothing has what is lost: those behind a loss go on as a
    /// device of their own, from number 1, with hashes again. The same file gives the same devices, so that importing
    /// twice changes nothing.
    pub fn without_backup(self) -> Result<Rescued, JournalError> {
        let mut runs = unbroken(self.entries);
        let mut names = names_apart(&runs)?;
        // A withdrawal follows what it takes back under its new name, and so do the entries behind it.
        while split_where_renamed_are_named(&mut runs, &names) {
            names = names_apart(&runs)?;
        }
        let (mut entries, mut apart) = (Vec::new(), Vec::new());
        for run in runs {
            let (Some(first), Some(last)) = (run.first(), run.last()) else { continue };
            match names.get(&first.id) {
                None => entries.extend(run),
                Some(now) => {
                    apart.push(Apart { first: first.id.clone(), last: last.id.clone(), now: now.device.clone() });
                    entries.extend(gone_apart(&run, &names)?);
                }
            }
        }
        Ok(Rescued { entries, damaged: self.damaged, lost: self.lost, apart })
    }
}

/// The entries in runs of one device, each entry following on the one before it.
fn unbroken(entries: Vec<Sealed>) -> Vec<Vec<Sealed>> {
    let mut runs: Vec<Vec<Sealed>> = Vec::new();
    for sealed in entries {
        let before = runs.last().and_then(|run| run.last());
        let goes_on = before.is_some_and(|before| {
            before.id.device == sealed.id.device
                && before.id.seq + 1 == sealed.id.seq
                && sealed.prev == Some(before.hash)
        });
        match runs.last_mut() {
            Some(run) if goes_on => run.push(sealed),
            Some(_) | None => runs.push(vec![sealed]),
        }
    }
    runs
}

/// What each entry that cannot keep its identity is called from now on.
fn names_apart(runs: &[Vec<Sealed>]) -> Result<BTreeMap<EntryId, EntryId>, JournalError> {
    let mut names = BTreeMap::new();
    for run in runs {
        let Some(first) = run.first().filter(|first| first.prev.is_some()) else { continue };
        let device = device_of_run(first)?;
        let renamed = (1..).zip(run).map(|(seq, sealed)| (sealed.id.clone(), EntryId { device: device.clone(), seq }));
        names.extend(renamed);
    }
    Ok(names)
}

/// Named after the hash of the first entry: the same each time.
fn device_of_run(first: &Sealed) -> Result<DeviceId, JournalError> {
    const LETTERS: usize = 12;
    let digits: String = first.hash.to_string().chars().take(LETTERS).collect();
    DeviceId::new(&digits).ok_or_else(|| JournalError::damaged_at(&first.id, "bug: no device can be named after it"))
}

fn split_where_renamed_are_named(runs: &mut Vec<Vec<Sealed>>, names: &BTreeMap<EntryId, EntryId>) -> bool {
    for run in runs.iter_mut() {
        let keeps = run.first().is_some_and(|first| !names.contains_key(&first.id));
        let at = run.iter().position(|sealed| taken_back(sealed).iter().any(|id| names.contains_key(id)));
        // The first entry of a device has none before it: nothing it takes back could have been renamed.
        if let Some(at) = at.filter(|at| keeps && *at > 0) {
            let behind = run.split_off(at);
            runs.push(behind);
            return true;
        }
    }
    false
}

/// The entries that a withdrawal takes back.
fn taken_back(sealed: &Sealed) -> Vec<EntryId> {
    if let Ok(What::Book(BookEntry::Withdrawn(withdrawal))) = reading::read_body(&sealed.kind, &sealed.body) {
        return withdrawal.entries;
    }
    Vec::new()
}

fn gone_apart(run: &[Sealed], names: &BTreeMap<EntryId, EntryId>) -> Result<Vec<Sealed>, JournalError> {
    let mut prev: Option<Hash> = None;
    // Where the first entry of a command is lost, the first that is left leads.
    let mut commands: BTreeMap<u64, u64> = BTreeMap::new();
    let mut anew = Vec::with_capacity(run.len());
    for sealed in run {
        let Some(id) = names.get(&sealed.id).cloned() else { continue };
        let command = *commands.entry(sealed.command).or_insert(id.seq);
        let draft = Draft {
            happened: sealed.happened,
            clock: sealed.clock,
            who: sealed.who.clone(),
            kind: sealed.kind.clone(),
            body: renamed(sealed, names)?,
        };
        let sealed = draft.seal(id, sealed.recorded, command, prev);
        prev = Some(sealed.hash);
        anew.push(sealed);
    }
    Ok(anew)
}

/// The body of an entry, what it takes back under its new name.
fn renamed(sealed: &Sealed, names: &BTreeMap<EntryId, EntryId>) -> Result<Map<String, Value>, JournalError> {
    let mut body: Map<String, Value> =
        serde_json::from_str(&sealed.body).map_err(|error| JournalError::damaged_at(&sealed.id, error))?;
    let taken = taken_back(sealed);
    if !taken.is_empty() {
        let now = taken.iter().map(|id| Value::from(names.get(id).unwrap_or(id).to_string())).collect();
        body.insert("entries".into(), now);
    }
    Ok(body)
}
