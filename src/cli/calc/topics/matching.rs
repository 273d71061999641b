//! `calc matching`: an instance in plain whole numbers, and its best plan.

use std::collections::BTreeMap;
use std::time::{Duration, Instant};

use serde_json::{Value, json};

use crate::cli::calc::answer::Answer;
use crate::cli::calc::args::Matching;
use crate::cli::calc::given::{Given, Wrong, in_row};
use crate::science::WrongInput;
use crate::science::matching::{
    Group, Instance, MOST_PLANTS, MOST_VALUE, MOST_WEEKS, Opening, Own, Share, ShareOf, Shipment, Solver, Stated,
    StatedGroup, StatedOpening, Unfit, Values,
};
use crate::wording::Wording;

/// After so long the best plan so far is the answer.
const LONGEST: Duration = Duration::from_secs(60);

/// What was typed: this topic reads JSON alone.
pub(crate) fn typed(_: &Matching) -> Given {
    Given::default()
}

/// The best plan.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let instance = stated(given)?.instance().map_err(|unfit| Wrong::Said(said(&unfit, wording)))?;
    let begun = Instant::now();
    let solved = Own.solve(&instance, &mut |_| begun.elapsed() < LONGEST);
    let mut answer = Answer::new(wording.calc_matching_formula(), wording.calc_matching_source());
    answer.figure("objective", solved.objective);
    answer.figure("proven_optimal", solved.is_proven());
    answer.figure("bound", solved.bound);
    answer.figure("plan", solved.plan.iter().map(|row| row_of(&instance, row)).collect::<Vec<Value>>());
    Ok(answer)
}

fn row_of(instance: &Instance, row: &Shipment) -> Value {
    let (group, opening) = (&instance.groups()[row.group], &instance.openings()[row.opening]);
    json!({"group": group.id, "bed": opening.bed, "week": row.week, "plants": row.plants})
}

fn said(unfit: &Unfit, wording: &Wording) -> String {
    match unfit {
        Unfit::GroupTwice(group) => wording.calc_matching_group_twice(group),
        Unfit::OpeningTwice { bed, species } => wording.calc_matching_opening_twice(bed, species),
        Unfit::TooManyOffers | Unfit::Offer => wording.calc_matching_too_many(),
    }
}

fn stated(given: &Given) -> Result<Stated, Wrong> {
    let weeks = whole(given, "weeks", 0, i64::from(MOST_WEEKS))? as u32;
    let work = given.counts("labour_per_week")?.into_iter().map(i64::from).collect::<Vec<i64>>();
    if work.len() != weeks as usize {
        return Err(WrongInput::Uneven { input: "labour_per_week", other: "weeks" }.into());
    }
    if work.iter().any(|plants| *plants > MOST_PLANTS) {
        return Err(too_many("labour_per_week"));
    }
    let groups = rows_of(given, "groups", group)?;
    let openings = rows_of(given, "beds", |bed| {
        let id = text(bed, "id")?;
        rows_of(bed, "open", |open| opening(open, &id, weeks))
    })?;
    let openings = openings.into_iter().flatten().collect();
    Ok(Stated { groups, openings, work, share: share(given)?, values: values(given)? })
}

/// Reads each of several.
fn rows_of<T>(given: &Given, list: &'static str, read: impl Fn(&Given) -> Result<T, Wrong>) -> Result<Vec<T>, Wrong> {
    let each = given.objects(list)?.into_iter().enumerate();
    each.map(|(at, row)| read(&row).map_err(|wrong| in_row(list, at, wrong))).collect()
}

fn group(given: &Given) -> Result<StatedGroup, Wrong> {
    let supply = whole(given, "supply", 0, MOST_PLANTS)?;
    Ok(StatedGroup {
        group: Group { id: text(given, "id")?, source: text(given, "source")?, supply },
        species: text(given, "species")?,
        block: text(given, "block")?,
        ready_week: whole(given, "ready_week", 1, i64::from(u32::MAX))? as u32,
        last_week: whole(given, "last_week", 0, i64::from(u32::MAX))? as u32,
    })
}

fn opening(given: &Given, bed: &str, weeks: u32) -> Result<StatedOpening, Wrong> {
    let positions = whole(given, "positions", 0, MOST_PLANTS)?;
    let week = |input: &'static str, usual: u32| match given.value(input) {
        Some(_) => whole(given, input, 0, i64::from(u32::MAX)).map(|week| week as u32),
        None => Ok(usual),
    };
    Ok(StatedOpening {
        opening: Opening { bed: bed.to_string(), species: text(given, "species")?, positions },
        from_week: week("from_week", 1)?,
        until_week: week("until_week", weeks)?,
    })
}

fn share(given: &Given) -> Result<Share, Wrong> {
    let share = given.maybe_number("max_source_share")?.unwrap_or(1.0);
    if !(0.0..=1.0).contains(&share) {
        return Err(WrongInput::Outside { input: "max_source_share", low: 0.0, high: 1.0 }.into());
    }
    let of = match given.maybe_text("share_basis")? {
        None | Some("open_positions") => ShareOf::Positions,
        Some("assigned") => ShareOf::Planted,
        Some(other) => {
            let written = other.to_string();
            return Err(Wrong::Word { input: "share_basis", written, known: "open_positions, assigned" });
        }
    };
    Ok(Share::new(of, share))
}

fn values(given: &Given) -> Result<Values, Wrong> {
    let value = given.maybe_object("value")?.ok_or(WrongInput::Missing { input: "value" })?;
    let table = |input: &'static str| value.value(input).map_or(Ok(BTreeMap::new()), |table| rows(input, table));
    let waiting = |waiting: &Value| numbers("wait_penalty_per_week", waiting);
    Ok(Values {
        base: whole(&value, "base", -MOST_VALUE, MOST_VALUE)?,
        wait_penalty_per_week: value.value("wait_penalty_per_week").map_or(Ok(BTreeMap::new()), waiting)?,
        mismatch: table("mismatch")?,
        block_distance: table("block_distance")?,
    })
}

/// A table of tables by name.
fn rows(input: &'static str, table: &Value) -> Result<BTreeMap<String, BTreeMap<String, i64>>, Wrong> {
    by_name(input, table)?.map(|(name, row)| Ok((name.clone(), numbers(input, row)?))).collect()
}

/// A table of whole numbers by name.
fn numbers(input: &'static str, table: &Value) -> Result<BTreeMap<String, i64>, Wrong> {
    let one = |value: &Value| whole_number(input, value, -MOST_VALUE, MOST_VALUE);
    by_name(input, table)?.map(|(name, value)| Ok((name.clone(), one(value)?))).collect()
}

fn by_name<'a>(input: &'static str, table: &'a Value) -> Result<serde_json::map::Iter<'a>, Wrong> {
    let wrong = || Wrong::Word { input, written: table.to_string(), known: "{ ... }" };
    table.as_object().map(serde_json::Map::iter).ok_or_else(wrong)
}

fn text(given: &Given, input: &'static str) -> Result<String, Wrong> {
    given.maybe_text(input)?.map(str::to_string).ok_or(Wrong::Input(WrongInput::Missing { input }))
}

fn whole(given: &Given, input: &'static str, low: i64, high: i64) -> Result<i64, Wrong> {
    let value = given.value(input).ok_or(Wrong::Input(WrongInput::Missing { input }))?;
    whole_number(input, value, low, high)
}

fn whole_number(input: &'static str, value: &Value, low: i64, high: i64) -> Result<i64, Wrong> {
    let number = value.as_f64().ok_or(Wrong::Input(WrongInput::NotANumber { input }))?;
    if number.fract() != 0.0 {
        return Err(WrongInput::NotWhole { input }.into());
    }
    if !(low as f64..=high as f64).contains(&number) {
        return Err(WrongInput::Outside { input, low: low as f64, high: high as f64 }.into());
    }
    Ok(number as i64)
}

fn too_many(input: &'static str) -> Wrong {
    WrongInput::TooMany { input, most: MOST_PLANTS as u32 }.into()
}
