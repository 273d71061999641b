//! A bed: laid out, set with nurse plants, dug, planted, counted, and in the end left to grow.

use std::collections::BTreeMap;

use outplant::base::Day;
use outplant::science::spacing::{self, SpacingPattern};
use serde_json::json;

use super::Line;
use super::nursery::Nursery;
use super::site::{LAYOUTS, Layout};
use super::species::{NURSES, TREES};

/// Days after an outplanting on which the living are counted, and how often after that.
const SURVIVAL_DAYS: [i32; 5] = [30, 91, 182, 365, 730];
const SURVIVAL_EVERY_DAYS: i32 = 1460;
/// Share that is found dead at each of these counts, and at every later one.
const DEATHS: [f64; 5] = [0.06, 0.05, 0.04, 0.03, 0.02];
const LATER_DEATHS: f64 = 0.01;
/// Days from laying out until trees can come in, and until the bed is left alone.
const OPEN_AFTER_DAYS: i32 = 175;
const LEFT_ALONE_AFTER_DAYS: i32 = 800;
/// Fewer plants than this part of its positions are not carried to a bed.
const FEWEST_SHARE: u32 = 10;
/// The last beds, among which one with room is looked for.
const LAST_BEDS: usize = 40;

#[derive(Clone, Copy)]
enum Task {
    Work(&'static str),
    Set(usize),
    CountNurse(usize),
    MeasureNurse(usize),
    CutNurse(usize),
    FellNurse(usize),
    Light,
    Soil,
    Survival(usize, usize),
    Cattle,
}

/// Plants of a tray that went out on a day.
struct Cohort {
    tree: usize,
    tray: String,
    day: Day,
    living: u32,
    dead: u32,
}

pub struct Bed {
    pub name: String,
    layout: &'static Layout,
    pub made: Day,
    /// Positions of each line of the plan.
    positions: Vec<u32>,
    nurses: Vec<u32>,
    cohorts: Vec<Cohort>,
    tasks: BTreeMap<(Day, u32), Task>,
    given: u32,
    touched: Day,
}

impl Bed {
    fn due(&mut self, day: Day, task: Task) {
        self.given += 1;
        self.tasks.insert((day, self.given), task);
    }

    fn living(&self, tree: usize) -> u32 {
        self.cohorts.iter().filter(|cohort| cohort.tree == tree).map(|cohort| cohort.living).sum()
    }

    fn room(&self, tree: usize, day: Day) -> u32 {
        let age = day.days_since(self.made);
        if !(OPEN_AFTER_DAYS..LEFT_ALONE_AFTER_DAYS).contains(&age) || self.touched == day {
            return 0;
        }
        let line = self.layout.plan.iter().position(|(planned, ..)| *planned == tree);
        line.map_or(0, |line| {
            let room = self.positions[line].saturating_sub(self.living(tree));
            if room * FEWEST_SHARE < self.positions[line] { 0 } else { room }
        })
    }

    /// The share of light that falls through.
    pub fn light_share(&self, day: Day) -> f64 {
        let age = f64::from(day.days_since(self.made));
        1.0 - (1.0 - self.layout.light) * (age / 200.0).min(1.0)
    }
}

impl Nursery {
    /// Lays a bed out and plans its years.
    pub fn lay_out(&mut self) {
        let layout = &LAYOUTS[self.beds.len() % LAYOUTS.len()];
        let name = format!("{} {}", layout.name, self.beds.len() / LAYOUTS.len() + 1);
        let grid = |row_m: f64, in_row_m: f64, offset_m: f64| {
            let (length_m, width_m) = (layout.length_m, layout.width_m);
            let rectangle = SpacingPattern::Rectangle;
            let laying = spacing::Laying {
                offset_m,
                row_offset_m: offset_m,
                ..spacing::Laying::new(rectangle, Some(row_m), in_row_m)
            };
            let grid = spacing::positions(length_m, width_m, &laying);
            grid.unwrap().len() as u32
        };
        let mut bed = Bed {
            name,
            layout,
            made: self.day,
            positions: layout
                .plan
                .iter()
                .map(|&(_, row_m, in_row_m, offset_m)| grid(row_m, in_row_m, offset_m))
                .collect(),
            nurses: layout.nurses.iter().map(|&nurse| grid(NURSES[nurse].1, NURSES[nurse].2, 0.0)).collect(),
            cohorts: Vec::new(),
            tasks: BTreeMap::new(),
            given: 0,
            touched: self.day,
        };
        self.plan_years(&mut bed);
        let body = json!({"bed":bed.name,"field":layout.field,"length_m":layout.length_m,"width_m":layout.width_m,
            "row_bearing_deg":80,"plan":layout.written()});
        let mut lines = vec![("bed_set", body)];
        if self.die.chance(0.25) {
            lines.push(("positions_blocked", json!({"bed":bed.name,"at":["1.2"],"why":"rock"})));
        }
        self.done(lines);
        self.beds.push(bed);
    }

    fn plan_years(&mut self, bed: &mut Bed) {
        let once = [
            (3, Task::Work("cleared")),
            (110, Task::Light),
            (140, Task::Light),
            (150, Task::Soil),
            (154, Task::Work("holes")),
            (163, Task::Work("weeded")),
            (167, Task::Work("mulched")),
            (171, Task::Light),
            (340, Task::Soil),
        ];
        for (after, task) in once {
            bed.due(self.day.plus(after + self.die.between(0, 3)), task);
        }
        for (after, every, task) in [
            (190, 26, Task::Work("weeded")),
            (148, 50, Task::Work("cleared")),
            (320, 165, Task::Work("holes")),
            (215, 45, Task::Light),
            (400, 180, Task::Work("mulched")),
        ] {
            for day in (after..LEFT_ALONE_AFTER_DAYS).step_by(every) {
                bed.due(self.day.plus(day + self.die.between(0, 9)), task);
            }
        }
        for nurse in 0..bed.nurses.len() {
            bed.due(self.day.plus(8 + 6 * nurse as i32), Task::Set(nurse));
            for (after, every, task) in [
                (35, 150, Task::CountNurse(nurse)),
                (95, 130, Task::MeasureNurse(nurse)),
                (210, 120, Task::CutNurse(nurse)),
            ] {
                for day in (after..LEFT_ALONE_AFTER_DAYS - 60).step_by(every) {
                    bed.due(self.day.plus(day + self.die.between(0, 9)), task);
                }
            }
            bed.due(self.day.plus(LEFT_ALONE_AFTER_DAYS + 20 * nurse as i32), Task::FellNurse(nurse));
        }
        if self.die.chance(0.3) {
            bed.due(self.day.plus(self.die.between(250, 700)), Task::Cattle);
        }
    }

    /// What is due in the beds today.
    pub fn tend_beds(&mut self) {
        let mut beds = std::mem::take(&mut self.beds);
        for bed in &mut beds {
            let mut lines = Vec::new();
            while let Some(task) = bed.tasks.first_entry().filter(|task| task.key().0 <= self.day) {
                let task = task.remove();
                let line = self.tend(bed, task);
                lines.extend(line);
            }
            if !lines.is_empty() {
                bed.touched = self.day;
                self.done(lines);
            }
        }
        self.beds = beds;
    }

    fn tend(&mut self, bed: &mut Bed, task: Task) -> Option<Line> {
        let name = bed.name.clone();
        let age = f64::from(self.day.days_since(bed.made));
        let line = match task {
            Task::Work(task) => ("prepared", json!({"bed":name,"task":task})),
            Task::Set(nurse) => {
                let (key, row_m, in_row_m) = NURSES[bed.layout.nurses[nurse]];
                let body = json!({"bed":name,"nurse":key,"count":bed.nurses[nurse],"row_m":row_m,"in_row_m":in_row_m});
                ("nurse_planted", body)
            }
            Task::CountNurse(nurse) => {
                bed.nurses[nurse] -= self.die.of(bed.nurses[nurse], 0.03);
                let key = NURSES[bed.layout.nurses[nurse]].0;
                ("nurse_counted", json!({"bed":name,"nurse":key,"alive":bed.nurses[nurse],"cause":"wind and borer"}))
            }
            Task::MeasureNurse(nurse) => {
                let tall = (0.5 + age / 150.0).min(3.0);
                let (height_m, crown_m) = (self.die.about(tall, 0.1), self.die.about(tall * 0.4, 0.1));
                let key = NURSES[bed.layout.nurses[nurse]].0;
                let round = |metres: f64| (metres * 100.0).round() / 100.0;
                let body = json!({"bed":name,"nurse":key,"height_m":round(height_m),"crown_radius_m":round(crown_m)});
                ("nurse_measured", body)
            }
            Task::CutNurse(nurse) => {
                let (key, share) = (NURSES[bed.layout.nurses[nurse]].0, self.die.between(2, 5) as f64 / 10.0);
                ("nurse_cut", json!({"bed":name,"nurse":key,"what":"leaves","share":share}))
            }
            Task::FellNurse(nurse) => {
                let key = NURSES[bed.layout.nurses[nurse]].0;
                ("nurse_cut", json!({"bed":name,"nurse":key,"what":"felled","share":1}))
            }
            Task::Light => ("light_read", self.light_body(bed)),
            Task::Soil => {
                let (depth_cm, push_kg) = (self.die.between(30, 46), self.die.between(8, 11));
                let body = json!({"bed":name,"rod_mm":8,"push_kg":push_kg,"depth_cm":depth_cm,"wet":true});
                ("soil_checked", body)
            }
            Task::Survival(cohort, time) => return self.survival(bed, cohort, time),
            Task::Cattle => return self.cattle(bed),
        };
        Some(line)
    }

    fn light_body(&mut self, bed: &Bed) -> serde_json::Value {
        let share = self.die.about(bed.light_share(self.day), 0.04).min(1.0);
        let sky = if self.die.chance(0.7) { "overcast" } else { "clear" };
        if self.die.chance(0.5) {
            let share = (share * 100.0).round() / 100.0;
            return json!({"bed":bed.name,"light_share":share,"sky":sky});
        }
        let readings: Vec<_> = (0..5)
            .map(|_| {
                let open_lux = self.die.between(14, 30) * 1000;
                let under_lux = self.die.about(f64::from(open_lux) * share, 0.05).round() as i32;
                json!({"under_lux":under_lux.min(open_lux),"open_lux":open_lux})
            })
            .collect();
        json!({"bed":bed.name,"readings":readings,"sky":sky})
    }

    fn survival(&mut self, bed: &mut Bed, cohort: usize, time: usize) -> Option<Line> {
        let deaths = DEATHS.get(time).copied().unwrap_or(LATER_DEATHS);
        let found = bed.cohorts.get_mut(cohort)?;
        let died = self.die.of(found.living, deaths);
        found.living -= died;
        found.dead += died;
        let mut body = json!({"bed":bed.name,"species":TREES[found.tree].key,"tray":found.tray,
            "outplanted_on":found.day.to_string(),"alive":found.living,"dead":found.dead});
        if died > 0 {
            body["causes"] = json!(self.die.pick(&["termites", "dry months", "planted deep", "grubs"]));
        }
        let next = SURVIVAL_DAYS.get(time + 1).map(|after| found.day.plus(*after));
        let next = next.unwrap_or(self.day.plus(SURVIVAL_EVERY_DAYS));
        bed.due(next.plus(self.die.between(0, 10)), Task::Survival(cohort, time + 1));
        Some(("survival_counted", body))
    }

    /// Cattle get in: into trees of which only one planting can have lost them, else into the nurse plants.
    fn cattle(&mut self, bed: &mut Bed) -> Option<Line> {
        let of_tree = |tree: usize| bed.cohorts.iter().filter(|cohort| cohort.tree == tree).count();
        let alone = bed.cohorts.iter().position(|cohort| cohort.living > 3 && of_tree(cohort.tree) == 1);
        let (species, living) = match alone.map(|at| &mut bed.cohorts[at]) {
            Some(cohort) => (TREES[cohort.tree].key, &mut cohort.living),
            None => (NURSES[bed.layout.nurses[0]].0, &mut bed.nurses[0]),
        };
        if *living < 4 {
            return None;
        }
        let count = self.die.between(1, *living as i32 / 2) as u32;
        *living -= count;
        if let Some(at) = alone {
            bed.cohorts[at].dead += count;
        }
        Some(("plants_lost", json!({"bed":bed.name,"species":species,"count":count,"cause":"cattle at night"})))
    }

    /// Puts up to so many plants of a tray into the oldest bed that has room for them.
    pub fn plant_out(&mut self, tree: usize, tray: &str, most: u32) -> Option<(Line, u32)> {
        let (day, from) = (self.day, self.beds.len().saturating_sub(LAST_BEDS));
        let bed = self.beds[from..].iter_mut().find(|bed| bed.room(tree, day) > 0)?;
        let count = bed.room(tree, day).min(most);
        bed.cohorts.push(Cohort { tree, tray: tray.to_string(), day, living: count, dead: 0 });
        let after = day.plus(SURVIVAL_DAYS[0] + self.die.between(0, 4));
        bed.due(after, Task::Survival(bed.cohorts.len() - 1, 0));
        Some((("outplanted", json!({"tray":tray,"bed":bed.name,"count":count})), count))
    }
}
