//! Slips of the pen, words that were run together, short forms of the telephone: brought to the words that lines are read
//! by, before anything is read. A name is left as it is, and so is a word that turns a line round.

use super::lexicon::{Role, lexicon, vocabulary};
use super::named::{Known, NameOf};
use super::numbers::in_figures;
use super::words::{Word, words as cut_into_words};
use crate::base::name_search::sounds;

/// A shorter word is near too many.
const LEAST_LETTERS: usize = 5;
/// Words of one line that are looked up so; a line with more of them is no line of ours.
const MOST_SLIPS: usize = 8;

/// The words as they were probably meant.
pub(in crate::share::scribbled) fn spelt(words: Vec<Word>, known: &Known) -> Vec<Word> {
    let mut spelt: Vec<Word> = Vec::with_capacity(words.len());
    for (n, word) in words.into_iter().enumerate() {
        match run_together(&word.typed, n == 0) {
            Some(pieces) if !known.is_named(&word.typed) => spelt.extend(cut_into_words(&pieces.join(" "))),
            _ => spelt.push(word),
        }
    }
    // "20 k1 + 30 k2"; "41 +2" says more than there were.
    for at in 1..spelt.len().saturating_sub(1) {
        if spelt[at].is("+") && spelt[at].apart && spelt[at + 1].apart {
            spelt[at] = spelt[at].meant("and");
        }
    }
    // "4 c1 n 2 c2".
    for at in 1..spelt.len().saturating_sub(1) {
        let joins = spelt[at].folded == "n" && !spelt[at - 1].is_sign() && !spelt[at + 1].is_sign();
        let names = in_figures(&spelt[at + 1].typed).is_some() || known.is_named(&spelt[at + 1].typed);
        if joins && names {
            spelt[at] = spelt[at].meant("and");
        }
    }
    with_times(&mut spelt, known);
    // "a metro por metro": in a square of one metre.
    for at in 0..spelt.len().saturating_sub(2) {
        let is_metre = |word: &Word| matches!(word.folded.as_str(), "metro" | "metre" | "meter");
        let by = matches!(spelt[at + 1].folded.as_str(), "por" | "by" | "x");
        if is_metre(&spelt[at])
            && by
            && is_metre(&spelt[at + 2])
            && (at == 0 || in_figures(&spelt[at - 1].typed).is_none())
        {
            spelt[at] = spelt[at].meant("1");
            spelt[at + 1] = spelt[at + 1].meant("x");
            spelt[at + 2] = spelt[at + 2].meant("1");
        }
    }
    // "30 klux".
    for at in 1..spelt.len() {
        let thousands =
            in_figures(&spelt[at - 1].typed).filter(|_| matches!(spelt[at].folded.as_str(), "klux" | "klx"));
        if let Some(thousands) = thousands {
            spelt[at - 1] = spelt[at - 1].meant(&format!("{}", thousands * 1000.0));
            spelt[at] = spelt[at].meant("lux");
        }
    }
    // "in 10 d".
    for at in 1..spelt.len() {
        let is_last = spelt.get(at + 1).is_none_or(Word::is_sign);
        if spelt[at].typed == "d" && is_last && in_figures(&spelt[at - 1].typed).is_some() {
            spelt[at] = Word::new("days", true);
        }
    }
    in_full(&mut spelt, known);
    let spelt = with_codes_in_one(spelt, known);
    let mut spelt = with_causes_led(spelt);
    let mut slips = 0;
    for at in 0..spelt.len() {
        if slips == MOST_SLIPS || !is_strange(&spelt, at, known) {
            continue;
        }
        slips += 1;
        if let Some(meant) = meant_by(&spelt[at].folded) {
            spelt[at] = spelt[at].meant(&meant);
        }
    }
    spelt
}

/// "lost: c1 x2, c2 x1": so many, where the line says what became of them; alone it is thrown out.
fn with_times(words: &mut [Word], known: &Known) {
    let tells = |word: &Word| {
        lexicon().roles(&word.folded).iter().any(|role| matches!(*role, "die" | "kill" | "give" | "cull" | "plant"))
    };
    if !words.iter().any(tells) {
        return;
    }
    for word in words {
        let figure = word.folded.strip_prefix('x').filter(|figure| in_figures(figure).is_some()).map(str::to_string);
        if let Some(figure) = figure.filter(|_| !known.is_named(&word.typed)) {
            *word = word.meant(&figure);
        }
    }
}

/// "desh. Ridge 1", "sobrev. School 3", "89 d cof-021": what is cut short, in full. A word cut short is the one of the lists
/// that goes on so; where several do, all must say the same.
fn in_full(words: &mut Vec<Word>, known: &Known) {
    /// A shorter beginning may be that of anything.
    const LEAST: usize = 3;
    let mut at = 0;
    while at < words.len() {
        let stop = words.get(at + 1).is_some_and(|next| next.is(".") && !next.apart);
        let is_last = at + 2 >= words.len();
        let is_cut = stop && !is_last && words[at].folded.chars().count() >= LEAST;
        let plural = words[at].folded.trim_end_matches("'s").trim_end_matches('s').to_string();
        if matches!(words[at].typed.as_str(), "→" | "⇒" | "➡" | "➔") {
            words[at] = Word::new("->", words[at].apart);
        } else if words[at].typed.contains(|letter: char| letter.is_ascii_digit())
            && plural.len() < words[at].folded.len()
            && !known.is_named(&words[at].typed)
            && known.is_named(&plural)
        {
            words[at] = Word::new(&plural, words[at].apart);
        } else if is_cut && is_strange(words, at, known) {
            if let Some(meant) = goes_on(&words[at].folded) {
                words[at] = words[at].meant(&meant);
                words.remove(at + 1);
            }
        } else if words[at].folded == "d" && at > 0 && in_figures(&words[at - 1].typed).is_some() {
            let every = at > 1 && lexicon().is(&words[at - 2].folded, "every");
            words[at] = Word::new(if every { "days" } else { "de" }, true);
        }
        at += 1;
    }
}

/// "cof 21": a code that is written in two words, where the first says nothing by itself.
fn with_codes_in_one(words: Vec<Word>, known: &Known) -> Vec<Word> {
    let is_digits = |word: &Word| !word.typed.is_empty() && word.typed.bytes().all(|byte| byte.is_ascii_digit());
    let mut joined: Vec<Word> = Vec::with_capacity(words.len());
    for word in words {
        if let Some(before) = joined.last().filter(|before| is_digits(&word) && is_letters(before)) {
            let code = format!("{}{}", before.typed, word.typed);
            let says_something = !lexicon().roles(&before.folded).is_empty() || known.is_named(&before.typed);
            let is_name = known.is_named(&format!("{} {}", before.typed, word.typed));
            if !says_something && !is_name && is_a_tray(&code, known) {
                let apart = before.apart;
                joined.pop();
                joined.push(Word::new(&code, apart));
                continue;
            }
        }
        joined.push(word);
    }
    joined
}

/// Whether a code is that of one tray, also without its noughts.
fn is_a_tray(code: &str, known: &Known) -> bool {
    let found = known.name_at(&[Word::new(code, true)], 0);
    matches!(found.as_ref().map(|(names, _)| &names[..]), Some([(NameOf::Tray, _)]))
}

fn is_letters(word: &Word) -> bool {
    !word.typed.is_empty() && word.typed.chars().all(char::is_alphabetic)
}

/// "cause: rot" is "by rot"; "jue de 18" is no Thursday but what was.
fn with_causes_led(mut words: Vec<Word>) -> Vec<Word> {
    let mut at = 0;
    let is_of_heights =
        words.iter().any(|word| lexicon().is(&word.folded, "height") || lexicon().is(&word.folded, "collar"));
    while at + 1 < words.len() {
        let figure = |at: usize| words.get(at).and_then(|word| in_figures(&word.typed));
        // "n=104" is a count, beside heights how many were measured.
        if words[at].folded == "n" && words[at + 1].is("=") && figure(at + 2).is_some() {
            if is_of_heights {
                words.drain(at..at + 3);
            } else {
                words[at] = Word::new("count", true);
                words.remove(at + 1);
            }
            continue;
        }
        // "6 y medio", "6 and a half".
        let joins = matches!(words[at + 1].folded.as_str(), "y" | "and");
        let article = usize::from(words.get(at + 2).is_some_and(|word| word.folded == "a"));
        let half =
            words.get(at + 2 + article).is_some_and(|word| matches!(word.folded.as_str(), "half" | "medio" | "media"));
        if let Some(whole) = figure(at).filter(|whole| joins && half && whole.fract() == 0.0) {
            words[at] = Word::new(&format!("{whole}.5"), true);
            words.drain(at + 1..at + 3 + article);
            continue;
        }
        // "six millimetres and a half", "seis milímetros y medio".
        let is_unit = lexicon().roles(&words[at].folded).iter().any(|role| role.starts_with("units."));
        if is_unit && joins && half && at > 0 {
            let before = super::numbers::number_at(&words, at - 1).filter(|figure| figure.value.fract() == 0.0);
            if let Some(figure) = before {
                words[at - 1] = Word::new(&format!("{}.5", figure.value), true);
                words.drain(at + 1..at + 3 + article);
                continue;
            }
        }
        let in_words = super::numbers::number_at(&words, at).filter(|figure| figure.words == 1 && !figure.is_part);
        if let Some(figure) = in_words.filter(|figure| joins && half && figure.value.fract() == 0.0 && !figure.is_weak)
        {
            words[at] = Word::new(&format!("{}.5", figure.value), true);
            words.drain(at + 1..at + 3 + article);
            continue;
        }
        // "litro y medio": one and a half.
        let is_bare = at == 0 || super::numbers::number_at(&words, at - 1).is_none_or(|figure| figure.is_part);
        let is_one = !words[at].folded.ends_with('s') && words[at].folded.len() > 3;
        if is_unit && joins && half && is_bare && is_one {
            words.insert(at, Word::new("1.5", true));
            words.drain(at + 2..at + 4 + article);
            continue;
        }
        // "dies y seis", "bendi dies": ten, where no plant dies.
        if words[at].folded == "dies"
            && (at == 0 || joins || words[at + 1].typed.contains(|letter: char| letter.is_ascii_digit()))
            && at > 0
        {
            words[at] = Word::new("diez", true);
        }
        // "11:30 h".
        let is_clock =
            words[at].typed.contains(':') && words[at].typed.starts_with(|letter: char| letter.is_ascii_digit());
        if is_clock && matches!(words[at + 1].folded.as_str(), "h" | "hs" | "hrs" | "horas") {
            words.remove(at + 1);
            continue;
        }
        let (word, next) = (words[at].folded.clone(), words[at + 1].folded.clone());
        if matches!(word.as_str(), "cause" | "causa" | "causas" | "causes" | "motivo" | "reason")
            && words[at + 1].is(":")
        {
            words[at] = Word::new("por", true);
            words.remove(at + 1);
        } else if word == "jue" && matches!(next.as_str(), "de" | "por" | "un" | "una" | "la" | "el") {
            words[at] = Word::new("fue", true);
        }
        at += 1;
    }
    words
}

/// The one word of the lists that begins so, or the shortest of several that all say the same.
fn goes_on(beginning: &str) -> Option<String> {
    /// A word of ours is cut short by so many letters at the least: by fewer it is a slip, or a word of its own.
    const LEAST_CUT: usize = 2;
    let vocabulary = vocabulary();
    let length = beginning.chars().count();
    let first = beginning.chars().next()?;
    let goes_on = |other: &&String| other.starts_with(beginning) && other.chars().count() >= length + LEAST_CUT;
    let found: Vec<&str> =
        vocabulary.by_first.get(&first).into_iter().flatten().filter(goes_on).map(String::as_str).collect();
    let roles = |word: &str| lexicon().roles(word);
    if found.iter().any(|one| roles(one).iter().any(|role| role.starts_with("mood."))) {
        return None;
    }
    let stems = vocabulary.stems.iter().map(|(_, stem)| *stem).filter(|stem| stem.starts_with(beginning));
    let with_roles: Vec<&str> = found.into_iter().filter(|one| !roles(one).is_empty()).chain(stems).collect();
    let shortest = with_roles.iter().min_by_key(|one| (one.len(), **one))?;
    let shared = |role: &Role| with_roles.iter().all(|one| roles(one).contains(role));
    roles(shortest).iter().any(shared).then(|| (*shortest).to_string())
}

/// "6pm", "8mm/10kg", "vivos/17", "c/2", "water/3d", and "0630" as the first word.
fn run_together(typed: &str, is_first: bool) -> Option<Vec<String>> {
    let is_digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    let pieces = |all: &[&str]| Some(all.iter().map(ToString::to_string).collect::<Vec<String>>());
    for ending in ["am", "pm", "AM", "PM"] {
        if let Some(hour) = typed.strip_suffix(ending).filter(|hour| is_digits(hour) && hour.len() < 3) {
            return pieces(&[hour, ending]);
        }
    }
    if is_first && typed.len() == 4 && is_digits(typed) && typed.starts_with('0') {
        return pieces(&[&typed[1..2], "am"]).filter(|_| typed[2..] < *"60");
    }
    if let Some(days) = typed.strip_suffix('d').filter(|days| is_digits(days) && days.len() < 3) {
        return pieces(&[days, "days"]);
    }
    // "24/25/23/26": more parts than a date has.
    let parts: Vec<&str> = typed.split('/').collect();
    if parts.len() > 3 && parts.iter().all(|part| is_digits(part)) {
        return pieces(&[&parts.join(" , ")]);
    }
    let (left, right) = typed.split_once('/')?;
    // "5 ml/l".
    let is_of = |text: &str, role: &str| lexicon().is(&super::lexicon::fold(text), role);
    if is_of(left, "asides.dose_unit") && is_of(right, "asides.dosed") {
        return pieces(&[left, "per", right]);
    }
    let starts = |text: &str| text.starts_with(|letter: char| letter.is_ascii_digit());
    let with_unit = |text: &str| starts(text) && text.ends_with(char::is_alphabetic);
    if with_unit(left) && with_unit(right) {
        return pieces(&[left, right]);
    }
    let letters = left.chars().all(char::is_alphabetic);
    if !letters || !starts(right) {
        return None;
    }
    let behind = run_together(right, false).unwrap_or_else(|| vec![right.to_string()]);
    let before: &[&str] = match left {
        "c" | "C" => &["cada"],
        _ if lexicon().is(&super::lexicon::fold(left), "water") => &[left, "every"],
        _ if !lexicon().roles(&super::lexicon::fold(left)).is_empty() => &[left, ","],
        _ => return None,
    };
    Some(before.iter().map(ToString::to_string).chain(behind).collect())
}

/// Whether nobody knows a word: no list, no name, no plant.
fn is_strange(words: &[Word], at: usize, known: &Known) -> bool {
    let word = &words[at];
    let is_name = word.typed.starts_with(char::is_uppercase) && at > 0;
    let is_word = word.folded.chars().all(|letter| letter.is_alphabetic());
    is_word
        && !is_name
        && in_figures(&word.typed).is_none()
        && !vocabulary().knows(&word.folded)
        && lexicon().weekday(&word.folded).is_none()
        && !known.is_named(&word.typed)
        && !known.is_a_plant(&word.typed)
}

/// The word of ours that sounds like this one, or is a slip away from it; none where several may be meant that say
/// different things.
fn meant_by(word: &str) -> Option<String> {
    let vocabulary = vocabulary();
    let sound = sounds(word);
    let alike: Vec<&str> = vocabulary.by_sound.get(&sound).into_iter().flatten().map(String::as_str).collect();
    if let Some(found) = agreed(&alike, word) {
        return Some(found);
    }
    if let Some((stem, rest)) = vocabulary.stem_that_sounds(word) {
        return Some(format!("{stem}{rest}"));
    }
    // "plantd", "sprayd".
    if let Some(done) =
        word.strip_suffix('d').map(|stem| format!("{stem}ed")).filter(|done| vocabulary.words.contains(done))
    {
        return agreed(&[&done], word);
    }
    let letters = word.chars().count();
    let first = word.chars().next()?;
    let is_near = |other: &&String| {
        let length = other.chars().count();
        let longer = other.starts_with(word) || letters == length && is_turned(word, other);
        length.abs_diff(letters) <= 1
            && (letters.min(length) >= LEAST_LETTERS || letters == LEAST_LETTERS - 1 && longer)
            && strsim::osa_distance(other, word) == 1
    };
    let near: Vec<&str> =
        vocabulary.by_first.get(&first).into_iter().flatten().filter(is_near).map(String::as_str).collect();
    agreed(&near, word)
}

/// Whether two neighbouring letters have changed places.
fn is_turned(word: &str, other: &str) -> bool {
    let sorted = |text: &str| {
        let mut letters: Vec<char> = text.chars().collect();
        letters.sort_unstable();
        letters
    };
    sorted(word) == sorted(other)
}

/// The one word that is meant: of several the first of those that all say the same thing. A word that says that nothing
/// was done is never guessed.
fn agreed(found: &[&str], word: &str) -> Option<String> {
    let roles = |word: &str| lexicon().roles(word);
    if found.iter().any(|one| roles(one).iter().any(|role| role.starts_with("mood."))) {
        return None;
    }
    let with_roles: Vec<&str> = found.iter().copied().filter(|one| !roles(one).is_empty()).collect();
    let all = if with_roles.is_empty() { found.to_vec() } else { with_roles };
    let first = all.iter().min_by_key(|one| (strsim::osa_distance(one, word), one.len(), **one))?;
    let shared = |role: &Role| all.iter().all(|one| roles(one).contains(role));
    (all.len() == 1 || roles(first).iter().any(shared)).then(|| (*first).to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_that_sound_alike_or_are_a_slip_away_are_those_of_the_lists() {
        for (slip, meant) in [
            ("kebraron", "quebraron"),
            ("biento", "viento"),
            ("yobio", "llovio"),
            ("nasieron", "nacieron"),
            ("dide", "died"),
            ("mesured", "measured"),
            ("caterpilars", "caterpillars"),
        ] {
            assert_eq!(meant_by(slip).as_deref(), Some(meant), "{slip}");
        }
        for word in ["painting", "zzz", "pedrito"] {
            assert_eq!(meant_by(word), None, "{word}");
        }
    }

    #[test]
    fn what_is_run_together_is_parted_and_dates_are_not() {
        let parted = |typed: &str| run_together(typed, true).map(|pieces| pieces.join(" "));
        for (typed, pieces) in [
            ("6pm", "6 pm"),
            ("8mm/10kg", "8mm 10kg"),
            ("c/2", "cada 2"),
            ("water/3d", "water every 3 days"),
            ("0630", "6 am"),
        ] {
            assert_eq!(parted(typed).as_deref(), Some(pieces), "{typed}");
        }
        let whole = |beginning: &str| goes_on(beginning);
        assert!(whole("sobrev").is_some_and(|word| word.starts_with("sobreviv")));
        assert!(whole("surv").is_some_and(|word| word.starts_with("surviv")));
        assert_eq!(whole("con"), None);
        for typed in ["14/6", "41/50", "c/u", "b/c", "0680", "k1", "12"] {
            assert_eq!(parted(typed), None, "{typed}");
        }
    }
}
