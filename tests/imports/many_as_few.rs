//! Whatever comes, in whatever order, into whatever book: judged in the file it comes to the same as judged in memory.

use outplant::desk::{Desk, DeskError, ImportError, Imported, Refusal, Refused, check, replay};
use outplant::journal::untold;
use outplant::nursery::envelope::Sealed;
use outplant::reckon::picture::Doubt;
use proptest::prelude::*;
use std::ops::ControlFlow;

use super::{Place, now, plain, rows, sealed, take};
use crate::books_properties::said;
use crate::support::cases;

const IN_MEMORY: usize = usize::MAX;
const IN_THE_FILE: usize = 0;

/// What is told of doubts: drafts that are only judged have no name yet.
fn doubts(doubts: &[Doubt]) -> Vec<String> {
    let mut all: Vec<String> = doubts.iter().map(|doubt| format!("{:?} {}", doubt.kind, doubt.day)).collect();
    all.sort();
    all
}

/// What is refused, by line. Which names are the nearest depends on what of the book is in memory.
fn refused(refused: &[Refused]) -> Vec<String> {
    let told = |one: &Refused| {
        let why = match &one.why {
            Refusal::UnknownTray(tray, _) => format!("unknown {tray}"),
            Refusal::UnknownLot(lot, _) => format!("unknown {lot}"),
            Refusal::UnknownBed(bed, _) => format!("unknown {bed}"),
            Refusal::Book(doubt) => format!("{:?} {}", doubt.kind, doubt.day),
            other => format!("{other:?}"),
        };
        format!("{:06} {why}", one.line)
    };
    let mut all: Vec<String> = refused.iter().map(told).collect();
    all.sort();
    all
}

/// `named`: whether lines with an identity are among them. Where one of those is faulty, many lines behind it are not judged.
fn told(imported: &Result<Imported, ImportError>, named: bool) -> String {
    match imported {
        Ok(Imported { lines, recorded, drafts, read }) => {
            let doubts = doubts(&recorded.doubts);
            format!("{lines} {drafts} {} {} {doubts:#?} {read:#?}", recorded.already, recorded.entries.len())
        }
        Err(ImportError::Desk(DeskError::Refused(all))) => format!("refused {:#?}", refused(all)),
        Err(ImportError::Lines(faults, _)) if named => format!("faults {faults:#?}"),
        Err(ImportError::Lines(faults, all)) => format!("faults {faults:#?} {:#?}", refused(all)),
        Err(other) => format!("{other:?}"),
    }
}

/// The Picture, with this copy's own name left out.
fn pictured(desk: &Desk) -> String {
    let picture = said(&desk.picture());
    match desk.journal().device().unwrap() {
        Some(own) => picture.replace(own.as_str(), "own"),
        None => picture,
    }
}

fn lines(sealed: &[Sealed]) -> Vec<String> {
    sealed.iter().map(Sealed::line).collect()
}

fn same(whole_below: u64, before: &[String], coming: &[String]) -> Result<(), TestCaseError> {
    let (few, many) = (Place::empty(whole_below), Place::empty(whole_below));
    for place in [&few, &many] {
        take(&mut place.desk(), before, IN_MEMORY, false).unwrap();
    }
    let (mut in_memory, mut in_file) = (few.desk(), many.desk());
    let stood = many.lines();
    let (tried, tried_many) =
        (take(&mut in_memory, coming, IN_MEMORY, true), take(&mut in_file, coming, IN_THE_FILE, true));
    let named = coming.iter().any(|line| line.contains("\"id\""));
    prop_assert_eq!(told(&tried, named), told(&tried_many, named), "only tried");
    prop_assert_eq!(&many.lines(), &stood, "what is tried writes nothing");
    prop_assert_eq!(pictured(&in_file), pictured(&in_memory), "what is tried is forgotten");
    let (taken, taken_many) =
        (take(&mut in_memory, coming, IN_MEMORY, false), take(&mut in_file, coming, IN_THE_FILE, false));
    prop_assert_eq!(told(&taken, named), told(&taken_many, named), "taken");
    prop_assert_eq!(taken.is_ok() || many.lines() == stood, true, "what is refused writes nothing");
    prop_assert_eq!(in_file.count(), many.lines().len());
    prop_assert_eq!(pictured(&in_file), pictured(&in_memory));
    prop_assert_eq!(pictured(&many.desk()), pictured(&few.desk()), "opened anew");
    let sound = check(&many.file(), many.folder.path(), &mut untold).unwrap();
    prop_assert!(sound.faults.is_empty(), "{:?}", sound.faults);
    let replayed = replay(&many.file(), now(), &mut |_, _| ControlFlow::Continue(())).unwrap();
    prop_assert!(replayed.same && replayed.kept_stories_true, "{:?}", replayed);
    // Taken once more, everything with a name is here already.
    if taken.is_ok() && coming.iter().all(|line| line.contains("\"id\"")) {
        let again = take(&mut in_file, coming, IN_THE_FILE, false).unwrap();
        prop_assert_eq!((again.recorded.already, many.lines().len()), (coming.len(), in_file.count()));
    }
    Ok(())
}

proptest! {
    #![proptest_config(cases(24))]

    #[test]
    fn lines_of_other_copies_come_to_the_same(
        rows in rows(),
        at in any::<prop::sample::Index>(),
        twice in prop::collection::vec(any::<prop::sample::Index>(), 0..4),
        order in any::<u64>(),
        lazily in any::<bool>(),
    ) {
        let all = lines(&sealed(&rows));
        let (before, coming) = all.split_at(at.index(all.len()));
        let mut coming = coming.to_vec();
        coming.extend(twice.iter().map(|index| all[index.index(all.len())].clone()));
        shuffle(&mut coming, order);
        same(if lazily { 0 } else { u64::MAX }, before, &coming)?;
    }

    #[test]
    fn what_is_given_out_and_taken_into_a_new_file_is_given_out_byte_for_byte(rows in rows(), order in any::<u64>()) {
        let (first, second) = (Place::empty(u64::MAX), Place::empty(u64::MAX));
        take(&mut first.desk(), &lines(&sealed(&rows)), IN_MEMORY, false).unwrap();
        let given = first.lines();
        prop_assert_eq!(given.len(), rows.len());
        let mut shuffled = given.clone();
        shuffle(&mut shuffled, order);
        take(&mut second.desk(), &shuffled, IN_MEMORY, false).unwrap();
        prop_assert_eq!(second.lines(), given);
    }

    #[test]
    fn lines_without_a_name_come_to_the_same(
        rows in rows(),
        at in any::<prop::sample::Index>(),
        of_others in any::<prop::sample::Index>(),
        lazily in any::<bool>(),
    ) {
        let (before, coming) = rows.split_at(at.index(rows.len()));
        let mut named = lines(&sealed(before));
        let mixed = named.split_off(of_others.index(named.len() + 1));
        let coming: Vec<String> = mixed.into_iter().chain(plain(coming)).collect();
        same(if lazily { 0 } else { u64::MAX }, &named, &coming)?;
    }

    #[test]
    fn what_is_wrong_is_named_the_same_and_nothing_is_taken(
        rows in rows(),
        at in any::<prop::sample::Index>(),
        what in 0..6usize,
        more in rows(),
        order in any::<u64>(),
    ) {
        let mut named = sealed(&rows);
        let at = at.index(named.len());
        let stood = lines(&named[..at]);
        match what {
            // Another text under the same name.
            0 => { named[at].who = "somebody".into(); named[at].hash = named[at].reckoned_hash(); }
            // A letter changed on the way.
            1 => named[at].who = "somebody".into(),
            // One is missing.
            2 => drop(named.remove(at)),
            // It names another one before it.
            3 if at > 0 => { named[at].prev = Some(outplant::nursery::envelope::Hash([7; 32])); named[at].hash = named[at].reckoned_hash(); }
            _ => {}
        }
        // No line with an identity at all: then every other line is judged beside the faulty one.
        let mut coming = if what == 5 { Vec::new() } else { lines(&named) };
        coming.extend(plain(&more));
        coming.push(if what >= 4 { "{\"kind\":\"fish\"}".into() } else { String::new() });
        if order % 2 == 0 && what != 5 {
            shuffle(&mut coming, order);
        }
        same(u64::MAX, &stood, &coming)?;
    }
}

/// A small shuffle of our own: always the same for the same number.
fn shuffle(lines: &mut [String], mut seed: u64) {
    for at in (1..lines.len()).rev() {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        lines.swap(at, (seed >> 33) as usize % (at + 1));
    }
}

#[test]
fn a_broken_chain_in_the_middle_is_named_once_and_takes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("grown.outplant");
    crate::support::grown::write_grown(&file, folder.path(), 1200, 5).unwrap();
    let theirs = {
        let mut text = Vec::new();
        let reading = outplant::desk::Reading::open(&file, std::path::Path::new("")).unwrap();
        reading.export(outplant::desk::Export::Lines, &mut text).unwrap();
        String::from_utf8(text).unwrap()
    };
    let theirs: Vec<String> = theirs.lines().map(str::to_string).collect();
    let faults = |coming: &[String]| {
        let place = Place::empty(u64::MAX);
        let Err(ImportError::Lines(faults, _)) = take(&mut place.desk(), coming, IN_THE_FILE, false) else {
            panic!("it was taken")
        };
        assert!(place.lines().is_empty());
        let listed: Vec<(usize, String)> =
            faults.listed.iter().map(|fault| (fault.line, format!("{:?}", fault.reason))).collect();
        (faults.count, listed)
    };
    // One is missing in the middle: what comes behind it is not named line by line.
    let mut gap = theirs.clone();
    gap.remove(600);
    let (count, listed) = faults(&gap);
    assert_eq!((count, listed[0].0), (1, 601), "{listed:?}");
    assert!(listed[0].1.contains("Missing") && listed[0].1.contains("601"), "{listed:?}");
    // Two holes are two faults.
    gap.remove(200);
    let (count, listed) = faults(&gap);
    assert_eq!((count, listed[0].0, listed[1].0), (2, 201, 600), "{listed:?}");
    // A letter changed: that line, and not that it is missing behind.
    let mut forged = theirs.clone();
    forged[300] = forged[300].replace("\"who\":\"", "\"who\":\"x");
    let (count, listed) = faults(&forged);
    assert_eq!((count, listed[0].0), (1, 301), "{listed:?}");
    assert!(listed[0].1.contains("WrongHash"), "{listed:?}");
}

#[test]
fn the_lines_may_come_backwards() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("grown.outplant");
    crate::support::grown::write_grown(&file, folder.path(), 3000, 6).unwrap();
    let mut text = Vec::new();
    outplant::desk::Reading::open(&file, std::path::Path::new(""))
        .unwrap()
        .export(outplant::desk::Export::Lines, &mut text)
        .unwrap();
    let theirs: Vec<String> = String::from_utf8(text).unwrap().lines().map(str::to_string).collect();
    let backwards: Vec<String> = theirs.iter().rev().cloned().collect();
    let place = Place::empty(0);
    let taken = take(&mut place.desk(), &backwards, IN_THE_FILE, false).unwrap();
    assert_eq!((taken.lines, taken.recorded.already), (3000, 0));
    assert_eq!(place.lines(), theirs);
    assert!(replay(&place.file(), now(), &mut |_, _| ControlFlow::Continue(())).unwrap().kept_stories_true);
}
