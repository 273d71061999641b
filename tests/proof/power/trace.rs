//! The file operations that `strace -f -xx` has recorded.

use std::collections::{BTreeMap, HashMap};
use std::path::{Path, PathBuf};

/// One operation. Paths are below the folder that is watched.
#[derive(Clone, Debug)]
pub enum Operation {
    Create { path: PathBuf, file: usize },
    Write { path: PathBuf, file: usize, at: usize, bytes: Vec<u8> },
    Truncate { file: usize, length: usize },
    Sync { path: PathBuf, file: usize },
    SyncFolder,
    Unlink { path: PathBuf },
    Rename { from: PathBuf, to: PathBuf },
    Link { from: PathBuf, to: PathBuf },
    Acknowledged(u64),
}

/// What lay in the folder before, and what was done.
#[derive(Clone)]
pub struct Trace {
    pub before: BTreeMap<PathBuf, (usize, Vec<u8>)>,
    pub operations: Vec<Operation>,
}

/// Every file below a folder that a cut could touch.
pub fn lying_in(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut found = BTreeMap::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(next) = folders.pop() {
        for entry in std::fs::read_dir(next).unwrap() {
            let path = entry.unwrap().path();
            let below = path.strip_prefix(folder).unwrap().to_path_buf();
            if path.is_dir() {
                folders.push(path);
            } else if is_watched(&below) {
                found.insert(below, std::fs::read(path).unwrap());
            }
        }
    }
    found
}

/// What is on the disk: not the memory that programs share, locks, or what only this test put there.
fn is_watched(path: &Path) -> bool {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    !(name.ends_with("-shm")
        || name.ends_with(".lock")
        || name == "lines"
        || name == "trace"
        || path.starts_with("another-shelf"))
}

#[derive(Clone)]
enum Opened {
    File { path: PathBuf, file: usize, at: usize },
    Folder,
}

struct Reader<'a> {
    home: &'a Path,
    files: BTreeMap<PathBuf, usize>,
    next: usize,
    opened: HashMap<(String, i64), Opened>,
    operations: Vec<Operation>,
}

impl Trace {
    pub fn read(text: &str, home: &Path, lying: BTreeMap<PathBuf, Vec<u8>>) -> Trace {
        let before: BTreeMap<PathBuf, (usize, Vec<u8>)> =
            lying.into_iter().enumerate().map(|(file, (path, bytes))| (path, (file, bytes))).collect();
        let files = before.iter().map(|(path, (file, _))| (path.clone(), *file)).collect();
        let mut reader = Reader { home, files, next: before.len(), opened: HashMap::new(), operations: Vec::new() };
        // A call during which another program made one stands in two lines; it counts where it ended.
        let mut begun: HashMap<&str, &str> = HashMap::new();
        for line in text.lines() {
            let Some((pid, rest)) = line.split_once(' ') else { continue };
            if let Some(first) = rest.strip_suffix(" <unfinished ...>") {
                begun.insert(pid, first);
            } else if let Some((_, second)) =
                rest.split_once(" resumed>").filter(|_| rest.trim_start().starts_with("<..."))
            {
                let first = begun.remove(pid).unwrap_or_default();
                reader.line(&format!("{pid} {first}{second}"));
            } else {
                reader.line(line);
            }
        }
        assert!(reader.operations.iter().any(|operation| matches!(operation, Operation::Sync { .. })));
        Trace { before, operations: reader.operations }
    }

    /// The same work without some syncs, told by where they stand and of what file.
    pub fn without_syncs(&self, leave_out: impl Fn(usize, &Path) -> bool) -> Trace {
        let kept = self.operations.iter().enumerate().filter(|(at, operation)| match operation {
            Operation::Sync { path, .. } => !leave_out(*at, path),
            _ => true,
        });
        Trace { before: self.before.clone(), operations: kept.map(|(_, operation)| operation.clone()).collect() }
    }
}

impl Reader<'_> {
    fn line(&mut self, line: &str) -> Option<()> {
        let (pid, rest) = line.split_once(' ')?;
        let (call, rest) = rest.trim_start().split_once('(')?;
        let (arguments, answer) = rest.rsplit_once(" = ")?;
        let answer: i64 = answer.split_whitespace().next()?.parse().ok()?;
        if answer < 0 {
            return None;
        }
        let arguments = arguments.trim_end().strip_suffix(')')?;
        let texts = texts(arguments);
        let descriptor: i64 = arguments.split(',').next().and_then(|first| first.trim().parse().ok()).unwrap_or(-1);
        let key = (pid.to_string(), descriptor);
        match call {
            "openat" | "open" | "creat" => self.open(pid, answer, arguments, &texts),
            "close" => drop(self.opened.remove(&key)),
            "pwrite64" => self.write(&key, texts.first()?.clone(), Some(last_number(arguments)?)),
            "write" => {
                let bytes = texts.first()?;
                // A shell that was told `>&2` writes to 1 all the same, after turning 1 round.
                if (1..=2).contains(&descriptor) && bytes.starts_with(b"ACK ") {
                    let number = String::from_utf8_lossy(bytes).trim_start_matches("ACK ").trim().parse().ok()?;
                    self.operations.push(Operation::Acknowledged(number));
                }
                self.write(&key, bytes.clone(), None);
            }
            "ftruncate" => {
                if let Some(Opened::File { file, .. }) = self.opened.get(&key) {
                    self.operations.push(Operation::Truncate { file: *file, length: last_number(arguments)? });
                }
            }
            "fsync" | "fdatasync" => match self.opened.get(&key)?.clone() {
                Opened::File { path, file, .. } => self.operations.push(Operation::Sync { path, file }),
                Opened::Folder => self.operations.push(Operation::SyncFolder),
            },
            "unlink" | "unlinkat" => {
                let path = self.below(texts.first()?)?;
                self.files.remove(&path)?;
                self.operations.push(Operation::Unlink { path });
            }
            "rename" | "renameat" | "renameat2" | "link" | "linkat" => {
                let (from, to) = (self.below(texts.first()?)?, self.below(texts.get(1)?)?);
                let file = *self.files.get(&from)?;
                self.files.insert(to.clone(), file);
                if call.starts_with("link") {
                    self.operations.push(Operation::Link { from, to });
                } else {
                    self.files.remove(&from);
                    self.operations.push(Operation::Rename { from, to });
                }
            }
            _ => {}
        }
        Some(())
    }

    fn below(&self, path: &[u8]) -> Option<PathBuf> {
        Some(Path::new(std::str::from_utf8(path).ok()?).strip_prefix(self.home).ok()?.to_path_buf())
    }

    fn open(&mut self, pid: &str, descriptor: i64, arguments: &str, texts: &[Vec<u8>]) {
        let key = (pid.to_string(), descriptor);
        self.opened.remove(&key);
        let Some(path) = texts.first().and_then(|path| self.below(path)) else { return };
        if self.home.join(&path).is_dir() {
            self.opened.insert(key, Opened::Folder);
            return;
        }
        if !is_watched(&path) {
            return;
        }
        let file = match self.files.get(&path) {
            Some(file) => *file,
            None => {
                self.next += 1;
                self.files.insert(path.clone(), self.next);
                self.operations.push(Operation::Create { path: path.clone(), file: self.next });
                self.next
            }
        };
        if arguments.contains("O_TRUNC") {
            self.operations.push(Operation::Truncate { file, length: 0 });
        }
        self.opened.insert(key, Opened::File { path, file, at: 0 });
    }

    fn write(&mut self, key: &(String, i64), bytes: Vec<u8>, to: Option<usize>) {
        if let Some(Opened::File { path, file, at }) = self.opened.get_mut(key) {
            let from = to.unwrap_or(*at);
            if to.is_none() {
                *at += bytes.len();
            }
            self.operations.push(Operation::Write { path: path.clone(), file: *file, at: from, bytes });
        }
    }
}

fn last_number(arguments: &str) -> Option<usize> {
    arguments.rsplit(',').next()?.trim().parse().ok()
}

/// The texts among the arguments, written as `"\x41\x42"`.
fn texts(arguments: &str) -> Vec<Vec<u8>> {
    let quoted = arguments.split('"').skip(1).step_by(2);
    quoted.map(|text| text.split("\\x").skip(1).map(|two| u8::from_str_radix(two, 16).unwrap_or(0)).collect()).collect()
}
