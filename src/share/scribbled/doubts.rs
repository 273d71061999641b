//! What makes a reading doubtful though every word of the line was explained: hours that look like plants, numbers of a
//! part of a tray, words that are said of a loss as well as of a count. A wrong entry is worse than a question.

use std::collections::HashMap;
use std::sync::LazyLock;

use serde_json::Value;

use super::choose::count_for_loss;
use super::lexicon::lexicon;
use super::words::Word;
use super::{EntryDraft, Reading, Why};

/// The latest hour of a day.
const LAST_HOUR: f64 = 24.0;

type Doubts = HashMap<String, Vec<String>>;

fn list(name: &str) -> &'static [String] {
    static READ: LazyLock<Doubts> = LazyLock::new(|| toml::from_str(include_str!("doubts.toml")).unwrap_or_default());
    READ.get(name).map_or(&[], Vec::as_slice)
}

pub(super) fn number(word: &Word) -> Option<f64> {
    word.folded.parse().ok()
}

/// Whether a word stands in a list.
pub(super) fn stands_in(word: &Word, name: &str) -> bool {
    list(name).contains(&word.folded)
}

/// Whether a name stands for a day or for credit, not for somebody who gets plants.
pub(in crate::share) fn is_no_receiver(name: &str) -> bool {
    list("no_receiver").contains(&super::lexicon::fold(name))
}

/// Whether a word stands in any of the lists: it is not to be passed over.
pub(super) fn means_something(folded: &str) -> bool {
    const LISTS: [&str; 22] = [
        "part",
        "either",
        "correction",
        "todo",
        "struck",
        "struck_last",
        "slip",
        "intent",
        "ended",
        "no_more",
        "came_back",
        "hunted",
        "of_a_plant",
        "food",
        "had",
        "minus",
        "only",
        "taken_back",
        "no_receiver",
        "wants",
        "no_plants",
        "half",
    ];
    LISTS.iter().any(|name| list(name).iter().any(|word| word == folded))
}

/// How many words of a line a phrase of a list takes from `at` on; the longest phrase leads.
pub(super) fn phrase_at(words: &[Word], at: usize, name: &str) -> Option<usize> {
    let fits = |phrase: &&String| {
        phrase.split(' ').enumerate().all(|(i, part)| words.get(at + i).is_some_and(|word| word.folded == part))
    };
    list(name).iter().filter(fits).map(|phrase| phrase.split(' ').count()).max()
}

/// Whether and where a phrase of a list stands in a line.
pub(super) fn phrase_in(words: &[Word], name: &str) -> Option<String> {
    let at = (0..words.len()).find_map(|at| Some((at, phrase_at(words, at, name)?)));
    let (at, length) = at?;
    Some(words[at..at + length].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" "))
}

/// The words without what says an hour: `a las 11`, `4 pm`. The hour is not written.
pub(super) fn without_hours(words: Vec<Word>) -> Vec<Word> {
    let mut kept: Vec<Word> = Vec::with_capacity(words.len());
    let mut at = 0;
    while at < words.len() {
        if let Some(length) = hour_at(&words, at) {
            at += length;
        } else {
            kept.push(words[at].clone());
            at += 1;
        }
    }
    if kept.is_empty() { words } else { kept }
}

/// How many words say an hour from `at` on.
fn hour_at(words: &[Word], at: usize) -> Option<usize> {
    let value = |word: &Word| number(word).or_else(|| lexicon().figure(&word.folded));
    let is_hour = |at: usize| words.get(at).and_then(value).is_some_and(|hour| (0.0..=LAST_HOUR).contains(&hour));
    // "at 7 i watered": the first word of a line; "watered k1 at six": the last one, where nothing is sold.
    let is_sale = || {
        words.iter().any(|word| lexicon().roles(&word.folded).iter().any(|role| matches!(*role, "give" | "receive")))
    };
    let is_last = || at > 0 && at + 2 == words.len() && number(&words[at + 1]).is_none() && !is_sale();
    let at_first = (words[at].folded == "at" && (at == 0 || is_last())).then_some(1);
    let before = phrase_at(words, at, "hour").or(at_first);
    let hour = at + before.unwrap_or(0);
    if !is_hour(hour) {
        return None;
    }
    let behind = phrase_at(words, hour + 1, "hour_behind");
    let names_things = words.get(hour + 1).is_some_and(|word| {
        let roles = lexicon().roles(&word.folded);
        roles.iter().any(|role| {
            role.starts_with("units.")
                || matches!(*role, "small.thing" | "bag" | "tray" | "seed" | "causes.words" | "small.person")
        })
    });
    match (before, behind) {
        (_, Some(length)) => Some(hour + 1 + length - at),
        (Some(_), None) if !names_things => Some(hour + 1 - at),
        (Some(_), None) | (None, None) => None,
    }
}

/// The reading as it is, or as a question or a refusal where something in the line makes it doubtful.
pub(super) fn doubted(words: &[Word], reading: Reading) -> Reading {
    let (drafts, asks) = match &reading {
        Reading::Clear(drafts) => (drafts.clone(), false),
        Reading::Asks { offers, .. } => (offers.first().cloned().unwrap_or_default(), true),
        Reading::Refused { why, offers } => {
            let is_unread = why.iter().any(|why| matches!(why, Why::NoReading(words) if !words.is_empty()));
            let counted = offers.iter().flatten().find(|draft| draft.kind == "counted").filter(|_| is_unread);
            let of_a_part = counted.and_then(|draft| part(words, draft.fields.get("standing")?.as_f64()?, true));
            if let (Some(why), Some(counted)) = (of_a_part, counted) {
                let note = as_a_note(std::slice::from_ref(counted));
                return Reading::Refused { why: vec![why], offers: vec![vec![note]] };
            }
            let thrown = offers.iter().flatten().find(|draft| draft.kind == "culled");
            return match (thrown, phrase_in(words, "purpose")) {
                (Some(thrown), Some(purpose)) => {
                    let note = as_a_note(std::slice::from_ref(thrown));
                    Reading::Refused { why: vec![Why::NotThrownAway(purpose)], offers: vec![vec![note]] }
                }
                _ => reading,
            };
        }
    };
    if let Some(why) = drafts.iter().find_map(|draft| doubt_of(words, draft)) {
        // What was read is not what was meant: the line can be kept as it is.
        if matches!(why, Why::NotThrownAway(_) | Why::GraftTook(_) | Why::AwayFrom(_) | Why::OfAPart(_)) {
            return Reading::Refused { why: vec![why], offers: vec![vec![as_a_note(&drafts)]] };
        }
        let offers = match reading {
            Reading::Clear(drafts) => vec![drafts],
            Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => offers,
        };
        return Reading::Refused { why: vec![why], offers };
    }
    if let Some(offers) = two_rains(&drafts).filter(|_| !asks) {
        return Reading::Asks { why: vec![Why::Several], offers };
    }
    match either(words, &drafts) {
        Some(offers) if !asks => Reading::Asks { why: vec![Why::Several], offers },
        _ => reading,
    }
}

/// The line as a note about what it speaks of.
pub(super) fn as_a_note(drafts: &[EntryDraft]) -> EntryDraft {
    let first = drafts.first();
    let about = first.and_then(|draft| {
        ["tray", "bed", "place", "lot"]
            .iter()
            .find_map(|field| draft.fields.get_key_value(*field).map(|(field, name)| (field.clone(), name.clone())))
    });
    EntryDraft { kind: "told", fields: about.into_iter().collect(), happened: first.and_then(|draft| draft.happened) }
}

/// Rain that is told twice of one day: both together, or the last of them.
fn two_rains(drafts: &[EntryDraft]) -> Option<Vec<Vec<EntryDraft>>> {
    let rain = |draft: &EntryDraft| {
        let mm = draft.fields.get("rain_mm").and_then(Value::as_f64);
        mm.filter(|_| draft.kind == "weather")
    };
    let last = drafts.iter().rposition(|draft| rain(draft).is_some())?;
    let first = drafts[..last].iter().rposition(|draft| rain(draft).is_some())?;
    if drafts[first].happened != drafts[last].happened {
        return None;
    }
    let both = rain(&drafts[first])? + rain(&drafts[last])?;
    let with = |mm: f64| {
        let mut kept = drafts.to_vec();
        kept[last].fields.insert("rain_mm".into(), super::frames::number_value(mm));
        kept.remove(first);
        kept
    };
    Some(vec![with(both), with(rain(&drafts[last])?)])
}

fn doubt_of(words: &[Word], draft: &EntryDraft) -> Option<Why> {
    let field = |name: &str| draft.fields.get(name);
    let amount = |name: &str| field(name).and_then(Value::as_f64);
    match draft.kind {
        "counted" => part(words, amount("standing")?, true),
        "lost" => part(words, amount("count")?, false),
        "culled" => phrase_in(words, "purpose").map(Why::NotThrownAway),
        "grafted" => phrase_in(words, "took").map(Why::GraftTook),
        "outplanted" => comes_from(words, field("bed")?.as_str()?),
        "weather" => range(words),
        "prepared" => phrase_at(words, 0, "todo").map(|_| Why::Intent(words[0].typed.clone())),
        _ => None,
    }
}

/// A number of which the line says that it is not of the living, or of the dead, but of some of them.
fn part(words: &[Word], value: f64, counted: bool) -> Option<Why> {
    let at = (0..words.len()).find(|at| number(&words[*at]) == Some(value))?;
    let mut next = at + 1;
    while words.get(next).is_some_and(|word| lexicon().is(&word.folded, "small.thing")) {
        next += 1;
    }
    let word = words.get(next)?;
    let is_pest = || {
        let roles = lexicon().roles(&word.folded);
        roles.iter().any(|role| matches!(*role, "causes.words" | "pests.words"))
    };
    let with_pest = || {
        let behind = words.get(next + 1).map_or("", |word| word.folded.as_str());
        matches!(word.folded.as_str(), "con" | "with") && lexicon().is(behind, "pests.words")
    };
    // "6 wilted and died": another word says that they are dead.
    let died = || {
        let others = words.iter().enumerate().filter(|(i, _)| *i != next);
        others.flat_map(|(_, word)| lexicon().roles(&word.folded)).any(|role| matches!(role, "die" | "kill"))
    };
    // "7 caídas por mal del talluelo": what fell over of something is lost.
    let fell_of = word.folded.starts_with("caid")
        && words.get(next + 1).is_some_and(|word| matches!(word.folded.as_str(), "por" | "con" | "by" | "from"));
    if fell_of {
        return None;
    }
    let is_some = list("part").contains(&word.folded) && (counted || !died());
    let is_part = is_some || (counted && is_pest()) || with_pest();
    is_part.then(|| Why::OfAPart(word.typed.clone()))
}

/// Plants that come away from a bed are not planted in it.
fn comes_from(words: &[Word], bed: &str) -> Option<Why> {
    let bed = super::lexicon::fold(bed);
    let first = bed.split(' ').next().unwrap_or_default();
    let at = words.iter().position(|word| word.folded == first)?;
    let before = words.get(at.checked_sub(1)?)?;
    // "resembré las fallas de A1": the gaps of the bed.
    let of_gaps = at > 1 && lexicon().roles(&words[at - 2].folded).contains(&"gone_there");
    if of_gaps {
        return None;
    }
    list("away").contains(&before.folded).then(|| Why::AwayFrom(before.typed.clone()))
}

/// Rain of two numbers.
fn range(words: &[Word]) -> Option<Why> {
    words.windows(3).find_map(|three| {
        let (low, high) = (number(&three[0])?, number(&three[2])?);
        matches!(three[1].folded.as_str(), "a" | "to" | "o" | "or" | "y" | "and" | "-").then_some(Why::Range(low, high))
    })
}

/// The count and the loss that a line may mean which says neither.
fn either(words: &[Word], drafts: &[EntryDraft]) -> Option<Vec<Vec<EntryDraft>>> {
    let [draft] = drafts else { return None };
    let has_cause = draft.fields.contains_key("cause");
    let at = (0..words.len()).find(|at| phrase_at(words, *at, "either").is_some())?;
    // "3 x c1" may be either, "x 3 c1" and "c1 x3" are thrown away; "van quedando 3" is a count.
    let is_times = words[at].folded == "x";
    let says_times = at > 0 && number(&words[at - 1]).is_some();
    let goes_on = words.get(at + 1).is_some_and(|word| word.folded == "quedando")
        || words.iter().any(|word| lexicon().is(&word.folded, "asides.born"));
    if has_cause || goes_on || (is_times && !says_times) || !matches!(draft.kind, "counted" | "lost") {
        return None;
    }
    let (kind, fields) = count_for_loss(&vec![(draft.kind, draft.fields.clone())])?.pop()?;
    let other = EntryDraft { kind, fields, happened: draft.happened };
    Some(vec![vec![draft.clone()], vec![other]])
}
