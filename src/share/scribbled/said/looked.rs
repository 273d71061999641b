//! Looks that found nothing, and plants that do not look well though the line does not say of what.

use serde_json::json;

use super::asides::phrase;
use super::doubts::{as_a_note, phrase_in};
use super::lexicon::lexicon;
use super::named::{Known, NameOf};
use super::numbers::number_at;
use super::words::Word;
use super::{EntryDraft, Offer, Reading, Why};

/// The most words of a line that says nothing else.
const MOST_WORDS: usize = 7;
/// Words of these say what was done or happened: such a line tells more than how plants look.
const DEEDS: [&str; 16] = [
    "die", "kill", "cull", "give", "plant", "carry", "spray", "sow", "prick", "pot", "release", "hold", "cut", "left",
    "count", "flush",
];

/// The reading as it is, or what a look found. What is not seen any more lets plants go, so "no pests on
/// c1", "healthy" and a pest that is named and is not there are asked about, with the line ready.
pub(in crate::share::scribbled) fn as_looked(words: &[Word], reading: Reading, known: &Known) -> Reading {
    let is_open = |why: &Why| {
        matches!(why, Why::Question(_) | Why::Unsure(_) | Why::Correction(_) | Why::Intent(_) | Why::Coming(_))
    };
    if matches!(&reading, Reading::Refused { why, .. } if why.iter().any(is_open)) {
        return reading;
    }
    let Some((field, name)) = the_one_name(words, known) else { return reading };
    let of = |what: Option<String>, share: Option<u32>| {
        let what = what.map(|what| ("what".to_string(), json!(what)));
        let share = share.map(|share| ("share_pct".to_string(), json!(share)));
        let fields = std::iter::once((field.to_string(), json!(name))).chain(what).chain(share).collect();
        let happened = first_of(&reading).and_then(|draft| draft.happened);
        vec![EntryDraft { kind: "pest_seen", fields, happened }]
    };
    let note = |about: &Offer| vec![as_a_note(about)];
    if let Some(word) = phrase_in(words, "no_pest") {
        let said = words_of(&word);
        let in_spanish = phrase_in(&said, "no_pest_in_spanish").is_some();
        let none = of(Some(no_pest_in(in_spanish)), Some(0));
        let note = note(&none);
        return Reading::Refused { why: vec![Why::PestGone(word)], offers: vec![none, note] };
    }
    if let Some(word) = pest_not_there(words) {
        let gone = of(Some(word.clone()), Some(0));
        let note = note(&gone);
        return Reading::Refused { why: vec![Why::PestGone(word)], offers: vec![gone, note] };
    }
    if matches!(&reading, Reading::Clear(_)) || words.len() > MOST_WORDS {
        return reading;
    }
    if let Some(word) = phrase_in(words, "looks_well").filter(|_| !is_work(words, field)) {
        let in_spanish = ["san", "limpi", "esta", "sin "].iter().any(|begin| word.to_lowercase().starts_with(begin));
        let (none, pest) = (of(Some(no_pest_in(in_spanish)), Some(0)), note(&of(None, None)));
        return Reading::Refused { why: vec![Why::PestGone(word)], offers: vec![none, pest] };
    }
    match phrase_in(words, "looks_ill") {
        Some(word) => Reading::Refused { why: vec![Why::NotSaid("what")], offers: vec![of(Some(word), None)] },
        None if has_sick(words) => Reading::Refused { why: vec![Why::NotSaid("what")], offers: vec![of(None, None)] },
        None => reading,
    }
}

/// What is written where nothing was found, in the language of the line.
fn no_pest_in(in_spanish: bool) -> String {
    if in_spanish { "ninguna" } else { "none" }.to_string()
}

/// "limpia de Ridge 4 con machete": the cleaning of a bed, and no look at it.
fn is_work(words: &[Word], field: &str) -> bool {
    const TOOLS: [&str; 8] = ["machete", "azadon", "cuma", "pala", "hoe", "cutlass", "slasher", "rake"];
    let has_tool = words.iter().any(|word| TOOLS.contains(&word.folded.as_str()));
    let is_done =
        words.windows(2).any(|two| two[0].folded == "limpia" && matches!(two[1].folded.as_str(), "de" | "del"));
    field == "bed" && (has_tool || is_done)
}

fn words_of(text: &str) -> Vec<Word> {
    super::words::words(text)
}

fn first_of(reading: &Reading) -> Option<&EntryDraft> {
    match reading {
        Reading::Clear(drafts) => drafts.first(),
        Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => {
            offers.first().and_then(|drafts| drafts.first())
        }
    }
}

/// The one tray, bed or place of a line without numbers that says nothing of what was done.
fn the_one_name(words: &[Word], known: &Known) -> Option<(&'static str, String)> {
    let (mut found, mut at) = (Vec::new(), 0);
    while at < words.len() {
        if let Some((names, taken)) = known.name_at(words, at).filter(|(_, taken)| *taken > 0) {
            let of = names.into_iter().find(|(of, _)| matches!(of, NameOf::Tray | NameOf::Bed | NameOf::Place))?;
            found.push((of.0.field(), of.1));
            at += taken;
            continue;
        }
        let figure = number_at(words, at).is_some_and(|figure| !figure.is_weak);
        let is_free_of = super::doubts::phrase_at(words, at, "no_such").is_some();
        if figure
            || !is_free_of && (0..DEEDS.len()).any(|deed| phrase(words, at, DEEDS[deed]) > 0 && !is_look(words, at))
        {
            return None;
        }
        at += 1;
    }
    match &found[..] {
        [one] => Some(one.clone()),
        _ => None,
    }
}

/// Whether a word that can say what was done only says what is seen: "has", "there is".
fn is_look(words: &[Word], at: usize) -> bool {
    lexicon().is(&words[at].folded, "saw") || lexicon().is(&words[at].folded, "small.filler")
}

/// "checked c1 for rust, clean", "revisé c1 y no tiene roya", "no rust on c1": the pest that was not found.
fn pest_not_there(words: &[Word]) -> Option<String> {
    let pest_at = |at: usize| phrase(words, at, "pests.words");
    let at = (0..words.len()).find(|at| pest_at(*at) > 0)?;
    let length = pest_at(at);
    let denied =
        (0..at).any(|from| super::doubts::phrase_at(words, from, "no_such").is_some_and(|taken| from + taken == at));
    let looked = phrase_in(&words[..at], "looked_for").is_some();
    let found_clean = phrase_in(&words[at + length..], "found_clean").is_some();
    let named = words[at..at + length].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ");
    (denied || looked && found_clean).then_some(named)
}

fn has_sick(words: &[Word]) -> bool {
    words.iter().any(|word| lexicon().is(&word.folded, "sick"))
}
