//! The page as a grower sees it.

use crate::base::columns::width_of;
use crate::base::{BedName, Moment, TrayCode};
use crate::cli::page_text::page_text;
use crate::cli::test_picture::{day, empty, small};
use crate::page::Asked;
use crate::page::ready::ready;
use crate::page::today::today;
use crate::reckon::picture::{Looking, Misses, Picture};
use crate::wording::{Lang, Wording};

fn page_of(picture: &Picture, wording: &Wording, width: usize, colour: bool) -> String {
    let page = ready(Asked { picture, wording }, None, picture.trays.is_empty(), !picture.beds.is_empty());
    page_text(&page, picture, wording, width, colour)
}

fn page(picture: &Picture, lang: Lang, width: usize) -> String {
    page_of(picture, &Wording::new(lang), width, false)
}

#[test]
fn the_page_says_what_goes_out_what_has_no_bed_and_what_waits() {
    insta::assert_snapshot!(page(&small(), Lang::En, 80), @r#"
Tumbaro school nursery                                        today, 14 Mar 2026

Ready to go out today
+ cof-031  arabica coffee  24 plants → Lower terrace  by 20 Apr (bag)
                           12 plants → School plot
  cof-031: 2 beds (Lower terrace, School plot) are offered the same 24 plants

Ready, but no bed today
~ avo-002  avocado             12  no bed plans avocado · by 20 Apr (bag)

Not yet
  overdue
x gre-009  grevillea             7  in its bag 430 days, the bag holds it 300:
                                    lift a plug, then pot on or cull
  hardening
x cof-040  arabica coffee       41  the plug falls apart: wait until the roots
                                    hold it · +1 more
  growing on
x cof-052  arabica coffee      118  193 days old, 17 short of 210 · from 31 Mar
  empty: cof-001

Beds
Lower terrace  45 % light, read 2 Mar
  + arabica coffee  open: 40 of 80 positions open, 31 in good light
School plot  40 % light, read 2 Mar
  + arabica coffee  refill: 12 of 80 positions open, 3 in good light
Upper terrace  light not read
  x arabica coffee  nursing: the light is not known: read the light in this bed
                    · +1 more
Windbreak  light not read
  nothing is planned here

Gaps of the plans
! avo-002 is ready, but no bed plans avocado: add it to the plan of a bed

Every reason: outplant why tray cof-040
"#);
}

#[test]
fn the_short_answer_gives_each_plant_and_each_place_away_once() {
    let (picture, wording) = (small(), Wording::new(Lang::En));
    let page = today(Asked { picture: &picture, wording: &wording }, None);
    let text = page_text(&page, &picture, &wording, 80, false);
    // Of its 24 plants none is offered twice.
    assert!(text.contains("24 plants → Lower terrace") && !text.contains("→ School plot"), "{text}");
    assert!(text.contains("Plan of today") && text.contains("Open: "), "{text}");
}

#[test]
fn a_narrow_page_says_the_same_in_spanish() {
    insta::assert_snapshot!(page(&small(), Lang::Es, 44), @r#"
Tumbaro school nursery      hoy, 14 mar 2026

Listas para salir hoy
+ cof-031  café arábica
    24 plantas → Lower terrace, hasta el
    20 abr (bolsa)
    12 plantas → School plot
  cof-031: a 2 parcelas (Lower terrace,
  School plot) se les ofrece lo mismo:
  24 plantas en total

Listas, pero hoy sin parcela
~ avo-002  aguacate  12 plantas
    ninguna parcela tiene aguacate en su
    plan · hasta el 20 abr (bolsa)

Todavía no
  pasada
x gre-009  grevilea  7 plantas
    lleva 430 días en la bolsa, que aguanta
    300: saque un pilón, luego cámbielas de
    bolsa o descártelas
  endureciendo
x cof-040  café arábica  41 plantas
    el pilón se desmorona: espere a que las
    raíces lo sostengan · +1 razón
  creciendo
x cof-052  café arábica  118 plantas
    tiene 193 días, le faltan 17 para 210 ·
    desde el 31 mar
  vacías: cof-001

Parcelas
Lower terrace  45 % de luz, leída el 2 mar
  + café arábica  abierta: 40 de 80 hoyos
                  libres, 31 con buena luz
School plot  40 % de luz, leída el 2 mar
  + café arábica  resiembra: 12 de 80 hoyos
                  libres, 3 con buena luz
Upper terrace  luz sin leer
  x café arábica  en espera: no se sabe la
                  luz: lea la luz en esta
                  parcela · +1 razón
Windbreak  luz sin leer
  aquí no hay nada en el plan

Faltas en los planes
! avo-002 está lista, y ningún plan tiene
  aguacate: póngala en el de una parcela

Todas las razones: outplant why tray cof-040
"#);
}

#[test]
fn no_line_is_wider_than_the_page_and_nothing_is_coloured_unasked() {
    let mut pictures = vec![small(), empty()];
    for looking in [Looking::Back, Looking::Ahead] {
        let mut other = small();
        other.looking = looking;
        other.known = Some(Moment::end_of(day("2026-03-01"), 2.0));
        pictures.push(other);
    }
    for picture in &pictures {
        for lang in Lang::ALL {
            for width in 40..=120 {
                let text = page(picture, lang, width);
                assert!(!text.contains('\u{1b}'));
                for line in text.lines() {
                    assert!(width_of(line) <= width, "{lang:?} {width}: {line}");
                    assert_eq!(line, line.trim_end(), "blanks at the end");
                }
            }
        }
    }
}

#[test]
fn the_longest_names_and_largest_numbers_fit_every_page() {
    let mut picture = small();
    let long = TrayCode::new(&"w".repeat(24)).unwrap();
    let mut tray = (*picture.trays.values().next().unwrap().clone()).clone();
    tray.code = long.clone();
    tray.standing = 1_000_000_000;
    let mut waiting = tray.clone();
    waiting.code = TrayCode::new(&"日".repeat(24)).unwrap();
    waiting.ready = false;
    waiting.criteria.iter_mut().for_each(|criterion| criterion.blocks = true);
    let mut pairs: Vec<_> = picture.pairs.iter().map(|pair| pair.whole().clone()).collect();
    let mut pair = (*pairs[0]).clone();
    (pair.tray, pair.plants) = (long, 1_000_000_000);
    pair.bed = BedName::new("a name of 24 characters!").unwrap();
    pairs.push(std::sync::Arc::new(pair));
    picture.pairs = pairs.into();
    for tray in [tray, waiting] {
        picture.trays.insert(tray.code.clone(), std::sync::Arc::new(tray));
    }
    for lang in Lang::ALL {
        for width in 40..=120 {
            let text = page(&picture, lang, width);
            assert!(text.contains("1000000000"), "{text}");
            for line in text.lines() {
                assert!(width_of(line) <= width, "{lang:?} {width}: {line}");
            }
        }
    }
}

#[test]
fn numbers_are_never_cut_however_narrow_the_page() {
    let text = page(&small(), Lang::En, 40);
    for number in ["24 plants", "12 plants", "118 plants", "193 days old", "17 short of 210", "40 of 80", "430 days"] {
        let joined = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(joined.contains(number), "{number} is missing:\n{text}");
    }
}

#[test]
fn colour_adds_only_codes() {
    let wording = Wording::new(Lang::En);
    let coloured = page_of(&small(), &wording, 80, true);
    let mut plain = coloured.clone();
    for code in ["\u{1b}[1m", "\u{1b}[34m", "\u{1b}[33m", "\u{1b}[31m", "\u{1b}[0m"] {
        assert!(coloured.contains(code), "{code:?} is not used");
        plain = plain.replace(code, "");
    }
    assert_eq!(plain, page_of(&small(), &wording, 80, false));
}

#[test]
fn an_empty_nursery_is_taught_how_to_write_a_tray() {
    for lang in Lang::ALL {
        let text = page(&empty(), lang, 120);
        assert!(text.contains("outplant write sown tray="), "{text}");
        assert!(text.contains("outplant write plants_received tray="), "{text}");
    }
}

#[test]
fn another_day_is_said_at_the_top() {
    let mut ahead = small();
    ahead.looking = Looking::Ahead;
    ahead.known = Some(Moment::end_of(day("2026-03-01"), 2.0));
    let text = page(&ahead, Lang::En, 100);
    assert!(text.contains("LOOKING AHEAD to 14 Mar 2026"), "{text}");
    assert!(text.contains("ONLY what had been written down by 1 Mar 2026"), "{text}");
    assert!(text.contains("Ready to go out on 14 Mar 2026") && !text.contains("today"), "{text}");
}

#[test]
fn the_nearest_bed_is_the_one_with_the_fewest_reasons() {
    let mut picture = small();
    let mut pairs: Vec<_> = picture.pairs.iter().filter(|pair| !pair.fits).map(|pair| pair.whole().clone()).collect();
    let mut nearer = (*pairs[0]).clone();
    nearer.bed = BedName::new("Zebra bed").unwrap();
    let fewer = nearer.criteria[..2].to_vec();
    let held = fewer.iter().filter(|criterion| criterion.blocks);
    let held: Vec<_> = held.map(|criterion| (criterion.rule(), criterion.expected)).collect();
    nearer.misses = Misses::of(&held);
    nearer.criteria = fewer.into();
    pairs.push(std::sync::Arc::new(nearer));
    picture.pairs = pairs.into();
    let text = page(&picture, Lang::En, 120);
    assert!(text.contains("Zebra bed: stood in 30 % light, this bed has 60 %"), "{text}");
}
