//! A tray from sowing to the last plant out: looked at every few days, with what the look brings.

use outplant::base::Day;
use serde_json::{Value, json};

use super::nursery::{Nursery, Piece};
use super::species::{TREES, Tree};
use super::{Known, Line};

/// What a tray goes through on its way, and at which share of its days to readiness.
const STEPS: [(f64, Step); 14] = [
    (0.42, Step::Measure),
    (0.50, Step::Carry(1)),
    (0.58, Step::Water(1.5)),
    (0.64, Step::Measure),
    (0.70, Step::Shade(50)),
    (0.74, Step::Carry(2)),
    (0.80, Step::Plug),
    (0.86, Step::Harden),
    (0.88, Step::Carry(3)),
    (0.90, Step::Grade),
    (0.93, Step::Water(3.0)),
    (0.95, Step::Shade(30)),
    (0.97, Step::Measure),
    (0.985, Step::Plug),
];
/// Share of its days to readiness at which what is left is given away or thrown out.
const LAST_SHARE: f64 = 1.35;
/// Looks of which a loss is told, in the seedbed and later.
const LOSSES: f64 = 0.24;
/// Looks whose notes are handed in some days later, and how many days.
const HANDED_IN_LATE: f64 = 0.02;
const DAYS_LATE: (i32, i32) = (1, 6);
/// Plants of a tray after pricking out.
const PRICKED_OUT: (i32, i32) = (45, 85);
const CAUSES: [&str; 6] = ["damping-off", "rats", "dried out", "snails", "cutworm", "fell over"];
const RECEIVERS: [&str; 6] = [
    "families of standard six",
    "parents at the harvest meeting",
    "the dispensary",
    "farmers of the upper ridge",
    "the chapel",
    "school board members",
];

#[derive(Clone, Copy)]
enum Step {
    Measure,
    Carry(usize),
    Water(f64),
    Shade(i32),
    Plug,
    Harden,
    Grade,
}

pub struct Tray {
    pub code: String,
    tree: usize,
    pub standing: u32,
    /// Seedlings that will come up, and how many did.
    viable: u32,
    up: u32,
    sown: Day,
    made: Day,
    seedbed: bool,
    ready_days: f64,
    vigour: f64,
    steps: usize,
    pricked: u32,
    pub last: Day,
    pub next: Day,
    /// Notes of a look that somebody still carries about.
    pocket: Option<(Day, Day, Vec<Line>)>,
    held: Option<Day>,
    relabelled: bool,
    /// A day in the middle of its life between two looks, and what stood there.
    quiet: Option<(Day, u32)>,
}

impl Tray {
    /// A tray that is sown today.
    pub fn sown(nursery: &mut Nursery, tree: usize, seeds: u32) -> Tray {
        let kind = &TREES[tree];
        let chance = (kind.germinates * nursery.die.about(1.0, 0.08)).min(0.97);
        let viable = nursery.die.of(seeds, chance).max(1);
        let mut tray = Tray::new(nursery, tree, nursery.day, kind.seedbed);
        tray.viable = viable;
        tray
    }

    fn new(nursery: &mut Nursery, tree: usize, sown: Day, seedbed: bool) -> Tray {
        nursery.tray_numbers[tree] += 1;
        let code = format!("{}-{:04}", TREES[tree].code, nursery.tray_numbers[tree]);
        Tray {
            code,
            tree,
            standing: 0,
            viable: 0,
            up: 0,
            sown,
            made: nursery.day,
            seedbed,
            ready_days: nursery.die.about(TREES[tree].ready_days, 0.06),
            vigour: nursery.die.about(1.0, 0.08),
            steps: 0,
            pricked: 0,
            last: nursery.day,
            next: nursery.day.plus(5),
            pocket: None,
            held: None,
            relabelled: false,
            quiet: None,
        }
    }

    pub fn container(&self) -> &'static str {
        if self.seedbed { "seedbed strip" } else { TREES[self.tree].container }
    }

    pub fn place(&self) -> &'static str {
        if self.seedbed { "sand bed" } else { TREES[self.tree].path[0] }
    }

    /// Whether its last look is in the book.
    pub fn is_at_hand(&self) -> bool {
        self.pocket.is_none()
    }

    fn kind(&self) -> &'static Tree {
        &TREES[self.tree]
    }

    fn share_of_its_days(&self, day: Day) -> f64 {
        f64::from(day.days_since(self.sown)) / self.ready_days
    }

    /// Seedlings that came up since the last look, by a curve between first and last day.
    fn come_up(&mut self, day: Day) -> u32 {
        let (first, half, last) = self.kind().emerges;
        let age = f64::from(day.days_since(self.sown));
        let share = if age < first {
            0.0
        } else if age >= last {
            1.0
        } else {
            1.0 / (1.0 + (-(age - half) * 6.0 / (last - first)).exp())
        };
        let rise = ((f64::from(self.viable) * share) as u32).saturating_sub(self.up);
        self.up += rise;
        rise
    }

    fn is_done(&self, day: Day) -> bool {
        let all_up = f64::from(day.days_since(self.sown)) > self.kind().emerges.2;
        self.standing == 0 && all_up && self.pocket.is_none()
    }

    /// A sample of so many plants.
    fn sample(&self, nursery: &mut Nursery) -> Value {
        let share = self.share_of_its_days(nursery.day).min(1.3);
        let kind = self.kind();
        let plants: Vec<Value> = (0..self.standing.min(nursery.die.between(8, 20) as u32))
            .map(|_| {
                let height_cm = nursery.die.about(kind.height_cm * share.powf(1.3) * self.vigour, 0.12).max(1.5);
                let collar_mm = nursery.die.about(kind.collar_mm * share * self.vigour, 0.1).max(0.6);
                let leaf_pairs = (f64::from(kind.leaf_pairs) * share).round().max(1.0) as i32;
                let (height_cm, collar_mm) = ((height_cm * 2.0).round() / 2.0, (collar_mm * 10.0).round() / 10.0);
                json!({"height_cm":height_cm,"collar_mm":collar_mm,"leaf_pairs":leaf_pairs})
            })
            .collect();
        json!({"tray":self.code,"plants":plants})
    }
}

impl Nursery {
    /// Plants that stood here before the book began.
    pub fn take_over(&mut self) {
        let tree = self.draw_tree();
        let ready = TREES[tree].ready_days;
        let age = (ready * (0.3 + 0.75 * self.die.share())) as i32;
        let mut tray = Tray::new(self, tree, self.day.plus(-age), false);
        tray.standing = self.die.between(25, 80) as u32;
        let share = tray.share_of_its_days(self.day);
        tray.steps = STEPS.iter().filter(|(at, _)| *at < share - 0.05).count();
        tray.next = self.day.plus(self.die.between(1, 8));
        let passed = |step: &Step| if let Step::Carry(to) = step { Some(*to) } else { None };
        let at = STEPS[..tray.steps].iter().filter_map(|(_, step)| passed(step)).max().unwrap_or(0);
        let body = json!({"tray":tray.code,"species":TREES[tree].key,"count":tray.standing,"from":"opening",
            "form":"bag","age_days":age,"container":tray.container(),"place":TREES[tree].path[at]});
        let lines = vec![("plants_received", body)];
        self.pieces.push(Piece { happened: self.day, lines, timed: false, slip: None });
        self.new_trays.push(tray);
    }

    /// The walk: every tray whose turn it is.
    pub fn tend_trays(&mut self) {
        let mut trays = std::mem::take(&mut self.trays);
        for tray in &mut trays {
            self.hand_in(tray);
            if tray.next <= self.day && tray.pocket.is_none() {
                self.look_at(tray);
            }
        }
        let day = self.day;
        for tray in trays.iter().filter(|tray| tray.is_done(day) && !tray.relabelled) {
            let known = tray.quiet.map(|(day, standing)| Known { tray: tray.code.clone(), day, standing });
            self.finished.extend(known);
        }
        trays.retain(|tray| !tray.is_done(day));
        trays.append(&mut self.new_trays);
        self.trays = trays;
    }

    fn hand_in(&mut self, tray: &mut Tray) {
        let Some((_, happened, lines)) = tray.pocket.take_if(|(on, _, _)| *on <= self.day) else { return };
        self.pieces.push(Piece { happened, lines, timed: false, slip: None });
        tray.next = self.day.plus(self.die.between(2, 6));
        tray.last = self.day;
    }

    fn look_at(&mut self, tray: &mut Tray) {
        let (day, share) = (self.day, tray.share_of_its_days(self.day));
        self.remember_quiet(tray);
        if self.relabel(tray) {
            return;
        }
        let mut lines = Vec::new();
        self.count(tray, &mut lines);
        self.trouble(tray, &mut lines);
        let may_wait = tray.standing > 0 && share < 0.95;
        if tray.seedbed {
            self.prick_out(tray, &mut lines);
        } else {
            self.take_steps(tray, share, &mut lines);
            if share >= 1.0 && tray.held.is_none() {
                self.send_out(tray, share, &mut lines);
            }
        }
        let moved = lines.iter().any(|(kind, _)| *kind == "moved_on");
        tray.last = day;
        let every = if tray.up < tray.viable {
            (3, 6)
        } else if share >= 1.0 {
            (5, 10)
        } else {
            (7, 13)
        };
        // Who is ahead of the pace looks a little less often.
        let slack = (self.days_ahead() / 6.0).clamp(-2.0, 4.0).round() as i32;
        tray.next = day.plus(self.die.between(every.0, every.1) + slack.max(3 - every.0));
        if lines.is_empty() {
            return;
        }
        if may_wait && !moved && self.die.chance(HANDED_IN_LATE) {
            let on = day.plus(self.die.between(DAYS_LATE.0, DAYS_LATE.1));
            tray.pocket = Some((on, day, lines));
            return;
        }
        self.done(lines);
    }

    fn remember_quiet(&mut self, tray: &mut Tray) {
        let share = tray.share_of_its_days(tray.last);
        let middle = share < 0.8 || tray.quiet.is_none();
        if middle && tray.standing >= 5 && self.day.days_since(tray.last) >= 3 && tray.last > tray.made {
            tray.quiet = Some((tray.last.plus(1), tray.standing));
        }
    }

    fn relabel(&mut self, tray: &mut Tray) -> bool {
        // Beds name a tray by the code under which plants of it went out.
        let young = !tray.seedbed && tray.share_of_its_days(self.day) < 0.9;
        if !young || tray.relabelled || tray.standing == 0 || !self.die.chance(0.0018) {
            return false;
        }
        let code = format!("{}b", tray.code);
        self.done(vec![("relabelled", json!({"tray":code,"was":tray.code}))]);
        (tray.code, tray.relabelled, tray.last) = (code, true, self.day);
        tray.next = self.day.plus(4);
        true
    }

    /// What died, and what stands.
    fn count(&mut self, tray: &mut Tray, lines: &mut Vec<Line>) {
        let (rise, share) = (tray.come_up(self.day), tray.share_of_its_days(self.day));
        let mut dead = 0;
        if tray.standing > 4 && self.die.chance(LOSSES) {
            let lost = 1 + self.die.of(tray.standing, 0.018);
            if self.die.chance(0.7) {
                lines.push(("lost", json!({"tray":tray.code,"count":lost,"cause":self.die.pick(&CAUSES)})));
            } else {
                dead = lost;
            }
            tray.standing -= lost;
        } else if rise == 0 && self.die.chance(0.12) {
            return;
        } else if tray.standing > 20 && !tray.seedbed && share < 0.85 && self.die.chance(0.05) {
            // One is missing and nobody knows why; not on a day of grading, where the books would take it for a runt.
            tray.standing -= 1;
        }
        tray.standing += rise;
        if tray.standing == 0 && f64::from(self.day.days_since(tray.sown)) >= tray.kind().emerges.2 {
            return;
        }
        if lines.is_empty() && dead == 0 && rise == 0 && tray.standing > 0 && self.die.chance(0.012) {
            lines.push(("stocktaken", json!({"tray":tray.code,"standing":tray.standing})));
            return;
        }
        let mut body = json!({"tray":tray.code,"standing":tray.standing});
        if dead > 0 {
            body["dead"] = json!(dead);
        }
        lines.push(("counted", body));
    }

    /// Pests, sickness, soft leaves, and what is kept back for it.
    fn trouble(&mut self, tray: &mut Tray, lines: &mut Vec<Line>) {
        if tray.standing == 0 {
            return;
        }
        if tray.held.is_some_and(|until| until <= self.day) {
            tray.held = None;
            lines.push(("released", json!({"tray":tray.code,"why":"looks clean again"})));
        }
        match (self.die.share() * 1000.0) as i32 {
            0..15 => {
                let what = *self.die.pick(&["leaf miner", "aphids on the tips", "brown spots", "scale"]);
                lines.push(("pest_seen", json!({"tray":tray.code,"what":what,"share_pct":self.die.between(2, 30)})));
                if self.die.chance(0.6) {
                    let with = *self.die.pick(&["soap and water", "copper", "neem water"]);
                    let days = self.die.between(1, 14);
                    lines.push(("treated", json!({"tray":tray.code,"with":with,"safe_after_days":days})));
                }
            }
            15..23 => lines.push(("flushed", json!({"tray":tray.code}))),
            23..28 if tray.held.is_none() => {
                let until = self.day.plus(self.die.between(8, 25));
                let body = json!({"tray":tray.code,"why":"sick: keep apart","until":until.to_string()});
                lines.push(("held", body));
                tray.held = Some(until);
            }
            28..40 if !tray.seedbed && tray.up > 0 && tray.up < tray.viable => self.resow(tray, lines),
            _ => {}
        }
    }

    fn resow(&mut self, tray: &mut Tray, lines: &mut Vec<Line>) {
        let seeds = self.die.between(3, 8) as u32;
        let lot = self.take_seed(tray.tree, seeds);
        tray.viable += self.die.of(seeds, tray.kind().germinates);
        lines.push(("resown", json!({"tray":tray.code,"lot":lot,"seeds":seeds})));
    }

    /// A tray of seedlings becomes two or three.
    fn prick_out(&mut self, tray: &mut Tray, lines: &mut Vec<Line>) {
        let (_, half, last) = tray.kind().emerges;
        let age = f64::from(self.day.days_since(tray.sown));
        let first_turn = tray.pricked == 0 && age >= half + (last - half) * 0.45 && tray.standing > 20;
        let all_up = age > last + 1.0;
        if !first_turn && !all_up {
            return;
        }
        let wanted = self.die.between(PRICKED_OUT.0, PRICKED_OUT.1) as u32;
        let count =
            if all_up && tray.standing < 100 { tray.standing * 9 / 10 } else { wanted.min(tray.standing * 6 / 10) };
        if count >= 5 {
            let mut to = Tray::new(self, tray.tree, tray.sown, false);
            to.standing = count;
            let body = json!({"from":tray.code,"to":to.code,"count":count,"how":"pricked_out",
                "container":to.container(),"cells":count,"place":to.place()});
            lines.push(("moved_on", body));
            tray.standing -= count;
            tray.pricked += 1;
            self.new_trays.push(to);
        }
        if all_up && tray.standing > 0 && tray.standing < 40 {
            lines.push(("culled", json!({"tray":tray.code,"count":tray.standing,"why":"bent taproots and runts"})));
            tray.standing = 0;
        }
    }

    /// What its age brings: samples, carrying, less shade, less water, grading.
    fn take_steps(&mut self, tray: &mut Tray, share: f64, lines: &mut Vec<Line>) {
        while let Some((_, step)) = STEPS.get(tray.steps).filter(|(at, _)| *at <= share && tray.standing > 0) {
            tray.steps += 1;
            let code = &tray.code;
            let line = match *step {
                Step::Measure => ("measured", tray.sample(self)),
                Step::Carry(to) => ("carried", json!({"tray":code,"place":tray.kind().path[to]})),
                Step::Water(every) => ("watering_set", json!({"tray":code,"every_days":every})),
                Step::Shade(_) if self.die.chance(0.6) => continue,
                Step::Shade(shade_pct) => ("shade_set", json!({"tray":code,"shade_pct":shade_pct})),
                Step::Plug => {
                    let roots = if share > 0.9 || self.die.chance(0.6) { "holds" } else { "crumbles" };
                    ("plug_checked", json!({"tray":code,"roots":roots}))
                }
                Step::Harden => ("hardening_begun", json!({"tray":code})),
                Step::Grade => {
                    let count = self.die.of(tray.standing, 0.08);
                    if count == 0 {
                        continue;
                    }
                    let why = *self.die.pick(&["runts", "roots circling", "two tips"]);
                    tray.standing -= count;
                    ("culled", json!({"tray":tray.code,"count":count,"why":why}))
                }
            };
            lines.push(line);
        }
    }

    /// A part goes to a bed that has room, the larger part to people; in the end nothing is left.
    fn send_out(&mut self, tray: &mut Tray, share: f64, lines: &mut Vec<Line>) {
        if tray.standing == 0 {
            return;
        }
        let part = (f64::from(tray.standing) * (0.2 + 0.3 * self.die.share())).ceil() as u32;
        if self.is_rainy() && self.die.chance(0.6) {
            if let Some((line, count)) = self.plant_out(tray.tree, &tray.code, part) {
                lines.push(line);
                tray.standing -= count;
            }
        } else if self.die.chance(0.75) {
            let to = self.die.pick(&RECEIVERS);
            lines.push(("given_out", json!({"tray":tray.code,"count":part,"to":to})));
            tray.standing -= part;
        }
        if tray.standing == 0 || (tray.standing > 4 && share < LAST_SHARE) {
            return;
        }
        let line = if self.die.chance(0.5) {
            ("culled", json!({"tray":tray.code,"count":tray.standing,"why":"left over, roots circling"}))
        } else {
            ("given_out", json!({"tray":tray.code,"count":tray.standing,"to":self.die.pick(&RECEIVERS)}))
        };
        lines.push(line);
        tray.standing = 0;
    }
}
