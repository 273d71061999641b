//! The disk as it could look after a cut, rebuilt and opened.

use std::collections::{BTreeMap, BTreeSet, HashSet};
use std::fs;
use std::path::{Path, PathBuf};

use outplant::journal::{Journal, JournalError, check};

use super::trace::{Operation, Trace};
use crate::proof::{Dice, quick_folder, unharmed};

/// What was found after a cut.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Verdict {
    Fine,
    /// Something acknowledged is gone.
    Lost(String),
    /// The file, or a copy, is not what it should be.
    Damaged(String),
}

type Images = BTreeMap<usize, Vec<u8>>;
type Names = BTreeMap<PathBuf, usize>;

/// A walk through a trace, cutting on the way.
pub struct Replay<'a> {
    trace: &'a Trace,
    /// Whether names are settled only by the sync of their folder.
    strict: bool,
    variants: u64,
    every: usize,
    at: usize,
    variant: u64,
    settled: Images,
    names: Names,
    writes: Vec<Operation>,
    renames: Vec<Operation>,
    acknowledged: Vec<u64>,
    dice: Dice,
    folder: tempfile::TempDir,
    /// Copies that were proven, by all of their bytes: the same bytes are proven once.
    proven: HashSet<Vec<u8>>,
}

impl<'a> Replay<'a> {
    /// About so many cuts, at every operation where they are enough, else at each acknowledgement and so many others.
    pub fn new(trace: &'a Trace, strict: bool, cuts: u64) -> Replay<'a> {
        /// Keep nothing, keep all, and six times something in between.
        const LEAST_VARIANTS: u64 = 8;
        let operations = trace.operations.len();
        let acknowledgements =
            trace.operations.iter().filter(|operation| matches!(operation, Operation::Acknowledged(_))).count();
        let places = (cuts / LEAST_VARIANTS) as usize;
        let others = places.saturating_sub(acknowledgements).max(1);
        let every = operations.div_ceil(others).max(1);
        let variants = LEAST_VARIANTS.max(cuts.div_ceil((operations / every) as u64 + acknowledgements as u64));
        Replay {
            trace,
            strict,
            variants,
            every,
            at: 0,
            variant: u64::MAX,
            settled: trace.before.values().cloned().collect(),
            names: trace.before.iter().map(|(path, (file, _))| (path.clone(), *file)).collect(),
            writes: Vec::new(),
            renames: Vec::new(),
            acknowledged: Vec::new(),
            dice: Dice::new(7),
            folder: quick_folder(),
            proven: HashSet::new(),
        }
    }

    /// The operation after which the last cut was made.
    pub fn at(&self) -> usize {
        self.at
    }

    /// The next cut; none after the last.
    pub fn next_cut(&mut self) -> Option<Verdict> {
        while self.variant >= self.variants {
            let operation = self.trace.operations.get(self.at)?;
            self.at += 1;
            self.done(operation);
            if matches!(operation, Operation::Acknowledged(_)) || self.at.is_multiple_of(self.every) {
                self.variant = 0;
            }
        }
        let (names, images) = self.after_cut();
        self.variant += 1;
        if self.variant == self.variants {
            self.variant = u64::MAX;
        }
        Some(self.looked_at(&names, &images))
    }

    fn done(&mut self, operation: &Operation) {
        match operation {
            Operation::Acknowledged(number) => self.acknowledged.push(*number),
            Operation::Write { .. } | Operation::Truncate { .. } => self.writes.push(operation.clone()),
            Operation::Create { .. } | Operation::Unlink { .. } | Operation::Rename { .. } | Operation::Link { .. } => {
                self.renames.push(operation.clone());
            }
            Operation::SyncFolder => self.settle_names(),
            Operation::Sync { file, .. } => {
                if !self.strict {
                    self.settle_names();
                }
                for write in std::mem::take(&mut self.writes) {
                    if file_of(&write) == Some(*file) {
                        put(&mut self.settled, &write);
                    } else {
                        self.writes.push(write);
                    }
                }
            }
        }
    }

    fn settle_names(&mut self) {
        for operation in std::mem::take(&mut self.renames) {
            rename(&mut self.names, &operation);
        }
    }

    /// Of what is not settled nothing is kept, or all, or something; a write may be torn.
    fn after_cut(&mut self) -> (Names, Images) {
        let (mut names, mut images) = (self.names.clone(), self.settled.clone());
        let kept = match self.variant {
            0 => 0,
            1 => self.renames.len(),
            _ => self.dice.below(self.renames.len() + 1),
        };
        for operation in &self.renames[..kept] {
            rename(&mut names, operation);
        }
        for write in &self.writes {
            let keeps = self.variant == 1 || (self.variant > 1 && self.dice.below(2) == 0);
            if !keeps {
                continue;
            }
            let mut write = write.clone();
            if let Operation::Write { bytes, .. } = &mut write
                && self.variant > 1
                && bytes.len() > 512
                && self.dice.below(10) < 3
            {
                bytes.truncate(512 * (1 + self.dice.below(bytes.len() / 512)));
            }
            put(&mut images, &write);
        }
        (names, images)
    }

    fn looked_at(&mut self, names: &Names, images: &Images) -> Verdict {
        let folder = self.folder.path();
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() { fs::remove_dir_all(path).unwrap() } else { fs::remove_file(path).unwrap() }
        }
        for (path, file) in names {
            let path = folder.join(path);
            fs::create_dir_all(path.parent().unwrap()).unwrap();
            fs::write(path, images.get(file).map_or(&[][..], Vec::as_slice)).unwrap();
        }
        let (folder, begun) = (folder.to_path_buf(), !self.trace.before.is_empty());
        let (acknowledged, proven) = (&self.acknowledged, &mut self.proven);
        unharmed("opening after a cut", || verdict(&folder, acknowledged, begun, proven))
            .unwrap_or_else(Verdict::Damaged)
    }
}

fn file_of(operation: &Operation) -> Option<usize> {
    match operation {
        Operation::Write { file, .. } | Operation::Truncate { file, .. } => Some(*file),
        _ => None,
    }
}

fn put(images: &mut Images, operation: &Operation) {
    match operation {
        Operation::Write { file, at, bytes, .. } => {
            let image = images.entry(*file).or_default();
            let end = at + bytes.len();
            if image.len() < end {
                image.resize(end, 0);
            }
            image[*at..end].copy_from_slice(bytes);
        }
        Operation::Truncate { file, length } => images.entry(*file).or_default().resize(*length, 0),
        _ => {}
    }
}

fn rename(names: &mut Names, operation: &Operation) {
    match operation {
        Operation::Create { path, file } => drop(names.insert(path.clone(), *file)),
        Operation::Unlink { path } => drop(names.remove(path)),
        Operation::Link { from, to } => {
            if let Some(file) = names.get(from).copied() {
                names.insert(to.clone(), file);
            }
        }
        Operation::Rename { from, to } => {
            if let Some(file) = names.remove(from) {
                names.insert(to.clone(), file);
            }
        }
        _ => {}
    }
}

/// Opens what is there, as the program would, and looks for everything that was acknowledged.
fn verdict(folder: &Path, acknowledged: &[u64], begun_before: bool, proven: &mut HashSet<Vec<u8>>) -> Verdict {
    let path = folder.join("nursery.outplant");
    let begun = begun_before || acknowledged.contains(&0);
    if !path.exists() {
        return if begun { Verdict::Lost("the book itself".into()) } else { Verdict::Fine };
    }
    let opened = Journal::open(&path, &folder.join(".config/outplant")).and_then(|journal| {
        let mut texts = Vec::new();
        journal.sealed::<JournalError>(&mut |sealed| {
            texts.push(sealed.body);
            Ok(())
        })?;
        Ok(texts)
    });
    let texts = match opened {
        Ok(texts) => texts,
        Err(error) => return Verdict::Damaged(error.to_string()),
    };
    match check(&path) {
        Ok(report) if report.faults.is_empty() => {}
        Ok(report) => return Verdict::Damaged(format!("{:?}", report.faults)),
        Err(error) => return Verdict::Damaged(error.to_string()),
    }
    let said: BTreeSet<&str> =
        texts.iter().filter_map(|body| body.strip_prefix("{\"text\":\"n")?.split('.').next()).collect();
    for number in acknowledged.iter().filter(|number| **number > 0) {
        let copy = folder.join(format!("copy-{number}"));
        let is_copy = !number.is_multiple_of(10) && number.is_multiple_of(13);
        if is_copy && !copy.exists() {
            return Verdict::Lost(format!("copy-{number}"));
        }
        if !is_copy && !said.contains(number.to_string().as_str()) {
            return Verdict::Lost(format!("n{number}"));
        }
    }
    let of_imports = texts.iter().filter(|body| body.contains(". ")).count();
    if !of_imports.is_multiple_of(20) {
        return Verdict::Damaged("an import is there by half".into());
    }
    // A copy has its name only when it is whole, also where nobody heard so.
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let is_copy = path.file_name().is_some_and(|name| name.to_string_lossy().starts_with("copy-"));
        let bytes = if is_copy { fs::read(&path).unwrap() } else { continue };
        if proven.contains(&bytes) {
            continue;
        }
        if !check(&path).is_ok_and(|report| report.faults.is_empty()) {
            return Verdict::Damaged(format!("{} is not whole", path.display()));
        }
        proven.insert(bytes);
    }
    Verdict::Fine
}
