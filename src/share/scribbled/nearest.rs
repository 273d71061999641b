//! A line that nothing explains: what was probably meant.

use super::choose::{Line, MOST_OFFERS, Way};
use super::days::SaidDay;
use super::frames::does_something;
use super::lexicon::fold;
use super::marks::{Mark, What};
use super::named::NameOf;
use super::why::Why;
use super::{Offer, Reading};

/// The most strange names that are looked at in a line.
const MOST_STRANGE: usize = 3;

/// Where a word stands, how many words it takes, and the known names that are near it.
type StrangeName = (usize, usize, Vec<(NameOf, String)>);

impl Line<'_> {
    /// Nothing explains the line: what comes nearest, and what of it was not read.
    pub(super) fn nearest(&self, whole: &[Way]) -> Reading {
        let unread = |way: &Way| way.leftover.iter().filter_map(|i| self.marks.get(*i)).collect::<Vec<_>>();
        let coming = self.marks.iter().find(|mark| matches!(mark.what, What::Day(SaidDay::Coming(_))));
        let mut why = Vec::new();
        if let Some(mark) = coming {
            why.push(Why::Coming(mark.typed.clone()));
        }
        let several: Vec<String> =
            self.marks.iter().filter(|mark| mark.is_name_of(NameOf::Tray)).map(|mark| mark.typed.clone()).collect();
        let numbers = self.marks.iter().filter(|mark| mark.number().is_some()).count();
        if several.len() > 1 && numbers == 1 {
            why.push(Why::EachOrAll(several));
        }
        let mut offers = Vec::new();
        for (i, length, near) in self.strange_names() {
            let typed = self.marks[i..i + length].iter().map(|mark| mark.typed.as_str()).collect::<Vec<_>>().join(" ");
            for (name_of, name) in near.iter().take(3) {
                let mut marks = self.marks.clone();
                marks.splice(i..i + length, [named(*name_of, name)]);
                let ways = self.ways(&marks);
                if let Some(way) = ways.iter().find(|way| way.leftover.is_empty()) {
                    offers.push(self.dated(&way.drafts, self.one_day()));
                }
            }
            if !offers.is_empty() || matches!(self.marks[i].what, What::New(_)) {
                why.push(Why::UnknownName(typed, near.into_iter().map(|(_, name)| name).collect()));
                break;
            }
        }
        let of_species = self.of_each_tray_of_the_species();
        if let Some((trays, lines)) = of_species {
            why.push(Why::WhichTray(trays));
            offers.extend(lines);
        }
        if let Some((beds, lines)) = self.of_each_bed_of_the_species() {
            why.push(Why::WhichBed(beds));
            offers.extend(lines);
        }
        offers.extend(self.with_a_verb());
        for way in whole.iter().take(3) {
            if why.is_empty() {
                why.push(Why::NoReading(unread(way).iter().map(|mark| mark.written.clone()).collect()));
                why.extend(way.lacks.clone());
            }
            let says_something = way.drafts.iter().all(|(_, fields)| fields.len() > 1 || way.lacks.is_empty());
            if says_something && self.is_likely(way) {
                offers.push(self.dated(&way.drafts, self.one_day()));
            }
        }
        if why.is_empty() {
            why.push(self.what_is_missing());
        }
        offers.dedup();
        offers.truncate(MOST_OFFERS);
        Reading::Refused { why, offers }
    }

    /// "regalé 10 moringas": of a species trays stand, and the line says nothing of which; it is read with each of them.
    fn of_each_tray_of_the_species(&self) -> Option<(Vec<String>, Vec<Offer>)> {
        /// More trays are not offered one by one.
        const MOST_TRAYS: usize = 4;
        if self.marks.iter().any(|mark| mark.is_name_of(NameOf::Tray) || matches!(mark.what, What::New(_))) {
            return None;
        }
        let at = self.marks.iter().position(|mark| matches!(mark.what, What::Species(_)))?;
        let What::Species(keys) = &self.marks[at].what else { return None };
        let is_of_it =
            |name: &str| self.known.names.species_of(NameOf::Tray, name).is_some_and(|key| keys.contains(&key));
        let standing = |name: &str| self.known.names.standing(name).unwrap_or(0);
        let all =
            self.known.all.iter().filter(|(of, name)| *of == NameOf::Tray && standing(name) > 0 && is_of_it(name));
        let trays: Vec<String> = all.map(|(_, name)| name.clone()).collect();
        let lines: Vec<(String, Offer)> = trays
            .iter()
            .take(MOST_TRAYS)
            .filter_map(|tray| {
                let mut marks = self.marks.clone();
                marks[at].what = What::Name(vec![(NameOf::Tray, tray.clone())]);
                let ways = self.ways(&marks);
                let way = ways.iter().find(|way| way.leftover.is_empty() && way.lacks.is_empty())?;
                Some((tray.clone(), self.dated(&way.drafts, self.one_day())))
            })
            .collect();
        let (named, lines): (Vec<String>, Vec<Offer>) = lines.into_iter().unzip();
        (!lines.is_empty()).then_some((named, lines))
    }

    /// "podé la mitad de la grevilea": in which of the beds where it stands?
    fn of_each_bed_of_the_species(&self) -> Option<(Vec<String>, Vec<Offer>)> {
        /// More beds are not offered one by one.
        const MOST_BEDS: usize = 4;
        let cuts = ["prune", "cut", "fell", "bunch"].iter().any(|role| self.marks.iter().any(|mark| mark.has(role)));
        if !cuts || self.marks.iter().any(|mark| matches!(mark.what, What::Name(_) | What::New(_))) {
            return None;
        }
        let keys = self.marks.iter().find_map(|mark| match &mark.what {
            What::Species(keys) => Some(keys),
            _ => None,
        })?;
        let names = self.known.names;
        let stands = |bed: &str| {
            let there = names.nurses_in(bed).into_iter().chain(names.plants_in(bed));
            there.into_iter().any(|key| keys.contains(&key))
        };
        let beds =
            self.known.all.iter().filter(|(of, bed)| *of == NameOf::Bed && stands(bed)).map(|(_, bed)| bed.clone());
        let lines: Vec<(String, Offer)> = beds
            .filter_map(|bed| {
                let mut marks = self.marks.clone();
                marks.push(named(NameOf::Bed, &bed));
                let ways = self.ways(&marks);
                let is_open = |why: &Why| matches!(why, Why::NotSaid(_) | Why::NoNumber | Why::Several);
                let way = ways.iter().find(|way| way.leftover.is_empty() && way.lacks.iter().all(is_open))?;
                Some((bed, self.dated(&way.drafts, self.one_day())))
            })
            .take(MOST_BEDS)
            .collect();
        (!lines.is_empty()).then(|| lines.into_iter().unzip())
    }

    /// Whether a reading that leaves words unread may have been meant. A bare number is a count only where about so many
    /// stand there.
    fn is_likely(&self, way: &Way) -> bool {
        /// What a word that says what happened weighs, at the least.
        const HEADED: i32 = 10;
        let bare = way.drafts.iter().filter(|(kind, _)| *kind == "counted" && way.weight < HEADED);
        bare.into_iter().all(|(_, fields)| self.known.is_a_likely_count(fields))
    }

    /// Whether words that nobody knows are not taken for a cause, a reason or a name: with a verb added they would be.
    fn takes_only_known_words(&self, way: &Way) -> bool {
        let says = |roles: &[&str]| self.marks.iter().any(|mark| roles.iter().any(|role| mark.has(role)));
        way.drafts.iter().all(|(kind, fields)| match *kind {
            "lost" => !fields.contains_key("cause") || says(&["causes.words", "pests.words"]),
            "culled" => !fields.contains_key("why") || says(&["poor"]),
            "given_out" => {
                let named = |mark: &Mark| {
                    mark.has("small.person")
                        || mark.has("small.title")
                        || mark.what == What::Unknown && mark.typed.chars().next().is_some_and(char::is_uppercase)
                };
                self.marks.iter().any(named)
            }
            _ => true,
        })
    }

    /// The readings with the verb that may have been left out: "c1 3 rats", "c1 5 to Pedro".
    fn with_a_verb(&self) -> Vec<Offer> {
        let mut offers = Vec::new();
        for role in ["die", "give", "cull", "plant", "carry"] {
            let verb = Mark {
                what: What::Word,
                typed: String::new(),
                written: String::new(),
                folded: String::new(),
                roles: vec![role],
                is_slip: false,
            };
            // A verb that nobody knows is read as the one that goes with what stands around it.
            let is_strange = |mark: &Mark| mark.what == What::Unknown && does_something(&mark.typed);
            let mut marks: Vec<Mark> = self.marks.iter().filter(|mark| !is_strange(mark)).cloned().collect();
            marks.push(verb);
            let all = self.ways(&marks);
            let fits = all.iter().find(|way| way.leftover.is_empty() && way.lacks.is_empty()).cloned();
            // A cause that is nearly a known one is offered as the known one.
            let nearly = all.iter().filter(|way| way.leftover.is_empty()).find_map(|way| {
                let is_open = |why: &Why| matches!(why, Why::CauseNearly(..) | Why::Several);
                let known = way.lacks.iter().find_map(|why| match why {
                    Why::CauseNearly(_, known) => Some(known),
                    _ => None,
                });
                known.filter(|_| way.lacks.iter().all(is_open)).map(|known| (way, known))
            });
            offers.extend(nearly.map(|(way, known)| {
                let mut drafts = way.drafts.clone();
                drafts.iter_mut().for_each(|(_, fields)| _ = fields.insert("cause".into(), known.as_str().into()));
                self.dated(&drafts, self.one_day())
            }));
            offers.extend(
                fits.filter(|way| way.drafts[0].0 != "counted" && self.takes_only_known_words(way))
                    .map(|way| self.dated(&way.drafts, self.one_day())),
            );
        }
        offers
    }

    fn what_is_missing(&self) -> Why {
        let has = |role: &str| self.marks.iter().any(|mark| mark.has(role));
        match () {
            () if has("die") || has("kill") || has("plant") || has("cull") => Why::NoTray,
            () => Why::NoReading(
                self.marks.iter().filter(|mark| mark.what == What::Unknown).map(|mark| mark.written.clone()).collect(),
            ),
        }
    }

    /// Words that are nearly a known name, and codes nobody knows.
    fn strange_names(&self) -> Vec<StrangeName> {
        let mut found = Vec::new();
        for i in 0..self.marks.len() {
            if found.len() == MOST_STRANGE {
                break;
            }
            for length in [2, 1] {
                let Some(some) = self.marks.get(i..i + length) else { continue };
                // A code has its number already.
                let is_code = matches!(some[0].what, What::New(_));
                if length > 1 && (is_code || self.known.is_of_initials(&some[0].typed)) {
                    continue;
                }
                let strange = |mark: &Mark| matches!(mark.what, What::Unknown | What::New(_));
                if !strange(&some[0]) || some.iter().any(|mark| !strange(mark) && mark.number().is_none()) {
                    continue;
                }
                let typed = some.iter().map(|mark| mark.typed.as_str()).collect::<Vec<_>>().join(" ");
                let names = self.known.nearest(&typed, None);
                let rank = |name: &String| names.iter().position(|near| near == name);
                let mut near: Vec<(NameOf, String)> =
                    self.known.all.iter().filter(|(_, name)| rank(name).is_some()).cloned().collect();
                near.sort_by_key(|(_, name)| rank(name));
                // A code made like those of lots is no tray, and a number is no slip: of names with the same number no other is meant.
                if self.known.is_like_a_lot(&typed) {
                    near.retain(|(of, _)| *of == NameOf::Lot);
                }
                let number = number_in(&typed);
                if near.iter().any(|(_, name)| number.is_some() && number_in(name) == number) {
                    near.retain(|(_, name)| number_in(name).is_none_or(|of| Some(of) == number));
                }
                if !near.is_empty() || matches!(some[0].what, What::New(_)) {
                    found.push((i, length, near));
                    break;
                }
            }
        }
        found
    }
}

/// The number that a name ends in.
fn number_in(name: &str) -> Option<u64> {
    let digits = name.len() - name.bytes().rev().take_while(u8::is_ascii_digit).count();
    name[digits..].parse().ok()
}

/// A mark that is a known name.
fn named(name_of: NameOf, name: &str) -> Mark {
    Mark {
        what: What::Name(vec![(name_of, name.to_string())]),
        typed: name.to_string(),
        written: name.to_string(),
        folded: fold(name),
        roles: Vec::new(),
        is_slip: false,
    }
}
