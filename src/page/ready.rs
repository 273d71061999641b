//! The main answer: what can go out, what is ready without a bed, what the others wait for.

use super::rows::{Named, Offer, TrayRow};
use super::{Asked, Mark, Page, Tone, names_to_watch, take_care};
use crate::base::{Day, PlaceName, TrayCode};
use crate::reckon::field::waits_for;
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::{BedPicture, BedSpecies, Criterion, Looking, Pair, Picture, Rule, Stage, TrayPicture};
use crate::reckon::round::go_by;
use crate::reckon::shared_offers;
use crate::reckon::tray::closed::{self, Spared};
use crate::wording::Wording;
use crate::wording::verdict::About;

/// The stages nearest to going out come first; what is past its container before all.
const STAGES: [Stage; 7] =
    [Stage::Overdue, Stage::Ready, Stage::Hardening, Stage::GrowingOn, Stage::PrickedOut, Stage::Emerging, Stage::Sown];

/// So many trays that wait for one treated among them are worth a word on a corner for sprays. Ours.
const WAITING_FOR_ONE: usize = 3;

/// The most letters of a reason in a list; `why` has it whole. Ours: five lines of that column.
const GLANCE_LETTERS: usize = 240;

/// What is ready, with a line on what changed since yesterday before it; a new nursery is told how to begin. `has_beds`: whether
/// any bed is laid out, where what is shown was narrowed.
pub(crate) fn ready(asked: Asked<'_>, since: Option<String>, is_new: bool, has_beds: bool) -> Page {
    let mut answer = Ready { has_beds, ..Ready::new(asked) };
    since.into_iter().for_each(|since| answer.page.sentence(since));
    if is_new {
        answer.page.first_tray(asked.wording);
        answer.page.sentence(asked.wording.teach_standing_tray());
        answer.page.line(1, asked.wording.teach_standing_tray_command(), Tone::Strong);
    } else {
        answer.fits();
        answer.without_bed();
        answer.not_yet();
    }
    answer.beds();
    answer.doubts();
    answer.unplanned();
    answer.hint();
    answer.page
}

/// The answer while it is laid out.
pub(super) struct Ready<'a> {
    pub(super) picture: &'a Picture,
    pub(super) wording: &'a Wording,
    pub(super) page: Page,
    /// Whether any bed is laid out.
    has_beds: bool,
}

impl<'a> Ready<'a> {
    /// An answer in which nothing is said yet.
    pub(super) fn new(asked: Asked<'a>) -> Ready<'a> {
        let has_beds = !asked.picture.beds.is_empty();
        Ready { picture: asked.picture, wording: asked.wording, page: Page::default(), has_beds }
    }

    /// Trays with at least one bed that fits, each with its beds under each other.
    fn fits(&mut self) {
        let wording = self.wording;
        let today = self.picture.looking == Looking::Today;
        let day = wording.day(self.picture.day);
        self.page.heading(if today { wording.ready_heading() } else { wording.ready_heading_on(day.clone()) });
        let fits: Vec<&Pair> = self.picture.pairs.iter().filter(|pair| pair.fits).collect();
        if fits.is_empty() {
            self.page.sentence(if today { wording.ready_none() } else { wording.ready_none_on(day) });
            return;
        }
        let mut offers: Vec<Offer> = Vec::new();
        for pair in &fits {
            if offers.iter().any(|offer| offer.tray == pair.tray().as_str()) {
                continue;
            }
            let tray = self.picture.trays.get(pair.tray());
            let same: Vec<&Pair> = fits.iter().copied().filter(|other| other.tray() == pair.tray()).collect();
            offers.push(Offer {
                tray: pair.tray().to_string(),
                species: tray.map(|tray| self.species(tray)).unwrap_or_default(),
                to: same.iter().map(|same| (wording.plants(same.plants), same.bed().to_string())).collect(),
                before: tray.and_then(|tray| self.go_by(tray, Some(pair))).unwrap_or_default(),
                care: take_care(&same, wording).unwrap_or_default(),
            });
        }
        let has_pest =
            |code: &str| self.picture.trays.values().any(|tray| tray.code.as_str() == code && tray.has_pest());
        offers.sort_by_cached_key(|offer| has_pest(&offer.tray));
        self.page.offers(offers);
        for offer in &shared_offers(self.picture) {
            self.page.line(1, wording.shared_offer(offer, &self.picture.site.species), Tone::Plain);
        }
    }

    /// By which day a tray goes out, and what ends then.
    pub(super) fn go_by(&self, tray: &TrayPicture, pair: Option<&Pair>) -> Option<String> {
        let (last, what) = go_by(tray, pair, self.picture.day)?;
        Some(self.wording.go_by_words(self.day_near(last), what))
    }

    /// That a tray's own time ends before the bed it misses least can take it.
    fn ends_before(&self, tray: &TrayPicture) -> Option<String> {
        let (last, what) = go_by(tray, None, self.picture.day)?;
        let nearest = self.picture.pairs.nearest(&tray.code)?.once();
        let asked = nearest.criteria.once();
        let waits = waits_for(&asked, self.picture.day).into_iter();
        let from = waits.filter_map(|criterion| criterion.expected).max()?;
        (from > last).then(|| self.wording.ends_before_words(self.day_near(last), what))
    }

    /// Why no bed takes a tray; none where one does.
    pub(super) fn no_bed(&self, tray: &TrayPicture) -> Option<String> {
        (!self.has_fit(&tray.code)).then(|| self.nearest_miss(tray))
    }

    /// What keeps a tray out of the bed that it misses least.
    fn nearest_miss(&self, tray: &TrayPicture) -> String {
        match self.picture.pairs.nearest(&tray.code) {
            Some(pair) => self.miss_of(pair),
            None => self.wording.not_planned(tray.species.as_ref(), self.picture),
        }
    }

    fn miss_of(&self, pair: &Pair) -> String {
        self.wording.in_bed(pair.bed(), self.waits_for(&pair.once().criteria.once(), About::Pair))
    }

    /// Ready trays that fit no bed, each with its nearest miss.
    pub(super) fn rows_without_bed(&self) -> Vec<TrayRow> {
        self.trays()
            .filter(|tray| tray.ready && !self.has_fit(&tray.code))
            .map(|tray| {
                let mut text = self.nearest_miss(tray);
                if let Some(until) = self.ends_before(tray).or_else(|| self.go_by(tray, None)) {
                    text.push_str(&format!(" · {until}"));
                }
                self.row(tray, "~", Tone::Waits, text)
            })
            .collect()
    }

    fn without_bed(&mut self) {
        let rows = self.rows_without_bed();
        if !rows.is_empty() {
            self.page.heading(self.without_bed_heading());
            self.page.trays(vec![(None, rows)]);
        }
    }

    pub(super) fn without_bed_heading(&self) -> String {
        let wording = self.wording;
        let is_today = self.picture.looking == Looking::Today;
        if is_today { wording.no_bed_heading() } else { wording.no_bed_heading_on(wording.day(self.picture.day)) }
    }

    /// All other trays by stage, each with what it waits for; empty ones by name.
    fn not_yet(&mut self) {
        let others = || self.trays().filter(|tray| !tray.ready && !self.has_fit(&tray.code));
        let empty: Vec<String> =
            others().filter(|tray| tray.stage == Stage::Spent).map(|tray| tray.code.to_string()).collect();
        let mut groups = Vec::new();
        for stage in STAGES {
            let mut trays: Vec<&TrayPicture> = others().filter(|tray| tray.stage == stage).collect();
            trays.sort_by_key(|tray| (tray.ready_from.is_none(), tray.ready_from, tray.code.clone()));
            let rows: Vec<TrayRow> = trays.iter().map(|tray| self.waiting_row(tray)).collect();
            if !rows.is_empty() {
                groups.push((Some(self.wording.stage_name(stage)), rows));
            }
        }
        if groups.is_empty() && empty.is_empty() {
            return;
        }
        self.page.heading(self.wording.not_yet_heading());
        self.page.trays(groups);
        self.spared();
        if !empty.is_empty() {
            self.page.line(1, self.wording.empty_trays(empty.join(", ")), Tone::Plain);
        }
    }

    /// Of each place that one treated tray closes to others: how they may be spared.
    pub(super) fn spared(&mut self) {
        for name in self.picture.closed.keys() {
            self.spared_at(name, None).into_iter().for_each(|said| self.page.line(1, said, Tone::Plain));
        }
    }

    /// How the trays of a place may be spared that one treated tray closes to them, as said of one of them: what would have spared them
    /// is said at the treated one.
    pub(super) fn spared_at(&self, name: &PlaceName, of: Option<&TrayCode>) -> Option<String> {
        let spared = closed::spared(&self.picture.closed, name, |tray| Some(&*self.picture.trays.get(tray)?.story))?;
        let (Spared::CarriedOff(tray) | Spared::Apart(tray)) = &spared;
        let waits = |other: &&TrayPicture| {
            let beside = other.place.as_ref() == Some(name) && other.code != *tray && other.stage != Stage::Spent;
            beside && other.criteria.iter().any(|one| one.rule() == Rule::Treated && one.blocks)
        };
        let others = self.trays().filter(waits).count();
        match &spared {
            Spared::CarriedOff(tray) if others > 0 => Some(self.wording.spared_carried_off(name, tray)),
            Spared::Apart(tray) if others >= WAITING_FOR_ONE && of.is_none_or(|of| of == tray) => {
                Some(self.wording.spared_apart(name, tray, others))
            }
            Spared::CarriedOff(_) | Spared::Apart(_) => None,
        }
    }

    /// A tray that is not ready, with what it waits for.
    pub(super) fn waiting_row(&self, tray: &TrayPicture) -> TrayRow {
        let (mark, tone) = mark_of(&tray.criteria);
        let tone = if tray.stage == Stage::Overdue { Tone::Danger } else { tone };
        self.row(tray, mark, tone, self.tray_waits_for(tray))
    }

    /// A tray as it stands: its beds, what keeps it out of them, or what it waits for.
    pub(super) fn row_of(&self, tray: &TrayPicture) -> TrayRow {
        let pairs = self.picture.pairs.of(&tray.code).iter().filter(|pair| pair.fits);
        let beds: Vec<String> = pairs.map(|pair| pair.bed().to_string()).collect();
        match (beds.is_empty(), tray.ready) {
            (false, _) => self.row(tray, "+", Tone::Good, format!("→ {}", beds.join(", "))),
            (true, true) => self.row(tray, "~", Tone::Waits, self.nearest_miss(tray)),
            (true, false) => self.waiting_row(tray),
        }
    }

    fn row(&self, tray: &TrayPicture, mark: &str, tone: Tone, text: String) -> TrayRow {
        TrayRow {
            mark: Mark::Sign(mark.to_string(), tone),
            tray: tray.code.to_string(),
            species: self.species(tray),
            standing: tray.standing,
            plants: self.wording.plants(tray.standing),
            text,
        }
    }

    fn beds(&mut self) {
        let wording = self.wording;
        if self.picture.beds.is_empty() && self.picture.trays.is_empty() {
            return;
        }
        self.page.heading(wording.beds_heading());
        if self.picture.beds.is_empty() {
            self.page.sentence(if self.has_beds { wording.no_bed_asked() } else { wording.teach_first_bed() });
        }
        for bed in self.picture.beds.values() {
            let light = match &bed.light_now {
                Some(light) => wording.light_of_bed(light, |day| self.day_near(day)),
                None => wording.light_not_read(bed.light_reckoned()),
            };
            self.page.led(bed.name.to_string(), light);
            if bed.species.is_empty() {
                self.page.line(1, wording.bed_plans_nothing(), Tone::Plain);
            }
            self.page.named(bed.species.iter().map(|one| self.bed_line(bed, one)).collect());
        }
    }

    pub(super) fn bed_line(&self, bed: &BedPicture, one: &BedSpecies) -> Named {
        let wording = self.wording;
        let (mark, tone) = mark_of(&one.criteria);
        let standing = wording.standing_name(one.standing);
        let open = wording.bed_has_open(one.open_positions, one.positions);
        let watch = names_to_watch(&one.criteria, wording);
        let watch = if watch.is_empty() { String::new() } else { format!(" · {}", wording.take_care(watch)) };
        let text = if one.criteria.iter().any(|criterion| criterion.blocks) {
            self.waits_for(&one.criteria, About::Bed)
        } else if bed.light_now.is_some() {
            format!("{open}, {}{watch}", wording.bed_in_light(one.in_light))
        } else {
            format!("{open}{watch}")
        };
        Named {
            mark: Mark::Sign(mark.to_string(), tone),
            name: wording.species_of(&one.species, &self.picture.site.species),
            text: format!("{standing}: {text}"),
        }
    }

    pub(super) fn doubts(&mut self) {
        if self.picture.doubts.is_empty() {
            return;
        }
        self.page.heading(self.wording.doubts_heading());
        for doubt in &self.picture.doubts {
            let sentence = self.wording.doubt(doubt, &self.picture.site.species);
            self.page.marked(0, Mark::Sign("!".to_string(), Tone::Danger), sentence, Tone::Plain);
        }
    }

    /// Ready trays that no bed plans.
    pub(super) fn unplanned(&mut self) {
        if self.picture.unplanned.is_empty() {
            return;
        }
        self.page.heading(self.wording.unplanned_heading());
        for tray in &self.picture.unplanned {
            let sentence = self.wording.unplanned(tray, self.picture);
            self.page.marked(0, Mark::Sign("!".to_string(), Tone::Waits), sentence, Tone::Plain);
        }
    }

    fn hint(&mut self) {
        let waiting = self.trays().find(|tray| !tray.ready && tray.stage != Stage::Spent);
        if let Some(tray) = waiting.or_else(|| self.trays().next()) {
            self.page.gap();
            self.page.sentence(self.wording.hint_why_tray(crate::base::text::as_argument(tray.code.as_str())));
        }
    }

    pub(super) fn trays(&self) -> impl Iterator<Item = &'a TrayPicture> + use<'a> {
        self.picture.trays.values().map(AsRef::as_ref)
    }

    pub(super) fn has_fit(&self, tray: &TrayCode) -> bool {
        self.picture.pairs.of(tray).iter().any(|pair| pair.fits)
    }

    pub(super) fn species(&self, tray: &TrayPicture) -> String {
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

    /// What a tray that is not ready waits for: its own first reason, else that of its nearest bed.
    fn tray_waits_for(&self, tray: &TrayPicture) -> String {
        if let Some((_, pair)) = self.picture.goes_before(tray) {
            return self.miss_of(pair);
        }
        if tray.criteria.iter().any(|criterion| criterion.blocks) {
            return self.waits_for(&tray.criteria, About::Tray);
        }
        self.nearest_miss(tray)
    }

    /// What blocks longest, when it ends, and how much more there is.
    fn waits_for(&self, criteria: &[Criterion], about: About) -> String {
        let blocking = waits_for(criteria, self.picture.day);
        let Some((first, more)) = blocking.split_first() else { return self.wording.bed_nothing_waits() };
        let mut text = clauses_within(&self.wording.reason(first, about), GLANCE_LETTERS);
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

/// The first clauses of a text that have room in so many letters, and a sign where more follow; the first one always.
fn clauses_within(text: &str, letters: usize) -> String {
    if text.chars().count() <= letters {
        return text.to_string();
    }
    let ends = text.match_indices([';', '.']).map(|(at, _)| at).filter(|at| text[at + 1..].starts_with(' '));
    let (within, past): (Vec<usize>, Vec<usize>) = ends.partition(|at| text[..*at].chars().count() <= letters);
    match within.last().or(past.first()) {
        Some(at) => format!("{} …", &text[..*at]),
        None => text.to_string(),
    }
}

/// The mark of a verdict: `x` something blocks, `?` only unknown things do, `+` nothing does.
fn mark_of(criteria: &[Criterion]) -> (&'static str, Tone) {
    let mut blocking = criteria.iter().filter(|criterion| criterion.blocks).peekable();
    if blocking.peek().is_none() {
        return ("+", Tone::Good);
    }
    let only_unknown = blocking.all(|criterion| criterion.answered() == Answered::UnknownHoldsBack);
    if only_unknown { ("?", Tone::Waits) } else { ("x", Tone::Waits) }
}
