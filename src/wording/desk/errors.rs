//! Refusals, faults of lines and trouble with the file, in words.

use std::sync::Arc;

use crate::base::{BedName, Day, SpeciesKey};
use crate::desk::{
    ChainFault, DeskError, FileFault, JournalError, LineFault, LineFaults, NewName, Odd, PairFault, ReadFault, Reason,
    Refusal, Refused, Remark, WorkbookFault,
};
use crate::nursery::entry::Entry;
use crate::nursery::entry::fault::{FieldFault, Problem};
use crate::nursery::species::Catalogue;
use crate::reckon::light::advice::after_cut::LightJump;
use crate::reckon::picture::{Criterion, Doubt, DoubtKind};
use crate::wording::verdict::About;
use crate::wording::{Lang, Wording};

impl Wording {
    /// What cannot be true of an entry that was to be written. Of the same in the book another sentence is told: there
    /// the way out is to withdraw it.
    fn refused_by_the_book(&self, doubt: &Doubt, species: &Catalogue) -> String {
        let day = self.day(doubt.day);
        let named = |key| self.species_of(key, species);
        match &doubt.kind {
            DoubtKind::MoreOutThanStood { tray, out, stood } => self.refused_more_out(tray, *out, *stood, day),
            DoubtKind::MoreSeedThanHeld { lot, out, held } => self.refused_more_seed(lot, *out, *held, day),
            DoubtKind::MoreDeadThanLived { bed, species, dead, lived } => {
                self.refused_more_dead(bed, named(species), *dead, *lived, day)
            }
            DoubtKind::MoreAliveThanPlanted { bed, species, alive, dead, planted } => {
                self.refused_more_alive(bed, named(species), self.alive_and_dead(*alive, *dead), *planted, day)
            }
            DoubtKind::MoreCutThanStood { bed, nurse, cut: Some(cut), stood } => {
                self.refused_more_cut(bed, named(nurse), *cut, *stood, day)
            }
            DoubtKind::MoreCutThanStood { bed, nurse, cut: None, stood: _ } => {
                self.refused_cut_of_none(bed, named(nurse), day)
            }
            DoubtKind::MoreOutThanPositions { bed, species, out, open, positions: _ } => {
                self.refused_more_out_than_positions(bed, named(species), *out, *open, day)
            }
            DoubtKind::NoSuchPosition { bed, written, rows, places } => {
                self.refused_no_such_position(bed, *rows, *places, written)
            }
            DoubtKind::SampleLarger { tray, sample, stood } => self.refused_sample_larger(tray, *sample, *stood, day),
            DoubtKind::WorkedOnMore { tray, worked, stood } => self.refused_worked_on_more(tray, *worked, *stood, day),
            DoubtKind::TwoSpecies { tray, species, other } => {
                self.refused_two_species(tray, named(species), named(other))
            }
            DoubtKind::CannotBe(why) => self.refused_cannot_be(self.impossible(why, doubt.day)),
            DoubtKind::TwiceMade(tray) => self.refused_tray_code_in_use(tray),
            DoubtKind::TwiceReceived(lot) => self.refused_lot_code_in_use(lot),
            DoubtKind::BadProfile { species, what } => self.profile_refused(species, self.profile_fault(what)),
            DoubtKind::MoreThanSeed { .. }
            | DoubtKind::AliveAgain { .. }
            | DoubtKind::RiseWithoutSeed { .. }
            | DoubtKind::UnknownTray(_)
            | DoubtKind::UnknownLot(_)
            | DoubtKind::UnknownBed(_)
            | DoubtKind::UnknownSpecies(_)
            | DoubtKind::OrderMatters(_)
            | DoubtKind::NotInPlan { .. }
            | DoubtKind::OffTheGrid { .. }
            | DoubtKind::PartCountApart { .. }
            | DoubtKind::LookAtEmpty(_) => self.doubt(doubt, species),
        }
    }

    /// "22 alive", "22 alive and 5 dead: 27".
    fn alive_and_dead(&self, alive: u32, dead: u32) -> String {
        if dead == 0 { self.so_many_alive(alive) } else { self.so_many_seen(alive, dead, alive.saturating_add(dead)) }
    }

    /// Why something is not written.
    pub fn refusal(&self, refusal: &Refusal, species: &Catalogue) -> String {
        match refusal {
            Refusal::Entry(fault) => self.entry_fault(fault),
            Refusal::UnknownTray(name, nearest) => self.nearest_after(self.refused_unknown_tray(name), nearest),
            Refusal::UnknownLot(name, nearest) => self.nearest_after(self.refused_unknown_lot(name), nearest),
            Refusal::UnknownBed(name, nearest) => self.nearest_after(self.refused_unknown_bed(name), nearest),
            Refusal::SeveralPlants { written, plants } => self.several_plants(written, plants, species),
            Refusal::UnknownSpecies(name, nearest) => self.nearest_after(self.refused_unknown_species(name), nearest),
            Refusal::UnknownTask { task, nearest } => self.nearest_after(self.refused_unknown_task(task), nearest),
            Refusal::UnknownEntry(entry) => self.refused_unknown_entry(entry),
            Refusal::TrayInUse(tray) => self.refused_tray_code_in_use(tray),
            Refusal::NameOfTwo { name, other, is_tray: true } => self.refused_tray_named_as_bed(name, other),
            Refusal::NameOfTwo { name, other, is_tray: false } => self.refused_bed_named_as_tray(name, other),
            Refusal::MixedAlphabets(name) => self.refused_mixed_alphabets(name),
            Refusal::LotInUse(lot) => self.refused_lot_code_in_use(lot),
            Refusal::BeforeTheBook { tray, since } => self.refused_before_the_book(tray, self.day(*since)),
            Refusal::Book(doubt) => self.refused_by_the_book(doubt, species),
            Refusal::CodeBefore { was, until } => self.refused_code_before(was, self.day(*until)),
            Refusal::TrayRenamed { was, is, since } => self.refused_tray_renamed(was, is, self.day(*since)),
            Refusal::FutureDay { day, today } => self.refused_future(self.day(*day), self.day(*today)),
            Refusal::ShareForPercent(share) => self.share_asked_words(*share),
            Refusal::Dots => self.refused_dots(),
            Refusal::Profile(key, what) => self.profile_refused(key, self.profile_fault(what)),
            Refusal::NothingToUndo => self.refused_nothing_to_undo(),
            Refusal::OnlyTheBeginning(entry) => {
                self.refused_only_the_beginning(self.entry_sentence_beside(entry, entry.happened, species), &entry.id)
            }
            Refusal::AlreadyWithdrawn(entry, by) => {
                self.refused_already_withdrawn(entry, self.day(by.happened), self.who_told(&by.who), &by.id)
            }
            Refusal::OneOfMany { entry, all } => {
                self.refused_one_of_many(entry, all.len() as i64, self.entry_list(all, species))
            }
            Refusal::LeavesOthersWithoutGround { entries, doubts, rest_on_them } => {
                let list: Vec<String> = doubts.iter().map(|doubt: &Doubt| self.doubt(doubt, species)).collect();
                let list = if list.is_empty() { self.entry_list(entries, species) } else { list.join("; ") };
                self.undo_leaves(entries.len() as i64, list, self.entry_list(rest_on_them, species))
            }
        }
    }

    /// Entries in words, the first ones and how many more.
    fn entry_list(&self, entries: &[Arc<Entry>], species: &Catalogue) -> String {
        const NAMED: usize = 3;
        let other = entries.first().map(|entry| entry.happened);
        let mut said: Vec<String> = entries
            .iter()
            .take(NAMED)
            .map(|entry| self.entry_sentence_beside(entry, other.unwrap_or(entry.happened), species))
            .collect();
        if entries.len() > NAMED {
            said.push(self.change_more((entries.len() - NAMED) as i64));
        }
        said.join("; ")
    }

    /// That a day may be one of two.
    pub(crate) fn one_of_two_days(&self, written: &str, first: Day, second: Day) -> String {
        self.which_day(written, first.to_string(), second.to_string())
    }

    fn new_name_remark(&self, NewName { is_place, name, nearest }: &NewName) -> String {
        let name = crate::base::text::cleaned(name);
        let sentence = if *is_place { self.remark_new_place(name) } else { self.remark_new_container(name) };
        self.nearest_after(sentence, nearest)
    }

    fn ask_waiting_time(&self, with: &str, day: String) -> String {
        self.remark_no_waiting_time(self.label_reason(&crate::base::text::cleaned(with), day, (true, false)))
    }

    fn rain_twice(&self, day: String, before_mm: f64, now_mm: f64) -> String {
        let mm = |value: f64| self.number(value, 1);
        self.remark_rain_twice(day, mm(before_mm), mm(now_mm), mm(before_mm + now_mm))
    }

    fn light_jumps(&self, bed: &BedName, jump: &LightJump) -> String {
        let species = self.species_of(&jump.species, &Catalogue::built_in());
        let (from, to) = (self.percent(jump.from), self.percent(jump.to));
        self.remark_light_jumps(bed, jump.plants, species, from, to)
    }

    /// What is asked or told about an entry before it is written.
    pub fn remark(&self, remark: &Remark, today: Day) -> String {
        match remark {
            Remark::Again { on, at } if *on == today => self.remark_again(at),
            Remark::Again { on, at } => self.remark_again_on(self.day_beside(*on, today), at),
            Remark::SameAsLine(line) => self.remark_same_as_line(*line as i64),
            Remark::RainTwice { day, before_mm, now_mm } => {
                self.rain_twice(self.day_beside(*day, today), *before_mm, *now_mm)
            }
            Remark::HalfGone { tray, gone, stood, is_loss: true } => {
                self.remark_half_lost(tray, *gone as i64, *stood as i64)
            }
            Remark::HalfGone { tray, gone, stood, is_loss: false } => {
                self.remark_half_gone(tray, *gone as i64, *stood as i64)
            }
            Remark::LetsGoOfAll { about, reasons } => self.lets_go_of_all(about, reasons),
            Remark::ManyMore { tray, counted, most } => self.remark_many_more(tray, *counted as i64, *most as i64),
            Remark::MoreThanSeed { tray, counted, most } => self.remark_more_than_seed(tray, *counted, *most),
            Remark::MoreMeasured { tray, measured, stood } => self.remark_more_measured(tray, *measured, *stood as i64),
            Remark::LightJumps { bed, jump } => self.light_jumps(bed, jump),
            Remark::AliveAgain { bed, alive, lived } => self.remark_alive_again(bed, *alive, *lived),
            Remark::LookEarly { about, from } => self.remark_look_early(about.as_str(), self.day_beside(*from, today)),
            Remark::BeforeEmergence { tray, counted, sown, first_days } => {
                let sentence = self.remark_before_emergence(tray, *counted, self.day_beside(*sown, today));
                let first = first_days.map(|days| self.remark_first_days(self.number(days, 0)));
                first.map_or(sentence.clone(), |first| format!("{sentence} {first}"))
            }
            Remark::Odd(odd) => self.odd(odd),
            Remark::KeptLong { tray, days, usual } => self.remark_kept_long(tray, *days, *usual),
            Remark::SeedDead { lot, outlook, day } if !outlook.is_gone(*day) => {
                let since = outlook.life.as_ref().map_or(*day, |life| life.last_day());
                self.remark_seed_past(lot, self.day(since), self.cut_some_open())
            }
            Remark::SeedDead { lot, outlook, day } => self.remark_seed_dead(lot, self.lot_verdict(outlook, *day).1),
            Remark::TestEarly { lot, counts: (germinated, seeds), days, whole_days, until } => {
                self.remark_test_early(lot, *germinated, *seeds, *days, *whole_days, self.day_beside(*until, today))
            }
            Remark::MoreThanReady { tray, planted, ready } => {
                self.remark_more_than_ready(tray, *planted as i64, *ready as i64)
            }
            Remark::HandsInWait { about, why } => self.remark_hands_in_wait(about, self.reason(why, About::Tray)),
            Remark::UnknownPest { what } => self.remark_unknown_pest(crate::base::text::cleaned(what)),
            Remark::MayScorch { with } => self.remark_may_scorch(crate::base::text::cleaned(with)),
            Remark::AboutNothing { about, nearest } => {
                self.nearest_after(self.remark_about_nothing(crate::base::text::cleaned(about)), nearest)
            }
            Remark::NewName(new) => self.new_name_remark(new),
            Remark::BeforeItCame { tray, day, came } => {
                self.remark_before_it_came(tray, self.day(*day), self.day(*came))
            }
            Remark::NoContainer { tray } => self.remark_no_container(tray),
            Remark::NoWaitingTime { with, day } => self.ask_waiting_time(with, self.day_beside(*day, today)),
            Remark::LikeAShare(share) => self.share_asked_words(*share),
            Remark::MayKill { with, is_known: true } => self.remark_kills_weeds(crate::base::text::cleaned(with)),
            Remark::MayKill { with, is_known: false } => self.remark_may_kill(crate::base::text::cleaned(with)),
            Remark::PlantedAtOnce { with } => self.remark_planted_at_once(crate::base::text::cleaned(with)),
            Remark::LossNames { tray, what } => self.remark_loss_names(tray, crate::base::text::cleaned(what)),
            Remark::HoldGoesAlong { tray, to, why } => {
                self.remark_hold_goes_along(tray, to, self.reason(why, About::Tray))
            }
            Remark::LeavesHeld { tray, place, why } => {
                self.remark_leaves_held(tray, place, self.reason(why, About::Tray))
            }
            Remark::FromSick { tray, what } => self.remark_from_sick(tray, crate::base::text::cleaned(what)),
            Remark::ToSick { place, what } => self.remark_to_sick(place, crate::base::text::cleaned(what)),
            Remark::OnlyNamed { sickness: true, what } => self.remark_only_named(crate::base::text::cleaned(what)),
            Remark::OnlyNamed { sickness: false, what } => self.remark_only_used(crate::base::text::cleaned(what)),
            Remark::GivenUnfit { tray, why } => self.remark_given_unfit(tray, self.reason(why, About::Tray)),
            Remark::NotReady { tray, bed, why, also, more } => {
                self.remark_not_ready(tray, bed, self.first_of_not_ready(why, also.as_deref(), *more))
            }
        }
    }

    fn lets_go_of_all(&self, about: &str, reasons: &[String]) -> String {
        let reasons: Vec<String> = reasons.iter().map(|why| crate::base::text::cleaned(why)).collect();
        self.remark_lets_go_of_all(about, reasons.join(" · "))
    }

    fn first_of_not_ready(&self, why: &Criterion, also: Option<&Criterion>, more: usize) -> String {
        let first = self.reason(why, About::Pair);
        let also = also.map(|also| self.reason(also, About::Bed));
        let first = also.map_or(first.clone(), |also| format!("{first} · {also}"));
        match more {
            0 => first,
            more => format!("{first} · {}", self.more_reasons(more as i64)),
        }
    }

    /// What is rarely meant.
    fn odd(&self, odd: &Odd) -> String {
        match odd {
            Odd::LargeBed { bed, area_ha } => self.remark_large_bed(bed, self.number(*area_ha, 0)),
            Odd::NoPositions { bed, species } => self.remark_no_positions(bed, species),
            Odd::RowsUnread { rows } => self.remark_rows_unread(crate::base::text::cleaned(rows)),
            Odd::Spacing { bed, species, asked_per_ha, usual_m: (row_m, in_row_m) } => self.remark_spacing(
                bed,
                self.species_name(species),
                self.number(*asked_per_ha, 0),
                self.number(*row_m, 1),
                self.number(*in_row_m, 1),
            ),
            Odd::UntilAndNever { until } => self.remark_until_and_never(self.day(*until)),
            Odd::NothingGone => self.remark_nothing_gone(),
            Odd::StillToCome { entry, day } => self.remark_still_to_come(entry, self.day(*day)),
            Odd::OfNoEntry { of } => self.remark_of_no_entry(crate::base::text::cleaned(of)),
            Odd::NoPlace => self.remark_no_place(),
            Odd::Thick { tray, height_cm, collar_mm } => {
                self.remark_thick(tray, self.number(*collar_mm, 1), self.number(*height_cm, 0))
            }
            Odd::FarSample { tray, on, is_height, then, now } => {
                let (then, now, on) = (self.number(*then, 1), self.number(*now, 1), self.day(*on));
                match is_height {
                    true => self.remark_far_height(tray, now, then, on),
                    false => self.remark_far_collar(tray, now, then, on),
                }
            }
            Odd::DeepHole { bed, depth_cm } => self.remark_deep_hole(bed, self.number(*depth_cm, 0)),
            Odd::AskedNoMore { species, figures } => {
                let figures: Vec<String> = figures.iter().map(|name| self.profile_part(name)).collect();
                self.remark_asked_no_more(self.species_name(species), figures.join(", "))
            }
        }
    }

    /// A refusal with its line, where it stands in one.
    pub fn refused(&self, refused: &Refused, species: &Catalogue) -> String {
        let sentence = self.refusal(&refused.why, species);
        if refused.line == 0 { sentence } else { self.at_line(refused.line as i64, sentence) }
    }

    /// Everything a desk said no to, a line each.
    pub fn desk_error(&self, fault: &DeskError, file: &str, species: &Catalogue) -> Vec<String> {
        match fault {
            DeskError::Refused(refused) => refused.iter().map(|one| self.refused(one, species)).collect(),
            DeskError::Journal(fault) => vec![self.journal_error(fault, file)],
        }
    }

    fn chain_fault(&self, fault: &ChainFault) -> String {
        match fault {
            ChainFault::Fork(entry) => self.chain_fork(entry),
            ChainFault::FollowsAnother(entry) => self.chain_follows_another(entry),
            ChainFault::Missing { device, from, to } => self.chain_gap(device, from, to),
        }
    }

    /// Trouble with the file.
    pub(crate) fn journal_error(&self, fault: &JournalError, file: &str) -> String {
        match fault {
            JournalError::NotThere(path) => self.file_not_there(path.display()),
            JournalError::NoFolder(folder) => self.folder_not_there(folder.display()),
            JournalError::AlreadyThere(path) => self.file_already_there(path.display()),
            JournalError::NotOurs(path) => self.file_not_ours(path.display()),
            JournalError::ForeignLog(log) => self.file_foreign_log(file, log.display()),
            JournalError::Newer { .. } => self.file_newer(file),
            JournalError::ChangedSchema(names) => self.file_changed_schema(file, names.join(", ")),
            JournalError::TakenAway(path) => self.file_taken_away(path.display()),
            JournalError::NotWritten(entry) => self.file_not_written(file, entry),
            JournalError::Busy => self.file_busy(file),
            JournalError::Full => self.file_full(file),
            JournalError::ReadOnly => self.file_read_only(file),
            JournalError::Damaged { what, entry } => {
                let found = self.damage_found(what);
                let at = entry.as_ref().map_or_else(|| found.clone(), |entry| format!("{entry}; {found}"));
                self.file_damaged(file, at)
            }
            JournalError::Fork { entry } => self.chain_fork(entry),
            JournalError::Gap { device, from, to } => self.chain_gap(device, from, to),
            JournalError::WrongHash { entry } => self.chain_wrong_hash(entry),
            JournalError::WrongPrevious { entry } => self.chain_follows_another(entry),
            JournalError::Io { path, kind, text } => self.file_other(path.display(), self.system_said(*kind, text)),
            JournalError::Sqlite(text) => self.file_other(file, self.system_rare(text)),
            JournalError::Cancelled => self.import_cancelled(),
        }
    }

    /// What the system said of a file.
    pub(crate) fn system_fault(&self, error: &std::io::Error) -> String {
        self.system_said(error.kind(), &error.to_string())
    }

    /// The same by the kind of trouble; what is rare is quoted as the system says it.
    pub(crate) fn system_said(&self, kind: std::io::ErrorKind, text: &str) -> String {
        use std::io::ErrorKind;
        match kind {
            ErrorKind::PermissionDenied => self.system_not_allowed(),
            ErrorKind::NotFound => self.system_not_there(),
            ErrorKind::StorageFull | ErrorKind::QuotaExceeded => self.system_no_room(),
            ErrorKind::FileTooLarge => self.system_too_large(),
            ErrorKind::ReadOnlyFilesystem => self.system_read_only(),
            ErrorKind::IsADirectory => self.system_is_folder(),
            ErrorKind::NotADirectory => self.system_no_folder(),
            ErrorKind::InvalidData => self.settings_no_text(),
            ErrorKind::Unsupported => self.settings_no_file(),
            ErrorKind::AlreadyExists => self.system_already_there(),
            _ => self.system_rare(text),
        }
    }

    /// What is told by no kind: by the number of the system (errno.h), or the words of the storage.
    fn system_rare(&self, text: &str) -> String {
        let number = text.rsplit_once("(os error ").and_then(|(_, number)| number.strip_suffix(')'));
        let number: Option<i32> = number.and_then(|number| number.parse().ok());
        match number {
            Some(5) => self.system_broken(),
            // On Linux, and on macOS.
            Some(40 | 62) => self.system_loop(),
            Some(number) => self.system_number(number),
            None if text.starts_with("disk I/O error") => self.system_broken(),
            None if text.starts_with("filesystem loop") => self.system_loop(),
            None if text.starts_with("unable to open database file") => self.system_not_opened(),
            None => self.system_other(text),
        }
    }

    /// A file that was not written.
    pub(crate) fn file_fault(&self, fault: &FileFault) -> String {
        match fault {
            FileFault::Exists(path) => self.file_already_there(path.display()),
            FileFault::NoFileName(path) => self.file_other(path.display(), self.system_is_folder()),
            FileFault::NoFolder(folder) => self.folder_not_there(folder.display()),
            FileFault::Io { path, error } => self.file_other(path.display(), self.system_fault(error)),
        }
    }

    /// Lines that could not be read, a sentence each.
    pub fn read_fault(&self, fault: &ReadFault, file: &str) -> Vec<String> {
        match fault {
            ReadFault::Io(error) => vec![self.file_other(file, self.system_fault(error))],
            ReadFault::Lines(faults) => self.line_faults(faults),
        }
    }

    /// The faults of lines, a sentence each, and how many more there are.
    pub fn line_faults(&self, faults: &LineFaults) -> Vec<String> {
        let mut all: Vec<String> = faults.listed.iter().flat_map(|one| self.line_fault_and_meant(one)).collect();
        if faults.count > faults.listed.len() {
            all.push(self.more_faults((faults.count - faults.listed.len()) as i64));
        }
        all
    }

    /// A fault in a line of a file, and behind it the lines that may be meant, ready to copy.
    pub(crate) fn line_fault_and_meant(&self, fault: &LineFault) -> Vec<String> {
        let meant = self.meant_lines(&fault.reason).into_iter().map(|line| format!("    {line}"));
        std::iter::once(self.line_fault(fault)).chain(meant).collect()
    }

    /// A fault in a cell of a workbook, named as spreadsheet programs name it, and behind it what may be meant.
    pub(crate) fn cell_fault(&self, fault: &LineFault) -> Vec<String> {
        let Some(column) = fault.column else { return self.line_fault_and_meant(fault) };
        let alone = LineFault { line: 0, column: None, ..fault.clone() };
        let mut said = self.line_fault_and_meant(&alone);
        let cell = format!("{}{}", column_letters(column), fault.line);
        if let Some(first) = said.first_mut() {
            *first = self.at_cell(cell, first.clone());
        }
        said
    }

    /// A fault in a line of a file.
    pub(crate) fn line_fault(&self, fault: &LineFault) -> String {
        let sentence = self.in_place(fault.column, fault.field.as_deref(), &fault.reason);
        if fault.line == 0 { sentence } else { self.at_line(fault.line as i64, sentence) }
    }

    /// What is wrong with a part of a short line, by what it means.
    fn said_fault(&self, what: &str, problem: &Problem) -> String {
        self.field_fault(&FieldFault { field: self.field_in_words(what), problem: problem.clone() })
    }

    /// The fault of the one line there is, without its place.
    pub(crate) fn line_fault_alone(&self, reason: &Reason) -> String {
        self.in_place(None, None, reason)
    }

    /// Of a word in English and one in Spanish the one of this language.
    pub(crate) fn of_two(&self, words: [&'static str; 2]) -> &'static str {
        match self.lang() {
            Lang::En => words[0],
            Lang::Es => words[1],
        }
    }

    /// A fault in what was typed.
    pub fn pair_fault(&self, fault: &PairFault) -> String {
        self.in_place(None, fault.field.as_deref(), &fault.reason)
    }

    fn in_place(&self, column: Option<usize>, field: Option<&str>, reason: &Reason) -> String {
        let sentence = self.reason_of_line(reason, field);
        // Faults of an entry name their field themselves.
        let named = matches!(reason, Reason::Entry(_) | Reason::Envelope(_) | Reason::NameTwice | Reason::IdAlone(_));
        let sentence = match field {
            Some(field) if !named => self.on_field(field, sentence),
            _ => sentence,
        };
        column.map_or(sentence.clone(), |column| self.at_column(column as i64, sentence))
    }

    /// What is wrong with a workbook, or with the sheet asked for.
    fn workbook_fault(&self, fault: &WorkbookFault) -> String {
        match fault {
            WorkbookFault::NotHere => self.sheet_workbook(),
            WorkbookFault::Unread => self.sheet_workbook_unread(),
            WorkbookFault::FarCell(cell) => self.sheet_far_cell(cell),
            WorkbookFault::NoSuchSheet { wanted, there } => self.sheet_not_in_workbook(wanted, there.join(", ")),
            WorkbookFault::NoneInText => self.sheet_none_in_text(),
        }
    }

    fn problem_of_envelope(&self, problem: &crate::nursery::entry::fault::Problem, field: Option<&str>) -> String {
        let field = field.unwrap_or("-").to_string();
        let fault = crate::nursery::entry::fault::FieldFault { field, problem: problem.clone() };
        self.line_envelope(self.field_fault(&fault))
    }

    fn no_sheet(&self, is_database: bool) -> String {
        if is_database { self.sheet_is_a_database() } else { self.sheet_is_none() }
    }

    fn which_species(&self, all: &[SpeciesKey]) -> String {
        let built_in = Catalogue::built_in();
        let names: Vec<String> = all.iter().map(|key| self.species_of(key, &built_in)).collect();
        self.paper_which_species(if names.is_empty() { "-".to_string() } else { names.join(", ") })
    }

    fn reason_of_line(&self, reason: &Reason, field: Option<&str>) -> String {
        match reason {
            Reason::LineTooLong { most_bytes } => self.line_too_long(size(*most_bytes)),
            Reason::LineWithoutEnd => self.line_without_end(),
            Reason::NotUtf8 { byte } => self.line_not_utf8(*byte as i64),
            Reason::NotJson => self.line_not_json(),
            Reason::JsonCutShort => self.line_cut_short(),
            Reason::TooDeep => self.line_too_deep(),
            Reason::NumberTooLarge => self.line_number_too_large(),
            Reason::NotARecord => self.line_not_a_record(),
            Reason::NameTwice => self.line_name_twice(field.unwrap_or("-")),
            Reason::AtAndClock => self.line_at_and_clock(),
            Reason::Unseen { place, shown, .. } => self.line_unseen(*place as i64, shown),
            Reason::Entry(fault) => self.entry_fault(fault),
            Reason::IdAlone(missing) => self.line_id_alone(missing.join(", ")),
            Reason::Envelope(problem) => self.problem_of_envelope(problem, field),
            Reason::ComingDay(day) => self.line_coming_day(self.day(*day)),
            Reason::TooLongAgo { happened, first } => self.line_too_long_ago(self.day(*happened), self.day(*first)),
            Reason::NotAMoment(written) => self.line_not_a_moment(written),
            Reason::NotAHash(written) => self.line_not_a_hash(written),
            Reason::WrongHash(entry) => self.line_wrong_hash(entry),
            Reason::Chain(fault) => self.chain_fault(fault),
            Reason::NoEqualsSign(written) => self.line_no_equals(written),
            Reason::QuoteOpen => self.line_quote_open(),
            Reason::BracketOpen => self.line_bracket_open(),
            Reason::NoBlankBehind => self.line_no_blank(),
            Reason::NotDaysBefore(written) => self.line_not_days_before(written),
            Reason::RecordedBefore => self.line_recorded_before(),
            Reason::LineCutShort => self.line_day_cut_short(),
            Reason::Workbook(fault) => self.workbook_fault(fault),
            Reason::SheetTooLong { most_bytes } => self.sheet_too_long(size(*most_bytes)),
            Reason::NotInEncoding { byte } => self.sheet_not_in_encoding(*byte as i64),
            Reason::NoSheet { is_database } => self.no_sheet(*is_database),
            Reason::NoNames => self.sheet_no_names(),
            Reason::TooManyColumns(most) => self.sheet_too_many_columns(*most as i64),
            Reason::ColumnWithoutName => self.sheet_column_without_name(),
            Reason::TooManyCells { columns } => self.sheet_too_many_cells(*columns as i64),
            Reason::LettersBehindQuote => self.sheet_letters_behind_quote(),
            Reason::DayInOtherOrder(written) => self.sheet_day_in_other_order(written),
            Reason::NoRows => self.sheet_no_rows(),
            Reason::EmptyTray => self.sheet_empty_tray(),
            Reason::NoVolume(written) => self.sheet_no_volume(written),
            Reason::CountNotKnown(written) => self.sheet_count_not_known(written),
            Reason::NoContainer(written) => self.sheet_no_container(written),
            Reason::NoColumn { name, seen } => self.sheet_no_column(self.of_two(*name), first_of(seen)),
            Reason::NoHeader { example, seen } => self.sheet_no_header(self.of_two(*example), first_of(seen)),
            Reason::InTheBook(name) => self.sheet_in_the_book(name),
            Reason::AllInTheBook(rows) => self.sheet_all_in_the_book(*rows as i64),
            Reason::NotAHandDay(written) => self.day_not_understood(written),
            Reason::DayOrYear(written) => self.day_or_year(written),
            Reason::WhichDay { written, first, second } => self.one_of_two_days(written, *first, *second),
            Reason::NumberInWords { written, figures } => self.number_in_words(written, *figures),
            Reason::Said { what, problem } => self.said_fault(what, problem),
            Reason::WhichSpecies(all) => self.which_species(all),
            Reason::SeveralPlants { written, plants } => self.several_plants(written, plants, &Catalogue::built_in()),
            Reason::UnknownTask { written, nearest } => self.nearest_after(self.refused_unknown_task(written), nearest),
            Reason::NoLines => self.paper_no_lines(),
            Reason::ColumnsMeanTheSame(field) => self.sheet_columns_mean_the_same(field),
            Reason::SameAsLine { written, line } => self.sheet_same_as_line(written, *line as i64),
            Reason::UnknownName { written, nearest } => self.nearest_after(self.line_unknown_name(written), nearest),
            Reason::NewName { written, nearest } => self.nearest_after(self.sheet_new_name(written), nearest),
            Reason::NotAnAge(written) => self.sheet_not_an_age(written),
            Reason::NotASpacing(written) => self.sheet_not_a_spacing(written),
            Reason::NotOneForEach { species, numbers } => self.sheet_not_one_for_each(*species as i64, *numbers as i64),
            Reason::Words { why, meant } => self.not_written_as(why, meant),
            Reason::NotUnderstood(written) => self.paper_not_understood(written),
            Reason::TooManyLines(most) => self.paper_too_many_lines(*most as i64),
        }
    }
}

fn size(bytes: usize) -> String {
    match bytes >> 20 {
        0 => format!("{} KB", bytes >> 10),
        megabytes => format!("{megabytes} MB"),
    }
}

/// The first of many names, and … for the rest.
fn first_of(names: &[String]) -> String {
    /// Names of columns that are shown.
    const MOST_NAMES_SHOWN: usize = 8;
    /// Letters of one that are shown.
    const MOST_LETTERS_SHOWN: usize = 40;
    let short = |name: &String| match name.char_indices().nth(MOST_LETTERS_SHOWN) {
        Some((cut, _)) => format!("{}…", &name[..cut]),
        None => name.clone(),
    };
    let shown: Vec<String> = names.iter().take(MOST_NAMES_SHOWN).map(short).collect();
    let more = if names.len() > MOST_NAMES_SHOWN { ", …" } else { "" };
    format!("{}{more}", shown.join(", "))
}

/// The letters of a column of a spreadsheet, from 1: A, B ... Z, AA.
fn column_letters(column: usize) -> String {
    /// Letters of the alphabet.
    const LETTERS: usize = 26;
    let mut left = column;
    let mut letters = Vec::new();
    while left > 0 {
        letters.push((b'A' + ((left - 1) % LETTERS) as u8) as char);
        left = (left - 1) / LETTERS;
    }
    letters.iter().rev().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn trouble_of_the_system_is_said_in_words_of_the_language_never_in_those_of_the_machine() {
        let io = |number| std::io::Error::from_raw_os_error(number);
        for lang in Lang::ALL {
            let wording = Wording::new(lang);
            let said = [5, 17, 20, 40, 71].map(|number| wording.system_fault(&io(number)));
            let stored = ["disk I/O error", "unable to open database file"]
                .map(|text| wording.journal_error(&JournalError::Sqlite(text.into()), "n.outplant"));
            for sentence in said.iter().chain(&stored) {
                let words = ["os error", "I/O", "File exists", "database", "Protocol"];
                assert!(!words.iter().any(|word| sentence.contains(word)), "{sentence}");
            }
            assert!(said[4].contains("71"), "{}", said[4]);
        }
    }
}
