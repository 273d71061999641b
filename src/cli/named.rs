//! A bare name: whatever alone bears it. Capitals and accents do not count.

use super::args::Why;
use super::run::{Exit, Run};
use crate::base::text::folded;
use crate::base::{BedName, LotCode, PlaceName, TrayCode, name_search};
use crate::desk::Desk;
use crate::page::place::places;
use crate::reckon::Picture;

/// What bears a name.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Bearer {
    Tray(TrayCode),
    Bed(BedName),
    Place(PlaceName),
    Lot(LotCode),
    Species(String),
}

impl Bearer {
    /// How it is asked about with its sort.
    fn command(&self) -> String {
        match self {
            Bearer::Tray(tray) => format!("outplant why tray {}", quoted(tray.as_str())),
            Bearer::Bed(bed) => format!("outplant why bed {}", quoted(bed.as_str())),
            Bearer::Place(place) => format!("outplant why place {}", quoted(place.as_str())),
            Bearer::Lot(lot) => format!("outplant why lot {}", quoted(lot.as_str())),
            Bearer::Species(name) => format!("outplant why species {}", quoted(name)),
        }
    }
}

fn quoted(name: &str) -> String {
    if name.contains(' ') { format!("\"{name}\"") } else { name.to_string() }
}

/// Everything of the Picture that bears a name; a species only where nothing else does.
fn bearers(desk: &Desk, picture: &Picture, name: &str) -> Vec<Bearer> {
    let wanted = folded(name);
    let now = TrayCode::new(name).ok().map(|code| desk.fold().ledger().tray_now(&code));
    let is_tray = |code: &&TrayCode| folded(code.as_str()) == wanted || Some(*code) == now.as_ref();
    let trays = picture.trays.keys().filter(is_tray).cloned().map(Bearer::Tray);
    let beds = picture.beds.keys().filter(|bed| folded(bed.as_str()) == wanted).cloned().map(Bearer::Bed);
    let lots = picture.lots.keys().filter(|lot| folded(lot.as_str()) == wanted).cloned().map(Bearer::Lot);
    let place = places(picture).find(|place| folded(place.as_str()) == wanted).cloned().map(Bearer::Place);
    let found: Vec<Bearer> = trays.chain(beds).chain(lots).chain(place).collect();
    if found.is_empty() && picture.site.species.find(name).is_some() {
        return vec![Bearer::Species(name.to_string())];
    }
    found
}

/// The one thing that bears a name.
///
/// # Errors
/// Several things bear it; nothing does (none).
fn the_one(run: &Run, desk: &Desk, picture: &Picture, name: &str) -> Result<Option<Bearer>, Exit> {
    let mut found = bearers(desk, picture, name);
    if found.len() > 1 {
        let commands: Vec<String> = found.iter().map(Bearer::command).collect();
        return Err(Exit::refused(run.wording.named_several(name, commands.join(", "))));
    }
    Ok(found.pop())
}

/// What is asked about by names alone: one name, also of several words, or a tray and a bed in either order.
///
/// # Errors
/// A name that nothing or several things bear; the file.
pub(super) fn what_is_asked(
    run: &Run,
    desk: &mut Desk,
    names: &[String],
    (species, by): (Option<&String>, Option<&String>),
    (how, all): (bool, bool),
) -> Result<Why, Exit> {
    let whole = names.join(" ");
    let picture = {
        let mut called: Vec<&str> = names.iter().map(String::as_str).collect();
        called.push(&whole);
        run.picture_with(desk, &called)?
    };
    if let Some(one) = the_one(run, desk, &picture, &whole)? {
        return Ok(match one {
            Bearer::Tray(tray) => Why::Tray { tray, all },
            Bearer::Bed(bed) => Why::Bed { bed, species: species.cloned(), positions: false, by: by.cloned(), all },
            Bearer::Place(place) => Why::Place { place },
            Bearer::Lot(lot) => Why::Lot { lot, plants: None, sure: None, all },
            Bearer::Species(species) => Why::Species { species, plants: None, sure: None, all },
        });
    }
    let only = |name: &str| bearers(desk, &picture, name);
    let tray_of = |all: &[Bearer]| {
        all.iter().find_map(|one| if let Bearer::Tray(tray) = one { Some(tray.clone()) } else { None })
    };
    let bed_of =
        |all: &[Bearer]| all.iter().find_map(|one| if let Bearer::Bed(bed) = one { Some(bed.clone()) } else { None });
    for at in 1..names.len() {
        let (left, right) = (only(&names[..at].join(" ")), only(&names[at..].join(" ")));
        let pair = tray_of(&left).zip(bed_of(&right)).or_else(|| tray_of(&right).zip(bed_of(&left)));
        if let Some((tray, bed)) = pair {
            return Ok(Why::Pair { tray, bed, how, all });
        }
    }
    let trays = picture.trays.keys().map(TrayCode::as_str);
    let all = trays.chain(picture.beds.keys().map(BedName::as_str)).chain(picture.lots.keys().map(LotCode::as_str));
    let all = all.chain(places(&picture).map(PlaceName::as_str));
    let unknown = names.iter().find(|name| only(name).is_empty()).cloned().unwrap_or(whole);
    let nearest = name_search::nearest(&unknown, all);
    Err(Exit::refused(run.wording.nearest_after(run.wording.line_unknown_name(unknown), &nearest)))
}
