//! Writing: everything of one command, or of one import, in one transaction.

mod intake;

pub use intake::{Intake, IntakeProgress, Step, Unfit};

use rusqlite::{Connection, params};
use serde_json::{Map, Value};
use std::ops::ControlFlow;

use super::Journal;
use super::device::{self, Head};
use super::error::JournalError;
use super::kept::lookup;
use super::rows;
use crate::base::{DeviceId, EntryId, Moment};
use crate::nursery::envelope::{Draft, Sealed};

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
        if known.is_empty() && drafts.is_empty() {
            return Ok(Taken::default());
        }
        let mut intake = self.begin_intake()?;
        if let Err(fault) = self.put_all(&mut intake, known) {
            self.let_go(intake);
            return Err(fault);
        }
        let (added, already) = intake.counted();
        let mut written = Vec::with_capacity(drafts.len());
        let new = New { drafts: &mut drafts.iter().cloned(), recorded, written: &mut |sealed| written.push(sealed) };
        let mut on = |_| ControlFlow::Continue(());
        match self.write_new(&mut intake, new, &mut on) {
            Ok(_) => self.keep(intake, &mut on)?,
            Err(fault) => {
                self.let_go(intake);
                return Err(fault);
            }
        }
        Ok(Taken { added, already, written })
    }

    fn put_all(&self, intake: &mut Intake, known: Vec<Sealed>) -> Result<(), JournalError> {
        for (i, sealed) in known.into_iter().enumerate() {
            intake.put(self, i + 1, sealed)?;
        }
        intake.settle(self, true)?;
        intake.first_fault().map_or(Ok(()), Err)
    }

    /// Writes new entries of this device behind what came in; says as whom, and the number of the first.
    pub(crate) fn write_new(
        &mut self,
        intake: &mut Intake,
        new: New<'_>,
        told: &mut IntakeProgress<'_>,
    ) -> Result<Option<EntryId>, JournalError> {
        let Journal { connection, shelf, notes, .. } = self;
        if new.drafts.len() == 0 {
            return Ok(None);
        }
        let reservation = shelf.reserve(connection, new.drafts.len() as u64, notes)?;
        let (device, head) = (reservation.device.clone(), reservation.head);
        let last = write_drafts(connection, &device, head, new, told)
            .and_then(|last| refuse_unwritten(connection, &device, head, last).map(|()| last));
        intake.reserved(reservation, last.as_ref().map_or(head, |last| *last));
        last.map(|_| Some(EntryId { device, seq: head.seq + 1 }))
    }

    /// The same only to look at it: no number is reserved, as an intake that is let go needs none.
    pub(crate) fn try_new(
        &mut self,
        _intake: &mut Intake,
        device: &DeviceId,
        new: New<'_>,
        told: &mut IntakeProgress<'_>,
    ) -> Result<Option<EntryId>, JournalError> {
        if new.drafts.len() == 0 {
            return Ok(None);
        }
        let head = device::head_of(&self.connection, device)?;
        write_drafts(&self.connection, device, head, new, told)?;
        Ok(Some(EntryId { device: device.clone(), seq: head.seq + 1 }))
    }

    /// Lets everything that came in be looked up, still inside the transaction; where the lookup lagged behind before, only
    /// if `behind_too`.
    pub(crate) fn look_up_intake(
        &mut self,
        intake: &Intake,
        behind_too: bool,
        told: &mut IntakeProgress<'_>,
    ) -> Result<(), JournalError> {
        let from = if behind_too { 0 } else { intake.arrived_before() };
        lookup::go_on(&self.connection, from, &mut |done| go_on_unless(told(Step::LookedUp(done))))
    }

    /// Makes all that came in one piece of the file: when this returns, the disk has it. Where it fails or is told to stop,
    /// nothing is left of it.
    pub fn keep(&mut self, mut intake: Intake, told: &mut IntakeProgress<'_>) -> Result<(), JournalError> {
        let kept = self
            .look_up_intake(&intake, false, told)
            .and_then(|()| go_on_unless(told(Step::Saving)))
            .and_then(|()| self.connection.execute_batch("COMMIT").map_err(JournalError::from));
        if kept.is_ok() {
            intake.is_kept();
        }
        // What was kept is no longer open: then this only puts the settings back.
        self.let_go(intake);
        kept.and_then(|()| self.refuse_what_was_taken_away())
    }
}

/// New entries of this device.
pub(crate) struct New<'n> {
    /// What they say.
    pub drafts: &'n mut dyn ExactSizeIterator<Item = Draft>,
    /// The moment at which they are recorded; it never goes back on one device.
    pub recorded: Moment,
    /// Is given each as it was written.
    pub written: &'n mut dyn FnMut(Sealed),
}

fn go_on_unless(said: ControlFlow<()>) -> Result<(), JournalError> {
    if said.is_break() { Err(JournalError::Cancelled) } else { Ok(()) }
}

/// Writes drafts behind the last entry of a device, and gives the last one then.
fn write_drafts(
    connection: &Connection,
    device: &DeviceId,
    mut head: Head,
    new: New<'_>,
    told: &mut IntakeProgress<'_>,
) -> Result<Head, JournalError> {
    let recorded = head.recorded.map_or(new.recorded, |last| last.max(new.recorded));
    let command = head.seq + 1;
    for (seq, draft) in (command..).zip(new.drafts) {
        if (seq - command).is_multiple_of(intake::TOLD_EVERY) {
            go_on_unless(told(Step::Written(seq - command)))?;
        }
        let id = EntryId { device: device.clone(), seq };
        refuse_envelope_fields(&id, &draft.body)?;
        let sealed = draft.seal(id, recorded, command, head.hash);
        rows::insert(connection, &sealed)?;
        head = Head { seq, hash: Some(sealed.hash), recorded: Some(recorded) };
        (new.written)(sealed);
    }
    Ok(head)
}

/// Reads back that the entries behind `before` are in the table up to the last one, before anybody is told that they are.
fn refuse_unwritten(connection: &Connection, device: &DeviceId, before: Head, last: Head) -> Result<(), JournalError> {
    let found: i64 = connection
        .prepare_cached("SELECT count(*) FROM entry WHERE device = ?1 AND seq > ?2")?
        .query_row(params![device.as_str(), i64::try_from(before.seq).unwrap_or(i64::MAX)], |row| row.get(0))?;
    if found.unsigned_abs() == last.seq - before.seq && device::head_of(connection, device)?.hash == last.hash {
        return Ok(());
    }
    Err(JournalError::NotWritten(EntryId { device: device.clone(), seq: last.seq }))
}

fn refuse_envelope_fields(id: &EntryId, body: &Map<String, Value>) -> Result<(), JournalError> {
    match ENVELOPE.iter().find(|name| body.contains_key(**name)) {
        Some(name) => Err(JournalError::damaged_at(id, format!("its body holds '{name}', a field of the envelope"))),
        None => Ok(()),
    }
}
