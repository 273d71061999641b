//! What is expected, for people: a label and a line.

use crate::base::{SpeciesKey, TrayCode};
use crate::reckon::forecast::{Judgement, Leads, Outlook};
use crate::reckon::picture::Picture;
use crate::reckon::round::Round;
use crate::wording::Wording;

/// What is expected of a tray: labels with their lines, an empty label where a line goes on.
pub fn forecast_lines(
    tray: &TrayCode,
    picture: &Picture,
    outlook: &Outlook,
    round: &Round,
    wording: &Wording,
) -> Vec<(String, String)> {
    let mut lines = Vec::new();
    let seed_stands = picture.trays.get(tray).is_some_and(|tray| tray.seed > 0);
    if let Some(told) = outlook.trays.get(tray) {
        let reasons = wording.forecast_reasons(told).join("; ");
        lines.push((wording.label_sowing(), format!("{}: {reasons}", wording.judgement_name(told.judgement))));
        if seed_stands {
            lines.push((wording.label_in_the_end(), wording.in_the_end_words(told)));
            lines.push((wording.label_last_to_come(), wording.forecast_last_day(wording.day(told.last_due))));
            lines.push((wording.label_waiting(), wording.waiting_words(told, picture.day)));
        }
        let asks = match told.judgement {
            Judgement::Failing => true,
            Judgement::Slow | Judgement::Finished => told.ask_to_sow_again,
            Judgement::TooEarly | Judgement::OnItsWay => false,
        };
        let again = outlook.again.get(tray).filter(|_| asks && seed_stands);
        lines.extend(again.map(|again| (wording.label_sow_again(), wording.sow_again_words(again))));
    }
    if let Some(stock) = outlook.stock.get(tray) {
        lines.push((wording.label_will_give(), wording.stock_words(stock)));
        let known = outlook.experience_of(&stock.species, picture);
        let known = wording.experience_words(&known);
        lines.extend(labelled_once(wording.label_known_here(), known));
        if outlook.leads == Leads::Handbook {
            lines.push((String::new(), wording.learned_ignored()));
        }
    }
    let worth = crate::reckon::forecast::worth::of_tray(&round.worth_looking, tray);
    lines.extend(labelled_once(wording.label_worth(), worth.map(|worth| wording.worth_words(worth)).collect()));
    lines
}

fn labelled_once(label: String, lines: Vec<String>) -> impl Iterator<Item = (String, String)> {
    lines.into_iter().enumerate().map(move |(at, line)| (if at == 0 { label.clone() } else { String::new() }, line))
}

/// What is known and what is coming of a species: headings with their lines.
pub fn species_lines(
    species: &SpeciesKey,
    picture: &Picture,
    outlook: &Outlook,
    wording: &Wording,
) -> Vec<(String, Vec<String>)> {
    let mut known = wording.experience_words(&outlook.experience_of(species, picture));
    if outlook.leads == Leads::Handbook {
        known.push(wording.learned_ignored());
    }
    let coming = outlook.pipelines.iter().filter(|pipeline| pipeline.species == *species);
    let coming: Vec<String> = coming.flat_map(|pipeline| wording.pipeline_words(pipeline)).collect();
    let all = [(wording.learned_heading(), known), (wording.stock_coming_heading(), coming)];
    all.into_iter().filter(|(_, lines)| !lines.is_empty()).collect()
}
