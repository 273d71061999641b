//! Books of many years: `cargo bench --bench books [ENTRIES...] [PARTS...]`. On a grown nursery of each size: rows read
//! with plain SQLite, the whole fold, the program from start to answer, one entry more, one entry dated back two years,
//! memory, import, `check`. Prints rows of a table; judges nothing. Parts: book rows ready desk import check. `cargo bench
//! --bench books growth` has `ready` and `check` over four sizes, and draws the chart of docs/speed.md.
#![allow(clippy::unwrap_used, clippy::print_stdout, missing_docs)]

#[path = "../support/grown/mod.rs"]
mod grown;
#[path = "../support/taken.rs"]
mod taken;

use std::collections::HashSet;
use std::fs::File;
use std::hint::black_box;
use std::io::{BufRead, BufReader, BufWriter, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::time::{Duration, Instant};

use grown::{GrownBook, Known, write_grown};
use outplant::base::{Clock, Moment};
use outplant::desk::{Desk, Now};
use outplant::journal::Journal;
use outplant::nursery::entry::Entry;
use outplant::nursery::envelope::Draft;
use outplant::reckon::{Fold, View};
use rusqlite::{Connection, OpenFlags};
use serde_json::{Value, json};
use taken::{Figure, chart, watched};

/// The seed of every book.
const SEED: u64 = 20_261_125;
const USUAL_ENTRIES: [usize; 3] = [10_000, 100_000, 1_000_000];
const PARTS: [&str; 6] = ["book", "rows", "ready", "desk", "import", "check"];
/// Entries over which growth is looked at.
const SIZES: [usize; 4] = [1_000, 10_000, 100_000, 1_000_000];
/// How long one figure may be measured after its first runs, and how many these are.
const PATIENCE: Duration = Duration::from_secs(20);
const LEAST_RUNS: usize = 3;
/// Two years, days.
const LONG_PAST_DAYS: i32 = 730;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).filter(|word| !word.starts_with('-')).collect();
    let mut entries: Vec<usize> = words.iter().filter_map(|word| word.parse().ok()).collect();
    let growth = words.iter().any(|word| word == "growth");
    if entries.is_empty() {
        entries = if growth { SIZES.to_vec() } else { USUAL_ENTRIES.to_vec() };
    }
    let asked: Vec<&str> = PARTS.into_iter().filter(|part| words.iter().any(|word| word == part)).collect();
    let wanted = |part: &str| match asked.is_empty() {
        true if growth => ["ready", "check"].contains(&part),
        true => true,
        false => asked.contains(&part),
    };
    let mut grown: Vec<Figure> = Vec::new();
    println!("| entries | what | figure |\n| --- | --- | --- |");
    for entries in entries {
        let book = Book::write(entries);
        if wanted("rows") {
            book.rows_and_fold();
        }
        if wanted("ready") {
            grown.extend(book.ready());
        }
        if wanted("check") {
            grown.extend(book.check());
        }
        if wanted("import") {
            book.import();
        }
        if wanted("desk") {
            book.desk();
        }
    }
    if growth {
        grown.sort_by(|a, b| a.what.cmp(&b.what));
        println!("\n{}", chart(&grown));
    }
}

/// A book in a folder of its own.
struct Book {
    folder: tempfile::TempDir,
    file: PathBuf,
    entries: usize,
    grown: GrownBook,
}

impl Book {
    fn write(entries: usize) -> Book {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("grown.outplant");
        let begun = Instant::now();
        let grown = write_grown(&file, folder.path(), entries, SEED).unwrap();
        let book = Book { folder, file, entries, grown };
        let mib = std::fs::metadata(&book.file).unwrap().len() as f64 / f64::from(1 << 20);
        let seconds = begun.elapsed().as_secs_f64();
        let last = book.grown.last_day;
        book.row("the book itself", &format!("{mib:.1} MiB, last day {last}, written in {seconds:.1} s"));
        book
    }

    fn row(&self, what: &str, figure: &str) {
        println!("| {} | {what} | {figure} |", self.entries);
    }

    /// The same rows with plain SQLite, and the fold of them.
    fn rows_and_fold(&self) {
        let rows = Runs::take(5, || read_rows(&self.file, |_| ()));
        self.row("plain SQLite: every column of every row", &rows.told());
        let values = Runs::take(5, || {
            read_rows(&self.file, |body| drop(black_box(serde_json::from_str::<Value>(body).unwrap())));
        });
        self.row("plain SQLite, each body parsed as a serde_json Value", &values.told());
        let own = Runs::take(5, || drop(black_box(entries_of(&self.file))));
        self.row("Journal::entries: read and parsed into kinds", &own.told());
        let view = View { day: self.grown.last_day, known: None };
        let kept: Vec<Arc<Entry>> = entries_of(&self.file);
        let fold = Runs::take(5, || {
            drop(black_box(Fold::new(view, view.day, kept.iter().cloned()).picture()));
        });
        self.row("Fold::new and picture of entries in memory", &fold.told());
        drop(kept);
        let replay = Runs::take(5, || {
            drop(black_box(Fold::new(view, view.day, entries_of(&self.file)).picture()));
        });
        let times = |base: &Runs| replay.median() / base.median();
        let ratios = format!("{:.2} times Value, {:.2} times Journal::entries", times(&values), times(&own));
        self.row("full replay: read, parsed, folded, Picture", &format!("{}; {ratios}", replay.told()));
    }

    fn program(&self, nursery: &Path) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_outplant"));
        command
            .env_clear()
            .env("HOME", self.folder.path())
            .env("OUTPLANT_TODAY", self.grown.last_day.to_string())
            .env("OUTPLANT_NURSERY", nursery)
            .stdin(Stdio::null())
            .stdout(Stdio::null());
        command
    }

    /// `ready` from start to end.
    fn ready(&self) -> [Figure; 1] {
        let run = || assert!(self.program(&self.file).arg("ready").status().unwrap().success());
        self.row("`ready`, whole process, first run", &Runs::take_exactly(1, run).told());
        let later = Runs::take(20, run);
        self.row("`ready`, whole process, later runs", &later.told());
        let (_, peak) = watched(self.program(&self.file).arg("ready"));
        self.row("`ready`, peak memory", &peak);
        [self.figure("`ready`, later runs", later.median())]
    }

    /// The whole file proved.
    fn check(&self) -> [Figure; 1] {
        let taken: Vec<(f64, String)> =
            (0..LEAST_RUNS).map(|_| watched(self.program(&self.file).arg("check"))).collect();
        let (seconds, peak) = taken.into_iter().min_by(|a, b| a.0.total_cmp(&b.0)).unwrap();
        self.row("`check`, least of three", &format!("{seconds:.2} s, {peak}"));
        [self.figure("`check`", seconds)]
    }

    fn figure(&self, what: &str, seconds: f64) -> Figure {
        let told = if seconds < 1.0 { format!("{:.0} ms", seconds * 1000.0) } else { format!("{seconds:.1} s") };
        Figure { what: what.to_string(), size: format!("{} entries", self.entries), value: seconds, told }
    }

    /// One entry more in a running program, up to the new Picture.
    fn desk(&self) {
        let day = self.grown.last_day;
        let now = Now { today: day, clock: Clock::from_hm(20, 0), moment: Moment::end_of(day, 3.0) };
        let open = |whole_below: u64| {
            let desk = Desk::open_reading_whole_below(&self.file, self.folder.path(), now, whole_below);
            drop(black_box(desk.unwrap().picture()));
        };
        // What decides up to which size a book is read whole (`READ_WHOLE_BELOW` in desk/book).
        self.row("opened and its first Picture, read whole", &Runs::take(20, || open(u64::MAX)).told());
        open(0);
        self.row("opened and its first Picture, from kept stories", &Runs::take(20, || open(0)).told());
        let begun = Instant::now();
        let mut desk = Desk::open(&self.file, self.folder.path(), now).unwrap();
        self.row("Desk::open", &milliseconds(begun.elapsed().as_secs_f64()));
        let begun = Instant::now();
        black_box(desk.picture());
        self.row("the first Picture", &milliseconds(begun.elapsed().as_secs_f64()));
        let today = |known: &Known| Known { day, ..known.clone() };
        let living: Vec<Known> = self.grown.living.iter().map(today).collect();
        self.appended(&mut desk, "one count of a living tray, to the new Picture", &living);
        let mut past = self.grown.finished.clone();
        past.sort_by_key(|known| (day.days_since(known.day) - LONG_PAST_DAYS).abs());
        past.truncate(50);
        let back = past.first().map_or(0, |known| day.days_since(known.day));
        let what = format!("one count of a finished tray dated back {back} days, to the new Picture");
        self.appended(&mut desk, &what, &past);
    }

    fn appended(&self, desk: &mut Desk, what: &str, trays: &[Known]) {
        let mut trays = trays.iter().cycle();
        let mut pictures = Vec::new();
        let runs = Runs::take(50, || {
            let recorded = desk.record(vec![count(trays.next().unwrap())]);
            recorded.unwrap_or_else(|refused| unreachable!("{refused:?}"));
            let begun = Instant::now();
            black_box(desk.picture());
            pictures.push(begun.elapsed());
        });
        let pictures = Runs::of(pictures);
        self.row(what, &format!("{}; of it the Picture {}", runs.told(), milliseconds(pictures.median())));
    }

    /// An export taken into an empty nursery, with identities and without.
    fn import(&self) {
        let sealed = self.folder.path().join("sealed.jsonl");
        let out = File::create(&sealed).unwrap();
        assert!(self.program(&self.file).arg("export").stdout(out).status().unwrap().success());
        self.imported("sealed lines", &sealed, self.entries);
        let plain = self.folder.path().join("plain.jsonl");
        let lines = write_plain(&sealed, &plain);
        self.imported("plain lines", &plain, lines);
    }

    fn imported(&self, what: &str, lines: &Path, count: usize) {
        let nursery = self.folder.path().join(format!("{what}.outplant"));
        let place = ["begin", "--name", "Empty", "--lat", "-1.2", "--lon", "36", "--altitude", "1650"];
        assert!(self.program(&nursery).args(place).status().unwrap().success());
        let (seconds, peak) = watched(self.program(&nursery).arg("import").arg(lines));
        let a_second = count as f64 / seconds;
        self.row(&format!("`import`, {what}"), &format!("{seconds:.2} s, {a_second:.0} lines a second, {peak}"));
    }
}

fn count(known: &Known) -> Draft {
    let Value::Object(body) = json!({"tray":known.tray,"standing":known.standing}) else { unreachable!() };
    Draft { happened: known.day, clock: None, who: "tabu".into(), kind: "counted".into(), body }
}

fn entries_of(file: &Path) -> Vec<Arc<Entry>> {
    let entries = Journal::open_read_only(file).unwrap().entries().unwrap();
    entries.into_iter().map(Arc::new).collect()
}

/// Reads all columns of every row; what becomes of a body is the caller's.
fn read_rows(file: &Path, of_body: impl Fn(&str)) {
    let connection = Connection::open_with_flags(file, OpenFlags::SQLITE_OPEN_READ_ONLY).unwrap();
    let columns = "device, seq, happened, clock, recorded, who, kind, command, body, prev, hash, arrival";
    let mut statement = connection.prepare(&format!("SELECT {columns} FROM entry ORDER BY arrival")).unwrap();
    let mut rows = statement.query([]).unwrap();
    while let Some(row) = rows.next().unwrap() {
        for column in 0..12 {
            black_box(row.get_ref(column).unwrap());
        }
        of_body(row.get_ref(8).unwrap().as_str().unwrap());
    }
}

/// The lines of an export as a person would write them: without what the file adds, and without what was taken back.
fn write_plain(sealed: &Path, plain: &Path) -> usize {
    let lines = || BufReader::new(File::open(sealed).unwrap()).lines().map(|line| line.unwrap());
    let read = |line: String| serde_json::from_str::<Value>(&line).unwrap();
    let withdrawals = lines().filter(|line| line.contains("\"kind\":\"withdrawn\"")).map(read);
    let gone: HashSet<String> = withdrawals
        .flat_map(|line| line["entries"].as_array().unwrap().clone())
        .map(|id| id.as_str().unwrap().to_string())
        .collect();
    let mut out = BufWriter::new(File::create(plain).unwrap());
    let mut written = 0;
    for mut line in lines().map(read) {
        if line["kind"] == "withdrawn" || gone.contains(line["id"].as_str().unwrap()) {
            continue;
        }
        for name in ["id", "prev", "hash", "recorded", "command"] {
            line.as_object_mut().unwrap().remove(name);
        }
        writeln!(out, "{line}").unwrap();
        written += 1;
    }
    out.flush().unwrap();
    written
}

/// How long runs took, shortest first.
struct Runs(Vec<Duration>);

impl Runs {
    /// Up to so many runs, fewer where they are slow.
    fn take(most: usize, mut run: impl FnMut()) -> Runs {
        let (mut taken, begun) = (Vec::new(), Instant::now());
        while taken.len() < most && (taken.len() < LEAST_RUNS || begun.elapsed() < PATIENCE) {
            let one = Instant::now();
            run();
            taken.push(one.elapsed());
        }
        Runs::of(taken)
    }

    fn take_exactly(times: usize, run: impl Fn()) -> Runs {
        let one = || {
            let begun = Instant::now();
            run();
            begun.elapsed()
        };
        Runs::of((0..times).map(|_| one()).collect())
    }

    fn of(mut taken: Vec<Duration>) -> Runs {
        taken.sort();
        Runs(taken)
    }

    fn at(&self, share: f64) -> f64 {
        self.0[((self.0.len() - 1) as f64 * share).round() as usize].as_secs_f64()
    }

    fn median(&self) -> f64 {
        self.at(0.5)
    }

    fn told(&self) -> String {
        match self.0.len() {
            1 => milliseconds(self.median()),
            runs => format!("median {}, p95 {}, {runs} runs", milliseconds(self.median()), milliseconds(self.at(0.95))),
        }
    }
}

fn milliseconds(seconds: f64) -> String {
    format!("{:.1} ms", seconds * 1000.0)
}
