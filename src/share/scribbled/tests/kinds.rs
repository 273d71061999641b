//! Kinds of lines that growers said and that were taken for something else, each with several ways to say it.

use super::*;

fn read(line: &str) -> Reading {
    Reader::new(&Other).read(line, today())
}

fn offers(line: &str) -> Vec<Offer> {
    match read(line) {
        Reading::Clear(drafts) => panic!("{line} is written: {drafts:?}"),
        Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => offers,
    }
}

/// The one entry of a line that is clear.
fn clear(line: &str) -> EntryDraft {
    match read(line) {
        Reading::Clear(drafts) if drafts.len() == 1 => drafts.into_iter().next().unwrap(),
        other => panic!("{line}: {}", shown(&other)),
    }
}

fn field<'a>(draft: &'a EntryDraft, name: &str) -> &'a Value {
    draft.fields.get(name).unwrap_or(&Value::Null)
}

/// Kinds of entries that only keep the line as it is.
fn is_a_note(draft: &EntryDraft) -> bool {
    kind_of_entry(draft.kind).is_none() || draft.kind == "noted"
}

use crate::nursery::entry::kind_of_entry;
use serde_json::json;

#[test]
fn what_a_line_denies_is_neither_written_nor_offered() {
    const LINES: [&str; 26] = [
        "no cerqué A1",
        "falta cercar A1",
        "no hay cerca en A1",
        "A1 sin cercar",
        "todavía no cerqué A1",
        "no bajé las matas de guineo en A1",
        "no corté el guineo de A1",
        "no fumigué c1",
        "aún no fumigo c1",
        "no regué c1",
        "no sembré 20 c1 en A1",
        "nunca deshierbé A1",
        "nadie deshierbó A1",
        "c1 sin podar",
        "las cabras casi se comen 5 c1",
        "did not fence A1",
        "A1 not fenced yet",
        "no fence in A1",
        "didn't spray c1",
        "c1 not sprayed yet",
        "haven't weeded A1",
        "nobody weeded A1",
        "never planted 20 c1 in A1",
        "didn't cut the banana in A1",
        "the goats almost ate 5 c1",
        "c1 without water yet",
    ];
    for line in LINES {
        for offer in offers(line) {
            assert!(offer.iter().all(is_a_note), "{line}: {offer:?}");
        }
    }
}

#[test]
fn what_another_part_of_the_line_says_is_offered_beside_what_is_denied() {
    for (line, kind, number) in [
        ("no murieron 3 c1, solo 2", "lost", 2),
        ("no fumigué c1, murieron 2 c2", "lost", 2),
        ("c1 has 45 not 46", "counted", 45),
        ("caoba en A1: 15 pegaron, 5 no", "survival_counted", 15),
    ] {
        let offers = offers(line);
        let says =
            |draft: &EntryDraft| draft.kind == kind && draft.fields.values().any(|value| *value == json!(number));
        assert!(offers.iter().flatten().any(says), "{line}: {offers:?}");
    }
}

#[test]
fn plants_that_lived_through_it_are_never_a_loss() {
    const LINES: [&str; 10] = [
        "se salvaron 6 c1",
        "salvé 8 c1",
        "rescaté 8 c1",
        "se recuperaron 5 c1",
        "revivieron 4 c1",
        "6 of c1 pulled through",
        "saved 8 c1",
        "rescued 8 c1",
        "5 c1 recovered",
        "4 c1 bounced back",
    ];
    for line in LINES {
        let offers = offers(line);
        assert!(offers.iter().flatten().all(|draft| draft.kind == "counted" || is_a_note(draft)), "{line}: {offers:?}");
        assert!(!offers.is_empty(), "{line}");
    }
}

#[test]
fn stems_brought_down_are_felled_bunches_are_harvested_and_leaves_are_leaves() {
    for (line, what, count) in [
        ("bajé 4 matas de guineo en A1", "felled", 4),
        ("tumbé 4 matas de guineo en A1", "felled", 4),
        ("boté 4 matas de guineo en A1", "felled", 4),
        ("bajamos tres tallos de guineo en A1", "felled", 3),
        ("took down 4 banana stems in A1", "felled", 4),
        ("chopped down 4 bananas in A1", "felled", 4),
        ("bajé 2 racimos de guineo en A1", "harvest", 2),
        ("cut 2 bunches of banana in A1", "harvest", 2),
    ] {
        let cut = clear(line);
        assert_eq!(
            (cut.kind, field(&cut, "what"), field(&cut, "count")),
            ("nurse_cut", &json!(what), &json!(count)),
            "{line}"
        );
    }
    for line in ["corté hojas de guineo en A1", "deshojé el guineo de A1", "took leaves off the banana in A1"] {
        let offers = offers(line);
        let cut = &offers[0][0];
        assert_eq!(
            (cut.kind, field(cut, "what"), field(cut, "share")),
            ("nurse_cut", &json!("leaves"), &Value::Null),
            "{line}"
        );
    }
    // Suckers dug out are no plants cut.
    for line in ["arranqué 30 hijuelos de guineo en A1", "dug up 30 banana suckers in A1"] {
        let offers = offers(line);
        assert!(offers.iter().flatten().all(|draft| draft.kind != "nurse_cut"), "{line}: {offers:?}");
    }
}

#[test]
fn shade_that_is_pruned_is_asked_of_which_plant_and_planted_trees_can_be_pruned() {
    for line in ["podé la sombra de A1", "raleé la sombra de A1", "pruned the shade in A1"] {
        let offers = offers(line);
        assert!(offers.len() > 1, "{line}: {offers:?}");
        let is_cut = |draft: &EntryDraft| draft.kind == "nurse_cut" && field(draft, "what") == &json!("leaves");
        assert!(offers.iter().flatten().all(is_cut), "{line}: {offers:?}");
    }
    let half = clear("podé la mitad de la caoba en A1");
    assert_eq!((half.kind, field(&half, "share")), ("nurse_cut", &json!(0.5)));
    let which = offers("podé la mitad del guineo");
    assert!(which.iter().flatten().all(|draft| draft.kind == "nurse_cut"), "{which:?}");
}

#[test]
fn plants_that_lost_their_leaves_may_shoot_again_and_are_asked_about() {
    for line in ["los zompopos pelaron 8 c1", "leafcutters stripped 8 c1", "las hormigas pelaron 8 c1"] {
        let kinds: Vec<&str> = offers(line).iter().map(|offer| offer[0].kind).collect();
        assert_eq!(kinds, ["pest_seen", "lost"], "{line}");
    }
    for line in
        ["los zompopos deshojaron 8 c1", "ants ate the leaves of 8 c1", "las hormigas le comieron las hojas a 8 c1"]
    {
        let offers = offers(line);
        assert!(offers.iter().flatten().all(|draft| draft.kind == "pest_seen"), "{line}: {offers:?}");
        assert_eq!(field(&offers[0][0], "share_pct"), &json!(17.4), "{line}");
    }
    assert_eq!(clear("los zompopos pelaron 8 c1 y se murieron").kind, "lost");
}

#[test]
fn a_fence_that_does_not_stand_is_no_fence() {
    const LINES: [&str; 9] = [
        "quitaron el cerco de A1",
        "quité la cerca de A1",
        "abrí la cerca de A1",
        "se cayó el cerco de A1",
        "cortaron el alambre de A1",
        "took the fence down at A1",
        "somebody cut the fence of A1",
        "fence is down in A1",
        "gate left open at A1",
    ];
    for line in LINES {
        let Reading::Refused { why, offers } = read(line) else { panic!("{line}: {}", shown(&read(line))) };
        assert!(why.iter().any(|why| matches!(why, Why::FenceDown(_))), "{line}: {why:?}");
        assert!(offers.iter().flatten().all(is_a_note), "{line}: {offers:?}");
    }
}

#[test]
fn a_wait_is_of_its_treatment_wherever_the_line_says_it() {
    for (line, days) in [
        ("fumigué con cobre la c1 ayer, 7 días", 7),
        ("fumigué c1 con jabón, entrar en 2 días", 2),
        ("apliqué nim a c1, la etiqueta dice 3 días", 3),
        ("azufre en c1 esta mañana, no entrar 24 horas", 1),
        ("eché caldo bordelés a c1, no tocar hasta el viernes", 2),
        ("apliqué cobre a c1, esperar hasta el domingo", 4),
        ("copper on c1 yesterday, 7 days", 7),
        ("sprayed neem on c1, label says 3 days", 3),
        ("sulphur on c1 this morning, no entry 24 h", 1),
        ("sprayed c1 with copper, do not touch until Friday", 2),
    ] {
        let treated = clear(line);
        assert_eq!((treated.kind, field(&treated, "safe_after_days")), ("treated", &json!(days)), "{line}");
    }
}

#[test]
fn a_tray_that_is_held_no_more_is_free_and_one_that_is_kept_apart_is_held_for_its_reason() {
    for line in [
        "c1 ya no está apartada",
        "solté c1",
        "soltar c1",
        "dejé ir c1",
        "c1 salió de cuarentena",
        "let c1 go",
        "c1 is not held any more",
        "c1 no longer on hold",
    ] {
        assert_eq!(clear(line).kind, "released", "{line}");
    }
    for (line, why, until) in [
        ("aislé c1 por antracnosis", "antracnosis", Value::Null),
        ("c1 en cuarentena 14 días por roya", "roya", json!("2026-07-01")),
        ("aparté c1 en cuarentena", "en cuarentena", Value::Null),
        ("isolated c1, rust", "rust", Value::Null),
        ("c1 in quarantine for 14 days", "in quarantine", json!("2026-07-01")),
    ] {
        let held = clear(line);
        assert_eq!((held.kind, field(&held, "why"), field(&held, "until")), ("held", &json!(why), &until), "{line}");
    }
}

#[test]
fn so_many_sick_plants_are_a_part_of_their_tray_and_none_of_them_is_lost() {
    for line in ["c1 6 plantas con roya", "roya en 6 de c1", "6 matas de c1 con roya", "6 plants of c1 have rust"] {
        let seen = clear(line);
        assert_eq!((seen.kind, field(&seen, "share_pct")), ("pest_seen", &json!(13)), "{line}");
    }
    for line in ["c1 5 enfermas", "aparté 5 enfermas de c1", "c1 5 sick", "set apart 5 sick ones of c1"] {
        let offers = offers(line);
        assert!(
            offers.iter().flatten().all(|draft| matches!(draft.kind, "pest_seen" | "moved_on")),
            "{line}: {offers:?}"
        );
        assert!(!offers.is_empty(), "{line}");
    }
    for line in ["aparté 6 de c1 a Bench 3", "set apart 6 of c1 on Bench 3"] {
        let offers = offers(line);
        let moved = &offers[0][0];
        assert_eq!(
            (moved.kind, field(moved, "count"), field(moved, "to")),
            ("moved_on", &json!(6), &Value::Null),
            "{line}"
        );
    }
    let thrown = clear("boté 5 c1 por roya");
    assert_eq!((thrown.kind, field(&thrown, "why")), ("culled", &json!("roya")));
}

#[test]
fn a_tray_joined_with_another_goes_whole_where_no_number_is_said() {
    for line in ["junté la c1 con la c2", "pasé todas las c1 a c2, una sola bandeja", "merged c1 into c2"] {
        let joined = clear(line);
        assert_eq!(
            (joined.kind, field(&joined, "how"), field(&joined, "count")),
            ("moved_on", &json!("merged"), &json!(46)),
            "{line}"
        );
    }
}

#[test]
fn shade_said_of_a_bed_is_asked_about_as_light_and_ground_found_wet_is_no_watering() {
    for line in ["A1 sombra 40", "A1 40% shade", "A1 tiene como 40 % de sombra"] {
        let offers = offers(line);
        assert_eq!((offers[0][0].kind, field(&offers[0][0], "light_share")), ("light_read", &json!(0.6)), "{line}");
    }
    for line in ["mojado hasta abajo A1", "A1 húmedo hasta abajo", "A1 moist right down to the elbow"] {
        let found = clear(line);
        assert_eq!((found.kind, field(&found, "wet")), ("soil_checked", &json!(true)), "{line}");
    }
    // Dry on top may be wet below.
    assert_eq!(offers("A1 seco por encima")[0][0].kind, "soil_checked");
}

#[test]
fn how_a_graft_was_made_is_no_variety_and_the_stock_is_kept() {
    let grafted = clear("injerté 15 aguacates av1 de púa, patrón criollo");
    let told = (grafted.kind, field(&grafted, "rootstock"), field(&grafted, "variety"));
    assert_eq!(told, ("grafted", &json!("criollo"), &Value::Null));
}
