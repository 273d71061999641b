//! What a line denies is never offered: neither "no cerqué A1" nor "falta cercar A1" is a line about a fence that stands.

use serde_json::json;

use super::doubts::{as_a_note, stands_in};
use super::lexicon::{fold, lexicon};
use super::named::Known;
use super::words::Word;
use super::{EntryDraft, Offer, Reading, Why, noted_about};

/// The reading without offers that say what the line denies: what its other parts say by themselves is offered, else the line as a
/// note. `read` reads a part.
pub(in crate::share::scribbled) fn without_what_is_denied(
    words: &[Word],
    reading: Reading,
    known: &Known,
    read: impl Fn(&[Word]) -> Reading,
) -> Reading {
    let reading = of_nobody(words, reading);
    let Reading::Refused { why, offers } = reading else { return reading };
    let denied = why.iter().find_map(|why| match why {
        Why::NotDone(word) => Some(fold(word)),
        _ => None,
    });
    let Some(denied) = denied.filter(|_| !offers.is_empty() && !denies_something_else(words)) else {
        return Reading::Refused { why, offers };
    };
    let (left_undone, rest): (Vec<_>, Vec<_>) = parts(words).into_iter().partition(|part| says(part, &denied));
    // What a part does not name is what the line names.
    let name = name_in(words, known);
    let named = |part: &Vec<Word>| clear(read(part)).or_else(|| clear(read(&[&name[..], &part[..]].concat())));
    let told = rest.iter().filter_map(named).collect::<Vec<Offer>>();
    let about = note_about(words, &offers, known);
    // "nobody watered, 8 c1 dried out": what was left undone is why.
    let is_neglect = left_undone.iter().flatten().any(|word| stands_in(word, "neglect"))
        && !left_undone.iter().flatten().any(|word| super::doubts::number(word).is_some());
    if let [lost] = &told[..]
        && is_neglect
        && rest.len() == 1
        && lost.iter().all(|one| one.kind == "lost" && one.fields.contains_key("count"))
    {
        return Reading::Clear(lost.iter().cloned().chain(about).collect());
    }
    let offers = if told.is_empty() { vec![about] } else { told };
    Reading::Refused { why, offers }
}

/// "nobody weeded A1": what nobody did was not done. Behind another word it may be a reason: "died because nobody watered".
fn of_nobody(words: &[Word], reading: Reading) -> Reading {
    let is_lead =
        |word: &Word| word.is_sign() || lexicon().roles(&word.folded).iter().any(|role| role.starts_with("days."));
    let first = words.iter().find(|word| !is_lead(word));
    let nobody = first.filter(|word| stands_in(word, "nobody"));
    match (nobody, reading) {
        (Some(nobody), Reading::Clear(drafts)) if drafts.iter().all(|draft| draft.kind != "noted") => {
            Reading::Refused { why: vec![Why::NotDone(nobody.typed.clone())], offers: vec![drafts] }
        }
        (_, reading) => reading,
    }
}

/// "no murieron 3, solo 2", "55 not 56", "15 took, 5 not", "somebody I do not know": what is denied is not what was read.
fn denies_something_else(words: &[Word]) -> bool {
    let number = |word: &Word| super::doubts::number(word).is_some();
    let denies = |word: &Word| matches!(word.folded.as_str(), "no" | "not" | "y no" | "dont" | "don't");
    words.windows(2).any(|two| {
        stands_in(&two[0], "only") && number(&two[1])
            || number(&two[0]) && (denies(&two[1]) || matches!(two[1].folded.as_str(), "did" | "didn't" | "didnt"))
            || denies(&two[0]) && stands_in(&two[1], "knows")
    })
}

/// A line cut at its signs and at "but".
fn parts(words: &[Word]) -> Vec<Vec<Word>> {
    let cuts = |word: &Word| {
        matches!(word.typed.as_str(), "," | ";" | "." | ":" | "(" | ")")
            || matches!(word.folded.as_str(), "pero" | "but")
    };
    words.split(cuts).filter(|part| !part.is_empty()).map(<[Word]>::to_vec).collect()
}

fn says(part: &[Word], denied: &str) -> bool {
    let whole = part.iter().map(|word| word.folded.as_str()).collect::<Vec<_>>().join(" ");
    format!(" {whole} ").contains(&format!(" {denied} "))
}

fn clear(reading: Reading) -> Option<Offer> {
    match reading {
        Reading::Clear(drafts) if !drafts.is_empty() => Some(drafts),
        Reading::Clear(_) | Reading::Asks { .. } | Reading::Refused { .. } => None,
    }
}

/// The words of the first name of a line.
fn name_in(words: &[Word], known: &Known) -> Vec<Word> {
    let found = (0..words.len()).find_map(|at| Some((at, known.name_at(words, at)?.1)).filter(|(_, taken)| *taken > 0));
    found.map_or(Vec::new(), |(at, taken)| words[at..at + taken].to_vec())
}

/// The line as a note about what it names first.
fn note_about(words: &[Word], offers: &[Offer], known: &Known) -> Offer {
    let first: &[EntryDraft] = offers.first().map_or(&[], Vec::as_slice);
    let named = (0..words.len()).find_map(|at| noted_about(&known.name_at(words, at)?.0));
    let named = named.map(|(field, name)| (field.to_string(), json!(name)));
    vec![EntryDraft { fields: named.into_iter().collect(), ..as_a_note(first) }]
}
