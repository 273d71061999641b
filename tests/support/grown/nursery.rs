//! The nursery through a day: what is done is gathered in pieces, and on the evening the pieces become commands.

use std::collections::VecDeque;

use outplant::base::{Clock, Day, Moment};
use outplant::nursery::envelope::Draft;
use serde_json::{Value, json};

use super::bed::Bed;
use super::die::Die;
use super::seed::Lots;
use super::site;
use super::tray::Tray;
use super::{Command, DEVICE, Evening, Known, Line};

const PEOPLE: [&str; 3] = ["amani", "tabu", "nyota"];
/// Beds laid out in a year.
const BEDS_A_YEAR: f64 = 12.0;
/// Beds on the first day.
const FIRST_BEDS: usize = 4;
/// Entries that the weather, notes and beds come to in a day.
const ENTRIES_BESIDE_TRAYS: f64 = 4.5;
/// Entries that a sowing and all trays moved on from it come to.
const ENTRIES_OF_A_SOWING: f64 = 92.0;
/// Trays that stand for each sowing a day, and how many of these there are on the first morning.
const TRAYS_OF_A_SOWING_A_DAY: f64 = 380.0;
const STAND_ALREADY: f64 = 0.95;
/// How long a finished tray is remembered, days.
const REMEMBERED_DAYS: i32 = 800;
/// Commands of a single piece of work, and pieces of a larger one.
const SINGLE_COMMANDS: f64 = 0.45;
const PIECES_OF_A_COMMAND: (i32, i32) = (3, 16);
/// Pieces of which the time of day was noted.
const TIMED: f64 = 0.85;

/// What is done with one tray, bed or lot, told in the order of the work.
pub struct Piece {
    pub happened: Day,
    pub lines: Vec<Line>,
    pub timed: bool,
    /// Whether its last line is a slip of the pen.
    pub slip: Option<Slip>,
}

/// A line that will be taken back.
#[derive(Clone, Copy)]
pub struct Slip {
    pub on: Day,
    /// Whether it moves no numbers, so that it may come back again.
    pub harmless: bool,
}

pub struct Nursery {
    pub die: Die,
    pub day: Day,
    first: Day,
    pace: f64,
    written: u64,
    pub pieces: Vec<Piece>,
    slips: Vec<(u64, Slip)>,
    pub trays: Vec<Tray>,
    /// Trays made on this day.
    pub new_trays: Vec<Tray>,
    pub tray_numbers: [u32; 6],
    pub lots: Lots,
    pub beds: Vec<Bed>,
    pub finished: VecDeque<Known>,
    pub no_gauge: Vec<Day>,
}

impl Nursery {
    pub fn new(first: Day, pace: f64, seed: u64) -> Nursery {
        Nursery {
            die: Die(seed),
            day: first,
            first,
            pace,
            written: 0,
            pieces: Vec::new(),
            slips: Vec::new(),
            trays: Vec::new(),
            new_trays: Vec::new(),
            tray_numbers: [0; 6],
            lots: Lots::default(),
            beds: Vec::new(),
            finished: VecDeque::new(),
            no_gauge: Vec::new(),
        }
    }

    pub fn living(&self) -> Vec<Known> {
        let day = self.day.plus(-1);
        // What was written of a tray on the last evening may have been cut off.
        let holds = self.trays.iter().filter(|tray| tray.standing > 0 && tray.last < day && tray.is_at_hand());
        holds.map(|tray| Known { tray: tray.code.clone(), day, standing: tray.standing }).collect()
    }

    /// Lives through a day.
    pub fn live(&mut self) -> Evening {
        if self.day == self.first {
            self.begin();
        }
        self.lay_out_beds();
        self.tend_beds();
        self.tend_trays();
        self.sow();
        self.tend_lots();
        self.look_around();
        self.write_late_and_slip();
        let evening = self.write_down();
        while self.finished.front().is_some_and(|tray| self.day.days_since(tray.day) > REMEMBERED_DAYS) {
            self.finished.pop_front();
        }
        self.day = self.day.plus(1);
        evening
    }

    /// Notes a piece of work of this day.
    pub fn done(&mut self, lines: Vec<Line>) {
        let timed = self.die.chance(TIMED);
        self.pieces.push(Piece { happened: self.day, lines, timed, slip: None });
    }

    pub fn is_rainy(&self) -> bool {
        let (_, month, day) = self.day.ymd();
        site::in_the_rains((month, day))
    }

    fn begin(&mut self) {
        let lines = site::described();
        self.pieces.push(Piece { happened: self.day, lines, timed: false, slip: None });
        for _ in 0..FIRST_BEDS {
            self.lay_out();
        }
        let stand = self.sowings_a_day() * TRAYS_OF_A_SOWING_A_DAY * STAND_ALREADY;
        for _ in 0..stand.round() as usize {
            self.take_over();
        }
    }

    fn sowings_a_day(&self) -> f64 {
        ((self.pace - ENTRIES_BESIDE_TRAYS) / ENTRIES_OF_A_SOWING).max(0.02)
    }

    /// By how many days the book is ahead of its pace.
    pub fn days_ahead(&self) -> f64 {
        self.written as f64 / self.pace - f64::from(self.day.days_since(self.first))
    }

    fn lay_out_beds(&mut self) {
        if self.die.chance(BEDS_A_YEAR / 365.0) {
            self.lay_out();
        }
    }

    /// Sows as much as it takes to keep the pace, more of it before the rains.
    fn sow(&mut self) {
        let mut wanted = self.sowings_a_day() * (1.0 - self.days_ahead() / 110.0).clamp(0.5, 1.6);
        wanted *= if self.is_rainy() { 0.8 } else { 1.2 };
        while self.die.chance(wanted.min(1.0)) {
            self.sow_one();
            wanted -= 1.0;
            if wanted <= 0.0 {
                break;
            }
        }
    }

    fn look_around(&mut self) {
        self.read_gauge();
        if self.die.chance(0.12) {
            let text = *self.die.pick(&[
                "Standard six carried the seedlings down. Nobody pulled by the stem this time.",
                "The spring runs low; we watered from the tank.",
                "Visitors from the dispensary asked for grevillea.",
                "Goats were in the upper field again. The gap in the hedge is closed.",
                "Hail for five minutes, nothing broken.",
            ]);
            self.done(vec![("noted", json!({"text":text}))]);
        }
        if self.die.chance(0.05) {
            let place = *self.die.pick(&["bench 1", "bench 3", "line 1", "shade house"]);
            let line = match self.die.between(0, 3) {
                0 => ("light_read", json!({"place":place,"light_share":self.die.between(40, 60) as f64 / 100.0})),
                1 => ("watering_set", json!({"place":place,"every_days":self.die.between(1, 2)})),
                2 => ("pest_seen", json!({"place":place,"what":"snails under the boards"})),
                _ => ("treated", json!({"place":place,"with":"wood ash along the edge","safe_after_days":0})),
            };
            self.done(vec![line]);
        }
        if self.die.chance(0.02) {
            let until = self.day.plus(self.die.between(7, 40)).to_string();
            let body = json!({"task":"fence the upper field","until":until,"why":"no posts before the holidays"});
            self.done(vec![("let_go", body)]);
        }
    }

    fn read_gauge(&mut self) {
        let rain = if self.is_rainy() { 0.75 } else { 0.12 };
        let fell = if self.die.chance(rain) { self.die.between(1, 280) as f64 / 10.0 } else { 0.0 };
        if self.die.chance(0.1) {
            self.no_gauge.push(self.day);
            return;
        }
        let mut body = json!({"rain_mm":fell});
        if self.die.chance(0.4) {
            body["tmin_c"] = json!(self.die.between(20, 30) as f64 / 2.0);
            body["tmax_c"] = json!(self.die.between(42, 54) as f64 / 2.0);
        }
        self.done(vec![("weather", body)]);
    }

    /// The evening: pieces of work become commands, and slips that were noticed are taken back.
    fn write_down(&mut self) -> Evening {
        let pieces = std::mem::take(&mut self.pieces);
        let minutes_apart = 600.0 / (pieces.len() as f64 + 1.0);
        let mut commands: Vec<Vec<Draft>> = Vec::new();
        // What describes the place is one command.
        let mut room = 1;
        for (number, piece) in pieces.into_iter().enumerate() {
            if room == 0 || commands.is_empty() {
                commands.push(Vec::new());
                room = if number == 0 || self.die.chance(SINGLE_COMMANDS) {
                    1
                } else {
                    self.die.between(PIECES_OF_A_COMMAND.0, PIECES_OF_A_COMMAND.1)
                };
            }
            room -= 1;
            let minute = 400 + (minutes_apart * number as f64) as u32;
            let drafts = self.drafts_of(&piece, minute);
            self.written += drafts.len() as u64;
            self.slips.extend(piece.slip.map(|slip| (self.written, slip)));
            commands.last_mut().unwrap().extend(drafts);
        }
        for (seq, slip) in self.slips.extract_if(.., |(_, slip)| slip.on <= self.day).collect::<Vec<_>>() {
            self.written += 1;
            let why = *self.die.pick(&["read the wrong label", "written twice", "that was the tray beside it"]);
            let body = json!({"entries":[format!("{DEVICE}:{seq}")],"why":why});
            commands.push(vec![self.draft(self.day, None, ("withdrawn", body))]);
            if slip.harmless && self.die.chance(0.25) {
                let on = self.day.plus(self.die.between(1, 5));
                self.slips.push((self.written, Slip { on, harmless: false }));
            }
        }
        self.record(commands)
    }

    /// Moments after six in the evening.
    fn record(&mut self, commands: Vec<Vec<Draft>>) -> Evening {
        let after_six = Moment::end_of(self.day, 3.0).millis() - 6 * 3_600_000;
        let apart = 5 * 3_600_000 / (commands.len() as i64 + 1);
        let moment = |i: usize| Moment::from_millis(after_six + apart * i as i64);
        let who = *self.die.pick(&PEOPLE);
        let mut commands: Vec<Command> =
            commands.into_iter().enumerate().map(|(i, drafts)| Command { recorded: moment(i), drafts }).collect();
        for command in &mut commands {
            let who = if self.die.chance(0.6) { who } else { *self.die.pick(&PEOPLE) };
            command.drafts.iter_mut().for_each(|draft| draft.who = who.to_string());
        }
        Evening { day: self.day, commands }
    }

    fn drafts_of(&self, piece: &Piece, minute: u32) -> Vec<Draft> {
        let clock = |i: usize| {
            let minute = (minute + i as u32).min(24 * 60 - 1);
            Clock::from_hm(minute / 60, minute % 60).filter(|_| piece.timed)
        };
        let lines = piece.lines.iter().enumerate();
        lines.map(|(i, line)| self.draft(piece.happened, clock(i), line.clone())).collect()
    }

    fn draft(&self, happened: Day, clock: Option<Clock>, (kind, body): Line) -> Draft {
        let Value::Object(body) = body else { unreachable!("a body is an object") };
        Draft { happened, clock, who: PEOPLE[0].to_string(), kind: kind.to_string(), body }
    }
}
