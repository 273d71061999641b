//! Stories kept beside the entries, so that a program begins with them and not with every entry. They can be thrown away at
//! any time.

use rusqlite::{Connection, OptionalExtension, TransactionBehavior, params};

use super::lookup::Sort;
use crate::base::Day;
use crate::journal::Journal;
use crate::journal::error::JournalError;

/// Which entries the kept stories are folded from.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Checkpoint {
    /// The program that folded them.
    pub program: String,
    /// The day they were folded for.
    pub day: Day,
    /// The last entry in them, by arrival.
    pub arrival: i64,
}

/// A story as it is kept.
#[derive(Clone, PartialEq, Debug)]
pub struct KeptStory {
    /// Of what.
    pub sort: Sort,
    /// Its name.
    pub name: String,
    /// The first day on which it is archived, if nothing more is written about it.
    pub archived_from: Option<Day>,
    /// The species, where others learn from it.
    pub species: Option<String>,
    /// The story, as bytes.
    pub body: Vec<u8>,
}

impl Journal {
    /// The checkpoint, if there is one.
    pub fn checkpoint(&self) -> Result<Option<Checkpoint>, JournalError> {
        let found = self.connection.query_row("SELECT program, day, arrival FROM checkpoint", [], |row| {
            let day: i32 = row.get(1)?;
            Ok(Checkpoint { program: row.get(0)?, day: Day::from_number(day), arrival: row.get(2)? })
        });
        match found.optional() {
            // A file of an older version that can only be read.
            Err(rusqlite::Error::SqliteFailure(_, _)) if self.read_only => Ok(None),
            other => Ok(other?),
        }
    }

    /// Keeps stories: those that changed are laid over the old ones, those that are `gone` go. All or none.
    pub fn keep_stories(
        &mut self,
        checkpoint: &Checkpoint,
        changed: &[KeptStory],
        gone: &[(Sort, String)],
        all_anew: bool,
    ) -> Result<(), JournalError> {
        if self.read_only {
            return Ok(());
        }
        if !self.connection.is_autocommit() {
            // They become part of what is being written.
            return put_stories(&self.connection, checkpoint, changed, gone, all_anew);
        }
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        put_stories(&transaction, checkpoint, changed, gone, all_anew)?;
        Ok(transaction.commit()?)
    }

    /// Throws the kept stories away.
    pub fn drop_stories(&mut self) -> Result<(), JournalError> {
        if self.read_only {
            return Ok(());
        }
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        transaction.execute("DELETE FROM checkpoint", [])?;
        transaction.execute("DELETE FROM story", [])?;
        Ok(transaction.commit()?)
    }

    /// The kept stories that are active on a day: sort word and bytes.
    pub fn active_stories(&self, day: Day) -> Result<Vec<(String, Vec<u8>)>, JournalError> {
        self.stories(
            "SELECT subject.sort, story.body FROM story JOIN subject ON subject.number = story.subject
             WHERE story.rests IS NULL OR story.rests > ?1",
            &[&day.number()],
        )
    }

    /// Gives every kept story, one after the other: of what sort, its name, and its bytes.
    pub fn each_story(&self, give: &mut dyn FnMut(&str, &str, &[u8])) -> Result<(), JournalError> {
        let query =
            "SELECT subject.sort, subject.name, story.body FROM story JOIN subject ON subject.number = story.subject";
        let mut statement = self.connection.prepare_cached(query)?;
        let mut found = statement.query([])?;
        while let Some(row) = found.next()? {
            let text = |column| row.get_ref(column).ok().and_then(|value| value.as_str().ok()).unwrap_or_default();
            let body = row.get_ref(2).ok().and_then(|value| value.as_blob().ok()).unwrap_or_default();
            give(text(0), text(1), body);
        }
        Ok(())
    }

    /// The kept stories that are archived on one day and not yet on an earlier one.
    pub fn stories_archived_between(&self, earlier: Day, day: Day) -> Result<Vec<(String, Vec<u8>)>, JournalError> {
        self.stories(
            "SELECT subject.sort, story.body FROM story JOIN subject ON subject.number = story.subject
             WHERE story.rests > ?1 AND story.rests <= ?2",
            &[&earlier.number(), &day.number()],
        )
    }

    /// Of each species the kept stories that were archived last by a day, at most so many.
    pub fn archived_stories(&self, day: Day, at_most: usize) -> Result<Vec<Vec<u8>>, JournalError> {
        let mut species =
            self.connection.prepare_cached("SELECT DISTINCT species FROM story WHERE species IS NOT NULL")?;
        let all: Vec<String> = species.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?;
        let at_most = i64::try_from(at_most).unwrap_or(i64::MAX);
        let mut bodies = Vec::new();
        for one in all {
            let found = self.stories(
                "SELECT subject.sort, story.body FROM story JOIN subject ON subject.number = story.subject
                 WHERE story.species = ?1 AND story.rests <= ?2 ORDER BY story.rests DESC LIMIT ?3",
                &[&one, &day.number(), &at_most],
            )?;
            bodies.extend(found.into_iter().map(|(_, body)| body));
        }
        Ok(bodies)
    }

    fn stories(&self, query: &str, asked: &[&dyn rusqlite::ToSql]) -> Result<Vec<(String, Vec<u8>)>, JournalError> {
        let mut statement = self.connection.prepare_cached(query)?;
        let found = statement.query_map(asked, |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(found.collect::<Result<_, _>>()?)
    }
}

fn put_stories(
    connection: &Connection,
    checkpoint: &Checkpoint,
    changed: &[KeptStory],
    gone: &[(Sort, String)],
    all_anew: bool,
) -> Result<(), JournalError> {
    if all_anew {
        connection.execute("DELETE FROM story", [])?;
    }
    let mut put = connection.prepare_cached(
        "INSERT OR REPLACE INTO story (subject, rests, species, body)
         SELECT number, ?3, ?4, ?5 FROM subject WHERE sort = ?1 AND name = ?2",
    )?;
    for story in changed {
        let archived_from = story.archived_from.map(Day::number);
        put.execute(params![story.sort.word(), story.name, archived_from, story.species, story.body])?;
    }
    let mut drop = connection.prepare_cached(
        "DELETE FROM story WHERE subject = (SELECT number FROM subject WHERE sort = ?1 AND name = ?2)",
    )?;
    for (sort, name) in gone {
        drop.execute(params![sort.word(), name])?;
    }
    connection.execute(
        "INSERT OR REPLACE INTO checkpoint (one, program, day, arrival) VALUES (1, ?1, ?2, ?3)",
        params![checkpoint.program, checkpoint.day.number(), checkpoint.arrival],
    )?;
    Ok(())
}
