//! A dashboard in a folder of its own, over the sample nursery.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use tempfile::TempDir;

use crate::base::{Clock, Day, EntryId, Moment};
use crate::dashboard::act::FormFor;
use crate::dashboard::clerk::Clerk;
use crate::dashboard::frame;
use crate::dashboard::keys::Key;
use crate::dashboard::message::{Answer, Effect, Message, Request};
use crate::dashboard::model::Model;
use crate::dashboard::terminal::{Opening, set_up};
use crate::dashboard::update::{open_form, refresh, update};
use crate::desk::{Desk, Now, Withdraws, read_typed, sample};
use crate::nursery::envelope::Draft;
use crate::wording::{Lang, Wording};

/// The day on which the tests look.
pub(crate) const TODAY: &str = "2026-04-15";

/// A dashboard to press keys on.
pub(crate) struct Stage {
    /// The model.
    pub(crate) model: Model,
    clerk: Clerk,
    folder: TempDir,
    /// Whether it was left.
    pub(crate) left: bool,
    /// How often something was taken back.
    pub(crate) taken_back: usize,
}

fn now() -> Now {
    let today: Day = TODAY.parse().unwrap();
    Now { today, clock: Clock::from_hm(7, 0), moment: Moment::end_of(today, 3.0) }
}

impl Stage {
    /// Over the sample nursery, wide, in colour.
    pub(crate) fn sample(lang: Lang) -> Stage {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("sample.outplant");
        let desk = sample::make(&file, folder.path(), now()).unwrap();
        Stage::over(desk, lang, folder)
    }

    /// Over a nursery with nothing in it.
    pub(crate) fn empty(lang: Lang) -> Stage {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("new.outplant");
        let (desk, _) = Desk::begin(&file, folder.path(), now(), Vec::new()).unwrap();
        Stage::over(desk, lang, folder)
    }

    /// Over a nursery in which this is written.
    pub fn of(lang: Lang, drafts: Vec<Draft>) -> Stage {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("new.outplant");
        let (desk, _) = Desk::begin(&file, folder.path(), now(), drafts).unwrap();
        Stage::over(desk, lang, folder)
    }

    fn over(desk: Desk, lang: Lang, folder: TempDir) -> Stage {
        let opening = Opening {
            desk,
            wording: Wording::new(lang),
            who: "Amani".to_string(),
            shelf: folder.path().to_path_buf(),
            on: None,
            forecast_basis: crate::reckon::forecast::ForecastBasis::OwnRecords,
            clock: Box::new(|| Some(now())),
            colour: true,
            ascii: false,
            plain: false,
            touched: false,
            settings_faults: Vec::new(),
        };
        let (mut model, clerk) = set_up(opening, (120, 40));
        let begin = refresh(&mut model);
        let mut stage = Stage { model, clerk, folder, left: false, taken_back: 0 };
        stage.carry_out(begin);
        stage
    }

    /// Opens the same nursery again, as after a power cut: nothing is carried over but what is on disk.
    pub(crate) fn again(self, lang: Lang) -> Stage {
        let Stage { model, clerk, folder, .. } = self;
        drop((model, clerk));
        let found = std::fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().path());
        let file = found.into_iter().find(|path| path.extension().is_some_and(|end| end == "outplant")).unwrap();
        let desk = Desk::open(&file, folder.path(), now()).unwrap();
        Stage::over(desk, lang, folder)
    }

    fn file(folder: &TempDir) -> std::path::PathBuf {
        let found = std::fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().path());
        found.into_iter().find(|path| path.extension().is_some_and(|end| end == "outplant")).unwrap()
    }

    /// The file of the nursery as it lies on the disk.
    pub(crate) fn file_bytes(&self) -> Vec<u8> {
        std::fs::read(Stage::file(&self.folder)).unwrap()
    }

    /// Opens a backup that was put in the place of the file.
    pub(crate) fn restored(self, backup: &[u8], lang: Lang) -> Stage {
        let Stage { model, clerk, folder, .. } = self;
        drop((model, clerk));
        std::fs::write(Stage::file(&folder), backup).unwrap();
        for end in ["-wal", "-shm"] {
            let mut beside = Stage::file(&folder).into_os_string();
            beside.push(end);
            let _ = std::fs::remove_file(beside);
        }
        let desk = Desk::open(&Stage::file(&folder), folder.path(), now()).unwrap();
        Stage::over(desk, lang, folder)
    }

    /// Another size.
    pub(crate) fn sized(mut self, columns: u16, rows: u16) -> Stage {
        self.send(Message::Resized(columns, rows));
        self
    }

    /// Sends a message and carries out what follows, answers of the clerk too.
    pub(crate) fn send(&mut self, message: Message) {
        let effects = update(&mut self.model, message);
        self.carry_out(effects);
    }

    /// Carries out what was asked for.
    pub(crate) fn carry_out(&mut self, effects: Vec<Effect>) {
        for effect in effects {
            match effect {
                Effect::Ask(request) => {
                    self.taken_back += usize::from(matches!(request, Request::TakeBack { .. }));
                    for answer in self.clerk.serve(request) {
                        self.send(Message::Answer(Box::new(answer)));
                    }
                }
                Effect::Leave => self.left = true,
                Effect::Suspend | Effect::Redraw | Effect::Mouse(_) => {}
            }
        }
    }

    /// One key.
    pub(crate) fn key(&mut self, key: Key) {
        self.send(Message::Key(key));
    }

    /// Letters and digits one by one; `\n` is Enter, `\t` Tab, `\u{1b}` Esc.
    pub(crate) fn keys(&mut self, typed: &str) {
        for letter in typed.chars() {
            self.key(match letter {
                '\n' => Key::Enter,
                '\t' => Key::Tab,
                '\u{1b}' => Key::Esc,
                other => Key::Char(other),
            });
        }
    }

    /// Text that comes at once.
    pub(crate) fn text(&mut self, text: &str) {
        self.send(Message::Text(text.to_string()));
    }

    /// Takes an entry back, as from the journal.
    pub(crate) fn take_back(&mut self, entry: EntryId) {
        let what = Withdraws::EntryAlone(entry);
        let (who, why) = ("Amani".to_string(), "read wrongly".to_string());
        self.carry_out(vec![Effect::Ask(Request::TakeBack { ticket: 0, what, together: true, who, why })]);
    }

    /// Writes an entry past the screen, as another process would, and draws again.
    pub(crate) fn write(&mut self, kind: &str, pairs: &[&str]) {
        let pairs: Vec<String> = pairs.iter().map(ToString::to_string).collect();
        let draft = read_typed(kind, &pairs, now().today, "Tabu").unwrap();
        for answer in self.clerk.serve(Request::Record { ticket: u64::MAX, drafts: vec![draft], sure: true }) {
            if let Answer::Refused { fault, .. } = &answer {
                panic!("{fault:?}");
            }
            self.send(Message::Answer(Box::new(answer)));
        }
    }

    /// What the clerk answers, before the screen hears of it.
    pub(crate) fn answers_to(&mut self, request: Request) -> Vec<Answer> {
        self.clerk.serve(request)
    }

    /// The model, the clerk and their folder, to run them on threads.
    pub(crate) fn apart(self) -> (Model, Clerk, TempDir) {
        (self.model, self.clerk, self.folder)
    }

    /// The frame as it would be shown.
    pub(crate) fn buffer(&self) -> Buffer {
        let mut buffer = Buffer::empty(Rect::new(0, 0, self.model.size.0, self.model.size.1));
        frame::draw(&self.model, &mut buffer);
        buffer
    }

    /// The frame's text, a line each, blanks at the ends cut.
    pub(crate) fn frame(&self) -> String {
        let buffer = self.buffer();
        let width = usize::from(buffer.area.width).max(1);
        let lines = buffer.content.chunks(width).map(|row| {
            let mut line = String::new();
            let mut skip = 0;
            for cell in row {
                if skip > 0 {
                    skip -= 1;
                    continue;
                }
                line.push_str(cell.symbol());
                skip = unicode_width::UnicodeWidthStr::width(cell.symbol()).saturating_sub(1);
            }
            line.trim_end().to_string()
        });
        lines.collect::<Vec<_>>().join("\n")
    }

    /// Opens a form as a screen would.
    pub(crate) fn open(&mut self, asked: &FormFor) {
        let effects = self.effects_of_opening(asked);
        self.carry_out(effects);
    }

    /// What opening a form asks for.
    pub(crate) fn effects_of_opening(&mut self, asked: &FormFor) -> Vec<Effect> {
        open_form(&mut self.model, asked)
    }

    /// How many entries the book has.
    pub(crate) fn entries(&self) -> usize {
        self.clerk.count()
    }
}
