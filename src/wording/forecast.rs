//! What is expected of a tray, a species and a look, in words.

use super::Wording;
use super::number::{rounded, rounded_days};
use crate::base::{Day, Range};
use crate::reckon::forecast::worth::WorthLooking;
use crate::reckon::forecast::{
    Because, Experience, InMonth, Judgement, Learned, Pipeline, Reach, SowAgain, TrayForecast, TrayStock,
};

/// Days learned: what the handbook says and what was seen stays, what is reckoned of both is no finer than it is known.
fn about_days(known: Learned) -> Learned {
    let reckoned = known.here.is_some() && known.handbook.is_some();
    Learned { used: if reckoned { known.used.map(rounded_days) } else { known.used }, ..known }
}

fn whole(number: f64) -> i64 {
    number.round().clamp(0.0, 1e9) as i64
}

/// From this chance on it "probably" changes what is done. Ours, as the next two.
const PROBABLY: f64 = 0.6;
/// From this one on it "may well".
const MAY_WELL: f64 = 0.3;
/// From this one on it "may".
const MAY: f64 = 0.1;
/// Where the ends lie further apart than this, only the month of a likely day is said. Ours.
const MONTHS_APART_DAYS: i32 = 45;

impl Wording {
    /// Where a sowing stands, in a word or two.
    pub(crate) fn judgement_name(&self, judgement: Judgement) -> String {
        match judgement {
            Judgement::TooEarly => self.forecast_too_early(),
            Judgement::OnItsWay => self.forecast_on_its_way(),
            Judgement::Slow => self.forecast_slow(),
            Judgement::Failing => self.forecast_failing(),
            Judgement::Finished => self.forecast_finished(),
        }
    }

    /// Seedlings as a range, one number where it is exact.
    pub(crate) fn seedlings_range(&self, range: Range) -> String {
        let (low, likely, high) = (range.low.floor(), range.likely.round(), range.high.ceil());
        if high - low < 0.5 {
            return self.seedlings_count(whole(likely));
        }
        self.seedlings_between(self.number(low, 0), self.number(likely, 0), self.number(high, 0))
    }

    /// Why a sowing stands where it stands.
    pub(crate) fn forecast_reasons(&self, told: &TrayForecast, day: Day) -> Vec<String> {
        told.because.iter().filter_map(|because| self.because(because, told, day)).collect()
    }

    fn because(&self, because: &Because, told: &TrayForecast, day: Day) -> Option<String> {
        Some(match because {
            Because::BeforeDay(day) => self.because_before_day(self.day(*day)),
            Because::NotCounted => self.because_not_counted(),
            Because::Up { emerged, due, expected, look } => {
                let about = |number: &f64| self.number(rounded(*number), 0);
                self.because_up(self.number(*emerged, 0), about(due), about(expected), self.day(*look))
            }
            // What was to be by a day that is past is counted, not foretold.
            Because::WillBe(_) if told.last_due < day && told.last_look >= Some(told.last_due) => return None,
            Because::WillBe(_) if told.last_due < day => self.because_over(self.day(told.last_due)),
            Because::WillBe(range) => self.because_will_be(self.seedlings_range(*range), self.day(told.last_due)),
            Because::QuietFor { days, needed } => self.because_quiet(*days, *needed),
            Because::LittleToCome(seedlings) => self.because_little(self.seedlings_count(whole(*seedlings))),
            Because::SeveralSowings { sowings, youngest, of_youngest, apart } => {
                let said = self.because_several(*sowings, self.seedlings_range(*of_youngest), self.day(*youngest));
                if *apart { said } else { format!("{said}, {}", self.because_not_apart()) }
            }
            Because::DeathsUnseen => self.because_deaths(),
        })
    }

    /// How many come up in the end.
    pub(crate) fn in_the_end_words(&self, told: &TrayForecast) -> String {
        self.forecast_in_the_end(self.seedlings_range(told.in_the_end), told.seeds)
    }

    /// Until when waiting is worth the bench.
    pub(crate) fn waiting_words(&self, told: &TrayForecast, day: Day) -> String {
        let until = self.day(told.stop_waiting);
        if day > told.stop_waiting { self.forecast_waited(until) } else { self.forecast_wait_until(until) }
    }

    /// How many fewer a sowing gives, and whether sowing again still reaches the rains, and by when.
    pub(crate) fn sow_again_words(&self, again: &SowAgain) -> String {
        let fewer = whole(rounded(again.missing));
        let reach = self.again_reach(again);
        if fewer == 0 { reach } else { format!("{}; {reach}", self.again_fewer(fewer)) }
    }

    /// How many are lacking after all that comes of other trays, and whether sowing again still reaches the rains.
    pub(crate) fn sow_again_lacking(&self, again: &SowAgain) -> String {
        format!("{}; {}", self.again_missing(whole(rounded(again.missing))), self.again_reach(again))
    }

    fn again_reach(&self, again: &SowAgain) -> String {
        let day = |day: Day| self.day(day);
        let days = rounded_days(f64::from(again.usual_days)) as i32;
        match again.reach {
            Reach::NoRains => self.again_no_rains(days),
            Reach::Same { rains, sow_by } => self.again_same(day(sow_by), day(rains.last_safe), days),
            Reach::Later { missed, was_by, rains, sow_by } => match rains.zip(sow_by) {
                Some((rains, by)) => {
                    self.again_later(day(missed.last_safe), day(was_by), day(by), day(rains.last_safe), days)
                }
                None => self.again_too_late(day(missed.last_safe), day(was_by), days),
            },
        }
    }

    /// How many plants a tray gives, and when.
    pub(crate) fn stock_words(&self, stock: &TrayStock) -> String {
        let plants = self.plants_range(stock.plants);
        match stock.on {
            None if stock.waits_for.is_empty() => self.stock_not_dated(plants),
            None => {
                let names: Vec<String> = stock.waits_for.iter().map(|rule| self.rule_name(*rule)).collect();
                self.stock_waits(plants, names.join(", "))
            }
            Some(on) if on.low == on.high && stock.survival == 1.0 && stock.culls == 0.0 => self.stock_line(plants),
            Some(on) if on.low == on.high => self.stock_on(plants, self.day(on.likely)),
            // Over months no day is likely.
            Some(on) if on.high.days_since(on.low) > MONTHS_APART_DAYS => {
                let (year, month, _) = on.likely.ymd();
                let month = format!("{} {year}", self.month_short(month));
                self.stock_about(plants, month, self.day(on.low), self.day(on.high))
            }
            Some(on) => {
                let day = self.day_between(self.day(on.likely), self.day(on.low), self.day(on.high));
                self.stock_on(plants, day)
            }
        }
    }

    /// What the handbook and this nursery say of a species, a line for each figure of which anything is known.
    pub(crate) fn experience_words(&self, known: &Experience) -> Vec<String> {
        let days = |days: f64| self.learned_days_of(self.number(days, 0));
        let share = |share: f64| self.percent(share);
        let all = [
            self.learned_words(self.learned_days(), about_days(known.days_to_plantable), &days),
            self.learned_words(self.learned_germination(), known.germination, &share),
            self.learned_words(self.learned_survival(), known.survival, &share),
            self.learned_words(self.learned_culls(), known.culls, &share),
        ];
        all.into_iter().flatten().collect()
    }

    fn learned_words(&self, what: String, known: Learned, plain: &dyn Fn(f64) -> String) -> Option<String> {
        let trays = i64::try_from(known.trays).unwrap_or(i64::MAX);
        let figure = |value: f64| match known.between.filter(|_| Some(value) == known.here) {
            Some((low, high)) => self.learned_between(plain(value), plain(low), plain(high)),
            None => plain(value),
        };
        let said = match (known.handbook, known.here.filter(|_| known.trays > 0)) {
            (Some(handbook), Some(here)) => {
                let used = known.used.unwrap_or(handbook);
                self.learned_both(what, figure(handbook), figure(here), trays, figure(used))
            }
            (None, Some(here)) => self.learned_here(what, figure(here), trays),
            (Some(handbook), None) => self.learned_handbook(what, figure(handbook)),
            (None, None) => return None,
        };
        let open = i64::try_from(known.censored).unwrap_or(i64::MAX);
        Some(if open > 0 { format!("{said}; {}", self.learned_open(open)) } else { said })
    }

    /// What is coming of a species, a line a month.
    pub(crate) fn pipeline_words(&self, pipeline: &Pipeline) -> Vec<String> {
        let count = |trays: usize| i64::try_from(trays).unwrap_or(i64::MAX);
        let month = |one: &InMonth| {
            let plants = self.plants_range(one.plants);
            self.coming_month(self.month_short(one.month), one.year, plants, count(one.trays))
        };
        let mut lines: Vec<String> = pipeline.months.iter().map(month).collect();
        lines.extend(
            pipeline.undated.map(|(trays, plants)| self.stock_coming_undated(self.plants_range(plants), count(trays))),
        );
        lines
    }

    /// How the worth of a look is reckoned.
    pub(crate) fn worth_words(&self, worth: &WorthLooking) -> String {
        let said = self.worth_reckoning(
            self.task_name(worth.task),
            self.percent(worth.chance),
            self.number(worth.plants, 0),
            self.decimal(worth.nearness, 2),
            self.number(worth.minutes, 1),
            self.number(worth.saved_per_minute, 2),
        );
        match worth.last_day {
            Some(day) => format!("{said}; {}", self.worth_by(self.day(day))),
            None => said,
        }
    }

    /// What a look is worth, in words: whether it changes what is done, the plants that hang on it, the minutes it takes.
    pub(crate) fn worth_said_words(&self, worth: &WorthLooking) -> String {
        let chance = match worth.chance {
            PROBABLY.. => self.chance_probably(),
            MAY_WELL.. => self.chance_may_well(),
            MAY.. => self.chance_may(),
            _ => self.chance_hardly(),
        };
        let (plants, minutes) = (self.rough_number(worth.plants, worth.most), self.number(worth.minutes.ceil(), 0));
        let said = self.worth_said(self.task_name(worth.task), chance, plants, minutes);
        match worth.last_day {
            Some(day) => format!("{said}; {}", self.worth_by(self.day(day))),
            None => said,
        }
    }

    /// A look worth making: what, minutes, and the plants that hang on it.
    pub(crate) fn worth_line_words(&self, what: String, worth: &WorthLooking) -> String {
        self.worth_line(what, self.number(worth.minutes.ceil(), 0), self.rough_number(worth.plants, worth.most))
    }
}
