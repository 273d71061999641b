//! What a line says beside the deed and the frames do not read: in which rows it was, when seed was picked and how it is kept. It is taken
//! out before the line is read, and put into the entries that have a field for it.

use serde_json::{Value, json};

use super::days::{SaidDay, day_at};
use super::lexicon::lexicon;
use super::named::Known;
use super::words::Word;
use super::{EntryDraft, Offer, Reading, written};
use crate::base::Day;
use crate::nursery::entry::fields::find_field;
use crate::nursery::entry::kind_of_entry;

/// What was taken out of a line.
#[derive(Default)]
pub(in crate::share::scribbled) struct SetAside {
    rows: Option<String>,
    collected: Option<Day>,
    kept: Option<String>,
}

const ROWS: [&str; 8] = ["row", "rows", "hilera", "hileras", "fila", "filas", "surco", "surcos"];
/// Before the word for rows these only lead it.
const LEADS: [&str; 12] = ["in", "en", "on", "las", "la", "los", "el", "the", "de", "from", "only", "solo"];
/// Before it these say something else: how far rows are apart, what stands between them.
const OF_SPACING: [&str; 6] = ["entre", "between", "cada", "every", "each", "por"];
/// Seed that was picked on a day of its own.
const PICKED: [&str; 18] = [
    "picked",
    "collected",
    "gathered",
    "harvested",
    "cosechada",
    "cosechadas",
    "cosechado",
    "cosechados",
    "recogida",
    "recogidas",
    "recogido",
    "recogidos",
    "colectada",
    "colectadas",
    "colectado",
    "juntadas",
    "recolectada",
    "recolectadas",
];
/// How seed is kept, as it is said, and the word of the journal; the longer phrase first.
const KEPT: [(&str, &str); 22] = [
    ("dried and sealed", "dry_sealed"),
    ("dry and sealed", "dry_sealed"),
    ("secas y selladas", "dry_sealed"),
    ("secos y sellados", "dry_sealed"),
    ("secas selladas", "dry_sealed"),
    ("dry sealed", "dry_sealed"),
    ("in the fridge", "cold"),
    ("en la nevera", "cold"),
    ("en la refri", "cold"),
    ("en refrigeradora", "cold"),
    ("in parchment", "in_parchment"),
    ("en pergamino", "in_parchment"),
    ("con mucilago", "mucilage_on"),
    ("mucilage on", "mucilage_on"),
    ("con baba", "mucilage_on"),
    ("en vaina", "in_pod"),
    ("en mazorca", "in_pod"),
    ("in pod", "in_pod"),
    ("washed moist", "washed_moist"),
    ("lavadas humedas", "washed_moist"),
    ("dry open", "dry_open"),
    ("secas abiertas", "dry_open"),
];

/// The words without what is set aside of them.
pub(in crate::share::scribbled) fn set_aside(words: Vec<Word>, known: &Known, today: Day) -> (Vec<Word>, SetAside) {
    let mut aside = SetAside::default();
    let (words, rows) = without_rows(words);
    aside.rows = rows;
    if !is_a_receipt(&words, known) {
        return (words, aside);
    }
    let words = without_collected(words, &mut aside, today);
    let words = without_kept(words, &mut aside);
    (words, aside)
}

fn is(words: &[Word], at: usize, all: &[&str]) -> bool {
    words.get(at).is_some_and(|word| all.contains(&word.folded.as_str()))
}

/// Whether seed comes in: a word that says so, and one for seed or a lot or a code that is made like those of lots.
fn is_a_receipt(words: &[Word], known: &Known) -> bool {
    let has = |roles: &[&str]| {
        words.iter().any(|word| {
            !PICKED.contains(&word.folded.as_str())
                && lexicon().roles(&word.folded).iter().any(|role| roles.contains(role))
        })
    };
    let of_lot = words.iter().any(|word| known.is_like_a_lot(&word.typed) && !known.is_named(&word.typed));
    let comes = has(&["receive", "buy", "gift"]);
    comes && of_lot || comes && has(&["seed"]) && has(&["lot"]) || of_lot && has(&["lot"])
}

/// "hileras 1-3", "rows 4 to 6", "surcos 1, 2 y 4".
fn without_rows(words: Vec<Word>) -> (Vec<Word>, Option<String>) {
    let found: Vec<(usize, usize, String)> = (0..words.len())
        .filter(|at| is(&words, *at, &ROWS) && !at.checked_sub(1).is_some_and(|before| is(&words, before, &OF_SPACING)))
        .filter_map(|at| rows_behind(&words, at + 1).map(|(end, rows)| (at, end, rows)))
        .collect();
    let [(at, end, rows)] = &found[..] else { return (words, None) };
    let mut from = *at;
    while from > 0 && is(&words, from - 1, &LEADS) {
        from -= 1;
    }
    // What stands before may lead the bed behind it: "filas 1 a 3 de Spring 1".
    ([&words[..from], &words[*end..]].concat(), Some(rows.clone()))
}

/// One row or a stretch of rows in one word: `4`, `1-3`, `1,2,4-6`.
fn in_one_word(typed: &str) -> Option<String> {
    /// More rows no bed has (ours).
    const MOST: u32 = 500;
    let is_row = |text: &str| text.parse::<u32>().is_ok_and(|row| (1..=MOST).contains(&row));
    let is_item = |text: &str| match text.split_once(['-', '–']) {
        Some((first, last)) => is_row(first) && is_row(last),
        None => is_row(text),
    };
    typed.split(',').all(is_item).then(|| typed.replace('–', "-"))
}

/// The rows from a word on, and where they end; a number with its unit is none.
fn rows_behind(words: &[Word], from: usize) -> Option<(usize, String)> {
    let begin = from + usize::from(is(words, from, &["no", "no.", "#", "nº", "from", "de", "del"]));
    let item = |at: usize| in_one_word(&words.get(at)?.typed);
    let says_of_what = |at: usize| {
        words.get(at).is_some_and(|word| {
            let roles = lexicon().roles(&word.folded);
            roles.iter().any(|role| role.starts_with("units.") || *role == "small.thing")
                || word.is("%")
                || word.is("x")
        })
    };
    let mut rows = item(begin)?;
    let mut at = begin + 1;
    loop {
        let is_span = is(words, at, &["a", "to", "al", "-", "–", "through", "thru", "hasta"]);
        let is_more = is(words, at, &["y", "and", "&"]) || words.get(at).is_some_and(|word| word.is(","));
        let Some(next) = item(at + 1).filter(|_| is_span || is_more) else { break };
        let is_last_of_a_list = !words[at].is(",") || is(words, at + 2, &["y", "and", "&", ","]);
        if says_of_what(at + 2) || !is_last_of_a_list {
            break;
        }
        rows = format!("{rows}{}{next}", if is_span { '-' } else { ',' });
        at += 2;
    }
    (!says_of_what(at)).then_some((at, rows))
}

/// "picked 20 nov": the day before which the seed stood on its tree, none of the receipt.
fn without_collected(words: Vec<Word>, aside: &mut SetAside, today: Day) -> Vec<Word> {
    let found = (0..words.len()).filter(|at| is(&words, *at, &PICKED)).find_map(|at| {
        let lead = usize::from(is(&words, at + 1, &["on", "the"]));
        day_at(&words, at + 1 + lead, today).map(|(day, taken)| (at, at + 1 + lead + taken, day))
    });
    let Some((at, end, day)) = found else { return words };
    aside.collected = match day {
        SaidDay::On(day) => Some(day),
        SaidDay::Coming(_) | SaidDay::Impossible => return words,
        SaidDay::Open | SaidDay::Unknown | SaidDay::TodayOrWeekAgo => None,
    };
    [&words[..at], &words[end..]].concat()
}

fn without_kept(words: Vec<Word>, aside: &mut SetAside) -> Vec<Word> {
    let said_at = |at: usize, phrase: &str| {
        let parts: Vec<&str> = phrase.split(' ').collect();
        parts.iter().enumerate().all(|(n, part)| is(&words, at + n, &[part])).then_some(parts.len())
    };
    let found = KEPT.iter().find_map(|(phrase, kept)| {
        (0..words.len()).find_map(|at| said_at(at, phrase).map(|length| (at, at + length, *kept)))
    });
    if let Some((at, end, kept)) = found {
        aside.kept = Some(kept.to_string());
        return [&words[..at], &words[end..]].concat();
    }
    // "secas" says of seed that it is no loss; whether it is sealed it does not say.
    let is_dry = |word: &Word| matches!(word.folded.as_str(), "seca" | "secas" | "seco" | "secos" | "dry" | "dried");
    words.into_iter().filter(|word| !is_dry(word)).collect()
}

impl SetAside {
    /// The reading with what was set aside where an entry has a field for it; else it is kept beside the entry.
    pub(in crate::share::scribbled) fn put_back(&self, reading: Reading) -> Reading {
        let all = |offers: Vec<Offer>| offers.into_iter().map(|drafts| self.in_each(drafts)).collect();
        match reading {
            Reading::Clear(drafts) => Reading::Clear(self.in_each(drafts)),
            Reading::Asks { why, offers } => Reading::Asks { why, offers: all(offers) },
            Reading::Refused { why, offers } => Reading::Refused { why, offers: all(offers) },
        }
    }

    fn in_each(&self, mut drafts: Offer) -> Offer {
        if let Some(rows) = &self.rows {
            let mut beds: Vec<Value> = drafts.iter().filter_map(|draft| draft.fields.get("bed").cloned()).collect();
            beds.dedup();
            let has_rows = |draft: &EntryDraft| {
                let known = kind_of_entry(draft.kind);
                draft.fields.contains_key("bed")
                    && known.is_some_and(|known| find_field(known.fields, "rows").is_some())
            };
            if beds.len() == 1 && drafts.iter().any(has_rows) {
                let of_rows = drafts.iter_mut().filter(|draft| has_rows(draft));
                of_rows.for_each(|draft| _ = draft.fields.insert("rows".into(), json!(rows)));
            } else if let Some(first) = drafts.first_mut().filter(|first| first.kind != "noted") {
                first.fields.insert("aside".into(), json!(rows));
            }
        }
        for draft in drafts.iter_mut().filter(|draft| draft.kind == "lot_received") {
            if let Some(day) = self.collected {
                draft.fields.insert("collected".into(), json!(written(day)));
            }
            if let Some(kept) = &self.kept {
                draft.fields.insert("kept".into(), json!(kept));
            }
        }
        drafts
    }
}

/// Heights with their collars, "altura/cuello 38/4.1 36/4", which look like days; and collars alone, which the journal has no place for.
pub(in crate::share::scribbled) fn heights_and_collars(words: &[Word], known: &Known) -> Option<Result<Offer, Offer>> {
    let has = |word: &Word, role: &str| {
        let mut halves = word.folded.split('/');
        halves.any(|half| lexicon().roles(half).contains(&role))
    };
    let says_collar = words.iter().any(|word| has(word, "collar"));
    let says_height = words.iter().any(|word| has(word, "height"));
    if !says_collar && !says_height {
        return None;
    }
    let (mut tray, mut pairs, mut alone, mut at) = (None, Vec::new(), 0, 0);
    while at < words.len() {
        if let Some((names, taken)) = known.name_at(words, at).filter(|(_, taken)| *taken > 0) {
            let [(super::NameOf::Tray, name)] = &names[..] else { return None };
            if tray.replace(name.clone()).is_some() {
                return None;
            }
            at += taken;
            continue;
        }
        let word = &words[at];
        let figure = |text: &str| super::numbers::in_figures(text);
        let pair = word.typed.split_once('/').and_then(|(height, collar)| Some((figure(height)?, figure(collar)?)));
        match pair.filter(|(height, collar)| height > collar) {
            Some((height, collar)) => pairs.push(json!({"height_cm": height, "collar_mm": collar})),
            None if figure(&word.typed).is_some() => alone += 1,
            None => {
                let is_small = |role: &&str| role.starts_with("small.") || matches!(*role, "units.cm" | "units.mm");
                let roles = lexicon().roles(&word.folded);
                let says_nothing = roles.iter().any(is_small);
                let is_named = ["height", "collar"].iter().any(|role| has(word, role));
                if !word.is_sign() && !is_named && !says_nothing {
                    return None;
                }
            }
        }
        at += 1;
    }
    let tray = tray?;
    let about = |kind: &'static str, fields: Value| {
        vec![EntryDraft { kind, fields: fields.as_object().cloned().unwrap_or_default(), happened: None }]
    };
    match (pairs.is_empty(), alone) {
        (false, 0) => Some(Ok(about("measured", json!({"tray": tray, "plants": pairs})))),
        (true, 1..) if says_collar && !says_height => Some(Err(about("told", json!({ "tray": tray })))),
        _ => None,
    }
}
