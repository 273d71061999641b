//! A fence advises, until animals that it keeps out have eaten there.

use outplant::reckon::picture::{Criterion, Rule};
use outplant::reckon::round::{Task, round};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

use crate::support::{Book, bed_species, criterion, fitting, pair};

const TODAY: &str = "2026-04-15";

fn fence(book: &Book, on: &str) -> Criterion {
    criterion(&bed_species(&book.on(on), "Upper 1", "COA").criteria, Rule::Fenced).clone()
}

fn planted() -> Book {
    let mut book = fitting();
    book.write("2026-04-10", "plants_found", json!({"bed":"Upper 1","species":"COA","alive":10}));
    book
}

#[test]
fn a_bed_where_animals_ate_waits_for_its_fence() {
    assert!(!fence(&planted(), TODAY).blocks && pair(&planted().on(TODAY), "cof-1", "Upper 1").fits);
    let seen = |what: &str| {
        let mut book = planted();
        book.write("2026-04-14", "pest_seen", json!({"bed":"Upper 1","what":what,"share_pct":20}));
        book
    };
    let lost = |cause: &str| {
        let mut book = planted();
        let lost = json!({"bed":"Upper 1","species":"COA","count":2,"cause":cause});
        book.write("2026-04-14", "plants_lost", lost);
        book
    };
    let counted = |cause: &str| {
        let mut book = planted();
        let look = json!({"bed":"Upper 1","species":"COA","alive":8,"dead":2,"causes":cause});
        book.write("2026-04-14", "survival_counted", look);
        book
    };
    for mut book in [seen("goats"), seen("vacas"), lost("cattle at night"), lost("cabras"), counted("goats")] {
        assert!(fence(&book, TODAY).blocks && !pair(&book.on(TODAY), "cof-1", "Upper 1").fits);
        let said = [Lang::En, Lang::Es].map(|lang| Wording::new(lang).reason(&fence(&book, TODAY), About::Bed));
        assert!(said[0].contains("were here on 14 Apr 2026, and nobody fenced since"), "{}", said[0]);
        assert!(said[1].contains("14 abr 2026"), "{}", said[1]);
        let day = round(&book.on(TODAY));
        assert!(day.stops.iter().chain(&day.can_wait).any(|stop| stop.task == Task::Fence));
        // A fence of before did not keep them out; one of since does.
        book.write("2026-04-01", "prepared", json!({"bed":"Upper 1","task":"fenced"}));
        assert!(fence(&book, TODAY).blocks);
        book.write("2026-04-15", "prepared", json!({"bed":"Upper 1","task":"fenced"}));
        assert!(!fence(&book, TODAY).blocks && pair(&book.on(TODAY), "cof-1", "Upper 1").fits);
    }
    // One of ten in a night is many, one of thirty is not; nor does what was two months ago hold.
    let mut few = fitting();
    few.write("2026-04-10", "plants_found", json!({"bed":"Upper 1","species":"COA","alive":30}));
    few.write("2026-04-14", "plants_lost", json!({"bed":"Upper 1","species":"COA","count":1,"cause":"goats"}));
    assert!(!fence(&few, TODAY).blocks);
    assert!(fence(&seen("goats"), "2026-06-13").blocks && !fence(&seen("goats"), "2026-06-14").blocks);
    // What no fence keeps out is no question of it, and what was looked for and not found, asks for none.
    for what in ["rats", "leaf cutters", "grasshoppers", "zompopos"] {
        assert!(!fence(&seen(what), TODAY).blocks, "{what}");
    }
    let mut none = planted();
    none.write("2026-04-14", "pest_seen", json!({"bed":"Upper 1","what":"goats","share_pct":0}));
    assert!(!fence(&none, TODAY).blocks);
}

fn pest(book: &Book, on: &str) -> Option<Criterion> {
    let picture = book.on(on);
    let criteria = &bed_species(&picture, "Upper 1", "COA").criteria;
    criteria.iter().find(|criterion| criterion.rule() == Rule::Pest).cloned()
}

#[test]
fn a_bed_where_rats_or_ants_ate_many_plants_waits_until_something_is_done_or_they_are_gone() {
    let held = |book: &Book, on: &str| pest(book, on).is_some_and(|asked| asked.blocks);
    let seen = |what: &str, share: u32| {
        let mut book = planted();
        book.write("2026-04-14", "pest_seen", json!({"bed":"Upper 1","what":what,"share_pct":share}));
        book
    };
    let counted = |dead: u32| {
        let mut book = planted();
        let look = json!({"bed":"Upper 1","species":"COA","alive":10 - dead,"dead":dead,"causes":"leaf-cutter ants"});
        book.write("2026-04-14", "survival_counted", look);
        book
    };
    for (book, holds) in [
        (seen("rats", 60), true),
        (seen("zompopos", 10), true),
        (seen("leaf cutters", 5), false),
        (seen("leaf spot", 60), false),
        (seen("hail", 60), false),
        (seen("theft", 60), false),
        (counted(3), true),
    ] {
        assert_eq!(held(&book, TODAY), holds, "{:?}", pest(&book, TODAY));
        // Two months later it is no longer so.
        assert!(!held(&book, "2026-06-14"));
    }
    let said = [Lang::En, Lang::Es]
        .map(|lang| Wording::new(lang).reason(&pest(&seen("rats", 60), TODAY).unwrap(), About::Bed));
    assert!(said[0].contains("What goes in now is eaten") && said[1].contains("se lo comen"), "{said:?}");
    let mut baited = seen("zompopos", 60);
    baited.write(TODAY, "treated", json!({"bed":"Upper 1","with":"ant bait","safe_after_days":0,"plant_after_days":0}));
    assert!(!held(&baited, TODAY));
    let mut gone = counted(3);
    gone.write(TODAY, "pest_seen", json!({"bed":"Upper 1","what":"leaf cutters","share_pct":0}));
    assert!(!held(&gone, TODAY));
}

#[test]
fn more_than_a_third_of_a_species_dead_of_nobody_knows_what_holds_its_bed_and_a_fifth_asks_for_care() {
    let counted = |alive: u32, dead: u32| {
        let mut book = fitting();
        book.write("2026-03-10", "plants_found", json!({"bed":"Upper 1","species":"COA","alive":30}));
        let look = json!({"bed":"Upper 1","species":"COA","alive":alive,"dead":dead});
        book.write("2026-04-14", "survival_counted", look);
        pest(&book, TODAY).map(|asked| (asked.blocks, asked.warns))
    };
    assert_eq!(counted(14, 16), Some((true, false)));
    assert_eq!(counted(16, 14), Some((true, false)));
    assert_eq!(counted(19, 11), Some((true, false)));
    assert_eq!(counted(20, 10), Some((false, true)));
    assert_eq!(counted(24, 6), Some((false, true)));
    assert_eq!(counted(25, 5), None);
}

#[test]
fn plants_of_a_bed_that_are_gone_are_missed_and_the_same_dead_are_asked_about_once() {
    let looked = |looks: &[(&str, u32, u32)], on: &str| {
        let mut book = fitting();
        book.write("2026-03-01", "plants_found", json!({"bed":"Upper 1","species":"COA","alive":30}));
        for (day, alive, dead) in looks {
            let look = json!({"bed":"Upper 1","species":"COA","alive":alive,"dead":dead});
            book.write(day, "survival_counted", look);
        }
        pest(&book, on).map(|asked| (asked.blocks, asked.warns))
    };
    // Nobody saw them die.
    assert_eq!(looked(&[("2026-04-14", 10, 0)], TODAY), Some((true, false)));
    assert_eq!(looked(&[("2026-04-14", 23, 0)], TODAY), Some((false, true)));
    assert_eq!(looked(&[("2026-04-14", 27, 0)], TODAY), None);
    // The same twelve found again: the fourteen days run from the first look.
    let twelve = [("2026-03-20", 18, 12), ("2026-03-30", 18, 12)];
    assert_eq!(looked(&twelve, "2026-04-02"), Some((true, false)));
    let again = [&twelve[..], &[("2026-04-04", 18, 12)], &[("2026-04-14", 18, 12)]].concat();
    assert_eq!(looked(&again[..3], "2026-04-05"), None, "nobody died since");
    assert_eq!(looked(&again, TODAY), None);
    // Put right.
    assert_eq!(looked(&[("2026-04-12", 3, 27), ("2026-04-14", 30, 0)], TODAY), None);
}
