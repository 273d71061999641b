//! Rows whose columns are alike. A face that has no room for columns shows each as lines.

use super::{Line, Mark, Tone};

/// A tray that can go, with the beds it fits.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Offer {
    /// The tray.
    pub(crate) tray: String,
    /// Its species.
    pub(crate) species: String,
    /// How many plants to which bed.
    pub(crate) to: Vec<(String, String)>,
    /// By when it goes, and what ends then; empty where nothing does.
    pub(crate) before: String,
    /// What to take care of, by bed where it is not the same in all; empty where there is nothing.
    pub(crate) care: String,
}

/// A tray with what it waits for.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct TrayRow {
    /// How it stands.
    pub(crate) mark: Mark,
    /// The tray.
    pub(crate) tray: String,
    /// Its species.
    pub(crate) species: String,
    /// Plants standing.
    pub(crate) standing: u32,
    /// The same in words.
    pub(crate) plants: String,
    /// What it waits for.
    pub(crate) text: String,
}

/// A name with what is said of it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Named {
    /// How it stands.
    pub(crate) mark: Mark,
    /// The name.
    pub(crate) name: String,
    /// What is said of it.
    pub(crate) text: String,
}

fn line(depth: usize, mark: Option<Mark>, text: String) -> Line {
    Line { depth, mark, text, tone: Tone::Plain }
}

impl Offer {
    /// As lines: the tray, and under it each bed.
    pub(crate) fn lines(&self) -> Vec<Line> {
        let mut lines =
            vec![line(0, Some(Mark::Sign("+".to_string(), Tone::Good)), format!("{}  {}", self.tray, self.species))];
        for (number, (plants, bed)) in self.to.iter().enumerate() {
            let ends = if self.before.is_empty() || number > 0 { String::new() } else { format!(", {}", self.before) };
            lines.push(line(2, None, format!("{plants} → {bed}{ends}")));
        }
        lines.extend(self.care_line());
        lines
    }
}

impl Offer {
    /// What to take care of, as a line.
    pub(crate) fn care_line(&self) -> Option<Line> {
        let mark = Mark::Sign("!".to_string(), Tone::Waits);
        (!self.care.is_empty()).then(|| line(1, Some(mark), self.care.clone()))
    }
}

impl TrayRow {
    /// As lines: the tray, and under it what it waits for.
    pub(crate) fn lines(&self) -> Vec<Line> {
        let first = format!("{}  {}  {}", self.tray, self.species, self.plants);
        vec![line(0, Some(self.mark.clone()), first), line(2, None, self.text.clone())]
    }
}

impl Named {
    /// As a line.
    pub(crate) fn line(&self) -> Line {
        line(1, Some(self.mark.clone()), format!("{}: {}", self.name, self.text))
    }
}
