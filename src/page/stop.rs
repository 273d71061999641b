//! Why a stop of the round: what it is for, until when, what is lost, and what holds a bed back at a glance.

use std::collections::BTreeMap;

use super::care::Care;
use super::why::say_sick;
use super::{Asked, Facts, Mark, Page, Tone};
use crate::base::SpeciesKey;
use crate::reckon::field::longest_first;
use crate::reckon::forecast::worth::WorthLooking;
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::{BedPicture, Criterion, Rule};
use crate::reckon::round::Stop;
use crate::reckon::round::stop::handled::nurses;
use crate::wording::page::Labelled;
use crate::wording::round::RoundOn;
use crate::wording::verdict::About;

/// Why a stop is on the round. Of the thing it is about its own page says more.
pub(crate) fn why_stop(stop: &Stop, worth: Option<&WorthLooking>, asked: Asked<'_>) -> Page {
    let wording = asked.wording;
    let on = RoundOn { day: asked.picture.day, species: &asked.picture.site.species };
    let mut page = asked.page();
    page.heading(wording.stop_about(stop.task, &stop.subject, asked.picture));
    page.sentence(wording.stop_place(&stop.at, &stop.subject));
    page.sentence(wording.round_reason(&stop.why, on));
    page.sentence(wording.until_words(stop, on));
    page.sentence(wording.or_else_lost(stop));
    let lines: Vec<String> = stop.cautions().into_iter().map(|caution| wording.caution_words(caution)).collect();
    let said = format!("{} {}", lines.join(" "), wording.caution_leads());
    let mut pairs: Vec<Labelled> = if lines.is_empty() { Vec::new() } else { vec![(wording.label_care(), said)] };
    // A tray and a lot say it on their own page.
    if stop.tray().is_none() && stop.lot().is_none() {
        pairs.extend(asked.dangers(&stop.plants_handled(asked.picture)));
    }
    let mut rest = vec![(wording.label_worth(), wording.stop_reckoned(stop))];
    rest.extend(worth.map(|worth| (String::new(), wording.worth_words(worth))));
    rest.push((wording.label_source(), wording.source_words(&stop.source)));
    page.facts(Facts { pairs, rest, entries: stop.entries.clone() });
    page
}

/// Why a bed is open or not, for all its species at once; `all` shows the rest.
pub(crate) fn why_bed_folded(bed: &BedPicture, all: &str, asked: Asked<'_>) -> Page {
    let mut page = asked.page();
    let species: Vec<SpeciesKey> = bed.species.iter().map(|line| line.species.clone()).collect();
    let names: Vec<String> = species.iter().map(|key| asked.species(Some(key))).collect();
    page.heading(asked.wording.why_bed_heading(&bed.name, names.join(", ")));
    add_in_short(bed, None, asked, &mut page);
    page.facts(asked.dangers(&[species, nurses(bed)].concat()));
    page.gap();
    page.sentence(asked.wording.why_rest(all));
    page
}

/// A bed as it stands for all its species at once: each thing that holds it back or asks for care once, with the species
/// it is so for where it is not so for all; the rest by name. Care for the stop above it is said there.
pub(crate) fn bed_in_short(bed: &BedPicture, told: &Stop, asked: Asked<'_>) -> Page {
    let mut page = asked.page();
    page.gap();
    if bed.species.is_empty() {
        page.sentence(asked.wording.teach_plan(&bed.name));
        return page;
    }
    add_in_short(bed, Some(told), asked, &mut page);
    page.gap();
    page.sentence(asked.wording.why_rest_in_beds());
    page
}

/// How a question is answered, which it is, and the sentence.
type Said = (Answered, Rule, String);

fn add_in_short(bed: &BedPicture, told: Option<&Stop>, asked: Asked<'_>, page: &mut Page) {
    let mut care = Care::said_of(told);
    let wording = asked.wording;
    for line in &bed.species {
        let (open, text) = wording.bed_line_words(line);
        page.verdict(open, format!("{}: {text}", asked.species(Some(&line.species))));
    }
    let mut pressing: Vec<(Said, Vec<&SpeciesKey>)> = Vec::new();
    let mut named: BTreeMap<Answered, Vec<String>> = BTreeMap::new();
    let all = || bed.species.iter().flat_map(|line| line.criteria.iter().map(move |one| (line, one)));
    let together: Vec<Criterion> = all().map(|(_, criterion)| criterion.clone()).collect();
    // What lasts longest for one of the species comes first, as for each alone.
    let in_order = longest_first(&together, asked.picture.day);
    for criterion in in_order.iter().filter(|criterion| criterion.answered() <= Answered::Warns) {
        let said = (criterion.answered(), criterion.rule(), wording.reason(criterion, About::Bed));
        if pressing.iter().all(|(known, _)| *known != said) {
            pressing.push((said, Vec::new()));
        }
    }
    pressing.sort_by_key(|((answered, ..), _)| *answered);
    for (line, criterion) in all() {
        let said = (criterion.answered(), criterion.rule(), wording.reason(criterion, About::Bed));
        if let Some((_, of)) = pressing.iter_mut().find(|(known, _)| *known == said) {
            of.push(&line.species);
        }
    }
    for (_, criterion) in all() {
        let name = wording.rule_name(criterion.rule());
        // What presses for one species is not called met for the others beside it.
        let is_pressing = pressing.iter().any(|((_, rule, _), _)| *rule == criterion.rule());
        let names = named.entry(criterion.answered()).or_default();
        if !is_pressing && !names.contains(&name) {
            names.push(name);
        }
    }
    named.retain(|_, names| !names.is_empty());
    page.gap();
    for ((answered, _, reason), of) in pressing {
        let of_all = of.len() == bed.species.len();
        let of: Vec<String> = of.into_iter().map(|key| asked.species(Some(key))).collect();
        let text = if of_all { reason } else { format!("{}: {reason}", of.join(", ")) };
        page.marked(0, Mark::Answered(answered), text, Tone::Plain);
    }
    for (answered, names) in named {
        let text = format!("{}: {}", wording.answered_words(answered), names.join(", "));
        page.marked(0, Mark::Answered(answered), text, Tone::Plain);
    }
    say_sick(bed, (told, &mut care), asked, page);
    care.say_of(&together, asked, page);
}
