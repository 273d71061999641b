//! Why: every question of a tray, a bed or a pair, with what it rests on and where it comes from.

use super::care::{Care, due_at, of_pair, say_due};
use super::ready::Ready;
use super::{Asked, Facts, Mark, Page, Tone};
use crate::base::{Day, SpeciesKey};
use crate::reckon::bed::water::told::bed_water;
use crate::reckon::field::longest_first;
use crate::reckon::field::{food_ahead, food_taken};
use crate::reckon::forecast::Outlook;
use crate::reckon::growth::tray_growth;
use crate::reckon::light::advice::fewest_cuts::fewest_cuts;
use crate::reckon::light::advice::new_nurses::{new_nurses, wanted_on};
use crate::reckon::light::beside::beside;
use crate::reckon::light::coming::shade_ends;
use crate::reckon::light::in_band::in_band;
use crate::reckon::light::light_told;
use crate::reckon::light::months::{MONTHS_AHEAD, light_months};
use crate::reckon::picture::{BedPicture, BedSpecies, Criterion, Pair, PairPicture, Picture, Rule, TrayPicture};
use crate::reckon::round::stop::handled::{nurses, standing_in};
use crate::reckon::round::{Round, Stop, Task, sick_unasked};
use crate::reckon::tray::exposure::light_band;
use crate::wording::Wording;
use crate::wording::round::RoundOn;
use crate::wording::verdict::About;

/// Months that a page tells the light of.
const MONTHS_TOLD: usize = 12;

/// Why a tray is ready or not, what is due there but for a stop that is told already, how it grows and what is expected of it.
pub(crate) fn why_tray(
    tray: &TrayPicture,
    outlook: &Outlook,
    (round, told): (&Round, Option<&Stop>),
    asked: Asked<'_>,
) -> Page {
    let (wording, picture) = (asked.wording, asked.picture);
    let mut page = asked.page();
    page.heading(wording.why_tray_heading(&tray.code, asked.species(tray.species.as_ref())));
    let fits: Vec<&Pair> = picture.pairs.of(&tray.code).iter().filter(|pair| pair.fits).collect();
    let here = fits.first().filter(|_| !tray.ready);
    match here {
        // What `ready` offers is ready here too; what holds it back holds it back from brighter beds.
        Some(_) => {
            let beds: Vec<String> = fits.iter().map(|pair| pair.bed().to_string()).collect();
            let held = tray.criteria.iter().filter(|criterion| criterion.blocks);
            let why: Vec<String> = held.map(|criterion| wording.reason(criterion, About::Tray)).collect();
            page.verdict(true, wording.why_ready_for(beds.join(", "), why.join("; ")));
        }
        None if tray.ready => {
            let no_bed = Ready::new(asked).no_bed(tray);
            page.verdict(true, no_bed.map_or_else(|| wording.why_ready(), |why| wording.why_ready_no_bed(why)));
        }
        None => page.verdict(false, wording.why_not_ready()),
    }
    let mut facts = wording.tray_facts(tray, picture.goes_before(tray).map(|(day, pair)| (day, &**pair)));
    facts.extend(asked.dangers(tray.species.as_slice()));
    page.facts(facts);
    let mut care = Care::said_of(told);
    let others = due_at(tray, round).filter(|stop| told.is_none_or(|told| told.id != stop.id));
    say_due(others, &mut care, asked, &mut page);
    match here {
        Some(pair) => page.questions(&toward_bed(tray, pair), About::Pair, wording),
        None => page.questions(&tray.criteria, About::Tray, wording),
    }
    care.say_of(&tray.criteria, asked, &mut page);
    if tray.criteria.iter().any(|one| one.rule() == Rule::Treated && one.blocks) {
        let spared = tray.place.as_ref().and_then(|place| Ready::new(asked).spared_at(place, Some(&tray.code)));
        spared.into_iter().for_each(|said| page.sentence(said));
    }
    let profile = tray.species.as_ref().and_then(|key| picture.site.profile(key));
    let growth = tray_growth(&tray.story, profile.map(|profile| &**profile), picture.day);
    let grows = wording.growth_lines(&growth);
    let has_grown = tray.standing > 0 && !grows.is_empty();
    if has_grown {
        page.part(wording.growth_heading(), grows);
    }
    page.part(wording.forecast_heading(), wording.forecast_lines(&tray.code, picture, outlook, &round.worth_looking));
    let mut pairs = wording.forecast_formulas(&tray.code, picture, outlook);
    if has_grown {
        pairs.extend(wording.growth_formulas(&growth));
    }
    let entries = outlook.trays.get(&tray.code).map(|forecast| forecast.entries.clone()).unwrap_or_default();
    page.reckoning(wording.reckoning_heading(), Facts { pairs, rest: Vec::new(), entries });
    page
}

/// What is due in a bed because of a sickness that none of its questions tells of, but for a stop that is told already.
pub(super) fn say_sick(bed: &BedPicture, (told, care): (Option<&Stop>, &mut Care), asked: Asked<'_>, page: &mut Page) {
    let Some(why) = sick_unasked(bed, asked.picture).filter(|_| told.is_none_or(|told| told.task != Task::Sick)) else {
        return;
    };
    let on = RoundOn { day: asked.picture.day, species: &asked.picture.site.species };
    page.gap();
    page.item(asked.wording.why_due(asked.wording.task_name(Task::Sick), asked.wording.round_reason(&why, on)));
    care.say(Task::Sick.facts().caution, asked, page);
}

/// The questions of a tray, those that the light of a bed decides as they stand toward that bed.
fn toward_bed(tray: &TrayPicture, pair: &PairPicture) -> Vec<Criterion> {
    let of_pair = |own: &Criterion| {
        let same = pair.criteria.iter().find(|criterion| criterion.rule() == own.rule());
        same.filter(|_| own.blocks).unwrap_or(own).clone()
    };
    tray.criteria.iter().map(of_pair).collect()
}

/// Why a bed is open or not, for one species or for every planned one.
/// Where nurse plants are to be set for a species, so that its light suits by a day; else when its first tray can be planted.
pub(crate) fn why_bed(bed: &BedPicture, (species, by): (Option<&SpeciesKey>, Option<Day>), asked: Asked<'_>) -> Page {
    let wording = asked.wording;
    let (mut page, mut care) = (asked.page(), Care::default());
    let lines: Vec<&BedSpecies> =
        bed.species.iter().filter(|one| species.is_none_or(|wanted| one.species == *wanted)).collect();
    for one in &lines {
        page.heading(wording.why_bed_heading(&bed.name, asked.species(Some(&one.species))));
        let (open, text) = wording.bed_line_words(one);
        page.verdict(open, text);
        page.facts(asked.dangers(std::slice::from_ref(&one.species)));
        page.questions(&longest_first(&one.criteria, asked.picture.day), About::Bed, wording);
        care.say_of(&one.criteria, asked, &mut page);
    }
    if !lines.is_empty() {
        say_sick(bed, (None, &mut care), asked, &mut page);
    }
    let ends = shade_ends(&bed.story, &asked.picture.site, asked.picture.day);
    let told = ends
        .iter()
        .map(|end| (asked.species(Some(&end.nurse)), wording.shade_end_words(end, end.is_late(asked.picture.day))));
    page.part(wording.shade_to_come_heading(), told.collect::<Vec<_>>());
    let ahead = lines.iter().filter_map(|one| light_ahead(bed, &one.species, asked));
    page.part(wording.light_ahead_heading(), ahead.collect::<Vec<_>>());
    page.part(wording.beside_heading(), shade_beside(bed, &lines, asked));
    let cuts = lines.iter().flat_map(|one| cuts(bed, &one.species, asked));
    page.part(wording.cuts_heading(), cuts.collect::<Vec<_>>());
    let set = lines.iter().flat_map(|one| nurses_to_set(bed, &one.species, by, asked));
    page.part(wording.new_nurses_heading(), set.collect::<Vec<_>>());
    food(bed, asked, &mut page);
    water(bed, asked, &mut page);
    for one in &lines {
        how_light(bed, one, lines.len() > 1, asked, &mut page);
    }
    let nurses = asked.dangers(&nurses(bed));
    if !nurses.is_empty() {
        page.gap();
        page.facts(nurses);
    }
    if lines.is_empty() {
        page.gap();
        page.sentence(match species {
            Some(key) => wording.refused_not_planned(&bed.name, asked.species(Some(key))),
            None => wording.teach_plan(&bed.name),
        });
    }
    page
}

/// What becomes of the light of a bed for a species, under its name.
fn light_ahead(bed: &BedPicture, species: &SpeciesKey, asked: Asked<'_>) -> Option<(String, String)> {
    let (site, day) = (&asked.picture.site, asked.picture.day);
    let told = in_band(&bed.story, site, species, (day, MONTHS_AHEAD))?;
    let band = light_band(site.profile(species).map(|profile| &**profile))?;
    Some((asked.species(Some(species)), asked.wording.light_ahead_words(&told, band)))
}

/// What nurse plants of other beds take of the light, species by species, and of which beds nobody knows.
fn shade_beside(bed: &BedPicture, lines: &[&BedSpecies], asked: Asked<'_>) -> Vec<(String, String)> {
    let (picture, wording) = (asked.picture, asked.wording);
    let mut pairs = Vec::new();
    let mut not_placed = None;
    for one in lines {
        let others = picture.beds.values().map(|bed| &bed.story);
        let told = beside(&bed.story, others, &picture.site, &one.species, picture.day);
        pairs.extend(wording.beside_shading_words(&told).map(|words| (asked.species(Some(&one.species)), words)));
        not_placed = not_placed.or_else(|| wording.beside_not_placed_words(&told));
    }
    // Where beds lie is the same for every species.
    pairs.extend(not_placed.map(|words| (bed.name.to_string(), words)));
    pairs
}

/// Which plants to cut where a bed is too dark for a species.
fn cuts(bed: &BedPicture, species: &SpeciesKey, asked: Asked<'_>) -> Vec<(String, String)> {
    let wording = asked.wording;
    let Some(told) = fewest_cuts(&bed.story, &asked.picture.site, species, asked.picture.day) else {
        return Vec::new();
    };
    let advice = wording.cuts_advice_words(&told);
    let mut pairs =
        vec![(asked.species(Some(species)), wording.cuts_tried_words(&told)), (wording.label_cuts_advice(), advice)];
    pairs.extend(told.advice.map(|advice| (wording.label_cuts_bring(), wording.cuts_bring_words(&advice))));
    pairs
}

/// Which nurse plants to set where a bed is too bright for a species.
fn nurses_to_set(bed: &BedPicture, species: &SpeciesKey, by: Option<Day>, asked: Asked<'_>) -> Vec<(String, String)> {
    let picture = asked.picture;
    let wanted = by.unwrap_or_else(|| wanted_on(picture, species));
    let all = new_nurses(&bed.story, &picture.site, species, (picture.day, wanted));
    all.iter().map(|one| (asked.species(Some(species)), asked.wording.new_nurses_words(one))).collect()
}

/// What the nurse plants of a bed will give to eat within a year, and gave in the last.
fn food(bed: &BedPicture, asked: Asked<'_>, page: &mut Page) {
    let (wording, site, day) = (asked.wording, &asked.picture.site, asked.picture.day);
    let ahead = food_ahead(&bed.story, site, day);
    let ahead = ahead.iter().map(|food| (asked.species(Some(&food.nurse)), wording.food_ahead_words(food)));
    page.part(wording.food_heading(), ahead.collect::<Vec<_>>());
    let taken = food_taken(&bed.story, day);
    let taken = taken.iter().map(|((year, month, nurse), taken)| {
        (asked.species(Some(nurse)), wording.food_taken_words((*year, *month), taken))
    });
    page.part(wording.food_taken_heading(), taken.collect::<Vec<_>>());
}

/// How likely what is planted runs dry, up to which day of the rains it is safe by that, and the litres that plants take.
fn water(bed: &BedPicture, asked: Asked<'_>, page: &mut Page) {
    let (wording, site, day) = (asked.wording, &asked.picture.site, asked.picture.day);
    let told = bed_water(bed, site, day);
    let mut pairs = told.ahead.as_ref().map(|ahead| wording.water_ahead_facts(ahead)).unwrap_or_default();
    pairs.extend(wording.bed_litres_words(&told).map(|words| (wording.label_litres(), words)));
    if !pairs.is_empty() {
        page.reckoning(wording.water_ahead_heading(), Facts { pairs, rest: Vec::new(), entries: Vec::new() });
    }
}

/// How the light of a bed is reckoned for a species; of several each under its name.
fn how_light(bed: &BedPicture, one: &BedSpecies, several: bool, asked: Asked<'_>, page: &mut Page) {
    let (wording, site) = (asked.wording, &asked.picture.site);
    let profile = site.profile(&one.species).map(|profile| &**profile);
    let band = light_band(profile);
    let Some(told) = light_told(&bed.story, site, &one.species, band, asked.picture.day) else { return };
    let heading = if several {
        wording.light_reckoning_heading_of(asked.species(Some(&one.species)))
    } else {
        wording.light_reckoning_heading()
    };
    let months = light_months(&bed.story, site, &one.species, (asked.picture.day, MONTHS_TOLD)).unwrap_or_default();
    let mut pairs = wording.light_formulas(&told);
    pairs.push((wording.label_light_months(), wording.light_months_words(&months)));
    let facts = Facts { pairs, rest: Vec::new(), entries: told.entries };
    page.reckoning(heading, facts);
}

/// Why a tray fits a bed or not.
pub(crate) fn why_pair(pair: &PairPicture, asked: Asked<'_>) -> Page {
    let wording = asked.wording;
    let mut page = asked.page();
    page.heading(wording.why_pair_heading(&pair.tray, &pair.bed));
    let text = if pair.fits { wording.why_fits(wording.plants(pair.plants)) } else { wording.why_fits_not() };
    page.verdict(pair.fits, text);
    page.facts(asked.dangers(&plants_of_pair(pair, asked.picture)));
    page.questions(&longest_first(&pair.criteria, asked.picture.day), About::Pair, wording);
    let bed = asked.picture.beds.get(&pair.bed);
    let ahead = bed.and_then(|bed| light_ahead(bed, &pair.species, asked));
    page.part(wording.light_ahead_heading(), ahead.into_iter().collect::<Vec<_>>());
    Care::default().say_whole(of_pair(pair), asked, &mut page);
    page
}

/// The plants that somebody handles who plants a tray in a bed: its own, and where it fits those that stand there.
pub(crate) fn plants_of_pair(pair: &PairPicture, picture: &Picture) -> Vec<SpeciesKey> {
    let mut plants: Vec<SpeciesKey> =
        picture.trays.get(&pair.tray).and_then(|tray| tray.species.clone()).into_iter().collect();
    let bed = picture.beds.get(&pair.bed).filter(|_| pair.fits);
    let others = bed.map_or_else(Vec::new, |bed| standing_in(bed));
    plants.extend(others.into_iter().filter(|key| plants.first() != Some(key)).collect::<Vec<_>>());
    plants
}

/// What to do about each thing that holds a pair back, one under the other.
pub(crate) fn steps(criteria: &[Criterion], wording: &Wording, page: &mut Page) {
    let blocking: Vec<&Criterion> = criteria.iter().filter(|criterion| criterion.blocks).collect();
    page.heading(wording.how_heading(blocking.len() as i64));
    for (i, criterion) in blocking.into_iter().enumerate() {
        let number = Mark::Sign(format!("{}.", i + 1), Tone::Plain);
        page.marked(1, number, wording.reason(criterion, About::Pair), Tone::Plain);
    }
}
