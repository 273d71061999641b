//! What some words of a line say otherwise than a reading took it: that a number was corrected, a pest is gone, that a number
//! beside rain counts hours, that something is no plant. What was probably meant is offered, never what the line denies.

use serde_json::{Value, json};

use super::doubts::{as_a_note, number, phrase_at, phrase_in, stands_in};
use super::frames::number_value;
use super::lexicon::{fold, lexicon};
use super::named::{Known, NameOf};
use super::numbers::number_at;
use super::words::Word;
use super::{EntryDraft, Offer, Reading, Why, noted_about};

/// A line with what was read of it.
struct Told<'a> {
    words: &'a [Word],
    offers: Vec<Offer>,
    is_clear: bool,
    /// Whether nothing of it was understood.
    is_unread: bool,
    /// The one tray that it names.
    tray: Option<String>,
    /// What it speaks of first: field and name.
    subject: Option<(&'static str, String)>,
    /// How many words it has beside names.
    others: usize,
    /// Its numbers, names left out: where each stands.
    numbers: Vec<(usize, f64)>,
}

/// The reading as it is, or what the words of the line make of it.
pub(in crate::share::scribbled) fn as_said(words: &[Word], reading: Reading, known: &Known) -> Reading {
    let told = Told::new(words, &reading, known);
    let is_open = |why: &Why| matches!(why, Why::Question(_) | Why::Unsure(_) | Why::Correction(_));
    if matches!(&reading, Reading::Refused { why, .. } if why.iter().any(is_open)) {
        return reading;
    }
    let is_no_fact = matches!(&reading, Reading::Refused { why, .. } if why.iter().any(Why::is_no_fact));
    let found = told
        .number_of_now()
        .or_else(|| told.taken_back(&reading))
        .or_else(|| told.pest_gone())
        .or_else(|| told.rain())
        .or_else(|| told.no_plants())
        .or_else(|| told.none_died(known))
        .or_else(|| told.only_looked_at())
        .or_else(|| told.leafless(known))
        .or_else(|| told.lived_through_it(known))
        .or_else(|| told.since_a_day())
        .or_else(|| told.of_a_cause_alone(known).filter(|_| !is_no_fact))
        .or_else(|| told.no_deed());
    match found {
        Some((why, offers)) => Reading::Refused { why: vec![why], offers },
        None => told.with_likely_offers(reading, known),
    }
}

impl<'a> Told<'a> {
    fn new(words: &'a [Word], reading: &Reading, known: &Known) -> Told<'a> {
        let (offers, is_clear) = match reading {
            Reading::Clear(drafts) => (vec![drafts.clone()], true),
            Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => (offers.clone(), false),
        };
        let is_unread_by = |why: &Why| {
            matches!(
                why,
                Why::NoReading(_)
                    | Why::NoNumber
                    | Why::NoUnit(_)
                    | Why::NoTray
                    | Why::NoPlace
                    | Why::Several
                    | Why::NotDone(_)
            )
        };
        let is_unread = matches!(reading, Reading::Refused { why, .. } if why.iter().all(is_unread_by));
        let (mut trays, mut numbers, mut at) = (Vec::new(), Vec::new(), 0);
        let (mut subject, mut others) = (None, 0);
        while at < words.len() {
            match known.name_at(words, at) {
                Some((names, taken)) if taken > 0 => {
                    subject = subject.or_else(|| noted_about(&names));
                    trays.extend(names.into_iter().filter(|(of, _)| *of == NameOf::Tray).map(|(_, name)| name));
                    at += taken;
                }
                _ => {
                    // A number in letters takes as many words as it has; "una" alone may be no number.
                    let figure = number_at(words, at).filter(|figure| !figure.is_part && figure.value > 1.0);
                    let value = number(&words[at]).or(figure.as_ref().map(|figure| figure.value));
                    let taken = figure.filter(|_| number(&words[at]).is_none()).map_or(1, |figure| figure.words.max(1));
                    numbers.extend(value.map(|value| (at, value)));
                    others += taken;
                    at += taken;
                }
            }
        }
        trays.dedup();
        let tray = if trays.len() == 1 { trays.pop() } else { None };
        Told { words, offers, is_clear, is_unread, tray, subject, others, numbers }
    }

    fn has(&self, at: usize, roles: &[&str]) -> bool {
        let of = |word: &Word| lexicon().roles(&word.folded).iter().any(|role| roles.contains(role));
        self.words.get(at).is_some_and(of)
    }

    /// Whether the line tells something of what it names, or is a sentence: it can be kept as a note at the least.
    fn tells_something(&self) -> bool {
        /// Fewer words are no sentence.
        const LEAST_WORDS: usize = 2;
        let is_said = |word: &&Word| word.folded.chars().all(char::is_alphabetic) && word.folded.len() > 2;
        self.subject.is_some() && self.others > 0 || self.words.iter().filter(is_said).count() >= LEAST_WORDS
    }

    fn says(&self, roles: &[&str]) -> bool {
        (0..self.words.len()).any(|at| self.has(at, roles))
    }

    /// Whether a phrase of a list ends right before a word.
    fn ends_before(&self, at: usize, name: &str) -> bool {
        (0..at).any(|from| phrase_at(self.words, from, name) == Some(at - from))
    }

    fn note(&self) -> Offer {
        let about = self.subject.iter().map(|(field, name)| (field.to_string(), json!(name))).collect();
        let happened = self.offers.iter().flatten().find_map(|draft| draft.happened);
        match self.offers.first() {
            Some(drafts) if !drafts.is_empty() => vec![as_a_note(drafts)],
            _ => vec![EntryDraft { kind: "told", fields: about, happened }],
        }
    }

    fn of_tray(&self, kind: &'static str, field: &str, value: Value) -> Option<Offer> {
        let fields = [("tray".to_string(), json!(self.tray.as_ref()?)), (field.to_string(), value)];
        let happened = self.offers.iter().flatten().find_map(|draft| draft.happened);
        Some(vec![EntryDraft { kind, fields: fields.into_iter().collect(), happened }])
    }

    /// "no eran 87 eran 78", "ya no 91 sino 85", "eran 91 ahora 85", "de 91 quedan 85": the second is the count.
    fn number_of_now(&self) -> Option<(Why, Vec<Offer>)> {
        let [(before, _), (now, count)] = self.numbers[..] else { return None };
        if self.says(&["die", "kill", "give", "plant", "carry", "cm"]) {
            return None;
        }
        let led = |name: &str| self.ends_before(now, name);
        let is_of = before > 0 && self.words[before - 1].folded == "de" && led("of_the_number");
        let is_now = self.ends_before(before, "not_the_number") && led("but_the_number")
            || self.ends_before(before, "were_the_number") && led("are_the_number")
            || is_of;
        let counted = self.of_tray("counted", "standing", number_value(count)).filter(|_| is_now)?;
        let is_read = self.is_clear
            && self.offers.concat().iter().all(|one| one.fields.get("standing").and_then(Value::as_f64) == Some(count));
        (!is_read).then(|| (Why::NumberNow(self.words[now].typed.clone()), vec![counted]))
    }

    /// "vendidas 20 anuladas", "3 muertas por error": the line may stand for nothing.
    fn taken_back(&self, reading: &Reading) -> Option<(Why, Vec<Offer>)> {
        let word = phrase_in(self.words, "taken_back")?;
        let is_told = matches!(reading, Reading::Refused { why, .. } if why.iter().any(Why::is_no_fact));
        let changes = |one: &EntryDraft| matches!(one.kind, "lost" | "culled" | "given_out" | "outplanted" | "counted");
        let is_change = self.offers.iter().flatten().any(changes)
            || self.offers.is_empty() && self.says(&["give", "die", "kill", "cull", "plant"]);
        let is_denied = fold(&word).contains("cierto");
        (is_change && (!is_told || is_denied)).then(|| (Why::Correction(word), Vec::new()))
    }

    /// "se quitó la roya", "sin roya": none of it is seen any more.
    fn pest_gone(&self) -> Option<(Why, Vec<Offer>)> {
        // "mealybug gone": what is gone without a number are no plants.
        let is_of_it = |one: &EntryDraft| match one.kind {
            "lost" => !one.fields.contains_key("count"),
            kind => matches!(kind, "pest_seen" | "treated" | "told"),
        };
        let kinds = |drafts: &Offer| drafts.iter().all(is_of_it);
        if !self.offers.iter().all(kinds) || !self.numbers.is_empty() {
            return None;
        }
        let is_pest = |at: &usize| self.has(*at, &["pests.words"]);
        let pest = (0..self.words.len()).find(is_pest);
        let remedy = (0..self.words.len()).any(|at| self.has(at, &["remedy"]));
        let without = pest.filter(|at| *at > 0 && self.words[at - 1].folded == "sin").map(|_| "sin".to_string());
        let word = without.or_else(|| phrase_in(self.words, "pest_gone"))?;
        let seen = self.offers.iter().flatten().find(|one| one.kind == "pest_seen").cloned();
        let sprayed = self.says(&["spray"]).then(|| self.offers.concat()).into_iter().flatten();
        let mut drafts: Offer = sprayed.filter(|one| one.kind == "treated").collect();
        let gone = match (seen, pest) {
            (Some(seen), _) => Some(seen),
            (None, Some(at)) => {
                self.of_tray("pest_seen", "what", json!(self.words[at].typed)).and_then(|mut one| one.pop())
            }
            (None, None) => None,
        };
        match gone {
            Some(mut gone) => {
                let what = gone.fields.get("what").and_then(Value::as_str).map(fold).unwrap_or_default();
                if let Some(named) = pest.map(|at| &self.words[at]).filter(|named| !what.contains(&named.folded)) {
                    gone.fields.insert("what".into(), json!(named.typed));
                }
                gone.fields.insert("share_pct".into(), json!(0));
                drafts.push(gone);
            }
            None if remedy && drafts.is_empty() => return Some((Why::Ended(word), vec![self.note()])),
            None => return None,
        }
        Some((Why::PestGone(word), vec![drafts, self.note()]))
    }

    /// Hours, minutes and times are no millimetres.
    fn rain(&self) -> Option<(Why, Vec<Offer>)> {
        let has_mm = self.says(&["units.mm", "units.inch"]);
        let fallen: Vec<f64> =
            self.offers.iter().flatten().filter_map(|one| one.fields.get("rain_mm")?.as_f64()).collect();
        let rains = self.says(&["rain"]) || phrase_in(self.words, "rains_not").is_some();
        if has_mm || !rains {
            return None;
        }
        let typed = |from: usize, to: usize| {
            self.words[from..to].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ")
        };
        if let (Some(word), Some(_)) = (phrase_in(self.words, "since"), phrase_in(self.words, "rains_not")) {
            return fallen.contains(&0.0).then(|| (Why::SinceThen(word), vec![self.note()]));
        }
        let hardly = phrase_in(self.words, "hardly").filter(|_| fallen.contains(&0.0));
        if let Some(word) = hardly {
            return Some((Why::NoMillimetres(word), vec![self.note()]));
        }
        let is_taken = |value: f64| fallen.contains(&value);
        let counted = self.numbers.iter().find(|(at, value)| {
            is_taken(*value) && self.words.get(at + 1).is_some_and(|word| stands_in(word, "not_of_rain"))
        });
        if let Some((at, _)) = counted {
            return Some((Why::NoMillimetres(typed(*at, at + 2)), vec![self.note()]));
        }
        let hours = self.numbers.windows(2).find(|two| {
            let (from, to) = (two[0].0, two[1].0);
            let before = from.checked_sub(1).map(|at| &self.words[at]);
            let led = before.is_some_and(|word| {
                matches!(word.folded.as_str(), "de" | "from" | "entre" | "between") || stands_in(word, "since")
            });
            led && to == from + 2 && (is_taken(two[0].1) || is_taken(two[1].1))
        });
        if let Some(hours) = hours {
            return Some((Why::NoMillimetres(typed(hours[0].0 - 1, hours[1].0 + 1)), vec![self.note()]));
        }
        let is_rain = |at: usize| {
            let starts = |stem: &&str| self.words[at].folded.starts_with(*stem);
            ["llov", "lluv", "aguacer", "rain"].iter().any(starts)
        };
        let says_nothing = self.offers.iter().flatten().all(|one| one.kind == "weather" && one.fields.is_empty());
        let counts_times = phrase_in(self.words, "times").is_some();
        let is_bare =
            (self.numbers.is_empty() || counts_times) && self.tray.is_none() && says_nothing && self.is_unread;
        let word = (0..self.words.len()).find(|at| is_rain(*at)).filter(|_| is_bare)?;
        Some((Why::NoMillimetres(self.words[word].typed.clone()), vec![self.note()]))
    }

    /// "3 ratas", "5 hojas", "3 frascos": a number of something else is none of plants.
    fn no_plants(&self) -> Option<(Why, Vec<Offer>)> {
        let is_animal = |at: usize| {
            let is_in = |word: &Word| matches!(word.folded.as_str(), "en" | "in");
            self.has(at, &["causes.words"]) && self.says(&["die"]) && self.words.get(at + 1).is_some_and(is_in)
        };
        let of_tray = |at: usize| self.tray.is_some() && stands_in(&self.words[at], "no_plants_of_a_tray");
        let of_else = |at: usize| stands_in(&self.words[at], "no_plants") || of_tray(at) || is_animal(at);
        // "10 banana leaves".
        let of_leaves = |at: usize| {
            let is =
                |at: usize, all: &[&str]| self.words.get(at).is_some_and(|word| all.contains(&word.folded.as_str()));
            is(at + 1, &["banana", "plantain", "guineo", "platano"]) && is(at + 2, &["leaves", "leaf"])
        };
        let behind = |at: usize| at + 1 < self.words.len() && of_else(at + 1) || of_leaves(at);
        let (at, value) = *self.numbers.iter().find(|(at, _)| behind(*at))?;
        let amounts = ["count", "standing", "alive", "dead", "lifted"];
        let is_of_it = |one: &EntryDraft| {
            amounts.iter().any(|field| one.fields.get(*field).and_then(Value::as_f64) == Some(value))
        };
        let only_note = |drafts: &Offer| drafts.iter().all(|one| matches!(one.kind, "told" | "noted"));
        let dropped = self.offers.iter().any(|drafts| drafts.iter().any(is_of_it));
        let kept = self.offers.iter().filter(|drafts| !drafts.iter().any(is_of_it) && !only_note(drafts)).cloned();
        let is_bare = self.offers.is_empty() && self.tray.is_some();
        (dropped || is_bare).then(|| {
            (
                Why::NotOfPlants(self.words[at + 1 + usize::from(of_leaves(at))].typed.clone()),
                kept.chain([self.note()]).collect(),
            )
        })
    }

    /// "no se murió ninguna": a look that found all alive; how many they are it does not say.
    fn none_died(&self, known: &Known) -> Option<(Why, Vec<Offer>)> {
        let is_none = (0..self.words.len()).any(|at| super::asides::phrase(self.words, at, "no_dead") > 0);
        if !is_none || !self.numbers.is_empty() {
            return None;
        }
        let standing = known.names.standing(self.tray.as_ref()?).filter(|standing| *standing > 0)?;
        let counted = self.of_tray("counted", "standing", json!(standing))?;
        Some((Why::NoNumber, vec![counted, self.note()]))
    }

    /// "3 dead since yesterday": found today, or dead on that day?
    fn since_a_day(&self) -> Option<(Why, Vec<Offer>)> {
        let [drafts] = &self.offers[..] else { return None };
        let is_loss =
            |one: &EntryDraft| matches!(one.kind, "lost" | "culled" | "plants_lost") && one.happened.is_some();
        if !self.is_clear || !drafts.iter().all(is_loss) {
            return None;
        }
        let is_since = |at: usize| matches!(self.words[at].folded.as_str(), "since" | "desde");
        let at = (0..self.words.len().saturating_sub(1)).find(|at| is_since(*at))?;
        let today = drafts.iter().map(|one| EntryDraft { happened: None, ..one.clone() }).collect();
        Some((Why::SinceThen(self.words[at].typed.clone()), vec![today, drafts.clone()]))
    }

    /// "crickets 6 c1", "pudrición de cuello, 2 de c1": lost, or sick? Nothing says what became of them.
    fn of_a_cause_alone(&self, known: &Known) -> Option<(Why, Vec<Offer>)> {
        const TOLD: [&str; 10] = ["die", "kill", "cull", "give", "plant", "count", "left", "alive", "carry", "spray"];
        let [(_, count)] = self.numbers[..] else { return None };
        let length = |at: usize| {
            let of = |role: &str| super::asides::phrase(self.words, at, role);
            of("causes.words").max(of("pests.words"))
        };
        let at = (0..self.words.len()).find(|at| length(*at) > 0)?;
        let is_amount = self.says(&["units.pct", "units.cm", "units.day", "units.l", "units.mm"]);
        if self.is_clear || is_amount || self.says(&TOLD) {
            return None;
        }
        let cause =
            self.words[at..at + length(at)].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ");
        let standing = known.names.standing(self.tray.as_ref()?).map(f64::from).filter(|stands| *stands >= count)?;
        let mut lost = self.of_tray("lost", "count", number_value(count))?;
        lost[0].fields.insert("cause".into(), json!(cause));
        let is_pest = super::asides::phrase(self.words, at, "pests.words") > 0;
        let seen = self.of_tray("pest_seen", "what", json!(cause)).filter(|_| is_pest).map(|mut seen| {
            seen[0].fields.insert("share_pct".into(), number_value((1000.0 * count / standing).round() / 10.0));
            seen
        });
        Some((Why::Several, std::iter::once(lost).chain(seen).collect()))
    }

    /// "I check the water every two days": a look, no step of the water.
    fn only_looked_at(&self) -> Option<(Why, Vec<Offer>)> {
        let is_step = self.offers.iter().flatten().any(|one| one.kind == "watering_set");
        let word = phrase_in(self.words, "looks_at").filter(|_| is_step)?;
        Some((Why::NoReading(vec![word]), std::iter::once(vec![self.as_note()]).chain(self.offers.clone()).collect()))
    }

    fn as_note(&self) -> EntryDraft {
        as_a_note(self.offers.first().map_or(&[], Vec::as_slice))
    }

    /// The words of a role as they stand in the line.
    fn said_by(&self, role: &str) -> Option<String> {
        let longest = (0..self.words.len()).find_map(|at| {
            let length = super::asides::phrase(self.words, at, role);
            (length > 0).then_some((at, length))
        });
        let (at, length) = longest?;
        Some(self.words[at..at + length].iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" "))
    }

    /// "los zompopos pelaron 8 c1": leaves grow again; dead, or leafless and alive?
    fn leafless(&self, known: &Known) -> Option<(Why, Vec<Offer>)> {
        let word = self.said_by("stripped")?;
        let tray = self.tray.as_ref().filter(|_| !self.says(&["die", "cull", "give"]))?;
        let [(_, count)] = self.numbers[..] else { return None };
        let is_eater = |at: &usize| self.has(*at, &["pests.words"]) || self.has(*at, &["causes.words"]);
        let eater = (0..self.words.len()).find(is_eater).map(|at| self.words[at].typed.clone());
        let says_leaves = ["hoj", "foli", "leav", "skelet"].iter().any(|stem| fold(&word).contains(stem));
        let stands = known.names.standing(tray).map(f64::from).filter(|stands| *stands > 0.0 && count <= *stands);
        let share = stands.map(|stands| number_value((1000.0 * count / stands).round() / 10.0));
        let seen = eater.clone().zip(share).and_then(|(eater, share)| {
            let mut seen = self.of_tray("pest_seen", "what", json!(eater))?;
            seen[0].fields.insert("share_pct".into(), share);
            Some(seen)
        });
        let lost = self.of_tray("lost", "count", number_value(count)).map(|mut lost| {
            lost[0].fields.extend(eater.map(|eater| ("cause".to_string(), json!(eater))));
            lost
        });
        let offers = match (seen, says_leaves) {
            (Some(seen), true) => vec![seen],
            (None, true) => vec![self.note()],
            (seen, false) => seen.into_iter().chain(lost).collect(),
        };
        Some((Why::DeadOrLeafless(word), offers))
    }

    /// "se salvaron 6 c1": no loss; all that live, or some of those that were sick?
    fn lived_through_it(&self, known: &Known) -> Option<(Why, Vec<Offer>)> {
        let word = self.said_by("saved")?;
        let first = word.split(' ').next().unwrap_or_default();
        let denied = self.words.windows(2).any(|two| {
            two[1].typed == first
                && matches!(two[0].folded.as_str(), "no" | "not" | "never" | "nunca" | "didn't" | "didnt")
        });
        if denied {
            return None;
        }
        let is_loss = |one: &EntryDraft| matches!(one.kind, "lost" | "culled" | "plants_lost");
        if self.is_clear && !self.offers.iter().flatten().any(is_loss) || self.says(&["die", "kill"]) {
            return None;
        }
        let tray = self.tray.as_ref()?;
        let all = known.names.standing(tray).filter(|_| self.numbers.is_empty() && self.says(&["whole"]));
        let count = match self.numbers[..] {
            [(_, count)] => Some(number_value(count)),
            _ => all.map(|all| json!(all)),
        };
        let counted = count.and_then(|count| self.of_tray("counted", "standing", count));
        Some((Why::LivedThroughIt(word), counted.into_iter().chain([self.note()]).collect()))
    }

    /// What is still wanted, half a measure, holes that were filled: nothing of it is written.
    fn no_deed(&self) -> Option<(Why, Vec<Offer>)> {
        if self.tray.is_some()
            && self.says(&["graft"])
            && !self.offers.iter().flatten().any(|one| one.kind == "lost")
            && let Some(word) = phrase_in(self.words, "took")
        {
            return Some((Why::GraftTook(word), vec![self.note()]));
        }
        if let Some(word) = phrase_in(self.words, "manner_of_speech") {
            return Some((Why::NoReading(vec![word]), vec![self.note()]));
        }
        if let Some(word) = self.said_by("fence_down") {
            return Some((Why::FenceDown(word), vec![self.note()]));
        }
        let first = self.offers.first().and_then(|drafts| drafts.first())?;
        let word = |name: &str| phrase_in(self.words, name);
        let noted = |why: Why| (why, vec![self.note()]);
        match first.kind {
            "given_out" => word("wants").map(|word| noted(Why::Intent(word))),
            // Half a net is no half shade.
            "shade_set" if word("halved").is_some() && !self.says(&["units.pct"]) => {
                word("halved").map(|word| noted(Why::HalfOfWhat(word)))
            }
            "shade_set" => word("less_shade")
                .or_else(|| word("cloth"))
                .and_then(|_| word("half"))
                .map(|word| noted(Why::HalfOfWhat(word))),
            "prepared" if self.says(&["fence"]) => word("fallen").map(|word| noted(Why::FenceDown(word))),
            "prepared" if self.says(&["real_hole"]) => word("covered").map(|word| noted(Why::Ended(word))),
            _ => None,
        }
    }

    /// The offers that the words of the line do not gainsay.
    fn with_likely_offers(&self, reading: Reading, known: &Known) -> Reading {
        match reading {
            Reading::Clear(drafts) => {
                let is_planted = drafts.len() == 1 && drafts[0].kind == "outplanted";
                if is_planted && phrase_in(self.words, "on_the_way").is_some() {
                    let note = as_a_note(&drafts);
                    return Reading::Asks { why: vec![Why::PlantedOrOnTheWay], offers: vec![drafts, vec![note]] };
                }
                Reading::Clear(drafts)
            }
            Reading::Asks { why, offers } if self.can_only_be_counted(&offers, known) => {
                let kept = offers.into_iter().find(|drafts| drafts.iter().any(|one| one.kind == "counted"));
                kept.map_or(Reading::Asks { why, offers: Vec::new() }, Reading::Clear)
            }
            Reading::Asks { why, offers } => match self.likely(&offers) {
                Some(offers) => Reading::Refused { why, offers },
                None => Reading::Asks { why, offers },
            },
            Reading::Refused { why, offers } => {
                let is_unread = why.iter().any(|why| matches!(why, Why::NoReading(words) if !words.is_empty()));
                // Whether a number is a loss or a count is no question where the line says something else.
                let asked = |why| if is_unread && matches!(why, Why::OverHalf(_)) { Why::Several } else { why };
                let why: Vec<Why> = why.into_iter().map(asked).collect();
                let mut offers = self.likely(&offers).unwrap_or(offers);
                // What cannot be is not offered.
                let is_nowhere = why.iter().any(|why| matches!(why, Why::NoneThere(..)));
                if is_nowhere
                    || is_coming(&why) && !offers.is_empty()
                    || offers.is_empty() && self.is_unread && self.tells_something()
                {
                    offers = vec![self.note()];
                }
                Reading::Refused { why, offers }
            }
        }
    }

    /// "van 214": of two readings with one number, a count and a loss, the loss cannot be where it is more than half of what
    /// stands, or more than there is.
    fn can_only_be_counted(&self, offers: &[Offer], known: &Known) -> bool {
        let [[a], [b]] = offers.iter().map(Vec::as_slice).collect::<Vec<_>>()[..] else { return false };
        let (counted, lost) = match (a.kind, b.kind) {
            ("counted", "lost") => (a, b),
            ("lost", "counted") => (b, a),
            _ => return false,
        };
        let number = |one: &EntryDraft, field: &str| one.fields.get(field).and_then(Value::as_f64);
        let (Some(standing), Some(count)) = (number(counted, "standing"), number(lost, "count")) else { return false };
        let books = self.tray.as_ref().and_then(|tray| known.names.standing(tray)).map_or(0.0, f64::from);
        let may_be_both = phrase_in(self.words, "either").is_some() && !self.says(&["die", "kill", "more", "whole"]);
        may_be_both && standing == count && books > 0.0 && count * 2.0 > books && lost.fields.get("cause").is_none()
    }

    fn likely(&self, offers: &[Offer]) -> Option<Vec<Offer>> {
        self.of_a_whole(offers).or_else(|| self.moved_to_a_bag(offers)).or_else(|| self.with_a_pest(offers))
    }

    /// "de 30 se secaron 4", "de los 42 pegaron 38": the first is the whole.
    fn of_a_whole(&self, offers: &[Offer]) -> Option<Vec<Offer>> {
        let [(before, whole), (now, part)] = self.numbers[..] else { return None };
        let from = before.checked_sub(1)?;
        let of = self.words[from].folded == "de" || from > 0 && self.words[from - 1].folded == "de";
        let led = |roles: &[&str]| {
            (before..now).any(|at| {
                let phrase: Vec<&str> = self.words[at..now].iter().map(|word| word.folded.as_str()).collect();
                roles.iter().any(|role| lexicon().is(&phrase.join(" "), role))
            })
        };
        let amount = |one: &EntryDraft, field: &str| one.fields.get(field).and_then(Value::as_f64);
        let first = offers.iter().flatten().next().filter(|_| of && part <= whole)?;
        let mut meant = offers
            .iter()
            .flatten()
            .find(|one| amount(one, "count") == Some(whole) || amount(one, "alive") == Some(whole));
        if meant.is_none() {
            meant = Some(first).filter(|one| one.kind == "survival_counted" || one.kind == "lost");
        }
        let mut meant = meant?.clone();
        match meant.kind {
            "lost" if led(&["die"]) => _ = meant.fields.insert("count".into(), number_value(part)),
            "survival_counted" if led(&["survive", "alive"]) => {
                meant.fields.insert("alive".into(), number_value(part));
                meant.fields.insert("dead".into(), number_value(whole - part));
            }
            _ => return None,
        }
        Some(vec![vec![meant]])
    }

    /// "pasé 120 de la cof-030 a bolsa": no count of the tray.
    fn moved_to_a_bag(&self, offers: &[Offer]) -> Option<Vec<Offer>> {
        phrase_in(self.words, "to_a_bag")?;
        phrase_in(self.words, "passed_on")?;
        let is_counted = |drafts: &Offer| drafts.iter().any(|one| one.kind == "counted");
        offers.iter().find(|drafts| is_counted(drafts))?;
        let mut kept: Vec<Offer> = offers.iter().filter(|drafts| !is_counted(drafts)).cloned().collect();
        if kept.is_empty() {
            kept.push(self.note());
        }
        Some(kept)
    }

    /// "5 con roya", "85 con las malas": not lost, not thrown away.
    fn with_a_pest(&self, offers: &[Offer]) -> Option<Vec<Offer>> {
        let with = |(at, _): &&(usize, f64)| {
            self.words.get(at + 1).is_some_and(|word| word.folded == "con") && self.has(at + 2, &["pests.words"])
        };
        let sick = self.numbers.iter().find(with).map(|(at, _)| self.words[at + 2].typed.clone());
        let all = phrase_in(self.words, "with_the_bad").and(self.numbers.first());
        let seen = sick.and_then(|what| self.of_tray("pest_seen", "what", json!(what)));
        let counted = all.and_then(|(_, count)| self.of_tray("counted", "standing", number_value(*count)));
        let meant = seen.or(counted)?;
        let is_loss = |drafts: &&Offer| drafts.iter().any(|one| matches!(one.kind, "lost" | "culled"));
        offers.iter().find(is_loss)?;
        Some(vec![meant, self.note()])
    }
}

/// Whether it is of a coming day by a word, as "tomorrow"; the day of a date or of a week may be written wrongly.
fn is_coming(why: &[Why]) -> bool {
    let by_a_word = |why: &Why| matches!(why, Why::Coming(word) if lexicon().is(&fold(word), "mood.coming"));
    why.iter().any(by_a_word)
}
