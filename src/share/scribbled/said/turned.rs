//! Words that say their contrary, or one thing in several words: "no longer held" is free, "into one tray" is joined.

use super::asides::phrase;
use super::lexicon::lexicon;
use super::numbers::number_at;
use super::words::Word;

/// The most words between "no more" and what is no more.
const MOST_BETWEEN: usize = 3;

/// The words with such phrases in one word that says the same.
pub(in crate::share::scribbled) fn said_plainly(words: Vec<Word>) -> Vec<Word> {
    let words = without_how(without_how_many_names(in_one_tray(held_no_more(words))));
    counted_for_a_part(waits_a_day(nothing_in_the_gauge(words)))
}

/// "gauge: nil", "pluviómetro: nada": no rain.
fn nothing_in_the_gauge(words: Vec<Word>) -> Vec<Word> {
    const GAUGE: [&str; 6] = ["gauge", "rain", "lluvia", "pluviometro", "rainfall", "aguacero"];
    const NOTHING: [&str; 9] = ["nil", "none", "nothing", "zero", "nada", "cero", "ninguna", "seco", "empty"];
    let colon = usize::from(words.get(1).is_some_and(|word| word.is(":") || word.is("=") || word.is("-")));
    let is_all = words.len() == 2 + colon;
    if !is_all || !is_one_of(&words, 0, &GAUGE) || !is_one_of(&words, 1 + colon, &NOTHING) {
        return words;
    }
    let in_spanish = is_one_of(&words, 0, &["lluvia", "pluviometro", "aguacero"]);
    let said = if in_spanish { ["sin", "lluvia"] } else { ["no", "rain"] };
    said.into_iter().map(|word| Word::new(word, true)).collect()
}

/// "ok to touch tomorrow", "mañana ya se puede tocar": a wait of a day.
fn waits_a_day(words: Vec<Word>) -> Vec<Word> {
    let tomorrow = (0..words.len()).find(|at| is_one_of(&words, *at, &["tomorrow", "manana"]));
    let Some(at) = tomorrow else { return words };
    let behind = phrase(&words, at + 1, "wait") > 1;
    let before = (0..at).any(|from| from + phrase(&words, from, "wait") == at && at - from > 1);
    if !(behind || before) {
        return words;
    }
    let day = if words[at].folded == "tomorrow" { "day" } else { "dia" };
    let one = [Word::new("1", true), Word::new(day, true)];
    let waits = (0..at).rev().find(|from| from + phrase(&words, *from, "wait") == at).unwrap_or(at);
    let phrase_end = at + 1 + if behind { phrase(&words, at + 1, "wait") } else { 0 };
    let wait = [Word::new(if day == "day" { "wait" } else { "esperar" }, true)];
    [&words[..waits], &wait, &one, &words[phrase_end..]].concat()
}

/// "half of c1 dead, 9": how many they were is told behind it.
fn counted_for_a_part(words: Vec<Word>) -> Vec<Word> {
    let part = phrase(&words, 0, "numbers.half").max(phrase(&words, 0, "numbers.third"));
    let part = part.max(phrase(&words, 0, "numbers.quarter"));
    let figures = (part..words.len()).filter(|at| words[*at].typed.bytes().all(|byte| byte.is_ascii_digit()));
    let figures: Vec<usize> = figures.collect();
    let [at] = figures[..] else { return words };
    let is_behind_a_sign = at > part && words[at - 1].is(",") && at + 1 == words.len();
    if part == 0 || !is_behind_a_sign {
        return words;
    }
    let of = usize::from(is_one_of(&words, part, &["of", "de", "the", "la"]));
    [&words[part + of..at - 1], &words[at..]].concat()
}

/// "two trays: c1 40, c2 31": how many names follow says nothing new.
fn without_how_many_names(words: Vec<Word>) -> Vec<Word> {
    const NAMED: [&str; 8] = ["trays", "bandejas", "beds", "parcelas", "lots", "lotes", "charolas", "places"];
    let taken = number_at(&words, 0).map_or(0, |figure| figure.words);
    let is_heading =
        taken > 0 && is_one_of(&words, taken, &NAMED) && words.get(taken + 1).is_some_and(|word| word.is(":"));
    if is_heading { words[taken + 2..].to_vec() } else { words }
}

/// "las 6 más chicas", "the very weak ones": how much so is of no matter.
fn without_how(words: Vec<Word>) -> Vec<Word> {
    const HOW: [&str; 7] = ["mas", "muy", "very", "most", "too", "demasiado", "bien"];
    let says_how = |at: usize| {
        let is_poor = |at: usize| is_one_of_roles(&words, at, &["poor", "sick"]);
        let is_said_so = phrase(&words, at, "poor") > 1;
        is_one_of(&words, at, &HOW) && is_poor(at + 1) && !is_said_so
    };
    // "that looked sick", "que se miraban enfermas".
    let looks = |at: usize| {
        let length = super::doubts::phrase_at(&words, at, "that_looked").unwrap_or(0);
        (length > 0 && is_one_of_roles(&words, at + length, &["poor", "sick"])).then_some(length)
    };
    let passed = |at: usize| (0..=at).any(|from| looks(from).is_some_and(|length| at < from + length));
    let kept = (0..words.len()).filter(|at| !says_how(*at) && !passed(*at)).map(|at| words[at].clone());
    kept.collect()
}

fn is_one_of(words: &[Word], at: usize, all: &[&str]) -> bool {
    words.get(at).is_some_and(|word| all.contains(&word.folded.as_str()))
}

fn is_one_of_roles(words: &[Word], at: usize, roles: &[&str]) -> bool {
    words.get(at).is_some_and(|word| roles.iter().any(|role| lexicon().is(&word.folded, role)))
}

/// How many words say "no longer" from `at` on; "not" does so where "any more" stands behind it.
fn no_longer(words: &[Word], at: usize) -> usize {
    let ends = |at: usize| {
        is_one_of(words, at, &["anymore"])
            || is_one_of(words, at, &["any"]) && is_one_of(words, at + 1, &["more", "longer"])
    };
    match () {
        () if is_one_of(words, at, &["ya"]) && is_one_of(words, at + 1, &["no"]) => 2,
        () if is_one_of(words, at, &["no"]) && is_one_of(words, at + 1, &["longer", "more"]) => 2,
        () if is_one_of(words, at, &["not", "isn't", "isnt", "aren't", "arent"]) && (at..words.len()).any(ends) => 1,
        () => 0,
    }
}

/// "ya no está apartada", "is not held any more": it is free.
fn held_no_more(words: Vec<Word>) -> Vec<Word> {
    const BETWEEN: [&str; 14] =
        ["esta", "estan", "is", "are", "being", "se", "la", "las", "queda", "quedan", "sigue", "siguen", "in", "en"];
    let found = (0..words.len()).find_map(|at| {
        let from = at + no_longer(&words, at);
        let held =
            (from..words.len().min(from + MOST_BETWEEN)).find(|held| lexicon().is(&words[*held].folded, "hold"))?;
        let only_joins = (from..held).all(|between| is_one_of(&words, between, &BETWEEN));
        (from > at && only_joins).then_some((at, held))
    });
    let Some((at, held)) = found else { return words };
    let in_spanish = words[at].folded == "ya";
    // "is not held": what leads it goes along.
    let begin = if at > 0 && is_one_of(&words, at - 1, &["is", "are"]) { at - 1 } else { at };
    let mut end = held + 1;
    if is_one_of(&words, end, &["back", "up", "on"]) {
        end += 1;
    }
    if is_one_of(&words, end, &["any"]) {
        end += 2;
    } else if is_one_of(&words, end, &["anymore"]) {
        end += 1;
    }
    let free = Word::new(if in_spanish { "libre" } else { "released" }, words[begin].apart);
    [&words[..begin], &[free], &words[end.min(words.len())..]].concat()
}

/// "pasé las c1 a c2, una sola bandeja": two trays joined.
fn in_one_tray(words: Vec<Word>) -> Vec<Word> {
    const SAID: [&[&str]; 12] = [
        &["en", "una", "sola", "bandeja"],
        &["una", "sola", "bandeja"],
        &["en", "una", "sola"],
        &["en", "la", "misma", "bandeja"],
        &["todo", "en", "una", "bandeja"],
        &["todas", "en", "una", "bandeja"],
        &["all", "in", "one", "tray"],
        &["all", "into", "one", "tray"],
        &["in", "one", "tray"],
        &["into", "one", "tray"],
        &["one", "tray", "now"],
        &["as", "one", "tray"],
    ];
    let said_at = |at: usize| {
        let fits = |phrase: &&&[&str]| phrase.iter().enumerate().all(|(i, word)| is_one_of(&words, at + i, &[word]));
        SAID.iter().filter(fits).map(|phrase| phrase.len()).max()
    };
    let Some((at, length)) = (0..words.len()).find_map(|at| Some((at, said_at(at)?))) else { return words };
    let in_spanish = matches!(words[at].folded.as_str(), "en" | "una" | "todo" | "todas");
    let joined = Word::new(if in_spanish { "juntadas" } else { "merged" }, words[at].apart);
    [&words[..at], &[joined], &words[at + length..]].concat()
}

#[cfg(test)]
mod tests {
    use super::super::words::words;
    use super::*;

    #[test]
    fn what_is_held_no_more_is_free_and_what_comes_into_one_tray_is_joined() {
        let said = |line: &str| {
            let plain = said_plainly(words(line));
            plain.iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ")
        };
        for (line, plain) in [
            ("k1 ya no está apartada", "k1 libre"),
            ("ya no están en cuarentena k1 y k2", "libre k1 y k2"),
            ("k1 is not held any more", "k1 released"),
            ("k1 no longer held back", "k1 released"),
            ("k1 is not on hold", "k1 is not on hold"),
            ("k1 apartada para la escuela, ya no cabe", "k1 apartada para la escuela , ya no cabe"),
            ("pasé las k1 a k2, una sola bandeja", "pasé las k1 a k2 , juntadas"),
            ("k1 and k2 all in one tray", "k1 and k2 merged"),
        ] {
            assert_eq!(said(line), plain, "{line}");
        }
    }
}
