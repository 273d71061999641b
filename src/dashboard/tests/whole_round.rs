//! A whole round of the sample nursery walked by keys, every stop answered, to its summary.

use super::stage::Stage;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::screens::walk::Shown;
use crate::reckon::round::Task;
use crate::wording::Lang;

/// What is typed at a stop: by the field that has the keys; nothing where what the form begins with is true.
fn answer(task: Task, field: &str) -> Option<&'static str> {
    Some(match (task, field) {
        (Task::Measure, "plants") => "31 6\n29 5.5\n33 6\n",
        (Task::Count, "standing") => "41",
        (Task::Sick, "count") => "8",
        (Task::Sick, "share_pct") => "0",
        (Task::CheckPlug, "roots") => "1",
        (Task::ReadLight, "readings") => "900 10000\n950 10000\n1000 10000\n",
        (Task::CheckSoil, "rod_mm") => "8",
        (Task::CountNurses, "alive") => "3",
        (Task::CutForLight, "share") => "0.2",
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

/// Whether the chosen stop is still to be done.
fn is_to_be_done(stage: &Stage) -> bool {
    let walk = &stage.model.screens.walk;
    walk.here(&stage.model.context()).is_some_and(|stop| stop.is_to_do())
}

/// Answers the chosen stop with keys, form after form, until the round goes on. The answer is what was pressed.
fn answer_stop(stage: &mut Stage) -> usize {
    let (id, task) = here(stage);
    let mut pressed = 1;
    stage.key(Key::Enter);
    while let Some((kind, field)) = form_field(stage) {
        let typed = field.and_then(|field| answer(task, field)).unwrap_or_default();
        if std::env::var("SHOW_ROUND").is_ok() {
            println!("{}\n", stage.frame());
        }
        stage.keys(typed);
        stage.key(Key::Enter);
        pressed += typed.chars().count() + 1;
        assert!(pressed < 60, "{id}: {kind} {field:?} does not end\n{}", stage.frame());
    }
    pressed
}

fn walk_it(lang: Lang, size: (u16, u16)) -> Stage {
    let mut stage = Stage::sample(lang).sized(size.0, size.1);
    let all = stage.model.book.round.stops.len();
    let mut visited = Vec::new();
    loop {
        let (behind, of) = stage.model.screens.walk.progress(&stage.model.context());
        assert_eq!(of, all);
        if behind == all {
            break;
        }
        let (id, _) = here(&stage);
        assert!(is_to_be_done(&stage), "{id} is not needed any more\n{}", stage.frame());
        visited.push(id.clone());
        assert!(visited.len() <= 2 * all, "the round does not end: {visited:?}");
        if std::env::var("SHOW_ROUND").is_ok() {
            println!("{}\n", stage.frame());
        }
        let keys = answer_stop(&mut stage);
        println!("{id}: {keys} keys");
    }
    stage
}

#[test]
fn a_whole_round_is_walked_by_keys_to_its_summary_on_a_small_and_a_wide_screen() {
    for (lang, size) in [(Lang::Es, (48, 18)), (Lang::En, (120, 40))] {
        let stage = walk_it(lang, size);
        let frame = stage.frame();
        println!("{frame}");
        assert!(frame.contains(&stage.model.wording.walk_closing()), "{frame}");
    }
}
