//! Words beside a number that agree with it: `{ $plants } plantas` says `planta` of one. Which words, and what each is for
//! one, stands in `agree.txt` of a language; here they are put into the sentences as choices, before the program is compiled.

/// The words of a language, each with what it is for one.
pub struct Words {
    behind: Vec<(String, String)>,
    apart: Vec<(String, String)>,
    before: Vec<(String, String)>,
}

/// A piece of a line.
enum Piece<'a> {
    /// An argument by its name.
    Argument(&'a str),
    /// Anything else.
    Text(&'a str),
}

/// So many words behind a number agree with it.
const MOST_WORDS: usize = 4;

impl Words {
    /// Reads a table: words behind a number, words that may have a name between, words before it.
    pub fn read(text: &str) -> Words {
        let mut parts: [Vec<(String, String)>; 3] = Default::default();
        let mut at = 0;
        for line in text.lines() {
            match line {
                _ if line.starts_with("# before") => at = 2,
                _ if line.contains("a name between") => at = 1,
                _ => {
                    let pair = line.split_once(' ').filter(|_| !line.starts_with('#'));
                    parts[at].extend(pair.map(|(many, one)| (many.to_string(), one.to_string())));
                }
            }
        }
        let [behind, apart, before] = parts;
        Words { behind, apart, before }
    }

    /// A file of sentences in which these words agree.
    pub fn agreed(&self, text: &str) -> String {
        let agreed = |line: &str| if line.starts_with('#') { line.to_string() } else { self.line(line) };
        let mut all: Vec<String> = text.lines().map(agreed).collect();
        all.push(String::new());
        all.join("\n")
    }

    fn line(&self, line: &str) -> String {
        let pieces = pieces(line);
        let mut out: Vec<String> = Vec::with_capacity(pieces.len());
        for (i, piece) in pieces.iter().enumerate() {
            match piece {
                Piece::Argument(name) => out.push(format!("{{ ${name} }}")),
                Piece::Text(text) => {
                    let (begun, rest) = self.behind_argument(&pieces[..i], text);
                    let next = match pieces.get(i + 1) {
                        Some(Piece::Argument(name)) => Some(*name),
                        _ => None,
                    };
                    out.push(begun);
                    out.push(next.map_or_else(|| rest.to_string(), |name| self.before_argument(rest, name)));
                }
            }
        }
        out.concat()
    }

    /// The words at the beginning of a text that agree with the number before it, and the rest.
    fn behind_argument<'t>(&self, before: &[Piece<'_>], text: &'t str) -> (String, &'t str) {
        let own = match before {
            [.., Piece::Argument(number), Piece::Text(between), Piece::Argument(_)]
                if is_of(between) && is_one_of(&self.apart, first_word(text)) =>
            {
                Some(*number)
            }
            [.., Piece::Argument(number)] => Some(*number),
            _ => None,
        };
        let Some(number) = own else { return (String::new(), text) };
        let (mut many, mut one, mut rest) = (Vec::new(), Vec::new(), text);
        while many.len() < MOST_WORDS {
            let word = first_word(rest);
            let Some(single) = single_of(&self.behind, word).or_else(|| single_of(&self.apart, word)) else { break };
            many.push(word);
            one.push(single);
            rest = &rest[1 + word.len()..];
        }
        if many.is_empty() {
            return (String::new(), text);
        }
        (format!(" {}", choice(number, &one.join(" "), &many.join(" "))), rest)
    }

    /// A text before a number, of whose last two words one may agree with it.
    fn before_argument(&self, text: &str, number: &str) -> String {
        let words: Vec<&str> = text.split(' ').collect();
        // The last one is what stands behind the last blank: nothing.
        let near = words.len().saturating_sub(3)..words.len().saturating_sub(1);
        for at in near.rev().filter(|_| text.ends_with(' ')) {
            if let Some(single) = single_of(&self.before, words[at]) {
                let mut all: Vec<String> = words.iter().map(ToString::to_string).collect();
                all[at] = choice(number, single, words[at]);
                return all.join(" ");
            }
        }
        text.to_string()
    }
}

/// Whether a text between a number and a name leads from one to the other: "3 de café", "3 café", "3 de bandeja".
fn is_of(between: &str) -> bool {
    between == " " || between.starts_with(" de ")
}

/// What is said of one, and of any other number.
fn choice(number: &str, one: &str, many: &str) -> String {
    format!("{{ ${number} ->\n    [one] {one}\n   *[other] {many}\n}}")
}

/// The word behind the one blank with which a text begins; empty where there is none.
fn first_word(text: &str) -> &str {
    let Some(rest) = text.strip_prefix(' ') else { return "" };
    rest.split(|letter: char| !letter.is_alphabetic()).next().unwrap_or_default()
}

fn single_of<'w>(words: &'w [(String, String)], word: &str) -> Option<&'w str> {
    words.iter().find(|(many, _)| many == word).map(|(_, one)| one.as_str())
}

fn is_one_of(words: &[(String, String)], word: &str) -> bool {
    single_of(words, word).is_some()
}

fn pieces(line: &str) -> Vec<Piece<'_>> {
    let mut all = Vec::new();
    let mut rest = line;
    while let Some((text, from)) = rest.find("{ $").map(|at| rest.split_at(at)) {
        let name = from[3..].split_once(" }").map(|(name, _)| name);
        let is_argument = |name: &&str| {
            name.starts_with(|letter: char| letter.is_ascii_lowercase())
                && name.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'_')
        };
        match name.filter(is_argument) {
            Some(name) => {
                all.extend([Piece::Text(text), Piece::Argument(name)]);
                rest = &from[3 + name.len() + 2..];
            }
            None => {
                let (odd, behind) = rest.split_at(text.len() + 3);
                all.push(Piece::Text(odd));
                rest = behind;
            }
        }
    }
    all.push(Piece::Text(rest));
    all
}
