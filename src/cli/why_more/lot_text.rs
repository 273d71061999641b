//! What a lot is still worth and how many to sow, for people.

use super::LotPage;
use crate::cli::sheet::Ink;
use crate::cli::why_text::WhyPage;
use crate::reckon::picture::Picture;
use crate::reckon::sowing::SowingAsked;
use crate::wording::Wording;

/// The page of a lot.
pub(crate) fn why_lot_text(
    told: &LotPage<'_>,
    picture: &Picture,
    wording: &Wording,
    width: usize,
    colour: bool,
) -> String {
    let mut page = WhyPage::with_labels(picture, wording, width, colour, &wording.lot_labels());
    page.sheet.heading(&wording.lot_heading(&told.lot.code, page.species(told.lot.species.as_ref())));
    let (good, text) = wording.lot_verdict(&told.outlook, picture.day);
    page.verdict(good, &text);
    page.plants(told.lot.species.as_slice());
    page.facts(&wording.lot_worth_lines(told.lot, &told.outlook, picture.day));
    page.sheet.gap();
    page.facts(&wording.lot_test_lines(&told.outlook, picture.day));
    sowing(&mut page, &told.sowing, wording);
    page.sheet.finish()
}

/// How many to sow: for whom, the number, what it rests on.
pub(super) fn sowing(page: &mut WhyPage<'_>, asked: &SowingAsked, wording: &Wording) {
    page.sheet.gap();
    let Some(sowing) = &asked.plan else {
        page.sheet.paragraph(&wording.sowing_nothing(asked), Ink::Plain);
        return;
    };
    let plan = match sowing {
        Ok(plan) => plan,
        Err(why) => {
            if let Some(said) = wording.sowing_for_words(asked) {
                page.sheet.indented(4, &said, Ink::Plain);
            }
            page.verdict(false, &wording.sowing_no_plan(why));
            return;
        }
    };
    page.sheet.paragraph(&wording.sowing_heading(plan.wanted.plants), Ink::Bold);
    if let Some(text) = wording.sowing_for_words(asked) {
        page.sheet.indented(4, &text, Ink::Plain);
    }
    page.sheet.hanging("  > ", Ink::Plain, &wording.sowing_said(plan), Ink::Bold);
    if let Some(said) = wording.sowing_gross_words(asked) {
        page.sheet.indented(4, &said, Ink::Plain);
    }
    page.facts(&wording.sowing_lines(plan));
    page.facts(&[wording.sowing_formula_line()]);
}
