//! Words beside a number that agree with it: `{ $plants } plantas` says `planta` of one. Which words, and what each is for
//! one, stands in `agree.txt` of a language; here they are put into the sentences as choices, before the program is compiled.

/// The words of a language, each with what it is for one.
pub struct Words {
    behind: Vec<(String, String)>,
    apart: Vec<(String, String)>,
    before: Vec<(String, String)>,
    of_many: Vec<(String, String)>,
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
/// Between a part and all of them, in Spanish.
const OF_THE: &str = " de las ";
/// Words that agree only together with the one behind them.
const ARTICLES: [&str; 3] = ["las", "los", "sus"];

impl Words {
    /// Reads a table: words behind a number, words that may have a name between, words before it, verbs of "so many of so many".
    pub fn read(text: &str) -> Words {
        let mut parts: [Vec<(String, String)>; 4] = Default::default();
        let mut at = 0;
        for line in text.lines() {
            match line {
                _ if line.starts_with("# before") => at = 2,
                _ if line.starts_with("# of so many") => at = 3,
                _ if line.contains("a name between") => at = 1,
                _ => {
                    let pair = line.split_once(' ').filter(|_| !line.starts_with('#'));
                    parts[at].extend(pair.map(|(many, one)| (many.to_string(), one.to_string())));
                }
            }
        }
        let [behind, apart, before, of_many] = parts;
        Words { behind, apart, before, of_many }
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
                    let rest = &self.verb_of_part(&pieces[..i], rest);
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
        let is_part = part_of(before).is_some();
        let (mut many, mut one, mut rest) = (Vec::new(), Vec::new(), text);
        while many.len() < MOST_WORDS {
            let word = first_word(rest);
            // Of so many of so many the verb says of the part.
            if is_part && is_one_of(&self.of_many, word) {
                break;
            }
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

    /// The verb behind "so many of so many", among the first words of a text, agrees with the part.
    fn verb_of_part(&self, before: &[Piece<'_>], text: &str) -> String {
        let Some(part) = part_of(before) else { return text.to_string() };
        let mut words: Vec<String> = text.split(' ').map(str::to_string).collect();
        let verb = words.iter().take(MOST_WORDS).position(|word| is_one_of(&self.of_many, letters_of(word)));
        if let Some((at, single)) = verb.and_then(|at| Some((at, single_of(&self.of_many, letters_of(&words[at]))?))) {
            let (many, behind) = words[at].split_at(letters_of(&words[at]).len());
            words[at] = format!("{}{behind}", choice(part, single, many));
        }
        words.join(" ")
    }

    /// A text before a number: its last word, or its last two, or else a verb one word before, agree with it.
    fn before_argument(&self, text: &str, number: &str) -> String {
        let mut words: Vec<String> = text.split(' ').map(str::to_string).collect();
        // The last one is what stands behind the last blank: nothing.
        let (Some(last), true) = (words.len().checked_sub(2), text.ends_with(' ')) else { return text.to_string() };
        let mut agreed = false;
        for at in [Some(last), last.checked_sub(1)].into_iter().flatten() {
            let Some(single) = single_of(&self.before, &words[at]) else { continue };
            // An article belongs to the word behind it.
            if at < last && !agreed && ARTICLES.contains(&words[at].as_str()) {
                continue;
            }
            words[at] = choice(number, single, &words[at]);
            agreed = true;
        }
        words.join(" ")
    }
}

/// Whether a text between a number and a name leads from one to the other: "3 de café", "3 café", "3 de bandeja"; in
/// "3 de las 20" the second is a number.
fn is_of(between: &str) -> bool {
    between == " " || (between.starts_with(" de ") && between != OF_THE)
}

/// The part in "so many of so many", the last two arguments.
fn part_of<'a>(before: &[Piece<'a>]) -> Option<&'a str> {
    match before {
        [.., Piece::Argument(part), Piece::Text(" of " | " de " | OF_THE), Piece::Argument(_)] => Some(part),
        _ => None,
    }
}

/// What is said of one, and of any other number.
fn choice(number: &str, one: &str, many: &str) -> String {
    format!("{{ ${number} ->\n    [one] {one}\n   *[other] {many}\n}}")
}

/// The word behind the one blank with which a text begins; empty where there is none.
fn first_word(text: &str) -> &str {
    text.strip_prefix(' ').map_or("", letters_of)
}

/// The letters a word begins with, without the comma behind them.
fn letters_of(word: &str) -> &str {
    word.split(|letter: char| !letter.is_alphabetic()).next().unwrap_or_default()
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
