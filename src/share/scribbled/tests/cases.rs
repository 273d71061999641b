//! Lines that must be right, and lines that must never be taken for something else.

use super::*;

fn read(line: &str) -> Reading {
    Reader::new(&Other).read(line, today())
}

/// Each line is read at once, as entries of these kinds.
fn all_are_clear(lines: &[(&str, &str)]) {
    for (line, kinds) in lines {
        match read(line) {
            Reading::Clear(drafts) => {
                assert_eq!(drafts.iter().map(|draft| draft.kind).collect::<Vec<_>>().join(" "), *kinds, "{line}");
            }
            other => panic!("{line}: {}", shown(&other)),
        }
    }
}

#[test]
fn lines_of_the_review_are_clear() {
    const LINES: &[(&str, &str)] = &[
        ("c1 lost 3", "lost"),
        ("c1 2 eaten by ants", "lost"),
        ("c1 threw out 4 runts", "culled"),
        ("moved c1 to bench 3", "carried"),
        ("c1 c2 c3 to Bench 4", "carried carried carried"),
        ("c1 watered", "watered"),
        ("c1 yellow leaves", "pest_seen"),
        ("c1 sprayed soap", "treated"),
        ("hardening c1", "hardening_begun"),
        ("av1 grafted 10", "grafted"),
        ("c1 41, 2 dead, rats", "counted lost"),
        ("Bench 1 - 60% shade", "shade_set"),
        ("took shade off bench 3", "shade_set"),
        ("c6 > c61 20 2 l bag", "moved_on"),
        ("sowed 60 cacao in c71", "sown"),
        ("got 200 mahogany seeds from Pedro", "lot_received"),
        ("bought 50 plantain suckers", "plants_received"),
        ("gave 5 cacao c1 to neighbour", "given_out"),
        ("planted 20 c1 in A1", "outplanted"),
        ("weeded and mulched A1", "prepared prepared"),
        ("dug 33 holes in A1", "prepared"),
        ("planted 20 plantain 3x3 in A1", "nurse_planted"),
        ("mahogany 12 of 20 alive in A1", "survival_counted"),
        ("cassava lifted in A1", "nurse_cut"),
        ("murieron 3 c1", "lost"),
        ("c1 a Mesa 3", "carried"),
        ("hoyado A1", "prepared"),
        ("chapeada A1", "prepared"),
        ("llovió 25", "weather"),
        ("lunes c1 40", "counted"),
        ("c1 c2 regadas", "watered watered"),
        ("arranqué la yuca de A1", "nurse_cut"),
        ("regalé 5 c1", "given_out"),
        ("c1 - 45 left", "counted"),
        ("c1 @ A1 20", "outplanted"),
        ("c2 -1 rat, -2 ants", "lost lost"),
        ("c1 dead 3 of 46", "lost"),
        ("planted 20 c1 and 10 c2 in A1", "outplanted outplanted"),
        ("c1 a hundred and two", "counted"),
        ("1 inch rain", "weather"),
    ];
    all_are_clear(LINES);
}

/// What a grower's season showed: lines that were taken for something else, or had no reader.
#[test]
fn lines_of_a_season_say_what_they_say() {
    const LINES: &[(&str, &str)] = &[
        ("medi 3 c1: 24, 26 y 31", "measured"),
        ("measured c1 heights 24 26 31", "measured"),
        ("amanecieron 3 muertas en c1", "lost"),
        ("c1 40 buenas", "counted"),
        ("fumigué c1 con nim contra gusano", "treated"),
        ("aboné c1", "tended"),
        ("macheteo en A1", "prepared"),
        ("encalé A1, 2 libras por hoyo", "tended"),
        ("deshijé el plátano de A1", "tended"),
        ("podé la mitad del madero negro en A1", "nurse_cut"),
        ("vendí 5 c1 a Ana a 3 pesos cada una", "given_out"),
        ("llovió 8 el lunes y 12 el martes", "weather weather"),
        ("cac-L1 prueba: nacieron 41 de 50 en 28 días", "lot_tested"),
        ("en A1 quedan 30 matas de plátano de 40", "nurse_counted"),
        ("the wind knocked over 5 banana in A1, 35 left", "nurse_counted"),
        ("lost 1 c1 and 2 c2 to crickets", "lost lost"),
    ];
    all_are_clear(LINES);
    let fields = |line: &str| match read(line) {
        Reading::Clear(drafts) => Value::from(drafts[0].fields.clone()),
        other => panic!("{line}: {}", shown(&other)),
    };
    assert_eq!(fields("medi 3 c1: 24, 26 y 31")["plants"].as_array().unwrap().len(), 3);
    assert_eq!(fields("amanecieron 3 muertas en c1").get("cause"), None);
    let treated = fields("fumigué c1 con nim contra gusano");
    assert_eq!((&treated["with"], &treated["against"]), (&Value::from("nim"), &Value::from("gusano")));
    assert_eq!(fields("the wind knocked over 5 banana in A1, 35 left")["alive"], Value::from(35));
    assert_eq!(fields("lost 1 c1 and 2 c2 to crickets")["cause"], Value::from("crickets"));
}

/// Each with what is asked, and what is offered and what is not.
#[test]
fn lines_of_a_season_that_are_not_sure_are_asked_with_what_they_may_mean() {
    const LINES: &[(&str, &str, &str)] = &[
        // Fewer holes than places do not make a bed dug, a machete among plants may only have cut the weeds.
        ("hice 20 hoyos en A1", "holes_dug prepared", "SomeHoles"),
        ("chapié B1", "prepared prepared", "WeedsOrAll"),
        ("limpié A1", "prepared prepared", "WeedsOrAll"),
        ("llovió 12 en la mañana y 8 en la tarde", "weather weather", "Several"),
        ("lunes y martes regué c1", "watered watered", "SeveralDays"),
        ("saqué 42 c1 al campo", "told", "NotThrownAway"),
        ("se murió la mitad de c1", "lost counted", "NoNumber"),
        ("half of c1 is dead", "lost counted", "NoNumber"),
        ("fumigué c1 contra gusano", "treated", "NoRemedy"),
        ("c1 miércoles 40", "counted counted", "FarOpen"),
    ];
    for (line, kinds, why) in LINES {
        let reading = read(line);
        let offered = match &reading {
            Reading::Clear(_) => panic!("{line}: {}", shown(&reading)),
            Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => offers,
        };
        let offered: Vec<&str> = offered.iter().flatten().map(|draft| draft.kind).collect();
        assert_eq!(offered.join(" "), *kinds, "{line}");
        assert!(shown(&reading).contains(why), "{line}: {}", shown(&reading));
    }
}

#[test]
fn a_tray_that_an_earlier_line_made_is_known() {
    let mut reader = Reader::new(&Other);
    assert!(!matches!(reader.read("c77 30 standing", today()), Reading::Clear(_)));
    reader.learn(NameOf::Tray, "c77");
    assert!(matches!(reader.read("c77 30 standing", today()), Reading::Clear(_)));
}

#[test]
fn what_is_not_sure_is_never_written() {
    const LINES: &[&str] = &[
        "A1 20",
        "b1 20",
        "B1 20",
        "b1 watered",
        "c1 - 45",
        "c1 -45",
        "c1 -45 left",
        "c1 3",
        "c1 41 2",
        "c1 42 43",
        "c1 3 dead 2 dead",
        "c1 3 dead and 4 weak",
        "moved 20 c1 to Bench 3",
        "moved c1 from Bench 3",
        "gave c1 5",
        "took 5 c1",
        "agouti took 4 c1",
        "c1 5 to Pedro",
        "c1 half dead",
        "c1 3kg",
        "c1 12 cm",
        "c1 20%",
        "sprayed c1",
        "rained a bit",
        "rain 1200",
        "c1 0",
        "c1 lost 0",
        "rain yesterday and today 12",
        "c1 died 3 yesterday 2 today",
        "c1 lost 3 labels",
        "lost label of c1",
        "sold 5 c1 cheap",
        "weeds in A1",
        "c1 3 dead near door",
        "20 July c1 40",
        "31 de junio c1 3 muertas",
        "c1 not 40 but 39",
        "did not water c1",
        "c1 sin regar",
        "voy a regar c1",
        "tomorrow c1 to Bench 3",
        "¿c1 40?",
        "c1 40 or 42",
        "c9 3 dead",
        "3 hours painting A1",
        "c1 twice a week water",
        "x y",
        "and the",
        "potted on 20 c6 into c1",
        "c1 100 lost",
        "min 30 max 20",
        "c1 2.5 dead",
        "",
        "   ",
        "...",
        "🌱",
    ];
    for line in LINES {
        let reading = read(line);
        assert!(!matches!(reading, Reading::Clear(_)), "{line}: {}", shown(&reading));
    }
}

#[test]
fn days_are_the_last_that_have_been() {
    let days = [
        ("12 de mayo c1 40", Some("2026-05-12")),
        ("c1 40 on friday", Some("2026-06-12")),
        ("el 14/6 c1 40", Some("2026-06-14")),
        ("2 days ago c1 40", Some("2026-06-15")),
        ("hace una semana c1 40", Some("2026-06-10")),
        ("c1 40 on the 12th", Some("2026-06-12")),
        ("today c1 40", Some("2026-06-17")),
        ("c1 40 this morning", None),
        ("2026-06-01 c1 40", Some("2026-06-01")),
    ];
    for (line, day) in days {
        match read(line) {
            Reading::Clear(drafts) => assert_eq!(drafts[0].happened.map(written).as_deref(), day, "{line}"),
            other => panic!("{line}: {}", shown(&other)),
        }
    }
}

#[test]
fn words_of_central_america_and_numbers_as_they_are_said_are_read() {
    all_are_clear(&[
        ("planté 20 c1 en La Loma", "outplanted"),
        ("planted 20 c1 in loma", "outplanted"),
        ("el naranjo deshierbado", "prepared"),
        ("c1 3, c2 5, c3 none lost", "lost lost"),
        ("c1 40 mas o menos", "counted"),
        ("c1 una gruesa", "counted"),
        ("dic. 26 c1 lost 3", "lost"),
        ("deshije en A1", "tended"),
        ("vendí 15 c1 y 5 c2 a la coope", "given_out given_out"),
        ("caporales desyerbaron A1", "prepared"),
        ("se kebraron 4 c1 con el biento", "lost"),
        ("c1 and c2: 40 and 38", "counted counted"),
    ]);
    let Reading::Clear(drafts) = read("vendí 15 c1 y 5 c2 a la coope") else { panic!("asked") };
    assert!(drafts.iter().all(|draft| draft.fields["to"] == "coope"));
    let Reading::Clear(drafts) = read("dic. 26 c1 lost 3") else { panic!("asked") };
    assert_eq!(drafts[0].happened, Day::from_ymd(2025, 12, 26));
    let Reading::Refused { why, offers } = read("c1 40?") else { panic!("written") };
    assert_eq!((why, &offers[0][0].fields["about"]), (vec![Why::Unsure("40?".into())], &Value::from(true)));
    let Reading::Refused { offers, .. } = read("mas de la mitad de c1 muertas") else { panic!("written") };
    assert!(offers.iter().flatten().all(|draft| !draft.fields.contains_key("count")));
}

#[test]
fn what_was_only_put_on_a_tray_is_no_spray_unless_somebody_says_so() {
    for line in ["le eché manguera a c1", "le eché ganas a c1", "le puse lona a c1", "put a sheet on c1"] {
        let written = match read(line) {
            Reading::Clear(drafts) => drafts,
            Reading::Asks { .. } | Reading::Refused { .. } => Vec::new(),
        };
        assert!(written.iter().all(|draft| draft.kind != "treated"), "{line}: {written:?}");
    }
    all_are_clear(&[("le eché jabón a c1", "treated"), ("fumigué c1 con dimetoato", "treated")]);
}

#[test]
fn what_a_loss_ends_in_and_what_it_is_from_is_said_once() {
    for (line, cause) in [("se murieron 5 c1, todas de hormiga", "hormiga"), ("5 c1 died, all from drought", "drought")]
    {
        let Reading::Clear(drafts) = read(line) else { panic!("{line}: {}", shown(&read(line))) };
        assert_eq!((drafts.len(), &drafts[0].fields["cause"]), (1, &Value::from(cause)), "{line}");
        assert_eq!(drafts[0].fields["count"], Value::from(5), "{line}");
    }
    all_are_clear(&[("frost killed 5 c1, all dead", "lost")]);
}

#[test]
fn what_stings_people_is_seen_and_no_mere_note() {
    all_are_clear(&[
        ("c1 snake", "pest_seen"),
        ("snake in c1", "pest_seen"),
        ("c1 coral snake", "pest_seen"),
        ("wasps nest on c1", "pest_seen"),
        ("hornets in C1", "pest_seen"),
        ("culebra coral en c1", "pest_seen"),
        ("terciopelo en C1", "pest_seen"),
        ("alacranes en c1", "pest_seen"),
    ]);
}

#[test]
fn leaves_of_bananas_are_cut_in_whatever_order_it_is_said() {
    for line in ["cut half the banana leaves in A1", "lopped half the banana leaves in A1"] {
        let Reading::Clear(drafts) = read(line) else { panic!("{line}: {}", shown(&read(line))) };
        assert_eq!((drafts[0].kind, &drafts[0].fields["what"]), ("nurse_cut", &Value::from("leaves")), "{line}");
        assert_eq!(drafts[0].fields["share"], Value::from(0.5), "{line}");
    }
}

#[test]
fn a_count_of_nearly_all_is_one_whatever_word_stands_before_its_number() {
    all_are_clear(&[("c1 vaya pues 45", "counted")]);
    // So few may be dead, sick or sold.
    assert!(!matches!(read("c1 vaya pues 12"), Reading::Clear(_)));
}

#[test]
fn what_people_and_beds_get_and_what_is_told_besides_is_read() {
    all_are_clear(&[
        ("vino Otieno por sus 6 c1", "given_out"),
        ("the chapel got 6 c1 for free", "given_out"),
        ("sold 6 c1 to Ana, 30 each", "given_out"),
        ("4 c1 dried up, someone forgot to water", "lost"),
        ("lost a c1 to the goat", "lost"),
        ("dos cubetas de agua a c1", "watered"),
        ("7 c1 cooked by the sun", "lost"),
    ]);
    let sun = read("7 c1 cooked by the sun");
    assert!(matches!(&sun, Reading::Clear(drafts) if drafts[0].fields["cause"] == "sun"), "{sun:?}");
}

#[test]
fn a_harvest_in_pounds_is_one_in_kg_and_quintals_are_asked_about() {
    for line in ["coseché toda la yuca de La Loma, 40 libras", "harvested all the cassava in La Loma, 40 lb"] {
        let read = read(line);
        let Reading::Clear(drafts) = &read else { panic!("{line}: {}", shown(&read)) };
        // 40 x 0.45359237 kg.
        assert_eq!((drafts[0].kind, drafts[0].fields["yield_kg"].as_f64()), ("nurse_cut", Some(18.1)), "{line}");
    }
    assert!(!matches!(read("coseché toda la yuca de La Loma, 4 quintales"), Reading::Clear(_)));
}
