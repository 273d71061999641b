//! What a lot is still worth and how many to sow, for people.

use super::LotPage;
use crate::cli::sheet::Ink;
use crate::cli::why_text::WhyPage;
use crate::reckon::lots::{Expected, HALF_SHARE, OLD_SHARE, TEST_SEEDS};
use crate::reckon::picture::Picture;
use crate::reckon::sowing::SowingPlan;
use crate::wording::Wording;

/// The page of a lot.
pub fn why_lot_text(told: &LotPage<'_>, picture: &Picture, wording: &Wording, width: usize, colour: bool) -> String {
    let labels = [
        wording.lot_label_left(),
        wording.lot_label_kept(),
        wording.lot_label_life(),
        wording.lot_label_alive(),
        wording.lot_label_old(),
        wording.lot_label_half(),
        wording.lot_label_reckoned(),
        wording.lot_label_test(),
        wording.lot_label_retest(),
        wording.label_source(),
        wording.sowing_label_comes_up(),
        wording.sowing_label_becomes(),
        wording.sowing_label_weight(),
        wording.sowing_label_left(),
        wording.sowing_label_containers(),
    ];
    let mut page = WhyPage::with_labels(picture, wording, width, colour, &labels);
    page.sheet.heading(&wording.lot_heading(&told.lot.code, page.species(told.lot.species.as_ref())));
    let (good, said) = wording.lot_verdict(&told.outlook, picture.day);
    page.verdict(good, &said);
    kept(&mut page, told, picture, wording);
    let life = wording.lot_life(&told.outlook.life, picture.day);
    page.labelled(&wording.lot_label_life(), &life);
    page.labelled(&wording.lot_label_alive(), &wording.lot_expected(&told.outlook.viability));
    if let Ok(expected) = &told.outlook.viability {
        falls(&mut page, expected, picture, wording);
    }
    if let Some(source) = wording.lot_source(&told.outlook) {
        page.labelled(&wording.label_source(), &source);
    }
    tests(&mut page, told, picture, wording);
    sowing(&mut page, told, wording);
    page.sheet.finish()
}

fn kept(page: &mut WhyPage<'_>, told: &LotPage<'_>, picture: &Picture, wording: &Wording) {
    let lot = told.lot;
    let left = match lot.seeds_left {
        None => wording.lot_left_unknown(),
        Some(0) => wording.lot_none_left(),
        Some(left) if lot.counted => wording.seeds(left),
        Some(left) => wording.lot_left_about(wording.seeds(left)),
    };
    page.labelled(&wording.lot_label_left(), &left);
    let mut parts: Vec<String> = Vec::new();
    if let Some(spell) = lot.kept.last() {
        parts.push(wording.lot_kept_since(wording.kept_name(spell.what), wording.day(spell.from)));
    }
    if let Some(store) = lot.stores.last() {
        parts.extend(store.what.moisture_pct.map(|pct| wording.lot_moisture(wording.percent(pct / 100.0))));
        parts.extend(store.what.temp_c.map(|celsius| wording.lot_temperature(wording.number(celsius, 1))));
    }
    if let Some(day) = lot.collected {
        parts.push(wording.lot_collected(wording.day(day), picture.day.days_since(day)));
    }
    if !parts.is_empty() {
        page.labelled(&wording.lot_label_kept(), &parts.join("; "));
    }
}

fn falls(page: &mut WhyPage<'_>, told: &Expected, picture: &Picture, wording: &Wording) {
    let old = wording.lot_falls(told, told.to_old, OLD_SHARE, picture.day);
    page.labelled(&wording.lot_label_old(), &old);
    let half = wording.lot_falls(told, told.to_half, HALF_SHARE, picture.day);
    page.labelled(&wording.lot_label_half(), &half);
    page.labelled(&wording.lot_label_reckoned(), &wording.lot_reckoned(told));
}

fn tests(page: &mut WhyPage<'_>, told: &LotPage<'_>, picture: &Picture, wording: &Wording) {
    page.sheet.gap();
    if told.outlook.tests.is_empty() {
        page.labelled(&wording.lot_label_test(), &wording.lot_never_tested());
    }
    for test in &told.outlook.tests {
        page.labelled(&wording.lot_label_test(), &wording.lot_test(test));
    }
    page.labelled(&wording.lot_label_retest(), &wording.lot_retest(&told.outlook.retest, picture.day));
    page.labelled(&wording.label_source(), &wording.lot_retest_source());
}

fn sowing(page: &mut WhyPage<'_>, told: &LotPage<'_>, wording: &Wording) {
    page.sheet.gap();
    let Some(sowing) = &told.sowing else {
        page.sheet.paragraph(&wording.sowing_none_open(), Ink::Plain);
        return;
    };
    let plan = match sowing {
        Ok(plan) => plan,
        Err(why) => {
            page.verdict(false, &wording.sowing_no_plan(why));
            return;
        }
    };
    page.sheet.paragraph(&wording.sowing_heading(plan.wanted.plants), Ink::Bold);
    if !told.asked {
        let mut said = wording.sowing_for_open();
        if told.standing > 0 {
            said = format!("{said}; {}", wording.sowing_standing(told.standing));
        }
        page.sheet.indented(4, &said, Ink::Plain);
    }
    page.sheet.hanging("  > ", Ink::Plain, &wording.sowing_said(plan), Ink::Bold);
    plan_lines(page, plan, wording);
}

fn plan_lines(page: &mut WhyPage<'_>, plan: &SowingPlan, wording: &Wording) {
    page.labelled(&wording.sowing_label_comes_up(), &wording.sowing_germination(&plan.germination));
    page.labelled(&wording.sowing_label_becomes(), &wording.sowing_survival(&plan.survival));
    page.labelled(&wording.sowing_label_weight(), &wording.sowing_weight(plan.mass_g));
    if let Some(left) = wording.sowing_left(plan) {
        page.labelled(&wording.sowing_label_left(), &left);
    }
    if let Some(seeds) = plan.seeds_if_tested {
        page.labelled(&wording.lot_label_test(), &wording.sowing_if_tested(wording.seeds(TEST_SEEDS), seeds));
    }
    page.labelled(&wording.sowing_label_containers(), &wording.sowing_containers(plan));
    let source = format!("{}. {}", wording.sowing_formula(), wording.sowing_source());
    page.labelled(&wording.label_source(), &source);
}
