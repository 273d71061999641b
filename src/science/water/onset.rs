//! When the rains began: four published rules on a record of daily rain. History only: what comes after has to be known.
//!
//! Sources: Sivakumar 1988, Agricultural and Forest Meteorology 42:295 (from memory; the form of an open script); Stern,
//! Dennett & Garbutt 1981, Journal of Climatology 1:59 (from memory; defaults of an open climate script); the rule of the
//! climate service of the International Research Institute (its code and test data seen); AGRHYMET / FAO, blocks of ten days
//! (as coded in an open script).

use crate::science::water::root_zone::MOST_RAIN_MM;
use crate::science::wrong_input::{self, WrongInput};

/// Days of a block of the rule of blocks.
const BLOCK_LENGTH: usize = 10;

/// A rule for the start of the rains.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum OnsetRule {
    /// 20 mm in 3 days of which one is wet (over 1 mm), no 7 dry days in a row in the next 21; its first wet day.
    ClimateService,
    /// 20 mm in 3 days, no more than 7 dry days (up to 1 mm) in a row in the next 30; the last of the 3 days.
    Sivakumar,
    /// 20 mm in 2 days, no 10 dry days (up to 0.85 mm) in a row in the next 30; the second day.
    Stern,
    /// 25 mm in a block of ten days from the first day of the record on, 20 mm in each of the next two; the last day of the
    /// first block.
    Blocks,
}

impl OnsetRule {
    /// Every rule.
    pub(crate) const ALL: [OnsetRule; 4] =
        [OnsetRule::ClimateService, OnsetRule::Sivakumar, OnsetRule::Stern, OnsetRule::Blocks];
}

/// What a record tells of the start of the rains.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Onset {
    /// On this day of the record, from 0.
    Began(usize),
    /// Rain enough fell by this day, and the record ends before it can be told whether a dry run followed.
    NotYetKnown(usize),
    /// On no day of the record.
    None,
}

/// A spell of rain and the dry run that would undo it.
struct Spell {
    days: usize,
    total_mm: f64,
    /// A day with more is wet.
    wet_over_mm: f64,
    /// So many dry days in a row undo it,
    dry_run: usize,
    /// in so many days after the day told.
    ahead: usize,
    /// Whether the first wet day of the spell is told, else its last day.
    tells_first_wet: bool,
}

/// The start of the rains in a record of daily rain (mm, 0 to 2,000 each) by a rule: the first day that holds.
///
/// # Errors
/// Rain outside of that, or no number.
pub(crate) fn onset(rule: OnsetRule, rain_mm: &[f64]) -> Result<Onset, WrongInput> {
    for &rain in rain_mm {
        wrong_input::within("rain", rain, 0.0, MOST_RAIN_MM)?;
    }
    let spell = |days, wet_over_mm, dry_run, ahead, tells_first_wet| Spell {
        days,
        total_mm: 20.0,
        wet_over_mm,
        dry_run,
        ahead,
        tells_first_wet,
    };
    Ok(match rule {
        OnsetRule::ClimateService => by_spell(rain_mm, &spell(3, 1.0, 7, 21, true)),
        OnsetRule::Sivakumar => by_spell(rain_mm, &spell(3, 1.0, 8, 30, false)),
        OnsetRule::Stern => by_spell(rain_mm, &spell(2, 0.85, 10, 30, false)),
        OnsetRule::Blocks => by_blocks(rain_mm, 25.0, 20.0),
    })
}

fn by_spell(rain_mm: &[f64], rule: &Spell) -> Onset {
    for (begin, days) in rain_mm.windows(rule.days).enumerate() {
        let wet = days.iter().position(|rain| *rain > rule.wet_over_mm);
        let Some(wet) = wet.filter(|_| days.iter().sum::<f64>() >= rule.total_mm) else { continue };
        let told = begin + if rule.tells_first_wet { wet } else { rule.days - 1 };
        let ahead = &rain_mm[told + 1..(told + 1 + rule.ahead).min(rain_mm.len())];
        if longest_dry(ahead, rule.wet_over_mm) >= rule.dry_run {
            continue;
        }
        return if ahead.len() == rule.ahead { Onset::Began(told) } else { Onset::NotYetKnown(told) };
    }
    Onset::None
}

/// Most dry days in a row.
fn longest_dry(rain_mm: &[f64], wet_over_mm: f64) -> usize {
    let runs = rain_mm.split(|rain| *rain > wet_over_mm).map(<[f64]>::len);
    runs.max().unwrap_or(0)
}

fn by_blocks(rain_mm: &[f64], first_mm: f64, next_mm: f64) -> Onset {
    let blocks: Vec<f64> = rain_mm.chunks_exact(BLOCK_LENGTH).map(|block| block.iter().sum()).collect();
    for (at, _) in blocks.iter().enumerate().filter(|(_, block)| **block >= first_mm) {
        let told = (at + 1) * BLOCK_LENGTH - 1;
        let next: Vec<&f64> = blocks[at + 1..].iter().take(2).collect();
        if next.iter().all(|block| **block >= next_mm) {
            return if next.len() == 2 { Onset::Began(told) } else { Onset::NotYetKnown(told) };
        }
    }
    Onset::None
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::Value;

    const HANDBOOK: &str = include_str!("../../../tests/reference/handbook_examples.tsv");

    /// The rain of a row and what it should tell.
    fn row(id: &str) -> (Vec<f64>, Value) {
        let line = HANDBOOK.lines().find(|line| line.starts_with(&format!("{id}\t"))).unwrap();
        let cells: Vec<&str> = line.split('\t').collect();
        let given: Value = serde_json::from_str(cells[2]).unwrap();
        let rain = given["rain_mm"].as_array().unwrap().iter().map(|rain| rain.as_f64().unwrap()).collect();
        (rain, serde_json::from_str(cells[3]).unwrap())
    }

    #[test]
    fn the_rule_of_a_climate_service_on_its_own_test_data() {
        for id in ["O01", "O03", "O04"] {
            let (rain, want) = row(id);
            let told = onset(OnsetRule::ClimateService, &rain).unwrap();
            assert_eq!(told, Onset::Began(want["day_index"].as_u64().unwrap() as usize), "{id}");
        }
        let (rain, want) = row("O02");
        let not = want["day_index_is_not"].as_u64().unwrap() as usize;
        assert_ne!(onset(OnsetRule::ClimateService, &rain).unwrap(), Onset::Began(not));
    }

    #[test]
    fn the_other_rules_on_the_same_61_days() {
        let (rain, want) = row("O05");
        assert_eq!(longest_dry(&rain[9..39], 1.0) as u64, want["longest_dry_run_next_30"].as_u64().unwrap());
        assert!(
            (rain[6..9].iter().sum::<f64>() - want["three_day_total_on_2000-05-09"].as_f64().unwrap()).abs() < 1e-3
        );
        assert_ne!(onset(OnsetRule::Sivakumar, &rain).unwrap(), Onset::Began(8), "9 May is rejected");
        // 12 May is the twelfth day of the record, 10 May the tenth.
        assert_eq!(onset(OnsetRule::Stern, &row("O06").0).unwrap(), Onset::Began(11));
        assert_eq!(onset(OnsetRule::Blocks, &row("O07").0).unwrap(), Onset::Began(9));
    }

    #[test]
    fn while_the_weeks_after_are_not_written_it_is_not_known() {
        let mut rain = vec![0.0, 0.0, 12.0, 9.0];
        assert_eq!(onset(OnsetRule::ClimateService, &rain).unwrap(), Onset::NotYetKnown(2));
        rain.extend([0.0; 6]);
        assert_eq!(onset(OnsetRule::ClimateService, &rain).unwrap(), Onset::NotYetKnown(2));
        // The seventh dry day undoes it, whatever comes later.
        rain.push(0.5);
        assert_eq!(onset(OnsetRule::ClimateService, &rain).unwrap(), Onset::None);
        assert_eq!(onset(OnsetRule::Stern, &[0.0; 90]).unwrap(), Onset::None);
        assert_eq!(onset(OnsetRule::Blocks, &[3.0; 25]).unwrap(), Onset::NotYetKnown(9));
        assert!(onset(OnsetRule::Stern, &[-3.0]).is_err() && onset(OnsetRule::Blocks, &[4_000.0]).is_err());
    }
}
