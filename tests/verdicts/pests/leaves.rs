//! What goes along with no plant takes leaves: whether enough sound ones are left is its question.

use super::{TODAY, asked, fitting, said, seen, tasks_at, with};
use outplant::nursery::caution::Caution;
use outplant::wording::Lang::{En, Es};
use serde_json::json;

#[test]
fn what_a_person_said_is_no_sickness_and_weather_and_what_eats_and_goes_is_not_told_to_go_along() {
    let answered = |what: &str, share: f64| {
        let mut book = with(&[("2026-04-11", what, Some(share))]);
        book.write("2026-04-12", "pest_seen", json!({"tray":"cof-1","what":what,"spreads":false}));
        book
    };
    let told = |book: &crate::support::Book| [said(book, TODAY, En), said(book, TODAY, Es)].join(" ");
    let false_ones = ["into the bed", "throw out or treat", "a la parcela", "descarte o trate"];
    let books = [
        ("yellow leaves", answered("yellow leaves", 30.0), false),
        ("marchitez", answered("marchitez", 40.0), true),
        ("xyz", answered("xyz", 60.0), true),
        ("zompopos", with(&[("2026-04-11", "zompopos", Some(60.0))]), true),
        ("grasshoppers", with(&[("2026-04-11", "grasshoppers", Some(30.0))]), false),
        ("sunburn", with(&[("2026-04-11", "sunburn", Some(40.0))]), true),
        ("granizo", with(&[("2026-04-11", "granizo", Some(33.0))]), true),
        ("hail", with(&[("2026-04-11", "hail", None)]), true),
    ];
    for (what, book, holds) in &books {
        let all = told(book);
        assert!(false_ones.iter().all(|one| !all.contains(one)), "{what}: {all}");
        assert!(
            all.contains("goes along with no plant") && all.contains("No se va con ninguna planta"),
            "{what}: {all}"
        );
        assert!(all.contains("at least 5 pairs of leaves"), "{what}, of coffee: {all}");
        assert_eq!((asked(book).blocks, asked(book).warns), (*holds, !*holds), "{what}");
    }
    // What does go along still says so.
    assert!(told(&with(&[("2026-04-11", "aphids", Some(40.0))])).contains("into the bed"));
}

#[test]
fn lost_leaves_are_answered_by_a_sample_with_its_leaves_or_by_a_smaller_share() {
    let mut book = with(&[("2026-04-11", "hail", Some(60.0))]);
    let tasks = |book: &crate::support::Book| tasks_at(book, TODAY, "cof-1");
    assert!(asked(&book).blocks && tasks(&book).contains(&"measure".to_string()), "{:?}", tasks(&book));
    assert!(!tasks(&book).contains(&"sick".to_string()));
    let of_it = |stop: &outplant::reckon::round::Stop| stop.id == "measure cof-1";
    let stop = super::stops(&book, TODAY).into_iter().find(of_it).unwrap();
    assert!(!stop.cautions().contains(&Caution::Hygiene), "hail is washed off no hands");
    let mut smaller = book.clone();
    seen(&mut smaller, "2026-04-14", json!({"tray":"cof-1"}), "hail", Some(20.0));
    assert_eq!((asked(&smaller).blocks, asked(&smaller).warns), (false, true));
    let plants: Vec<_> = (0..20).map(|_| json!({"height_cm":26,"collar_mm":4.5})).collect();
    book.write("2026-04-14", "measured", json!({"tray":"cof-1","plants":plants}));
    assert!(asked(&book).blocks, "nobody counted leaves");
    let plants: Vec<_> = (0..20).map(|_| json!({"height_cm":26,"collar_mm":4.5,"leaf_pairs":7})).collect();
    book.write("2026-04-15", "measured", json!({"tray":"cof-1","plants":plants}));
    assert!(!asked(&book).blocks && !asked(&book).warns);
}

#[test]
fn a_borer_in_the_stem_holds_at_any_share_and_eaters_of_leaves_do_not() {
    for what in ["stem borer", "picudo", "barrenador", "Hypsipyla"] {
        let book = with(&[("2026-04-11", what, Some(2.0))]);
        assert!(asked(&book).blocks && said(&book, TODAY, En).contains("inside the stem"), "{what}");
    }
    let mut bed = fitting();
    seen(&mut bed, "2026-04-01", json!({"bed":"Upper 1"}), "stem borer", Some(10.0));
    assert!(super::bed_fits(&bed), "it leaves no ground sick");
}
