//! Number and gender agree in every sentence that counts something: each is said with 0, 1, 2 and 5 of each noun.

use super::argument::{Argument, Kind};
use super::sentences::KEYS;
use super::{Lang, Wording};

/// What is a name or a day is no number.
const NAMES: &str = "species tray bed lot place day entry by field kind name written nurse last option what of now month all \
                     device file since was is";
/// Words that end so in the singular too, or are no nouns: in English what one does.
const SINGULAR: &str = "is was has does its this as es más menos stands lives waits passes agrees comes mes species means lies \
                        follows germinates gas grams";
/// Nouns of plants and their things by gender, in Spanish. What is said of them ends as they do.
const FEMININE: &str = "planta plantas semilla semillas bandeja bandejas parcela parcelas hilera hileras celda celdas hoja hojas \
                        raíz raíces siembra siembras anotación anotaciones línea líneas fila filas";
const MASCULINE: &str = "hoyo hoyos lote lotes puesto puestos tallo tallos pilón pilones lugar lugares apunte apuntes conteo \
                         conteos surco surcos dato datos";

/// A sentence as it is said where one argument is a number; other numbers are 7.
struct Said {
    lang: Lang,
    key: &'static str,
    number: i64,
    sentence: String,
}

impl Said {
    fn words(&self) -> Vec<&str> {
        self.sentence.split([' ', '\n']).collect()
    }
}

/// Every sentence with each of its numbers as 0, 1, 2 and 5.
fn all_said() -> Vec<Said> {
    let mut all = Vec::new();
    for lang in Lang::ALL {
        let wording = Wording::new(lang);
        for key in KEYS {
            let counted = key.arguments.iter().map(|(name, _)| *name);
            for counted in counted.filter(|name| !NAMES.split_whitespace().any(|one| one == *name)) {
                for number in [0, 1, 2, 5] {
                    let argument = |(name, kind): &(&'static str, Kind)| match kind {
                        Kind::Text if *name == counted => (*name, Argument::text(number)),
                        Kind::Text => (*name, Argument::text(format!("<{name}>"))),
                        Kind::Count => (*name, Argument::count(if *name == counted { number } else { 7 })),
                    };
                    let arguments: Vec<_> = key.arguments.iter().map(argument).collect();
                    let sentence = wording.said(key.name, &arguments).unwrap_or_default();
                    all.push(Said { lang, key: key.name, number, sentence });
                }
            }
        }
    }
    assert!(all.len() > 8_000, "{}", all.len());
    all
}

fn bare(word: &str) -> &str {
    word.trim_matches(|letter: char| !letter.is_alphabetic())
}

fn is_in(list: &str, word: &str) -> bool {
    list.split_whitespace().any(|one| one == word)
}

/// Both columns of a part of the table of words that agree: many, one.
fn table(lang: Lang, part: &str) -> Vec<(&'static str, &'static str)> {
    let text = match lang {
        Lang::En => include_str!("en/agree.txt"),
        Lang::Es => include_str!("es/agree.txt"),
    };
    let lines = text.lines().skip_while(|line| !line.starts_with(part)).skip(1);
    lines.take_while(|line| !line.starts_with('#')).filter_map(|line| line.split_once(' ')).collect()
}

/// The sentences in which something is wrong.
fn where_wrong(is_wrong: impl Fn(&Said) -> bool) -> Vec<String> {
    let wrong = all_said().into_iter().filter(is_wrong);
    wrong.map(|said| format!("{:?}: {} of {} says '{}'", said.lang, said.key, said.number, said.sentence)).collect()
}

#[test]
fn what_is_counted_agrees_with_its_number_in_every_sentence() {
    const ONE: [&str; 9] = ["plant", "day", "tray", "planta", "semilla", "día", "bandeja", "viva", "muerta"];
    let wrong = where_wrong(|said| {
        let number = said.number.to_string();
        said.words().windows(2).filter(|pair| pair[0] == number && !pair[1].starts_with(['<', '('])).any(|pair| {
            let word = bare(pair[1]);
            let many = word.ends_with('s') && word.len() > 1 && !is_in(SINGULAR, word);
            if said.number == 1 { many } else { ONE.contains(&word) }
        })
    });
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn a_word_before_a_number_agrees_with_it() {
    /// These are of many and of one, or belong to what is before them.
    const EITHER: &str = "es is was la el su da puede falta hace vive viene queda entró alcanzaría";
    let tables: Vec<(Lang, Vec<(&str, &str)>)> =
        Lang::ALL.into_iter().map(|lang| (lang, table(lang, "# before"))).collect();
    let wrong = where_wrong(|said| {
        let number = said.number.to_string();
        let words = tables.iter().find(|(lang, _)| *lang == said.lang).map(|(_, words)| words.as_slice());
        said.words().windows(2).filter(|pair| pair[1] == number).any(|pair| {
            let wrong = |(many, one): &(&str, &str)| if said.number == 1 { pair[0] == *many } else { pair[0] == *one };
            let unas = said.number == 1 && matches!(pair[0], "unas" | "unos" | "pocas" | "otras");
            // "1 to 5": the number before decides nothing.
            unas || (!is_in(EITHER, pair[0]) && words.into_iter().flatten().any(wrong))
        })
    });
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn an_article_agrees_with_its_noun() {
    let is_noun = |word: &str| is_in(FEMININE, word) || is_in(MASCULINE, word);
    let wrong = where_wrong(|said| {
        said.lang == Lang::Es
            && said.words().windows(2).any(|pair| {
                let (article, noun) = (pair[0].to_lowercase(), bare(pair[1]));
                let (of_one, of_many) = ("la el una un su", "las los unas unos sus");
                let many = is_noun(noun) && noun.ends_with('s');
                (is_in(of_one, &article) && many)
                    || (is_in(of_many, &article) && ((is_noun(noun) && !many) || pair[1] == "1"))
                    || (matches!(pair[0], "a" | "de") && pair[1] == "el")
            })
    });
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn the_verb_of_so_many_of_so_many_says_of_the_part() {
    /// What is one share of many is one thing: "3 of 20 is 15 %".
    const SHARES: [&str; 3] = ["calc_interval_some", "calc_interval_none", "remark_half_gone"];
    const ALL: &str = "<of> <seeds> <standing> <planted> <looked_at> las";
    let verbs: Vec<(Lang, Vec<(&str, &str)>)> =
        Lang::ALL.into_iter().map(|lang| (lang, table(lang, "# of so many"))).collect();
    let mut seen = 0;
    let wrong = where_wrong(|said| {
        let number = said.number.to_string();
        let words = said.words();
        let verbs = verbs.iter().find(|(lang, _)| *lang == said.lang).map(|(_, verbs)| verbs.as_slice());
        let is_part = |at: usize| {
            let three = words.get(at..at + 3).unwrap_or_default();
            matches!(three, [part, "of" | "de", all] if *part == number && is_in(ALL, all))
        };
        let disagrees = |at: usize| {
            let behind = words.iter().skip(at + 3).take(4).map(|word| bare(word));
            let verb = behind.into_iter().find_map(|word| {
                verbs.into_iter().flatten().find(|(many, one)| *many == word || *one == word).map(|pair| (pair, word))
            });
            verb.is_some_and(|((many, one), word)| if said.number == 1 { word == *many } else { word == *one })
        };
        !SHARES.contains(&said.key) && (0..words.len()).any(|at| is_part(at) && disagrees(at))
    });
    all_said().iter().for_each(|said| seen += usize::from(said.key == "collar_met" && said.sentence.contains("1 ")));
    assert!(seen > 0);
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn what_is_said_of_a_noun_has_its_gender() {
    let ends = |word: &str, ends: &[&str]| ends.iter().any(|end| word.ends_with(end));
    let wrong = where_wrong(|said| {
        said.lang == Lang::Es
            && said.words().windows(2).any(|pair| {
                let (noun, word) = (pair[0], bare(pair[1]));
                // What may be a tray, a bed, a lot or a place is neither.
                let of_any = noun.ends_with("<about>") && ends(word, &["ado", "ada", "ido", "ida"]);
                of_any
                    || (is_in(FEMININE, noun) && ends(word, &["ado", "ados", "ido", "idos"]))
                    || (is_in(MASCULINE, noun) && ends(word, &["ada", "adas", "ida", "idas"]))
            })
    });
    assert!(wrong.is_empty(), "{wrong:#?}");
}
