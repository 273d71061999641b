use super::*;
use crate::nursery::entry::fault::Problem;
use crate::nursery::envelope::Draft;
use crate::nursery::species::Catalogue;
use crate::share::fault::{LineFaults, Reason};
use crate::share::sheet::read_table;
use proptest::prelude::*;
use serde_json::{Value, json};

fn today() -> Day {
    Day::from_ymd(2026, 3, 14).unwrap()
}

fn read_as(kind: SheetKind, text: &str, order: Option<DayOrder>) -> Result<FirstDay, LineFaults> {
    let species = Catalogue::built_in();
    let names = SheetNames {
        today: today(),
        who: "mara",
        order,
        find: &|written| species.find(written),
        several: &|written| species.resolve(written).several(),
        nearest: &|written| species.nearest(written),
        variety: &|written, key| species.variety_beside(written, key),
        near: &|is_place, written| {
            let meant = is_place && written == "Bnech 4";
            if meant { vec!["Bench 4".to_string()] } else { Vec::new() }
        },
        spacing: &|key| (key.as_str() != "COA").then_some((3.0, 2.5)),
        containers: &["Bag 1 l".to_string()],
        places: &["Bench 4".to_string()],
        in_the_book: &|name| name.starts_with("old-"),
        weather: &|day| if day == Day::from_ymd(2026, 1, 5).unwrap() { vec![("rain_mm", 12.5)] } else { Vec::new() },
    };
    let table = read_table(text.as_bytes(), None).unwrap();
    let (day, faults) = match kind {
        SheetKind::Trays => read_trays(&table, &names),
        SheetKind::Beds => read_beds(&table, &names),
        SheetKind::Weather => read_weather(&table, &names),
    };
    faults.or(day)
}

fn trays(text: &str) -> Result<FirstDay, LineFaults> {
    read_as(SheetKind::Trays, text, None)
}

fn beds(text: &str) -> Result<FirstDay, LineFaults> {
    read_as(SheetKind::Beds, text, None)
}

fn bodies(day: &FirstDay) -> Vec<(usize, &str, Value)> {
    day.drafts.iter().map(|(line, draft)| (*line, draft.kind.as_str(), Value::Object(draft.body.clone()))).collect()
}

fn faults(read: Result<FirstDay, LineFaults>) -> Vec<(usize, Option<usize>, Reason)> {
    read.unwrap_err().listed.into_iter().map(|fault| (fault.line, fault.column, fault.reason)).collect()
}

#[test]
fn a_row_becomes_a_tray_that_already_stands() {
    let text = "Tray,Species,How many,Sown about,Bag,Bench,Height (cm),Shade %,Notes,Colour\n\
                cof-1,coffee,about 40,13/11/2025,bag 1 L,bench 4,\"24,5\",30%,from the school row,green\n\
                avo-1,avocado,\"1,234\",,tubete 50,Bench 9,,,,\n";
    let day = trays(text).unwrap();
    let first = json!({"tray": "cof-1", "species": "COA", "count": 40, "from": "opening", "form": "bag", "age_days": 121,
        "height_cm": 24.5, "container": "Bag 1 l", "place": "Bench 4", "shade_now_pct": 30});
    let note = json!({"about": "cof-1", "text": "from the school row"});
    let about = json!({"tray": "cof-1", "standing": 40, "about": true});
    let avocado = Catalogue::built_in().find("avocado").unwrap();
    let second = json!({"tray": "avo-1", "species": avocado.as_str(), "count": 1234, "from": "opening", "form": "plug",
        "container": "tubete 50", "place": "Bench 9"});
    let all =
        [(2, "plants_received", first), (2, "noted", note), (2, "counted", about), (3, "plants_received", second)];
    assert_eq!(bodies(&day), all);
    let colour = ColumnPassedOver { written: "Colour".into(), nearest: None };
    assert_eq!((day.rows, day.passed_over.as_slice()), (2, [colour].as_slice()));
    let taken: Vec<(usize, &TakenFor)> = day.understood.iter().map(|one| (one.line, &one.taken)).collect();
    assert_eq!(taken, [(2, &TakenFor::AboutCount(40)), (3, &TakenFor::Count(1234))]);
    let unknown = |what, name: Option<&str>, lines: &[usize]| Unknown {
        what,
        name: name.map(str::to_string),
        lines: lines.to_vec(),
    };
    assert_eq!(
        day.unknowns,
        [
            unknown(UnknownWhat::Measured, None, &[2, 3]),
            unknown(UnknownWhat::Age, None, &[3]),
            unknown(UnknownWhat::ContainerVolume, Some("tubete 50"), &[3]),
            unknown(UnknownWhat::PlaceShade, Some("Bench 9"), &[3]),
        ]
    );
}

#[test]
fn ages_and_forms_are_read_in_both_languages() {
    let age = |header: &str, cell: &str| {
        let day = trays(&format!("código;especie;cantidad;{header};forma\na;café;4;{cell};raíz desnuda\n")).unwrap();
        assert_eq!(day.drafts[0].1.body["form"], json!("bare_root"));
        day.drafts[0].1.body["age_days"].clone()
    };
    assert_eq!(age("Edad", "3 meses"), json!(91));
    assert_eq!(age("Edad (meses)", "4"), json!(122));
    assert_eq!(age("edad", "120"), json!(120));
    assert_eq!(age("Fecha de siembra", "14/2/2026"), json!(28));
    assert_eq!(age("Siembra", "marzo de 2025"), json!(364));
    assert_eq!(age("sembrada", "hace 2 semanas"), json!(14));
}

#[test]
fn the_sheet_shows_the_order_of_day_and_month() {
    let sown = |cells: [&str; 2], order| {
        let text = format!("tray,species,count,sown\na,coffee,4,{}\nb,coffee,4,{}\n", cells[0], cells[1]);
        read_as(SheetKind::Trays, &text, order)
            .map(|day| day.drafts.iter().map(|(_, draft)| draft.body["age_days"].as_i64().unwrap()).collect::<Vec<_>>())
    };
    assert_eq!(sown(["3/2/2026", "13/2/2026"], None), Ok(vec![39, 29]));
    assert_eq!(sown(["2/3/2026", "2/13/2026"], None), Ok(vec![39, 29]));
    let wrong = sown(["2/3/2026", "2/13/2026"], Some(DayOrder::DayFirst)).unwrap_err();
    assert_eq!((wrong.listed[0].line, wrong.listed[0].column), (3, Some(4)));
    assert!(matches!(wrong.listed[0].reason, Reason::DayInOtherOrder(_)));
    let both = sown(["13/2/2026", "2/13/2026"], None).unwrap_err();
    assert_eq!((both.count, both.listed[0].line), (1, 3));
    assert!(matches!(both.listed[0].reason, Reason::DayInOtherOrder(_)));
    let told = trays("tray,species,count,sown\na,coffee,4,3/2/2026\n").unwrap().understood;
    assert_eq!((told[0].column.as_deref(), &told[0].taken), (Some("sown"), &TakenFor::Day(today() - 39)));
}

#[test]
fn one_slip_does_not_turn_a_sheet_round_and_what_decides_is_told() {
    let mut text = "tray,species,count,sown\n".to_string();
    (1..=9).for_each(|i| text.push_str(&format!("a{i},coffee,4,{}/{i}/2025\n", i % 3 + 10)));
    let plain = trays(&text).unwrap();
    let order = plain.order.unwrap();
    assert_eq!((order.order, order.shown_by, order.so_read.len()), (DayOrder::DayFirst, None, 9));
    assert_eq!(order.so_read[0], (2, "11/1/2025".to_string(), Day::from_ymd(2025, 1, 11).unwrap()));
    // One day that only the month first gives, among nine that both give, is taken for a slip.
    let found = faults(trays(&format!("{text}b,coffee,4,2/25/2026\n")));
    assert_eq!(found, [(11, Some(4), Reason::DayInOtherOrder("2/25/2026".into()))]);
    // Three of them are not: the sheet is read so, and says by which line and how every other day was read.
    let slips: String = (1..=3).map(|i| format!("b{i},coffee,4,{i}/25/2025\n")).collect();
    let order = trays(&format!("{text}{slips}")).unwrap().order.unwrap();
    assert_eq!((order.order, order.shown_by), (DayOrder::MonthFirst, Some((11, "1/25/2025".to_string()))));
    assert_eq!(order.so_read[0], (2, "11/1/2025".to_string(), Day::from_ymd(2025, 11, 1).unwrap()));
    assert_eq!(order.so_read.len(), 9);
    // Where the language says it, nothing is guessed; a sheet of plain days has nothing to tell.
    assert!(read_as(SheetKind::Trays, &format!("{text}{slips}"), Some(DayOrder::DayFirst)).is_err());
    assert_eq!(trays("tray,species,count,sown\na,coffee,4,2025-03-02\n").unwrap().order, None);
}

#[test]
fn what_spreadsheets_make_of_days_is_read_or_refused_with_the_forms() {
    let text = "tray,species,count,sown\na,coffee,4,10.3.26\nb,coffee,4,Apr-25\nc,coffee,4,24 nov\nd,coffee,4,45975\n";
    let day = trays(text).unwrap();
    let ages: Vec<i64> = day.drafts.iter().map(|(_, draft)| draft.body["age_days"].as_i64().unwrap()).collect();
    assert_eq!(ages, [4, 333, 110, 120]);
    assert_eq!(day.understood.len(), 4, "each is told");
    let found = faults(trays("tray,species,count,sown\na,coffee,4,Nov 24\nb,coffee,4,12/11\nc,coffee,4,7\n"));
    assert_eq!(found[0].2, Reason::DayOrYear("Nov 24".into()));
    assert_eq!(found[1].2, Reason::NotAHandDay("12/11".into()));
    assert_eq!(found[2].2, Reason::NotAHandDay("7".into()));
}

#[test]
fn a_bag_tells_its_volume_once_and_a_total_is_passed_over() {
    let text = "Tray,Species,How many,Bag\na,coffee,4,2 l bag\nb,coffee,5,2 L Bag\nc,coffee,6,sack\n,,,\nTotal,,15,\n";
    let day = trays(text).unwrap();
    let bags: Vec<&Draft> = day.drafts.iter().map(|(_, draft)| draft).filter(|d| d.kind == "container_set").collect();
    assert_eq!(bags.len(), 1);
    assert_eq!(Value::Object(bags[0].body.clone()), json!({"container": "2 l bag", "volume_ml": 2000}));
    assert_eq!(day.drafts[2].1.body["container"], json!("2 l bag"), "one bag, spelled as it was first");
    assert_eq!((day.rows, day.total), (3, Some(Total { line: 6, written: Some(15), counted: 15 })));
    assert!(day.unknowns.iter().any(|one| one.name.as_deref() == Some("sack")));
    assert!(!day.unknowns.iter().any(|one| one.name.as_deref() == Some("2 l bag")));
    // A nameless number at the end is a total too; a row that merely lacks its species is a fault.
    assert!(trays("tray,species,how many\na,coffee,4\n,,9\n").unwrap().total.is_some());
    assert_eq!(faults(trays("tray,species,how many\na,coffee,4\nb,,9\n")).len(), 1);
}

#[test]
fn what_the_book_has_is_refused_by_row_and_of_a_whole_sheet_in_one_sentence() {
    let found = faults(trays("tray,species,count\nold-1,coffee,4\nnew,coffee,4\n"));
    assert_eq!(found, [(2, Some(1), Reason::InTheBook("old-1".into()))]);
    let found = faults(trays("tray,species,count\nold-1,coffee,4\nold-2,coffee,4\n"));
    assert_eq!(found, [(1, None, Reason::AllInTheBook(2))]);
    let found = faults(beds("bed,length,width,species,spacing\nold-1,20,6,coffee,2x2\n"));
    assert_eq!(found, [(2, Some(1), Reason::InTheBook("old-1".into()))]);
}

#[test]
fn light_and_shade_are_judged_in_percent() {
    let found = faults(beds("bed,length,width,species,spacing,Light\na,20,6,coffee,2x2,160\n"));
    let outside = Reason::Envelope(Problem::OutsideEnds { least: 0.0, most: 100.0 });
    assert_eq!(found, [(2, Some(6), outside.clone())]);
    assert_eq!(faults(trays("tray,species,count,shade\na,coffee,4,130\n")), [(2, Some(4), outside)]);
}

#[test]
fn a_bed_in_the_open_has_all_the_light_and_shade_leaves_the_rest() {
    let light_of = |written: &str| {
        let day = beds(&format!("bed,length,width,species,spacing,Luz\na,20,6,coffee,2x2,{written}\n")).unwrap();
        let read = bodies(&day).into_iter().find(|(_, kind, _)| *kind == "light_read");
        read.map(|(_, _, body)| body["light_share"].as_f64().unwrap())
    };
    for (written, light) in [
        ("pleno sol", Some(1.0)),
        ("sol", Some(1.0)),
        ("full sun", Some(1.0)),
        ("media sombra", Some(0.5)),
        ("40% sombra", Some(0.6)),
        ("70 % de sombra", Some(0.3)),
        ("60", Some(0.6)),
        ("nada", None),
        ("?", None),
    ] {
        let read = light_of(written);
        assert!(read.is_none() == light.is_none(), "{written}: {read:?}");
        assert!((read.unwrap_or(0.0) - light.unwrap_or(0.0)).abs() < 1e-9, "{written}: {read:?}");
    }
}

#[test]
fn every_fault_of_a_tray_sheet_has_row_and_column() {
    let text = "tray,,species,how many,sown about,age,form\n\
                a,,coffee,minus two,,,\n\
                b,,coffee,-2,,,\n\
                a,,cofee,dos,spring,,soft\n\
                c,,coffee,,15/3/2026,old,\n\
                a-code-that-is-much-too-long-for-a-label,,coffee,4,,,\n";
    let found = faults(trays(text));
    assert_eq!(found[0], (2, Some(4), Reason::Envelope(Problem::BelowZero("minus two".into()))));
    assert_eq!(found[1], (3, Some(4), Reason::Envelope(Problem::BelowZero("-2".into()))));
    assert_eq!(found[2], (4, Some(1), Reason::SameAsLine { written: "a".into(), line: 2 }));
    assert!(matches!(&found[3], (4, Some(3), Reason::UnknownName { written, nearest })
        if written == "cofee" && nearest.iter().any(|name| name == "coffee")));
    assert_eq!(found[4], (4, Some(4), Reason::NumberInWords { written: "dos".into(), figures: 2 }));
    assert_eq!(found[5], (4, Some(5), Reason::NotAHandDay("spring".into())));
    assert!(matches!(&found[6], (4, Some(7), Reason::Envelope(Problem::NotTheWord { .. }))));
    assert_eq!(found[7], (5, Some(4), Reason::Envelope(Problem::Missing)));
    assert_eq!(found[8], (5, Some(5), Reason::ComingDay(today() + 1)));
    assert_eq!(found[9], (5, Some(6), Reason::NotAnAge("old".into())));
    assert_eq!(found[10], (6, Some(1), Reason::Envelope(Problem::TooLong(24))));
    assert_eq!(found.len(), 11);
}

#[test]
fn a_column_nobody_knows_is_said_with_the_one_it_may_mean() {
    let text = "Canasto;Mata;Cantidad mas o menos;Donde esta;Cuando sembre;Tamaño;Tamano de planta;Riegos\n\
                c-1;cafe;docena;Mesa 1;marzo 2025;2 l;20;ayer\n";
    let day = trays(text).unwrap();
    let taken: Vec<&str> = day.columns.iter().map(|column| column.means[0]).collect();
    assert_eq!(taken, ["tray", "species", "how many", "bench", "sown about", "bag"]);
    let over: Vec<(&str, Option<&str>)> =
        day.passed_over.iter().map(|column| (column.written.as_str(), column.nearest.map(|said| said[0]))).collect();
    assert_eq!(over, [("Tamano de planta", None), ("Riegos", None)]);
    assert_eq!(day.drafts.iter().find(|(_, draft)| draft.kind == "plants_received").unwrap().1.body["count"], 12);
    let near = trays("Tray,Species,How many,Heights of plants\na,coffee,4,20\n").unwrap();
    assert_eq!(near.passed_over[0].nearest, Some(["height", "altura"]));
}

#[test]
fn a_row_with_too_many_cells_hides_no_other_fault_and_no_tray_is_empty_or_in_a_bag_of_nothing() {
    let text = "tray,species,how many,bag\na,coffee,4,1 l,more,and more\nb,coffee,0,\nc,coffee,4,-2 l bag\n\
                d,coffee,4,0 l\ne,coffee,999999999,\nf,coffee,2 dozen,\n";
    let found = faults(trays(text));
    let too_many = Reason::Envelope(Problem::TooMany { most: 100_000.0 });
    assert_eq!(
        found,
        [
            (2, Some(5), Reason::TooManyCells { columns: 4 }),
            (3, Some(3), Reason::EmptyTray),
            (4, Some(4), Reason::NoVolume("-2 l bag".into())),
            (5, Some(4), Reason::NoVolume("0 l".into())),
            (6, Some(3), too_many),
        ]
    );
}

#[test]
fn a_count_that_is_not_known_and_plants_in_no_bag_are_asked_for_and_no_bag_is_called_none() {
    let found = faults(trays("tray,species,how many,bag\na,coffee,?,1 l\nb,coffee,4,none\nc,coffee,4,ninguna\n"));
    assert_eq!(
        found,
        [
            (2, Some(3), Reason::CountNotKnown("?".into())),
            (3, Some(4), Reason::NoContainer("none".into())),
            (4, Some(4), Reason::NoContainer("ninguna".into())),
        ]
    );
    let said = trays("tray,species,how many,bag,form\nb,coffee,4,none,bare_root\n").unwrap();
    let body = &said.drafts[0].1.body;
    assert_eq!((body.get("container"), &body["form"]), (None, &serde_json::json!("bare_root")));
}

#[test]
fn a_sheet_without_its_columns_or_rows_is_refused() {
    let found = faults(trays("Bandeja;Sp;Color\na;b;c\n"));
    let seen = vec!["Bandeja".to_string(), "Sp".to_string(), "Color".to_string()];
    assert_eq!(found[0].2, Reason::NoColumn { name: ["species", "especie"], seen });
    assert!(matches!(&found[1].2, Reason::NoColumn { name: ["how many", "cuántas"], .. }));
    assert_eq!(found.len(), 2);
    assert_eq!(faults(trays("tray,species,count\n")), [(1, None, Reason::NoRows)]);
    let headless = faults(trays("cof-1,coffee,41\ncof-2,coffee,30\n"));
    let seen = ["cof-1", "coffee", "41"].map(str::to_string).to_vec();
    assert!(matches!(&headless[..], [(1, None, Reason::NoHeader { example, seen: there })]
        if example[0].starts_with("Tray,Species") && *there == seen));
    let twice = faults(trays("tray,code,species,count\na,b,coffee,4\n"));
    assert_eq!(twice, [(1, Some(2), Reason::ColumnsMeanTheSame("tray".into()))]);
}

#[test]
fn a_row_becomes_a_bed_with_what_stands_in_it() {
    let text = "Bed;Field;Length;Width;Species;Spacing;Standing;Nurse plants;Nurses planted;Light %\n\
                Upper 1;Hill;30;12,5;coffee + avocado;2x2 + 6 x 5;40 + 0;banana 20 + castor;Nov 2025;60\n\
                Lower;;20 m;6;avocado;;;;;\n";
    let day = beds(text).unwrap();
    let species = Catalogue::built_in();
    let key = |name: &str| species.find(name).unwrap().as_str().to_string();
    let plan = json!([
        {"species": "COA", "pattern": "square", "row_m": 2, "in_row_m": 2},
        {"species": key("avocado"), "pattern": "rectangle", "row_m": 6, "in_row_m": 5},
    ]);
    let usual = json!([{"species": key("avocado"), "pattern": "rectangle", "row_m": 3, "in_row_m": 2.5}]);
    let expected = [
        (
            2,
            "bed_set",
            json!({"bed": "Upper 1", "field": "Hill", "length_m": 30, "width_m": 12.5, "edges": "half", "plan": plan}),
        ),
        (2, "plants_found", json!({"bed": "Upper 1", "species": "COA", "alive": 40})),
        (
            2,
            "nurse_planted",
            json!({"bed": "Upper 1", "nurse": key("banana"), "count": 20, "row_m": 3, "in_row_m": 2.5}),
        ),
        (2, "light_read", json!({"bed": "Upper 1", "light_share": 0.6})),
        (
            3,
            "bed_set",
            json!({"bed": "Lower", "field": "Home", "length_m": 20, "width_m": 6, "edges": "half", "plan": usual}),
        ),
    ];
    assert_eq!(bodies(&day), expected);
    assert_eq!(day.drafts[2].1.happened.to_string(), "2025-11-15");
    let count_unknown = Unknown { what: UnknownWhat::NurseCount, name: Some("castor".into()), lines: vec![2] };
    assert!(day.unknowns.contains(&count_unknown));
    assert!(day.unknowns.contains(&Unknown { what: UnknownWhat::BedLight, name: None, lines: vec![3] }));
    assert!(day.understood.iter().any(|one| one.line == 3 && one.taken == TakenFor::Field("Home")));
}

#[test]
fn a_variety_of_what_a_bed_is_to_hold_is_kept_as_a_note() {
    let day = beds("Bed,Length,Width,Species,Spacing\na,20,6,coffee SL28 + avocado,2x2\nb,20,6,coffee,2x2\n").unwrap();
    let notes: Vec<Value> =
        day.drafts.iter().filter(|(_, one)| one.kind == "noted").map(|(_, one)| json!(one.body)).collect();
    assert_eq!(notes, [json!({"about": "a", "text": "coffee SL28 + avocado"})]);
}

#[test]
fn every_fault_of_a_bed_sheet_has_row_and_column() {
    let text = "bed,length,width,species,spacing,standing,nurses,pattern\n\
                a,long,6,coffee,2x,4,,\n\
                b,20,-6,coffee + avocado,2x2 + 2x2 + 2x2,4,banana x2,\n\
                c,20,6,coffee,,,,zigzag\n\
                d,20,6,,2x2,,,\n\
                e,0,6,coffee,2x2,,,\n";
    let found: Vec<(usize, Option<usize>)> = faults(beds(text)).into_iter().map(|fault| (fault.0, fault.1)).collect();
    assert_eq!(
        found,
        [
            (2, Some(2)),
            (2, Some(5)),
            (3, Some(3)),
            (3, Some(5)),
            (3, Some(6)),
            (3, Some(7)),
            (4, Some(5)),
            (4, Some(8)),
            (5, Some(4)),
            (6, Some(2))
        ]
    );
    let standing = faults(beds("bed,length,width,species,spacing,standing\na,20,6,coffee+avocado,2x2,4\n"));
    assert_eq!(standing, [(2, Some(6), Reason::NotOneForEach { species: 2, numbers: 1 })]);
}

proptest! {
    #[test]
    fn no_sheet_makes_it_panic(
        names in "(tray|bed|x)[;,](species|especie)[;,](count|length)[;,](sown|width)[;,](age|spacing)[;,](bag|standing)[;,](nurses|height)\n",
        rows in "(([-0-9/.x+~ %]{0,8}|coffee|banana 2|hace|é|about 4|\"|marzo 20)[;,]){0,8}\n",
        any in any::<String>(),
    ) {
        for text in [format!("{names}{rows}{rows}"), any] {
            if let Ok(table) = read_table(text.as_bytes(), None) {
                let species = Catalogue::built_in();
                let names = SheetNames {
                    today: today(), who: "mara", order: None,
                    find: &|written| species.find(written), several: &|_| Vec::new(), nearest: &|_| Vec::new(), spacing: &|_| None,
                    containers: &[], places: &[], in_the_book: &|name| name == "x",
                    variety: &|_, _| None, near: &|_, _| Vec::new(), weather: &|_| Vec::new(),
                };
                let (trays, beds) = (read_trays(&table, &names).1, read_beds(&table, &names).1);
                prop_assert!(!trays.is_empty() || !beds.is_empty(), "a sheet of trays is no sheet of beds");
                read_weather(&table, &names);
            }
        }
    }
}

fn weather(text: &str) -> Result<FirstDay, LineFaults> {
    read_as(SheetKind::Weather, text, None)
}

#[test]
fn weather_is_read_by_its_heads_and_units_with_decimal_commas_and_what_was_not_read_is_a_gap() {
    let sheet = "Fecha;Lluvia (mm);T mínima (°C);T máxima (°C)\n01/01/2026;3,5;18,2;29\n02/01/2026;-999;17;28,4\n\
                 03/01/2026;;;\n06/01/2026;0;;30\n";
    let day = weather(sheet).unwrap();
    assert_eq!(
        bodies(&day),
        [
            (2, "weather", json!({"rain_mm":3.5,"tmin_c":18.2,"tmax_c":29})),
            (3, "weather", json!({"tmin_c":17,"tmax_c":28.4})),
            (5, "weather", json!({"rain_mm":0,"tmax_c":30})),
        ]
    );
    let of_day = |day: u32| Day::from_ymd(2026, 1, day).unwrap();
    assert_eq!(day.gaps, [Gap { line: 3, from: of_day(3), until: of_day(5) }]);
    // Inches and Fahrenheit by the heads, and the day in three columns.
    let day = weather("YEAR,MO,DY,Rain (in),Tmax (F)\n2026,1,7,1.0,86\n").unwrap();
    assert_eq!(bodies(&day), [(2, "weather", json!({"rain_mm":25.4,"tmax_c":30}))]);
    assert_eq!(day.drafts[0].1.happened, of_day(7));
    // `Day` beside a year and a month is that of the month.
    let day = weather("Station: hill\nYear,Month,Day,Rain (mm)\n2026,1,7,3\n2026,1,8,0\n").unwrap();
    assert_eq!(day.drafts.iter().map(|draft| draft.1.happened).collect::<Vec<_>>(), [of_day(7), of_day(8)]);
}

#[test]
fn weather_that_cannot_be_is_named_with_its_line_and_the_same_again_is_passed_over() {
    let faults = weather(
        "date,rain mm\n2026-01-01,4\n2026-01-01,5\n2026-01-02,-3\n2026-01-03,4000\n2026-01-04,wet\n2027-01-01,3\n",
    );
    let lines: Vec<usize> = faults.unwrap_err().listed.iter().map(|fault| fault.line).collect();
    assert_eq!(lines, [3, 4, 5, 6, 7]);
    // The book has 12.5 mm of the fifth.
    assert_eq!(weather("date,rain mm\n2026-01-05,12.5\n2026-01-06,1\n").unwrap().drafts.len(), 1);
    let other = weather("date,rain mm\n2026-01-05,13\n").unwrap_err();
    assert!(matches!(other.listed[0].reason, Reason::InTheBook(_)));
    // Without a day, or without any figure, it is no sheet of weather.
    for sheet in ["rain mm,tmin c\n3,18\n", "date,wind\n2026-01-01,3\n"] {
        assert!(matches!(weather(sheet).unwrap_err().listed[0].reason, Reason::NoHeader { .. }), "{sheet}");
    }
}
