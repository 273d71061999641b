//! What a count takes back of those an earlier one missed, and what stays gone.

use super::{TODAY, criterion, fitting, seen, tray};
use crate::support::{Book, bed_species, ready_coffee};
use outplant::reckon::picture::{Criterion, Rule};
use serde_json::json;

/// Coffee of two trays; of the first so many are out since 1 March.
fn planted(count: u32) -> Book {
    let mut book = fitting();
    for code in ["cof-2", "cof-3"] {
        ready_coffee(&mut book, code);
    }
    out(&mut book, "2026-03-01", "cof-2", count);
    book
}

fn out(book: &mut Book, on: &str, code: &str, count: u32) {
    book.write(on, "outplanted", json!({"tray":code,"bed":"Upper 1","count":count}));
}

fn counted(book: &mut Book, on: &str, alive: u32, dead: u32) {
    let body = json!({"bed":"Upper 1","species":"COA","alive":alive,"dead":dead});
    book.write(on, "survival_counted", body);
}

fn of_bed(book: &Book) -> Option<Criterion> {
    let picture = book.on(TODAY);
    let criteria = &bed_species(&picture, "Upper 1", "COA").criteria;
    criteria.iter().find(|criterion| criterion.rule() == Rule::Pest).cloned()
}

/// Held, or only with a word of care, or neither.
fn bed(book: &Book) -> &'static str {
    match of_bed(book) {
        Some(pest) if pest.blocks => "held",
        Some(pest) if pest.warns => "care",
        _ => "open",
    }
}

#[test]
fn plants_set_in_for_those_that_died_do_not_answer_what_the_others_died_of() {
    for refilled in ["2026-04-08", "2026-04-10", "2026-04-14"] {
        let mut book = planted(30);
        counted(&mut book, "2026-04-08", 10, 20);
        assert_eq!(bed(&book), "held");
        out(&mut book, refilled, "cof-3", 20);
        counted(&mut book, "2026-04-14", 30, 0);
        assert_eq!(bed(&book), "held", "{refilled}");
    }
    // Of which the count says no dead.
    let mut book = planted(45);
    counted(&mut book, "2026-04-10", 15, 0);
    out(&mut book, "2026-04-11", "cof-3", 30);
    counted(&mut book, "2026-04-14", 45, 0);
    assert_eq!(bed(&book), "held");
    // A look answers it, as ever.
    seen(&mut book, "2026-04-14", json!({"bed":"Upper 1"}), "none", Some(0.0));
    assert_eq!(bed(&book), "open");
}

#[test]
fn a_wrong_count_of_a_bed_is_put_right_by_the_next_and_what_is_still_missing_stays_gone() {
    let again = |alive: u32| {
        let mut book = planted(45);
        counted(&mut book, "2026-04-13", 5, 0);
        counted(&mut book, "2026-04-14", alive, 0);
        bed(&book)
    };
    assert_eq!((again(45), again(40), again(34), again(25)), ("open", "open", "care", "held"));
    // Counted wrong on the day of planting.
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    out(&mut book, "2026-04-13", "cof-2", 45);
    counted(&mut book, "2026-04-13", 5, 0);
    counted(&mut book, "2026-04-14", 45, 0);
    assert_eq!(bed(&book), "open");
}

#[test]
fn a_wrong_count_of_a_tray_is_put_right_by_a_count_or_a_stocktake_and_what_is_still_missing_stays_gone() {
    let held = |kind: &str, standing: u32, on: &str| {
        let mut book = fitting();
        book.write("2026-04-13", "counted", json!({"tray":"cof-1","standing":6}));
        book.write(on, kind, json!({"tray":"cof-1","standing":standing}));
        criterion(&tray(&book.on(TODAY), "cof-1").criteria, Rule::Pest).blocks
    };
    for kind in ["counted", "stocktaken"] {
        for on in ["2026-04-13", "2026-04-14"] {
            assert!(!held(kind, 48, on) && !held(kind, 45, on), "{kind} {on}");
            assert!(held(kind, 30, on) && held(kind, 7, on), "{kind} {on}");
        }
    }
}

#[test]
fn fewer_than_three_that_died_of_nobody_knows_what_hold_no_tray_and_no_bed() {
    let of_tray = |dead: u32| {
        let mut book = fitting();
        book.write("2026-04-11", "given_out", json!({"tray":"cof-1","count":39,"to":"a neighbour"}));
        // More than two weeks after the last count, which missed two.
        book.write("2026-04-25", "counted", json!({"tray":"cof-1","standing":9 - dead,"dead":dead}));
        criterion(&tray(&book.on("2026-04-26"), "cof-1").criteria, Rule::Pest).blocks
    };
    assert_eq!((of_tray(1), of_tray(2), of_tray(3)), (false, false, true));
    let of_bed = |alive: u32, dead: u32| {
        let mut book = planted(alive + dead);
        counted(&mut book, "2026-04-13", alive, dead);
        bed(&book)
    };
    assert_eq!((of_bed(8, 1), of_bed(3, 2), of_bed(3, 3)), ("open", "care", "held"));
}
