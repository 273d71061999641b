//! Whatever is written, in whatever order it arrives: nothing appears or vanishes, nothing depends on the order of
//! arrival, a step at a time gives the same as all at once, and nothing panics.

use std::sync::Arc;

use outplant::base::{Clock, Day, DeviceId, EntryId, Moment};
use outplant::nursery::entry::{Entry, reading};
use outplant::nursery::envelope::canonical;
use outplant::reckon::{Fold, Picture, View};
use proptest::prelude::*;
use serde_json::{Value, json};

pub const FIRST_DAY: i32 = 739_000; // 2024-04-29
pub const DAYS: i32 = 400;

pub fn body(kind: usize, a: u32, b: u32, c: u32) -> (&'static str, Value) {
    let tray = |n: u32| format!("t{}", n % 5);
    let lot = |n: u32| format!("L{}", n % 3);
    let bed = |n: u32| format!("b{}", n % 2);
    let species = ["COA", "AVO", "MAN", "GRE"][(c % 4) as usize];
    let place = |n: u32| format!("p{}", n % 3);
    match kind {
        0 => (
            "lot_received",
            json!({"lot":lot(a),"species":species,"source":"x","collected":"2024-04-01","seeds":b % 300,"kept":"other"}),
        ),
        1 => ("sown", json!({"tray":tray(a),"lot":lot(b),"seeds":c % 120,"container":"bag","place":place(c)})),
        2..=4 => ("counted", json!({"tray":tray(a),"standing":b % 130,"dead":c % 4})),
        5 => ("lost", json!({"tray":tray(a),"count":b % 20,"cause":"rats"})),
        6 => ("culled", json!({"tray":tray(a),"count":b % 20,"why":"runts"})),
        7 if a % 5 == b % 5 && c.is_multiple_of(3) => ("roots_cut", json!({"tray":tray(a),"count":c % 60})),
        7 if a % 5 == b % 5 && c % 3 == 1 => ("grafted", json!({"tray":tray(a),"count":c % 60,"variety":"late"})),
        7 if a % 5 == b % 5 => ("flushed", json!({"tray":tray(a)})),
        7 => ("moved_on", json!({"from":tray(a),"to":tray(b),"count":c % 60,"how":"potted_on","container":"bag"})),
        8 => ("outplanted", json!({"tray":tray(a),"bed":bed(b),"count":c % 50})),
        9 => ("given_out", json!({"tray":tray(a),"count":b % 10,"to":"school"})),
        10 => ("stocktaken", json!({"tray":tray(a),"standing":b % 100})),
        11 => {
            ("plants_received", json!({"tray":tray(a),"species":species,"count":b % 80,"from":"bought","form":"bag"}))
        }
        12 => (
            "bed_set",
            json!({"bed":bed(a),"field":"f","length_m":10 + b % 20,"width_m":6,"plan":[{"species":species,"pattern":"square","row_m":2,"in_row_m":2}]}),
        ),
        13 => ("survival_counted", json!({"bed":bed(a),"species":species,"alive":b % 60,"dead":c % 20})),
        14 => ("plants_lost", json!({"bed":bed(a),"species":species,"count":b % 20,"cause":"cattle"})),
        15 => ("place_set", json!({"place":place(a),"order":a % 9,"shade_pct":b % 100})),
        16 => ("shade_set", json!({"tray":tray(a),"shade_pct":b % 100})),
        17 => ("measured", json!({"tray":tray(a),"plants":[{"height_cm":1 + b % 80,"collar_mm":1 + c % 9}]})),
        18 => ("resown", json!({"tray":tray(a),"lot":lot(b),"seeds":c % 60})),
        19 => ("relabelled", json!({"tray":tray(a),"was":tray(b)})),
        20 => ("nurse_planted", json!({"bed":bed(a),"nurse":"BAN","count":b % 30,"row_m":3,"in_row_m":3})),
        21 => ("nurse_cut", json!({"bed":bed(a),"nurse":"BAN","what":"felled","count":b % 30})),
        22 => ("plants_found", json!({"bed":bed(a),"species":species,"alive":b % 30})),
        23 => ("species_set", json!({"species":species,"profile":{"emerge_last_days":1 + b % 200}})),
        24 => ("lot_counted", json!({"lot":lot(a),"seeds":b % 300})),
        25 => ("light_read", json!({"bed":bed(a),"light_share":f64::from(b % 101) / 100.0})),
        26 => ("weather", json!({"rain_mm":b % 40})),
        _ => (
            "lot_tested",
            json!({"lot":lot(a),"replicates":[{"seeds":b % 50,"germinated":c % (b % 50 + 1)}],"days":14}),
        ),
    }
}

pub fn entries() -> impl Strategy<Value = Vec<Arc<Entry>>> {
    let one = (
        0..30usize,
        any::<u32>(),
        any::<u32>(),
        any::<u32>(),
        0..DAYS,
        0..3u8,
        prop::option::of(0..24u32),
        0..40i32,
        any::<bool>(),
    );
    prop::collection::vec(one, 1..60).prop_map(|rows| {
        let mut seqs = [0u64; 3];
        let mut made: Vec<Arc<Entry>> = Vec::new();
        let mut last: [Option<(u64, Day, Moment)>; 3] = [None; 3];
        for (kind, a, b, c, on, device, hour, late, same_command) in rows {
            let name = ["a", "b", "c"][device as usize];
            seqs[device as usize] += 1;
            // Some go on with the command before them, on the same day: a sheet of many lines.
            let goes_on = last[device as usize].filter(|_| same_command);
            let own = Day::from_number(FIRST_DAY + on);
            let recorded = Moment::end_of(own.plus(late), 3.0);
            let (command, happened, recorded) = goes_on.unwrap_or((seqs[device as usize], own, recorded));
            last[device as usize] = Some((command, happened, recorded));
            let (kind, body) = if kind >= 28 && !made.is_empty() {
                let target = &made[a as usize % made.len()];
                ("withdrawn", json!({"entries":[target.id.to_string()],"why":"slip"}))
            } else {
                body(kind, a, b, c)
            };
            let settled =
                reading::settle_body(kind, body.as_object().unwrap()).unwrap_or_else(|f| panic!("{kind} {f:?}"));
            made.push(Arc::new(Entry {
                id: EntryId { device: DeviceId::new(name).unwrap(), seq: seqs[device as usize] },
                happened,
                clock: hour.and_then(|hour| Clock::from_hm(hour, 0)),
                recorded,
                who: "t".into(),
                command,
                what: reading::read_body(kind, &canonical(&Value::Object(settled))).unwrap(),
            }));
        }
        made
    })
}

fn view(on: i32) -> View {
    View { day: Day::from_number(FIRST_DAY + on), known: None }
}

fn fold(view: View, entries: &[Arc<Entry>]) -> Fold {
    Fold::new(view, view.day, entries.iter().cloned())
}

/// Everything a Picture says, as text.
pub fn said(picture: &Picture) -> String {
    let pairs: Vec<_> = picture
        .pairs
        .iter()
        .map(|pair| (pair, pair.criteria.to_vec()))
        .map(|(pair, asked)| format!("{} {} {} {} {asked:?}", pair.tray, pair.bed, pair.fits, pair.plants))
        .collect();
    let Picture { trays, lots, beds, doubts, archived, places, weekly_loss, .. } = picture;
    format!("{trays:#?}\n{lots:#?}\n{beds:#?}\n{pairs:#?}\n{doubts:#?}\n{archived:#?}\n{places:#?}\n{weekly_loss:?}")
}

fn withdrawal(of: &[EntryId], seq: u64, recorded: Moment) -> Arc<Entry> {
    let ids: Vec<String> = of.iter().map(ToString::to_string).collect();
    let settled = reading::settle_body("withdrawn", json!({"entries":ids,"why":"slip"}).as_object().unwrap()).unwrap();
    Arc::new(Entry {
        id: EntryId { device: DeviceId::new("undo").unwrap(), seq },
        happened: Day::from_number(FIRST_DAY),
        clock: None,
        recorded,
        who: "t".into(),
        command: seq,
        what: reading::read_body("withdrawn", &canonical(&Value::Object(settled))).unwrap(),
    })
}

proptest! {
    #![proptest_config(crate::support::cases(96))]

    #[test]
    fn every_seedling_is_somewhere(entries in entries()) {
        let fold = fold(view(DAYS), &entries);
        let (mut moved_out, mut moved_in) = (0u64, 0u64);
        for story in fold.trays().values() {
            prop_assert_eq!(story.accounts.balance(), 0, "tray {}: {:?}", story.code, story.accounts);
            moved_out += story.accounts.moved_out;
            moved_in += story.accounts.moved_in;
        }
        prop_assert_eq!(moved_out, moved_in, "what leaves one tray enters another");
        let planted: u64 = fold.trays().values().map(|story| story.accounts.planted).sum();
        let in_beds: u64 = fold.beds().values().flat_map(|bed| &bed.cohorts)
            .filter(|cohort| cohort.tray.is_some()).map(|cohort| u64::from(cohort.planted)).sum();
        prop_assert_eq!(planted, in_beds, "what leaves the trays stands in beds");
        for bed in fold.beds().values() {
            prop_assert_eq!(bed.balance(), 0, "bed {}", bed.name);
        }
        for lot in fold.lots().values() {
            if let Some(left) = lot.seeds_left {
                let inward = i64::from(lot.seeds_in.unwrap_or(0)) + lot.unexplained;
                prop_assert_eq!(inward, i64::from(left) + i64::from(lot.sown) + i64::from(lot.tested), "lot {:?}", lot);
            }
        }
    }

    #[test]
    fn the_order_of_arrival_makes_no_difference(entries in entries(), seed in any::<u64>()) {
        let mut shuffled = entries.clone();
        let mut state = seed | 1;
        for i in (1..shuffled.len()).rev() {
            state ^= state << 13; state ^= state >> 7; state ^= state << 17;
            shuffled.swap(i, (state % (i as u64 + 1)) as usize);
        }
        let view = view(DAYS);
        prop_assert_eq!(said(&fold(view, &entries).picture()), said(&fold(view, &shuffled).picture()));
    }

    #[test]
    fn one_entry_at_a_time_gives_the_same_as_all_at_once(entries in entries()) {
        let view = view(DAYS);
        let mut stepwise = fold(view, &[]);
        for entry in &entries {
            stepwise.add([entry.clone()]);
        }
        prop_assert_eq!(said(&stepwise.picture()), said(&fold(view, &entries).picture()));
    }

    #[test]
    fn taking_an_entry_out_is_as_if_it_had_never_come(entries in entries(), at in any::<prop::sample::Index>()) {
        let view = view(DAYS);
        let i = at.index(entries.len());
        let mut with = fold(view, &entries);
        with.take_out(&entries[i..=i]);
        let mut without = entries.clone();
        without.remove(i);
        prop_assert_eq!(said(&with.picture()), said(&fold(view, &without).picture()));
    }

    #[test]
    fn the_picture_of_a_day_knows_only_what_had_happened_by_then(entries in entries(), on in 0..DAYS) {
        let view = view(on);
        let by_then: Vec<Arc<Entry>> = entries.iter().filter(|entry| {
            // Withdrawals act on every day, and what describes reaches back.
            entry.happened <= view.day || entry.what.kind() == "withdrawn" || entry.what.kind().ends_with("_set") && entry.what.kind() != "shade_set"
        }).cloned().collect();
        prop_assert_eq!(said(&fold(view, &entries).picture()), said(&fold(view, &by_then).picture()));
    }

    #[test]
    fn what_was_known_by_a_moment_knows_nothing_later(entries in entries(), on in 0..DAYS) {
        let known = Moment::end_of(Day::from_number(FIRST_DAY + on), 3.0);
        let view = View { day: Day::from_number(FIRST_DAY + DAYS), known: Some(known) };
        let by_then: Vec<Arc<Entry>> = entries.iter().filter(|entry| entry.recorded <= known).cloned().collect();
        prop_assert_eq!(said(&fold(view, &entries).picture()), said(&fold(view, &by_then).picture()));
    }

    #[test]
    fn undoing_what_was_done_leaves_the_same_stock(entries in entries(), more in entries()) {
        let view = view(DAYS);
        // The second batch comes from a device of its own.
        let more: Vec<Arc<Entry>> = more.iter().filter(|entry| entry.what.kind() != "withdrawn").map(|entry| {
            let mut entry = Entry::clone(entry);
            entry.id.device = DeviceId::new("d").unwrap();
            entry.id.seq += 1000 * u64::from(entry.id.device.as_str().len() as u32);
            Arc::new(entry)
        }).collect();
        let mut unique = std::collections::BTreeMap::new();
        for (i, entry) in more.into_iter().enumerate() {
            let mut entry = Entry::clone(&entry);
            entry.id.seq = i as u64 + 1;
            unique.insert(entry.id.clone(), Arc::new(entry));
        }
        let more: Vec<Arc<Entry>> = unique.into_values().collect();
        let ids: Vec<EntryId> = more.iter().map(|entry| entry.id.clone()).collect();
        let before = said(&fold(view, &entries).picture());
        let late = Moment::end_of(Day::from_number(FIRST_DAY + DAYS + 100), 0.0);
        let mut all = entries.clone();
        all.extend(more);
        let mut undone = fold(view, &all);
        undone.add([withdrawal(&ids, 1, late)]);
        prop_assert_eq!(&said(&undone.picture()), &before);
        // Withdrawing the withdrawal makes them count again.
        let done = said(&fold(view, &all).picture());
        let later = Moment::end_of(Day::from_number(FIRST_DAY + DAYS + 101), 0.0);
        undone.add([withdrawal(&[EntryId { device: DeviceId::new("undo").unwrap(), seq: 1 }], 2, later)]);
        prop_assert_eq!(said(&undone.picture()), done);
    }
}
