//! Names as they are said among those who know them: "la yaca 7" is jac-007, "lote L04 de yaca" is jac-L04, "bolsas de litro" are of one
//! litre. What is only one of its kind is written out in full before anything is read; what may be two is left as it stands.

use super::lexicon::lexicon;
use super::named::{Known, NameOf};
use super::numbers::in_figures;
use super::words::Word;

/// Between a species and its number these only say that it is one.
const TRAYS: [&str; 10] = ["tray", "bandeja", "charola", "no", "no.", "num", "numero", "number", "#", "nº"];
/// Before a species that a number follows these say that it is one thing.
const LEADS: [&str; 14] = ["el", "la", "del", "al", "the", "en", "a", "in", "on", "this", "esta", "este", "de", "from"];
/// Behind a number these say of what it is a number.
const OF_WHAT: [&str; 15] = [
    "die",
    "kill",
    "alive",
    "survive",
    "cull",
    "give",
    "plant",
    "carry",
    "seed",
    "bag",
    "well",
    "poor",
    "sick",
    "prick",
    "small.thing",
];

/// The words with such names in full.
pub(in crate::share::scribbled) fn with_whole_names(words: Vec<Word>, known: &Known) -> Vec<Word> {
    let words = with_lots(of_one_litre(words), known);
    with_trays(words, known)
}

fn is(word: Option<&Word>, all: &[&str]) -> bool {
    word.is_some_and(|word| all.contains(&word.folded.as_str()))
}

fn has_role(word: Option<&Word>, roles: &[&str]) -> bool {
    word.is_some_and(|word| lexicon().roles(&word.folded).iter().any(|role| roles.contains(role)))
}

/// A whole number in figures.
fn figure(word: Option<&Word>) -> Option<u64> {
    let typed = &word?.typed;
    let in_digits = !typed.is_empty() && typed.bytes().all(|byte| byte.is_ascii_digit());
    typed.parse().ok().filter(|_| in_digits)
}

/// "bolsas de litro", "bolsa de medio litro".
fn of_one_litre(mut words: Vec<Word>) -> Vec<Word> {
    for at in 0..words.len().saturating_sub(2) {
        let is_bag = has_role(words.get(at), &["bag"]) && words[at + 1].folded == "de";
        let is_litre = |at: usize| has_role(words.get(at), &["units.l"]) && words[at].folded.len() > 2;
        if is_bag && is_litre(at + 2) {
            words.insert(at + 2, Word::new("1", true));
        } else if is_bag && words[at + 2].folded == "medio" && is_litre(at + 3) {
            words[at + 2] = Word::new("0.5", true);
        }
    }
    words
}

/// The species that is named at a word, and how many words name it.
fn species_at(words: &[Word], at: usize, known: &Known) -> Option<(Vec<String>, usize)> {
    let says_something = !lexicon().roles(&words[at].folded).is_empty() || in_figures(&words[at].typed).is_some();
    if words[at].is_sign() || known.name_at(words, at).is_some() {
        return None;
    }
    known.species_at(words, at, usize::from(says_something))
}

/// "lote L04, yaca": the end of a lot's code with its species in the line.
fn with_lots(mut words: Vec<Word>, known: &Known) -> Vec<Word> {
    let Some(at) = (0..words.len())
        .find(|at| known.name_at(&words, *at).is_none() && known.lots_ending(&words[*at].typed).len() > 1)
    else {
        return words;
    };
    let keys: Vec<String> =
        (0..words.len()).filter_map(|at| species_at(&words, at, known)).flat_map(|(keys, _)| keys).collect();
    let lots: Vec<String> = known
        .lots_ending(&words[at].typed)
        .into_iter()
        .filter(|lot| known.names.species_of(NameOf::Lot, lot).is_some_and(|key| keys.contains(&key)))
        .collect();
    if let [lot] = &lots[..] {
        words[at] = words[at].meant(lot);
    }
    words
}

fn with_trays(words: Vec<Word>, known: &Known) -> Vec<Word> {
    let of = |name_of: NameOf| {
        (0..words.len())
            .any(|at| known.name_at(&words, at).is_some_and(|(names, _)| names.iter().any(|(of, _)| *of == name_of)))
    };
    let is_strange_code = |word: &Word| {
        let has = |is: fn(char) -> bool| word.typed.chars().any(is);
        let is_code =
            has(|letter| letter.is_ascii_digit()) && has(char::is_alphabetic) && !word.typed.contains(['/', '.']);
        is_code && !known.is_named(&word.typed)
    };
    if of(NameOf::Tray) || words.iter().any(is_strange_code) {
        return words;
    }
    let has_bed = of(NameOf::Bed);
    for at in 0..words.len() {
        let found =
            by_number_and_species(&words, at, known).or_else(|| by_species_and_number(&words, at, known, has_bed));
        if let Some((from, to, tray)) = found {
            let named = Word::new(&tray, words[from].apart);
            return [&words[..from], &[named], &words[to..]].concat();
        }
    }
    words
}

/// A stretch of the line and the tray that it names.
type Named = (usize, usize, String);

/// "la 12 de aguacate", "tray 28 coffee".
fn by_number_and_species(words: &[Word], at: usize, known: &Known) -> Option<Named> {
    let number = figure(words.get(at))?;
    let before = at.checked_sub(1).and_then(|before| words.get(before));
    let of = usize::from(is(words.get(at + 1), &["de", "of"]));
    let is_tray = is(before, &TRAYS);
    let is_led = is(before, &["la", "the"]) && of == 1;
    if !(is_tray || is_led) || at + 1 + of >= words.len() {
        return None;
    }
    let (keys, taken) = species_at(words, at + 1 + of, known)?;
    Some((if is_tray { at - 1 } else { at }, at + 1 + of + taken, known.tray_of(&keys, number)?))
}

/// "la yaca 7", "coffee tray 28", "10 grevileas de la 17", "cafe 25 quedan 35".
fn by_species_and_number(words: &[Word], at: usize, known: &Known, has_bed: bool) -> Option<Named> {
    let (keys, taken) = species_at(words, at, known)?;
    let end = at + taken;
    let of_it = is(words.get(end), &["de", "from", "of"])
        && (is(words.get(end + 1), &["la"]) || is(words.get(end + 1), &TRAYS));
    let tray_word = is(words.get(end), &TRAYS);
    let number_at = end + if of_it { 2 } else { usize::from(tray_word) };
    let tray = known.tray_of(&keys, figure(words.get(number_at))?)?;
    let behind = words.get(number_at + 1);
    let is_measure = has_role(
        behind,
        &["units.pct", "units.cm", "units.mm", "units.l", "units.g", "units.kg", "units.m", "units.day", "units.lux"],
    ) || behind.is_some_and(|word| lexicon().month(&word.folded).is_some() || word.is("%"));
    if is_measure {
        return None;
    }
    if of_it || tray_word {
        return Some((if of_it { end + 1 } else { at }, number_at + 1, tray));
    }
    let others = (0..words.len())
        .filter(|other| *other != number_at)
        .any(|other| super::numbers::number_at(words, other).is_some_and(|figure| !figure.is_weak));
    let before = at.checked_sub(1).and_then(|before| words.get(before));
    let counts_them = before.is_some_and(|word| super::numbers::number_at(std::slice::from_ref(word), 0).is_some());
    // "café 25 muertas 3": the second number is that of the dead.
    let has_its_own = figure(words.get(number_at + 2)).is_some();
    let says_of_what = has_role(behind, &OF_WHAT) && !has_role(behind, &["left", "count", "up"]) && !has_its_own;
    // "jackfruit 6 has aphids": of one thing.
    let is_of_one = is(behind, &["has", "is", "tiene", "esta"]) && !has_bed;
    let is_one = !words[end - 1].folded.ends_with('s');
    let is_led = is_one && is(before, &LEADS) && (others || !has_role(behind, &OF_WHAT));
    // Without an article it may be how many: another number says how many.
    let is_alone = is_one && !counts_them && !has_bed && others && !says_of_what && !makes_a_tray(words);
    let is_of_one = is_of_one && is_one && !counts_them;
    (is_led && !(has_bed && says_of_what) || is_alone || is_of_one).then_some((at, number_at + 1, tray))
}

/// Whether the line tells of a tray that begins: its number is how many went into it.
fn makes_a_tray(words: &[Word]) -> bool {
    words.iter().any(|word| {
        has_role(Some(word), &["sow", "receive", "buy", "gift", "plant"]) && !has_role(Some(word), &["count", "left"])
    })
}
