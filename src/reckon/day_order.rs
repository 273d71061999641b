//! The order of a day. Entries without a time of day stand at the nominal hour of their kind; where one command wrote
//! several about the same thing, the order in which they were given leads: a later one never stands before an earlier
//! one. It follows from the entries alone, whatever the order in which they came.

use foldhash::{HashMap, HashMapExt, HashSet};
use std::collections::BTreeMap;
use std::sync::Arc;

use crate::base::{Day, DeviceId, EntryId};
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::{Entry, OrderKey};

/// The entries of one command on one day.
type Given = (DeviceId, u64, Day);

/// Where entries stand in their day.
#[derive(Clone, Debug, Default)]
pub(super) struct OrderWithinDays {
    /// What each command wrote for a day, by number.
    given: HashMap<Given, Vec<Arc<Entry>>>,
    /// Entries that stand later than their nominal hour, minutes since midnight.
    later: HashMap<EntryId, u16>,
}

impl OrderWithinDays {
    /// The place of an entry in the order of things.
    pub(crate) fn key_of(&self, entry: &Entry) -> OrderKey {
        OrderKey { minutes: self.minutes_of(entry), ..entry.order_key() }
    }

    /// The time of day at which an entry stands, minutes since midnight.
    pub fn minutes_of(&self, entry: &Entry) -> u16 {
        self.later.get(&entry.id).copied().unwrap_or_else(|| entry.minutes())
    }

    /// Takes entries in; true where one that was there already stands elsewhere now.
    pub fn add(&mut self, entries: &[Arc<Entry>]) -> bool {
        let around = around(entries);
        let before = self.settled(&around);
        self.given.reserve(around.len());
        for entry in entries.iter().filter(|entry| entry.clock.is_none()) {
            self.given.entry(given(entry)).or_default().push(entry.clone());
        }
        for one in &around {
            let Some(of_command) = self.given.get_mut(one) else { continue };
            // All at once: a place for each alone would cost the square of what the command wrote. The newest of a number stays.
            of_command.sort_by_key(|entry| entry.id.seq);
            of_command.dedup_by(|later, earlier| {
                let is_same = later.id.seq == earlier.id.seq;
                if is_same {
                    std::mem::swap(later, earlier);
                }
                is_same
            });
        }
        self.settle(entries, &around, before)
    }

    /// Takes entries out; true where one that stays stands elsewhere now.
    pub fn remove(&mut self, entries: &[Arc<Entry>]) -> bool {
        let around = around(entries);
        let before = self.settled(&around);
        // Of each command all at once: one by one would cost the square of what it wrote.
        let mut out: HashMap<Given, HashSet<u64>> = HashMap::new();
        for entry in entries.iter().filter(|entry| entry.clock.is_none()) {
            out.entry(given(entry)).or_default().insert(entry.id.seq);
        }
        for (given, numbers) in out {
            let Some(of_command) = self.given.get_mut(&given) else { continue };
            of_command.retain(|other| !numbers.contains(&other.id.seq));
            if of_command.is_empty() {
                self.given.remove(&given);
            }
        }
        self.settle(entries, &around, before)
    }

    /// Those that stand later, of some commands and days, as it was settled last.
    fn settled(&self, around: &[Given]) -> BTreeMap<EntryId, u16> {
        if self.later.is_empty() {
            return BTreeMap::new();
        }
        let there = around.iter().filter_map(|one| self.given.get(one)).flatten();
        there.filter_map(|entry| Some((entry.id.clone(), *self.later.get(&entry.id)?))).collect()
    }

    fn settle(&mut self, entries: &[Arc<Entry>], around: &[Given], before: BTreeMap<EntryId, u16>) -> bool {
        let there = around.iter().filter_map(|one| self.given.get(one));
        let after: BTreeMap<EntryId, u16> = there.flat_map(|of_command| later(of_command)).collect();
        let differs = |(id, minutes): (&EntryId, &u16), other: &BTreeMap<EntryId, u16>| other.get(id) != Some(minutes);
        let mut others = before.iter().filter(|one| differs(*one, &after)).map(|(id, _)| id);
        let mut moved = others.by_ref().chain(after.iter().filter(|one| differs(*one, &before)).map(|(id, _)| id));
        let changed: HashSet<&EntryId> = match moved.next() {
            None => HashSet::default(),
            Some(_) => entries.iter().map(|entry| &entry.id).collect(),
        };
        let stays =
            |one: (&EntryId, &u16), other: &BTreeMap<EntryId, u16>| differs(one, other) && !changed.contains(one.0);
        let moved = before.iter().any(|one| stays(one, &after)) || after.iter().any(|one| stays(one, &before));
        for id in before.keys() {
            self.later.remove(id);
        }
        self.later.extend(after);
        moved
    }
}

/// The commands and days of entries, each once: a sheet tells of many days in turn, and each is looked at whole.
fn around(entries: &[Arc<Entry>]) -> Vec<Given> {
    let mut around: Vec<Given> = Vec::new();
    let mut seen: HashSet<Given> = HashSet::default();
    for entry in entries.iter().filter(|entry| entry.clock.is_none()) {
        let known = |last: &Given| last.1 == entry.command && last.2 == entry.happened && last.0 == entry.id.device;
        if !around.last().is_some_and(known) && seen.insert(given(entry)) {
            around.push(given(entry));
        }
    }
    around
}

fn given(entry: &Entry) -> Given {
    (entry.id.device.clone(), entry.command, entry.happened)
}

/// Of the entries of one command on one day, those that must stand later than their kind would: behind what was given
/// before them about the same tray, lot, bed, place or site.
fn later(of_command: &[Arc<Entry>]) -> BTreeMap<EntryId, u16> {
    let mut later = BTreeMap::new();
    // Where no entry stands earlier in the day than the one given before it, none has to wait.
    if of_command.is_sorted_by_key(|entry| entry.minutes()) {
        return later;
    }
    let mut last: HashMap<Subject, u16> = HashMap::new();
    for entry in of_command {
        let nominal = entry.minutes();
        // The rest speaks of them, wherever in a file they stand.
        if entry.what.facts().is_some_and(|facts| facts.first) {
            continue;
        }
        let about = subjects(&entry.what);
        let minutes = about.iter().filter_map(|subject| last.get(subject)).copied().fold(nominal, u16::max);
        if minutes > nominal {
            later.insert(entry.id.clone(), minutes);
        }
        last.extend(about.into_iter().map(|subject| (subject, minutes)));
    }
    later
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::Moment;
    use crate::nursery::entry::reading;
    use serde_json::json;

    fn entry(seq: u64, command: u64, kind: &str, body: serde_json::Value) -> Arc<Entry> {
        let happened: Day = "2026-03-14".parse().unwrap();
        Arc::new(Entry {
            id: EntryId { device: DeviceId::new("a").unwrap(), seq },
            happened,
            clock: None,
            recorded: Moment::end_of(happened, 0.0),
            who: "mara".into(),
            command,
            what: reading::read_body(kind, &body.to_string()).unwrap(),
        })
    }

    fn day() -> [Arc<Entry>; 4] {
        [
            entry(1, 1, "given_out", json!({"tray": "avo-1", "count": 3, "to": "school"})),
            entry(2, 1, "relabelled", json!({"tray": "avo-2", "was": "avo-1"})),
            entry(3, 1, "counted", json!({"tray": "avo-2", "standing": 9})),
            entry(4, 1, "counted", json!({"tray": "cof-1", "standing": 9})),
        ]
    }

    /// A sheet of many trays tells of the same days again and again: looked at each time, its cost grew with its square.
    #[test]
    fn each_day_of_a_command_is_looked_at_once() {
        let mut all = Vec::new();
        for seq in 0..20 {
            let one = entry(seq, 1, "counted", json!({"tray": "avo-1", "standing": 9}));
            let happened = one.happened.plus((seq % 3) as i32);
            all.push(Arc::new(Entry { happened, ..Arc::unwrap_or_clone(one) }));
        }
        assert_eq!(around(&all).len(), 3);
    }

    #[test]
    fn the_order_given_in_one_command_leads_for_what_speaks_of_the_same() {
        let all = day();
        let mut order = OrderWithinDays::default();
        order.add(&all);
        let hours = |order: &OrderWithinDays| all.each_ref().map(|entry| order.key_of(entry).minutes / 60);
        assert_eq!(hours(&order), [16, 16, 16, 8], "another tray keeps its hour");
        // Whatever the order in which they come, and however many at a time.
        let mut stepwise = OrderWithinDays::default();
        assert!(!stepwise.add(&all[1..=1]) && !stepwise.add(&all[3..]));
        assert!(stepwise.add(&all[0..=0]), "the label stands later now");
        stepwise.add(&all[2..=2]);
        assert_eq!(hours(&stepwise), hours(&order));
        assert!(order.remove(&all[0..=0]));
        assert_eq!(hours(&order), [16, 0, 8, 8]);
    }

    #[test]
    fn several_commands_keep_the_nominal_hours_and_what_makes_a_tray_comes_first() {
        let counted = entry(1, 1, "counted", json!({"tray": "cof-1", "standing": 9}));
        let lost = entry(2, 2, "lost", json!({"tray": "cof-1", "count": 2, "cause": "rats"}));
        let sown = entry(3, 1, "sown", json!({"tray": "cof-1", "lot": "L1", "seeds": 9, "container": "bag"}));
        let mut order = OrderWithinDays::default();
        order.add(&[counted.clone(), lost.clone(), sown.clone()]);
        let hours = [&counted, &lost, &sown].map(|entry| order.key_of(entry).minutes / 60);
        assert_eq!(hours, [8, 6, 0]);
    }
}
