//! Writing: everything of one command, or of one import, in one transaction.

use rusqlite::{Connection, TransactionBehavior};
use serde_json::{Map, Value};
use std::collections::HashMap;

use super::Journal;
use super::device::{self, Head, Hold};
use super::error::JournalError;
use super::kept::lookup;
use super::rows;
use crate::base::{DeviceId, EntryId, Moment};
use crate::nursery::envelope::{Draft, Sealed, canonical};

/// What became of an import.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Taken {
    /// Entries with an identity that were not here before.
    pub added: usize,
    /// Entries with an identity that were here already.
    pub already: usize,
    /// Entries newly written by this device.
    pub written: Vec<Sealed>,
}

/// Fields of the envelope. A body that held one of these would be hashed as if it did not.
const ENVELOPE: [&str; 9] = ["id", "happened", "clock", "recorded", "who", "kind", "command", "prev", "hash"];

impl Journal {
    /// Writes new entries of this device, all or none. `recorded` never goes back on one device. When this returns,
    /// the disk has them.
    pub fn append(&mut self, drafts: &[Draft], recorded: Moment) -> Result<Vec<Sealed>, JournalError> {
        Ok(self.append_sealed(Vec::new(), drafts, recorded)?.written)
    }

    /// Takes entries that have an identity already, checked by hash and contiguity only, and writes new entries of this
    /// device, all or none. The order of `known` makes no difference.
    pub fn append_sealed(
        &mut self,
        known: Vec<Sealed>,
        drafts: &[Draft],
        recorded: Moment,
    ) -> Result<Taken, JournalError> {
        if self.read_only {
            return Err(JournalError::ReadOnly);
        }
        if known.is_empty() && drafts.is_empty() {
            return Ok(Taken::default());
        }
        let Journal { connection, shelf, notes, .. } = self;
        let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let arrived: i64 =
            transaction.query_row("SELECT coalesce(max(arrival), 0) FROM entry", [], |row| row.get(0))?;
        let (added, already) = take_known(&transaction, known)?;
        if drafts.is_empty() {
            lookup::go_on(&transaction, arrived)?;
            transaction.commit()?;
            return Ok(Taken { added, already, written: Vec::new() });
        }
        let hold = shelf.reserve(&transaction, drafts.len() as u64, notes)?;
        let before = hold.head;
        let written = write_drafts(&transaction, &hold, drafts, recorded)
            .and_then(|written| lookup::go_on(&transaction, arrived).map(|()| written))
            .and_then(|written| transaction.commit().map_err(JournalError::from).map(|()| written));
        let (seq, hash) = match written.as_ref().map(|written| written.last()) {
            Ok(Some(last)) => (last.id.seq, Some(last.hash)),
            Ok(None) | Err(_) => (before.seq, before.hash),
        };
        shelf.settle(hold, seq, hash, notes);
        Ok(Taken { added, already, written: written? })
    }

    /// Says how many of these entries would be added and how many are here already, or why they could not be taken. Writes
    /// nothing.
    pub fn try_sealed(&mut self, known: Vec<Sealed>) -> Result<(usize, usize), JournalError> {
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let counted = take_known(&transaction, known);
        transaction.rollback()?;
        counted
    }
}

fn write_drafts(
    connection: &Connection,
    hold: &Hold,
    drafts: &[Draft],
    recorded: Moment,
) -> Result<Vec<Sealed>, JournalError> {
    let recorded = hold.head.recorded.map_or(recorded, |last| last.max(recorded));
    let command = hold.head.seq + 1;
    let mut prev = hold.head.hash;
    let mut written = Vec::with_capacity(drafts.len());
    for (seq, draft) in (command..).zip(drafts) {
        let id = EntryId { device: hold.device.clone(), seq };
        refuse_envelope_fields(&id, &draft.body)?;
        let sealed = draft.seal(id, recorded, command, prev);
        rows::insert(connection, &sealed)?;
        prev = Some(sealed.hash);
        written.push(sealed);
    }
    Ok(written)
}

fn take_known(connection: &Connection, mut known: Vec<Sealed>) -> Result<(usize, usize), JournalError> {
    known.sort_by(|a, b| a.id.cmp(&b.id));
    let mut heads: HashMap<DeviceId, Head> = HashMap::new();
    let (mut added, mut already) = (0, 0);
    for mut sealed in known {
        if sealed.reckoned_hash() != sealed.hash {
            return Err(JournalError::WrongHash { entry: sealed.id });
        }
        let head = match heads.get(&sealed.id.device) {
            Some(head) => *head,
            None => device::head_of(connection, &sealed.id.device)?,
        };
        if sealed.id.seq <= head.seq {
            match device::hash_at(connection, &sealed.id.device, sealed.id.seq)? {
                Some(here) if here == sealed.hash => already += 1,
                Some(_) | None => return Err(JournalError::Fork { entry: sealed.id }),
            }
            heads.insert(sealed.id.device, head);
            continue;
        }
        if sealed.id.seq > head.seq + 1 {
            let (from, to) = (head.seq + 1, sealed.id.seq - 1);
            return Err(JournalError::Gap { device: sealed.id.device, from, to });
        }
        if sealed.prev != head.hash {
            return Err(JournalError::WrongPrevious { entry: sealed.id });
        }
        sealed.body = canonical_body(&sealed)?;
        rows::insert(connection, &sealed)?;
        added += 1;
        let next = Head { seq: sealed.id.seq, hash: Some(sealed.hash), recorded: Some(sealed.recorded) };
        heads.insert(sealed.id.device, next);
    }
    Ok((added, already))
}

/// The body as it is stored. The hash is reckoned over canonical JSON, so another spelling has the same hash.
fn canonical_body(sealed: &Sealed) -> Result<String, JournalError> {
    match serde_json::from_str::<Value>(&sealed.body) {
        Ok(Value::Object(body)) => {
            refuse_envelope_fields(&sealed.id, &body)?;
            Ok(canonical(&Value::Object(body)))
        }
        Ok(_) => Err(JournalError::damaged_at(&sealed.id, "its body is not a JSON object")),
        Err(error) => Err(JournalError::damaged_at(&sealed.id, error)),
    }
}

fn refuse_envelope_fields(id: &EntryId, body: &Map<String, Value>) -> Result<(), JournalError> {
    match ENVELOPE.iter().find(|name| body.contains_key(**name)) {
        Some(name) => Err(JournalError::damaged_at(id, format!("its body holds '{name}', a field of the envelope"))),
        None => Ok(()),
    }
}
