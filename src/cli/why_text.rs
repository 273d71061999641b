//! Why, for people: every criterion of a tray, a bed or a pair, with where it comes from.

use super::ready_text::page_top;
use super::sheet::{Ink, Sheet};
use crate::base::SpeciesKey;
use crate::base::columns::{left_aligned, width_of};
use crate::reckon::growth::{TrayGrowth, tray_growth};
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::{BedPicture, BedSpecies, Criterion, PairPicture, Picture, TrayPicture};
use crate::wording::Wording;
use crate::wording::verdict::About;

/// Blanks before the labels of a criterion.
const INDENT: usize = 4;

/// Why a tray is ready or not.
///
/// `expected` are lines with their labels of what will come of it.
pub(crate) fn why_tray_text(
    tray: &TrayPicture,
    picture: &Picture,
    expected: &[(String, String)],
    wording: &Wording,
    width: usize,
    colour: bool,
) -> String {
    let mut page = WhyPage::new(picture, wording, width, colour);
    page.sheet.heading(&wording.why_tray_heading(&tray.code, page.species(tray.species.as_ref())));
    page.verdict(tray.ready, &if tray.ready { wording.why_ready() } else { wording.why_not_ready() });
    page.facts(&wording.tray_facts(tray));
    page.expected(expected);
    page.criteria(&tray.criteria, About::Tray);
    let profile = tray.species.as_ref().and_then(|key| picture.site.profile(key));
    let growth = tray_growth(&tray.story, profile.map(|profile| &**profile), picture.day);
    if tray.standing > 0 {
        page.growth(&growth);
    }
    page.sheet.finish()
}

/// Why a bed is open or not, for one species or for every planned one.
pub(crate) fn why_bed_text(
    bed: &BedPicture,
    species: Option<&SpeciesKey>,
    picture: &Picture,
    wording: &Wording,
    width: usize,
    colour: bool,
) -> String {
    let mut page = WhyPage::new(picture, wording, width, colour);
    let asked: Vec<&BedSpecies> =
        bed.species.iter().filter(|one| species.is_none_or(|wanted| one.species == *wanted)).collect();
    for one in &asked {
        page.sheet.heading(&wording.why_bed_heading(&bed.name, page.species(Some(&one.species))));
        let (open, message) = wording.bed_line_words(one);
        page.verdict(open, &message);
        page.criteria(&one.criteria, About::Bed);
    }
    if asked.is_empty() {
        page.sheet.gap();
        let message = match species {
            Some(key) => wording.refused_not_planned(&bed.name, page.species(Some(key))),
            None => wording.teach_plan(&bed.name),
        };
        page.sheet.paragraph(&message, Ink::Plain);
    }
    page.sheet.finish()
}

/// Why a tray fits a bed or not.
pub(crate) fn why_pair_text(
    pair: &PairPicture,
    picture: &Picture,
    wording: &Wording,
    width: usize,
    colour: bool,
) -> String {
    let mut page = WhyPage::new(picture, wording, width, colour);
    page.sheet.heading(&wording.why_pair_heading(&pair.tray, &pair.bed));
    let message = if pair.fits { wording.why_fits(wording.plants(pair.plants)) } else { wording.why_fits_not() };
    page.verdict(pair.fits, &message);
    page.criteria(&pair.criteria, About::Pair);
    page.sheet.finish()
}

/// A page of labelled lines.
pub(super) struct WhyPage<'a> {
    picture: &'a Picture,
    wording: &'a Wording,
    /// Its lines.
    pub(crate) sheet: Sheet,
    label_room: usize,
}

impl<'a> WhyPage<'a> {
    fn new(picture: &'a Picture, wording: &'a Wording, width: usize, colour: bool) -> WhyPage<'a> {
        let mut labels = wording.fact_labels();
        labels.extend([
            wording.label_why(),
            wording.label_in_the_end(),
            wording.label_last_to_come(),
            wording.label_sow_again(),
            wording.label_will_give(),
            wording.label_known_here(),
            wording.label_worth(),
        ]);
        let label_room = labels.iter().map(|label| width_of(label)).max().unwrap_or(0);
        let mut sheet = Sheet::new(width, colour);
        page_top(picture, wording, &mut sheet);
        WhyPage { picture, wording, sheet, label_room }
    }

    /// A page with labels of its own.
    pub(crate) fn with_labels(
        picture: &'a Picture,
        wording: &'a Wording,
        width: usize,
        colour: bool,
        labels: &[String],
    ) -> WhyPage<'a> {
        let mut page = WhyPage::new(picture, wording, width, colour);
        page.label_room = labels.iter().map(|label| width_of(label)).max().unwrap_or(0);
        page
    }

    /// The name of a species.
    pub(crate) fn species(&self, key: Option<&SpeciesKey>) -> String {
        key.map_or_else(
            || self.wording.species_unknown(),
            |key| self.wording.species_of(key, &self.picture.site.species),
        )
    }

    /// What is said first, good or not.
    pub(crate) fn verdict(&mut self, good: bool, message: &str) {
        let (mark, ink) = if good { ("+ ", Ink::Ready) } else { ("x ", Ink::Waits) };
        self.sheet.hanging(mark, ink, message, Ink::Bold);
    }

    /// A line behind its label.
    pub(crate) fn labelled(&mut self, label: &str, text: &str) {
        let beginning = format!("{}{}  ", " ".repeat(INDENT), left_aligned(label, self.label_room));
        self.sheet.hanging(&beginning, Ink::Plain, text, Ink::Plain);
    }

    /// Facts behind their labels.
    pub(crate) fn facts(&mut self, facts: &[(String, String)]) {
        facts.iter().for_each(|(label, message)| self.labelled(label, message));
    }

    fn expected(&mut self, lines: &[(String, String)]) {
        if lines.is_empty() {
            return;
        }
        self.sheet.gap();
        self.sheet.hanging("= ", Ink::Plain, &self.wording.forecast_heading(), Ink::Bold);
        for (label, line) in lines {
            self.labelled(label, line);
        }
    }

    fn growth(&mut self, growth: &TrayGrowth) {
        let lines = self.wording.growth_lines(growth);
        if lines.is_empty() {
            return;
        }
        self.sheet.heading(&self.wording.growth_heading());
        self.facts(&lines);
        self.facts(&self.wording.growth_formulas(growth));
    }

    fn criteria(&mut self, criteria: &[Criterion], about: About) {
        if criteria.is_empty() {
            self.sheet.paragraph(&self.wording.why_nothing_asked(), Ink::Plain);
        }
        let room = criteria.iter().map(|one| width_of(&self.wording.rule_name(one.rule()))).max().unwrap_or(0);
        for criterion in criteria {
            self.criterion(criterion, about, room);
        }
    }

    fn criterion(&mut self, criterion: &Criterion, about: About, name_room: usize) {
        let wording = self.wording;
        let answered = criterion.answered();
        self.sheet.gap();
        let name = left_aligned(&wording.rule_name(criterion.rule()), name_room);
        let beginning = format!("{} {name}  ", answered.mark());
        self.sheet.hanging(&beginning, ink_of(answered), &wording.answered_words(answered), Ink::Bold);
        self.labelled(&wording.label_why(), &wording.reason(criterion, about));
        self.facts(&wording.criterion_facts(criterion));
        if !criterion.entries.is_empty() {
            let entries: Vec<String> = criterion.entries.iter().map(ToString::to_string).collect();
            self.labelled(&wording.label_entries(), &entries.join(", "));
        }
    }
}

fn ink_of(answered: Answered) -> Ink {
    match answered {
        Answered::HoldsBack | Answered::UnknownHoldsBack | Answered::Warns => Ink::Waits,
        Answered::Met => Ink::Ready,
        Answered::Unmet | Answered::Unknown => Ink::Plain,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cli::test_picture::small;
    use crate::reckon::forecast::{ForecastBasis, outlook};
    use crate::reckon::round;
    use crate::wording::Lang;

    fn every_page(width: usize, lang: Lang, colour: bool) -> Vec<String> {
        let (picture, wording) = (small(), Wording::new(lang));
        let (told, due) = (outlook(&picture, ForecastBasis::OwnRecords), round(&picture));
        let trays = picture.trays.values().map(|tray| {
            let mut expected = wording.forecast_lines(&tray.code, &picture, &told, &due.worth_looking);
            expected.extend(wording.forecast_formulas(&tray.code, &picture, &told));
            why_tray_text(tray, &picture, &expected, &wording, width, colour)
        });
        let beds = picture.beds.values().map(|bed| why_bed_text(bed, None, &picture, &wording, width, colour));
        let pairs = picture.pairs.iter().map(|pair| why_pair_text(pair, &picture, &wording, width, colour));
        trays.chain(beds).chain(pairs).collect()
    }

    #[test]
    fn no_line_is_wider_than_the_page_in_either_language() {
        for lang in Lang::ALL {
            for width in 40..=120 {
                for line in every_page(width, lang, false).iter().flat_map(|page| page.lines()) {
                    assert!(width_of(line) <= width, "{width}: {line}");
                    assert!(!line.contains('\u{1b}'));
                }
            }
        }
        assert!(every_page(80, Lang::En, true).iter().all(|page| page.contains("\u{1b}[")));
    }

    #[test]
    fn a_pair_shows_every_question_with_what_is_needed_known_and_its_source() {
        let picture = small();
        let pair = picture.pairs.iter().last().unwrap();
        let text = why_pair_text(pair, &picture, &Wording::new(Lang::En), 80, false);
        insta::assert_snapshot!(text, @r#"
Tumbaro school nursery                                        today, 14 Mar 2026

Tray cof-031 for bed Upper terrace
x does not fit

+ days since sowing  met
    why          310 days old, 210 needed
    needed       at least 210 d
    known        310 d (counted)
    expected     since 4 Dec 2025
    source       Wintgens 2004, Coffee
    entries      k3f9:12

x step in light      holds it back
    why          stood in 30 % light, this bed has 60 %: 2.0 times as bright,
                 bring it out in 2 steps first
    needed       at most 1.6 times as bright
    known        30 % to 60 % light, 2.0 times as bright (reckoned)
    source       common practice

? light now          not known, holds it back
    why          the light is not known: read the light in this bed
    needed       30 to 50 % light
    known        not known
    source       common practice for young arabica

x weeding            holds it back
    why          weeding is not written down: weed the rings, then write it
    needed       weeded, at most 30 d ago
    known        no (reckoned)
    source       common practice
"#);
    }

    #[test]
    fn a_species_no_bed_plans_is_said_so() {
        let picture = small();
        let bed = &picture.beds[&crate::base::BedName::new("Lower terrace").unwrap()];
        let avocado = SpeciesKey::new("AVO");
        let text = why_bed_text(bed, Some(&avocado), &picture, &Wording::new(Lang::En), 80, false);
        assert!(text.contains("Lower terrace does not plan avocado"), "{text}");
    }
}
