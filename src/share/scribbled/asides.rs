//! What a line says beside its meaning: a price, a dose, how long it took. No entry has a field for it, so it is read over
//! and the line is kept word for word beside its entry.

use super::lexicon::{fold, lexicon};
use super::numbers::{in_figures, number_at};
use super::words::Word;

/// Signs of money that stand at a number.
const MONEY: [char; 4] = ['$', '₡', '€', '£'];
/// Kinds of words beside which a weight or a volume for each litre or plant is a dose.
const GIVEN_TO_PLANTS: [&str; 3] = ["remedy", "spray", "tend"];
/// Kinds of words beside which a number for each is a price.
const TRADE: [&str; 4] = ["give", "they_took", "receive", "buy"];

/// The words without what stands beside the meaning, and what that was.
pub(super) fn without_asides(words: Vec<Word>) -> (Vec<Word>, Option<String>) {
    let says =
        |of: &[&str]| words.iter().any(|word| lexicon().roles(&word.folded).iter().any(|role| of.contains(role)));
    let (is_dosed, is_trade) = (says(&GIVEN_TO_PLANTS), says(&TRADE));
    let (mut kept, mut beside): (Vec<Word>, Vec<&str>) = (Vec::with_capacity(words.len()), Vec::new());
    let mut at = 0;
    while let Some(word) = words.get(at) {
        let length = price_at(&words, at, is_trade)
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

fn is(words: &[Word], at: usize, role: &str) -> bool {
    words.get(at).is_some_and(|word| lexicon().is(&word.folded, role))
}

/// How many words a phrase of a list takes from `at` on.
fn phrase(words: &[Word], at: usize, role: &str) -> usize {
    let two = words.get(at..at + 2).map(|two| format!("{} {}", two[0].folded, two[1].folded));
    match two.is_some_and(|two| lexicon().is(&two, role)) {
        true => 2,
        false => usize::from(is(words, at, role)),
    }
}

/// "a 5 pesos", "at 50 each", "$20".
fn price_at(words: &[Word], at: usize, is_trade: bool) -> Option<usize> {
    let lead = usize::from(is(words, at, "asides.money_lead"));
    let number = at + lead;
    let signed = words.get(number)?.typed.strip_prefix(MONEY);
    if signed.is_some_and(|rest| in_figures(rest).is_some()) {
        return Some(lead + 1 + phrase(words, number + 1, "asides.money_each"));
    }
    let figure = number_at(words, number).filter(|figure| !figure.is_part && !figure.is_weak)?;
    let behind = number + figure.words;
    if is(words, behind, "units.money") {
        return Some(behind + 1 + phrase(words, behind + 1, "asides.money_each") - at);
    }
    let each = phrase(words, behind, "asides.money_each");
    (is_trade && lead == 1 && each > 0).then_some(behind + each - at)
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
    let figure = (lead > 0).then(|| number_at(words, at + lead)).flatten()?;
    let unit = at + lead + figure.words;
    let is_time = ["units.hour", "units.day", "asides.minutes"].iter().any(|role| is(words, unit, role));
    is_time.then_some(unit + 1 - at)
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
