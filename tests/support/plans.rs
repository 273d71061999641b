//! Plans to ask for: drawn at random, the same for the same seed.

use std::collections::BTreeMap;

use outplant::science::matching::{Group, Opening, Share, ShareOf, Stated, StatedGroup, StatedOpening, Values};
use serde_json::Value;

/// How large a drawn instance is.
#[derive(Clone, Copy, Debug)]
pub struct Shape {
    pub groups: u64,
    pub beds: u64,
    pub weeks: u64,
    pub species: u64,
    pub sources: u64,
    pub blocks: u64,
    /// The most plants of a group; openings hold about as many each.
    pub plants: u64,
    /// Work of all weeks together, in percent of the plants there are.
    pub work_percent: u64,
    pub of: ShareOf,
    pub share_percent: u64,
}

/// Numbers drawn one after the other (splitmix64).
struct Draw(u64);

impl Draw {
    /// From low to high, both too.
    fn from(&mut self, low: u64, high: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        low + (mixed ^ (mixed >> 31)) % (high - low + 1)
    }

    fn name(&mut self, letter: char, of: u64) -> String {
        format!("{letter}{}", self.from(1, of))
    }
}

/// An instance.
pub fn drawn(seed: u64, shape: &Shape) -> Stated {
    let mut draw = Draw(seed.wrapping_mul(0x5851_F42D_4C95_7F2D));
    let groups: Vec<StatedGroup> = (1..=shape.groups).map(|number| group(&mut draw, number, shape)).collect();
    let supply = groups.iter().map(|group| group.group.supply as u64).sum::<u64>();
    let of_species = shape.species.min(1 + shape.species / 3).max(1);
    let mut openings = Vec::new();
    let plants_of_opening = (supply * 5 / (4 * shape.beds.max(1) * of_species)).max(1);
    for bed in 1..=shape.beds {
        let mut species: Vec<u64> = (0..of_species).map(|_| draw.from(1, shape.species)).collect();
        species.sort_unstable();
        species.dedup();
        for species in species {
            let from_week = draw.from(1, shape.weeks);
            let positions = draw.from(plants_of_opening / 2, plants_of_opening * 3 / 2) as i64;
            openings.push(StatedOpening {
                opening: Opening { bed: format!("B{bed}"), species: format!("S{species}"), positions },
                from_week: if draw.from(0, 2) > 0 { 1 } else { from_week } as u32,
                until_week: if draw.from(0, 2) > 0 { shape.weeks } else { draw.from(from_week, shape.weeks) } as u32,
            });
        }
    }
    let a_week = supply * shape.work_percent / (100 * shape.weeks.max(1));
    let work = (0..shape.weeks).map(|_| draw.from(a_week / 2, a_week * 3 / 2) as i64).collect();
    let share = Share { of: shape.of, parts: shape.share_percent as i64, whole: 100 };
    Stated { groups, openings, work, share, values: values(&mut draw, shape) }
}

fn group(draw: &mut Draw, number: u64, shape: &Shape) -> StatedGroup {
    let ready_week = draw.from(1, shape.weeks.max(1));
    let last_week = draw.from(ready_week, (ready_week + 5).min(shape.weeks.max(1)));
    StatedGroup {
        group: Group {
            id: format!("G{number}"),
            source: draw.name('M', shape.sources),
            supply: draw.from(1, shape.plants) as i64,
        },
        species: draw.name('S', shape.species),
        block: draw.name('N', shape.blocks),
        ready_week: ready_week as u32,
        last_week: last_week as u32,
    }
}

fn values(draw: &mut Draw, shape: &Shape) -> Values {
    let mut table = |letter: char, rows: u64, most: u64| -> BTreeMap<String, BTreeMap<String, i64>> {
        let mut row = || (1..=shape.beds).map(|bed| (format!("B{bed}"), draw.from(0, most) as i64)).collect();
        (1..=rows).map(|number| (format!("{letter}{number}"), row())).collect()
    };
    let (mismatch, block_distance) = (table('S', shape.species, 400), table('N', shape.blocks, 60));
    let waiting = (1..=shape.species).map(|species| (format!("S{species}"), draw.from(5, 40) as i64)).collect();
    Values { base: 1_000, wait_penalty_per_week: waiting, mismatch, block_distance }
}

/// An instance of the reference.
pub fn of_json(instance: &Value) -> Stated {
    let whole = |value: &Value| value.as_i64().unwrap();
    let text = |value: &Value| value.as_str().unwrap().to_string();
    let row = |row: &Value| -> BTreeMap<String, i64> {
        row.as_object().unwrap().iter().map(|(name, value)| (name.clone(), whole(value))).collect()
    };
    let table = |table: &Value| -> BTreeMap<String, BTreeMap<String, i64>> {
        table.as_object().unwrap().iter().map(|(name, inner)| (name.clone(), row(inner))).collect()
    };
    let group = |group: &Value| StatedGroup {
        group: Group { id: text(&group["id"]), source: text(&group["source"]), supply: whole(&group["supply"]) },
        species: text(&group["species"]),
        block: text(&group["block"]),
        ready_week: whole(&group["ready_week"]) as u32,
        last_week: whole(&group["last_week"]) as u32,
    };
    let beds = instance["beds"].as_array().unwrap().iter();
    let openings = beds.flat_map(|bed| bed["open"].as_array().unwrap().iter().map(move |open| (bed, open)));
    let opening = |(bed, open): (&Value, &Value)| StatedOpening {
        opening: Opening {
            bed: text(&bed["id"]),
            species: text(&open["species"]),
            positions: whole(&open["positions"]),
        },
        from_week: whole(&open["from_week"]) as u32,
        until_week: whole(&open["until_week"]) as u32,
    };
    let of = if instance["share_basis"] == "assigned" { ShareOf::Planted } else { ShareOf::Positions };
    let value = &instance["value"];
    Stated {
        groups: instance["groups"].as_array().unwrap().iter().map(group).collect(),
        openings: openings.map(opening).collect(),
        work: instance["labour_per_week"].as_array().unwrap().iter().map(whole).collect(),
        share: Share::new(of, instance["max_source_share"].as_f64().unwrap()),
        values: Values {
            base: whole(&value["base"]),
            wait_penalty_per_week: row(&value["wait_penalty_per_week"]),
            mismatch: table(&value["mismatch"]),
            block_distance: table(&value["block_distance"]),
        },
    }
}
