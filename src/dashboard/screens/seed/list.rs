//! Which lots the list shows, and in which order.

use crate::base::Day;
use crate::base::LotCode;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::reckon::seed::{LotState, SeedLife, life, lot_state, test_due_from};
use crate::reckon::stock::LotStory;

/// A lot with how it stands.
#[derive(Clone, Debug)]
pub(crate) struct LotLine<'a> {
    /// Its story.
    pub(crate) lot: &'a LotStory,
    /// Its life, where it is known.
    pub(crate) life: Option<SeedLife>,
    /// How it stands.
    pub(crate) state: LotState,
}

impl LotLine<'_> {
    /// The day from which a test is due, as the round has it.
    pub(crate) fn test_due_from(&self, cx: &ScreenContext<'_>) -> Option<Day> {
        let picture = &cx.book.picture;
        let profile = self.lot.species.as_ref().and_then(|key| picture.site.profile(key));
        test_due_from(self.lot, profile.map(|profile| &**profile), cx.day())
    }
}

/// The mark and ink of a lot's state; the mark stands beside its word.
pub(crate) fn state_mark(state: LotState) -> (&'static str, Ink) {
    match state {
        LotState::Keeps => ("●", Ink::Good),
        LotState::Ending => ("!", Ink::Waits),
        LotState::Over => ("▲", Ink::Danger),
        LotState::Dead => ("x", Ink::Danger),
        LotState::LifeUnknown => ("?", Ink::Plain),
        LotState::UsedUp => ("_", Ink::Plain),
        LotState::Held => ("-", Ink::Waits),
    }
}

fn line_of<'a>(lot: &'a LotStory, cx: &ScreenContext<'_>) -> LotLine<'a> {
    let profile = lot.species.as_ref().and_then(|key| cx.book.picture.site.profile(key)).map(|profile| &**profile);
    let life = profile.and_then(|profile| life(lot, profile));
    let state = lot_state(lot, profile, life.as_ref(), cx.day());
    LotLine { lot, life, state }
}

/// A lot with how it stands.
pub(crate) fn chosen<'a>(code: Option<&LotCode>, cx: &ScreenContext<'a>) -> Option<LotLine<'a>> {
    cx.book.picture.lots.get(code?).map(|lot| line_of(lot, cx))
}

/// The lots: what must be sown first before all, then those that live longest on, what is dead and used up last.
pub(crate) fn listed<'a>(cx: &ScreenContext<'a>, used_up_too: bool) -> Vec<LotLine<'a>> {
    let all = cx.book.picture.lots.values().map(|lot| line_of(lot, cx));
    let mut lines: Vec<LotLine<'a>> = all.filter(|line| used_up_too || line.state != LotState::UsedUp).collect();
    lines.sort_by_key(|line| {
        let days = line.life.as_ref().map_or(i32::MAX, |life| life.days_left(cx.day()));
        (urgency(line.state), days, line.lot.code.clone())
    });
    lines
}

fn urgency(state: LotState) -> u8 {
    match state {
        LotState::Ending => 0,
        LotState::Over => 1,
        LotState::Keeps => 2,
        LotState::LifeUnknown => 3,
        LotState::Held => 4,
        LotState::Dead => 5,
        LotState::UsedUp => 6,
    }
}

/// How many lots are used up.
pub(crate) fn used_up(cx: &ScreenContext<'_>) -> usize {
    cx.book.picture.lots.values().filter(|lot| lot.seeds_left == Some(0)).count()
}
