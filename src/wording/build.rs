//! Makes a method of `Wording` for each sentence of the `.ftl` files, before the crate is compiled.
//!
//! English leads: its name is the name of the method, and a sentence of two or more arguments states their order in the
//! comment beside it, `# (tray, plants)`. An argument that chooses in either language takes a whole number, every other
//! whatever can be shown. A section that begins with `## place_: by word` is looked up by built names and gets no methods;
//! with `(n)` behind it its sentences may count something. `{ $LOAD_PLANTS }` says a constant of the code, which
//! `constant.rs` names.
//! `{ $KEY_V }` says the letter of a key.
//! Words that stand beside a number agree with it: `agree.rs` puts in what a number of one asks for.
//! A sentence that is missing in a language, or uses other arguments there, stops the build with its file and line.

use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs};

#[path = "agree.rs"]
mod agree;

use fluent_syntax::ast::{Comment, Entry, Expression, InlineExpression, Message, Pattern, PatternElement};

/// What stands in an `.ftl` file.
struct Theme {
    /// As it is read by the program: what stands beside numbers agrees with them.
    agreed: String,
    sentences: Vec<Sentence>,
}

/// One sentence of one language.
struct Sentence {
    key: String,
    /// Its file and line, to name a fault.
    at: String,
    /// The arguments, and whether they choose between one and many.
    arguments: BTreeMap<String, bool>,
    /// The constants of the code that it says.
    constants: BTreeSet<String>,
    /// Their order, where it is stated.
    order: Option<Vec<String>>,
    /// Where it is looked up by a built name.
    by_word: Option<ByWord>,
    /// As it is written.
    written: String,
}

/// What a section says that is looked up by a word.
#[derive(Clone)]
struct ByWord {
    /// What each of its keys begins with.
    prefix: String,
    /// Whether its sentences may count something, `$n`.
    counted: bool,
}

type Faults = Vec<String>;

/// What the heading of a section says whose sentences are looked up by a word.
const BY_WORD: &str = "by word";
/// What it says after that, where they may count something.
const COUNTED: &str = "(n)";

fn main() -> Result<(), Box<dyn Error>> {
    let root = PathBuf::from(env::var("CARGO_MANIFEST_DIR")?);
    let out = PathBuf::from(env::var("OUT_DIR")?).join("sentences.rs");
    let mut faults = Faults::new();
    println!("cargo::rerun-if-changed=src/wording/build.rs");
    println!("cargo::rerun-if-env-changed=SOURCE_DATE_EPOCH");
    println!("cargo::rustc-env=OUTPLANT_BUILT_DAYS={}", built_days()?);
    let english = themes(&root, "src/wording/en", &mut faults)?;
    let spanish = themes(&root, "src/wording/es", &mut faults)?;
    // After a file that cannot be read hundreds of faults would follow from that one.
    if faults.is_empty() {
        let other = by_key(&spanish, &mut faults);
        compare(&english, &other, &mut faults);
        // What both languages have is written all the same, so that an editor does not lose it.
        fs::write(out, generated(&english, &spanish, &other)?)?;
    }
    for fault in &faults {
        println!("cargo::error={fault}");
    }
    Ok(())
}

/// Days from 1970 to today, or to the day that a build that can be repeated names (reproducible-builds.org).
fn built_days() -> Result<u64, Box<dyn Error>> {
    const SECONDS_IN_A_DAY: u64 = 86_400;
    let seconds = match env::var("SOURCE_DATE_EPOCH") {
        Ok(named) => named.trim().parse()?,
        Err(_) => std::time::UNIX_EPOCH.elapsed()?.as_secs(),
    };
    Ok(seconds / SECONDS_IN_A_DAY)
}

fn themes(root: &Path, folder: &str, faults: &mut Faults) -> Result<Vec<Theme>, Box<dyn Error>> {
    println!("cargo::rerun-if-changed={folder}");
    let mut names: Vec<String> = Vec::new();
    for file in fs::read_dir(root.join(folder))? {
        names.extend(file?.file_name().to_string_lossy().strip_suffix(".ftl").map(str::to_string));
    }
    names.sort();
    let words = agree::Words::read(&fs::read_to_string(root.join(folder).join("agree.txt"))?);
    let mut themes = Vec::new();
    for name in names {
        let path = format!("{folder}/{name}.ftl");
        let text = fs::read_to_string(root.join(&path))?;
        let sentences = sentences(&text, &path, faults);
        themes.push(Theme { agreed: words.agreed(&text), sentences });
    }
    Ok(themes)
}

fn sentences(text: &str, path: &str, faults: &mut Faults) -> Vec<Sentence> {
    let resource = match fluent_syntax::parser::parse(text) {
        Ok(resource) => resource,
        Err((_, errors)) => {
            for error in errors {
                faults.push(format!("{path}:{}: cannot be read: {error}", line_of(text, error.pos.start)));
            }
            return Vec::new();
        }
    };
    let (mut sentences, mut by_word) = (Vec::new(), None);
    for entry in &resource.body {
        match entry {
            Entry::Message(message) => sentences.push(sentence(message, text, path, by_word.clone(), faults)),
            Entry::GroupComment(comment) => by_word = by_word_of(comment),
            Entry::Term(term) => faults.push(format!("{path}: -{} is a term, which is not read", term.id.name)),
            Entry::Comment(_) | Entry::ResourceComment(_) | Entry::Junk { .. } => {}
        }
    }
    sentences
}

fn by_word_of(comment: &Comment<&str>) -> Option<ByWord> {
    let (prefix, rest) = comment.content.first()?.split_once(':')?;
    let counted = rest.trim().strip_prefix(BY_WORD)?;
    Some(ByWord { prefix: prefix.to_string(), counted: counted.trim() == COUNTED })
}

fn sentence(message: &Message<&str>, text: &str, path: &str, by_word: Option<ByWord>, faults: &mut Faults) -> Sentence {
    let key = message.id.name;
    // The key is a part of the text, so where it begins can be told.
    let start = key.as_ptr().addr() - text.as_ptr().addr();
    let at = format!("{path}:{}", line_of(text, start));
    let mut fault = |what: &str| faults.push(format!("{at}: {key} {what}"));
    if !key.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_') {
        fault("is no name of a method: only a-z, 0-9 and _");
    }
    if by_word.as_ref().is_some_and(|section| !key.starts_with(&section.prefix)) {
        fault("stands in a section that is looked up by word, and does not begin as it does");
    }
    let mut arguments = BTreeMap::new();
    match &message.value {
        Some(pattern) if variables(pattern, &mut arguments) => {}
        Some(_) => fault("uses more than arguments and choices"),
        None => fault("says nothing"),
    }
    let constants: BTreeSet<String> = arguments.keys().filter(|name| is_constant(name)).cloned().collect();
    if constants.iter().any(|name| arguments.get(name) == Some(&true)) {
        fault("chooses by a constant, which is known when it is written");
    }
    arguments.retain(|name, _| !constants.contains(name));
    let known = |name: &String, section: &ByWord| section.counted && name == "n";
    if by_word.as_ref().is_some_and(|section| !arguments.keys().all(|name| known(name, section))) {
        fault("is looked up by word and can have no arguments but $n, where its section says '(n)'");
    }
    let mut lines = text[start..].lines();
    let first = lines.next().into_iter();
    let written: Vec<&str> = first.chain(lines.take_while(|line| line.starts_with([' ', '}']))).collect();
    let order = message.comment.as_ref().and_then(order_of);
    Sentence { key: key.to_string(), at, arguments, constants, order, by_word, written: written.join("\n") }
}

/// Gathers the arguments of a sentence; false where it holds anything else.
fn variables(pattern: &Pattern<&str>, arguments: &mut BTreeMap<String, bool>) -> bool {
    pattern.elements.iter().all(|element| match element {
        PatternElement::TextElement { .. } => true,
        PatternElement::Placeable { expression: Expression::Inline(inline) } => variable(inline, false, arguments),
        PatternElement::Placeable { expression: Expression::Select { selector, variants } } => {
            variable(selector, true, arguments) && variants.iter().all(|variant| variables(&variant.value, arguments))
        }
    })
}

fn variable(inline: &InlineExpression<&str>, chooses: bool, arguments: &mut BTreeMap<String, bool>) -> bool {
    match inline {
        InlineExpression::VariableReference { id } => {
            *arguments.entry(id.name.to_string()).or_default() |= chooses;
            true
        }
        InlineExpression::StringLiteral { .. } | InlineExpression::NumberLiteral { .. } => !chooses,
        _ => false,
    }
}

/// `{ $LOAD_PLANTS }` says a constant of the code.
fn is_constant(name: &str) -> bool {
    name.starts_with(|letter: char| letter.is_ascii_uppercase())
}

fn order_of(comment: &Comment<&str>) -> Option<Vec<String>> {
    let list = comment.content.iter().find_map(|line| line.trim().strip_prefix('(')?.strip_suffix(')'))?;
    Some(list.split(", ").map(str::to_string).collect())
}

fn line_of(text: &str, position: usize) -> usize {
    text[..position].matches('\n').count() + 1
}

fn by_key<'a>(themes: &'a [Theme], faults: &mut Faults) -> BTreeMap<&'a str, &'a Sentence> {
    let mut keys = BTreeMap::new();
    for sentence in themes.iter().flat_map(|theme| &theme.sentences) {
        if let Some(first) = keys.insert(sentence.key.as_str(), sentence) {
            faults.push(format!("{}: {} stands twice, first at {}", sentence.at, sentence.key, first.at));
        }
    }
    keys
}

fn compare(english: &[Theme], other: &BTreeMap<&str, &Sentence>, faults: &mut Faults) {
    let keys = by_key(english, faults);
    for sentence in keys.values() {
        let key = &sentence.key;
        let Some(spanish) = other.get(key.as_str()) else {
            faults.push(format!("{}: {key} has no Spanish", sentence.at));
            continue;
        };
        for (one, two) in [(sentence, spanish), (spanish, sentence)] {
            for name in one.arguments.keys().filter(|name| !two.arguments.contains_key(*name)) {
                faults.push(format!("{}: {key} does not use ${name}, which {} does", two.at, one.at));
            }
        }
        if sentence.constants != spanish.constants {
            faults.push(format!("{}: {key} says other constants than {}", spanish.at, sentence.at));
        }
        let stated: BTreeSet<&String> = sentence.order.iter().flatten().collect();
        let used: BTreeSet<&String> = sentence.arguments.keys().collect();
        let list = || sentence.arguments.keys().map(String::as_str).collect::<Vec<_>>().join(", ");
        match &sentence.order {
            None if used.len() < 2 => {}
            None => faults.push(format!(
                "{}: {key} does not state the order of its arguments: write '# ({})' above it",
                sentence.at,
                list()
            )),
            Some(order) if stated == used && order.len() == used.len() => {}
            Some(_) => faults.push(format!("{}: {key} states other arguments than it uses: ({})", sentence.at, list())),
        }
    }
    for (key, sentence) in other.iter().filter(|(key, _)| !keys.contains_key(*key)) {
        faults.push(format!("{}: {key} has no English", sentence.at));
    }
}

fn generated(
    english: &[Theme],
    spanish: &[Theme],
    other: &BTreeMap<&str, &Sentence>,
) -> Result<String, std::fmt::Error> {
    let mut code = String::new();
    for (name, themes) in [("ENGLISH", english), ("SPANISH", spanish)] {
        writeln!(code, "pub(super) const {name}: Texts = Texts {{\n    themes: &[")?;
        for theme in themes {
            writeln!(code, "        {:?},", theme.agreed)?;
        }
        writeln!(code, "    ],\n    theme_of: &[")?;
        let keys = themes.iter().enumerate();
        let keys = keys.flat_map(|(at, theme)| theme.sentences.iter().map(move |sentence| (&sentence.key, at)));
        for (key, at) in keys.collect::<BTreeMap<_, _>>() {
            writeln!(code, "        ({key:?}, {at}),")?;
        }
        writeln!(code, "    ],\n}};")?;
    }
    writeln!(code, "pub(super) fn constants() -> Vec<(&'static str, f64)> {{\n    vec![")?;
    let all = english.iter().flat_map(|theme| &theme.sentences);
    let is_key = |name: &&String| name.starts_with("KEY_");
    for name in all.flat_map(|sentence| &sentence.constants).filter(|name| !is_key(name)).collect::<BTreeSet<_>>() {
        writeln!(code, "        ({name:?}, constant::{name}.into_f64()),")?;
    }
    writeln!(code, "    ]\n}}")?;
    writeln!(code, "/// What keys begin with that are looked up by a word.\npub(super) mod theme {{")?;
    let all = english.iter().flat_map(|theme| &theme.sentences);
    for prefix in
        all.filter_map(|sentence| sentence.by_word.as_ref().map(|section| &section.prefix)).collect::<BTreeSet<_>>()
    {
        writeln!(code, "    pub const {}: &str = {prefix:?};", prefix.trim_end_matches('_').to_uppercase())?;
    }
    writeln!(code, "}}")?;
    let (mut keys, mut methods) = (String::new(), String::new());
    for sentence in english.iter().flat_map(|theme| &theme.sentences) {
        let Some(spanish) = other.get(sentence.key.as_str()) else { continue };
        let order: Vec<&String> = match &sentence.order {
            Some(order) => order.iter().collect(),
            None => sentence.arguments.keys().collect(),
        };
        let chooses = |name: &String| {
            sentence.arguments.get(name).is_some_and(|chooses| *chooses)
                || spanish.arguments.get(name).is_some_and(|chooses| *chooses)
        };
        let arguments: Vec<(&String, bool)> = order.into_iter().map(|name| (name, chooses(name))).collect();
        let kinds: Vec<String> = arguments
            .iter()
            .map(|(name, chooses)| format!("({name:?}, Kind::{})", if *chooses { "Count" } else { "Text" }))
            .collect();
        writeln!(
            keys,
            "    Key {{ name: {:?}, by_word: {:?}, arguments: &[{}] }},",
            sentence.key,
            sentence.by_word.as_ref().map(|section| &section.prefix),
            kinds.join(", ")
        )?;
        if sentence.by_word.is_none() {
            method(&mut methods, sentence, &arguments)?;
        }
    }
    writeln!(code, "#[cfg(test)]\npub(super) const KEYS: &[Key] = &[\n{keys}];")?;
    writeln!(code, "impl Wording {{\n{methods}}}")?;
    Ok(code)
}

fn method(code: &mut String, sentence: &Sentence, arguments: &[(&String, bool)]) -> std::fmt::Result {
    writeln!(code, "    /// ```text")?;
    for line in sentence.written.lines() {
        writeln!(code, "    /// {line}")?;
    }
    writeln!(code, "    /// ```")?;
    write!(code, "    pub(crate) fn {}(&self", sentence.key)?;
    for (name, chooses) in arguments {
        write!(code, ", {name}: impl {}", if *chooses { "Into<i64>" } else { "Display" })?;
    }
    write!(code, ") -> String {{\n        self.say({:?}, vec![", sentence.key)?;
    for (name, chooses) in arguments {
        write!(code, "({name:?}, Argument::{}({name})), ", if *chooses { "count" } else { "text" })?;
    }
    writeln!(code, "])\n    }}")
}
