//! What a line says about itself as a whole, whatever its words explain: that it is still to be done, has come to an end,
//! is struck out, speaks of no plants. Such a line is asked about, never written.

use serde_json::{Value, json};

use super::doubts::{as_a_note, number, phrase_at, phrase_in, stands_in};
use super::frames::number_value;
use super::lexicon::{fold, lexicon, list};
use super::numbers::{in_figures, number_at};
use super::words::Word;
use super::{EntryDraft, Offer, Reading, Why};
use crate::base::Day;

/// Why a line is not written, and what may have been meant.
type Doubt = (Why, Vec<Offer>);

/// The words without an article between a part and the whole: "2 de las 36", "3 of the 46".
pub(in crate::share::scribbled) fn without_articles(words: Vec<Word>) -> Vec<Word> {
    let is_article = |at: usize| {
        let is = |at: usize, all: &[&str]| words.get(at).is_some_and(|word| all.contains(&word.folded.as_str()));
        at > 1
            && is(at, &["las", "los", "the"])
            && is(at - 1, &["de", "of"])
            && number(&words[at - 2]).is_some()
            && words.get(at + 1).and_then(number).is_some()
    };
    let kept = words.iter().enumerate().filter(|(at, _)| !is_article(*at));
    kept.map(|(_, word)| word.clone()).collect()
}

/// The words as they are mostly said: "banana leaves" that were cut are leaves of banana, and what a loss ends in is said
/// once: "five, all dead", "5 c1, todas de hormiga".
pub(in crate::share::scribbled) fn as_mostly_said(words: Vec<Word>) -> Vec<Word> {
    const CUTS: [&str; 9] = ["cut", "lopped", "lop", "chopped", "chop", "pruned", "trimmed", "stripped", "clipped"];
    const CORTA: [&str; 10] =
        ["corte", "cortamos", "cortaron", "cortadas", "cortado", "pode", "podamos", "quite", "quitamos", "deshojamos"];
    const DIES: [&str; 9] = ["died", "dead", "lost", "killed", "froze", "murieron", "murio", "perdi", "mato"];
    let says = |words: &[Word], all: &[&str]| words.iter().any(|word| all.contains(&word.folded.as_str()));
    let is = |at: usize, all: &[&str]| words.get(at).is_some_and(|word| all.contains(&word.folded.as_str()));
    let is_cut = says(&words, &CUTS);
    let mut kept: Vec<Word> = Vec::with_capacity(words.len() + 1);
    let mut at = 0;
    while at < words.len() {
        let all = |at: usize| is(at, &["all", "todas", "todos"]);
        let is_end = at > 0 && words[at].is(",") && all(at + 1);
        let dies = |at: usize| words.get(at).is_some_and(|word| lexicon().is(&word.folded, "die"));
        let ends_so = at > 0 && words[at].is(",") && (all(at + 1) && dies(at + 2) || dies(at + 1) && all(at + 2));
        let is_told = || (0..at).any(|at| number_at(&words, at).is_some_and(|figure| !figure.is_weak));
        if ends_so && at + 3 == words.len() && is_told() {
            at += 3;
        } else if is_end && is(at + 2, &["de", "por", "from", "by", "of"]) && says(&words[..at], &DIES) {
            at += 2;
        } else if is_cut && is(at, &["banana", "plantain"]) && is(at + 1, &["leaves", "leaf"]) {
            kept.extend([words[at + 1].clone(), Word::new("of", true), words[at].clone()]);
            at += 2;
        } else if at > 0
            && says(&words, &CORTA)
            && is(at, &["de"])
            && is(at - 1, &["hojas", "hoja"])
            && is(at + 1, &["platano", "banano", "guineo", "platanos", "bananos"])
        {
            // "hojas de plátano" are a mulch as well.
            kept.push(Word::new("del", true));
            at += 1;
        } else {
            kept.push(words[at].clone());
            at += 1;
        }
    }
    kept
}

/// The reading as it is, or as a refusal where the line as a whole says something else.
pub(in crate::share::scribbled) fn of_the_whole_line(words: &[Word], reading: Reading, today: Day) -> Reading {
    let reading = with_what_is_now(words, with_the_other_number(words, of_last_night(words, reading, today)));
    if let Some((why, offers)) = held_no_more(words, &reading) {
        return Reading::Refused { why: vec![why], offers };
    }
    if is_no_fact(&reading) {
        return reading;
    }
    let doubt = struck_out(words, &reading)
        .or_else(|| asked_for(words, &reading))
        .or_else(|| still_to_do(words, &reading))
        .or_else(|| doubt_of(words, &reading))
        .or_else(|| newly_born(words, &reading));
    match doubt {
        Some((why, offers)) => Reading::Refused { why: vec![why], offers },
        None => with_every_number(reading),
    }
}

fn is_no_fact(reading: &Reading) -> bool {
    matches!(reading, Reading::Refused { why, .. } if why.iter().any(Why::is_no_fact))
}

fn offers(reading: &Reading) -> Vec<Offer> {
    match reading {
        Reading::Clear(drafts) => vec![drafts.clone()],
        Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => offers.clone(),
    }
}

/// What was seen last night was yesterday, and so was its rain; its cold is of the morning's reading.
fn of_last_night(words: &[Word], mut reading: Reading, today: Day) -> Reading {
    let is_of_the_morning = |draft: &EntryDraft| {
        draft.kind == "weather" && draft.fields.keys().any(|field| matches!(field.as_str(), "tmin_c" | "tmax_c"))
    };
    if phrase_in(words, "last_night").is_none() {
        return reading;
    }
    let all: Vec<&mut Offer> = match &mut reading {
        Reading::Clear(drafts) => vec![drafts],
        Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => offers.iter_mut().collect(),
    };
    for draft in all.into_iter().flatten().filter(|draft| !is_of_the_morning(draft)) {
        draft.happened = draft.happened.or(Some(today.plus(-1)));
    }
    reading
}

/// A line that corrects an earlier one, or that stands for nothing.
fn struck_out(words: &[Word], reading: &Reading) -> Option<Doubt> {
    let first = |name: &str| {
        let length = phrase_at(words, 0, name)?;
        Some(words[..length].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" "))
    };
    let last = words.iter().rev().find(|word| !word.is_sign());
    let last =
        last.filter(|word| stands_in(word, "struck") || stands_in(word, "struck_last")).map(|word| word.typed.clone());
    let why = first("correction").map(Why::Correction);
    // A count holds whatever was written before it.
    let counted = offers(reading).into_iter().find(|drafts| drafts.iter().any(|draft| draft.kind == "counted"));
    if let (Some(why), Some(mut counted)) = (why.clone(), counted) {
        counted.retain(|draft| draft.kind == "counted");
        return Some((why, vec![counted]));
    }
    why.or_else(|| first("struck").or(last).map(Why::NotDone)).map(|why| (why, Vec::new()))
}

/// "carry c1 back please": a wish.
fn asked_for(words: &[Word], reading: &Reading) -> Option<Doubt> {
    let first = phrase_at(words, 0, "order")?;
    phrase_in(words, "polite")?;
    let word = words[..first].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ");
    Some((Why::Intent(word), offers(reading)))
}

/// "to be weeded", "por desyerbar", "holes to dig", "planned".
fn still_to_do(words: &[Word], reading: &Reading) -> Option<Doubt> {
    let as_planned =
        words.windows(2).any(|two| matches!(two[0].folded.as_str(), "as" | "lo") && stands_in(&two[1], "intent"));
    let is_said_so = phrase_in(words, "not_intent").is_some();
    let says = phrase_in(words, "intent").filter(|_| !as_planned && !is_said_so);
    let heading =
        phrase_at(words, 0, "to_do_heading").filter(|length| words.get(*length).is_some_and(|word| word.is(":")));
    let says = says.or_else(|| heading.map(|_| words[0].typed.clone()));
    // "3 dead by watering too much" is said in Spanish as work to be done.
    let is_cause =
        offers(reading).iter().flatten().any(|draft| matches!(draft.kind, "lost" | "culled" | "plants_lost"));
    let leads = |two: &&[Word]| {
        let verb = two[1].folded.as_str();
        let is_infinitive = ["ar", "er", "ir"].iter().any(|ending| verb.ends_with(ending));
        let is_known =
            || !lexicon().roles(verb).is_empty() || list("helpers", "infinitives").iter().any(|one| one == verb);
        match two[0].folded.as_str() {
            "to" => stands_in(&two[1], "bare_verb"),
            "por" => is_infinitive && is_known(),
            _ => false,
        }
    };
    let led = || words.windows(2).find(leads).map(|two| format!("{} {}", two[0].typed, two[1].typed));
    let word = says.or_else(|| led().filter(|_| !is_cause))?;
    Some((Why::Intent(word), offers(reading)))
}

/// What makes the first reading doubtful, by its kind.
fn doubt_of(words: &[Word], reading: &Reading) -> Option<Doubt> {
    let all = offers(reading);
    let drafts = all.first()?;
    let first = drafts.first()?;
    let note = || vec![as_a_note(drafts)];
    let noted = |why: Why| (why, vec![note()]);
    let ended = || phrase_in(words, "ended").filter(|_| phrase_in(words, "all_over").is_none());
    let doubt = match first.kind {
        "flushed" | "hardening_begun" => ended().map(|word| noted(Why::Ended(word))),
        "given_out" => phrase_in(words, "came_back").map(|word| noted(Why::CameBack(word))),
        "lost" => of_no_plants(words, first).map(|word| noted(Why::NotOfPlants(word))),
        "treated" => food(words, first).map(|word| {
            let is_clear = !matches!(reading, Reading::Refused { .. });
            let treated = is_clear.then(|| drafts.clone());
            (Why::FoodOrRemedy(word), std::iter::once(note()).chain(treated).collect())
        }),
        "counted" => was_and_is(words, drafts)
            .or_else(|| counted_differently(words, drafts))
            .map(|offers| (Why::Several, offers)),
        "measured" => {
            let thick = phrase_in(words, "thick").map(|word| noted(Why::NoReading(vec![word])));
            thick.or_else(|| how_many_or_how_high(words, drafts).map(|offers| (Why::Several, offers)))
        }
        _ => None,
    };
    doubt.or_else(|| {
        let changes = matches!(first.kind, "lost" | "culled" | "given_out" | "outplanted");
        changes.then(|| arrow(words)).flatten().map(|why| (why, Vec::new()))
    })
}

/// "c1 held no more": it may go.
fn held_no_more(words: &[Word], reading: &Reading) -> Option<Doubt> {
    let is_held = |at: &usize| lexicon().is(&words[*at].folded, "hold");
    let word = (0..words.len()).filter(is_held).find_map(|at| {
        let length = phrase_at(words, at + 1, "no_more")?;
        Some(words[at + 1..=at + length].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" "))
    })?;
    let about = offers(reading).first().map(|drafts| EntryDraft { kind: "released", ..as_a_note(drafts) });
    let free = about.filter(|free| !free.fields.is_empty());
    Some((Why::Ended(word), free.into_iter().map(|free| vec![free]).collect()))
}

/// "medí 10, 22 cm": ten plants of 22 cm, or two plants.
fn how_many_or_how_high(words: &[Word], drafts: &[EntryDraft]) -> Option<Vec<Offer>> {
    let says = |three: &[Word]| {
        lexicon().roles(&three[0].folded).contains(&"height") && number(&three[1]).is_some() && three[2].is(",")
    };
    let several = drafts.len() > 1 && drafts.iter().all(|draft| draft.kind == "measured");
    let last = drafts.last().filter(|_| several && words.windows(3).any(says))?;
    let plants = drafts.iter().filter_map(|draft| draft.fields.get("plants")?.as_array()).flatten().cloned().collect();
    let mut all = last.clone();
    all.fields.insert("plants".into(), Value::Array(plants));
    Some(vec![vec![all]])
}

/// "lost 3 -> 2", "lost 3, sorry 2".
fn arrow(words: &[Word]) -> Option<Why> {
    let words: Vec<&Word> = words.iter().filter(|word| !word.is(",")).collect();
    words.windows(3).find_map(|three| {
        let is_arrow = matches!(three[1].typed.as_str(), "->" | ">" | "=>" | "→") || stands_in(three[1], "slip");
        is_arrow.then(|| Some(Why::Range(number(three[0])?, number(three[2])?))).flatten()
    })
}

fn amount(draft: &EntryDraft, field: &str) -> Option<f64> {
    draft.fields.get(field).and_then(Value::as_f64)
}

/// "killed 3 rats in c1", "c1 3 dead leaves": a number of something else than plants.
fn of_no_plants(words: &[Word], lost: &EntryDraft) -> Option<String> {
    let count = amount(lost, "count")?;
    let at = (0..words.len()).find(|at| number(&words[*at]) == Some(count))?;
    let behind = words.get(at + 1)?;
    let has = |word: &Word, roles: &[&str]| lexicon().roles(&word.folded).iter().any(|role| roles.contains(role));
    let before = at.checked_sub(1).and_then(|at| words.get(at));
    let killed = before.is_some_and(|word| has(word, &["kill"]) || stands_in(word, "hunted"));
    let animals = killed
        && has(behind, &["causes.words", "pests.words"])
        && words.get(at + 2).is_some_and(|word| has(word, &["small.to"]) || word.folded == "de");
    if animals {
        return Some(behind.typed.clone());
    }
    words[at + 1..].iter().take(2).find(|word| stands_in(word, "of_a_plant")).map(|word| word.typed.clone())
}

/// Lime, food for the leaves, helpers of the soil: whether it makes a tray unsafe to touch the line does not say.
fn food(words: &[Word], treated: &EntryDraft) -> Option<String> {
    let said = phrase_in(words, "food")?;
    let with = treated.fields.get("with").and_then(Value::as_str).map(fold)?;
    let food = fold(&said);
    (with == food || with.starts_with(&format!("{food} ")) || food.starts_with(&format!("{with} "))).then_some(said)
}

/// "gre-017 28, 30, 27": no tray is counted so on one day; of three numbers and more they are rather heights, of two it is asked.
fn counted_differently(words: &[Word], drafts: &[EntryDraft]) -> Option<Vec<Offer>> {
    let first = drafts.first()?;
    let is_of_it = |draft: &&EntryDraft| {
        draft.kind == "counted"
            && draft.fields.get("tray") == first.fields.get("tray")
            && draft.happened == first.happened
            && !draft.fields.contains_key("clock")
    };
    let counts: Vec<f64> = drafts.iter().filter(is_of_it).filter_map(|draft| amount(draft, "standing")).collect();
    let differ = counts.iter().any(|count| *count != counts[0]);
    if counts.len() != drafts.len() || counts.len() < 2 || !differ {
        return None;
    }
    let says_count =
        words.iter().any(|word| lexicon().roles(&word.folded).iter().any(|role| ["count", "left"].contains(role)));
    if counts.len() == 2 || says_count {
        return Some(drafts.iter().map(|draft| vec![draft.clone()]).collect());
    }
    let plants: Vec<Value> = counts.iter().map(|count| json!({"height_cm": number_value(*count)})).collect();
    let mut measured = EntryDraft { kind: "measured", ..first.clone() };
    measured.fields.retain(|field, _| field == "tray");
    measured.fields.insert("plants".into(), Value::Array(plants));
    Some(vec![vec![measured]])
}

/// "tenía 36 y murieron 5", "tenía 36, hoy 34", "36 menos 3", "murieron 2 de las 36": a number of before, not a count of today.
fn was_and_is(words: &[Word], drafts: &[EntryDraft]) -> Option<Vec<Offer>> {
    let first = drafts.first()?;
    let standing = amount(first, "standing")?;
    let at = (0..words.len()).find(|at| number(&words[*at]) == Some(standing))?;
    let had = words[..at].iter().rev().take(2).any(|word| stands_in(word, "had"));
    let says_alive = words.iter().any(|word| ["viv", "buen", "muert"].iter().any(|stem| word.folded.starts_with(stem)));
    let before = (0..words.len()).filter(|at| words[..*at].iter().rev().take(2).any(|word| stands_in(word, "had")));
    let before = before.filter_map(|at| number(&words[at])).next();
    let is_same = |draft: &EntryDraft| draft.kind == "counted" && draft.fields.get("tray") == first.fields.get("tray");
    if let (Some(before), true, true) = (before, drafts.len() > 1, drafts.iter().all(is_same)) {
        let now = drafts.iter().filter(|draft| amount(draft, "standing") != Some(before));
        return Some(now.map(|draft| vec![draft.clone()]).collect());
    }
    // A cause makes the dead an entry of their own.
    let loss = drafts.get(1).filter(|other| other.kind == "lost");
    let dead = amount(first, "dead").or_else(|| loss.and_then(|loss| amount(loss, "count")))?;
    let minus = words.get(at + 1).is_some_and(|word| stands_in(word, "minus"))
        && words.get(at + 2).and_then(number) == Some(dead);
    let whole = words[..at].iter().rev().take(3).any(|word| matches!(word.folded.as_str(), "de" | "of"))
        && words[..at].iter().any(|word| number(word) == Some(dead));
    if !(had && !says_alive || minus || whole) {
        return None;
    }
    let told = |kind: &'static str, field: &str, value: f64| {
        let tray = first.fields.get("tray").map(|tray| ("tray".to_string(), tray.clone()));
        let fields = tray.into_iter().chain([(field.to_string(), number_value(value))]).collect();
        vec![EntryDraft { kind, fields, happened: first.happened }]
    };
    let lost = loss.map_or_else(
        || told("lost", "count", dead),
        |loss| {
            let mut loss = loss.clone();
            let cause = loss.fields.get("cause").and_then(Value::as_str).map(fold);
            if words.iter().any(|word| stands_in(word, "had") && Some(&word.folded) == cause.as_ref()) {
                loss.fields.remove("cause");
            }
            vec![loss]
        },
    );
    Some(if whole { vec![lost] } else { vec![lost, told("counted", "standing", standing - dead)] })
}

/// "había 72, hay 69": of two counts of a tray the one that is not said of before.
fn with_what_is_now(words: &[Word], reading: Reading) -> Reading {
    let Reading::Clear(drafts) = &reading else { return reading };
    let is_count = drafts.len() > 1 && drafts.iter().all(|draft| draft.kind == "counted");
    match was_and_is(words, drafts).filter(|_| is_count).as_deref() {
        Some([now]) => Reading::Clear(now.clone()),
        _ => reading,
    }
}

/// "nacieron 20": what came up since is added to what stood there; no loss is meant.
fn newly_born(words: &[Word], reading: &Reading) -> Option<Doubt> {
    let Reading::Asks { why, offers } = reading else { return None };
    words.iter().find(|word| lexicon().is(&word.folded, "asides.born"))?;
    let kept: Vec<Offer> =
        offers.iter().filter(|offer| offer.iter().all(|draft| draft.kind != "lost")).cloned().collect();
    // "ya nacieron 50" where 52 stand: rather all that are up by now than as many again.
    let in_all = |draft: &EntryDraft| {
        let sum = amount(draft, "standing").filter(|_| draft.kind == "counted")?;
        let born = words.iter().filter_map(number).find(|born| *born < sum && *born * 2.0 >= sum - *born)?;
        let mut draft = draft.clone();
        draft.fields.insert("standing".into(), number_value(born));
        Some(vec![draft])
    };
    let all: Vec<Offer> = kept.iter().filter_map(|offer| in_all(offer.first()?)).collect();
    let is_changed = kept.len() < offers.len() || !all.is_empty();
    let kept = all.into_iter().chain(kept).collect();
    is_changed.then(|| (why.first().cloned().unwrap_or(Why::Several), kept))
}

/// "no murieron 3, solo 2": the second number is the one.
fn with_the_other_number(words: &[Word], reading: Reading) -> Reading {
    let Reading::Refused { why, offers } = &reading else { return reading };
    let other = words.windows(2).find(|two| stands_in(&two[0], "only")).and_then(|two| number(&two[1]));
    let lost = offers.iter().flatten().find(|draft| draft.kind == "lost");
    let is_denied = why.iter().any(|why| matches!(why, Why::NotDone(_)));
    let (Some(other), Some(lost), true) = (other, lost, is_denied) else { return reading };
    let mut meant = lost.clone();
    meant.fields.insert("count".into(), number_value(other));
    let cause = meant.fields.get("cause").and_then(Value::as_str).map(fold);
    if words.iter().any(|word| stands_in(word, "only") && Some(&word.folded) == cause.as_ref()) {
        meant.fields.remove("cause");
    }
    Reading::Refused { why: why.clone(), offers: vec![vec![meant]] }
}

/// A line that moves or holds a whole tray is not offered where a number of plants was not read.
fn with_every_number(reading: Reading) -> Reading {
    let Reading::Refused { why, offers } = reading else { return reading };
    let is_number = |word: &String| word.split(' ').any(|word| in_figures(word).is_some());
    let unread = why.iter().any(|why| matches!(why, Why::NoReading(words) if words.iter().any(is_number)));
    let numbers = why.iter().flat_map(|why| if let Why::NoReading(words) = why { words.as_slice() } else { &[] });
    let numbers: Vec<f64> = numbers.flat_map(|word| word.split(' ')).filter_map(in_figures).collect();
    let holds = |draft: &EntryDraft, number: f64| draft.fields.values().any(|value| value.as_f64() == Some(number));
    let left_out =
        |offer: &Offer| numbers.iter().filter(|number| !offer.iter().any(|draft| holds(draft, **number))).count();
    // One number out of a list is never what was meant.
    let drops = |offer: &Offer| {
        offer.iter().any(|draft| match draft.kind {
            "carried" | "held" | "treated" => true,
            "counted" | "lost" | "culled" => left_out(offer) > 1,
            _ => false,
        })
    };
    let (dropped, mut kept): (Vec<Offer>, Vec<Offer>) = offers.into_iter().partition(|offer| unread && drops(offer));
    if let (Some(dropped), true) = (dropped.first(), kept.is_empty()) {
        kept.push(vec![as_a_note(dropped)]);
    }
    Reading::Refused { why, offers: kept }
}
