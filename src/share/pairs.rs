//! The typed form of an entry: `write KIND key=value ...`, and one text split into such pairs.

use serde_json::{Map, Value};

use super::draft::{Writer, at_is_clock, read_kind, settle_draft, short};
use super::fault::{Fault, PairFault, Reason};
use super::hand_day::{read_any_day, read_coming_day, read_done_day};
use super::json;
use crate::base::{Day, text};
use crate::nursery::entry::KindOfEntry;
use crate::nursery::entry::fault::{EntryFault, FieldFault};
use crate::nursery::entry::fields::{find_field, unknown_field};
use crate::nursery::entry::in_spanish::beside_of_spanish;
use crate::nursery::entry::reading::typed_value;
use crate::nursery::entry::shape::Shape;
use crate::nursery::envelope::Draft;

/// The envelope's fields that may be typed beside those of the kind.
const ENVELOPE: [&str; 4] = ["happened", "who", "at", "clock"];

/// Reads `key=value` pairs of a kind, `happened=`, `who=` and `at=` or `clock=` (a time of day) among them. Lists and
/// records are JSON; a list of plain words may be typed with commas.
pub fn read_pairs(kind: &str, pairs: &[String], today: Day, who: &str) -> Result<Draft, PairFault> {
    let known = read_kind(kind).map_err(|fault| PairFault::new(None, fault))?;
    let mut fields = Map::new();
    for (i, pair) in pairs.iter().enumerate() {
        let numbered = |fault: Fault| PairFault::new(Some(i + 1), fault);
        let in_english = with_english_name(pair);
        let pair = in_english.as_deref().unwrap_or(pair);
        let in_figures = day_in_figures(known, pair, today);
        let pair = in_figures.as_deref().unwrap_or(pair);
        let (name, value) = read_pair(known, pair, &ENVELOPE).map_err(numbered)?;
        if fields.contains_key(&name) {
            return Err(numbered(Fault::on(&name, Reason::NameTwice)));
        }
        fields.insert(name, value);
    }
    let order: Vec<String> = pairs.iter().map(|pair| field_named(known, pair)).collect();
    settle_draft(known, fields, Writer { today, who }).map_err(|fault| {
        let outer = fault.field.as_deref().and_then(|field| field.split(['.', '[']).next());
        let pair = order.iter().position(|name| Some(name.as_str()) == outer);
        PairFault::new(pair.map(|i| i + 1), fault)
    })
}

/// A pair of what stands beside the fields, where its name is a Spanish one: `dia=ayer`.
pub(super) fn with_english_name(pair: &str) -> Option<String> {
    let (name, value) = pair.split_once('=')?;
    beside_of_spanish(&text::folded(name)).map(|english| format!("{english}={value}"))
}

/// A pair whose day is written as people say it (`happened=yesterday`, `until=tomorrow`), with the day in figures. None
/// where it is no day, or cannot be read as one: then the reader of pairs says so.
fn day_in_figures(known: &KindOfEntry, pair: &str, today: Day) -> Option<String> {
    let (name, written) = pair.split_once('=')?;
    let day = if text::folded(name) == "happened" {
        match read_done_day(written, today) {
            Ok(day) | Err(Reason::ComingDay(day)) => day,
            Err(_) => return None,
        }
    } else {
        let field = find_field(known.fields, name).filter(|field| matches!(field.shape, Shape::Day))?;
        let is_coming = matches!(field.name, "until" | "good_until");
        if is_coming { read_coming_day(written, today) } else { read_any_day(written, today) }.ok()?
    };
    Some(format!("{name}={day}"))
}

fn field_named(known: &KindOfEntry, pair: &str) -> String {
    let name = pair.split_once('=').map_or(pair, |(name, _)| name);
    find_field(known.fields, name).map_or_else(|| text::folded(name), |field| field.name.to_string())
}

/// One pair: the field's own name and its value, still to be settled. `also` are names of the envelope that may stand.
pub(super) fn read_pair(known: &KindOfEntry, pair: &str, also: &[&str]) -> Result<(String, Value), Fault> {
    let (name, typed) = pair.split_once('=').ok_or_else(|| Fault::bare(Reason::NoEqualsSign(short(pair))))?;
    let folded = text::folded(name);
    let is_clock = folded == "at" && at_is_clock(known, typed);
    if also.contains(&folded.as_str()) && (folded != "at" || is_clock) {
        return Ok((folded, Value::from(typed)));
    }
    let entry_fault = |fault: FieldFault| EntryFault::Field { kind: known.kind.to_string(), fault };
    let Some(field) = find_field(known.fields, name) else {
        let problem = unknown_field(known.fields, also, name);
        return Err(entry_fault(FieldFault { field: short(name), problem }).into());
    };
    if matches!(field.shape, Shape::List(_) | Shape::Record(_) | Shape::Open) {
        // The reader of typed values passes over names written twice.
        match json::read_value(typed) {
            Err(fault) if fault.reason == Reason::NameTwice => {
                let inner = fault.field.unwrap_or_default();
                return Err(Fault::on(&format!("{}.{inner}", field.name), Reason::NameTwice));
            }
            Ok(_) | Err(_) => {}
        }
    }
    let value = typed_value(field, typed).map_err(|fault| Fault::from(entry_fault(fault)))?;
    Ok((field.name.to_string(), value))
}

/// Splits one text into pairs at blanks. A value in quotation marks (`text="two words"`) may hold blanks, `\"` and
/// `\\`; a value in brackets or braces is taken whole as JSON.
pub fn split_pairs(text: &str) -> Result<Vec<String>, PairFault> {
    let words = split_words(text, false).map_err(|fault| PairFault::new(None, fault))?;
    Ok(words.into_iter().map(|word| word.text).collect())
}

/// A word of a split text.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Split {
    /// The column it begins at, in characters from 1.
    pub column: usize,
    /// The word without its outer quotation marks.
    pub text: String,
    /// Whether it began with a quotation mark.
    pub quoted: bool,
}

/// Splits a text as [`split_pairs`] does and keeps the columns; with `comments` a word that begins with `#` ends it.
pub(super) fn split_words(text: &str, comments: bool) -> Result<Vec<Split>, Fault> {
    let letters: Vec<char> = text.chars().collect();
    let (mut words, mut at) = (Vec::new(), 0);
    while at < letters.len() {
        if letters[at].is_whitespace() {
            at += 1;
            continue;
        }
        if comments && letters[at] == '#' {
            break;
        }
        let begin = at;
        let mut word = String::new();
        let quoted = letters[at] == '"';
        let mut value_begins = true;
        while at < letters.len() && !letters[at].is_whitespace() {
            let letter = letters[at];
            let closed = match letter {
                '"' if value_begins => take_quoted(&letters, at, &mut word)?,
                '[' | '{' if value_begins => take_bracketed(&letters, at, &mut word)?,
                // As the same line is typed to a shell.
                '\'' if value_begins && matches!(letters.get(at + 1), Some('[' | '{')) => {
                    let closed = take_bracketed(&letters, at + 1, &mut word)?;
                    closed + usize::from(letters.get(closed) == Some(&'\''))
                }
                _ => {
                    // Only the first `=` of a word parts a name from a value.
                    value_begins = letter == '=' && !word.contains('=');
                    word.push(letter);
                    at += 1;
                    continue;
                }
            };
            if letters.get(closed).is_some_and(|next| !next.is_whitespace()) {
                return Err(Fault::at(closed + 1, Reason::NoBlankBehind));
            }
            at = closed;
        }
        words.push(Split { column: begin + 1, text: word, quoted });
    }
    Ok(words)
}

/// Takes what stands in quotation marks; the answer is the place behind the closing mark.
fn take_quoted(letters: &[char], open: usize, word: &mut String) -> Result<usize, Fault> {
    let mut at = open + 1;
    while let Some(letter) = letters.get(at) {
        match (letter, letters.get(at + 1)) {
            ('"', _) => return Ok(at + 1),
            ('\\', Some(escaped @ ('"' | '\\'))) => {
                word.push(*escaped);
                at += 2;
            }
            (plain, _) => {
                word.push(*plain);
                at += 1;
            }
        }
    }
    Err(Fault::at(open + 1, Reason::QuoteOpen))
}

/// Takes JSON in brackets or braces as it stands; the answer is the place behind the last of them.
fn take_bracketed(letters: &[char], open: usize, word: &mut String) -> Result<usize, Fault> {
    let (mut depth, mut in_text, mut escaped) = (0_usize, false, false);
    for (at, letter) in letters.iter().enumerate().skip(open) {
        word.push(*letter);
        match letter {
            _ if escaped => escaped = false,
            '\\' if in_text => escaped = true,
            '"' => in_text = !in_text,
            '[' | '{' if !in_text => depth += 1,
            ']' | '}' if !in_text => {
                depth = depth.saturating_sub(1);
                if depth == 0 {
                    return Ok(at + 1);
                }
            }
            _ => {}
        }
    }
    Err(Fault::at(open + 1, Reason::BracketOpen))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::entry::fault::Problem;
    use proptest::prelude::*;

    fn today() -> Day {
        Day::from_ymd(2026, 3, 14).unwrap()
    }

    fn read(kind: &str, text: &str) -> Result<Draft, PairFault> {
        read_pairs(kind, &split_pairs(text).unwrap(), today(), "mara")
    }

    fn problem(fault: PairFault) -> Problem {
        match fault.reason {
            Reason::Entry(fault) => match *fault {
                EntryFault::Field { fault, .. } => fault.problem,
                other => panic!("{other:?}"),
            },
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn days_are_read_in_words_too() {
        let written = |text: &str| read("held", text).unwrap();
        let draft = written("tray=cof-031 why=frost happened=ayer until=mañana");
        assert_eq!(draft.happened.to_string(), "2026-03-13");
        assert_eq!(draft.body["until"], "2026-03-15");
        assert_eq!(written("tray=cof-031 why=frost until=+7").body["until"], "2026-03-21");
        for coming in ["tomorrow", "mañana", "+1"] {
            let fault = read("held", &format!("tray=cof-031 why=frost happened={coming}")).unwrap_err();
            assert_eq!(
                fault.reason,
                Reason::ComingDay("2026-03-15".parse().unwrap()),
                "what happened did not come later"
            );
        }
    }

    #[test]
    fn pairs_become_a_draft() {
        let draft = read("counted", "tray=cof-031 standing=41 at=07:40 happened=2026-03-12 who=\"Mara N\"").unwrap();
        assert_eq!(
            (draft.kind.as_str(), draft.who.as_str(), draft.clock.unwrap().minutes()),
            ("counted", "Mara N", 460)
        );
        assert_eq!(Value::Object(draft.body), serde_json::json!({"tray":"cof-031","standing":41}));
        let text = r#"bed="Lower terrace" readings=[{"under_lux": 900, "open_lux": 3e4}] at=2.7,2.8 clock=12:00"#;
        let draft = read("light read", text).unwrap();
        assert_eq!(draft.body["at"], serde_json::json!(["2.7", "2.8"]));
        assert_eq!(draft.body["readings"][0]["open_lux"], 30000);
    }

    #[test]
    fn a_fault_names_its_pair() {
        let fault = read("counted", "tray=a standing=41kg").unwrap_err();
        assert_eq!((fault.pair, fault.field.as_deref()), (Some(2), Some("standing")));
        assert_eq!(problem(fault), Problem::LettersBehind { written: "41kg".into(), unit: None });
        let fault = read("counted", "tray=a standin=41").unwrap_err();
        assert_eq!((fault.pair, problem(fault)), (Some(2), Problem::Unknown(vec!["standing".into()])));
        let fault = read("counted", "tray=a standing=-3").unwrap_err();
        assert_eq!((fault.pair, problem(fault)), (Some(2), Problem::BelowZero("-3".into())));
        let fault = read("counted", "tray=a").unwrap_err();
        assert_eq!((fault.pair, fault.field.as_deref()), (None, Some("standing")));
        assert_eq!(read("counted", "tray=a 41").unwrap_err().reason, Reason::NoEqualsSign("41".into()));
        assert_eq!(read("counted", "tray=a bandeja=b").unwrap_err().reason, Reason::NameTwice);
        assert_eq!(read("counted", "tray=a standing=1 happened=2026-03-15").unwrap_err().pair, Some(3));
        let fault = read("species_set", r#"species=COA profile={"a":1,"a":2}"#).unwrap_err();
        assert_eq!((fault.field.as_deref(), fault.reason), (Some("profile.a"), Reason::NameTwice));
        let unknown = read_pairs("cuonted", &[], today(), "mara").unwrap_err();
        let near = EntryFault::UnknownKind("cuonted".into(), vec!["counted".into()]);
        assert_eq!(unknown.reason, Reason::Entry(Box::new(near)));
    }

    #[test]
    fn blanks_in_quotation_marks_and_lists_do_not_split() {
        let words = split_pairs(r#"  a="two \"big\" words" b=[{"x": "] }"}, 2]  c=5" d= "#).unwrap();
        assert_eq!(words, [r#"a=two "big" words"#, r#"b=[{"x": "] }"}, 2]"#, "c=5\"", "d="]);
        let as_to_a_shell = split_pairs(r#"b='[{"x": "it's"}, 2]' c='5'"#).unwrap();
        assert_eq!(as_to_a_shell, [r#"b=[{"x": "it's"}, 2]"#, "c='5'"]);
        let reason = |text: &str| split_pairs(text).unwrap_err();
        assert_eq!((reason("a=\"b").column, reason("a=\"b").reason), (Some(3), Reason::QuoteOpen));
        assert_eq!(reason("a=[1,[2]").reason, Reason::BracketOpen);
        assert_eq!((reason("a=\"b\"c").column, reason("a=\"b\"c").reason), (Some(6), Reason::NoBlankBehind));
    }

    proptest! {
        #[test]
        fn a_quoted_text_comes_back_as_it_was(text in "\\PC{0,40}") {
            let quoted = format!("text=\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\""));
            prop_assert_eq!(split_pairs(&quoted).unwrap(), vec![format!("text={text}")]);
        }

        #[test]
        fn no_text_makes_it_panic(text in any::<String>(), kind in any::<String>()) {
            if let Ok(pairs) = split_pairs(&text) {
                let _ = read_pairs(&kind, &pairs, today(), "mara");
                let _ = read_pairs("bed_set", &pairs, today(), "mara");
            }
        }

        #[test]
        fn no_text_near_a_pair_makes_it_panic(text in r#"((bed|plan|at|row_m)=?["\[{,0-9.:\\é }\]]{0,6} ?){0,6}"#) {
            if let Ok(pairs) = split_pairs(&text) {
                let _ = read_pairs("bed_set", &pairs, today(), "mara");
                let _ = read_pairs("light_read", &pairs, today(), "mara");
            }
        }
    }
}
