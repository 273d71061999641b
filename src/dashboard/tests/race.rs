//! What the clerk draws aside while something is written: late days of a year are of the book as it was, and are not taken.

use std::sync::mpsc::{RecvTimeoutError, channel};
use std::time::Duration;

use super::Stage;
use crate::dashboard::message::{Answer, Effect, Message, Request};
use crate::dashboard::update::update;
use crate::desk::read_typed;
use crate::wording::Lang;

/// The longest that a test waits for a day of a year.
const PATIENCE: Duration = Duration::from_secs(60);

fn brings_a_tray() -> Request {
    let pairs = ["tray=avo-778", "species=avocado", "count=9", "from=gift", "form=bag"].map(str::to_string);
    let draft = read_typed("plants_received", &pairs, super::TODAY.parse().unwrap(), "Amani").unwrap();
    Request::Record { ticket: u64::MAX, drafts: vec![draft], sure: true }
}

fn year_asked(effects: &[Effect]) -> Request {
    let asked = effects.iter().find_map(|effect| match effect {
        Effect::Ask(request @ Request::Year(_)) => Some(request.clone()),
        _ => None,
    });
    asked.expect("the year is asked for")
}

#[test]
fn days_drawn_before_something_was_written_are_not_taken_however_late_they_come() {
    let mut stage = Stage::sample(Lang::En);
    let late = {
        let effects = update(&mut stage.model, Message::Key(crate::dashboard::keys::Key::Char('6')));
        stage.answers_to(year_asked(&effects))
    };
    assert!(late.len() > 20 && late.iter().all(|answer| matches!(answer, Answer::YearDay(..))));
    for answer in stage.answers_to(brings_a_tray()) {
        stage.send(Message::Answer(Box::new(answer)));
    }
    let (asked, drawn) = stage.model.book.year.clone().expect("the year is drawn again");
    assert_eq!(drawn.len(), asked.days);
    for answer in late {
        stage.send(Message::Answer(Box::new(answer)));
    }
    let (asked_now, drawn_now) = stage.model.book.year.clone().unwrap();
    assert_eq!(asked_now, asked);
    assert_eq!(drawn_now, drawn);
}

#[test]
fn whenever_something_is_written_while_the_year_is_drawn_the_year_is_that_of_the_book() {
    for written_after_days in [0, 1, 5, 20] {
        let mut stage = Stage::sample(Lang::En);
        let begin = update(&mut stage.model, Message::Key(crate::dashboard::keys::Key::Char('6')));
        let (mut model, clerk, _folder) = stage.apart();
        let ((to_clerk, requests), (answers, from_clerk)) = (channel(), channel());
        let worker = std::thread::spawn(move || clerk.work(&requests, &answers));
        let ask = |effects: Vec<Effect>| {
            for effect in effects {
                if let Effect::Ask(request) = effect {
                    to_clerk.send(request).unwrap();
                }
            }
        };
        ask(begin);
        let (mut days, mut is_written) = (0, false);
        if written_after_days == 0 {
            to_clerk.send(brings_a_tray()).unwrap();
        }
        // Until the whole year of the written book is there, and nothing more comes.
        loop {
            let whole = model.book.year.as_ref().is_some_and(|(asked, days)| days.len() == asked.days);
            let patience = if is_written && whole { Duration::from_millis(300) } else { PATIENCE };
            let answer = match from_clerk.recv_timeout(patience) {
                Ok(answer) => answer,
                Err(RecvTimeoutError::Timeout) => break,
                Err(RecvTimeoutError::Disconnected) => panic!("the clerk is gone"),
            };
            match &answer {
                Answer::YearDay(..) => days += 1,
                Answer::Recorded { .. } => is_written = true,
                Answer::Refused { fault, .. } => panic!("{fault:?}"),
                _ => {}
            }
            if days == written_after_days && matches!(answer, Answer::YearDay(..)) && !is_written {
                to_clerk.send(brings_a_tray()).unwrap();
            }
            ask(update(&mut model, Message::Answer(Box::new(answer))));
        }
        let (asked, drawn) = model.book.year.clone().expect("the year is drawn");
        assert_eq!((asked.generation, drawn.len()), (model.book.generation, asked.days));
        drop(to_clerk);
        worker.join().unwrap();
        let mut again = Stage::sample(Lang::En);
        for answer in again.answers_to(brings_a_tray()) {
            again.send(Message::Answer(Box::new(answer)));
        }
        again.keys("6");
        let (_, of_the_book) = again.model.book.year.clone().unwrap();
        assert_eq!(drawn, of_the_book, "written after {written_after_days} days");
    }
}
