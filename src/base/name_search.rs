//! The nearest known names to one that is not known.

use super::text::folded;

/// Up to three known names nearest to what was written, best first: those that begin alike or differ by few
/// letters (at most a third of the length, at least two, and never more than half). Accents and case do not count.
pub fn nearest<'a>(written: &str, known: impl Iterator<Item = &'a str>) -> Vec<String> {
    let wanted: Vec<char> = folded(written).chars().take(60).collect();
    let limit = (wanted.len() / 3).max(2).min((wanted.len() / 2).max(1));
    let mut scored: Vec<(usize, String)> = known
        .filter_map(|name| {
            let candidate: Vec<char> = folded(name).chars().take(60).collect();
            let apart = distance(&wanted, &candidate);
            let begins = wanted.len() >= 3 && candidate.starts_with(&wanted);
            (apart <= limit || begins).then(|| (if begins { apart.min(1) } else { apart }, name.to_string()))
        })
        .collect();
    scored.sort();
    scored.dedup_by(|a, b| a.1 == b.1);
    scored.truncate(3);
    scored.into_iter().map(|(_, name)| name).collect()
}

/// Letters to add, drop, change or swap with a neighbour to make one word of the other (Damerau 1964, restricted).
fn distance(left: &[char], right: &[char]) -> usize {
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
    }
}
