//! What a person is asked or told about an entry before it is written: it can be true, but may be a slip, or unwise.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry as Place;
use std::sync::Arc;

mod harm;
mod held;
mod named;
mod odd;
mod sick;

pub use named::NewName;
pub(in crate::desk) use named::known_names;
pub use odd::Odd;

use super::judge::Trial;
use super::refusal::is_a_share;
use super::{Desk, DeskError};
use crate::base::text::folded;
use crate::base::{BedName, Clock, Day, LotCode, PlaceName, TrayCode, name_search};
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::{BookEntry, Entry, GroundEntry, Outplanted, SeedEntry, SiteEntry, TrayEntry, What};
use crate::nursery::envelope::Draft;
use crate::reckon::bed::sick::of_beds;
use crate::reckon::field::waits_for;
use crate::reckon::light::advice::after_cut::{LightJump, jump_by};
use crate::reckon::lots::{LotOutlook, lot_outlook, whole_after_days};
use crate::reckon::picture::{Basis, Criterion, DoubtKind, Picture, Rule};
use crate::reckon::stock::{TrayStory, missed_of};
use crate::reckon::tray::closed::{Closed, closed_places};
use crate::reckon::tray::hold;
use crate::reckon::tray::pest::kin::Kin;
use crate::reckon::tray::size::whole_plants;
use crate::reckon::{Fold, View};

/// A cut is asked about while it is no older than this. Ours: yesterday's may not be finished.
const CUT_ASKED_DAYS: i32 = 1;
/// A loss is asked about where it is more than this share of a tray.
const LARGE_LOSS: f64 = 0.5;
/// In trays of fewer plants a loss of more than half is nothing out of the way. Ours.
const LEAST_TRAY: u64 = 5;

/// A count of more than so many times what can stand is asked about, and so is an arrival of more plants than these. Ours.
const MANY_TIMES: u64 = 2;
const LARGEST_ARRIVAL: u32 = 100_000;

/// Seed of a warm bed or soaked seed comes up before its usual first day; before this share of it, from sowing, none does. Ours.
const LEAST_OF_FIRST_DAYS: f64 = 0.4;

/// Something about an entry that is to be written.
#[derive(Clone, PartialEq, Debug)]
pub enum Remark {
    /// The same was written already of the same day.
    Again {
        /// The day it was recorded on, and the time of day.
        on: Day,
        /// The time of day.
        at: Clock,
    },
    /// The same stands in another line of the batch.
    SameAsLine(usize),
    /// Of a day with rain another rain is told, which takes its place.
    RainTwice {
        /// The day.
        day: Day,
        /// What stands written, mm.
        before_mm: f64,
        /// What is told now, mm.
        now_mm: f64,
    },
    /// More than half of a tray is gone by it.
    HalfGone {
        /// The tray.
        tray: TrayCode,
        /// Plants gone.
        gone: u64,
        /// Plants that stood by the books.
        stood: u64,
        /// Whether it was written as a loss: the number may be a count.
        is_loss: bool,
    },
    /// More seedlings counted than the seed can have given.
    MoreThanSeed {
        /// The tray.
        tray: TrayCode,
        /// Counted.
        counted: u32,
        /// The most the seeds can have given.
        most: u32,
    },
    /// Many more counted than can stand.
    ManyMore {
        /// The tray.
        tray: TrayCode,
        /// Counted.
        counted: u64,
        /// Standing by the books, with the seed that may still come up.
        most: u64,
    },
    /// More plants measured than stood when they were counted, while seed is still due.
    MoreMeasured {
        /// The tray.
        tray: TrayCode,
        /// Measured.
        measured: u32,
        /// Standing by the last count.
        stood: u64,
    },
    /// More alive in a bed than by the last count and what was planted since.
    AliveAgain {
        /// The bed.
        bed: BedName,
        /// Counted.
        alive: u32,
        /// By the books.
        lived: u32,
    },
    /// A cut lets in much more light at once on the young plants beneath.
    LightJumps {
        /// The bed.
        bed: BedName,
        /// On which plants, and how much.
        jump: LightJump,
    },
    /// A look that found none of a sickness, before one tells.
    LookEarly {
        /// The tray.
        about: String,
        /// The day from which one tells.
        from: Day,
    },
    /// Seedlings counted before any can have come up.
    BeforeEmergence {
        /// The tray.
        tray: TrayCode,
        /// Counted.
        counted: u32,
        /// The day it was sown.
        sown: Day,
        /// Days from sowing to the first of the species, where that is known.
        first_days: Option<f64>,
    },
    /// Plants without soil are said to be good for longer than they usually keep.
    KeptLong {
        /// The tray.
        tray: TrayCode,
        /// Days.
        days: i32,
        /// Days that they keep at most.
        usual: i32,
    },
    /// Seed is sown of a lot that is dead by all that is known of it, or past its stated life.
    SeedDead {
        /// The lot.
        lot: LotCode,
        /// What is known of it.
        outlook: Box<LotOutlook>,
        /// The day it is sown.
        day: Day,
    },
    /// Plants go out that are not ready, or into what is not.
    NotReady {
        /// The tray.
        tray: TrayCode,
        /// The bed.
        bed: BedName,
        /// The first reason.
        why: Box<Criterion>,
        /// The waiting time of the bed, where the first reason is one of the tray.
        also: Option<Box<Criterion>>,
        /// How many more there are.
        more: usize,
    },
    /// Plants are given to somebody while a waiting time runs, with a pest or a sickness that holds them here, or while a person holds them.
    GivenUnfit {
        /// The tray.
        tray: TrayCode,
        /// The first reason.
        why: Box<Criterion>,
    },
    /// More plants go out than were good enough by what was measured.
    MoreThanReady {
        /// The tray.
        tray: TrayCode,
        /// Plants that go.
        planted: u32,
        /// Plants that were good enough, likely.
        ready: u32,
    },
    /// Hands go where a waiting time runs, or is not known.
    HandsInWait {
        /// The tray, the place or the bed.
        about: String,
        /// The wait.
        why: Box<Criterion>,
    },
    /// A pest or a sickness of which nobody here knows whether it goes along with plants.
    UnknownPest {
        /// Its name.
        what: String,
    },
    /// A germination test that ended before the last of its species can come up.
    TestEarly {
        /// The lot.
        lot: LotCode,
        /// Germinated, of so many laid out.
        counts: (u32, u32),
        /// Days it ran.
        days: u32,
        /// Days after which it is whole.
        whole_days: i32,
        /// The day until which to count.
        until: Day,
    },
    /// Plants were wetted with what kills weeds.
    MayScorch {
        /// What was used.
        with: String,
    },
    /// Something was used of which nobody here knows whether it harms plants, and its time before planting is not written.
    MayKill {
        /// What was used.
        with: String,
        /// Whether it is known to kill weeds.
        is_known: bool,
    },
    /// What kills weeds is said to let anything be planted at once.
    PlantedAtOnce {
        /// What was used.
        with: String,
    },
    /// Something was used, and nobody wrote how long its label says to stay away.
    NoWaitingTime {
        /// What was used.
        with: String,
        /// The day of it.
        day: Day,
    },
    /// A percentage below one that may be meant as a share of one.
    LikeAShare(f64),
    /// Something that is rarely meant.
    Odd(Odd),
    /// A note about something that nothing in the book is called.
    AboutNothing {
        /// As written.
        about: String,
        /// The nearest names of the book.
        nearest: Vec<String>,
    },
    /// A place or a kind of container that the book does not know.
    NewName(NewName),
    /// Something is written of a tray on a day before it came.
    BeforeItCame {
        /// The tray.
        tray: TrayCode,
        /// The day written.
        day: Day,
        /// The first day the book knows of it.
        came: Day,
    },
    /// Plants are moved on into a new tray, and nobody wrote in what they stand there.
    NoContainer {
        /// The new tray.
        tray: TrayCode,
    },
    /// A loss or a cull names a sickness: it is a sighting of the tray.
    LossNames {
        /// The tray.
        tray: TrayCode,
        /// As written.
        what: String,
    },
    /// A release that names none of several holds: all of them end by it.
    LetsGoOfAll {
        /// Of what.
        about: String,
        /// Why it is held.
        reasons: Vec<String>,
    },
    /// Plants that are held back go to others or into another tray.
    HoldGoesAlong {
        /// The tray.
        tray: TrayCode,
        /// The tray to which they go.
        to: TrayCode,
        /// The hold.
        why: Box<Criterion>,
    },
    /// Plants leave a place that is held.
    LeavesHeld {
        /// The tray.
        tray: TrayCode,
        /// The place.
        place: PlaceName,
        /// The hold.
        why: Box<Criterion>,
    },
    /// Plants with a sickness, or hands and a knife from among them, come to others.
    FromSick {
        /// The tray.
        tray: TrayCode,
        /// What it has.
        what: String,
    },
    /// A tray comes to a place with a sickness.
    ToSick {
        /// The place.
        place: PlaceName,
        /// What was seen there.
        what: String,
    },
    /// A sickness, or something that was used, named where it holds nothing back.
    OnlyNamed {
        /// Whether it is a sickness; else what was used.
        sickness: bool,
        /// As written.
        what: String,
    },
}

impl Remark {
    /// Whether it is asked about; what is not is only told.
    pub fn is_asked(&self) -> bool {
        match self {
            Remark::Again { .. }
            | Remark::SameAsLine(_)
            | Remark::RainTwice { .. }
            | Remark::HalfGone { .. }
            | Remark::MoreThanSeed { .. }
            | Remark::ManyMore { .. }
            | Remark::LetsGoOfAll { .. }
            | Remark::MoreMeasured { .. }
            | Remark::AliveAgain { .. }
            | Remark::LightJumps { .. }
            | Remark::BeforeEmergence { .. }
            | Remark::KeptLong { .. }
            | Remark::AboutNothing { .. }
            | Remark::PlantedAtOnce { .. }
            | Remark::NewName(_)
            | Remark::BeforeItCame { .. }
            | Remark::LikeAShare(_)
            | Remark::Odd(_) => true,
            // A person may have cut it open and know better, but is warned before it lies in the ground.
            Remark::SeedDead { outlook, day, .. } => outlook.is_gone(*day),
            Remark::NotReady { .. }
            | Remark::GivenUnfit { .. }
            | Remark::MoreThanReady { .. }
            | Remark::HandsInWait { .. }
            | Remark::UnknownPest { .. }
            | Remark::MayScorch { .. }
            | Remark::TestEarly { .. }
            | Remark::MayKill { .. }
            | Remark::NoWaitingTime { .. }
            | Remark::LossNames { .. }
            | Remark::HoldGoesAlong { .. }
            | Remark::LeavesHeld { .. }
            | Remark::FromSick { .. }
            | Remark::ToSick { .. }
            | Remark::LookEarly { .. }
            | Remark::NoContainer { .. }
            | Remark::OnlyNamed { .. } => false,
        }
    }
}

impl Desk {
    /// What there is to ask or tell about drafts, each with its place among them, from 0. Nothing is written; what would be
    /// refused has no remarks.
    ///
    /// # Errors
    /// The file, where the book has to be looked up.
    pub fn remarks(&mut self, drafts: &[Draft]) -> Result<Vec<(usize, Remark)>, DeskError> {
        self.refresh()?;
        let device = self.journal.device()?;
        self.look_up_named(&mut drafts.iter().map(std::borrow::Cow::Borrowed))?;
        match self.with_trial(drafts.to_vec(), self.now.moment, device, |_, trial| trial) {
            Ok(trial) => self.remarks_on(&trial),
            Err(DeskError::Refused(_)) => Ok(Vec::new()),
            Err(fault @ DeskError::Journal(_)) => Err(fault),
        }
    }

    /// What there is to ask or tell about what was tried and taken out again.
    pub(super) fn remarks_on(&self, trial: &Trial) -> Result<Vec<(usize, Remark)>, DeskError> {
        let mut pictures: BTreeMap<Day, Picture> = BTreeMap::new();
        let mut closed: BTreeMap<Day, Closed> = BTreeMap::new();
        let mut kin: BTreeMap<Day, Kin> = BTreeMap::new();
        let new_names = named::new_names(&self.fold, trial).into_iter().map(|(at, new)| (at, Remark::NewName(new)));
        let no_container = named::no_container(&self.fold, trial).into_iter();
        let no_container = no_container.map(|(at, tray)| (at, Remark::NoContainer { tray }));
        let mut all: Vec<(usize, Remark)> = new_names.chain(no_container).collect();
        for (at, entry) in trial.tried.iter().enumerate() {
            let earlier = trial.tried.iter().take(at).position(|other| is_same(other, entry));
            all.extend(earlier.map(|line| (at, Remark::SameAsLine(line + 1))));
            all.extend(self.written_already(entry).map(|remark| (at, remark)));
            all.extend(rain_twice(&self.fold, &trial.tried[..at], entry).map(|remark| (at, remark)));
            all.extend(half_gone(&self.fold, entry).map(|remark| (at, remark)));
            all.extend(held::lets_go_of_all(&self.fold, entry).map(|remark| (at, remark)));
            all.extend(many_more(&self.fold, entry).map(|remark| (at, remark)));
            all.extend(counted_too_many(trial, entry).map(|remark| (at, remark)));
            all.extend(more_measured(&self.fold, entry).map(|remark| (at, remark)));
            all.extend(before_it_came(&self.fold, trial, entry).map(|remark| (at, remark)));
            all.extend(before_emergence(&self.fold, entry).map(|remark| (at, remark)));
            all.extend(self.light_jumps(entry).map(|remark| (at, remark)));
            all.extend(kept_long(&self.fold, entry).map(|remark| (at, remark)));
            all.extend(seed_dead(&self.fold, entry).map(|remark| (at, remark)));
            all.extend(test_early(&self.fold, entry).map(|remark| (at, remark)));
            all.extend(self.about_nothing(trial, entry).map(|remark| (at, remark)));
            all.extend(harm::unknown_pest(entry).map(|remark| (at, remark)));
            all.extend(harm::no_waiting_time(&self.fold, entry).map(|remark| (at, remark)));
            all.extend(harm::planted_at_once(entry).map(|remark| (at, remark)));
            all.extend(harm::may_kill(entry).map(|remark| (at, remark)));
            all.extend(like_a_share(entry).map(|remark| (at, remark)));
            all.extend(self.odd(entry)?.map(|odd| (at, Remark::Odd(odd))));
            all.extend(harm::only_named(&trial.tried, entry).map(|remark| (at, remark)));
            if let What::Tray(_) = &entry.what {
                let day = entry.happened;
                let kin = kin.entry(day).or_insert_with(|| {
                    let from_beds = of_beds(self.fold.beds().values(), self.fold.site(), day);
                    Kin::of(self.fold.trays(), from_beds, day)
                });
                all.extend(sick::told_of(&self.fold, kin, entry).map(|remark| (at, remark)));
                all.extend(held::told_of(&self.fold, kin, entry).map(|remark| (at, remark)));
            }
            if harm::takes_hands(&entry.what) {
                let places = closed
                    .entry(entry.happened)
                    .or_insert_with(|| closed_places(self.fold.trays().values(), self.fold.places(), entry.happened));
                all.extend(harm::hands_in_wait(&self.fold, places, entry).map(|remark| (at, remark)));
            }
            if matches!(&entry.what, What::Ground(GroundEntry::Outplanted(_)) | What::Tray(TrayEntry::GivenOut(_))) {
                let then = match pictures.entry(entry.happened) {
                    Place::Occupied(known) => known.into_mut(),
                    Place::Vacant(place) => place.insert(self.picture_of(View { day: entry.happened, known: None })?),
                };
                all.extend(not_ready(then, entry).or_else(|| given_unfit(then, entry)).map(|remark| (at, remark)));
            }
        }
        Ok(all)
    }

    /// A cut of today under which young plants stand. What was cut long ago is no question any more.
    fn light_jumps(&self, entry: &Entry) -> Option<Remark> {
        let What::Ground(GroundEntry::NurseCut(cut)) = &entry.what else { return None };
        let lately = self.now.today.days_since(entry.happened) <= CUT_ASKED_DAYS;
        let story = self.fold.beds().get(&cut.bed).filter(|_| lately)?;
        let jump = jump_by(story, self.fold.site(), cut, entry.happened)?;
        Some(Remark::LightJumps { bed: cut.bed.clone(), jump })
    }

    /// A note about a name that nothing in the book and in the lines beside it bears.
    fn about_nothing(&self, trial: &Trial, entry: &Entry) -> Option<Remark> {
        let What::Book(BookEntry::Noted(noted)) = &entry.what else { return None };
        let about = noted.about.as_ref()?.0.to_string();
        let known = self.known_names();
        let made = trial.tried.iter().flat_map(|other| subjects(&other.what)).filter_map(|subject| match subject {
            Subject::Tray(tray) => Some(tray.to_string()),
            Subject::Bed(bed) => Some(bed.to_string()),
            Subject::Lot(lot) => Some(lot.to_string()),
            Subject::Place(_) | Subject::Site => None,
        });
        let site = self.fold.site();
        let of_site = site.fields.keys().map(ToString::to_string);
        let names: Vec<String> = known
            .trays
            .into_iter()
            .chain(known.beds)
            .chain(known.lots)
            .chain(known.places)
            .chain(known.containers)
            .chain(made)
            .chain(of_site)
            .collect();
        let wanted = folded(&about);
        if names.iter().any(|name| folded(name) == wanted) || site.species.find(&about).is_some() {
            return None;
        }
        let nearest = name_search::nearest(&about, names.iter().map(String::as_str));
        Some(Remark::AboutNothing { about, nearest })
    }

    fn written_already(&self, entry: &Entry) -> Option<Remark> {
        let subject = subjects(&entry.what).into_iter().next()?;
        let written = self.fold.ledger().of(&subject);
        let last = written.filter(|other| is_same(other, entry)).last()?;
        let offset_h = self.fold.site().nursery.on(last.happened).map_or(0.0, |nursery| nursery.utc_offset_h.0);
        Some(Remark::Again { on: last.recorded.day(offset_h), at: last.recorded.clock(offset_h)? })
    }
}

/// Whether two entries say the same of the same day. What describes may be said twice, and so may the weather.
fn is_same(a: &Arc<Entry>, b: &Entry) -> bool {
    let adds = matches!(b.what, What::Tray(_) | What::Ground(_) | What::Seed(_));
    adds && a.happened == b.happened && a.what == b.what
}

/// Rain of a day that has another one, in the book or in an earlier line.
fn rain_twice(fold: &Fold, earlier: &[Arc<Entry>], entry: &Entry) -> Option<Remark> {
    let rain = |entry: &Entry| match &entry.what {
        What::Book(BookEntry::Weather(weather)) => weather.rain_mm.map(|rain| rain.0),
        _ => None,
    };
    let now_mm = rain(entry)?;
    let day = entry.happened;
    let in_lines = earlier.iter().rev().filter(|other| other.happened == day).find_map(|other| rain(other));
    let in_book = || fold.site().weather.get(&day).and_then(|(_, weather)| weather.rain_mm.map(|rain| rain.0));
    let before_mm = in_lines.or_else(in_book)?;
    (before_mm != now_mm).then_some(Remark::RainTwice { day, before_mm, now_mm })
}

/// A shade, a moisture or a part with a pest below one percent, and seed of which one in a hundred is alive: less than that is
/// refused where it is read, and 1 is how a share says all.
fn like_a_share(entry: &Entry) -> Option<Remark> {
    let percents = match &entry.what {
        What::Site(SiteEntry::PlaceSet(place)) => vec![Some(place.shade_pct)],
        What::Tray(TrayEntry::ShadeSet(shade)) => vec![Some(shade.shade_pct)],
        What::Tray(TrayEntry::PestSeen(seen)) => vec![seen.share_pct],
        What::Tray(TrayEntry::PlantsReceived(came)) => vec![came.shade_now_pct],
        What::Seed(SeedEntry::LotReceived(lot)) => {
            let all = lot.initial_pct.filter(|pct| pct.0 == 1.0);
            if all.is_some() {
                return Some(Remark::LikeAShare(1.0));
            }
            vec![lot.moisture_pct]
        }
        What::Seed(SeedEntry::LotKept(lot)) => vec![lot.moisture_pct],
        _ => return None,
    };
    let mut shares = percents.into_iter().flatten().map(|percent| percent.0).filter(|percent| is_a_share(*percent));
    shares.next().map(Remark::LikeAShare)
}

/// More than half of a tray lost, or counted away. What was written of later days is not looked through.
fn half_gone(fold: &Fold, entry: &Entry) -> Option<Remark> {
    let (tray, gone) = match &entry.what {
        What::Tray(TrayEntry::Lost(lost)) => (&lost.tray, Some(u64::from(lost.count.0))),
        What::Tray(TrayEntry::Counted(look)) if look.cells_seen.is_none() => (&look.tray, None),
        _ => return None,
    };
    let story = story_now(fold, entry, tray)?;
    let stood = story.accounts.standing;
    let counted = || match &entry.what {
        What::Tray(TrayEntry::Counted(look)) => stood.saturating_sub(u64::from(look.standing.0)),
        _ => 0,
    };
    let gone = gone.unwrap_or_else(counted);
    let is_loss = matches!(&entry.what, What::Tray(TrayEntry::Lost(_)));
    let large = stood >= LEAST_TRAY && gone <= stood && gone as f64 > stood as f64 * LARGE_LOSS;
    large.then(|| Remark::HalfGone { tray: story.code.clone(), gone, stood, is_loss })
}

/// The story of a tray that an entry names by the code of its day.
fn story_of<'a>(fold: &'a Fold, entry: &Entry, tray: &TrayCode) -> Option<&'a TrayStory> {
    fold.trays().get(&fold.ledger().tray_at(tray, &entry.order_key())).map(|story| &**story)
}

/// The same where nothing was written of later days: those are not looked through.
fn story_now<'a>(fold: &'a Fold, entry: &Entry, tray: &TrayCode) -> Option<&'a TrayStory> {
    story_of(fold, entry, tray).filter(|story| story.last_on.is_none_or(|last| last <= entry.happened))
}

/// A count or a stocktake of many more than stand by the books and may still come up, or an arrival as large as none is.
fn many_more(fold: &Fold, entry: &Entry) -> Option<Remark> {
    let (tray, counted) = match &entry.what {
        What::Tray(TrayEntry::Counted(look)) if look.cells_seen.is_none() => (&look.tray, u64::from(look.standing.0)),
        What::Tray(TrayEntry::Stocktaken(look)) => (&look.tray, u64::from(look.standing.0)),
        What::Tray(TrayEntry::PlantsReceived(came)) if came.count.0 > LARGEST_ARRIVAL => {
            let (counted, most) = (u64::from(came.count.0), u64::from(LARGEST_ARRIVAL));
            return Some(Remark::ManyMore { tray: came.tray.clone(), counted, most });
        }
        _ => return None,
    };
    let story = story_now(fold, entry, tray)?;
    // Of seed that nobody counted yet the seeds themselves are the most.
    let uncounted = story.counts.is_empty() && story.accounts.standing == 0;
    if uncounted || story.seed_unknown || story.origin.is_none() {
        return None;
    }
    let stood = story.accounts.standing;
    let most = if story.seed_is_due(entry.happened) { stood + story.accounts.seed } else { stood };
    let many = counted > most.saturating_mul(MANY_TIMES) && counted >= most + LEAST_TRAY;
    many.then(|| Remark::ManyMore { tray: story.code.clone(), counted, most })
}

/// A count that the books doubt: more seedlings than seeds, more alive in a bed than lived.
fn counted_too_many(trial: &Trial, entry: &Entry) -> Option<Remark> {
    let of_entry = trial.doubts.iter().filter(|doubt| doubt.entries.contains(&entry.id));
    of_entry.map(|doubt| &doubt.kind).find_map(|kind| match kind {
        DoubtKind::MoreThanSeed { tray, counted, most } => {
            Some(Remark::MoreThanSeed { tray: tray.clone(), counted: *counted, most: *most })
        }
        DoubtKind::AliveAgain { bed, alive, lived, .. } => {
            Some(Remark::AliveAgain { bed: bed.clone(), alive: *alive, lived: *lived })
        }
        _ => None,
    })
}

/// More plants measured than stood at the last count, where more seed may have come up since. What was written of later days is not
/// looked through.
fn more_measured(fold: &Fold, entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::Measured(sample)) = &entry.what else { return None };
    let story = story_now(fold, entry, &sample.tray)?;
    let stood = story.accounts.standing;
    let measured = u32::try_from(sample.plants.len()).unwrap_or(u32::MAX);
    let was_counted = !story.counts.is_empty() && story.seed_is_due(entry.happened);
    let more = was_counted && u64::from(measured) > stood + missed_of(stood);
    more.then(|| Remark::MoreMeasured { tray: story.code.clone(), measured, stood })
}

/// A day before the tray came, often one that was read as of a year ago.
fn before_it_came(fold: &Fold, trial: &Trial, entry: &Entry) -> Option<Remark> {
    let of_entry = trial.doubts.iter().filter(|doubt| doubt.entries.contains(&entry.id));
    let mut unknown = of_entry.filter_map(|doubt| match &doubt.kind {
        DoubtKind::UnknownTray(tray) => Some(tray),
        _ => None,
    });
    let tray = unknown.find(|tray| fold.trays().get(*tray).is_some_and(|story| story.origin.is_some()))?;
    let brings = |what: &What| {
        matches!(what, What::Tray(TrayEntry::Sown(_) | TrayEntry::PlantsReceived(_) | TrayEntry::MovedOn(_)))
    };
    let about = Subject::Tray(tray.clone());
    let of_it = fold.ledger().of(&about);
    let came = of_it.filter(|first| brings(&first.what)).map(|first| first.happened).min()?;
    let day = entry.happened;
    (day < came).then(|| Remark::BeforeItCame { tray: tray.clone(), day, came })
}

/// Seedlings counted in a tray so soon after sowing that none can be up. What is counted there may be the seeds.
fn before_emergence(fold: &Fold, entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::Counted(look)) = &entry.what else { return None };
    let story = story_of(fold, entry, &look.tray)?;
    let came_as_plants = story.accounts.arrived + story.accounts.moved_in > 0;
    let sown = story.sowings.iter().map(|sowing| sowing.day).min().filter(|_| !came_as_plants)?;
    let profile = story.species.as_ref().and_then(|key| fold.site().profile(key));
    let first_days = profile.and_then(|profile| profile.emerge_first_days.as_ref()).map(|figure| figure.value);
    let least = first_days.map_or(0.0, |days| (days * LEAST_OF_FIRST_DAYS).floor());
    let rises = u64::from(look.standing.0) > story.accounts.standing;
    let is_early = f64::from(entry.happened.number() - sown.number()) <= least;
    (rises && is_early).then(|| Remark::BeforeEmergence {
        tray: story.code.clone(),
        counted: look.standing.0,
        sown,
        first_days,
    })
}

/// Plants without soil with a last day that is later than they usually keep.
fn kept_long(fold: &Fold, entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::PlantsReceived(came)) = &entry.what else { return None };
    let key = fold.site().species_key(&came.species);
    let profile = key.and_then(|key| fold.site().profile(&key)).map(|profile| &**profile);
    let (days, usual) = hold::kept_long((came.form, came.from), (entry.happened, came.good_until), profile)?;
    Some(Remark::KeptLong { tray: came.tray.clone(), days, usual })
}

/// Seed that is dead by its lot's stated life, killed by cold, or past that life, on the day it is sown.
fn seed_dead(fold: &Fold, entry: &Entry) -> Option<Remark> {
    let lot = match &entry.what {
        What::Tray(TrayEntry::Sown(sown)) => &sown.lot,
        What::Ground(GroundEntry::SownInBed(sown)) => sown.lot.as_ref()?,
        _ => return None,
    };
    let (story, day) = (fold.lots().get(lot)?, entry.happened);
    let profile = story.species.as_ref().and_then(|key| fold.site().profile(key));
    let outlook = Box::new(lot_outlook(story, profile.map(|profile| &**profile), day));
    (outlook.is_gone(day) || outlook.is_past(day)).then(|| Remark::SeedDead { lot: lot.clone(), outlook, day })
}

/// A germination test that ended before the last can come up, with seed that has not germinated.
fn test_early(fold: &Fold, entry: &Entry) -> Option<Remark> {
    let What::Seed(SeedEntry::LotTested(test)) = &entry.what else { return None };
    let story = fold.lots().get(&test.lot)?;
    let profile = story.species.as_ref().and_then(|key| fold.site().profile(key))?;
    let whole_days = whole_after_days(profile)?;
    let counts = test
        .replicates
        .iter()
        .fold((0u32, 0u32), |(up, laid), one| (up.saturating_add(one.germinated.0), laid.saturating_add(one.seeds.0)));
    let days = i32::try_from(test.days.0).unwrap_or(i32::MAX);
    let early = days < whole_days && counts.0 < counts.1;
    let until = entry.happened.plus(whole_days.saturating_sub(days));
    early.then(|| Remark::TestEarly { lot: test.lot.clone(), counts, days: test.days.0, whole_days, until })
}

/// Why a tray was not ready to go to a bed on the day it went.
fn not_ready(picture: &Picture, entry: &Entry) -> Option<Remark> {
    let What::Ground(GroundEntry::Outplanted(out)) = &entry.what else { return None };
    let pair = picture.pair(&out.tray, &out.bed);
    // Where the bed does not plan the species only the tray is asked; that the plan lacks it is a Doubt.
    let criteria: Vec<Criterion> = match &pair {
        Some(pair) if pair.fits => return more_than_ready(picture, out),
        Some(pair) => pair.criteria.iter().cloned().collect(),
        None => picture.trays.get(&out.tray)?.criteria.clone(),
    };
    let waits = waits_for(&criteria, picture.day);
    let (first, more) = waits.split_first()?;
    let why = Box::new((*first).clone());
    let also = bed_waits(picture, &out.tray, &out.bed).filter(|_| why.rule() == Rule::Treated);
    Some(Remark::NotReady { tray: out.tray.clone(), bed: out.bed.clone(), why, also, more: more.len() })
}

/// More plants than were good enough by the sample: who plants them all plants the small ones too.
fn more_than_ready(picture: &Picture, out: &Outplanted) -> Option<Remark> {
    let tray = picture.trays.get(&out.tray).filter(|tray| tray.plantable_basis == Basis::Measured)?;
    let ready = whole_plants(tray.plantable.likely);
    (out.count.0 > ready).then(|| Remark::MoreThanReady { tray: out.tray.clone(), planted: out.count.0, ready })
}

/// The waiting time of a bed, where one of the tray runs as well: a pair tells only one of them.
fn bed_waits(picture: &Picture, tray: &TrayCode, bed: &BedName) -> Option<Box<Criterion>> {
    let runs = |criterion: &&Criterion| criterion.rule() == Rule::Treated && criterion.blocks;
    picture.trays.get(tray)?.criteria.iter().find(runs)?;
    let mut of_bed = picture.beds.get(bed)?.species.iter().flat_map(|line| line.criteria.iter());
    of_bed.find(runs).cloned().map(Box::new)
}

/// Why plants were not fit to be given to anybody on the day they were.
fn given_unfit(picture: &Picture, entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::GivenOut(given)) = &entry.what else { return None };
    let tray = picture.trays.get(&given.tray)?;
    let blocks = |rule: Rule| tray.criteria.iter().find(|criterion| criterion.rule() == rule && criterion.blocks);
    // What harms people or plants is told before what somebody promised.
    let why = Box::new([Rule::Treated, Rule::Pest, Rule::Grafted, Rule::Held].into_iter().find_map(blocks)?.clone());
    Some(Remark::GivenUnfit { tray: given.tray.clone(), why })
}
