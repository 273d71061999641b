//! A sheet with a column of remarks behind the others, for whoever mends it in a spreadsheet program.

use std::collections::BTreeMap;

/// The sheet as it is, each row with what is to be said of its line, the first that is not empty with the heading. A line
/// broken inside of a cell is one, as in the faults.
pub fn with_remarks(
    text: &str,
    delimiter: Option<char>,
    heading: &str,
    remarks: &BTreeMap<usize, Vec<String>>,
) -> String {
    let delimiter = delimiter.unwrap_or_else(|| delimiter_of(text));
    let (mut whole, mut row) = (String::with_capacity(text.len() + text.len() / 4), String::new());
    let (mut line, mut in_quotes, mut is_headed) = (1, false, false);
    for letter in text.chars().chain(['\n']) {
        in_quotes ^= letter == '"';
        if letter != '\n' || in_quotes {
            row.push(letter);
            continue;
        }
        let bare = row.trim_end_matches('\r');
        let is_row = !bare.trim().is_empty();
        let said = match (is_row, is_headed) {
            (true, false) => heading.to_string(),
            (true, true) => remarks.get(&line).map(|said| said.join("; ")).unwrap_or_default(),
            (false, _) => String::new(),
        };
        is_headed |= is_row;
        whole.push_str(bare);
        if is_row {
            whole.push(delimiter);
            whole.push_str(&quoted(&said));
        }
        whole.push('\n');
        (row, line) = (String::new(), line + 1);
    }
    let end = whole.trim_end_matches('\n').len();
    whole.truncate(end);
    whole.push('\n');
    whole
}

/// The sign that stands most in the first row that is not empty.
fn delimiter_of(text: &str) -> char {
    let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    let of = |sign: char| first.matches(sign).count();
    [';', '\t', ','].into_iter().max_by_key(|sign| of(*sign)).filter(|sign| of(*sign) > 0).unwrap_or(',')
}

fn quoted(text: &str) -> String {
    if text.contains(['"', ',', ';', '\t', '\n']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_row_has_what_is_said_of_it_and_nothing_else_changes() {
        let sheet = "Tray;Species;Note\r\nt-1;coffee;\"two\nlines\"\r\n\r\nt-2;cacoa;\r\n";
        let said = BTreeMap::from([(4, vec!["Species: nobody knows \"cacoa\"".to_string(), "and more".to_string()])]);
        let expected = "Tray;Species;Note;Remarks\nt-1;coffee;\"two\nlines\";\n\nt-2;cacoa;;\"Species: nobody knows \"\"cacoa\"\"; and more\"\n";
        assert_eq!(with_remarks(sheet, None, "Remarks", &said), expected);
        assert_eq!(with_remarks("", None, "Remarks", &said), "\n");
    }
}
