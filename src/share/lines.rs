//! JSON Lines of entries: drafts without identity, and sealed lines that another copy or an export wrote.

use serde_json::{Map, Value};
use std::io::{self, BufRead};

use super::draft::{Writer, clock_of, plain_text, read_kind, settle_draft, short};
use super::fault::{Fault, LineFaults, ReadFault, Reason};
use super::json;
use crate::base::{Day, EntryId, Moment};
use crate::nursery::entry::fault::{EntryFault, Problem};
use crate::nursery::envelope::{Draft, Hash, Sealed, canonical};

/// The longest line that is read, bytes. The fullest entry the fields allow, a bed with 10,000 lines of plan of some
/// 200 bytes, takes 2 MB; a line of more than twice that is no entry.
pub const LONGEST_LINE_BYTES: usize = 4 << 20;
/// How much of a line that is too long is passed over in search of its end, bytes; behind that the rest of the file is
/// left unread, so that a device or a wrong file without line ends does not keep the reader for ever.
const LONGEST_SKIP_BYTES: usize = 1 << 30;
/// Fields of the envelope that only mean something beside an `id`.
const ONLY_WITH_ID: [&str; 5] = ["id", "recorded", "command", "prev", "hash"];
/// Of these, those that no line with an `id` is without.
const NEEDED_BY_ID: [&str; 3] = ["recorded", "command", "hash"];
const BYTE_ORDER_MARK: &[u8] = b"\xef\xbb\xbf";

/// What a line holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Written {
    /// An entry without identity, to be written by this copy.
    Draft(Draft),
    /// An entry with identity, its hash verified.
    Sealed(Sealed),
}

/// A line that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Its number in the file, from 1.
    pub number: usize,
    /// What it holds.
    pub written: Written,
}

/// Reads every line or lists every fault. A line without `id` is a draft: `happened` is today and `who` the given name
/// unless written, and what only belongs to an `id` (`recorded`, `command`, `prev`, `hash`) is passed over. A line with
/// `id` keeps its bytes and must have its hash; kinds and fields nobody knows are kept only there.
pub fn read_lines(input: impl BufRead, today: Day, who: &str) -> Result<Vec<Line>, ReadFault> {
    let (lines, faults) = read_what_can_be_read(input, today, who).map_err(ReadFault::Io)?;
    faults.or(lines).map_err(ReadFault::Lines)
}

/// Every line that can be read, and the faults of the others.
pub fn read_what_can_be_read(input: impl BufRead, today: Day, who: &str) -> io::Result<(Vec<Line>, LineFaults)> {
    let mut lines = Vec::new();
    let faults = each_line(input, today, who, &mut |number, written| -> io::Result<()> {
        lines.extend(written.map(|written| Line { number, written }));
        Ok(())
    })?;
    Ok((lines, faults))
}

/// Reads line by line and hands each over with its number: what it holds, or nothing where it is empty or cannot be read.
/// Nothing is kept but the faults.
pub fn each_line<E: From<io::Error>>(
    mut input: impl BufRead,
    today: Day,
    who: &str,
    take: &mut dyn FnMut(usize, Option<Written>) -> Result<(), E>,
) -> Result<LineFaults, E> {
    let desk = Writer { today, who };
    let (mut faults, mut buffer) = (LineFaults::default(), Vec::new());
    for number in 1.. {
        let read = match next_line(&mut input, &mut buffer)? {
            LineTaken::Nothing => break,
            LineTaken::TooLong => Err(Fault::bare(Reason::LineTooLong { most_bytes: LONGEST_LINE_BYTES })),
            LineTaken::WithoutEnd => {
                faults.note(Fault::bare(Reason::LineWithoutEnd).in_line(number));
                break;
            }
            LineTaken::Line => read_bytes(&buffer, number == 1, desk),
        };
        match read {
            Ok(written) => take(number, written)?,
            Err(fault) => {
                faults.note(fault.in_line(number));
                take(number, None)?;
            }
        }
    }
    Ok(faults)
}

enum LineTaken {
    Nothing,
    Line,
    TooLong,
    WithoutEnd,
}

/// Takes the next line without its end into the buffer, never more than the limit of it.
fn next_line(input: &mut impl BufRead, line: &mut Vec<u8>) -> io::Result<LineTaken> {
    line.clear();
    let (mut length, mut begun) = (0_usize, false);
    let judged = |length: usize| if length > LONGEST_LINE_BYTES { LineTaken::TooLong } else { LineTaken::Line };
    loop {
        let available = match input.fill_buf() {
            Ok(available) => available,
            Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
            Err(error) => return Err(error),
        };
        if available.is_empty() {
            return Ok(if begun { judged(length) } else { LineTaken::Nothing });
        }
        begun = true;
        let end = available.iter().position(|byte| *byte == b'\n');
        let piece = &available[..end.unwrap_or(available.len())];
        let room = LONGEST_LINE_BYTES.saturating_sub(line.len());
        line.extend_from_slice(&piece[..piece.len().min(room)]);
        length = length.saturating_add(piece.len());
        let used = piece.len() + usize::from(end.is_some());
        input.consume(used);
        if end.is_some() {
            return Ok(judged(length));
        }
        if length > LONGEST_SKIP_BYTES {
            return Ok(LineTaken::WithoutEnd);
        }
    }
}

fn read_bytes(bytes: &[u8], first: bool, desk: Writer) -> Result<Option<Written>, Fault> {
    let bytes = if first { bytes.strip_prefix(BYTE_ORDER_MARK).unwrap_or(bytes) } else { bytes };
    let text = std::str::from_utf8(bytes).map_err(|error| {
        let before = error.valid_up_to();
        let column = String::from_utf8_lossy(&bytes[..before]).chars().count() + 1;
        Fault::at(column, Reason::NotUtf8 { byte: before + 1 })
    })?;
    let text = text.trim_matches([' ', '\t', '\r']);
    if text.is_empty() { Ok(None) } else { read_text(text, desk).map(Some) }
}

/// Reads the text of one line.
fn read_text(text: &str, desk: Writer) -> Result<Written, Fault> {
    let Value::Object(mut fields) = json::read_value(text)? else { return Err(Fault::bare(Reason::NotARecord)) };
    if fields.get("id").is_some_and(|id| !id.is_null()) {
        return sealed(fields).map(Written::Sealed);
    }
    fields.retain(|name, _| !ONLY_WITH_ID.contains(&name.as_str()));
    let known = match fields.remove("kind") {
        None | Some(Value::Null) => return Err(EntryFault::NoKind.into()),
        Some(Value::String(kind)) => read_kind(&kind)?,
        Some(_) => return Err(Fault::on("kind", Reason::Envelope(Problem::NotText))),
    };
    settle_draft(known, fields, desk).map(Written::Draft)
}

fn sealed(mut fields: Map<String, Value>) -> Result<Sealed, Fault> {
    let absent = |name: &&'static str| fields.get(*name).is_none_or(Value::is_null);
    let missing: Vec<&'static str> = NEEDED_BY_ID.into_iter().filter(absent).collect();
    if !missing.is_empty() {
        return Err(Fault::on("id", Reason::IdAlone(missing)));
    }
    let mut take = |name: &'static str| fields.remove(name).filter(|value| !value.is_null());
    let (id, happened, recorded) = (take("id"), take("happened"), take("recorded"));
    let (who, kind, command) = (take("who"), take("kind"), take("command"));
    let (clock, prev, hash) = (take("clock"), take("prev"), take("hash"));
    let number = needed(&command, "command")?;
    let mut sealed = Sealed {
        id: parsed::<EntryId>(&id, "id", |text| Reason::Envelope(Problem::NotAnEntry(text)))?,
        happened: parsed::<Day>(&happened, "happened", |text| Reason::Envelope(Problem::NotADay(text)))?,
        clock: clock.as_ref().map(|written| clock_of(written, "clock")).transpose()?,
        recorded: parsed::<Moment>(&recorded, "recorded", Reason::NotAMoment)?,
        who: whole_text(&who, "who")?,
        kind: whole_text(&kind, "kind")?,
        command: number
            .as_u64()
            .ok_or_else(|| Fault::on("command", Reason::Envelope(Problem::NotANumber(short(&number.to_string())))))?,
        prev: prev.as_ref().map(|written| hash_of(written, "prev")).transpose()?,
        hash: hash_of(needed(&hash, "hash")?, "hash")?,
        body: String::new(),
    };
    let body = Value::Object(fields);
    sealed.body = canonical(&body);
    let fields = if let Value::Object(fields) = body { fields } else { Map::new() };
    if sealed.reckoned_hash_of(fields) == sealed.hash {
        Ok(sealed)
    } else {
        Err(Fault::on("hash", Reason::WrongHash(sealed.id)))
    }
}

fn needed<'a>(value: &'a Option<Value>, field: &str) -> Result<&'a Value, Fault> {
    value.as_ref().ok_or_else(|| Fault::on(field, Reason::Envelope(Problem::Missing)))
}

fn parsed<T: std::str::FromStr>(
    value: &Option<Value>,
    field: &str,
    reason: impl FnOnce(String) -> Reason,
) -> Result<T, Fault> {
    let text = plain_text(needed(value, field)?, field)?;
    text.parse().map_err(|_| Fault::on(field, reason(short(text))))
}

/// A text with its bytes as they are, for sealed lines.
fn whole_text(value: &Option<Value>, field: &str) -> Result<String, Fault> {
    let written = needed(value, field)?.as_str();
    written.map(str::to_string).ok_or_else(|| Fault::on(field, Reason::Envelope(Problem::NotText)))
}

fn hash_of(written: &Value, field: &str) -> Result<Hash, Fault> {
    let text = written.as_str().unwrap_or_default();
    Hash::read(text).ok_or_else(|| Fault::on(field, Reason::NotAHash(short(text))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::DeviceId;
    use crate::nursery::entry::reading::settle_body;
    use crate::share::write_lines;
    use proptest::prelude::*;

    fn today() -> Day {
        Day::from_ymd(2026, 3, 14).unwrap()
    }

    fn read(text: &str) -> Result<Vec<Line>, LineFaults> {
        read_lines(text.as_bytes(), today(), "mara").map_err(|fault| match fault {
            ReadFault::Lines(faults) => faults,
            ReadFault::Io(error) => panic!("{error}"),
        })
    }

    fn draft(text: &str) -> Draft {
        match read(text).unwrap().remove(0).written {
            Written::Draft(draft) => draft,
            Written::Sealed(sealed) => panic!("{sealed:?}"),
        }
    }

    fn fault(text: &str) -> super::super::LineFault {
        read(text).unwrap_err().listed.remove(0)
    }

    fn entry(seq: u64) -> EntryId {
        EntryId { device: DeviceId::new("k3f9").unwrap(), seq }
    }

    fn seal_all(drafts: &[Draft]) -> Vec<Sealed> {
        let mut sealed: Vec<Sealed> = Vec::new();
        for (i, draft) in drafts.iter().enumerate() {
            let prev = sealed.last().map(|entry| entry.hash);
            let recorded = Moment::from_millis(1_773_500_000_000 + i as i64 * 1001);
            sealed.push(draft.seal(entry(i as u64 + 1), recorded, i as u64 / 2 + 1, prev));
        }
        sealed
    }

    #[test]
    fn what_a_line_does_not_say_is_today_and_the_given_person() {
        let read = draft(r#"{"kind":"counted","tray":"cof-031","standing":41}"#);
        assert_eq!((read.happened, read.who.as_str(), read.clock), (today(), "mara", None));
        let read = draft(r#"{"happened":"2026-03-12","who":"Teo","kind":"counted","tray":"cof-031","standing":41}"#);
        assert_eq!((read.happened.to_string().as_str(), read.who.as_str()), ("2026-03-12", "Teo"));
        assert_eq!(Value::Object(read.body), serde_json::json!({"tray":"cof-031","standing":41}));
    }

    #[test]
    fn a_time_under_at_is_the_time_of_day_and_a_list_is_places_in_the_bed() {
        let read = draft(r#"{"kind":"counted","tray":"cof-031","standing":41,"at":"07:40"}"#);
        assert_eq!((read.clock.unwrap().minutes(), read.body.contains_key("at")), (460, false));
        let blocked = r#"{"kind":"positions_blocked","bed":"Lower","at":["2.7"],"why":"rock","clock":"16:05"}"#;
        let read = draft(blocked);
        assert_eq!((read.clock.unwrap().minutes(), read.body["at"][0].as_str()), (965, Some("2.7")));
        let both = r#"{"kind":"counted","tray":"c","standing":4,"at":"07:40","clock":"07:41"}"#;
        assert_eq!(fault(both).reason, Reason::AtAndClock);
        let late = r#"{"kind":"counted","tray":"c","standing":4,"at":"25:00"}"#;
        assert_eq!(fault(late).reason, Reason::Envelope(Problem::NotAClock("25:00".into())));
    }

    #[test]
    fn every_bad_line_is_listed_with_its_number() {
        let text =
            "\u{feff}{\"kind\":\"flushed\",\"tray\":\"a\"}\r\n\n[1]\n{\"kind\":\"flushed\"}\n{\"kind\":\"flush\"}\n{";
        let faults = read(text).unwrap_err();
        let found: Vec<(usize, Option<&str>)> =
            faults.listed.iter().map(|fault| (fault.line, fault.field.as_deref())).collect();
        assert_eq!(found, [(3, None), (4, Some("tray")), (5, Some("kind")), (6, None)]);
        assert_eq!(faults.listed[0].reason, Reason::NotARecord);
        assert_eq!(faults.listed[3].reason, Reason::JsonCutShort);
        let many = read(&"{}\n".repeat(1500)).unwrap_err();
        assert_eq!((many.count, many.listed.len()), (1500, super::super::fault::MOST_FAULTS_LISTED));
    }

    #[test]
    fn hostile_lines_are_faults() {
        let with = |field: &str| format!(r#"{{"kind":"counted","tray":"c","standing":4,{field}}}"#);
        assert_eq!(fault(&with(r#""happened":"2026-03-15""#)).reason, Reason::ComingDay(today() + 1));
        assert!(matches!(fault(&with(r#""happened":"1899-12-31""#)).reason, Reason::TooLongAgo { .. }));
        assert_eq!(fault(&with(r#""dead":1e400"#)).reason, Reason::NumberTooLarge);
        assert_eq!(fault(&with(r#""dead":NaN"#)).reason, Reason::NotJson);
        assert!(matches!(fault(&with(r#""dead":"NaN""#)).reason, Reason::Entry(_)));
        assert_eq!(fault(&with(r#""tray":"d""#)).reason, Reason::NameTwice);
        assert_eq!(fault(&with(r#""Clock":"07:00","clock":"07:00""#)).reason, Reason::NameTwice);
        assert_eq!(fault(&with(&format!(r#""x":{}"#, "[".repeat(9000)))).reason, Reason::TooDeep);
        assert_eq!(fault(&with(r#""who":7"#)).reason, Reason::Envelope(Problem::NotText));
        let hidden = fault(&with(r#""who":"ma\u202era""#));
        let shown = "ma\\u{202e}ra".to_string();
        assert_eq!(hidden.reason, Reason::Unseen { place: 3, shown, in_name: false });
        let profile = "{\"kind\":\"species_set\",\"species\":\"COA\",\"profile\":{\"a\u{200b}\":{\"b\":1}}}";
        assert_eq!(fault(profile).field.as_deref(), Some("profile.a\\u{200b}"));
    }

    #[test]
    fn a_line_that_is_too_long_or_not_utf_8_is_named_and_the_next_ones_are_read() {
        let mut bytes = br#"{"kind":"flushed","tray":""#.to_vec();
        bytes.resize(LONGEST_LINE_BYTES + 1, b'x');
        bytes.extend_from_slice(b"\n{\"kind\":\"fl\xffushed\"}\n{\"kind\":\"flushed\"}\n");
        let Err(ReadFault::Lines(faults)) = read_lines(&bytes[..], today(), "mara") else { panic!("was read") };
        assert_eq!(faults.listed[0].reason, Reason::LineTooLong { most_bytes: LONGEST_LINE_BYTES });
        assert_eq!((faults.listed[1].line, &faults.listed[1].reason), (2, &Reason::NotUtf8 { byte: 12 }));
        assert_eq!((faults.listed[2].line, faults.count), (3, 3));
        bytes.truncate(LONGEST_LINE_BYTES);
        let Err(ReadFault::Lines(faults)) = read_lines(&bytes[..], today(), "mara") else { panic!("was read") };
        assert_eq!(faults.listed[0].reason, Reason::JsonCutShort);
    }

    #[test]
    fn the_fullest_entry_is_not_too_long() {
        let line = r#"{"species":"Coffea arabica","pattern":"rectangle","row_m":2.125,"in_row_m":2.125,"offset_m":1.125,"gap_m":3.125}"#;
        let plan = vec![line; crate::nursery::entry::shape::LONGEST_LIST].join(",");
        let bed = format!(r#"{{"kind":"bed_set","bed":"b","field":"f","length_m":1,"width_m":1,"plan":[{plan}]}}"#);
        assert_eq!(seal_all(&[draft(&bed)]).len(), 1);
    }

    #[test]
    fn a_sealed_line_keeps_what_nobody_here_knows_and_must_have_its_hash() {
        let body = serde_json::json!({"dreamt":"of\u{202e}rain","depth":[{"x":0.1}],"at":"07:40"});
        let foreign = Draft {
            happened: today() + 400,
            clock: None,
            who: " mara ".into(),
            kind: "dreamt".into(),
            body: body.as_object().unwrap().clone(),
        };
        let sealed = seal_all(&[foreign]).remove(0);
        assert_eq!(read(&sealed.line()).unwrap()[0].written, Written::Sealed(sealed.clone()));
        let changed = sealed.line().replace("07:40", "07:41");
        assert_eq!(fault(&changed).reason, Reason::WrongHash(entry(1)));
        let unhashed = r#"{"id":"k3f9:1","kind":"flushed","tray":"a"}"#;
        assert_eq!(fault(unhashed).reason, Reason::IdAlone(vec!["recorded", "command", "hash"]));
    }

    #[test]
    fn an_exported_line_without_its_id_is_a_new_entry() {
        let sealed = seal_all(&[draft(r#"{"kind":"flushed","tray":"a"}"#)]).remove(0);
        let anonymous = sealed.line().replace(r#""id":"k3f9:1","#, "");
        assert_eq!(draft(&anonymous), draft(r#"{"kind":"flushed","tray":"a"}"#));
    }

    fn any_draft() -> impl Strategy<Value = Draft> {
        let number = || prop_oneof![0.001..1e6_f64, proptest::num::f64::NORMAL, any::<i32>().prop_map(f64::from)];
        let text = || "[^\\p{C}\\u{2028}\\u{2029}]{1,20}".prop_filter("only blanks", |text| !text.trim().is_empty());
        let body = prop_oneof![
            (text(), 0..2000_u32).prop_map(|(tray, n)| ("counted", serde_json::json!({"tray":tray,"standing":n}))),
            (text(), text()).prop_map(|(about, text)| ("noted", serde_json::json!({"about":about,"text":text}))),
            (0.001..1e6_f64, 0.001..1e6_f64).prop_map(|(height, collar)| {
                ("measured", serde_json::json!({"tray":"t","plants":[{"height_cm":height,"collar_mm":collar}]}))
            }),
            (text(), number(), number()).prop_map(|(name, a, b)| {
                ("species_set", serde_json::json!({"species":"COA","profile":{name:a,"list":[b,null,true]}}))
            }),
        ];
        (body, 0..40_000_i32, proptest::option::of((0..24_u32, 0..60_u32)), text()).prop_filter_map(
            "a body that cannot be",
            |((kind, body), ago, clock, who)| {
                let body = settle_body(kind, body.as_object()?).ok()?;
                let clock = clock.and_then(|(hour, minute)| crate::base::Clock::from_hm(hour, minute));
                Some(Draft { happened: today() - ago, clock, who: who.trim().into(), kind: kind.into(), body })
            },
        )
    }

    proptest! {
        #[test]
        fn an_export_read_back_is_the_same(drafts in prop::collection::vec(any_draft(), 0..12)) {
            let sealed = seal_all(&drafts);
            let mut bytes = Vec::new();
            prop_assert_eq!(write_lines(&sealed, &mut bytes).unwrap(), sealed.len() as u64);
            let read = read_lines(&bytes[..], today(), "nobody").unwrap();
            let back: Vec<Sealed> = read.into_iter().map(|line| match line.written {
                Written::Sealed(sealed) => sealed,
                Written::Draft(draft) => panic!("{draft:?}"),
            }).collect();
            prop_assert_eq!(&back, &sealed);
            let mut again = Vec::new();
            write_lines(back, &mut again).unwrap();
            prop_assert_eq!(again, bytes);
        }

        #[test]
        fn settling_a_settled_body_changes_nothing(draft in any_draft()) {
            prop_assert_eq!(settle_body(&draft.kind, &draft.body).unwrap(), draft.body);
        }

        #[test]
        fn no_bytes_make_it_panic(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
            let _ = read_lines(&bytes[..], today(), "mara");
        }

        #[test]
        fn no_text_near_an_entry_makes_it_panic(
            text in r#"(\{"(kind|id|at|tray|hash|happened)":"?(counted|k3f9:1|07:40|[0-9]{0,4}-03-14|.{0,5})"?[,}\n]?){0,6}"#,
        ) {
            let _ = read_lines(text.as_bytes(), today(), "mara");
        }

        #[test]
        fn a_letter_changed_in_a_sealed_line_is_noticed(draft in any_draft(), at in any::<prop::sample::Index>()) {
            let sealed = seal_all(&[draft]).remove(0);
            let mut bytes = sealed.line().into_bytes();
            let at = at.index(bytes.len());
            bytes[at] = if bytes[at] == b'7' { b'8' } else { b'7' };
            if let Ok(lines) = read_lines(&bytes[..], today(), "mara") {
                // Without its name `id` it is a draft; a digit beyond what a number holds does not change the entry.
                for line in lines {
                    prop_assert!(matches!(line.written, Written::Draft(_)) || line.written == Written::Sealed(sealed.clone()));
                }
            }
        }
    }
}
