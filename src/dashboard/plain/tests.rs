//! The round in questions: answers in, lines out, entries in the book.

use std::io::Cursor;

use tempfile::TempDir;

use super::command::{Command, is_yes};
use super::talk;
use crate::base::{Clock, Day, Moment, TrayCode};
use crate::dashboard::keys::Key;
use crate::dashboard::terminal::Opening;
use crate::dashboard::tests::TODAY;
use crate::desk::{Desk, Now, sample};
use crate::reckon::round;
use crate::reckon::round::Task;
use crate::wording::{Lang, Wording};

fn now() -> Now {
    let today: Day = TODAY.parse().unwrap();
    Now { today, clock: Clock::from_hm(7, 0), moment: Moment::end_of(today, 3.0) }
}

/// A sample nursery to talk about.
struct Sample {
    folder: TempDir,
}

impl Sample {
    fn new() -> Sample {
        let sample = Sample { folder: tempfile::tempdir().unwrap() };
        sample::make(&sample.folder.path().join("s.outplant"), sample.folder.path(), now()).unwrap();
        sample
    }

    fn desk(&self) -> Desk {
        Desk::open(&self.folder.path().join("s.outplant"), self.folder.path(), now()).unwrap()
    }

    /// What is said to answers, a line each.
    fn answers(&self, lang: Lang, answers: &str) -> String {
        self.answers_at(lang, answers, None)
    }

    /// The same at a terminal of so many columns.
    fn answers_at(&self, lang: Lang, answers: &str, columns: Option<usize>) -> String {
        let opening = Opening {
            desk: self.desk(),
            wording: Wording::new(lang),
            who: "Amani".to_string(),
            shelf: self.folder.path().to_path_buf(),
            on: None,
            forecast_basis: crate::reckon::forecast::ForecastBasis::OwnRecords,
            clock: Box::new(|| Some(now())),
            colour: false,
            ascii: false,
            plain: true,
            touched: false,
            settings_faults: Vec::new(),
        };
        let mut text = Vec::new();
        talk(opening, Cursor::new(answers.to_string()), &mut text, columns).unwrap();
        String::from_utf8(text).unwrap()
    }

    /// The tray of the first stop of a task, and answers that lead there.
    fn way_to(&self, task: Task) -> (TrayCode, String) {
        let round = round(&self.desk().picture());
        let at = round.stops.iter().position(|stop| stop.task == task).unwrap();
        (round.stops[at].tray().unwrap().clone(), "3\n".repeat(at))
    }

    fn entries(&self) -> usize {
        self.desk().count()
    }

    fn standing(&self, tray: &TrayCode) -> u32 {
        self.desk().picture().trays[tray].standing
    }
}

#[test]
fn a_count_is_one_empty_answer_and_its_figure_and_the_next_stop_is_told() {
    let sample = Sample::new();
    let before = sample.entries();
    let (tray, way) = sample.way_to(Task::Count);
    let text = sample.answers(Lang::En, &format!("{way}\n31\nquit\n"));
    assert_eq!((sample.entries(), sample.standing(&tray)), (before + 1, 31), "{text}");
    assert!(text.contains("Living:"), "{text}");
    assert!(text.contains(&format!("Saved: Count a tray: {tray}")), "{text}");
    assert!(!text.contains("Write it?"), "{text}");
    let after = text.split("Saved:").nth(1).unwrap();
    assert!(after.contains("Stop "), "{text}");
}

#[test]
fn more_than_a_simple_count_is_written_only_after_a_yes_and_says_first_what_it_does() {
    let sample = Sample::new();
    let before = sample.entries();
    let (tray, way) = sample.way_to(Task::GoOut);
    let text = sample.answers(Lang::En, &format!("{way}1\n\n\nn\n"));
    assert_eq!(sample.entries(), before, "{text}");
    assert!(text.contains("What it does:") && text.contains("Nothing was written."), "{text}");
    let text = sample.answers(Lang::En, "do it\n3\n\ny\n");
    assert_eq!(sample.entries(), before + 1, "{text}");
    assert!(sample.desk().picture().trays[&tray].story.accounts.planted >= 3);
}

#[test]
fn a_cause_is_picked_by_its_number_and_words_of_spanish_are_understood() {
    let sample = Sample::new();
    let (tray, way) = sample.way_to(Task::Count);
    let standing = sample.standing(&tray);
    let text = sample.answers(Lang::Es, &format!("{way}perdidas\n2\n1\nsí\nsaltar\nsalir\n"));
    assert_eq!(sample.standing(&tray), standing - 2, "{text}");
    assert!(text.contains("Parada "), "{text}");
}

#[test]
fn answers_that_end_in_the_middle_write_nothing_and_lose_nothing() {
    let sample = Sample::new();
    let before = sample.entries();
    let (_, way) = sample.way_to(Task::GoOut);
    for cut in ["", "1\n", "1\n\n", "1\n\n7\n", "lost\n", "lost\n2\n", "6\n", "u\n", "b\n", "?"] {
        let text = sample.answers(Lang::En, &format!("{way}{cut}"));
        assert_eq!(sample.entries(), before, "{cut:?}: {text}");
    }
}

#[test]
fn a_number_of_a_list_never_names_a_new_tray() {
    let sample = Sample::new();
    let (_, way) = sample.way_to(Task::PrickOut);
    let text = sample.answers(Lang::En, &format!("{way}1\n10\n2\n\nn\n"));
    assert!(text.contains("2 is no name here"), "{text}");
}

#[test]
fn what_cannot_be_is_said_and_asked_again() {
    let sample = Sample::new();
    let before = sample.entries();
    let (tray, way) = sample.way_to(Task::Count);
    let text = sample.answers(Lang::En, &format!("{way}\nmany\n30\n"));
    assert_eq!((sample.entries(), sample.standing(&tray)), (before + 1, 30), "{text}");
    assert_eq!(text.matches("Living:").count(), 2, "{text}");
    let text = sample.answers(Lang::En, "4\nlost\n9999\n1\n1\n\ny\n");
    assert!(text.contains("How many [9999]:"), "{text}");
    assert_eq!(sample.entries(), before + 2, "{text}");
}

#[test]
fn nothing_but_whole_plain_lines_is_said() {
    let sample = Sample::new();
    for lang in Lang::ALL {
        let text = sample.answers(lang, "?\nxyz\n7\n\n\nn\n2\n3\n4\nu\nn\nb\n-1\na\nhello\u{1b}[31m\ny\n8\n\ny\n");
        assert!(text.chars().all(|letter| letter == '\n' || !letter.is_control()), "{text:?}");
        assert!(text.ends_with('\n'));
    }
}

#[test]
fn the_round_goes_on_where_it_was_left_on_the_screen_or_in_questions() {
    let sample = Sample::new();
    let text = sample.answers(Lang::En, "skip\nskip\nquit\n");
    let left_at = text.lines().rfind(|line| line.starts_with("Stop ")).unwrap().to_string();
    let text = sample.answers(Lang::En, "");
    assert!(text.contains(&left_at) && left_at.starts_with("Stop 3 "), "{text}");
}

#[test]
fn every_number_and_letter_means_what_it_means_on_the_screen() {
    for lang in Lang::ALL {
        let wording = Wording::new(lang);
        assert_eq!(Command::read("", &wording), Some(Command::Key(Key::Enter)));
        assert_eq!(Command::read("1", &wording), Some(Command::Key(Key::Enter)));
        assert_eq!(Command::read("2", &wording), Some(Command::Key(Key::Char(' '))));
        assert_eq!(Command::read("g", &wording), Some(Command::Key(Key::Char('g'))));
        assert_eq!(Command::read("?", &wording), Some(Command::Help));
        assert_eq!(Command::read("0", &wording), Some(Command::Quit));
        assert_eq!(Command::read("99", &wording), None);
        let words: Vec<String> = Command::listed(&wording);
        assert!(words.len() > 10);
    }
    assert!(is_yes("Sí") && is_yes("y") && !is_yes("") && !is_yes("no"));
}

#[test]
fn at_a_terminal_lines_are_parted_between_words_and_in_a_pipe_they_stay_whole() {
    let sample = Sample::new();
    let words = |text: &str| text.split_whitespace().map(str::to_string).collect::<Vec<_>>();
    for lang in Lang::ALL {
        let (whole, parted) = (sample.answers(lang, "?\n"), sample.answers_at(lang, "?\n", Some(40)));
        assert_eq!(words(&whole), words(&parted));
        let longest = |text: &str| text.lines().map(crate::dashboard::parts::width_of).max().unwrap();
        assert!(longest(&whole) > 80 && longest(&parted) <= 40, "{parted}");
    }
}
