//! What is written long after it happened, and what was written by mistake.

use serde_json::json;

use super::nursery::{Nursery, Piece, Slip};

/// Of the entries of a day, how many more are told of days long past, and how many are slips.
const LONG_PAST: f64 = 0.011;
const SLIPS: f64 = 0.0033;
/// How far back, days: two years.
const LONGEST_BACK_DAYS: i32 = 730;

impl Nursery {
    /// Entries dated back, and slips of the pen.
    pub fn write_late_and_slip(&mut self) {
        let lines: usize = self.pieces.iter().map(|piece| piece.lines.len()).sum();
        for _ in 0..self.die.of(lines as u32, LONG_PAST) {
            if let Some(piece) = self.long_past() {
                self.pieces.push(piece);
            }
        }
        for _ in 0..self.die.of(lines as u32, SLIPS) {
            if let Some(piece) = self.slip() {
                self.pieces.push(piece);
            }
        }
    }

    fn long_past(&mut self) -> Option<Piece> {
        let (happened, line) = match self.die.between(0, 9) {
            0..=4 if !self.finished.is_empty() => {
                let at = self.die.between(0, self.finished.len() as i32 - 1) as usize;
                let known = &self.finished[at];
                if self.day.days_since(known.day) > LONGEST_BACK_DAYS {
                    return None;
                }
                let (tray, standing) = (&known.tray, known.standing);
                let line = match self.die.between(0, 2) {
                    0 => ("counted", json!({"tray":tray,"standing":standing})),
                    1 => ("plug_checked", json!({"tray":tray,"roots":"holds"})),
                    _ => ("pest_seen", json!({"tray":tray,"what":"aphids, told of it only now"})),
                };
                (known.day, line)
            }
            5..=6 => {
                let bed = self.die.between(0, self.beds.len() as i32 - 1) as usize;
                let bed = &self.beds[bed];
                let age = self.day.days_since(bed.made).min(LONGEST_BACK_DAYS);
                let happened = self.day.plus(-self.die.between(0, age));
                let light_share = (bed.light_share(happened) * 100.0).round() / 100.0;
                (happened, ("light_read", json!({"bed":bed.name,"light_share":light_share,"sky":"overcast"})))
            }
            7 => {
                let happened = self.day.plus(-self.die.between(1, 30));
                (happened, ("noted", json!({"text":"Found in the old exercise book: rain on the new bags, all well."})))
            }
            _ => {
                let happened = self.no_gauge.pop()?;
                (happened, ("weather", json!({"rain_mm":self.die.between(0, 120) as f64 / 10.0})))
            }
        };
        Some(Piece { happened, lines: vec![line], timed: false, slip: None })
    }

    fn slip(&mut self) -> Option<Piece> {
        let mut slip = Slip { on: self.day, harmless: false };
        let line = if self.die.chance(0.5) {
            let trays = self.trays.len() as i32;
            let at = (trays > 0).then(|| self.die.between(0, trays - 1) as usize)?;
            let tray = self.trays.get(at).filter(|tray| tray.is_at_hand() && tray.last < self.day)?;
            let (code, standing) = (&tray.code, tray.standing);
            if standing < 10 {
                return None;
            }
            // Noticed the same evening, before anything else is written of the tray.
            match self.die.chance(0.5) {
                true => ("lost", json!({"tray":code,"count":self.die.between(1, 5),"cause":"rats"})),
                false => ("counted", json!({"tray":code,"standing":standing / 2})),
            }
        } else {
            slip = Slip { on: self.day.plus(self.die.between(0, 20)), harmless: true };
            let bed = self.die.pick(&self.beds).name.clone();
            match self.die.between(0, 2) {
                0 => ("noted", json!({"about":bed,"text":"The rod goes in to the hand everywhere but at the path."})),
                1 => ("pest_seen", json!({"bed":bed,"what":"mole rats"})),
                _ => ("light_read", json!({"bed":bed,"light_share":0.5,"sky":"clear"})),
            }
        };
        Some(Piece { happened: self.day, lines: vec![line], timed: false, slip: Some(slip) })
    }
}
