//! A whole round of the sample nursery walked by keys, every stop answered, to its summary.

use super::stage::Stage;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::screens::walk::{Mark, Shown};
use crate::reckon::round::Task;
use crate::reckon::stock::CohortStory;
use crate::wording::Lang;

/// What is typed at a stop: by the field that has the keys; nothing where what the form begins with is true.
fn answer(task: Task, field: &str) -> Option<&'static str> {
    Some(match (task, field) {
        (Task::Measure, "plants") => "31 6\n29 5.5\n33 6\n",
        (Task::Count, "standing") => "41",
        (Task::CheckPlug, "roots") => "1",
        (Task::ReadLight, "readings") => "900 10000\n950 10000\n1000 10000\n",
        (Task::CheckSoil, "rod_mm") => "8",
        (Task::CheckSoil, "push_kg") => "10",
        (Task::CheckSoil, "depth_cm") => "40",
        (Task::CheckSoil, "days_since_soaking") => "2",
        _ => return None,
    })
}

fn form_field(stage: &Stage) -> Option<(&'static str, Option<&'static str>)> {
    match stage.model.layers.last() {
        Some(Layer::Form(form)) => Some((form.kind(), form.field_with_keys())),
        Some(_) | None => None,
    }
}

fn here(stage: &Stage) -> (String, Task) {
    let walk = &stage.model.screens.walk;
    let Shown { id, task, .. } = walk.here(&stage.model.context()).unwrap();
    (id.to_string(), task)
}

/// Answers the chosen stop with keys, form after form, until the round goes on.
fn answer_stop(stage: &mut Stage) {
    let (id, task) = here(stage);
    let mut pressed = 0;
    stage.key(Key::Enter);
    while let Some((kind, field)) = form_field(stage) {
        let typed = field.and_then(|field| answer(task, field)).unwrap_or_default();
        stage.keys(typed);
        stage.key(Key::Enter);
        pressed += typed.chars().count() + 1;
        assert!(pressed < 60, "{id}: {kind} {field:?} does not end\n{}", stage.frame());
    }
}

/// Walks it to its end; the answer names the stops that were answered, in order.
fn walk_it(lang: Lang, size: (u16, u16)) -> (Stage, Vec<String>) {
    let mut stage = Stage::sample(lang).sized(size.0, size.1);
    let all = stage.model.book.round.stops.len();
    let mut answered: Vec<String> = Vec::new();
    loop {
        let (behind, of) = stage.model.screens.walk.progress(&stage.model.context());
        assert_eq!(of, all);
        if behind == all {
            return (stage, answered);
        }
        let (id, _) = here(&stage);
        let (before, entries) = (answered.len(), stage.entries());
        answer_stop(&mut stage);
        assert!(stage.entries() > entries, "nothing was written at {id}\n{}", stage.frame());
        if answered.last() != Some(&id) {
            answered.push(id);
        }
        assert!(before < 2 * all, "the round does not end: {answered:?}");
    }
}

#[test]
fn a_whole_round_is_walked_by_keys_to_its_summary_on_a_small_and_a_wide_screen() {
    for (lang, size) in [(Lang::Es, (48, 18)), (Lang::En, (120, 40))] {
        let (stage, answered) = walk_it(lang, size);
        let (cx, wording) = (stage.model.context(), &stage.model.wording);
        let shown = stage.model.screens.walk.shown(&cx);
        // Every stop was answered; only what the work of another stop made needless was not.
        for stop in &shown {
            let answered = answered.iter().any(|id| id == stop.id);
            assert_eq!(stop.mark, if answered { Mark::Done } else { Mark::Over }, "{}", stop.id);
        }
        assert!(answered.len() + 1 >= shown.len(), "{answered:?}");
        let frame = stage.frame();
        let picture = &stage.model.book.picture;
        let today = |cohort: &&CohortStory| cohort.day == picture.day && !cohort.found;
        let cohorts = picture.beds.values().flat_map(|bed| &bed.story.cohorts);
        let planted: i64 = cohorts.filter(today).map(|cohort| i64::from(cohort.planted)).sum();
        // 41 of 42 were counted in one tray: one nobody saw die.
        let lines = [
            wording.walk_closing(),
            wording.walk_counted_today(wording.plants(41), 1),
            wording.walk_planted_today(planted),
            wording.walk_lost_today(wording.plants(1)),
        ];
        for line in lines {
            assert!(frame.contains(&line), "{line}\n{frame}");
        }
        assert!(planted > 100 && frame.contains("cof-022"), "what waits for tomorrow is named\n{frame}");
        // After a power cut it is there again, and Enter shows what waits.
        let mut again = stage.again(lang).sized(size.0, size.1);
        assert!(again.frame().contains(&again.model.wording.walk_closing()), "{}", again.frame());
        again.key(Key::Enter);
        assert!(!again.frame().contains(&again.model.wording.walk_closing()), "{}", again.frame());
        let (id, _) = here(&again);
        assert!(!answered.contains(&id), "{id}");
    }
}

#[test]
fn the_list_keeps_the_species_once_something_is_done_in_both_languages() {
    for (lang, species) in [(Lang::En, "arabica coffee"), (Lang::Es, "café arábica")] {
        let mut stage = Stage::sample(lang);
        stage.keys("\n\n");
        let frame = stage.frame();
        let done = frame.lines().find(|line| line.starts_with('√')).unwrap();
        assert!(done.contains(species), "{frame}");
    }
}
