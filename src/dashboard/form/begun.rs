//! What a form about a tray begins with, beside the tray: the best bed and how many go there, the next free code, where it
//! stands, the container its species usually gets.

use super::Form;
use super::suggest::{brighter_by, places_for};
use crate::base::word::Word;
use crate::base::{BedName, ContainerName, LotCode, TrayCode};
use crate::dashboard::act::FormFor;
use crate::dashboard::context::ScreenContext;
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::types::BedEdges;
use crate::reckon::picture::{Picture, Stage, TrayPicture};
use crate::reckon::round::to_write::next_code;

/// The form of a kind about what is chosen, with what is known of it.
pub(crate) fn begun(kind: &str, about: Option<&Subject>, cx: &ScreenContext<'_>) -> FormFor {
    begun_at(known_of(kind, about, cx))
}

/// The field that a kind is written down with, where it is not the first that is missing.
pub(crate) fn begun_at(mut form: FormFor) -> FormFor {
    let field = match form.kind.as_str() {
        _ if form.begin_at.is_some() => return form,
        "counted" | "stocktaken" => "standing",
        "weather" => "rain_mm",
        "outplanted" if form.preset.iter().any(|(name, _)| name == "bed") => "count",
        "moved_on" if form.preset.iter().any(|(name, _)| name == "to") => "count",
        "lost" | "culled" | "given_out" => "count",
        "resown" if form.preset.iter().any(|(name, _)| name == "lot") => "seeds",
        "survival_counted" if form.preset.iter().any(|(name, _)| name == "species") => "alive",
        "plants_lost" if form.preset.iter().any(|(name, _)| name == "species") => "count",
        "nurse_counted" if form.preset.iter().any(|(name, _)| name == "nurse") => "alive",
        "shade_set" => "shade_pct",
        "watering_set" => "every_days",
        "measured" => "plants",
        "grafted" => "count",
        "light_read" if form.preset.iter().any(|(name, _)| name == "place") => "light_share",
        "light_read" => "readings",
        "place_set" => "shade_pct",
        "soil_checked" => "rod_mm",
        "noted" => "text",
        // Said before all else, so that it is seen before it is written.
        "held" if form.preset.iter().any(|(name, _)| name == "why") => "why",
        "let_go" => "until",
        "carried" => "place",
        "prepared" => "task",
        _ => return form,
    };
    form.begin_at = Some(field.to_string());
    form
}

fn known_of(kind: &str, about: Option<&Subject>, cx: &ScreenContext<'_>) -> FormFor {
    let form = FormFor::about(kind, about);
    let picture = &cx.book.picture;
    if let (Some(Subject::Lot(lot)), "sown") = (about, kind) {
        return sown(form, lot, picture);
    }
    if kind == "bed_set" {
        return form.with("edges", edges_of(about, picture).spelled());
    }
    let Some(tray) = about.and_then(|subject| match subject {
        Subject::Tray(code) => picture.trays.get(code),
        Subject::Lot(_) | Subject::Bed(_) | Subject::Place(_) | Subject::Site => None,
    }) else {
        return form;
    };
    match kind {
        "outplanted" => match best_bed(&tray.code, picture) {
            Some((bed, plants)) => form.with("bed", bed).with("count", plants).beginning_at("count"),
            None => form,
        },
        "moved_on" => moved_on(form, tray, picture),
        _ => form,
    }
}

/// A new bed has half a spacing at its edges; one that is laid out again keeps what it has.
fn edges_of(about: Option<&Subject>, picture: &Picture) -> BedEdges {
    let Some(Subject::Bed(name)) = about else { return BedEdges::Half };
    let layout = picture.beds.get(name).and_then(|bed| bed.story.layout.on(picture.day));
    layout.map_or(BedEdges::Half, |layout| layout.edges.unwrap_or(BedEdges::Counted))
}

/// Seed of a lot goes into a tray of the next free code.
fn sown(form: FormFor, lot: &LotCode, picture: &Picture) -> FormFor {
    match next_code(lot.as_str(), picture) {
        Some(code) => form.with("tray", code).beginning_at("seeds"),
        None => form,
    }
}

/// The form of what usually goes with what was written: hardening begins by carrying the tray to more light.
pub(crate) fn goes_with(form: &Form, cx: &ScreenContext<'_>) -> Option<FormFor> {
    let picture = &cx.book.picture;
    let code = form.typed("tray").filter(|_| form.kind() == "hardening_begun")?;
    let tray = picture.trays.get(&TrayCode::new(&code).ok()?)?;
    let place =
        places_for(tray, picture).into_iter().next().filter(|name| brighter_by(tray, name, picture).is_some())?;
    let carried = FormFor::about("carried", Some(&Subject::Tray(tray.code.clone()))).with("place", place);
    Some(carried.beginning_at("place"))
}

/// The bed a tray fits best, and how many of it go there.
fn best_bed<'a>(tray: &TrayCode, picture: &'a Picture) -> Option<(&'a BedName, u32)> {
    let fits = picture.pairs.of(tray).iter().find(|pair| pair.fits)?;
    Some((fits.bed(), fits.plants))
}

fn moved_on(form: FormFor, tray: &TrayPicture, picture: &Picture) -> FormFor {
    let pricked = matches!(tray.stage, Stage::Sown | Stage::Emerging);
    let mut form = form.with("how", if pricked { "pricked_out" } else { "potted_on" }).with("count", tray.standing);
    if let Some(code) = next_code(tray.code.as_str(), picture) {
        form = form.with("to", code);
    }
    where_to(form, tray, pricked, picture).beginning_at("count")
}

/// The container and the place of what is moved on, as far as the book can tell. What is potted on stands where it stood;
/// what is pricked out goes where others of its species stand after it.
pub(crate) fn where_to(form: FormFor, tray: &TrayPicture, pricked: bool, picture: &Picture) -> FormFor {
    let newest = pricked.then(|| newest_of_species(tray, picture)).flatten();
    let place = newest.and_then(|other| other.place.as_ref()).or(tray.place.as_ref());
    let form = match place {
        Some(place) if !form.preset.iter().any(|(name, _)| name == "place") => form.with("place", place),
        Some(_) | None => form,
    };
    match newest.and_then(container_of) {
        Some(container) => form.with("container", container),
        None => form,
    }
}

fn container_of(tray: &TrayPicture) -> Option<&ContainerName> {
    tray.story.container().and_then(|since| since.what.as_ref())
}

/// The tray of its species that was filled last from another one and lives: as it was done there it is done again.
fn newest_of_species<'a>(tray: &TrayPicture, picture: &'a Picture) -> Option<&'a TrayPicture> {
    let others = picture.trays.values().map(AsRef::as_ref);
    let moved = others.filter(|other| {
        other.code != tray.code
            && other.species == tray.species
            && other.standing > 0
            && !matches!(other.stage, Stage::Sown | Stage::Emerging)
            && container_of(other).is_some()
    });
    moved.max_by_key(|other| other.story.container().map(|since| since.from))
}
