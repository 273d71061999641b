//! Frames of what is said of trays.

use super::clause::{Clause, fields, number_value};
use super::entries::{Drafts, one};
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::NameOf::{Bed, Place, Tray};
use crate::share::scribbled::why::Why;
use serde_json::{Value, json};

/// Whether a number in the statement carries a minus sign.
fn has_minus(clause: &Clause) -> bool {
    clause.marks.iter().any(|mark| matches!(mark.what, What::Number { is_minus: true, .. }))
}

/// "c1 x 5": thrown out, as the short forms have it.
fn has_cross(clause: &Clause) -> bool {
    clause.marks.windows(2).any(|two| matches!(two[0].folded.as_str(), "x" | "×") && two[1].number().is_some())
}

/// "c1 - 3 rats": a dash before the number is a minus where a cause stands behind it.
fn has_dash_and_cause(clause: &Clause) -> bool {
    let is_dash = |i: &usize| ['-', '–', '—'].iter().any(|sign| clause.marks[i - 1].is_sign(*sign));
    let number = (1..clause.marks.len()).find(|i| clause.marks[*i].number().is_some());
    let counts = clause.has("left") || clause.has("count");
    number.as_ref().is_some_and(is_dash) && clause.has("causes.words") && !counts
}

/// Uses the number that stands at a word of these roles, before or behind it.
fn number_at_word(clause: &mut Clause, roles: &[&'static str]) -> Option<f64> {
    let at =
        (0..clause.marks.len()).find(|i| clause.is_free(*i) && roles.iter().any(|role| clause.marks[*i].has(role)))?;
    // "41 dead 2": the smaller one is dead, where it is far the smaller.
    let value = |i: Option<usize>| i.and_then(|i| clause.marks.get(i)).and_then(|mark| mark.number());
    let around = (value(at.checked_sub(1)), value(Some(at + 1)));
    let (mut sides, mut is_doubtful) = ([at.checked_sub(1), Some(at + 1), at.checked_sub(2)], false);
    if let (Some(before), Some(behind)) = around {
        is_doubtful = before.min(behind) * 2.0 > before.max(behind);
        if behind < before {
            sides.swap(0, 1);
        }
    }
    let number = sides.into_iter().flatten().find(|i| {
        clause.is_free(*i)
            && clause.marks.get(*i).is_some_and(|mark| matches!(mark.what, What::Number { is_weak: false, .. }))
    })?;
    clause.use_mark(at);
    clause.use_mark(number);
    if is_doubtful {
        clause.lacks.push(Why::Several);
    }
    clause.marks[number].number()
}

/// A tray spoken of, sure or not: the names of lots and beds that sound alike make it doubtful where no verb decides.
pub(crate) fn tray(clause: &mut Clause, is_headed: bool) -> Option<String> {
    let is_sure = clause.is_surely(Tray);
    let at = clause.find_name(Tray)?;
    let typed = clause.marks[at].typed.clone();
    let also_bed = clause.marks[at].is_name_of(Bed) || clause.marks[at].is_name_of(Place);
    let name = clause.name_here(at, Tray)?;
    if !is_headed && (!is_sure || also_bed) {
        clause.lacks.push(Why::Both(typed));
    }
    if clause.take(&["tray"]).is_some() {
        clause.weight += 1;
    }
    Some(name)
}

/// Uses the species of a tray where the line names it as well.
pub(crate) fn same_species(clause: &mut Clause, tray: &str) {
    let of_tray = clause.known.names.species_of(Tray, tray);
    let before = clause.clone();
    if let Some(keys) = clause.species()
        && !of_tray.is_some_and(|key| keys.contains(&key))
    {
        *clause = before;
    }
}

fn clock(clause: &Clause) -> Option<Value> {
    clause.marks.iter().find_map(|mark| match &mark.what {
        What::Clock(clock) => Some(json!(clock)),
        _ => None,
    })
}

/// "k1 and k2: 40 and 31": as many numbers as trays, behind them all.
pub(crate) fn counted_each(clause: &mut Clause) -> Option<Drafts> {
    let places =
        |is: &dyn Fn(&Mark) -> bool| (0..clause.marks.len()).filter(|i| is(&clause.marks[*i])).collect::<Vec<_>>();
    let trays = places(&|mark| mark.is_name_of(Tray));
    let numbers = places(&|mark| matches!(mark.what, What::Number { is_minus: false, .. }));
    if trays.len() < 2 || trays.len() != numbers.len() || trays.last() > numbers.first() || !clause.is_surely(Tray) {
        return None;
    }
    clause.take(&["count", "left", "up"]);
    clause.weight += 10;
    let mut drafts = Drafts::new();
    for (tray_at, number_at) in trays.into_iter().zip(numbers) {
        let name = clause.name_here(tray_at, Tray)?;
        let standing = clause.marks[number_at].number()?;
        clause.use_mark(number_at);
        let books = clause.known.names.standing(&name).map_or(0.0, f64::from);
        if standing.fract() != 0.0 {
            clause.lacks.push(Why::NotWhole(standing));
        } else if standing * 2.0 < books {
            clause.lacks.push(Why::OverHalf(books as u32));
        }
        drafts.push(("counted", fields([("tray", Some(json!(name))), ("standing", Some(number_value(standing)))])));
    }
    Some(drafts)
}

/// Uses "217/250": what is up of what was sown, what stands of what was looked at.
fn part_of_share(clause: &mut Clause) -> Option<(f64, f64)> {
    let share = |at: &usize| clause.is_free(*at) && matches!(clause.marks[*at].what, What::Share(..));
    let at = (0..clause.marks.len()).find(share)?;
    clause.use_mark(at);
    match clause.marks[at].what {
        What::Share(part, all) => Some((part, all)),
        _ => None,
    }
}

pub(crate) fn counted(clause: &mut Clause) -> Option<Drafts> {
    if has_minus(clause) || has_cross(clause) {
        return None;
    }
    let spoken_dead = clause.take(&["no_dead"]).is_some();
    let dead = if clause.has("die") && !spoken_dead { number_at_word(clause, &["die"]) } else { None };
    clause.take(&["well", "whole", "lately"]);
    let is_headed = clause.head(&["count", "up"]).is_some() | (spoken_dead && clause.find_number().is_some());
    let is_headed = clause.head(&["left"]).is_some() && clause.is_surely(Tray) || is_headed;
    if is_headed {
        clause.take(&["gives"]);
    }
    let name = tray(clause, is_headed)?;
    same_species(clause, &name);
    let (part, of_share) = if is_headed { part_of_share(clause) } else { None }.unzip();
    let Some(standing) = part.or_else(|| clause.count()) else {
        let is_range = clause.lacks.iter().any(|why| matches!(why, Why::Range(..)));
        return if is_range { one("counted", fields([("tray", Some(json!(name)))])) } else { None };
    };
    let of = clause.find_number().filter(|at| clause.is_behind(*at, "small.from"));
    let all = of.and_then(|of| clause.marks[of].number()).or(of_share);
    if let Some(of) = of {
        clause.use_mark(of);
    }
    if dead.is_some()
        && of.is_none()
        && (0..clause.marks.len())
            .any(|i| clause.marks[i].number() == Some(standing) && clause.is_behind(i, "small.from"))
    {
        return None;
    }
    let books = clause.known.names.standing(&name).map_or(0.0, f64::from);
    // "40 of 41" where 60 stand: nobody knows whether the others were looked at. How many came up of what was sown is no such count.
    let unlike = all.filter(|all| *all != books && dead.is_none() && !clause.has("up"));
    let doubt = |all: f64| match standing > all {
        true => Why::MoreThanAll(standing, all),
        false => Why::WholeOrPart(standing, all),
    };
    clause.lacks.extend(unlike.map(doubt));
    // A bare number far from what stands there may be a loss as well.
    let is_asked = unlike.is_some();
    if !is_asked && !is_headed && standing * 2.0 < books || dead.is_some_and(|dead| dead > standing) {
        clause.lacks.push(Why::OverHalf(books as u32));
    }
    let about = clause.take(&["small.about"]).is_some();
    let more = clause.take(&["more"]).is_some();
    let mut standing = standing;
    if more {
        standing += f64::from(clause.known.names.standing(&name).unwrap_or(0));
        clause.lacks.push(Why::Several);
    }
    // "nacieron 20" where more stand: newly born or a count?
    let born = || clause.marks.iter().any(|mark| mark.has("asides.born"));
    if !more && standing < books && born() {
        standing += books;
        clause.lacks.push(Why::Several);
    }
    let clock = clock(clause);
    let spaced_dash = clause.marks.iter().any(|mark| mark.is_sign('-') || mark.is_sign('–'));
    if spaced_dash && !is_headed {
        clause.lacks.push(Why::Several);
    }
    let causes = if dead.is_some() { clause.text(&["causes.words"], true) } else { None };
    let told = fields([
        ("tray", Some(json!(name))),
        ("standing", Some(number_value(standing))),
        ("dead", dead.filter(|_| causes.is_none()).map(number_value)),
        ("about", about.then_some(json!(true))),
        ("clock", clock),
    ]);
    let lost = dead.zip(causes).map(|(dead, cause)| {
        fields([("tray", Some(json!(name))), ("count", Some(number_value(dead))), ("cause", Some(json!(cause)))])
    });
    Some([("counted", told)].into_iter().chain(lost.map(|lost| ("lost", lost))).collect())
}

pub(crate) fn stocktaken(clause: &mut Clause) -> Option<Drafts> {
    clause.head(&["recount"])?;
    let name = tray(clause, true)?;
    let standing = clause.count();
    clause.take(&["count"]);
    one("stocktaken", fields([("tray", Some(json!(name))), ("standing", standing.map(number_value))]))
}

/// Uses the cause of a loss: a known one, or unknown words; a thief's work is its own cause. Unknown words that are nearly
/// those of a known cause are asked about.
pub(crate) fn cause(clause: &mut Clause) -> Option<String> {
    if let Some(because) = because(clause) {
        return Some(because);
    }
    if let Some(want) = want_of(clause) {
        return Some(want);
    }
    let known = clause.known_text(&["causes.words"]).map(|known| with_whose(clause, known));
    let known = known.or_else(|| where_it_rotted(clause));
    if known.is_some() {
        return known;
    }
    let is_stolen = clause.marks.iter().any(|mark| mark.has("steal"));
    if is_stolen {
        return Some(theft(clause));
    }
    let pest = clause.text(&["pests.words"], false);
    let died_of = || said_to(clause);
    let pest = pest.or_else(died_of);
    pest.or_else(|| {
        let nearly = nearly_a_cause(clause);
        let unknown = clause.unknown_reason(&["causes.words", "pests.words"])?;
        clause.lacks.extend(nearly.map(|(written, known)| Why::CauseNearly(written, known)));
        // What somebody did is no cause: nobody knows what it says.
        if does_something(&unknown) {
            clause.lacks.push(Why::Several);
            return None;
        }
        Some(unknown)
    })
}

/// Whether an unknown word is made like a verb that tells what happened, or says how plants are.
pub(crate) fn does_something(text: &str) -> bool {
    /// Shorter words are no such verbs.
    const LEAST_LETTERS: usize = 5;
    const ENDINGS: [&str; 11] = ["aron", "ieron", "aban", "ando", "iendo", "amos", "imos", "ada", "adas", "idas", "ed"];
    text.split(' ').any(|word| {
        let folded = crate::share::scribbled::lexicon::fold(word);
        let past = word.ends_with(['é', 'ó', 'í']);
        past || folded.len() >= LEAST_LETTERS && ENDINGS.iter().any(|ending| folded.ends_with(ending))
    })
}

/// Uses everything behind "because": no number and no name stands there.
fn because(clause: &mut Clause) -> Option<String> {
    let says = |mark: &Mark| mark.has("asides.because") || mark.folded == "because they were";
    let at = clause.marks.iter().position(says)?;
    let behind = clause.marks.get(at + 1..).filter(|behind| !behind.is_empty())?;
    let is_text = |mark: &Mark| matches!(mark.what, What::Word | What::Unknown | What::Sign(_));
    let known = clause.marks.get(at + 1).is_some_and(|mark| mark.has("causes.words") || mark.has("no_cause"));
    if known || !behind.iter().all(is_text) {
        return None;
    }
    let words: Vec<&str> = behind.iter().map(|mark| mark.typed.as_str()).collect();
    (at..clause.marks.len()).for_each(|i| clause.use_mark(i));
    Some(words.join(" "))
}

/// "se pudrieron de la raíz", "rotted at the neck": the rot and where it was.
fn where_it_rotted(clause: &mut Clause) -> Option<String> {
    let says_rot = |mark: &Mark| ["rot", "pudri", "podrid"].iter().any(|stem| mark.folded.contains(stem));
    let at = (1..clause.marks.len())
        .find(|at| clause.is_free(*at) && clause.marks[*at].has("rot_at") && says_rot(&clause.marks[*at - 1]))?;
    clause.use_mark(at);
    let rot = clause.marks[at - 1].typed.rsplit(' ').next().unwrap_or_default();
    Some(format!("{rot} {}", clause.marks[at].typed))
}

/// "la vaca de don Pepe": whose animal it was goes along with it.
fn with_whose(clause: &mut Clause, cause: String) -> String {
    let last = cause.rsplit(' ').next().unwrap_or_default();
    let at = clause.marks.iter().position(|mark| mark.typed == last || mark.typed.ends_with(&format!(" {last}")));
    let of = at
        .map(|at| at + 1)
        .filter(|of| clause.marks.get(*of).is_some_and(|mark| mark.folded == "de" || mark.folded == "of"));
    let is_somebody = |mark: &Mark| {
        mark.has("small.title") || mark.what == What::Unknown && mark.typed.starts_with(char::is_uppercase)
    };
    let whose = of.filter(|of| clause.marks.get(of + 1).is_some_and(is_somebody));
    match whose.and_then(|of| clause.text_from(of + 1, &["small.title", "small.person"])) {
        Some(whose) => format!("{cause} {} {whose}", clause.marks[of.unwrap_or_default()].typed),
        None => cause,
    }
}

/// Uses "lost to rot": what stands last behind "to", though the word says that plants died as well.
fn said_to(clause: &mut Clause) -> Option<String> {
    let at = clause.marks.iter().rposition(|mark| !matches!(mark.what, What::Sign(_)))?;
    let before = at.checked_sub(1)?;
    let is_led = matches!(clause.marks[before].folded.as_str(), "to" | "from" | "of");
    let says_died = clause.marks[..before].iter().any(|mark| mark.has("die"));
    if !is_led || !says_died || clause.marks[at].what != What::Word || !clause.marks[at].has("die") {
        return None;
    }
    clause.use_mark(at);
    Some(clause.marks[at].typed.clone())
}

/// Uses "for want of water", "de tanto sol": the words behind it are the cause whatever they are, up to a sign, a name or a
/// number.
pub(crate) fn want_of(clause: &mut Clause) -> Option<String> {
    let at = (0..clause.marks.len()).find(|at| clause.is_free(*at) && clause.marks[*at].has("asides.want_of"))?;
    let says_what = |mark: &Mark| ["die", "kill", "count", "left", "cull"].iter().any(|role| mark.has(role));
    let is_text =
        |mark: &Mark| matches!(mark.what, What::Word | What::Unknown) && !says_what(mark) && mark.folded != "se";
    let end = (at + 1..clause.marks.len()).find(|i| !is_text(&clause.marks[*i])).unwrap_or(clause.marks.len());
    if end == at + 1 {
        return None;
    }
    (at..end).for_each(|i| clause.use_mark(i));
    let said = clause.marks[at..end].iter().map(|mark| mark.typed.as_str()).collect::<Vec<_>>().join(" ");
    let lead = said.split(' ').next().unwrap_or_default();
    let is_lead = matches!(lead.to_lowercase().as_str(), "por" | "for" | "from" | "of" | "de");
    Some(if is_lead { said[lead.len()..].trim().to_string() } else { said })
}

/// What is stolen is lost by theft, said in the language of the word that says so.
pub(crate) fn theft(clause: &Clause) -> String {
    let in_spanish = clause.marks.iter().any(|mark| mark.has("stolen_in_spanish"));
    if in_spanish { "robo" } else { "theft" }.to_string()
}

/// Unknown words, with the small ones behind them, that are a slip of the pen away from a known cause, or its first word.
fn nearly_a_cause(clause: &mut Clause) -> Option<(String, String)> {
    /// Words of a cause that are looked at.
    const MOST_WORDS: usize = 3;
    let at = (0..clause.marks.len()).find(|i| clause.is_free(*i) && clause.marks[*i].what == What::Unknown)?;
    let end = (at + MOST_WORDS).min(clause.marks.len());
    (at + 1..=end).rev().find_map(|end| {
        let words: Vec<&str> = clause.marks[at..end].iter().map(|mark| mark.typed.as_str()).collect();
        let written = words.join(" ");
        let known = crate::share::scribbled::lexicon::lexicon()
            .nearest_cause(&crate::share::scribbled::lexicon::fold(&written))?;
        (at + 1..end).for_each(|i| clause.use_mark(i));
        Some((written, known))
    })
}

/// "two children broke three plants": how many did it.
fn pass_over_how_many_did_it(clause: &mut Clause) {
    let doers = (0..clause.marks.len().saturating_sub(1)).find(|at| {
        clause.marks[*at].number().is_some()
            && (clause.marks[at + 1].has("small.person") || clause.marks[at + 1].has("causes.words"))
            && clause.marks[at + 1..].iter().any(|mark| mark.number().is_some())
            && clause.is_free(*at)
    });
    if let Some(at) = doers {
        clause.use_mark(at);
    }
}

/// Uses "se perdió una" beside another number: so many were lost, and the other number is none of the dead.
fn one_at_the_verb(clause: &mut Clause) -> Option<f64> {
    let is_one = |mark: &Mark| matches!(mark.what, What::Number { value: 1.0, is_weak: true, .. });
    let at = (1..clause.marks.len()).find(|at| {
        let says_died = clause.marks[at - 1].has("die") || clause.marks[at - 1].has("kill");
        is_one(&clause.marks[*at]) && says_died && clause.is_free(*at)
    })?;
    clause.use_mark(at);
    Some(1.0)
}

pub(crate) fn lost(clause: &mut Clause) -> Option<Drafts> {
    let minus = has_minus(clause) || has_dash_and_cause(clause);
    let dies = clause.has("die") || clause.has("steal") || clause.has("burn");
    // "k2 got aphids": without a number nothing was lost.
    let is_got = |mark: &Mark| matches!(mark.folded.as_str(), "got" | "got into");
    let only_got = clause.marks.iter().filter(|mark| mark.has("kill")).all(is_got) && clause.find_number().is_none();
    let kills = clause.has("kill") && !only_got;
    if !minus && !dies && !kills {
        return None;
    }
    let name = tray(clause, dies || kills || minus)?;
    if minus && !dies && clause.marks.iter().any(|mark| mark.is_name_of(Tray) && mark.is_name_of(Bed)) {
        clause.lacks.push(Why::Both(name.clone()));
    }
    let all = clause.find_number().is_none() && clause.take(&["whole"]).is_some();
    // "8 c1 gone to the clinic": somebody has them.
    if gone_to_somebody(clause) {
        return None;
    }
    // A lost label is no lost plant.
    if clause.has("label") && clause.find_number().is_none() {
        return None;
    }
    pass_over_how_many_did_it(clause);
    let of_one = one_at_the_verb(clause);
    let count = match all {
        true => clause.known.names.standing(&name).map(f64::from),
        false => of_one.or_else(|| clause.count()),
    };
    clause.head(&["die", "kill", "steal", "burn"]);
    clause.take(&["more", "small.thing", "no_cause", "killed_so", "lately"]);
    if dies {
        clause.take(&["saw"]);
    }
    // "3 of 46 dead": what there was says nothing new.
    if dies && let Some(at) = clause.find_number().filter(|at| clause.is_behind(*at, "small.from")) {
        clause.use_mark(at);
    }
    if count == Some(0.0) {
        clause.lacks.push(Why::NoNumber);
    }
    // Who takes plants may be a person: an animal nobody knows is asked about.
    let takes = !dies && !minus && clause.marks.iter().any(|mark| mark.has("kill") && mark.has("they_took"));
    let known = clause.marks.iter().any(|mark| mark.has("causes.words"));
    // "stepped on 1 c1": what the writer did.
    let own_fault = clause.marks.iter().find(|mark| mark.has("own_fault")).map(|mark| mark.typed.clone());
    clause.take(&["by_mistake"]);
    let cause = cause(clause);
    if takes && !known {
        clause.lacks.push(Why::Several);
    }
    // "4 damped off": the word for it names the sickness.
    let damped = clause.marks.iter().any(|mark| matches!(mark.folded.as_str(), "damped off" | "damping off"));
    let cause = cause.or_else(|| own_fault.filter(|_| !dies)).or(damped.then(|| "damping off".to_string()));
    if !minus
        && !dies
        && cause.is_none()
        && !clause.marks.iter().any(|mark| mark.folded.starts_with("eat") || mark.folded.starts_with("comid"))
    {
        return None;
    }
    same_species(clause, &name);
    clause.take(&["small.by"]);
    let standing = clause.known.names.standing(&name);
    if let (Some(standing), Some(count)) = (standing, count) {
        if count > f64::from(standing) {
            clause.lacks.push(Why::MoreThanThere(standing));
        } else if count * 2.0 > f64::from(standing) {
            clause.lacks.push(Why::OverHalf(standing));
        }
    }
    if clause.take(&["small.about"]).is_some() {
        clause.lacks.push(Why::Unsure("~".into()));
    }
    let told = [("tray", Some(json!(name))), ("count", count.map(number_value)), ("cause", cause.map(Value::from))];
    one("lost", fields(told))
}

/// Whether plants are said to be gone to people, and nothing else that happened to them.
fn gone_to_somebody(clause: &Clause) -> bool {
    let goes = |mark: &Mark| matches!(mark.folded.as_str(), "gone" | "went" | "se fueron" | "se fue");
    let other = |mark: &Mark| (mark.has("die") || mark.has("kill")) && !goes(mark);
    let to_somebody = |two: &[Mark]| {
        two[0].has("small.to")
            && (two[1].has("small.person") || two[1].has("small.title"))
            && !two[1].has("causes.words")
    };
    clause.marks.iter().any(goes) && !clause.marks.iter().any(other) && clause.marks.windows(2).any(to_somebody)
}

/// "xq están chuecas": the reason without the words that lead it.
fn the_reason_of(said: &str) -> String {
    const LEADS: [&str; 14] = [
        "estan", "estaban", "esta", "son", "eran", "are", "were", "they", "theyre", "they're", "por", "the", "las",
        "los",
    ];
    let lexicon = crate::share::scribbled::lexicon::lexicon();
    let leads = |word: &str| {
        let folded = crate::share::scribbled::lexicon::fold(word);
        LEADS.contains(&folded.as_str()) || lexicon.is(&folded, "asides.because")
    };
    let words: Vec<&str> = said.split(' ').skip_while(|word| leads(word)).collect();
    if words.is_empty() { said.to_string() } else { words.join(" ") }
}

pub(crate) fn culled(clause: &mut Clause) -> Option<Drafts> {
    let thin = clause.take(&["thin"]).is_some();
    // "took 3 ugly ones out of c1".
    let took = clause.marks.iter().position(|mark| matches!(mark.folded.as_str(), "took" | "take" | "taken"));
    let out = took.filter(|at| clause.marks[*at..].iter().any(|mark| matches!(mark.folded.as_str(), "out of" | "out")));
    if let Some(at) = out {
        clause.use_mark(at);
        clause.weight += 10;
    }
    let cull = clause.head(&["cull"]).or(out);
    let crossed = has_cross(clause);
    if cull.is_none() && !thin && !crossed {
        return None;
    }
    clause.weight += if thin || crossed { 10 } else { 0 };
    if clause.has("to_look") {
        return None;
    }
    let plain = cull.map(|at| clause.marks[at].folded.clone()).unwrap_or_default();
    let name = tray(clause, true)?;
    let count = clause.count();
    // "le quité los gusanos a c1" takes out what eats, and no plants.
    let named = |clause: &mut Clause| clause.known_text(&["pests.words", "causes.words"]);
    let said = clause.text(&["poor", "sick"], true).or_else(|| count.and_then(|_| named(clause)));
    if said.as_deref().is_some_and(|said| does_something(said) && !clause.has("poor")) {
        clause.lacks.push(Why::Several);
    }
    // "saqué 60 para bolsitas": what they are for is no reason to throw them out.
    let first = said.as_deref().and_then(|said| said.split(' ').next()).unwrap_or_default().to_string();
    let at = clause.marks.iter().position(|mark| !first.is_empty() && mark.typed == first);
    let is_for = |at: usize| matches!(clause.marks[at].folded.as_str(), "para" | "pa" | "for" | "to" | "into" | "a");
    if at.is_some_and(|at| at > 0 && is_for(at - 1)) {
        clause.lacks.push(Why::Several);
    }
    let why = said.map(|said| the_reason_of(&said)).or_else(|| thin.then(|| "thinned".to_string()));
    clause.take(&["small.thing", "poor", "small.by"]);
    same_species(clause, &name);
    // A plant taken out says no word of why: sold, lifted, planted?
    const PLAIN: [&str; 15] = [
        "arranque",
        "arrancamos",
        "retire",
        "retiramos",
        "saque",
        "sacamos",
        "took out",
        "take out",
        "taken out",
        "removed",
        "quite",
        "quitamos",
        "pulled",
        "pulled out",
        "graded",
    ];
    let says_why = clause.marks.iter().any(|mark| mark.has("cull") && !PLAIN.contains(&mark.folded.as_str()));
    if PLAIN.contains(&plain.as_str()) && why.is_none() && !says_why {
        clause.lacks.push(Why::Several);
    }
    let standing = clause.known.names.standing(&name);
    if let (Some(standing), Some(count)) = (standing, count)
        && count > f64::from(standing)
    {
        clause.lacks.push(Why::MoreThanThere(standing));
    }
    one(
        "culled",
        fields([("tray", Some(json!(name))), ("count", count.map(number_value)), ("why", why.map(Value::from))]),
    )
}

pub(crate) fn over_standing(clause: &mut Clause, tray: &str, count: Option<f64>) {
    if let (Some(standing), Some(count)) = (clause.known.names.standing(tray), count)
        && count > f64::from(standing)
    {
        clause.lacks.push(Why::MoreThanThere(standing));
    }
}

/// "el café 3 muertas": a species does not say which tray.
pub(crate) fn lost_of_species(clause: &mut Clause) -> Option<Drafts> {
    if clause.find_name(Tray).is_some() || clause.find_name(Bed).is_some() {
        return None;
    }
    clause.head(&["die"])?;
    let count = clause.count()?;
    let keys = clause.species();
    clause.name(Place);
    let cause = cause(clause);
    let fits = clause.known.all.iter().filter(|(of, name)| {
        *of == Tray
            && !clause.known.is_empty_tray(Tray, name)
            && keys
                .as_ref()
                .is_some_and(|keys| clause.known.names.species_of(Tray, name).is_some_and(|key| keys.contains(&key)))
    });
    let trays: Vec<String> = fits.map(|(_, name)| name.clone()).collect();
    let is_lot = |mark: &Mark| matches!(&mark.what, What::New(code) if clause.known.is_like_a_lot(code));
    if clause.marks.iter().any(is_lot) {
        return None;
    }
    if let Some(new) = clause.new_code() {
        clause.lacks.push(Why::UnknownName(new.clone(), clause.known.nearest(&new, Some(Tray))));
    } else {
        clause.lacks.push(if trays.is_empty() { Why::NoTray } else { Why::WhichTray(trays.clone()) });
    }
    one(
        "lost",
        fields([
            ("tray", trays.first().map(|t| json!(t))),
            ("count", Some(number_value(count))),
            ("cause", cause.map(Value::from)),
        ]),
    )
}
