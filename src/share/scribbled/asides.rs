//! What a line says beside its meaning: a price, a dose, how long it took. No entry has a field for it, so it is read over
//! and the line is kept word for word beside its entry.

use super::lexicon::{fold, lexicon};
use super::named::Known;
use super::numbers::{in_figures, number_at};
use super::words::Word;

/// The most words of a phrase.
const LONGEST_PHRASE: usize = 4;
/// Signs of money that stand at a number.
const MONEY: [char; 4] = ['$', '₡', '€', '£'];
/// Letters of money that stand at a number: quetzal, lempira, colón.
const MONEY_LETTERS: [&str; 4] = ["Q", "L", "C$", "Ksh"];
/// Kinds of words beside which a weight or a volume for each litre or plant is a dose.
const GIVEN_TO_PLANTS: [&str; 3] = ["remedy", "spray", "tend"];
/// Kinds of words beside which a number for each is a price.
const TRADE: [&str; 4] = ["give", "they_took", "receive", "buy"];

/// The words without what stands beside the meaning, and what that was.
pub(super) fn without_asides(words: Vec<Word>) -> (Vec<Word>, Option<String>) {
    let says = |of: &[&str]| {
        let of_one = words.iter().any(|word| lexicon().roles(&word.folded).iter().any(|role| of.contains(role)));
        of_one || (0..words.len()).any(|at| of.iter().any(|role| phrase(&words, at, role) > 1))
    };
    let (is_dosed, is_trade) = (says(&GIVEN_TO_PLANTS), says(&TRADE));
    let (mut kept, mut beside): (Vec<Word>, Vec<&str>) = (Vec::with_capacity(words.len()), Vec::new());
    let mut at = 0;
    while let Some(word) = words.get(at) {
        let length = compared_at(&words, at)
            .or_else(|| told_of_nobody_at(&words, at))
            .or_else(|| (at > 0).then(|| told_when_at(&words, at)).flatten())
            .or_else(|| what_became_at(&words, at))
            .or_else(|| from_the_shade_at(&words, at))
            .or_else(|| (at > 0).then(|| rows_at(&words, at)).flatten())
            .or_else(|| price_at(&words, at, is_trade))
            .or_else(|| is_dosed.then(|| dose_at(&words, at)).flatten())
            .or_else(|| (at > 0).then(|| time_at(&words, at)).flatten());
        match length {
            Some(length) => {
                beside.extend(words[at..(at + length).min(words.len())].iter().map(|word| word.typed.as_str()));
                at += length;
            }
            None => {
                kept.push(word.clone());
                at += 1;
            }
        }
    }
    let said = (!beside.is_empty() && !kept.is_empty()).then(|| beside.join(" "));
    if said.is_none() { (words, None) } else { (kept, said) }
}

/// What plants or people do: behind these words stands what was done, not who got something or what died.
const DEEDS: [&str; 20] = [
    "plant",
    "refill",
    "sow",
    "resow",
    "prick",
    "pot",
    "weed",
    "clear_ground",
    "mulch",
    "real_hole",
    "fence",
    "cut",
    "harvest",
    "spray",
    "watered",
    "carry",
    "count",
    "height",
    "tend",
    "graft",
];
/// Words of which a person may be the giver, the taker or the culprit.
const WITH_A_PERSON: [&str; 8] = ["give", "they_took", "receive", "kill", "steal", "buy", "gift", "gives"];

/// The words without who did it, at the head of a line or behind "says", and who it was.
pub(super) fn without_doer(words: Vec<Word>, known: &Known) -> (Vec<Word>, Option<String>) {
    let said = |at: usize| at + doer_at(&words, at, known);
    let says = |at: usize| phrase(&words, at, "asides.says");
    // "dice Nyota que", "Tabu says".
    let first = says(0);
    let person = said(first);
    let length = match (first > 0 && person > first, person > 0 && says(person) > 0) {
        (true, _) => person,
        (false, true) => person + says(person),
        (false, false) if first == 0 && person > 0 && does(&words, person) => person,
        (false, false) => return (words, None),
    };
    let length = length
        + usize::from(words.get(length).is_some_and(|word| matches!(word.folded.as_str(), "que" | "that" | "q")));
    if length >= words.len() {
        return (words, None);
    }
    let doer = words[..length].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ");
    (words[length..].to_vec(), Some(doer))
}

/// The words without whom it was done with, at the end of the line: "with the boys".
pub(super) fn without_company(words: Vec<Word>, known: &Known) -> (Vec<Word>, Option<String>) {
    let leads = |at: &usize| {
        let at = *at;
        let lead = phrase(&words, at, "asides.with_whom");
        // A name may be that of a variety or of a remedy.
        let is_name = words[at + lead..].iter().any(|word| word.typed.starts_with(char::is_uppercase));
        let company = doer_at(&words, at + lead, known);
        lead > 0 && company > 0 && !is_name && at + lead + company == words.len()
    };
    // "got k1 watered with the boys".
    let gives = |word: &Word| {
        word.folded != "got" && lexicon().roles(&word.folded).iter().any(|role| WITH_A_PERSON.contains(role))
    };
    let Some(at) = (1..words.len()).find(leads).filter(|_| !words.iter().any(gives)) else { return (words, None) };
    let company = words[at..].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ");
    (words[..at].to_vec(), Some(company))
}

/// Whether a word says what somebody did, and no word that gives or takes.
fn does(words: &[Word], at: usize) -> bool {
    let helped = usize::from(is(words, at, "helpers.before_ing"));
    let Some(word) = words.get(at + helped) else { return false };
    let roles = lexicon().roles(&word.folded);
    roles.iter().any(|role| DEEDS.contains(role)) && !roles.iter().any(|role| WITH_A_PERSON.contains(role))
}

/// How many words name who did it: "the school children", "los niños de la escuela", "Tabu", "don Chepe".
fn doer_at(words: &[Word], from: usize, known: &Known) -> usize {
    const SMALL: [&str; 10] = ["the", "my", "our", "el", "la", "los", "las", "mi", "mis", "un"];
    let is_person = |at: usize| ["small.person", "small.title"].iter().any(|role| is(words, at, role));
    let is_named = |at: usize| {
        words.get(at).is_some_and(|word| {
            word.typed.starts_with(char::is_uppercase)
                && lexicon().roles(&word.folded).is_empty()
                && lexicon().weekday(&word.folded).is_none()
                && lexicon().month(&word.folded).is_none()
                && !known.is_named(&word.typed)
                && !known.is_a_plant(&word.typed)
                && word.folded.chars().all(char::is_alphabetic)
        })
    };
    let (mut at, mut found) = (from, false);
    // "yo y Kevin", "me an the boy": one of several is the writer.
    let is_writer = |at: usize| words.get(at).is_some_and(|word| matches!(word.folded.as_str(), "yo" | "me" | "i"));
    let joins = |at: usize| {
        words
            .get(at)
            .is_some_and(|word| matches!(word.folded.as_str(), "y" | "and" | "n" | "an" | "&" | "con" | "with"))
    };
    let with_the_writer = is_writer(from) && joins(from + 1);
    if with_the_writer {
        let article = usize::from(words.get(from + 2).is_some_and(|word| SMALL.contains(&word.folded.as_str())));
        let is_strange = |at: usize| {
            words.get(at).is_some_and(|word| {
                lexicon().roles(&word.folded).is_empty()
                    && word.folded.chars().all(char::is_alphabetic)
                    && !known.is_named(&word.typed)
            })
        };
        at = from + 2 + article;
        if is_person(at) || is_named(at) || is_strange(at) {
            return at + 1 - from;
        }
        at = from;
    }
    loop {
        if at == from && words.get(at).is_some_and(|word| SMALL.contains(&word.folded.as_str())) {
            at += 1;
        }
        let behind_a_title = at > from && is(words, at - 1, "small.title");
        let is_capital = words.get(at).is_some_and(|word| word.typed.starts_with(char::is_uppercase));
        if is_person(at) || is_named(at) || behind_a_title && is_capital && !known.is_named(&words[at].typed) {
            (at, found) = (at + 1, true);
            continue;
        }
        let of = words.get(at).is_some_and(|word| matches!(word.folded.as_str(), "de" | "of" | "del"));
        let article = usize::from(words.get(at + 1).is_some_and(|word| SMALL.contains(&word.folded.as_str())));
        if found && of && is_person(at + 1 + article) {
            at += 2 + article;
            continue;
        }
        break;
    }
    if found { at - from } else { 0 }
}

fn is(words: &[Word], at: usize, role: &str) -> bool {
    words.get(at).is_some_and(|word| lexicon().is(&word.folded, role))
}

/// How many words a phrase of a list takes from `at` on.
pub(super) fn phrase(words: &[Word], at: usize, role: &str) -> usize {
    let said = |length: usize| {
        let words: Option<Vec<&str>> =
            words.get(at..at + length).map(|some| some.iter().map(|word| word.folded.as_str()).collect());
        words.is_some_and(|words| lexicon().is(&words.join(" "), role))
    };
    (1..=LONGEST_PHRASE).rev().find(|length| said(*length)).unwrap_or(0)
}

/// "same as Monday", "igual que ayer": a day to compare with is not the day it happened.
fn compared_at(words: &[Word], at: usize) -> Option<usize> {
    const LIKE: [&str; 10] = ["same", "igual", "mismo", "than", "menos", "mas", "more", "less", "iguales", "fewer"];
    let folded = |at: usize| words.get(at).map_or("", |word| word.folded.as_str());
    let before = at.checked_sub(1).map_or("", folded);
    // "recount 90 (book 91)".
    let is_book = matches!(folded(at), "book" | "books" | "libro" | "libros" | "segun");
    if at > 0 && is_book && words.get(at + 1).is_some_and(|word| in_figures(&word.typed).is_some()) {
        return Some(2);
    }
    // "24 vs book 25".
    if matches!(folded(at), "vs" | "vs." | "versus") {
        let stop = usize::from(words.get(at + 1).is_some_and(|word| word.is(".")));
        let mut end = at + 1 + stop;
        while matches!(folded(end), "el" | "the" | "libro" | "libros" | "book" | "books" | "in" | "en") {
            end += 1;
        }
        return words.get(end).and_then(|word| in_figures(&word.typed)).map(|_| end + 1 - at);
    }
    // "2 menos que la otra vez", "three fewer than last week".
    let figure = number_at(words, at).filter(|figure| !figure.is_part);
    if let Some(figure) = figure.filter(|figure| at > 0 && LIKE.contains(&folded(at + figure.words))) {
        let than = at + figure.words + 1;
        let when = phrase(words, than + 1, "asides.before");
        if matches!(folded(than), "que" | "than") && when > 0 {
            return Some(than + 1 + when - at);
        }
    }
    let is_led = matches!(folded(at), "as" | "que" | "than") && LIKE.contains(&before);
    let article = usize::from(matches!(folded(at + 1), "el" | "last" | "on"));
    let day = at + 1 + article;
    let of_week = usize::from(lexicon().weekday(folded(day)).is_some());
    let of_words = phrase(words, day, "days.yesterday").max(phrase(words, day, "days.day_before"));
    let length = of_week.max(of_words);
    (is_led && length > 0).then_some(1 + article + length)
}

/// "before the rain", "after the rats", "when i tipped it out", "al sacarla": when it was, in words that hold no number, no name
/// and no day, up to a sign, a joining word or the end of the line. Of what is still to come nothing is set aside.
fn told_when_at(words: &[Word], at: usize) -> Option<usize> {
    /// Words of such a clause.
    const MOST_WORDS: usize = 6;
    let infinitive = |at: usize| {
        let bare = words.get(at).map_or("", |word| word.folded.as_str());
        let bare = ["las", "los", "la", "lo"].iter().find_map(|end| bare.strip_suffix(end)).unwrap_or(bare);
        bare.len() > 3 && ["ar", "er", "ir"].iter().any(|ending| bare.ends_with(ending))
    };
    if (0..=at).any(|from| phrase(words, from, "soaked") > at - from) {
        return None;
    }
    let by_verb = phrase(words, at, "asides.when_it_was");
    let lead = match (phrase(words, at, "asides.before_or_after"), by_verb, words[at].folded.as_str()) {
        (lead, ..) if lead > 0 => lead,
        (_, lead, _) if lead > 0 => lead,
        (.., "al") if infinitive(at + 1) => 1,
        _ => return None,
    };
    let ends = |word: &Word| word.is_sign() || lexicon().is(&word.folded, "small.and");
    let end = (at + lead..words.len()).find(|end| ends(&words[*end])).unwrap_or(words.len());
    let clause = &words[at + lead..end];
    let roles = |words: &[Word]| words.iter().flat_map(|word| lexicon().roles(&word.folded)).collect::<Vec<_>>();
    let is_open = |role: &&str| role.starts_with("days.") || role.starts_with("units.") || role.starts_with("mood.");
    let is_a_day = |word: &Word| {
        lexicon().weekday(&word.folded).is_some()
            || lexicon().month(&word.folded).is_some()
            || word.typed.contains(|letter: char| letter.is_ascii_digit())
    };
    let is_told = clause.len() <= MOST_WORDS
        && !clause.is_empty()
        && !clause.iter().any(is_a_day)
        && !roles(clause).iter().any(is_open)
        && (0..clause.len()).all(|at| number_at(clause, at).is_none_or(|figure| figure.is_weak));
    // What died after something died of it, and ground is pushed at so long after a soaking.
    let before = roles(&words[..at]);
    let says = |all: &[&str]| before.iter().any(|role| all.contains(role));
    let is_of_it = says(&["rod", "soil", "push", "finger", "hold", "wait", "intent", "mood.intent", "mood.coming"])
        || says(&["die", "kill", "cull"]) && roles(clause).contains(&"causes.words");
    let is_past = by_verb == 0 || clause.iter().any(|word| is_past(&word.typed));
    (is_told && !is_of_it && is_past).then_some(end - at)
}

/// Whether a word is a verb that tells what was.
fn is_past(typed: &str) -> bool {
    const PAST: [&str; 18] = [
        "was", "were", "came", "got", "took", "fell", "broke", "went", "had", "did", "saw", "found", "fue", "fueron",
        "vino", "habia", "estaba", "estaban",
    ];
    const ENDINGS: [&str; 5] = ["ed", "aron", "ieron", "aban", "ian"];
    let folded = fold(typed);
    PAST.contains(&folded.as_str())
        || typed.ends_with(['é', 'ó', 'í'])
        || ENDINGS.iter().any(|end| folded.ends_with(end))
}

/// "rows 2 and 3", "surcos 2 y 3": where in a bed plants went.
fn rows_at(words: &[Word], at: usize) -> Option<usize> {
    const ROWS: [&str; 8] = ["row", "rows", "surco", "surcos", "hilera", "hileras", "furrow", "furrows"];
    let figure = |at: usize| words.get(at).is_some_and(|word| in_figures(&word.typed).is_some());
    let is_plant = words.iter().any(|word| lexicon().is(&word.folded, "plant"));
    let in_metres = words.get(at + 2).is_some_and(|word| lexicon().is(&word.folded, "units.m"));
    if !is_plant || in_metres || !ROWS.contains(&words[at].folded.as_str()) || !figure(at + 1) {
        return None;
    }
    let joins = |at: usize| {
        words.get(at).is_some_and(|word| matches!(word.folded.as_str(), "and" | "y" | "to" | "a" | "-" | ","))
    };
    let mut end = at + 2;
    while joins(end) && figure(end + 1) {
        end += 2;
    }
    Some(end - at)
}

/// "c1 out of the shade to the rack": where it went says the rest.
fn from_the_shade_at(words: &[Word], at: usize) -> Option<usize> {
    let length = phrase(words, at, "asides.from_shade");
    let goes_on = words.get(at + length).is_some_and(|word| {
        matches!(word.folded.as_str(), "to" | "into" | "onto" | "on" | "a" | "al" | "en" | "pa" | "para")
    });
    (at > 0 && length > 0 && goes_on).then_some(length)
}

/// "and burned them", "y las enterré": what became of plants that were thrown out.
fn what_became_at(words: &[Word], at: usize) -> Option<usize> {
    let joins = usize::from(is(words, at, "small.and"));
    let length = phrase(words, at + joins, "asides.became");
    let is_of_plants = words[..at]
        .iter()
        .any(|word| lexicon().roles(&word.folded).iter().any(|role| matches!(*role, "cull" | "sick" | "poor")));
    (at > 0 && length > 0 && is_of_plants).then_some(joins + length)
}

/// ", someone forgot to water": what people whom nobody names did or left undone, behind a sign to the next one.
fn told_of_nobody_at(words: &[Word], at: usize) -> Option<usize> {
    const NOBODY: [&str; 7] = ["someone", "somebody", "nobody", "alguien", "nadie", "a alguien", "no one"];
    if at == 0 || !words[at - 1].is(",") {
        return None;
    }
    let two = || words.get(at..at + 2).map(|two| format!("{} {}", two[0].folded, two[1].folded));
    if !NOBODY.contains(&words[at].folded.as_str()) && !two().is_some_and(|two| NOBODY.contains(&two.as_str())) {
        return None;
    }
    let end = (at..words.len()).find(|end| words[*end].is_sign()).unwrap_or(words.len());
    let tells_more = (at..end).any(|at| number_at(words, at).is_some_and(|figure| !figure.is_weak));
    let is_of_loss = words[..at].iter().any(|word| {
        lexicon().roles(&word.folded).iter().any(|role| matches!(*role, "die" | "kill" | "cull" | "thirsty"))
    });
    (end == words.len() && is_of_loss && !tells_more).then_some(end - at)
}

/// "a 5 pesos", "at 50 each", "$20".
fn price_at(words: &[Word], at: usize, is_trade: bool) -> Option<usize> {
    let lead = usize::from(is(words, at, "asides.money_lead"));
    let number = at + lead;
    let each = phrase(words, number + 1, "asides.money_each");
    let typed = words.get(number)?.typed.as_str();
    let signed = typed.strip_prefix(MONEY).or_else(|| typed.strip_suffix("/-"));
    // "Q5 each", "a L20": the first letter of the money.
    let lettered = MONEY_LETTERS
        .iter()
        .find_map(|letters| typed.strip_prefix(letters))
        .filter(|_| each > 0 || lead > 0 && is_trade);
    if signed.or(lettered).is_some_and(|rest| in_figures(rest).is_some()) {
        return Some(lead + 1 + each);
    }
    let figure = number_at(words, number).filter(|figure| !figure.is_part && !figure.is_weak)?;
    let behind = number + figure.words;
    if is(words, behind, "units.money") {
        return Some(behind + 1 + phrase(words, behind + 1, "asides.money_each") - at);
    }
    let each = phrase(words, behind, "asides.money_each");
    // "sold 15 k1, 30 each": the plants were told before.
    let is_told = || (0..at).any(|before| number_at(words, before).is_some_and(|figure| !figure.is_weak));
    let is_behind = at > 0 && words[at - 1].is(",") && is_told();
    // "vendí 10 a 60 a un señor".
    let to_somebody = lead == 1
        && is_told()
        && words.get(behind).is_some_and(|word| matches!(word.folded.as_str(), "a" | "to"))
        && words.get(behind + 1).is_some_and(|word| in_figures(&word.typed).is_none());
    (is_trade && ((lead == 1 || is_behind) && each > 0 || to_somebody)).then_some(behind + each - at)
}

/// "5 ml per litre", "2 libras por hoyo", "20cc por bomba".
fn dose_at(words: &[Word], at: usize) -> Option<usize> {
    let lead = usize::from(is(words, at, "asides.money_lead"));
    let number = at + lead;
    let per = match number_at(words, number) {
        Some(figure) => {
            let unit = number + figure.words;
            is(words, unit, "asides.dose_unit").then_some(unit + 1)?
        }
        None => {
            let typed = &words.get(number)?.typed;
            let unit = typed.find(|letter: char| letter.is_alphabetic()).filter(|at| *at > 0)?;
            let is_dose =
                in_figures(&typed[..unit]).is_some() && lexicon().is(&fold(&typed[unit..]), "asides.dose_unit");
            is_dose.then_some(number + 1)?
        }
    };
    let mut thing = per;
    while is(words, thing, "asides.dose_per") {
        thing += 1;
    }
    (thing > per && is(words, thing, "asides.dosed")).then_some(thing + 1 - at)
}

/// "took 3 hours", "tardamos 2 horas".
fn time_at(words: &[Word], at: usize) -> Option<usize> {
    let lead = phrase(words, at, "asides.lasted");
    let duration = if lead > 0 { phrase(words, at + lead, "asides.duration") } else { 0 };
    if duration > 0 {
        return Some(lead + duration);
    }
    // ", two days of it": behind the work, at the end of the line.
    let is_behind = lead == 0 && words[at - 1].is(",");
    let figure = (lead > 0 || is_behind).then(|| number_at(words, at + lead)).flatten()?;
    let unit = at + lead + figure.words;
    let is_time = ["units.hour", "units.day", "asides.minutes"].iter().any(|role| is(words, unit, role));
    let of_it = phrase(words, unit + 1, "asides.of_work");
    if is_behind && (of_it == 0 || unit + 1 + of_it < words.len()) {
        return None;
    }
    is_time.then_some(unit + 1 + of_it - at)
}

#[cfg(test)]
mod tests {
    use super::super::words::words;
    use super::*;

    #[test]
    fn a_price_a_dose_and_how_long_it_took_are_set_aside_and_counts_are_not() {
        let beside = |line: &str| without_asides(words(line)).1;
        for (line, aside) in [
            ("sold 8 k2 to Ana at 50 each", "at 50 each"),
            ("vendí 8 k2 a Ana a 5 pesos cada una", "a 5 pesos cada una"),
            ("vendí 8 k2 a Ana por $20", "por $20"),
            ("neem on k2, 5 ml per litre", "5 ml per litre"),
            ("eché cobre a k2 a 20cc por bomba", "a 20cc por bomba"),
            ("weeded Upper, took 3 hours", "took 3 hours"),
        ] {
            assert_eq!(beside(line).as_deref(), Some(aside), "{line}");
        }
        for line in ["k1 and k2 3 each dead", "2 seeds per hole in Upper", "took 8 k1", "k1 50 at 7:30", "k1 50"] {
            assert_eq!(beside(line), None, "{line}");
        }
    }
}
