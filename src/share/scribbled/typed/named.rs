//! The names a line may speak of, found as people type them: without hyphens, in other capitals, in the plural.

use super::lexicon::{fold, lexicon, vocabulary};
use super::numbers::in_figures;
use super::words::{Word, words};
use crate::base::name_search::sounds;
pub use crate::nursery::entry::shape::NameOf;
use std::cell::RefCell;
use std::collections::{HashMap, HashSet};

/// What the reader must know of the nursery.
pub trait Names {
    /// Every name that a line may speak of.
    fn all(&self) -> Vec<(NameOf, String)>;
    /// The keys of the species that bear just this name, in the singular or as the nursery writes it.
    fn species_called(&self, name: &str) -> Vec<String>;
    /// The keys of the species whose name is a slip of the pen away from this one.
    fn species_near(&self, name: &str) -> Vec<String>;
    /// The same where only a part of the name is said.
    fn species_like(&self, name: &str) -> Vec<String>;
    /// The species of a tray or a lot.
    fn species_of(&self, name_of: NameOf, name: &str) -> Option<String>;
    /// What stands in a tray by the books.
    fn standing(&self, tray: &str) -> Option<u32>;
    /// What is left of a lot in seeds.
    fn seeds(&self, lot: &str) -> Option<u32>;
    /// The species of nurse plants in a bed.
    fn nurses_in(&self, bed: &str) -> Vec<String>;
    /// The species planned or planted in a bed, other than nurse plants.
    fn plants_in(&self, bed: &str) -> Vec<String>;
    /// Places for plants in a bed by its plan, where it has one.
    fn places_in(&self, bed: &str) -> Option<u32>;
    /// Whether anything stands in a bed.
    fn is_planted(&self, bed: &str) -> bool;
    /// Whether seedlings of a tray are pricked out rather than potted on.
    fn is_seedbed(&self, tray: &str) -> bool;
}

/// Articles that names of beds and places begin with.
const ARTICLES: [&str; 5] = ["la", "el", "los", "las", "the"];
/// Words that name the same thing that plants stand in.
const SAME_CONTAINER: [&[&str]; 3] = [
    &["bag", "polybag", "bolsa", "funda", "bolsita"],
    &["tube", "tubo", "tubete", "tubette"],
    &["pot", "maceta", "pote"],
];
/// A shorter word is near too many names.
const LEAST_LETTERS: usize = 5;
/// The longest word that is compared with names, bytes.
const LONGEST_NAME: usize = 48;

struct OneName {
    name_of: NameOf,
    name: String,
    pieces: Vec<String>,
}

/// The names laid out to be found in lines.
pub(crate) struct Known<'a> {
    pub names: &'a dyn Names,
    by_first: HashMap<String, Vec<OneName>>,
    /// Trays and lots by their letters and their number: noughts and hyphens do not count.
    by_number: HashMap<(String, u64), Vec<(NameOf, String)>>,
    /// Beds, places and containers whose name is made of words.
    in_words: Vec<OneName>,
    /// Every piece of a name.
    all_pieces: HashSet<String>,
    /// Plants that were looked for by a name with a slip in it.
    near: RefCell<HashMap<String, Vec<String>>>,
    /// Containers with their volume in litres.
    volumes: Vec<(String, f64)>,
    pub all: Vec<(NameOf, String)>,
}

fn squeezed(text: &str) -> String {
    fold(text).chars().filter(|c| c.is_alphanumeric()).collect()
}

fn pieces(name: &str) -> Vec<String> {
    words(name).iter().map(|word| squeezed(&word.typed)).filter(|piece| !piece.is_empty()).collect()
}

fn litres(words: &[Word]) -> Option<(f64, usize)> {
    let value = in_figures(&words.first()?.typed)?;
    let unit = words.get(1)?.folded.as_str();
    if lexicon().is(unit, "units.l") {
        return Some((value, 2));
    }
    matches!(unit, "ml" | "cc").then_some((value / 1000.0, 2))
}

impl<'a> Known<'a> {
    pub fn new(names: &'a dyn Names) -> Known<'a> {
        let mut known = Known {
            names,
            by_first: HashMap::new(),
            by_number: HashMap::new(),
            in_words: Vec::new(),
            all_pieces: HashSet::new(),
            near: RefCell::default(),
            volumes: Vec::new(),
            all: Vec::new(),
        };
        names.all().into_iter().for_each(|(name_of, name)| known.learn(name_of, name));
        known
    }

    /// One more name: a tray that an earlier line makes.
    pub fn learn(&mut self, name_of: NameOf, name: String) {
        self.all.push((name_of, name.clone()));
        let parts = pieces(&name);
        let whole: String = parts.concat();
        self.all_pieces.extend(parts.iter().cloned());
        let numbered = letters_and_number(&whole).filter(|_| matches!(name_of, NameOf::Tray | NameOf::Lot));
        if let Some(key) = numbered {
            self.by_number.entry(key).or_default().push((name_of, name.clone()));
        }
        let is_long = |part: &String| part.len() >= LEAST_LETTERS - 1 && part.chars().all(char::is_alphabetic);
        if !matches!(name_of, NameOf::Tray | NameOf::Lot) && parts.iter().any(is_long) {
            self.in_words.push(OneName { name_of, name: name.clone(), pieces: parts.clone() });
        }
        // "Loma" for La Loma.
        let bare = parts.split_first().filter(|(first, rest)| ARTICLES.contains(&first.as_str()) && !rest.is_empty());
        let bare = bare.map(|(_, rest)| rest.to_vec()).unwrap_or_default();
        for pieces in [parts, vec![whole], bare] {
            let Some(first) = pieces.first().cloned() else { continue };
            let of_first = self.by_first.entry(first).or_default();
            if !of_first.iter().any(|one| one.pieces == pieces && one.name == name && one.name_of == name_of) {
                of_first.push(OneName { name_of, name: name.clone(), pieces });
            }
        }
        if name_of == NameOf::Container {
            let words = words(&name);
            let volume = (0..words.len()).find_map(|i| litres(&words[i..]));
            self.volumes.extend(volume.map(|(volume, _)| (name, volume)));
        }
    }

    /// The longest known name that begins here, with everything it is the name of.
    pub fn name_at(&self, words: &[Word], i: usize) -> Option<(Vec<(NameOf, String)>, usize)> {
        let first = squeezed(&words.get(i)?.typed);
        let spoken = self.by_first.get(&first).map(Vec::as_slice).unwrap_or_default();
        let plural = first.strip_suffix('s').and_then(|bare| self.by_first.get(bare)).map(Vec::as_slice);
        let containers = plural.unwrap_or_default().iter().filter(|one| one.name_of == NameOf::Container);
        let (mut longest, mut found) = (0, Vec::new());
        for one in spoken.iter().chain(containers) {
            let fits = one.pieces.iter().enumerate().skip(1).all(|(n, piece)| {
                words.get(i + n).is_some_and(|word| {
                    let typed = squeezed(&word.typed);
                    typed == *piece || (one.name_of == NameOf::Container && typed.strip_suffix('s') == Some(piece))
                })
            });
            if fits && one.pieces.len() > longest {
                (longest, found) = (one.pieces.len(), Vec::new());
            }
            if fits && one.pieces.len() == longest {
                found.push((one.name_of, one.name.clone()));
            }
        }
        let typed =
            words.get(i..i + longest).map(|words| words.iter().map(|w| w.typed.as_str()).collect::<Vec<_>>().join(" "));
        // A name typed as it is comes first.
        found.sort_by_key(|(_, name)| Some(name) != typed.as_ref());
        match found.is_empty() {
            false => Some((found, longest)),
            true => self.by_its_number(words, i).or_else(|| self.nearly_at(words, i)),
        }
    }

    /// "bolsas de 500" for bag 500: the containers that another word for the same thing names.
    pub fn container_in_other_words(&self, words: &[Word], i: usize) -> Option<(Vec<(NameOf, String)>, usize)> {
        let said = squeezed(&words.get(i)?.typed);
        let is_said = |one: &str| said == one || said.strip_suffix('s') == Some(one);
        let alike = SAME_CONTAINER.iter().find(|alike| alike.iter().any(|one| is_said(one)))?;
        let gap = usize::from(words.get(i + 1).is_some_and(|word| matches!(word.folded.as_str(), "de" | "of")));
        let others = alike.iter().filter_map(|other| self.by_first.get(*other)).flatten();
        let fits = |one: &&OneName| {
            let is_piece = |(n, piece): (usize, &String)| {
                words.get(i + n + gap).is_some_and(|word| squeezed(&word.typed) == *piece)
            };
            let is_whole = one.name_of == NameOf::Container && one.pieces.len() > 1;
            is_whole && one.pieces.iter().enumerate().skip(1).all(is_piece)
        };
        let found: Vec<&OneName> = others.filter(fits).collect();
        let longest = found.iter().map(|one| one.pieces.len()).max()?;
        let names = found.iter().filter(|one| one.pieces.len() == longest);
        Some((names.map(|one| (one.name_of, one.name.clone())).collect(), longest + gap))
    }

    /// "cof21" for cof-021, "cof 021", and "L05" where one lot alone ends so.
    fn by_its_number(&self, words: &[Word], i: usize) -> Option<(Vec<(NameOf, String)>, usize)> {
        let typed = squeezed(&words.get(i)?.typed);
        let one = |names: &Vec<(NameOf, String)>, taken: usize| (names.len() == 1).then(|| (names.clone(), taken));
        if let Some(key) = letters_and_number(&typed) {
            if let Some(found) = self.by_number.get(&key).and_then(|names| one(names, 1)) {
                return Some(found);
            }
            let ends = |name: &String| name.rsplit_once('-').is_some_and(|(_, end)| squeezed(end) == typed);
            let lots = self.all.iter().filter(|(of, name)| *of == NameOf::Lot && ends(name)).cloned().collect();
            return one(&lots, 1);
        }
        // Two words are a code where the number is written out: "cof 21" may be 21 coffees.
        let number = words.get(i + 1).filter(|word| word.typed.starts_with('0') && word.typed.len() > 1)?;
        let key = letters_and_number(&format!("{typed}{}", number.typed))?;
        self.by_number.get(&key).and_then(|names| one(names, 2))
    }

    /// The one bed, place or container whose name is a slip of the pen away; its numbers are never slips.
    fn nearly_at(&self, words: &[Word], i: usize) -> Option<(Vec<(NameOf, String)>, usize)> {
        let first = words.get(i)?;
        if vocabulary().knows(&first.folded) || self.is_named(&first.typed) || self.is_a_plant(&first.typed) {
            return None;
        }
        let fits = |one: &&OneName| {
            let typed = words.get(i..i + one.pieces.len());
            typed.is_some_and(|typed| {
                one.pieces.iter().zip(typed).all(|(piece, word)| is_slip_of(&squeezed(&word.typed), piece))
            })
        };
        let mut found: Vec<&OneName> = self.in_words.iter().filter(fits).collect();
        found.sort_by_key(|one| std::cmp::Reverse(one.pieces.len()));
        let longest = found.first()?.pieces.len();
        let names: Vec<(NameOf, String)> =
            found.iter().filter(|one| one.pieces.len() == longest).map(|one| (one.name_of, one.name.clone())).collect();
        (names.len() == 1).then_some((names, longest))
    }

    /// Whether a word is a piece of a known name.
    pub fn is_named(&self, word: &str) -> bool {
        let piece = squeezed(word);
        self.all_pieces.contains(&piece) || self.by_first.contains_key(&piece)
    }

    /// Whether a plant is called so.
    pub fn is_a_plant(&self, word: &str) -> bool {
        singulars(word)
            .iter()
            .any(|form| !self.names.species_called(form).is_empty() || !self.names.species_like(form).is_empty())
    }

    /// Whether a tray has nothing in it and nothing to come.
    pub fn is_empty_tray(&self, name_of: NameOf, name: &str) -> bool {
        name_of == NameOf::Tray && self.names.standing(name) == Some(0) && !self.names.is_seedbed(name)
    }

    /// Whether the number of a count is near what stands there by the books: at most so many, and at least half of them.
    pub fn is_a_likely_count(&self, fields: &serde_json::Map<String, serde_json::Value>) -> bool {
        let books = fields.get("tray").and_then(|tray| self.names.standing(tray.as_str()?)).map(f64::from);
        let counted = fields.get("standing").and_then(serde_json::Value::as_f64);
        match (books, counted) {
            (Some(books), Some(counted)) => counted <= books && counted * 2.0 >= books,
            _ => true,
        }
    }

    /// The one tray of these species with this number that is not empty.
    pub fn tray_of(&self, keys: &[String], number: u64) -> Option<String> {
        let fits = |name: &String| {
            let of_number = letters_and_number(&squeezed(name)).is_some_and(|(_, of)| of == number);
            of_number && self.names.species_of(NameOf::Tray, name).is_some_and(|key| keys.contains(&key))
        };
        let mut found =
            self.all.iter().filter(|(of, name)| *of == NameOf::Tray && !self.is_empty_tray(*of, name) && fits(name));
        let first = found.next()?;
        found.next().is_none().then(|| first.1.clone())
    }

    /// The lots whose code ends so: "L04" for jac-L04.
    pub fn lots_ending(&self, typed: &str) -> Vec<String> {
        let Some(wanted) = letters_and_number(&squeezed(typed)) else { return Vec::new() };
        let ends = |name: &&String| end_of_code(name).as_ref() == Some(&wanted);
        let lots = self.all.iter().filter(|(of, _)| *of == NameOf::Lot).map(|(_, name)| name);
        lots.filter(ends).cloned().collect()
    }

    /// Whether a code is made like those of lots, and like that of no tray: "cof-L06".
    pub fn is_like_a_lot(&self, code: &str) -> bool {
        let Some((letters, _)) = end_of_code(code) else { return false };
        let ends = |name: &String| end_of_code(name).is_some_and(|(of, _)| of == letters);
        let any = |wanted: NameOf| self.all.iter().any(|(of, name)| *of == wanted && ends(name));
        any(NameOf::Lot) && !any(NameOf::Tray)
    }

    /// Whether so many stand in the tray as are said to be lost.
    pub fn can_be_lost(&self, fields: &serde_json::Map<String, serde_json::Value>) -> bool {
        let books = fields.get("tray").and_then(|tray| self.names.standing(tray.as_str()?)).map(f64::from);
        let lost = fields.get("count").and_then(serde_json::Value::as_f64);
        books.zip(lost).is_none_or(|(books, lost)| lost <= books)
    }

    /// Whether a known name begins with this word.
    pub fn begins_a_name(&self, word: &str) -> bool {
        self.by_first.contains_key(&squeezed(word))
    }

    /// Containers by their volume: "bolsa de 2 l", "2 litre bags", "2 l" behind the word for a bag.
    pub fn containers_at(&self, words: &[Word], i: usize) -> Option<(Vec<String>, usize)> {
        let is_bag = |j: usize| words.get(j).is_some_and(|word| lexicon().is(&word.folded, "bag"));
        if is_bag(i) {
            let gap = usize::from(words.get(i + 1).is_some_and(|word| matches!(word.folded.as_str(), "de" | "of")));
            let (volume, taken) = litres(words.get(i + 1 + gap..)?)?;
            return self.of_volume(volume, &words[i].folded).map(|names| (names, 1 + gap + taken));
        }
        let (volume, taken) = litres(words.get(i..)?)?;
        if !is_bag(i + taken) {
            return None;
        }
        self.of_volume(volume, &words[i + taken].folded).map(|names| (names, taken + 1))
    }

    /// The containers of a volume; among several those whose name has the word that was used: "polybag" is a "bag" too.
    pub fn of_volume(&self, volume: f64, word: &str) -> Option<Vec<String>> {
        /// The letters of a word of a container's name that another word may end in.
        const LEAST_LETTERS: usize = 3;
        let of_volume = self.volumes.iter().filter(|(_, litres)| (litres - volume).abs() < 1e-9);
        let mut fitting: Vec<String> = of_volume.map(|(name, _)| name.clone()).collect();
        let stem = word.trim_end_matches('s');
        if fitting.len() > 1 && !stem.is_empty() {
            let ends_in = |piece: &str| piece.len() >= LEAST_LETTERS && stem.ends_with(piece);
            let is_said = |name: &String| fold(name).split(' ').any(|piece| piece.contains(stem) || ends_in(piece));
            let said: Vec<String> = fitting.iter().filter(|name| is_said(name)).cloned().collect();
            fitting = if said.is_empty() { fitting } else { said };
        }
        (!fitting.is_empty()).then_some(fitting)
    }

    /// A species named here by more words than `at_least`, or by one that is no word of the lexicon.
    pub fn species_at(&self, words: &[Word], i: usize, at_least: usize) -> Option<(Vec<String>, usize)> {
        for length in (1..=3).rev().filter(|length| *length > at_least) {
            let Some(named) = words.get(i..i + length) else { continue };
            if named.iter().any(|word| word.is_sign() || word.typed.chars().any(|c| c.is_ascii_digit())) {
                continue;
            }
            let text = named.iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ");
            // A word with a capital in the middle of a line is rather a person's name than a part of a plant's.
            let is_capital = i > 0 && text.starts_with(char::is_uppercase);
            for form in singulars(&text) {
                let exact = self.names.species_called(&form);
                let is_exact = !exact.is_empty() || length > 1 || is_capital;
                let keys = if is_exact { exact } else { self.names.species_like(&form) };
                if !keys.is_empty() {
                    return Some((keys, length));
                }
            }
        }
        let fond = words.get(i).filter(|word| at_least == 0 && !word.is_sign()).map(|word| said_fondly(&word.folded));
        let named = |form: &String| Some(self.names.species_called(form)).filter(|keys| !keys.is_empty());
        if let Some(keys) = fond.unwrap_or_default().iter().find_map(named) {
            return Some((keys, 1));
        }
        self.species_nearly_at(words, i)
    }

    /// A plant whose name is a slip of the pen away.
    fn species_nearly_at(&self, words: &[Word], i: usize) -> Option<(Vec<String>, usize)> {
        let word = words.get(i)?;
        let is_word = word.folded.len() >= LEAST_LETTERS && word.folded.chars().all(char::is_alphabetic);
        let is_capital = i > 0 && word.typed.starts_with(char::is_uppercase);
        if !is_word || is_capital || vocabulary().knows(&word.folded) || self.is_named(&word.typed) {
            return None;
        }
        let mut near = self.near.borrow_mut();
        let keys = near.entry(word.folded.clone()).or_insert_with(|| self.names.species_near(&word.folded)).clone();
        (!keys.is_empty()).then_some((keys, 1))
    }

    /// Whether a code is made of the first letters of a known name and its number: "R1" for Ridge 1.
    pub fn is_of_initials(&self, typed: &str) -> bool {
        let wanted = squeezed(typed);
        self.all.iter().any(|(_, name)| initials(name).as_ref() == Some(&wanted))
    }

    /// The known names of one sort nearest to a word.
    pub fn nearest(&self, typed: &str, name_of: Option<NameOf>) -> Vec<String> {
        let wanted = squeezed(typed);
        if wanted.len() > LONGEST_NAME {
            return Vec::new();
        }
        let is_of = |of: &NameOf| name_of.is_none_or(|wanted| wanted == *of);
        let fits = self.all.iter().filter(|(of, name)| is_of(of) && !self.is_empty_tray(*of, name));
        // "R1" for Ridge 1: the first letters and the number lead.
        let code = letters_and_number(&wanted);
        let is_short_for = |name: &String| {
            let whole = letters_and_number(&squeezed(name));
            code.as_ref().zip(whole).is_some_and(|((letters, number), (whole, of))| {
                *number == of && whole.starts_with(letters.as_str()) && whole != *letters
            })
        };
        let far = |name: &String| match initials(name) == Some(wanted.clone()) || is_short_for(name) {
            true => 0,
            false => strsim::osa_distance(&squeezed(name), &wanted),
        };
        let mut near: Vec<(usize, &String)> = fits.map(|(_, name)| (far(name), name)).collect();
        near.sort();
        let most = (wanted.chars().count() / 2).max(1);
        near.into_iter().filter(|(far, _)| *far <= most).take(3).map(|(_, name)| name.clone()).collect()
    }
}

/// The first letters of the words of a name, with its number.
fn initials(name: &str) -> Option<String> {
    let parts = pieces(name);
    let is_number = |part: &String| part.chars().all(|letter| letter.is_ascii_digit());
    let short = |part: &String| if is_number(part) { part.clone() } else { part.chars().take(1).collect() };
    (parts.len() > 1).then(|| parts.iter().map(short).collect())
}

/// The letters a code begins with, and the number it ends in.
fn letters_and_number(squeezed: &str) -> Option<(String, u64)> {
    let at = squeezed.find(|letter: char| letter.is_ascii_digit()).filter(|at| *at > 0)?;
    let (letters, number) = squeezed.split_at(at);
    Some((letters.to_string(), number.parse().ok()?))
}

/// The letters and the number behind the last hyphen of a code: "L" and 6 of cof-L06.
fn end_of_code(code: &str) -> Option<(String, u64)> {
    letters_and_number(&squeezed(code.rsplit_once('-')?.1))
}

/// Whether a word is a piece of a name, or a slip away from one that is made of letters.
fn is_slip_of(typed: &str, piece: &str) -> bool {
    /// From so many letters on two slips are one.
    const LONG: usize = 8;
    let in_letters = |text: &str| text.len() >= LEAST_LETTERS - 1 && text.chars().all(char::is_alphabetic);
    if typed == piece || !in_letters(typed) || !in_letters(piece) {
        return typed == piece;
    }
    let most = if piece.len() < LONG { 1 } else { 2 };
    sounds(typed) == sounds(piece)
        || piece.len() >= LEAST_LETTERS
            && typed.chars().next() == piece.chars().next()
            && strsim::osa_distance(typed, piece) <= most
}

/// "cafecitos", "laurelito", "yaquita": the name that is said fondly.
fn said_fondly(text: &str) -> Vec<String> {
    const FOND: [(&str, &str); 8] = [
        ("ecito", "e"),
        ("cito", ""),
        ("quito", "co"),
        ("guito", "go"),
        ("quita", "ca"),
        ("ito", "o"),
        ("ito", ""),
        ("ita", "a"),
    ];
    let lower = text.to_lowercase();
    let one = lower.strip_suffix('s').unwrap_or(&lower);
    let is_long = |stem: &&str| stem.len() >= LEAST_LETTERS - 2;
    let whole =
        |(end, whole): &(&str, &str)| one.strip_suffix(end).filter(is_long).map(|stem| format!("{stem}{whole}"));
    FOND.iter().filter_map(whole).collect()
}

fn singulars(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    let mut forms = vec![lower.clone()];
    let endings = [("s", ""), ("es", ""), ("ies", "y"), ("oes", "o"), ("ces", "z")];
    forms.extend(
        endings.iter().filter_map(|(plural, one)| lower.strip_suffix(plural).map(|stem| format!("{stem}{one}"))),
    );

    if let Some((first, rest)) = lower.split_once(' ') {
        forms.extend(first.strip_suffix('s').map(|first| format!("{first} {rest}")));
        let both = first.strip_suffix('s').zip(rest.strip_suffix('s'));
        forms.extend(both.map(|(first, rest)| format!("{first} {rest}")));
    }
    forms
}
