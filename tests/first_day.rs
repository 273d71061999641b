//! The first day of a nursery that already stands: a sheet of its trays, a sheet of its beds, and yesterday's paper.

use std::collections::BTreeSet;

use outplant::base::{BedName, Clock, ContainerName, Day, PlaceName, TrayCode};
use outplant::desk::{
    DayOrder, Desk, DeskError, Encoding, ImportError, Now, ReadFault, Reason, Refusal, SheetKind, UnknownWhat,
    Withdraws, WorkbookFault,
};
use outplant::nursery::envelope::Draft;
use outplant::reckon::round;
use outplant::reckon::round::{Stake, Stop, Task, Where};
use serde_json::json;
use tempfile::TempDir;

use crate::support::program::Home;

fn now() -> Now {
    Now {
        today: Day::from_ymd(2026, 3, 14).unwrap(),
        clock: Clock::from_hm(18, 0),
        moment: "2026-03-14T15:00:00Z".parse().unwrap(),
    }
}

fn begun() -> (TempDir, Desk) {
    let folder = tempfile::tempdir().unwrap();
    let body = json!({"name": "Ridge school", "latitude_deg": -1.2, "longitude_deg": 36.0, "altitude_m": 1650, "utc_offset_h": 3});
    let first = Draft {
        happened: now().today,
        clock: None,
        who: "mara".into(),
        kind: "nursery_set".into(),
        body: body.as_object().unwrap().clone(),
    };
    let file = folder.path().join("ridge.nursery");
    let shelf = folder.path().join("shelf");
    let (desk, _) = Desk::begin(&file, &shelf, now(), vec![first]).unwrap();
    (folder, desk)
}

fn tray(code: &str) -> TrayCode {
    TrayCode::new(code).unwrap()
}

/// 60 trays as an English spreadsheet program saves them.
fn english() -> String {
    let mut text = "Tray,Species,How many,Sown about,Bag,Bench\r\n".to_string();
    let species = ["coffee", "avocado", "grevillea", "jackfruit"];
    for i in 1..=60 {
        let (name, month) = (species[i % 4], 1 + i % 12);
        text.push_str(&format!(
            "t-{i:02},{name},{},{:02}/{month:02}/2025,1 l bag,Bench {}\r\n",
            20 + i,
            1 + i % 28,
            i % 4
        ));
    }
    text
}

/// The same number of trays as a Spanish one does, in letters of the Western European code page.
fn spanish() -> String {
    let mut text = "Código;Especie;Cantidad;Fecha de siembra;Funda;Mesa;Altura (cm);Dueño\r\n".to_string();
    let species = ["café", "aguacate", "plátano", "grevillea"];
    for i in 1..=60 {
        let name = species[i % 4];
        text.push_str(&format!(
            "Ñ-{i:02};{name};1.{:03};{:02}/11/2025;funda 1 l;Mesa {};{},5;Iñés\r\n",
            i,
            1 + i % 28,
            i % 3,
            10 + i
        ));
    }
    text
}

fn western(text: &str) -> Vec<u8> {
    text.chars().map(|letter| u8::try_from(letter as u32).unwrap()).collect()
}

fn take(desk: &mut Desk, bytes: &[u8], only_try: bool) -> Result<outplant::desk::SheetImported, ImportError> {
    desk.import_sheet(bytes, None, SheetKind::Trays, None, "mara", only_try).map(|(sheet, _)| sheet)
}

/// Entries of trays and of the bags that they name.
const ENTRIES_OF_60: usize = 61;

#[test]
fn sixty_trays_of_an_english_sheet_arrive_and_undo_takes_them_back() {
    let (_folder, mut desk) = begun();
    let before = desk.count();
    let tried = take(&mut desk, english().as_bytes(), true).unwrap();
    assert_eq!((tried.rows, tried.drafts, desk.count()), (60, ENTRIES_OF_60, before));
    assert!(desk.picture().trays.is_empty());
    let taken = take(&mut desk, english().as_bytes(), false).unwrap();
    assert_eq!((taken.rows, taken.recorded.entries.len(), taken.delimiter), (60, ENTRIES_OF_60, ','));
    let picture = desk.picture();
    assert_eq!(picture.trays.len(), 60);
    let seventh = &picture.trays[&tray("t-07")];
    assert_eq!((seventh.standing, seventh.place.as_ref().unwrap().as_str()), (27, "Bench 3"));
    assert_eq!(seventh.age_days, Some(now().today.days_since(Day::from_ymd(2025, 8, 8).unwrap())));
    // The bag says itself how much it holds.
    assert!(!taken.unknowns.iter().any(|one| one.what == UnknownWhat::ContainerVolume));
    let bag = ContainerName::new("1 l bag").unwrap();
    assert_eq!(picture.site.containers[&bag].on(now().today).unwrap().volume_ml.0, 1000.0);
    // The same sheet a second time is refused in one sentence, and writes nothing.
    let entries = desk.count();
    let Err(ImportError::Sheet(again)) = take(&mut desk, english().as_bytes(), false) else { panic!("taken twice") };
    let reasons: Vec<&Reason> = again.faults.listed.iter().map(|fault| &fault.reason).collect();
    assert_eq!((reasons, desk.count()), (vec![&Reason::AllInTheBook(60)], entries));
    // Of a sheet with a new row among the old ones each old row is named.
    let more = format!("{}t-61,coffee,9,,,\r\n", english());
    let Err(ImportError::Sheet(again)) = take(&mut desk, more.as_bytes(), false) else { panic!("taken twice") };
    assert_eq!((again.faults.count, again.faults.listed[59].line), (60, 61));
    assert_eq!(again.faults.listed[0].reason, Reason::InTheBook("t-01".into()));
    let back = desk.undo(&Withdraws::LastCommand, false, "mara", "a slip").unwrap();
    assert_eq!(back.entries.len(), ENTRIES_OF_60);
    assert!(desk.picture().trays.is_empty());
}

#[test]
fn sixty_trays_of_a_spanish_sheet_arrive_in_any_encoding() {
    let marked = format!("\u{feff}{}", spanish());
    for (bytes, encoding) in [(western(&spanish()), Encoding::Windows1252), (marked.into_bytes(), Encoding::Utf8)] {
        let (_folder, mut desk) = begun();
        let order = Some(DayOrder::DayFirst);
        let taken = desk.import_sheet(&bytes[..], None, SheetKind::Trays, order, "mara", false).unwrap().0;
        assert_eq!((taken.rows, taken.encoding, taken.delimiter), (60, encoding, ';'));
        let passed: Vec<&str> = taken.passed_over.iter().map(|column| column.written.as_str()).collect();
        assert_eq!(passed, ["Dueño"]);
        let picture = desk.picture();
        assert_eq!(picture.trays.len(), 60);
        let second = &picture.trays[&tray("Ñ-02")];
        assert_eq!((second.standing, second.place.as_ref().unwrap().as_str()), (1002, "Mesa 2"));
        let plantain = picture.site.species.find("plantain").unwrap();
        assert_eq!(second.species.as_ref(), Some(&plantain));
        let body = desk.journal();
        let mut lines = Vec::new();
        body.sealed::<outplant::desk::JournalError>(&mut |sealed| {
            lines.push(sealed.body.clone());
            Ok(())
        })
        .unwrap();
        assert!(lines.iter().any(|line| line.contains("\"height_cm\":12.5") && line.contains("Ñ-02")));
    }
}

#[test]
fn a_half_bad_sheet_writes_nothing_and_lists_every_fault() {
    let (_folder, mut desk) = begun();
    let before = desk.count();
    let bad = english()
        .replace("t-05,avocado", "t-05,avokado")
        .replace("t-11,jackfruit,31", "t-11,jackfruit,some")
        .replace("t-40,", "t-39,")
        .replace("\r\nt-50,", "\r\n,");
    let Err(ImportError::Sheet(sheet)) = take(&mut desk, bad.as_bytes(), false) else { panic!("was taken") };
    let faults = &sheet.faults;
    let places: Vec<(usize, Option<usize>)> = faults.listed.iter().map(|fault| (fault.line, fault.column)).collect();
    assert_eq!(places, [(6, Some(2)), (12, Some(3)), (41, Some(1)), (51, Some(1))]);
    assert_eq!(faults.listed[2].reason, Reason::SameAsLine { written: "t-39".into(), line: 40 });
    assert_eq!(desk.count(), before);
    assert!(desk.picture().trays.is_empty());
}

#[test]
fn a_sheet_of_beds_arrives_with_what_stands_in_them() {
    let (_folder, mut desk) = begun();
    let text = "Bed,Length,Width,Species,Spacing,Standing,Nurse plants,Nurses planted,Light\n\
                Upper 1,30,12,coffee,2.5 x 2,10,banana 20,August 2025,60%\n\
                Upper 2,20,6,avocado,,,,,\n";
    let taken = desk.import_sheet(text.as_bytes(), None, SheetKind::Beds, None, "mara", false).unwrap().0;
    assert_eq!((taken.rows, taken.drafts), (2, 5));
    let picture = desk.picture();
    let bed = &picture.beds[&BedName::new("Upper 1").unwrap()];
    // 12 / 2.5 = 4 rows and 30 / 2 = 15 places, half a spacing inside.
    assert_eq!((bed.species[0].positions, bed.species[0].living), (60, 10));
    assert_eq!((bed.nurses[0].count, bed.nurses[0].planted), (20, Day::from_ymd(2025, 8, 15).unwrap()));
    assert_eq!(bed.light_now.as_ref().unwrap().share, 0.6);
    assert_eq!(bed.field.as_str(), "Home");
    // Once more would set every plant a second time.
    let Err(ImportError::Sheet(again)) = desk.import_sheet(text.as_bytes(), None, SheetKind::Beds, None, "mara", false)
    else {
        panic!("taken twice")
    };
    assert_eq!(again.faults.listed[0].reason, Reason::AllInTheBook(2));
    assert_eq!(desk.undo(&Withdraws::LastCommand, false, "mara", "a slip").unwrap().entries.len(), 5);
    assert!(desk.picture().beds.is_empty());
}

#[test]
fn the_paper_of_a_walk_is_written_whole_or_not_at_all() {
    let (_folder, mut desk) = begun();
    take(&mut desk, english().as_bytes(), false).unwrap();
    let beds = "bed,length,width,species,spacing\nUpper 1,30,12,avocado,2x2\n";
    desk.import_sheet(beds.as_bytes(), None, SheetKind::Beds, None, "mara", false).unwrap();
    let before = desk.count();
    let paper = "t-07 25\nt-08 -3 rats\nt-09 > Bench 2\nt-05 @ Upper 1 5\nt-10 > u-10 12 2 l bag\nu-10 11\nrain 12\n";
    assert_eq!(desk.write_sheet(paper.as_bytes(), None, "mara", true).unwrap().lines, 7);
    assert_eq!(desk.count(), before);
    let taken = desk.write_sheet(paper.as_bytes(), None, "mara", false).unwrap();
    assert_eq!(taken.recorded.entries.len(), 7);
    let picture = desk.picture();
    let standing = |code: &str| picture.trays[&tray(code)].standing;
    assert_eq!(["t-07", "t-08", "t-05", "t-10", "u-10"].map(standing), [25, 25, 20, 18, 11]);
    assert_eq!(picture.trays[&tray("t-09")].place.as_ref().unwrap().as_str(), "Bench 2");
    assert_eq!(picture.beds[&BedName::new("Upper 1").unwrap()].species[0].living, 5);
    // More out than stands: refused by the books with the line of the paper, and nothing of it is written.
    let wrong = "t-07 24\n# a slip\nt-08 @ Upper 1 900\n";
    let Err(ImportError::Desk(DeskError::Refused(refused))) = desk.write_sheet(wrong.as_bytes(), None, "mara", false)
    else {
        panic!("was written")
    };
    assert_eq!((refused.len(), refused[0].line), (1, 3));
    let Err(ImportError::Lines(faults, _)) = desk.write_sheet(b"t-77 3\nt-07 x y\n", None, "mara", false) else {
        panic!("was written")
    };
    assert_eq!(faults.listed.iter().map(|fault| fault.line).collect::<Vec<_>>(), [1, 2]);
    assert_eq!(desk.count(), before + 7);
    assert_eq!(desk.undo(&Withdraws::LastCommand, false, "mara", "a slip").unwrap().entries.len(), 7);
}

#[test]
fn what_is_only_tried_gives_the_same_answers_as_what_is_done() {
    let beds = "bed,length,width,species,spacing,light\nUpper 1,30,12,avocado,2x2,60\n";
    for (kind, sheet) in [(SheetKind::Trays, english()), (SheetKind::Beds, beds.to_string())] {
        let (_folder, mut desk) = begun();
        let before = desk.count();
        let (tried, as_tried) = desk.import_sheet(sheet.as_bytes(), None, kind, None, "mara", true).unwrap();
        assert_eq!(desk.count(), before);
        assert!(desk.picture().trays.is_empty() && desk.picture().beds.is_empty());
        let (done, as_done) = desk.import_sheet(sheet.as_bytes(), None, kind, None, "mara", false).unwrap();
        assert_eq!((tried.rows, tried.drafts, &tried.read), (done.rows, done.drafts, &done.read));
        assert_eq!((&tried.understood, &tried.unknowns, &tried.names), (&done.understood, &done.unknowns, &done.names));
        assert_eq!(as_tried.trays.len(), as_done.trays.len());
        for (code, tray) in &as_done.trays {
            let other = &as_tried.trays[code];
            let verdicts = |picture: &outplant::reckon::picture::TrayPicture| -> Vec<_> {
                picture.criteria.iter().map(|one| (one.rule(), one.met(), one.blocks, one.expected)).collect()
            };
            assert_eq!((tray.ready, tray.standing, verdicts(tray)), (other.ready, other.standing, verdicts(other)));
        }
        let standing = |picture: &outplant::reckon::Picture| -> Vec<_> {
            picture.beds.values().flat_map(|bed| bed.species.iter().map(|line| line.standing)).collect()
        };
        assert_eq!(standing(&as_tried), standing(&as_done));
    }
}

#[test]
fn a_batch_names_all_faults_at_once_and_no_follow_on_ones() {
    let (_folder, mut desk) = begun();
    take(&mut desk, english().as_bytes(), false).unwrap();
    let before = desk.count();
    let faulty = |desk: &mut Desk, paper: &str| match desk.write_sheet(paper.as_bytes(), None, "mara", false) {
        Err(ImportError::Lines(faults, refused)) => (
            faults.listed.iter().map(|fault| fault.line).collect::<Vec<_>>(),
            refused.iter().map(|one| one.line).collect::<Vec<_>>(),
        ),
        Err(ImportError::Desk(DeskError::Refused(refused))) => {
            (Vec::new(), refused.iter().map(|one| one.line).collect())
        }
        other => panic!("{other:?}"),
    };
    // A line that cannot be read, a tray nobody knows, and two that the books cannot bear: all at once.
    let paper = "t-07 fortyish\ncounted tray=t-99 standing=3\nt-08 x 900 runts\nt-09 -500 rats\nt-10 12\n";
    assert_eq!(faulty(&mut desk, paper), (vec![1], vec![2, 3, 4]));
    // Without the unreadable one the same three.
    assert_eq!(faulty(&mut desk, &paper.replace("t-07 fortyish\n", "\n")), (vec![], vec![2, 3, 4]));
    // What stands in a tray after a faulty recount is not judged, nor what goes on from a tray that was not made.
    assert_eq!(faulty(&mut desk, "t-07 recount 9oo\nt-07 x 300\nt-10 > u-1 x\nu-1 -2\n"), (vec![1, 3], vec![]));
    // What happened before the trays came into the book is in their numbers: said so.
    let yesterday = Some(now().today - 1);
    let Err(ImportError::Desk(DeskError::Refused(refused))) =
        desk.write_sheet(b"t-08 -3 rats\n", yesterday, "mara", true)
    else {
        panic!("was written")
    };
    assert_eq!(refused[0].why, Refusal::BeforeTheBook { tray: tray("t-08"), since: now().today });
    // So is a count: it would stand beside those that came in.
    let Err(ImportError::Desk(DeskError::Refused(refused))) = desk.write_sheet(b"t-08 21\n", yesterday, "mara", true)
    else {
        panic!("was written")
    };
    assert_eq!(refused[0].why, Refusal::BeforeTheBook { tray: tray("t-08"), since: now().today });
    // One loss too large does not make the small one behind it a fault.
    assert_eq!(faulty(&mut desk, "t-08 -900 rats\nt-08 -3 rats\n"), (vec![], vec![1]));
    assert_eq!(desk.count(), before);
}

#[test]
fn a_batch_is_read_in_any_encoding_of_a_sheet() {
    let paper = "t-07 25\nt-08 -3 comidas por ratas del año\n";
    let mut little = vec![0xff, 0xfe];
    little.extend(paper.encode_utf16().flat_map(u16::to_le_bytes));
    let marked = format!("\u{feff}{paper}").into_bytes();
    for bytes in [western(paper), little, marked, paper.as_bytes().to_vec()] {
        let (_folder, mut desk) = begun();
        take(&mut desk, english().as_bytes(), false).unwrap();
        let taken = desk.write_sheet(&bytes, None, "mara", false).unwrap();
        assert_eq!(taken.read[1].1.body["cause"], json!("comidas por ratas del año"));
    }
    let (_folder, mut desk) = begun();
    let refused = |desk: &mut Desk, bytes: &[u8]| match desk.write_sheet(bytes, None, "mara", false) {
        Err(ImportError::Read(ReadFault::Lines(faults)) | ImportError::Lines(faults, _)) => {
            faults.listed[0].reason.clone()
        }
        other => panic!("{other:?}"),
    };
    assert_eq!(refused(&mut desk, b"PK\x03\x04"), Reason::Workbook(WorkbookFault::NotHere));
    assert_eq!(refused(&mut desk, b"\n# nothing\n"), Reason::NoLines);
    assert_eq!(refused(&mut desk, b""), Reason::NoLines);
}

/// 42 trays on six benches, as the sheet walks them; most have stood longer than their bags hold.
pub fn of_a_first_day() -> String {
    let species = ["coffee", "avocado", "grevillea", "jackfruit", "cordia", "mango", "cedrela", "gliricidia"];
    let benches = ["Line 3", "Line 1", "House", "Line 2", "Gate", "Tank"];
    let mut text = "Tray,Species,How many,Sown about,Bag,Bench\n".to_string();
    for i in 1..=42 {
        let month = 1 + (i * 5) % 12;
        let year = if month > 2 { 2025 } else { 2026 };
        let (plants, day, bench) = (20 + (i * 13) % 70, 1 + i % 28, benches[(i - 1) / 7]);
        text.push_str(&format!("t-{i:02},{},{plants},{day:02}/{month:02}/{year},1 l bag,{bench}\n", species[i % 8]));
    }
    text
}

#[test]
fn the_first_round_fits_its_minutes_and_asks_first_what_costs_least_and_decides_most() {
    let (_folder, mut desk) = begun();
    take(&mut desk, of_a_first_day().as_bytes(), false).unwrap();
    let picture = desk.picture();
    let walked = round(&picture);
    assert!(walked.minutes <= walked.minutes_allowed, "{}", walked.minutes);
    // Nothing is dug, potted on or hardened on what nobody looked at yet.
    assert_eq!(walked.work_minutes, 0.0);
    let asked: BTreeSet<Task> = walked.stops.iter().chain(&walked.can_wait).map(|stop| stop.task).collect();
    assert_eq!(asked, BTreeSet::from([Task::Gauge, Task::ReadLight, Task::CheckPlug, Task::Measure]));
    // One line for each bench decides about all its trays, and it comes first there; benches in the order of the sheet.
    let mut here: Vec<(&PlaceName, Task)> = Vec::new();
    for stop in &walked.stops {
        if let Where::Place(place) = &stop.at
            && here.last().is_none_or(|(before, _)| *before != place)
        {
            here.push((place, stop.task));
        }
    }
    let benches: Vec<&str> = here.iter().map(|(place, _)| place.as_str()).collect();
    assert_eq!(benches, ["Line 3", "Line 1", "House", "Line 2", "Gate", "Tank"]);
    assert!(here.iter().all(|(_, first)| *first == Task::ReadLight), "{here:?}");
    // Every tray past its bag is looked into before any is measured.
    let past = |stop: &Stop| stop.at_stake.what == Stake::Seedlings && stop.at_stake.within_days == 21;
    assert!(walked.can_wait.iter().all(|stop| !past(stop)));
    assert!(walked.stops.iter().filter(|stop| past(stop)).count() > 10);
    assert!(walked.stops.iter().all(|stop| stop.task != Task::Measure));
}

#[test]
fn a_sheet_that_is_not_taken_is_given_back_with_what_is_wrong_behind_each_row() {
    let home = Home::default().begun();
    let sheet = home.with("trays.csv", "Tray,Species,How many\nt-1,coffee,3 dozen\nt-2,cacoa,many\n");
    let marked = home.file("marked.csv");
    let (sheet, to) = (sheet.to_str().unwrap(), marked.to_str().unwrap());
    let said = home.refused(&["import", sheet, "--as", "trays", "--marked", to]);
    assert!(said.contains(to), "{said}");
    let copy = std::fs::read_to_string(&marked).unwrap();
    let rows: Vec<&str> = copy.trim_start_matches('\u{feff}').lines().collect();
    assert_eq!((rows[0], rows[1]), ("Tray,Species,How many,Remarks", "t-1,coffee,3 dozen,"));
    assert!(
        rows[2].starts_with("t-2,cacoa,many,\"") && rows[2].contains("cacao") && rows[2].contains("'many'"),
        "{copy}"
    );
    // A file that is there already stays.
    let again = home.refused(&["import", sheet, "--as", "trays", "--marked", to, "--lang", "es"]);
    assert!(again.contains("ya") && std::fs::read_to_string(&marked).unwrap() == copy, "{again}");
    // Dozens are counted out.
    let taken = home.with("dozens.csv", "Tray,Species,How many\nt-1,coffee,3 dozen\nt-2,coffee,media docena\n");
    home.done(&["import", taken.to_str().unwrap(), "--as", "trays"]);
    assert_eq!(home.json(&["why", "tray", "t-1"])["tray"]["standing"], serde_json::json!(36));
    assert_eq!(home.json(&["why", "tray", "t-2"])["tray"]["standing"], serde_json::json!(6));
}

/// A workbook of tests/reference/workbooks.
fn workbook(name: &str) -> Vec<u8> {
    std::fs::read(format!("{}/tests/reference/workbooks/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

#[test]
fn a_workbook_is_taken_as_its_sheet_of_text_would_be() {
    let text = "Tray,Species,Qty,Sown on\nt-1,coffee,41,2026-03-14\nt-2,avocado,12,2026-03-04\n";
    for name in ["trays_whole.xlsx", "trays_whole.ods"] {
        let (_folder, mut desk) = begun();
        let of_text = desk.import_sheet(text.as_bytes(), None, SheetKind::Trays, None, "mara", true).unwrap().0;
        let taken = desk.import_sheet(&workbook(name)[..], None, SheetKind::Trays, None, "mara", false).unwrap().0;
        assert_eq!((taken.rows, taken.sheet.as_deref()), (2, Some("Trays now")), "{name}");
        let drafts = |sheet: &outplant::desk::SheetImported| -> Vec<_> {
            sheet.read.iter().map(|(_, draft)| (draft.kind.clone(), draft.happened, draft.body.clone())).collect()
        };
        assert_eq!(drafts(&taken), drafts(&of_text), "{name}");
    }
}

#[test]
fn a_sheet_is_named_only_of_a_workbook_and_must_be_there() {
    let (_folder, mut desk) = begun();
    let mut reason =
        |bytes: &[u8], sheet: &str| match desk.import_sheet(bytes, Some(sheet), SheetKind::Trays, None, "mara", true) {
            Err(ImportError::Read(ReadFault::Lines(faults))) => faults.listed[0].reason.clone(),
            other => panic!("{other:?}"),
        };
    assert_eq!(reason(b"Tray,Species\n", "Trays now"), Reason::Workbook(WorkbookFault::NoneInText));
    assert!(
        matches!(reason(&workbook("trays.xlsx"), "Nowhere"), Reason::Workbook(WorkbookFault::NoSuchSheet { there, .. }) if there.len() == 3)
    );
}
