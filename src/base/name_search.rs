//! The nearest known names to one that is not known.

use std::cmp::Reverse;

use super::text::folded;

/// Up to three known names nearest to what was written, best first: those that begin alike or differ by few
/// letters (at most a third of the length, at least two, and never more than half). Accents and case do not count.
pub fn nearest<'a>(written: &str, known: impl Iterator<Item = &'a str>) -> Vec<String> {
    let wanted: Vec<char> = folded(written).chars().take(60).collect();
    let limit = (wanted.len() / 3).max(2).min((wanted.len() / 2).max(1));
    let mut scored: Vec<(usize, String)> = known
        .filter_map(|name| {
            let candidate: Vec<char> = folded(name).chars().take(60).collect();
            let mut apart = distance(&wanted, &candidate);
            let begins = wanted.len() >= 3 && candidate.starts_with(&wanted);
            // More was written behind the name: only as many words as the name has are compared.
            let parts = candidate.iter().filter(|letter| **letter == '-').count() + 1;
            let ends = wanted.iter().enumerate().filter(|(_, letter)| **letter == '-').map(|(at, _)| at).nth(parts - 1);
            if let Some(head) = ends.and_then(|end| wanted.get(..end)).filter(|head| head.len() >= 4) {
                let of_head = distance(head, &candidate);
                if of_head <= head.len() / 4 {
                    apart = apart.min(of_head + 1);
                }
            }
            (apart <= limit || begins).then(|| (if begins { apart.min(1) } else { apart }, name.to_string()))
        })
        .collect();
    scored.sort();
    scored.dedup_by(|a, b| a.1 == b.1);
    scored.truncate(3);
    scored.into_iter().map(|(_, name)| name).collect()
}

/// The nearest known names to what a text begins with, each compared with as many words of the text as it has itself,
/// best first; and how many words the best of them takes.
pub fn nearest_beginning<'a>(written: &str, known: impl Iterator<Item = &'a str>) -> (Vec<String>, Option<usize>) {
    let words: Vec<&str> = written.split_whitespace().take(12).collect();
    // Of names equally near the longer one: it says more.
    let mut scored: Vec<(usize, Reverse<usize>, String)> = known
        .filter_map(|name| {
            let candidate: Vec<char> = folded(name).chars().take(60).collect();
            let of_name = name.split_whitespace().count();
            // "Bench1" and "cof 031" have a blank too few or too many.
            let counts = [of_name, of_name.saturating_sub(1), of_name + 1];
            let tried = counts.into_iter().filter_map(|taken| {
                let beginning = words.get(..taken).filter(|words| !words.is_empty())?.join(" ");
                let wanted: Vec<char> = folded(beginning.trim_end_matches([':', ','])).chars().take(60).collect();
                let most = if taken == of_name { (wanted.len() / 3).max(2) } else { 1 };
                if wanted.len().abs_diff(candidate.len()) > most {
                    return None;
                }
                let apart = distance(&wanted, &candidate);
                (apart <= most && apart < wanted.len().max(2)).then_some((apart, Reverse(taken)))
            });
            let (apart, taken) = tried.min()?;
            Some((apart, taken, name.to_string()))
        })
        .collect();
    scored.sort();
    scored.dedup_by(|a, b| a.2 == b.2);
    scored.truncate(3);
    let taken = scored.first().map(|(_, taken, _)| taken.0);
    (scored.into_iter().map(|(_, _, name)| name).collect(), taken)
}

/// Letters to add, drop, change or swap with a neighbour to make one word of the other (Damerau 1964, restricted).
pub fn distance(left: &[char], right: &[char]) -> usize {
    let width = right.len() + 1;
    let mut before_last: Vec<usize> = vec![0; width];
    let mut last: Vec<usize> = (0..width).collect();
    for (row, a) in left.iter().enumerate() {
        let mut now = vec![row + 1; width];
        for (column, b) in right.iter().enumerate() {
            let change = last[column] + usize::from(a != b);
            now[column + 1] = change.min(last[column + 1] + 1).min(now[column] + 1);
            if row > 0 && column > 0 && *a == right[column - 1] && left[row - 1] == *b {
                now[column + 1] = now[column + 1].min(before_last[column - 1] + 1);
            }
        }
        before_last = std::mem::replace(&mut last, now);
    }
    last[width - 1]
}

/// A word as it sounds in Spanish, roughly: b and v, s and z and soft c, hard c and k and qu, ll and y are one, m and n are
/// before b and p, h is not heard, double letters are single.
pub(crate) fn sounds(name: &str) -> String {
    let letters: Vec<char> = name.chars().collect();
    let at = |place: usize| letters.get(place).copied().unwrap_or(' ');
    let mut heard = String::with_capacity(name.len());
    let mut place = 0;
    while place < letters.len() {
        let (sound, taken) = match (at(place), at(place + 1), at(place + 2)) {
            ('q', 'u', 'e' | 'i') => ("k", 2),
            ('g', 'u', 'e' | 'i') => ("g", 2),
            ('g', 'e' | 'i', _) => ("j", 1),
            ('c', 'h', _) => ("ch", 2),
            ('p', 'h', _) => ("f", 2),
            ('c', 'k', _) => ("k", 2),
            ('c', 'e' | 'i' | 'y', _) | ('z' | 's', _, _) => ("s", 1),
            ('c' | 'q' | 'k', _, _) => ("k", 1),
            ('n', 'b' | 'p' | 'v', _) => ("m", 1),
            ('v', _, _) => ("b", 1),
            ('l', 'l', _) => ("y", 2),
            ('g' | 'h', 'u', 'a') | ('w', _, _) => ("u", if at(place) == 'w' { 1 } else { 2 }),
            ('h' | '-' | '\'', _, _) => ("", 1),
            ('y', ' ', _) => ("i", 1),
            (other, _, _) => {
                if !heard.ends_with(other) {
                    heard.push(other);
                }
                ("", 1)
            }
        };
        if !sound.is_empty() && !heard.ends_with(sound) {
            heard.push_str(sound);
        }
        place += taken;
    }
    heard
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_names_are_found() {
        let known = ["cof-031", "cof-032", "avo-001", "Lower terrace"];
        assert_eq!(nearest("cof-013", known.into_iter()).first().map(String::as_str), Some("cof-031"));
        assert_eq!(nearest("lower terace", known.into_iter()), vec!["Lower terrace"]);
        assert!(nearest("zzzzzz", known.into_iter()).is_empty());
        // Of three letters two others are another word.
        assert!(nearest("foo", ["who", "tray"].into_iter()).is_empty());
        assert_eq!(nearest("whp", ["who", "tray"].into_iter()), ["who"]);
        assert_eq!(nearest("Lower terrace 30 rows 2-4", known.into_iter()), vec!["Lower terrace"]);
        assert_eq!(nearest("Lower terace 30 rows 2-4", known.into_iter()), vec!["Lower terrace"]);
    }

    #[test]
    fn the_nearest_name_to_a_beginning_takes_its_words() {
        let known = ["School 1", "School 2", "Upper", "cof-031", "Lower terrace"];
        let near = |written: &str| nearest_beginning(written, known.into_iter());
        let first = |written: &str| (near(written).0.first().cloned(), near(written).1);
        assert_eq!(first("Scool 1 30 rows 2-4"), (Some("School 1".into()), Some(2)));
        assert_eq!(first("lower terace weeded"), (Some("Lower terrace".into()), Some(2)));
        assert_eq!(first("cof-013 41"), (Some("cof-031".into()), Some(1)));
        assert_eq!(first("Upper1 weeded"), (Some("Upper".into()), Some(1)));
        assert_eq!(first("School2 weeded"), (Some("School 2".into()), Some(1)));
        assert_eq!(first("cof 031 41"), (Some("cof-031".into()), Some(2)));
        assert_eq!(near("zz 3"), (vec![], None));
        assert_eq!(near(""), (vec![], None));
    }
}
