//! Any bytes through import, batch, sheets and write: no panic, nothing that takes over a second, and nothing but our own
//! signs in what is said about it.

use std::time::{Duration, Instant};

use outplant::base::Moment;
use outplant::base::text::is_unseen;
use outplant::desk::{Desk, ImportError, Now, SheetKind, read_typed};
use outplant::nursery::species::Catalogue;
use outplant::share::{FORMS, FORMS_IN_SPANISH, split_pairs};
use outplant::wording::{Lang, Wording};
use proptest::prelude::*;

use super::{Dice, Row, count, unharmed};
use crate::support::day;
use crate::support::program::Home;

/// What an input may take.
const MOST: Duration = Duration::from_secs(1);

/// Bits of text that have made programs stumble.
const NASTY: [&str; 34] = [
    "\u{1b}]0;owned\u{7}",
    "\u{1b}[2J",
    "\u{1b}[31m",
    "\u{9b}31m",
    "\u{202e}",
    "\u{200b}",
    "\u{feff}",
    "\u{e0041}",
    "\0",
    "\r",
    "\r\n",
    "\u{7f}",
    "\u{85}",
    "\u{2028}",
    "ｶ́",
    "🌱\u{200d}🌱",
    "e\u{301}",
    "ß",
    "İ",
    "=1+1",
    "@x",
    "1e999",
    "-0",
    "NaN",
    "0x10",
    "９９",
    "99999999999999999999",
    "1.7976931348623157e308",
    "\\ud800",
    "\\u001b[2J",
    "31/02/2026",
    "%s%n",
    "../../x",
    "\"\"\"",
];

fn seeds() -> Vec<(Door, String)> {
    let mut seeds: Vec<(Door, String)> = Vec::new();
    for (form, _) in FORMS.iter().chain(FORMS_IN_SPANISH) {
        seeds.push((Door::Batch, form.to_string()));
    }
    for line in [
        r#"{"kind":"noted","text":"rain in the night"}"#,
        r#"{"kind":"counted","tray":"cof-031","standing":41,"happened":"2026-03-14","at":"07:40"}"#,
        r#"{"clock":"07:40","command":1,"happened":"2026-03-14","hash":"a6a76fb0fcd04e43593f1af6ff648e92f4fe5031de1026193161fc2a99e90334","id":"kilima01:1","kind":"counted","prev":null,"recorded":"2026-03-14T04:41:05.250Z","standing":41,"tray":"cof-031","who":"amani"}"#,
        r#"{"kind":"bed_set","bed":"Lower","field":"Terrace","length_m":30,"width_m":12,"plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}"#,
    ] {
        seeds.push((Door::Lines, line.to_string()));
    }
    seeds.push((
        Door::Trays,
        "Tray;Species;How many;Sown about;Bag;Bench\ncof-1;coffee;40;2025-11;1 l;Half shade\n".into(),
    ));
    seeds.push((
        Door::Trays,
        "Bandeja,Especie,Cuántas,Sembrada hacia\nbandeja 2,\"café\",\"1.200\",12/11/2025\n".into(),
    ));
    seeds.push((Door::Beds, "Bed,Length,Width,Species,Spacing\nUpper,20,6,coffee,2x2\n".into()));
    for pairs in [
        "tray=t1 standing=41 at=07:40",
        "text=\"a b\" happened=yesterday",
        "bed=Lower task=cleared",
        "plants=[12 4.5,13 5]",
    ] {
        seeds.push((Door::Typed, pairs.into()));
    }
    seeds
}

#[derive(Clone, Copy, PartialEq, Debug)]
enum Door {
    Lines,
    Batch,
    Trays,
    Beds,
    Typed,
}

fn mutated(seed: &str, dice: &mut Dice, others: &[(Door, String)]) -> Vec<u8> {
    let mut bytes = seed.as_bytes().to_vec();
    for _ in 0..1 + dice.below(4) {
        let at = dice.below(bytes.len() + 1);
        match dice.below(8) {
            0 if at < bytes.len() => bytes[at] ^= 1 << dice.below(8),
            1 => drop(bytes.splice(at..at, NASTY[dice.below(NASTY.len())].bytes())),
            2 => bytes.truncate(at),
            3 => {
                let end = (at + dice.below(12)).min(bytes.len());
                drop(bytes.drain(at..end));
            }
            4 => {
                let noise_length = dice.below(9);
                let noise = dice.bytes(noise_length);
                drop(bytes.splice(at..at, noise));
            }
            5 => {
                let end = (at + dice.below(40)).min(bytes.len());
                let again = bytes[at..end].repeat(1 + dice.below(6));
                drop(bytes.splice(at..at, again));
            }
            6 => {
                let other = others[dice.below(others.len())].1.as_bytes();
                let from = dice.below(other.len());
                drop(bytes.splice(at..at, other[from..].to_vec()));
            }
            _ => drop(bytes.splice(at..at, b"\n".to_vec())),
        }
    }
    bytes
}

struct Stage {
    desk: Desk,
    wordings: [Wording; 2],
    species: Catalogue,
    _home: Home,
}

impl Stage {
    fn new() -> Stage {
        let home = Home { folder: super::quick_folder(), ..Home::default() }.begun();
        home.write("plants_received", &["tray=cof-031", "species=coffee", "count=50", "from=opening", "form=bag"]);
        let moment: Moment = "2026-04-15T15:00:00Z".parse().unwrap();
        let now = Now { today: day("2026-04-15"), clock: None, moment };
        let desk = Desk::open(&home.file("nursery.outplant"), &home.file("shelf"), now).unwrap();
        Stage {
            desk,
            wordings: [Wording::new(Lang::En), Wording::new(Lang::Es)],
            species: Catalogue::built_in(),
            _home: home,
        }
    }

    /// Lets bytes in by a door, writing nothing, and gives every sentence said about them.
    fn said(&mut self, door: Door, bytes: &[u8]) -> Vec<String> {
        let today = day("2026-04-15");
        let fault = match door {
            Door::Lines => self.desk.import(bytes, "mara", true).err(),
            Door::Batch => self.desk.write_sheet(bytes, None, "mara", true).err(),
            Door::Trays | Door::Beds => {
                let kind = if door == Door::Trays { SheetKind::Trays } else { SheetKind::Beds };
                match self.desk.import_sheet(bytes, None, kind, None, "mara", true) {
                    Ok((sheet, _)) => {
                        return self
                            .wordings
                            .iter()
                            .flat_map(|wording| {
                                wording.sheet_form(&sheet).lines().map(str::to_string).collect::<Vec<_>>()
                            })
                            .collect();
                    }
                    Err(fault) => Some(fault),
                }
            }
            Door::Typed => {
                let text = String::from_utf8_lossy(bytes);
                let Ok(pairs) = split_pairs(&text) else { return Vec::new() };
                let kinds = ["counted", "noted", "prepared", "measured", "withdrawn"];
                let kind = kinds[bytes.len() % kinds.len()];
                return match read_typed(kind, &pairs, today, "mara") {
                    Err(fault) => self.wordings.iter().map(|wording| wording.pair_fault(&fault)).collect(),
                    Ok(draft) => match self.desk.rehearse(vec![draft]) {
                        Err(fault) => self
                            .wordings
                            .iter()
                            .flat_map(|wording| wording.desk_error(&fault, "book", &self.species))
                            .collect(),
                        Ok(_) => Vec::new(),
                    },
                };
            }
        };
        let Some(fault) = fault else { return Vec::new() };
        self.wordings.iter().flat_map(|wording| sentences(wording, &fault, &self.species)).collect()
    }

    fn fault_of(&mut self, door: Door, bytes: &[u8]) -> Option<String> {
        let begun = Instant::now();
        let said = unharmed("letting it in", || self.said(door, bytes));
        let took = begun.elapsed();
        let shown = || format!("{door:?} {:?}", String::from_utf8_lossy(&bytes[..bytes.len().min(300)]));
        match said {
            Err(why) => Some(format!("{why}: {}", shown())),
            Ok(_) if took > MOST => Some(format!("it took {took:?}: {}", shown())),
            Ok(said) => {
                let hidden = said.iter().find(|line| line.chars().any(is_unseen));
                hidden.map(|line| format!("it is answered with {line:?}: {}", shown()))
            }
        }
    }
}

fn sentences(wording: &Wording, fault: &ImportError, species: &Catalogue) -> Vec<String> {
    match fault {
        ImportError::Read(fault) => wording.read_fault(fault, "lines"),
        ImportError::Lines(faults, refused) => {
            let refused = refused.iter().map(|one| wording.refused(one, species));
            wording.line_faults(faults).into_iter().chain(refused).collect()
        }
        ImportError::Sheet(sheet) => wording.line_faults(&sheet.faults),
        ImportError::Desk(fault) => wording.desk_error(fault, "book", species),
    }
}

#[test]
fn changed_text_through_every_door_neither_stops_nor_holds_up_the_program() {
    let inputs = count("TEXTS", 2_000, 1_000_000);
    let mut row = Row::begin("foreign text: known text changed, through import, batch, sheets and write");
    let (mut stage, seeds, mut dice, mut longest) = (Stage::new(), seeds(), Dice::new(3), Duration::ZERO);
    for _ in 0..inputs {
        let (door, seed) = &seeds[dice.below(seeds.len())];
        let bytes = mutated(seed, &mut dice, &seeds);
        // Now and then through a door it was not meant for.
        let door = if dice.below(10) == 0 { seeds[dice.below(seeds.len())].0 } else { *door };
        let begun = Instant::now();
        let fault = stage.fault_of(door, &bytes);
        longest = longest.max(begun.elapsed());
        row.ran(fault);
    }
    row.found = format!("the longest took {:.0} ms", longest.as_secs_f64() * 1000.0);
    row.must_hold();
}

#[test]
fn any_bytes_through_every_door_neither_stop_nor_hold_up_the_program() {
    let cases = count("BYTES", 200, 20_000);
    let mut row = Row::begin("foreign text: any bytes and any text, each through every door");
    let stage = std::cell::RefCell::new(Stage::new());
    let config = ProptestConfig { cases: u32::try_from(cases).unwrap(), ..crate::support::cases(200) };
    let any = prop_oneof![
        proptest::collection::vec(any::<u8>(), 0..400),
        "(.|\\PC|[\\x00-\\x1f]){0,200}".prop_map(String::into_bytes),
        "[{}\\[\\]\":,0-9a-z\\\\ \n]{0,200}".prop_map(String::into_bytes),
    ];
    let counted = std::cell::RefCell::new(&mut row);
    let tried = proptest::test_runner::TestRunner::new(config).run(&any, |bytes| {
        for door in [Door::Lines, Door::Batch, Door::Trays, Door::Beds, Door::Typed] {
            let fault = stage.borrow_mut().fault_of(door, &bytes);
            counted.borrow_mut().ran(fault.clone());
            prop_assert!(fault.is_none(), "{}", fault.unwrap_or_default());
        }
        Ok(())
    });
    row.failures.extend(tried.err().map(|error| error.to_string()));
    row.must_hold();
}

/// Words for each command that shows what was written.
const SHOWN: [&[&str]; 8] = [
    &["ready"],
    &["walk"],
    &["why", "tray", "cof-031"],
    &["export", "--as", "csv"],
    &["export"],
    &["check"],
    &["species"],
    &["undo", "--dry-run"],
];

#[test]
fn nothing_but_our_own_signs_comes_out_of_the_program() {
    let runs = count("SIGNS", 12, 600);
    let mut row = Row::begin("nothing but our own signs in answers: hostile text typed, imported, in names of files");
    let home = Home { folder: super::quick_folder(), ..Home::default() }.begun();
    home.write("plants_received", &["tray=cof-031", "species=coffee", "count=50", "from=opening", "form=bag"]);
    let mut dice = Dice::new(11);
    for run in 0..runs {
        let text: String = (0..3).map(|_| NASTY[dice.below(NASTY.len())].replace('\0', "")).collect();
        let file = home.with("lines", format!("{{\"kind\":\"noted\",\"text\":{}}}\n{text}", serde_json::json!(text)));
        let file = file.display().to_string();
        let (typed, named) = (format!("text=a{text}b"), format!("{text}/none"));
        let shown = SHOWN[run as usize % SHOWN.len()];
        for words in [
            &["write", "noted", &typed][..],
            &["write", &text],
            &["import", &file],
            &["write", "--batch", &file],
            &["import", &named],
            &["why", "tray", &text],
            &[&text],
            &["--nursery", &named, "ready"],
            &["rescue", &named],
            shown,
        ] {
            let output =
                home.program().args(words).args(["--lang", if run % 2 == 0 { "en" } else { "es" }]).output().unwrap();
            for out in [&output.stdout, &output.stderr] {
                // Tables for spreadsheets end their lines with CR LF.
                let said = String::from_utf8_lossy(out).replace("\r\n", "\n");
                let hidden = said.chars().find(|letter| is_unseen(*letter) && *letter != '\n');
                let ended = output.status.code().is_some_and(|code| (0..=6).contains(&code));
                row.ran(
                    (hidden.is_some() || !ended)
                        .then(|| format!("{words:?} ended with {:?} and said {said:?}", output.status)),
                );
            }
        }
    }
    row.must_hold();
}
