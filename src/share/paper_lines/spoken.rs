//! A line in a person's own words beside what the short forms make of it.
//!
//! A short form that reads keeps its meaning. But what a line says of itself leads: that it was not done, is still to be
//! done, is not sure. Where both read it and say different things it is asked which is meant.

use serde_json::{Map, Value};

use super::forms::{NOT_SAID, begins_let_go};
use super::words::Words;
use super::{KnownNames, Sheet, is_full_form};
use crate::base::Day;
use crate::nursery::entry::fields::find_field;
use crate::nursery::entry::shape::{NameOf, Shape};
use crate::nursery::entry::{KindOfEntry, kind_of_entry};
use crate::nursery::envelope::Draft;
use crate::share::draft::{Writer, settle_draft};
use crate::share::fault::{Fault, Reason};
use crate::share::meant::Meant;
use crate::share::scribbled::{EntryDraft, Names, PASSED_OVER, Reading, Why, is_a_word, is_no_receiver, says_more};
use crate::share::vocabulary::{is, vocabulary};

/// What may stand as not said: kind and field.
const MAY_BE_LEFT_OUT: [(&str, &str); 4] =
    [("lost", "cause"), ("culled", "why"), ("plants_lost", "cause"), ("given_out", "to")];
/// A share of light below this was rather meant as a share of one.
const LEAST_LIGHT: f64 = 0.01;
/// What an entry can be about, as fields that a note names.
const SUBJECTS: [&str; 4] = ["tray", "bed", "place", "lot"];

impl Names for KnownNames<'_> {
    fn all(&self) -> Vec<(NameOf, String)> {
        let sorts = [
            (NameOf::Tray, &self.trays),
            (NameOf::Bed, &self.beds),
            (NameOf::Place, &self.places),
            (NameOf::Lot, &self.lots),
            (NameOf::Container, &self.containers),
        ];
        sorts.iter().flat_map(|(of, names)| names.iter().map(|name| (*of, name.clone()))).collect()
    }

    fn species_called(&self, name: &str) -> Vec<String> {
        (self.called)(name).iter().map(ToString::to_string).collect()
    }

    fn species_near(&self, name: &str) -> Vec<String> {
        (self.near)(name).iter().map(ToString::to_string).collect()
    }

    fn species_like(&self, name: &str) -> Vec<String> {
        let one = (self.find)(name).into_iter();
        let all = one.chain((self.several)(name));
        let mut keys: Vec<String> = all.map(|key| key.to_string()).collect();
        keys.dedup();
        keys
    }

    fn species_of(&self, name_of: NameOf, name: &str) -> Option<String> {
        (self.species_of)(name_of, name).map(|key| key.to_string())
    }

    fn standing(&self, tray: &str) -> Option<u32> {
        (self.standing)(tray)
    }

    fn seeds(&self, lot: &str) -> Option<u32> {
        (self.seeds)(lot)
    }

    fn nurses_in(&self, bed: &str) -> Vec<String> {
        (self.in_bed)(bed).nurses.iter().map(ToString::to_string).collect()
    }

    fn plants_in(&self, bed: &str) -> Vec<String> {
        (self.in_bed)(bed).plants.iter().map(ToString::to_string).collect()
    }

    fn places_in(&self, bed: &str) -> Option<u32> {
        (self.in_bed)(bed).places
    }

    fn is_planted(&self, bed: &str) -> bool {
        (self.in_bed)(bed).is_planted
    }

    fn is_seedbed(&self, tray: &str) -> bool {
        (self.is_seedbed)(tray)
    }
}

impl Sheet<'_> {
    /// What a line says: as a short form (`short`), in a person's own words, or both alike.
    pub(super) fn beside_own_words(&self, words: &Words, short: Result<Draft, Fault>) -> Result<Vec<Draft>, Fault> {
        if is_full_form(words) || is_only_short(words, &short) {
            return short.map(|draft| vec![draft]);
        }
        let line = words.typed_from(0);
        let reading = self.reader.read(&line, self.today);
        let said = Said { sheet: self, line: &line, begins: words.begin() };
        match short {
            Ok(draft) => said.beside(draft, reading),
            Err(fault) => said.instead(fault, reading),
        }
    }
}

/// A note holds whatever it holds, and a task that is let go is one that is not done.
fn is_only_short(words: &Words, short: &Result<Draft, Fault>) -> bool {
    let is_note = short.as_ref().is_ok_and(|draft| draft.kind == "noted");
    is_note || begins_let_go(words)
}

/// A line in own words on its way to entries.
struct Said<'s, 'k> {
    sheet: &'s Sheet<'k>,
    line: &'s str,
    begins: usize,
}

impl Said<'_, '_> {
    /// The short form reads the line.
    fn beside(&self, short: Draft, reading: Reading) -> Result<Vec<Draft>, Fault> {
        if let Some(fault) = self.of_no_receiver(&short, &reading) {
            return fault;
        }
        if let Some(fault) = self.of_two_meanings(&short) {
            return Err(fault);
        }
        match reading {
            // What the short form reads whole leads where the words are read only in part.
            Reading::Clear(drafts) if drafts.iter().any(|draft| draft.fields.contains_key(PASSED_OVER)) => {
                Ok(vec![short])
            }
            Reading::Clear(drafts) => {
                let Ok(own) = self.settled(&drafts) else { return Ok(vec![short]) };
                match compared(&short, &own, self.sheet.happened) {
                    Compared::Same => Ok(vec![short]),
                    Compared::SaysMore => Ok(own),
                    Compared::Differ => {
                        let meant_by = |draft: &Draft| meant_by(draft, self.sheet.happened);
                        let meant = vec![vec![meant_by(&short)], own.iter().map(meant_by).collect()];
                        Err(self.asked(vec![Why::Several], meant))
                    }
                }
            }
            Reading::Refused { why, offers } if self.is_no_fact(&why, &short) => Err(self.not_written(why, &offers)),
            Reading::Asks { why, offers } | Reading::Refused { why, offers } => {
                let is_of_two = why.iter().any(|why| matches!(why, Why::Both(_) | Why::WeedsOrAll(_)));
                if is_of_two || swallows(&short) && !offers.is_empty() {
                    Err(self.not_written(why, &offers))
                } else {
                    Ok(vec![short])
                }
            }
        }
    }

    /// "c1 dadas 5 ayer": a day gets no plants.
    fn of_no_receiver(&self, short: &Draft, reading: &Reading) -> Option<Result<Vec<Draft>, Fault>> {
        let to = short.body.get("to").and_then(Value::as_str).filter(|_| short.kind == "given_out")?.to_string();
        if !is_no_receiver(&to) {
            return None;
        }
        Some(match reading {
            Reading::Clear(drafts) => self.settled_or_asked(drafts),
            Reading::Refused { why, offers } if why.iter().any(Why::is_no_fact) => {
                Err(self.not_written(why.clone(), offers))
            }
            Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => {
                Err(self.asked(vec![Why::NoReceiver(to)], self.meant_by_offers(offers)))
            }
        })
    }

    /// "c1 29/11" may be a day, and light of 0.6 a share of one.
    fn of_two_meanings(&self, short: &Draft) -> Option<Fault> {
        let mut meant = meant_by(short, self.sheet.happened);
        match short.kind.as_str() {
            "measured" => {
                let words = Words::of(self.line);
                let pair = words.get(words.len().checked_sub(1)?)?.to_string();
                let (day, month) = pair.split_once('/')?;
                let (day, month): (u32, u32) = (day.parse().ok()?, month.parse().ok()?);
                let is_alone = short.body.get("plants").and_then(Value::as_array).is_some_and(|all| all.len() == 1);
                let year = self.sheet.today.ymd().0;
                let is_a_day = |month, day| Day::from_ymd(year, month, day).is_some();
                let can_be_a_day = is_alone && (is_a_day(month, day) || is_a_day(day, month));
                can_be_a_day.then(|| self.asked(vec![Why::DayOrHeight(pair)], vec![vec![meant]]))
            }
            "light_read" => {
                let share = short.body.get("light_share").and_then(Value::as_f64)?;
                let small = share > 0.0 && share < LEAST_LIGHT;
                meant.fields.insert("light_share".into(), Value::from((share * 1e4).round() / 100.0));
                small.then(|| self.asked(vec![Why::Several], vec![vec![meant]]))
            }
            _ => None,
        }
    }

    /// Whether the line says of itself that it is no fact. Behind "held" stands why, which may well be so.
    fn is_no_fact(&self, why: &[Why], short: &Draft) -> bool {
        let held = |word: &str| {
            let words = Words::of(self.line);
            let folded = crate::base::text::folded(word);
            let at = (0..words.len()).find(|at| is(&words.folded(*at), &vocabulary().line.held));
            at.is_some_and(|at| crate::base::text::folded(&words.typed_from(at + 1)).contains(&folded))
        };
        why.iter().any(|why| match why {
            // What looks like a day to come the short form has read as something else.
            Why::Coming(word) if word.contains(|letter: char| letter.is_ascii_digit()) => false,
            Why::NotDone(word) | Why::Intent(word) | Why::Coming(word) | Why::Unsure(word) => {
                !(short.kind == "held" && held(word))
            }
            other => other.is_no_fact(),
        })
    }

    /// No short form reads the line.
    fn instead(&self, fault: Fault, reading: Reading) -> Result<Vec<Draft>, Fault> {
        match reading {
            Reading::Clear(drafts) => self.settled_or_asked(&drafts),
            Reading::Asks { why, offers } | Reading::Refused { why, offers } => {
                // What the books say of a number is judged in one place, where everything written is.
                let by_the_books = |why: &Why| matches!(why, Why::OverHalf(_) | Why::MoreThanThere(_));
                match offers.first() {
                    Some(first) if why.iter().all(by_the_books) => self.settled_or_asked(first),
                    _ => {
                        let meant = self.meant_by_offers(&offers);
                        let keeps = tells_more(&fault, &why, meant.is_empty());
                        Err(if keeps { fault } else { self.asked(why, meant) })
                    }
                }
            }
        }
    }

    fn settled_or_asked(&self, drafts: &[EntryDraft]) -> Result<Vec<Draft>, Fault> {
        self.settled(drafts).map_err(|meant| match meant {
            Unsettled::Lacks(meant) => {
                let lacks = meant.iter().filter(|one| !one.missing.is_empty());
                let why = lacks.map(|one| Why::Lacks(one.kind, one.missing.iter().map(ToString::to_string).collect()));
                self.asked(why.collect(), vec![meant.clone()])
            }
            Unsettled::Fault(fault) => fault,
        })
    }

    fn asked(&self, why: Vec<Why>, meant: Vec<Vec<Meant>>) -> Fault {
        let name = match why.first() {
            Some(Why::UnknownName(name, _)) => self.line.find(name.as_str()),
            _ => None,
        };
        let before = name.map_or(0, |at| self.line[..at].chars().count());
        Fault::at(self.begins + before, Reason::Words { why, meant })
    }

    fn not_written(&self, why: Vec<Why>, offers: &[Vec<EntryDraft>]) -> Fault {
        self.asked(why, self.meant_by_offers(offers))
    }

    fn meant_by_offers(&self, offers: &[Vec<EntryDraft>]) -> Vec<Vec<Meant>> {
        let mut all: Vec<Vec<Meant>> = Vec::new();
        for meant in offers.iter().filter_map(|drafts| self.all_meant(drafts).ok()) {
            if !all.contains(&meant) {
                all.push(meant);
            }
        }
        // Beside a line that is whole one that has to be filled in is no help.
        let is_whole = |meant: &Vec<Meant>| meant.iter().all(|one| one.missing.is_empty());
        if all.iter().any(is_whole) {
            all.retain(is_whole);
        }
        all
    }

    fn settled(&self, drafts: &[EntryDraft]) -> Result<Vec<Draft>, Unsettled> {
        let meant = self.all_meant(drafts)?;
        if meant.iter().any(|one| !one.missing.is_empty()) {
            return Err(Unsettled::Lacks(meant));
        }
        meant.iter().map(|one| self.draft(one).map_err(Unsettled::Fault)).collect()
    }

    fn draft(&self, meant: &Meant) -> Result<Draft, Fault> {
        let known = kind_of_entry(meant.kind).ok_or_else(|| Fault::bare(Reason::NotUnderstood(meant.kind.into())))?;
        let mut fields = meant.fields.clone();
        fields.insert("happened".into(), Value::from(meant.happened.to_string()));
        let writer = Writer { today: self.sheet.today, who: self.sheet.who };
        settle_draft(known, fields, writer)
            .map_err(|fault| super::said_of(Fault { column: Some(self.begins), ..fault }))
    }

    fn all_meant(&self, drafts: &[EntryDraft]) -> Result<Vec<Meant>, Unsettled> {
        let mut all = Vec::new();
        for draft in drafts {
            all.extend(self.meant(draft).map_err(Unsettled::Fault)?);
        }
        Ok(all)
    }

    /// The entries of a reading. What no entry has a field for is kept word for word, as a note.
    fn meant(&self, said: &EntryDraft) -> Result<Vec<Meant>, Fault> {
        let happened = said.happened.unwrap_or(self.sheet.happened);
        let Some(known) = kind_of_entry(said.kind) else { return Ok(vec![self.note(said, happened)]) };
        let is_of_entry = |field: &str| field == "clock" || find_field(known.fields, field).is_some();
        let (mut fields, more): (Map<String, Value>, Map<String, Value>) =
            said.fields.clone().into_iter().partition(|(field, _)| is_of_entry(field));
        for (_, field) in MAY_BE_LEFT_OUT.iter().filter(|(kind, _)| *kind == known.kind) {
            fields.entry(*field).or_insert_with(|| NOT_SAID.into());
        }
        let names_its_day = happened != self.sheet.happened;
        let mut one = Meant { kind: known.kind, fields, happened, names_its_day, missing: Vec::new() };
        one.missing = missing(known, &one.fields);
        if one.missing.is_empty() {
            let draft = self.draft(&one)?;
            // A time of day is kept with what was settled.
            let clock = one.fields.get("clock").cloned();
            one.fields = draft.body;
            one.fields.extend(clock.map(|clock| ("clock".to_string(), clock)));
        }
        let note = (!more.is_empty()).then(|| self.note(said, happened));
        Ok(std::iter::once(one).chain(note).collect())
    }

    fn note(&self, said: &EntryDraft, happened: Day) -> Meant {
        let about = SUBJECTS.iter().find_map(|field| said.fields.get(*field));
        let fields = about.map(|about| ("about".to_string(), about.clone())).into_iter();
        let fields = fields.chain([("text".to_string(), Value::from(self.line.trim()))]).collect();
        let names_its_day = happened != self.sheet.happened;
        Meant { kind: "noted", fields, happened, names_its_day, missing: Vec::new() }
    }
}

/// Why a reading is no entry yet.
enum Unsettled {
    /// Fields are missing.
    Lacks(Vec<Meant>),
    /// A value cannot be.
    Fault(Fault),
}

/// The fields that an entry must have and has not; a cut says nothing without how much of it, a push nothing without the rod that it was on.
fn missing(known: &KindOfEntry, fields: &Map<String, Value>) -> Vec<&'static str> {
    let pushes = fields.contains_key("push_kg") && !fields.contains_key("resistance_mpa");
    // How much was cut is told by its share or by plants.
    let cuts = known.kind == "nurse_cut" && !fields.contains_key("count");
    let is_asked = |field: &str| field == "rod_mm" && pushes || field == "share" && cuts;
    let must = known.fields.iter().filter(|field| field.required || is_asked(field.name));
    must.filter(|field| !fields.contains_key(field.name)).map(|field| field.name).collect()
}

fn meant_by(draft: &Draft, of_the_sheet: Day) -> Meant {
    let kind = kind_of_entry(&draft.kind).map_or("noted", |known| known.kind);
    let mut fields = draft.body.clone();
    fields.extend(draft.clock.as_ref().map(|clock| ("clock".to_string(), Value::from(clock.to_string()))));
    let names_its_day = draft.happened != of_the_sheet;
    Meant { kind, fields, happened: draft.happened, names_its_day, missing: Vec::new() }
}

/// Whether the fault of the short form tells more than why the words were not understood.
fn tells_more(fault: &Fault, why: &[Why], nothing_is_offered: bool) -> bool {
    let is_general = match &fault.reason {
        Reason::NotUnderstood(_) | Reason::NumberInWords { .. } => true,
        // A short form takes the first word for a name, also one that says something.
        Reason::UnknownName { written, nearest } => {
            nearest.is_empty() || is_a_word(written.split(' ').next().unwrap_or_default())
        }
        _ => false,
    };
    // A number of a bed of several species: which of them lives there is asked by their names.
    let is_of_species = matches!(fault.reason, Reason::WhichSpecies(_)) && !why.iter().any(Why::is_no_fact);
    let is_of_a_day =
        matches!(fault.reason, Reason::ComingDay(_) | Reason::DayInOtherOrder(_) | Reason::WhichDay { .. });
    let says_nothing = why.iter().all(|why| matches!(why, Why::NoReading(_)));
    let only_misses = why.iter().all(|why| {
        matches!(why, Why::NoReading(_) | Why::NoNumber | Why::NoLot | Why::NoTray | Why::NoPlace | Why::NoUnit(_))
    });
    let nothing_is_sure = why.iter().any(|why| matches!(why, Why::NoReading(_) | Why::NoNumber));
    let is_specific = why.iter().any(|why| {
        why.is_no_fact()
            || matches!(
                why,
                Why::MoreThanAll(..) | Why::Crossed(..) | Why::EachOrAll(_) | Why::InUse(_) | Why::WhichTray(_)
            )
    });
    let of_another_name = match (&fault.reason, why.first()) {
        (Reason::UnknownName { written, nearest }, Some(Why::UnknownName(name, _))) => {
            !is_general && !nearest.is_empty() && name != written
        }
        _ => false,
    };
    is_of_a_day
        || is_of_species && nothing_is_sure
        || of_another_name
        || nothing_is_offered && (says_nothing || !is_general && !is_specific)
        || !is_general && only_misses
}

/// How two readings of a line stand to one another.
enum Compared {
    /// They say the same, or the short form says more.
    Same,
    /// The words say the same and more, which the short form took for a part of a text.
    SaysMore,
    /// They say different things.
    Differ,
}

fn compared(short: &Draft, own: &[Draft], of_the_sheet: Day) -> Compared {
    let swallows = swallows(short);
    let Some(first) = own.first() else { return Compared::Same };
    // "c1 -3 mal del talluelo ayer": a day that the short form took for a part of its text.
    let swallows_the_day = first.happened != short.happened && short.happened == of_the_sheet && swallows_a_text(short);
    let same_day = first.happened == short.happened;
    let alike = first.kind == short.kind && (same_day || swallows_the_day) && agree(short, first);
    if alike && swallows_the_day {
        return Compared::SaysMore;
    }
    let has_all = short.body.keys().all(|field| first.body.contains_key(field));
    let more = own.len() > 1 && has_all || first.body.len() > short.body.len();
    match () {
        () if alike && more => Compared::SaysMore,
        () if alike => Compared::Same,
        () if swallows => Compared::SaysMore,
        () => Compared::Differ,
    }
}

/// Whether what both say is the same; texts may be cut out of the line a little differently.
fn agree(short: &Draft, own: &Draft) -> bool {
    let known = kind_of_entry(&short.kind);
    let is_text = |field: &str| {
        let field = known.and_then(|known| find_field(known.fields, field));
        field.is_some_and(|field| matches!(field.shape, Shape::Text | Shape::List(_)))
    };
    let same = |a: &Value, b: &Value| match (a.as_f64(), b.as_f64()) {
        (Some(a), Some(b)) => (a - b).abs() < 1e-6,
        _ => {
            let plain = |value: &Value| crate::base::text::folded(value.as_str().unwrap_or_default());
            a == b || a.is_string() && plain(a) == plain(b)
        }
    };
    short.body.iter().all(|(field, value)| own.body.get(field).is_none_or(|other| is_text(field) || same(value, other)))
}

/// Whether a short form has a free text, which goes to the end of its line.
fn swallows_a_text(short: &Draft) -> bool {
    const TEXTS: [&str; 5] = ["cause", "why", "to", "what", "with"];
    TEXTS.iter().any(|field| short.body.contains_key(*field))
}

/// Whether the free text of a short form holds what is more than a cause or a name: a second number, what is left.
fn swallows(short: &Draft) -> bool {
    const TEXTS: [(&str, &str); 4] = [("lost", "cause"), ("culled", "why"), ("given_out", "to"), ("pest_seen", "what")];
    let texts = TEXTS.iter().filter(|(kind, _)| *kind == short.kind);
    texts.filter_map(|(_, field)| short.body.get(*field)?.as_str()).any(|text| text != NOT_SAID && says_more(text))
}
