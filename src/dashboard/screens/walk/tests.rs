//! The walk under keys: what each does, what is kept, how it looks.

use super::plan::{Mark, Plan};
use super::{Screen, Walk, usual};
use crate::base::TrayCode;
use crate::dashboard::form::Form;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::message::Message;
use crate::dashboard::tests::{Stage, TODAY};
use crate::dashboard::update::update;
use crate::nursery::entry::kind_of_entry;
use crate::reckon::round::Task;
use crate::wording::Lang;

fn walk(stage: &Stage) -> &Walk {
    &stage.model.screens.walk
}

/// The id of the chosen stop.
fn here(stage: &Stage) -> String {
    walk(stage).here(&stage.model.context()).unwrap().id.to_string()
}

fn task_here(stage: &Stage) -> Task {
    walk(stage).here(&stage.model.context()).unwrap().task
}

fn mark(stage: &Stage, id: &str) -> Mark {
    walk(stage).shown(&stage.model.context()).iter().find(|stop| stop.id == id).unwrap().mark
}

/// Goes to the first stop of a task.
fn go_to(stage: &mut Stage, task: Task) -> String {
    stage.key(Key::Home);
    let all = walk(stage).shown(&stage.model.context()).len();
    for _ in 0..all {
        if task_here(stage) == task {
            return here(stage);
        }
        stage.key(Key::Down);
    }
    panic!("no stop of {task}");
}

fn tray_of(id: &str) -> TrayCode {
    TrayCode::new(id.split_once(' ').unwrap().1).unwrap()
}

fn form(stage: &Stage) -> &Form {
    match stage.model.layers.last() {
        Some(Layer::Form(form)) => form,
        _ => panic!("no form is open:\n{}", stage.frame()),
    }
}

#[test]
fn a_count_of_two_figures_takes_four_keys_and_goes_on_to_the_next_stop() {
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::Count);
    let before = stage.entries();
    for key in [Key::Enter, Key::Char('4'), Key::Char('1'), Key::Enter] {
        stage.key(key);
    }
    assert_eq!(stage.entries(), before + 1);
    assert_eq!(stage.model.book.picture.trays[&tray_of(&id)].standing, 41);
    assert!(stage.model.layers.is_empty());
    assert_ne!(here(&stage), id);
    assert_eq!(mark(&stage, &id), Mark::Done);
    assert!(stage.frame().contains("√"), "{}", stage.frame());
    assert!(stage.frame().contains("Living 41"), "{}", stage.frame());
}

#[test]
fn who_types_ahead_of_the_clerk_writes_the_next_stop_and_not_the_same_twice() {
    let mut stage = Stage::sample(Lang::En);
    go_to(&mut stage, Task::Count);
    let mut asked = Vec::new();
    for key in [Key::Enter, Key::Char('4'), Key::Char('1'), Key::Enter] {
        asked.extend(update(&mut stage.model, Message::Key(key)));
    }
    let next = here(&stage);
    asked.extend(update(&mut stage.model, Message::Key(Key::Enter)));
    assert_eq!(form(&stage).stop().id(), Some(next.as_str()));
    assert_eq!(stage.model.pending.len(), 1);
}

#[test]
fn what_is_refused_comes_back_with_what_was_typed() {
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::GoOut);
    let before = stage.entries();
    stage.keys("\n99999\n");
    assert_eq!(stage.entries(), before);
    assert_eq!(form(&stage).stop().id(), Some(id.as_str()));
    assert!(stage.frame().contains("99999"), "{}", stage.frame());
    assert_eq!(here(&stage), id);
    assert_eq!(mark(&stage, &id), Mark::Open);
}

#[test]
fn the_walk_hears_of_its_forms_while_another_screen_is_shown() {
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::Count);
    let mut asked = Vec::new();
    for key in [Key::Enter, Key::Char('4'), Key::Char('0'), Key::Enter, Key::Char('7')] {
        asked.extend(update(&mut stage.model, Message::Key(key)));
    }
    assert_eq!(mark(&stage, &id), Mark::Sent);
    stage.carry_out(asked);
    assert_eq!(mark(&stage, &id), Mark::Done);
    stage.keys("1");
    let refused = go_to(&mut stage, Task::GoOut);
    let mut asked = Vec::new();
    stage.keys("\n9999");
    for key in [Key::Enter, Key::Char('7')] {
        asked.extend(update(&mut stage.model, Message::Key(key)));
    }
    stage.carry_out(asked);
    assert_eq!(mark(&stage, &refused), Mark::Open);
}

#[test]
fn a_refused_form_lies_under_the_one_that_is_being_typed_in() {
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::GoOut);
    let mut asked = Vec::new();
    for key in [Key::Enter, Key::Char('9'), Key::Char('9'), Key::Char('9'), Key::Char('9'), Key::Enter] {
        asked = update(&mut stage.model, Message::Key(key));
    }
    stage.keys("l3");
    let above = form(&stage).stop().clone();
    stage.carry_out(asked);
    assert_eq!(*form(&stage).stop(), above);
    stage.keys("\u{1b}");
    assert_eq!(form(&stage).stop().id(), Some(id.as_str()));
}

#[test]
fn a_proposed_figure_gives_way_to_the_first_digit_and_stays_under_enter() {
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::GoOut);
    stage.keys("\n");
    let proposed = form(&stage).figure_typed().unwrap().1;
    assert!(proposed.parse::<u32>().unwrap() > 0);
    stage.keys("2");
    assert_eq!(form(&stage).figure_typed().unwrap().1, "2");
    stage.keys("\n");
    let planted = stage.model.book.picture.trays[&tray_of(&id)].story.accounts.planted;
    assert!(planted >= 2);
}

#[test]
fn what_is_skipped_is_marked_and_comes_back_at_the_end() {
    let mut stage = Stage::sample(Lang::En);
    let first = here(&stage);
    stage.keys(" ");
    assert_eq!(mark(&stage, &first), Mark::Skipped);
    assert!(stage.frame().contains("1 skipped"), "{}", stage.frame());
    let all = walk(&stage).shown(&stage.model.context()).len();
    for _ in 1..all {
        stage.keys(" ");
    }
    assert_eq!(here(&stage), first);
}

#[test]
fn the_round_is_where_it_was_after_a_power_cut_and_begins_anew_on_a_new_day() {
    let mut stage = Stage::sample(Lang::En);
    let skipped = here(&stage);
    stage.keys(" ");
    let counted = go_to(&mut stage, Task::Count);
    stage.keys("\n40\n");
    let at = here(&stage);
    let mut stage = stage.again(Lang::Es);
    assert_eq!(here(&stage), at);
    assert_eq!(mark(&stage, &skipped), Mark::Skipped);
    assert_eq!(mark(&stage, &counted), Mark::Done);
    // A tray that lost plants is looked at again, and nothing else is done in it: its other stops are over, and behind one.
    let cx = stage.model.context();
    let marked = |wanted: Mark| {
        let shown = walk(&stage).shown(&cx).into_iter().filter(move |stop| stop.mark == wanted);
        shown.map(|stop| stop.id.to_string()).collect::<Vec<_>>()
    };
    assert_eq!(marked(Mark::Done), [counted.as_str()]);
    let over = marked(Mark::Over);
    assert!(over.iter().all(|id| tray_of(id) == tray_of(&counted)), "{over:?}");
    assert_eq!(walk(&stage).progress(&cx).0, 1 + over.len());
    let mut plan = walk(&stage).plan.clone().unwrap();
    plan.day = plan.day.plus(-1);
    let mut fresh = Walk::default();
    fresh.resume(&plan.kept(), &stage.model.context());
    assert_eq!(fresh.plan, None);
    assert!(Plan::read("{}").is_none());
    stage.keys("q\n");
    assert!(stage.left);
}

#[test]
fn a_tray_counted_by_another_way_is_done_and_taking_it_back_opens_the_stop_again() {
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::Count);
    stage.keys("n");
    stage.text("count a tray");
    stage.keys("\n40\n");
    assert_eq!(mark(&stage, &id), Mark::Done);
    stage.keys("uw");
    assert_eq!(mark(&stage, &id), Mark::Open);
    stage.keys("c39\n");
    assert_eq!(mark(&stage, &id), Mark::Done);
    assert_eq!(stage.model.book.picture.trays[&tray_of(&id)].standing, 39);
}

#[test]
fn what_is_written_beside_the_task_stays_at_the_stop() {
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::Count);
    stage.keys("l2\n1\n");
    assert!(stage.model.layers.is_empty(), "{}", stage.frame());
    assert_eq!(here(&stage), id);
    assert_eq!(mark(&stage, &id), Mark::Open);
    assert!(stage.frame().contains("2, "), "{}", stage.frame());
}

#[test]
fn a_task_let_go_is_behind_one() {
    let mut stage = Stage::sample(Lang::En);
    let id = here(&stage);
    stage.keys("r\n");
    assert_eq!(mark(&stage, &id), Mark::Done);
    assert!(stage.model.book.round.stops.iter().all(|stop| stop.id != id));
}

#[test]
fn yesterdays_paper_is_counted_yesterday() {
    let mut stage = Stage::sample(Lang::En);
    stage.keys("b-1\n");
    let id = go_to(&mut stage, Task::Count);
    stage.keys("\n39\n");
    let yesterday = TODAY.parse::<crate::base::Day>().unwrap().plus(-1);
    let tray = &stage.model.book.picture.trays[&tray_of(&id)];
    let look = tray.story.counts.iter().find(|look| look.day == yesterday);
    assert_eq!(look.map(|look| look.standing), Some(39));
    assert_ne!(here(&stage), id);
    assert!(stage.frame().contains("What is written is for 14 Apr 2026"), "{}", stage.frame());
}

#[test]
fn a_gauge_read_for_yesterday_leaves_todays_to_be_read() {
    let mut stage = Stage::sample(Lang::En);
    let gauge = |stage: &Stage| stage.model.book.round.stops.iter().any(|stop| stop.task == Task::Gauge);
    if !gauge(&stage) {
        // The sample's gauge was read today: take that line back first.
        let entry = stage.model.book.picture.site.weather[&TODAY.parse().unwrap()].0.clone();
        stage.take_back(entry);
    }
    // It came after the round was planned: it stands with what can wait.
    stage.keys("+");
    let id = go_to(&mut stage, Task::Gauge);
    // The sample has a line of yesterday: that another takes its place is asked once.
    stage.keys("b-1\n\n7\n\n");
    assert_eq!(mark(&stage, &id), Mark::Open);
    assert_ne!(here(&stage), id);
    stage.keys("b\n");
    go_to(&mut stage, Task::Gauge);
    stage.keys("\n0\n");
    assert_eq!(mark(&stage, &id), Mark::Done);
}

#[test]
fn a_tray_that_goes_to_two_beds_is_left_only_after_both() {
    let mut stage = Stage::sample(Lang::En);
    let cx = stage.model.context();
    let two = stage.model.book.round.stops.iter().find(|stop| usual::parts(stop, &cx).len() > 1);
    let Some(id) = two.map(|stop| stop.id.clone()) else {
        panic!("the sample has no tray that goes to two beds on {TODAY}");
    };
    stage.key(Key::Home);
    while here(&stage) != id {
        stage.key(Key::Down);
    }
    stage.keys("\n\n");
    assert_eq!(here(&stage), id);
    stage.keys("\n\n");
    assert_ne!(here(&stage), id);
    assert_eq!(mark(&stage, &id), Mark::Done);
}

#[test]
fn enter_opens_a_form_at_every_stop_with_fields_that_its_kind_has() {
    let mut stage = Stage::sample(Lang::En);
    stage.keys("+");
    let ids: Vec<String> = walk(&stage).shown(&stage.model.context()).iter().map(|stop| stop.id.to_string()).collect();
    assert!(ids.len() > stage.model.book.round.stops.len());
    stage.key(Key::Home);
    for id in &ids {
        assert_eq!(here(&stage), *id);
        stage.keys("\n");
        assert_eq!(form(&stage).stop().id(), Some(id.as_str()));
        stage.keys("\u{1b}");
        assert!(stage.model.layers.is_empty());
        stage.key(Key::Down);
    }
    for days in [-300, -200, -120, -90, -60, -30, -14, -7] {
        stage.keys(&format!("d{days}\n"));
        let cx = stage.model.context();
        for stop in cx.book.round.stops.iter().chain(&cx.book.round.can_wait) {
            let asked = usual::usual(stop, &[], &cx);
            let known = kind_of_entry(&asked.kind).unwrap();
            let has = |name: &str| known.fields.iter().any(|field| field.name == name);
            assert!(asked.preset.iter().all(|(name, _)| has(name)), "{}: {asked:?}", stop.id);
            assert!(asked.begin_at.as_deref().is_none_or(has), "{}: {asked:?}", stop.id);
            assert!(stop.task.facts().is_done_by(&asked.kind) || matches!(asked.kind.as_str(), "let_go" | "noted"));
        }
    }
}

#[test]
fn one_stop_fills_the_screen_with_signs_and_large_figures_and_takes_the_same_keys() {
    for (columns, rows) in [(120, 40), (48, 18)] {
        let mut stage = Stage::sample(Lang::Es).sized(columns, rows);
        let id = go_to(&mut stage, Task::Count);
        if columns >= 60 {
            stage.keys("v");
        }
        stage.keys("\n41");
        let frame = stage.frame();
        assert!(frame.matches('█').count() > 20, "{frame}");
        assert!(frame.contains(tray_of(&id).as_str()), "{frame}");
        stage.model.look.ascii = true;
        assert!(stage.frame().is_ascii() && stage.frame().contains("###"), "{}", stage.frame());
        stage.keys("\n");
        assert_eq!(stage.model.book.picture.trays[&tray_of(&id)].standing, 41);
        assert_ne!(here(&stage), id);
        stage.key(Key::Esc);
        assert!(!stage.left);
        assert_eq!(walk(&stage).is_one_stop(&stage.model.context()), columns < 60);
    }
}

#[test]
fn at_every_size_the_progress_the_chosen_stop_and_its_mark_are_whole() {
    for lang in Lang::ALL {
        for (columns, rows) in [(80, 24), (60, 20), (48, 18), (40, 12)] {
            let mut stage = Stage::sample(lang).sized(columns, rows);
            go_to(&mut stage, Task::Count);
            stage.keys(" ");
            stage.key(Key::Up);
            let frame = stage.frame();
            let cx = stage.model.context();
            let stop = walk(&stage).here(&cx).unwrap();
            assert!(frame.contains(&cx.wording.task_name(stop.task)), "{frame}");
            assert!(columns < 60 || frame.lines().any(|line| line.contains(" min")), "{frame}");
            assert!(frame.lines().any(|line| line.contains("q ")), "{frame}");
            let marked = walk(&stage).shown(&cx).iter().any(super::Shown::loses_most);
            assert!(marked);
            // A sentence that is cut ends with the mark of a cut: none does.
            assert!(!frame.contains('…'), "{frame}");
        }
    }
    let mut tiny = Stage::sample(Lang::En).sized(20, 8);
    go_to(&mut tiny, Task::Count);
    assert!(tiny.frame().contains("Count"), "{}", tiny.frame());
}

#[test]
fn an_empty_nursery_is_told_how_to_begin() {
    let stage = Stage::empty(Lang::En);
    assert!(stage.frame().contains("No trays yet"), "{}", stage.frame());
}

#[test]
fn frames_as_they_look() {
    let stage = Stage::sample(Lang::En);
    insta::assert_snapshot!("walk_120x40_en", stage.frame());
    let mut stage = Stage::sample(Lang::Es).sized(48, 18);
    go_to(&mut stage, Task::Count);
    insta::assert_snapshot!("walk_48x18_es", stage.frame());
    stage.keys("\n41");
    insta::assert_snapshot!("walk_one_stop_48x18_es", stage.frame());
}

#[test]
fn the_water_of_a_step_is_asked_for_with_its_light() {
    use crate::reckon::round::RoundReason;
    let mut stage = Stage::sample(Lang::En);
    let round = &stage.model.book.round;
    let both = round.stops.iter().chain(&round.can_wait).find(|stop| match &stop.why {
        RoundReason::StepDue { step, .. } | RoundReason::HardeningNotBegun { step, .. } => {
            step.next.is_some() && step.water_every_days.is_some()
        }
        _ => false,
    });
    let (id, tray) =
        both.map(|stop| (stop.id.clone(), stop.tray().unwrap().clone())).expect("a step of light and water");
    stage.keys("+");
    let cx = stage.model.context();
    assert!(walk(&stage).shown(&cx).iter().any(|stop| stop.id == id));
    stage.model.screens.walk.plan.as_mut().unwrap().at = Some(id.clone());
    let before = stage.entries();
    stage.keys("\n\n");
    assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
    assert_eq!(form(&stage).kind(), "watering_set");
    stage.keys("\n");
    assert_eq!(stage.entries(), before + 2, "{}", stage.frame());
    assert!(stage.model.layers.is_empty());
    assert_eq!(stage.model.book.picture.trays[&tray].story.waterings.len(), 1);
    assert_eq!(mark(&stage, &id), Mark::Done);
    assert_ne!(here(&stage), id, "and one goes on");
}

#[test]
fn what_was_written_beside_a_stop_and_taken_back_is_no_longer_said_of_it() {
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::PotOn);
    stage.keys("c30\n");
    let said = |stage: &Stage| {
        let plan = walk(stage).plan.as_ref().unwrap();
        plan.stops.iter().find(|stop| stop.id == id).unwrap().said.clone()
    };
    assert!(said(&stage).contains("30"), "{}", stage.frame());
    stage.keys("uw");
    assert_eq!(said(&stage), "", "{}", stage.frame());
}

/// Blanks of one sort: lines are broken anywhere.
fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn until_when_why_and_caution_stand_whole_on_a_small_screen_and_a_key_shows_the_rest() {
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang).sized(48, 18);
        stage.key(Key::Home);
        let (mut known, mut cut) = (0, 0);
        for _ in 0..walk(&stage).shown(&stage.model.context()).len() {
            let frame = words(&stage.frame());
            let (all, in_short, more) = {
                let cx = stage.model.context();
                let wording = cx.wording;
                let stop = walk(&stage).here(&cx).unwrap();
                let before = walk(&stage).cautions_before(&stop, &cx);
                let in_short: Vec<(String, String)> =
                    before.iter().map(|one| (wording.caution_words(*one), wording.caution_in_short(*one))).collect();
                (super::view::brief(&stop, &cx), in_short, words(&wording.walk_all_of_it()))
            };
            let wording = &stage.model.wording;
            let presses = [wording.walk_until(), wording.walk_why(), wording.caution_label()];
            let mut left_out = false;
            for (label, text, _) in all {
                let short = in_short.iter().find(|(whole, _)| *whole == text);
                let said = short.map_or(words(&text), |(_, short)| words(short));
                let whole = frame.contains(&said);
                left_out |= !whole || short.is_some();
                // A reason of many lines is told as far as its first stop.
                let begins = said.split([';', ':']).next().unwrap_or_default();
                let shown = whole || (label == wording.walk_why() && frame.contains(&format!("{begins} …")));
                if presses.contains(&label) {
                    known += 1;
                    assert!(shown, "{label}: {said}\n{}", stage.frame());
                }
            }
            assert_eq!(frame.contains(&more), left_out, "{}", stage.frame());
            cut += usize::from(left_out);
            stage.key(Key::Down);
        }
        assert!(known > 30 && cut > 3, "{known} {cut}");
    }
}

#[test]
fn a_caution_is_said_in_full_at_the_first_stop_that_has_it_and_then_in_short_and_right_has_it_in_full() {
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang).sized(48, 18);
        let ids: Vec<String> = {
            let cx = stage.model.context();
            let shown = walk(&stage).shown(&cx);
            let out = shown.iter().filter(|stop| stop.task == Task::GoOut).map(|stop| stop.id.to_string());
            out.collect()
        };
        let caution = Task::GoOut.facts().caution.unwrap();
        let whole = words(&stage.model.wording.caution_words(caution));
        let frames: Vec<String> = ids
            .iter()
            .map(|id| {
                stage.key(Key::Home);
                while here(&stage) != *id {
                    stage.key(Key::Down);
                }
                words(&stage.frame())
            })
            .collect();
        assert!(frames.len() > 2 && frames[0].contains(&whole), "{frames:?}");
        let short = words(&stage.model.wording.caution_in_short(caution));
        assert!(frames[1..].iter().all(|frame| !frame.contains(&whole) && frame.contains(&short)), "{frames:?}");
        stage.key(Key::Right);
        assert!(words(&stage.frame()).contains(&whole), "{}", stage.frame());
        stage.key(Key::Left);
        assert!(!words(&stage.frame()).contains(&whole), "{}", stage.frame());
    }
}

#[test]
fn every_bed_a_tray_goes_to_is_named_on_the_screen_of_one_stop() {
    use crate::reckon::round::to_write::loads;
    let mut stage = Stage::sample(Lang::Es).sized(48, 18);
    let several: Vec<(String, Vec<(String, u32)>)> = {
        let stops = &stage.model.book.round.stops;
        let named = |stop: &crate::reckon::round::Stop| {
            loads(stop).into_iter().map(|(bed, plants)| (bed.to_string(), plants)).collect::<Vec<_>>()
        };
        stops.iter().map(|stop| (stop.id.clone(), named(stop))).filter(|(_, beds)| beds.len() > 1).collect()
    };
    assert!(!several.is_empty());
    for (id, beds) in several {
        stage.key(Key::Home);
        while here(&stage) != id {
            stage.key(Key::Down);
        }
        for (bed, plants) in beds {
            let said = format!("{bed}: {}", stage.model.wording.plants(plants));
            assert!(words(&stage.frame()).contains(&said), "{said}\n{}", stage.frame());
        }
    }
}

#[test]
fn what_came_up_since_the_round_began_is_marked_as_new() {
    for (lang, word) in [(Lang::En, "new"), (Lang::Es, "nueva")] {
        for (columns, rows) in [(120, 40), (80, 24)] {
            let mut stage = Stage::sample(lang).sized(columns, rows);
            let before: Vec<String> =
                walk(&stage).rest(&stage.model.context()).iter().map(|stop| stop.id.clone()).collect();
            stage.write("pest_seen", &["tray=cof-022", "what=aphids", "share_pct=30"]);
            let new: Vec<String> =
                walk(&stage).rest(&stage.model.context()).iter().map(|stop| stop.id.clone()).collect();
            assert!(new.iter().any(|id| !before.contains(id)), "{new:?}");
            assert!(stage.frame().contains(&format!(" {word}")), "{}", stage.frame());
            stage.keys("+");
            let shown = walk(&stage).shown(&stage.model.context());
            assert!(shown.iter().all(|stop| stop.is_new == (stop.waits && !before.iter().any(|id| id == stop.id))));
        }
    }
}

#[test]
fn every_task_that_is_let_go_is_counted_so_and_trays_set_apart_are_done() {
    let mut stage = Stage::sample(Lang::En);
    let all = walk(&stage).shown(&stage.model.context()).len();
    for _ in 0..all {
        if walk(&stage).is_over(&stage.model.context()) {
            break;
        }
        stage.keys("r\n");
    }
    assert!(stage.frame().contains(&format!("{all} stops let go")), "{}", stage.frame());
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::SpaceOut);
    stage.keys("\n\n");
    assert_eq!(mark(&stage, &id), Mark::Done);
    let (sign, ..) = {
        let cx = stage.model.context();
        let shown = walk(&stage).shown(&cx);
        super::view::mark_of(shown.iter().find(|stop| stop.id == id).unwrap(), &cx)
    };
    assert_eq!(sign, "√");
}

#[test]
fn a_stop_that_is_done_once_more_says_both_results() {
    let mut stage = Stage::sample(Lang::En);
    let id = go_to(&mut stage, Task::Count);
    stage.keys("\n40\n");
    let code = tray_of(&id);
    stage.key(Key::Home);
    for _ in 0..walk(&stage).shown(&stage.model.context()).len() {
        if here(&stage) == id {
            break;
        }
        stage.key(Key::Down);
    }
    assert_eq!(here(&stage), id);
    stage.keys("\n41\n");
    let cx = stage.model.context();
    assert_eq!(cx.book.picture.trays[&code].standing, 41);
    let shown = walk(&stage).shown(&cx);
    let (.., said) = super::view::mark_of(shown.iter().find(|stop| stop.id == id).unwrap(), &cx);
    assert_eq!(said, "Living 41 (before: Living 40)");
}

#[test]
fn the_species_of_a_stop_stays_in_its_row_after_the_first_is_done() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    let species = |stage: &Stage| stage.frame().lines().filter(|line| line.contains("arabica coffee")).count();
    let before = species(&stage);
    go_to(&mut stage, Task::Count);
    stage.keys("\n41\n");
    stage.key(Key::Home);
    assert!(before > 0 && species(&stage) > 0, "{}", stage.frame());
}
