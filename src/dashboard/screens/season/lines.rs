//! The lines of the Season: trays, beds by species, and the shade of nurse plants.

use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::{Ink, stage_mark, standing_mark};
use crate::nursery::entry::subject::Subject;
use crate::reckon::field::{FoodAhead, food_ahead};
use crate::reckon::picture::Stage;
use crate::reckon::season::{NurseShade, SeasonDay};

/// What a line is about.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum LineOf {
    /// A tray.
    Tray(TrayCode),
    /// A bed for a species.
    Bed(BedName, SpeciesKey),
    /// The nurse plants of a bed.
    Shade(BedName),
    /// The food on the way in a bed: from when to when each of it can be taken.
    Food(BedName, Vec<(Day, Day)>),
}

impl LineOf {
    /// What it is about.
    pub(crate) fn subject(&self) -> Subject {
        match self {
            LineOf::Tray(code) => Subject::Tray(code.clone()),
            LineOf::Bed(bed, _) | LineOf::Shade(bed) | LineOf::Food(bed, _) => Subject::Bed(bed.clone()),
        }
    }

    /// Its name, and the species where there is room.
    pub(crate) fn name(&self, cx: &ScreenContext<'_>, with_species: bool) -> String {
        match self {
            LineOf::Tray(code) => {
                let tray = cx.book.picture.trays.get(code);
                let species = cx.species(tray.and_then(|tray| tray.species.as_ref()));
                if with_species { format!("{code} {species}") } else { code.to_string() }
            }
            LineOf::Bed(bed, species) if with_species => format!("{bed}, {}", cx.species(Some(species))),
            LineOf::Bed(bed, _) => bed.to_string(),
            LineOf::Shade(_) => format!("  {}", cx.wording.season_shade()),
            LineOf::Food(..) => format!("  {}", cx.wording.season_food()),
        }
    }

    /// The mark and ink of a day; none where it is not there on that day.
    pub(crate) fn mark(&self, day: &SeasonDay) -> Option<(&'static str, Ink)> {
        match self {
            LineOf::Tray(code) => day.trays.get(code).filter(|stage| **stage != Stage::Spent).map(|s| stage_mark(*s)),
            LineOf::Bed(bed, species) => {
                day.beds.get(&(bed.clone(), species.clone())).map(|standing| standing_mark(*standing))
            }
            LineOf::Shade(bed) => day.shade.get(bed).and_then(|shade| match shade {
                NurseShade::None => None,
                NurseShade::Growing => Some(("░", Ink::Plain)),
                NurseShade::Shading => Some(("█", Ink::Plain)),
                NurseShade::Ended => Some(("!", Ink::Waits)),
            }),
            LineOf::Food(_, times) => can_be_taken(times, day.day).then_some(("▒", Ink::Good)),
        }
    }

    /// The state of a day in a word.
    pub(crate) fn word(&self, day: &SeasonDay, cx: &ScreenContext<'_>) -> Option<String> {
        let wording = cx.wording;
        match self {
            LineOf::Tray(code) => day.trays.get(code).map(|stage| wording.stage_name(*stage)),
            LineOf::Bed(bed, species) => {
                day.beds.get(&(bed.clone(), species.clone())).map(|standing| wording.standing_name(*standing))
            }
            LineOf::Shade(bed) => day.shade.get(bed).map(|shade| match shade {
                NurseShade::None => wording.season_shade_none(),
                NurseShade::Growing => wording.season_shade_growing(),
                NurseShade::Shading => wording.season_shade_useful(),
                NurseShade::Ended => wording.season_shade_ended(),
            }),
            LineOf::Food(_, times) if can_be_taken(times, day.day) => Some(wording.season_food_to_take()),
            LineOf::Food(..) => Some(wording.season_food_none()),
        }
    }
}

fn can_be_taken(times: &[(Day, Day)], day: Day) -> bool {
    times.iter().any(|(from, until)| (*from..=*until).contains(&day))
}

/// Every line: the trays that hold something now, where asked those too that did on a day that is drawn, then the beds with
/// their nurse plants.
pub(crate) fn lines(empty_too: bool, cx: &ScreenContext<'_>) -> Vec<LineOf> {
    let picture = &cx.book.picture;
    let drawn = cx.book.year.as_ref().map(|(_, days)| days);
    let stood = |code: &TrayCode| {
        let lives = |days: &std::collections::BTreeMap<Day, SeasonDay>| {
            days.values().any(|day| day.trays.get(code).is_some_and(|stage| *stage != Stage::Spent))
        };
        drawn.is_some_and(lives)
    };
    let trays = picture.trays.values().filter(|tray| tray.stage != Stage::Spent || (empty_too && stood(&tray.code)));
    let mut all: Vec<LineOf> = trays.map(|tray| LineOf::Tray(tray.code.clone())).collect();
    for bed in picture.beds.values() {
        all.extend(bed.species.iter().map(|one| LineOf::Bed(bed.name.clone(), one.species.clone())));
        if !bed.nurses.is_empty() {
            all.push(LineOf::Shade(bed.name.clone()));
        }
        let food = food_ahead(&bed.story, &picture.site, picture.day);
        if !food.is_empty() {
            let times = food.iter().map(FoodAhead::time).map(|(from, until)| (from.max(picture.day), until));
            all.push(LineOf::Food(bed.name.clone(), times.collect()));
        }
    }
    all
}
