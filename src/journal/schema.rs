//! The shape of the file, step by step, and its mark.

use rusqlite::{Connection, TransactionBehavior};
use std::collections::BTreeSet;

use super::error::JournalError;
use crate::nursery::envelope::Hash;

/// The mark of a nursery file in the header of the database: "otpl".
pub(super) const APPLICATION_ID: i32 = 0x6f74_706c;

/// The steps, oldest first. A file of version n has had the first n.
pub(super) const STEPS: &[&str] =
    &[include_str!("001_entries.sql"), include_str!("002_lookup.sql"), include_str!("003_stories.sql")];

/// The version a file has after all of these steps.
pub(super) fn version_after(steps: &[&str]) -> i64 {
    i64::try_from(steps.len()).unwrap_or(i64::MAX)
}

/// The version of a file.
pub(super) fn version(connection: &Connection) -> Result<i64, JournalError> {
    Ok(connection.pragma_query_value(None, "user_version", |row| row.get(0))?)
}

/// Does the steps a file has not had, all in one transaction.
pub(super) fn bring_up(connection: &mut Connection, steps: &[&str]) -> Result<(), JournalError> {
    let program = version_after(steps);
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    // Looked at again inside the transaction: another program may have done the steps meanwhile.
    let file = version(&transaction)?;
    if file > program {
        return Err(JournalError::Newer { file, program });
    }
    for step in steps.iter().skip(usize::try_from(file).unwrap_or(0)) {
        transaction.execute_batch(step)?;
    }
    transaction.pragma_update(None, "application_id", APPLICATION_ID)?;
    transaction.pragma_update(None, "user_version", program)?;
    Ok(transaction.commit()?)
}

/// Names and texts of everything the schema holds, sorted.
pub(super) fn texts(connection: &Connection) -> Result<Vec<(String, String)>, JournalError> {
    let mut statement = connection.prepare(
        "SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' ORDER BY name",
    )?;
    let rows = statement.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// What the schema of a file of some version should hold.
pub(super) fn expected_texts(file_version: i64) -> Result<Vec<(String, String)>, JournalError> {
    texts_after(&STEPS[..usize::try_from(file_version).unwrap_or(0).min(STEPS.len())])
}

fn texts_after(steps: &[&str]) -> Result<Vec<(String, String)>, JournalError> {
    let empty = Connection::open_in_memory()?;
    steps.iter().try_for_each(|step| empty.execute_batch(step))?;
    texts(&empty)
}

/// Names of what the schema should not hold, or should hold otherwise.
pub(super) fn differences(found: Vec<(String, String)>, expected: Vec<(String, String)>) -> BTreeSet<String> {
    let (found, expected): (BTreeSet<_>, BTreeSet<_>) = (found.into_iter().collect(), expected.into_iter().collect());
    found.symmetric_difference(&expected).map(|(name, _)| name.clone()).collect()
}

/// SHA-256 of the names and texts that all of [`STEPS`] make, so that opening a file need not make them once more.
const MARK: &str = "3c800624b313972ca8c0dbf45a38f60bcf7601c2c72997cec57f25f534378749";

fn mark_of(texts: &[(String, String)]) -> String {
    Hash::of_text(&texts.iter().map(|(name, text)| format!("{name}\0{text}\0")).collect::<String>()).to_string()
}

/// Refuses to write to a file whose tables or guards somebody changed: what is written might not be there afterwards.
pub(super) fn refuse_changed(connection: &Connection, steps: &[&str]) -> Result<(), JournalError> {
    let found = texts(connection)?;
    if steps == STEPS && mark_of(&found) == MARK {
        return Ok(());
    }
    let changed = differences(found, texts_after(steps)?);
    if changed.is_empty() { Ok(()) } else { Err(JournalError::ChangedSchema(changed.into_iter().collect())) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mark_is_that_of_the_schema_the_steps_make_and_of_no_other() {
        let made = texts_after(STEPS).unwrap();
        assert!(made.len() > 5);
        assert_eq!(mark_of(&made), MARK);
        for at in 0..made.len() {
            let mut other = made.clone();
            other[at].1.push(' ');
            assert_ne!(mark_of(&other), MARK, "{}", made[at].0);
            other.remove(at);
            assert_ne!(mark_of(&other), MARK, "{}", made[at].0);
        }
    }
}
