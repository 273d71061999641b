//! The main answer for people: what can go out, what is ready without a bed, what the others wait for.

use super::sheet::{Ink, Sheet};
use crate::base::columns::{left_aligned, right_aligned, shortened, width_of};
use crate::base::{BedName, Day, TrayCode};
use crate::reckon::field::waits_for;
use crate::reckon::picture::{BedPicture, BedSpecies, Criterion, Looking, PairPicture, Picture, Stage, TrayPicture};
use crate::reckon::round::go_by;
use crate::reckon::shared_offers;
use crate::wording::Wording;
use crate::wording::verdict::About;

/// The narrowest page that gets columns; below it each row takes two lines.
const WIDE: usize = 60;
/// The fewest columns a species' name is shortened to.
const LEAST_NAME: usize = 8;
/// The most columns of a species' name in front of a reason.
const MOST_NAME: usize = 18;

/// What `ready` prints, with a line on what changed since yesterday under its top; a new nursery is told how to begin. Colours
/// only where `colour`.
pub(super) fn ready_page(
    picture: &Picture,
    wording: &Wording,
    width: usize,
    colour: bool,
    since: Option<&str>,
    is_new: bool,
) -> String {
    let mut page = ReadyPage { picture, wording, sheet: Sheet::new(width, colour) };
    page.top();
    if let Some(since) = since {
        page.sheet.paragraph(since, Ink::Plain);
    }
    if is_new {
        page.teach();
    } else {
        page.ready();
        page.without_bed();
        page.not_yet();
    }
    page.beds();
    page.doubts();
    page.unplanned();
    page.hint();
    page.sheet.finish()
}

/// The name of the nursery, the day, and whether another day is looked at.
pub(super) fn page_top(picture: &Picture, wording: &Wording, sheet: &mut Sheet) {
    let nursery = picture.site.nursery.on(picture.day);
    let name = nursery.map_or_else(|| wording.page_unnamed(), |set| crate::base::text::cleaned(&set.name.0));
    let day = wording.day(picture.day);
    let today = if picture.looking == Looking::Today { wording.page_today(day.clone()) } else { day.clone() };
    let room = sheet.width().saturating_sub(width_of(&today) + 2);
    let name = shortened(&name, room);
    let gap = " ".repeat(sheet.width().saturating_sub(width_of(&name) + width_of(&today)));
    sheet.hanging(&format!("{name}{gap}"), Ink::Bold, &today, Ink::Plain);
    match picture.looking {
        Looking::Today => {}
        Looking::Back => sheet.paragraph(&wording.page_back(day), Ink::Bold),
        Looking::Ahead => sheet.paragraph(&wording.page_ahead(day), Ink::Bold),
    }
    if let Some(known) = picture.known {
        let offset = nursery.map_or(0.0, |set| set.utc_offset_h.0);
        sheet.paragraph(&wording.page_known(wording.day(known.day(offset))), Ink::Bold);
    }
}

struct ReadyPage<'a> {
    picture: &'a Picture,
    wording: &'a Wording,
    sheet: Sheet,
}

impl<'a> ReadyPage<'a> {
    fn top(&mut self) {
        page_top(self.picture, self.wording, &mut self.sheet);
    }

    fn teach(&mut self) {
        self.sheet.gap();
        self.sheet.paragraph(&self.wording.teach_first_tray(), Ink::Plain);
        self.sheet.indented(2, &self.wording.teach_first_tray_command(), Ink::Bold);
        self.sheet.paragraph(&self.wording.teach_standing_tray(), Ink::Plain);
        self.sheet.indented(2, &self.wording.teach_standing_tray_command(), Ink::Bold);
    }

    /// Trays with at least one bed that fits, each with its beds under each other.
    fn ready(&mut self) {
        let wording = self.wording;
        let today = self.picture.looking == Looking::Today;
        let day = wording.day(self.picture.day);
        self.sheet.heading(&if today { wording.ready_heading() } else { wording.ready_heading_on(day.clone()) });
        let fits: Vec<&PairPicture> =
            self.picture.pairs.iter().map(AsRef::as_ref).filter(|pair: &&PairPicture| pair.fits).collect();
        if fits.is_empty() {
            let none = if today { wording.ready_none() } else { wording.ready_none_on(day) };
            self.sheet.paragraph(&none, Ink::Plain);
            return;
        }
        let rows: Vec<FitRow> = self.fit_rows(&fits);
        let columns = FitColumns::of(&rows, self.sheet.width());
        for row in &rows {
            match &columns {
                Some(columns) => {
                    let (beginning, rest) = columns.line(row);
                    self.sheet.hanging(&beginning, Ink::Ready, &rest, Ink::Plain);
                }
                None => self.narrow_fit(row),
            }
        }
        for offer in &shared_offers(self.picture) {
            self.sheet.indented(2, &wording.shared_offer(offer, &self.picture.site.species), Ink::Plain);
        }
    }

    fn fit_rows(&self, fits: &[&PairPicture]) -> Vec<FitRow> {
        let mut rows: Vec<FitRow> = Vec::new();
        let mut message: Vec<&TrayCode> = Vec::new();
        for pair in fits {
            if message.contains(&&pair.tray) {
                continue;
            }
            message.push(&pair.tray);
            for (number, same) in fits.iter().filter(|other| other.tray == pair.tray).enumerate() {
                let tray = self.picture.trays.get(&pair.tray);
                rows.push(FitRow {
                    first: number == 0,
                    tray: pair.tray.to_string(),
                    species: tray.map(|tray| self.species(tray)).unwrap_or_default(),
                    plants: self.wording.plants(same.plants),
                    bed: same.bed.to_string(),
                    before: tray.and_then(|tray| self.go_by(tray, Some(pair))).unwrap_or_default(),
                });
            }
        }
        rows
    }

    /// By which day a tray goes out, and what ends then.
    fn go_by(&self, tray: &TrayPicture, pair: Option<&PairPicture>) -> Option<String> {
        let (last, what) = go_by(tray, pair, self.picture.day)?;
        Some(self.wording.go_by_words(self.day_near(last), what))
    }

    fn narrow_fit(&mut self, row: &FitRow) {
        if row.first {
            let room = self.sheet.width().saturating_sub(width_of(&row.tray) + 4);
            let name = shortened(&row.species, room);
            self.sheet.hanging(&format!("+ {}  ", row.tray), Ink::Ready, &name, Ink::Plain);
        }
        let ends = if row.before.is_empty() || !row.first { String::new() } else { format!(", {}", row.before) };
        self.sheet.indented(4, &format!("{} → {}{ends}", row.plants, row.bed), Ink::Plain);
    }

    /// Ready trays that fit no bed, each with its nearest miss.
    fn without_bed(&mut self) {
        let rows: Vec<&TrayPicture> = self.trays().filter(|tray| tray.ready && !self.has_fit(&tray.code)).collect();
        if rows.is_empty() {
            return;
        }
        let wording = self.wording;
        let heading = if self.picture.looking == Looking::Today {
            wording.no_bed_heading()
        } else {
            wording.no_bed_heading_on(wording.day(self.picture.day))
        };
        self.sheet.heading(&heading);
        for tray in &rows {
            let mut text = match self.nearest_pair(&tray.code) {
                Some(pair) => wording.in_bed(&pair.bed, self.waits_for(&pair.criteria, About::Pair)),
                None => wording.no_bed_plans(self.species(tray)),
            };
            if let Some(until) = self.go_by(tray, None) {
                text.push_str(&format!(" · {until}"));
            }
            self.row("~", Ink::Waits, tray, &rows, &text);
        }
    }

    /// All other trays by stage, each with what it waits for; empty ones by name.
    fn not_yet(&mut self) {
        let waiting: Vec<&TrayPicture> = self
            .trays()
            .filter(|tray| !tray.ready && !self.has_fit(&tray.code) && tray.stage != Stage::Spent)
            .collect();
        let empty: Vec<String> = self
            .trays()
            .filter(|tray| tray.stage == Stage::Spent && !tray.ready && !self.has_fit(&tray.code))
            .map(|tray| tray.code.to_string())
            .collect();
        if waiting.is_empty() && empty.is_empty() {
            return;
        }
        self.sheet.heading(&self.wording.not_yet_heading());
        // The stages nearest to going out come first; what is past its container before all.
        const ORDER: [Stage; 7] = [
            Stage::Overdue,
            Stage::Ready,
            Stage::Hardening,
            Stage::GrowingOn,
            Stage::PrickedOut,
            Stage::Emerging,
            Stage::Sown,
        ];
        for stage in ORDER {
            let mut rows: Vec<&TrayPicture> = waiting.iter().copied().filter(|tray| tray.stage == stage).collect();
            rows.sort_by_key(|tray| (tray.ready_from.is_none(), tray.ready_from, tray.code.clone()));
            if rows.is_empty() {
                continue;
            }
            self.sheet.indented(2, &self.wording.stage_name(stage), Ink::Bold);
            for tray in &rows {
                let text = self.tray_waits_for(tray);
                let (mark, ink) = mark_of(&tray.criteria);
                let ink = if stage == Stage::Overdue { Ink::Danger } else { ink };
                self.row(mark, ink, tray, &waiting, &text);
            }
        }
        if !empty.is_empty() {
            self.sheet.indented(2, &self.wording.empty_trays(empty.join(", ")), Ink::Plain);
        }
    }

    /// A tray's row: mark, code, species, number standing, and a text that folds under itself.
    fn row(&mut self, mark: &str, ink: Ink, tray: &TrayPicture, among: &[&TrayPicture], text: &str) {
        let code_room = among.iter().map(|other| width_of(other.code.as_str())).max().unwrap_or(0);
        let number_room = among.iter().map(|other| other.standing.to_string().len()).max().unwrap_or(0);
        let wide = self.sheet.width() >= WIDE && code_room + number_room + MOST_NAME + 34 <= self.sheet.width();
        let standing = right_aligned(&tray.standing.to_string(), number_room);
        if wide {
            let name = left_aligned(&shortened(&self.species(tray), MOST_NAME), MOST_NAME);
            let code = left_aligned(tray.code.as_str(), code_room);
            self.sheet.hanging(&format!("{mark} {code}  {name}  {standing}  "), ink, text, Ink::Plain);
            return;
        }
        let plants = self.wording.plants(tray.standing);
        let room = self.sheet.width().saturating_sub(width_of(tray.code.as_str()) + width_of(&plants) + 6);
        let name = if room >= LEAST_NAME { shortened(&self.species(tray), room) } else { String::new() };
        let beginning = format!("{mark} {}  ", tray.code);
        self.sheet.hanging(&beginning, ink, format!("{name}  {plants}").trim(), Ink::Plain);
        self.sheet.indented(4, text, Ink::Plain);
    }

    fn beds(&mut self) {
        let wording = self.wording;
        if self.picture.beds.is_empty() {
            if !self.picture.trays.is_empty() {
                self.sheet.heading(&wording.beds_heading());
                self.sheet.paragraph(&wording.teach_first_bed(), Ink::Plain);
            }
            return;
        }
        self.sheet.heading(&wording.beds_heading());
        for bed in self.picture.beds.values() {
            let light = match &bed.light_now {
                Some(light) => wording.bed_light(wording.percent(light.share), self.day_near(light.read_on)),
                None => wording.bed_light_unknown(),
            };
            self.sheet.hanging(&format!("{}  ", bed.name), Ink::Bold, &light, Ink::Plain);
            if bed.species.is_empty() {
                self.sheet.indented(2, &wording.bed_plans_nothing(), Ink::Plain);
            }
            for one in &bed.species {
                self.bed_line(bed, one);
            }
        }
    }

    fn bed_line(&mut self, bed: &BedPicture, one: &BedSpecies) {
        let wording = self.wording;
        let names = bed.species.iter().map(|other| wording.species_of(&other.species, &self.picture.site.species));
        let room = names.map(|name| width_of(&name)).max().unwrap_or(0).min(MOST_NAME);
        let name = shortened(&wording.species_of(&one.species, &self.picture.site.species), room);
        let (mark, ink) = mark_of(&one.criteria);
        let standing = wording.standing_name(one.standing);
        let open = wording.bed_has_open(one.open_positions, one.positions);
        let text = if one.criteria.iter().any(|criterion| criterion.blocks) {
            self.waits_for(&one.criteria, About::Bed)
        } else if bed.light_now.is_some() {
            format!("{open}, {}", wording.bed_in_light(one.in_light))
        } else {
            open
        };
        let beginning = format!("  {mark} {}  ", left_aligned(&name, room));
        self.sheet.hanging(&beginning, ink, &format!("{standing}: {text}"), Ink::Plain);
    }

    fn doubts(&mut self) {
        if self.picture.doubts.is_empty() {
            return;
        }
        self.sheet.heading(&self.wording.doubts_heading());
        for doubt in &self.picture.doubts {
            let sentence = self.wording.doubt(doubt, &self.picture.site.species);
            self.sheet.hanging("! ", Ink::Danger, &sentence, Ink::Plain);
        }
    }

    /// Ready trays that no bed plans.
    fn unplanned(&mut self) {
        if self.picture.unplanned.is_empty() {
            return;
        }
        self.sheet.heading(&self.wording.unplanned_heading());
        for tray in &self.picture.unplanned {
            self.sheet.hanging("! ", Ink::Waits, &self.wording.unplanned(tray, self.picture), Ink::Plain);
        }
    }

    fn hint(&mut self) {
        let waiting = self.trays().find(|tray| !tray.ready && tray.stage != Stage::Spent);
        let asked = waiting.or_else(|| self.trays().next()).map(|tray| tray.code.clone());
        if let Some(code) = asked {
            self.sheet.gap();
            self.sheet.paragraph(&self.wording.hint_why_tray(shown_as_argument(code.as_str())), Ink::Plain);
        }
    }

    fn trays(&self) -> impl Iterator<Item = &'a TrayPicture> + use<'a> {
        self.picture.trays.values().map(AsRef::as_ref)
    }

    fn has_fit(&self, tray: &TrayCode) -> bool {
        self.picture.pairs.of(tray).iter().any(|pair| pair.fits)
    }

    fn species(&self, tray: &TrayPicture) -> String {
        match &tray.species {
            Some(key) => self.wording.species_of(key, &self.picture.site.species),
            None => self.wording.species_unknown(),
        }
    }

    /// A day without its year where the year is the one looked at.
    fn day_near(&self, day: Day) -> String {
        let same_year = day.ymd().0 == self.picture.day.ymd().0;
        if same_year { self.wording.short_day(day) } else { self.wording.day(day) }
    }

    /// The pair of a tray that misses least: fewest reasons, then the earliest end of waiting, then the bed's name.
    fn nearest_pair(&self, tray: &TrayCode) -> Option<&'a PairPicture> {
        let key = |pair: &PairPicture| -> (usize, bool, Option<Day>, BedName) {
            let blocking = pair.criteria.iter().filter(|criterion| criterion.blocks);
            let last = blocking.clone().map(|criterion| criterion.expected).max_by_key(|day| (day.is_none(), *day));
            let last = last.flatten();
            (blocking.count(), last.is_none(), last, pair.bed.clone())
        };
        let pairs = self.picture.pairs.of(tray).iter().map(AsRef::as_ref);
        pairs.min_by_key(|pair| key(pair))
    }

    /// What a tray that is not ready waits for: its own first reason, else that of its nearest bed.
    fn tray_waits_for(&self, tray: &TrayPicture) -> String {
        if tray.criteria.iter().any(|criterion| criterion.blocks) {
            return self.waits_for(&tray.criteria, About::Tray);
        }
        match self.nearest_pair(&tray.code) {
            Some(pair) => self.wording.in_bed(&pair.bed, self.waits_for(&pair.criteria, About::Pair)),
            None => self.wording.no_bed_plans(self.species(tray)),
        }
    }

    /// The first thing that blocks, when it ends, and how many more there are.
    fn waits_for(&self, criteria: &[Criterion], about: About) -> String {
        let blocking = waits_for(criteria, self.picture.day);
        let Some((first, more)) = blocking.split_first() else { return self.wording.bed_nothing_waits() };
        let mut text = self.wording.reason(first, about);
        // A reason that names the day itself is not told it twice.
        let named = |day: &Day| text.contains(&self.wording.day(*day)) || text.contains(&self.day_near(*day));
        if let Some(day) = first.expected.filter(|day| *day > self.picture.day && !named(day)) {
            let when = self.wording.comes_from(self.day_near(day));
            text.push_str(&format!(" · {when}"));
        }
        if !more.is_empty() {
            text.push_str(&format!(" · {}", self.wording.more_reasons(more.len() as i64)));
        }
        text
    }
}

/// The mark of a verdict: `x` something blocks, `?` only unknown things do, `+` nothing does.
fn mark_of(criteria: &[Criterion]) -> (&'static str, Ink) {
    let mut blocking = criteria.iter().filter(|criterion| criterion.blocks).peekable();
    if blocking.peek().is_none() {
        return ("+", Ink::Ready);
    }
    if blocking.all(|criterion| criterion.met().is_none()) { ("?", Ink::Waits) } else { ("x", Ink::Waits) }
}

/// A name as it is typed on a command line: in quotes where it holds a blank.
pub(super) fn shown_as_argument(name: &str) -> String {
    if name.contains(' ') { format!("\"{name}\"") } else { name.to_string() }
}

/// A tray for a bed, in words.
struct FitRow {
    first: bool,
    tray: String,
    species: String,
    plants: String,
    bed: String,
    before: String,
}

/// The columns of the rows that fit; none where the page is too narrow for them.
struct FitColumns {
    tray: usize,
    species: usize,
    plants: usize,
    bed: usize,
}

impl FitColumns {
    fn of(rows: &[FitRow], width: usize) -> Option<FitColumns> {
        let widest = |part: fn(&FitRow) -> &str| rows.iter().map(|row| width_of(part(row))).max().unwrap_or(0);
        let (tray, plants) = (widest(|row| &row.tray), widest(|row| &row.plants));
        let (bed, before) = (widest(|row| &row.bed), widest(|row| &row.before));
        // Mark and blank, then the gaps between columns with the arrow before the bed.
        let taken = 2 + tray + 2 + 2 + plants + 3 + bed + 2 + before;
        let species = width.checked_sub(taken)?.min(widest(|row| &row.species));
        (width >= WIDE && species >= LEAST_NAME).then_some(FitColumns { tray, species, plants, bed })
    }

    fn line(&self, row: &FitRow) -> (String, String) {
        let (tray, species) = (left_aligned(&row.tray, self.tray), shortened(&row.species, self.species));
        let species = left_aligned(&species, self.species);
        let plants = right_aligned(&row.plants, self.plants);
        if row.first {
            let rest = format!("{species}  {plants} → {}  {}", left_aligned(&row.bed, self.bed), row.before);
            return (format!("+ {tray}  "), rest);
        }
        let blanks = 2 + self.tray + 2 + self.species + 2;
        (String::new(), format!("{}{plants} → {}", " ".repeat(blanks), row.bed))
    }
}

#[cfg(test)]
#[path = "ready_text_tests.rs"]
mod tests;
