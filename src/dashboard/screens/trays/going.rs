//! Where a tray could go: the beds whose plan names its species, and what each still waits for beside the tray itself.

use std::collections::BTreeSet;

use crate::base::BedName;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Sheet;
use crate::reckon::picture::{Criterion, PairPicture, Rule, TrayPicture};
use crate::wording::verdict::About;

/// Beds that are named; of the rest only how many there are.
const MOST_BEDS: usize = 4;

/// Writes where a tray could go.
pub(crate) fn where_to(tray: &TrayPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let of_it = cx.book.picture.pairs.of(&tray.code).iter().map(AsRef::as_ref);
    let mut pairs: Vec<&PairPicture> = of_it.collect();
    pairs.sort_by_cached_key(|pair| (!pair.fits, reasons_of_bed(pair, tray)));
    if pairs.is_empty() {
        page.hanging("- ", Ink::Plain, &wording.not_planned(tray.species.as_ref(), &cx.book.picture), Ink::Plain);
        return;
    }
    for pair in pairs.iter().take(MOST_BEDS) {
        let missing = of_bed(pair, tray);
        let (mark, ink, text) = match missing.first() {
            _ if pair.fits => {
                let plants = wording.plants(pair.plants);
                ("+ ", Ink::Good, wording.trays_fits(&pair.bed, plants))
            }
            None => ("○ ", Ink::Good, wording.trays_bed_waits(&pair.bed, open_positions(tray, &pair.bed, cx))),
            Some(first) => ("x ", Ink::Waits, misses(pair, first, missing.len() - 1, cx)),
        };
        page.hanging(mark, ink, &text, Ink::Plain);
    }
    let more = pairs.len().saturating_sub(MOST_BEDS);
    if more > 0 {
        page.hanging("  ", Ink::Plain, &wording.trays_more_beds(more as i64), Ink::Plain);
    }
}

fn misses(pair: &PairPicture, first: &Criterion, more: usize, cx: &ScreenContext<'_>) -> String {
    let text = cx.wording.in_bed(&pair.bed, cx.wording.reason(first, About::Pair));
    if more == 0 { text } else { format!("{text} · {}", cx.wording.more_reasons(more as i64)) }
}

/// What holds the pair back beside what holds the tray back from every bed. The step in light is the tray's own matter
/// while it is still to be hardened.
fn of_bed<'a>(pair: &'a PairPicture, tray: &TrayPicture) -> Vec<&'a Criterion> {
    pair.criteria.iter().filter(|criterion| criterion.blocks && !holds_tray(tray, criterion.rule())).collect()
}

/// How many those are: of all beds nothing is put together for it.
fn reasons_of_bed(pair: &PairPicture, tray: &TrayPicture) -> usize {
    let rules: BTreeSet<Rule> = pair.held_by.iter().map(|held| held.rule).collect();
    rules.into_iter().filter(|rule| !holds_tray(tray, *rule)).count()
}

/// Whether a question is the tray's own matter, whatever the bed.
fn holds_tray(tray: &TrayPicture, rule: Rule) -> bool {
    let holds = |rule: Rule| tray.criteria.iter().any(|own| own.blocks && own.rule() == rule);
    if rule == Rule::ExposureStep { holds(Rule::Hardening) } else { holds(rule) }
}

fn open_positions(tray: &TrayPicture, bed: &BedName, cx: &ScreenContext<'_>) -> i64 {
    let line = cx.book.picture.beds.get(bed).and_then(|bed| {
        let line = bed.species.iter().find(|line| Some(&line.species) == tray.species.as_ref())?;
        Some(line.open_positions)
    });
    i64::from(line.unwrap_or(0))
}
