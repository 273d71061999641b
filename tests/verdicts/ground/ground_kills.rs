//! Ground that kills what is set in it: weed killer, water that stands, fire.

use outplant::reckon::picture::{Criterion, Rule};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

use crate::support::{Book, bed_species, fitting};

const TODAY: &str = "2026-04-15";

/// A bed of 30 coffee plants, of which so many were lost.
fn lost(count: u32, cause: &str) -> Book {
    let mut book = fitting();
    book.write("2026-03-01", "plants_found", json!({"bed":"Upper 1","species":"COA","alive":30}));
    book.write("2026-04-12", "plants_lost", json!({"bed":"Upper 1","species":"COA","count":count,"cause":cause}));
    book
}

fn of(book: &Book, on: &str) -> Option<Criterion> {
    let picture = book.on(on);
    let criteria = &bed_species(&picture, "Upper 1", "COA").criteria;
    criteria.iter().find(|criterion| criterion.rule() == Rule::Pest).cloned()
}

/// Held, or only with a word of care, or neither.
fn stands(book: &Book, on: &str) -> &'static str {
    match of(book, on) {
        Some(pest) if pest.blocks => "held",
        Some(pest) if pest.warns => "care",
        _ => "open",
    }
}

#[test]
fn weed_killer_flood_standing_water_and_fire_that_killed_many_hold_the_bed_until_it_is_looked_at() {
    for cause in [
        "herbicide",
        "herbicida",
        "weedkiller",
        "glyphosate",
        "flood",
        "inundación",
        "waterlogging",
        "encharcamiento",
        "drowned",
        "fire",
        "fuego",
        "agua parada",
    ] {
        assert_eq!(stands(&lost(15, cause), TODAY), "held", "{cause}");
        assert_eq!(stands(&lost(25, cause), TODAY), "held", "{cause}");
        assert_eq!(stands(&lost(8, cause), TODAY), "care", "{cause}");
        assert_eq!(stands(&lost(2, cause), TODAY), "open", "{cause}");
    }
    // What killed them is not in the ground.
    for cause in ["wind", "slashed in weeding", "sun"] {
        assert_eq!(stands(&lost(15, cause), TODAY), "open", "{cause}");
    }
    let asked = of(&lost(15, "flood"), TODAY).unwrap();
    let said = [Lang::En, Lang::Es].map(|lang| Wording::new(lang).reason(&asked, About::Bed));
    assert!(said[0].contains("15 had died here of flood and 15 live"), "{said:?}");
    assert!(said[1].contains("murieron aquí 15 de inundación y 15 viven"), "{said:?}");
    // A look answers it, and a count two weeks later with few more gone.
    let mut looked = lost(15, "flood");
    looked.write(TODAY, "pest_seen", json!({"bed":"Upper 1","what":"none","share_pct":0}));
    assert_eq!(stands(&looked, TODAY), "open");
    let counted = |on: &str, alive: u32| {
        let mut book = lost(15, "flood");
        book.write(on, "survival_counted", json!({"bed":"Upper 1","species":"COA","alive":alive,"dead":0}));
        stands(&book, "2026-04-27")
    };
    assert_eq!(
        (counted("2026-04-26", 15), counted("2026-04-25", 15), counted("2026-04-26", 12)),
        ("open", "held", "held")
    );
}
