//! From a message to effects. Touches no terminal, no file, no clock and no thread.

use std::sync::Arc;

use super::act::{Act, AtStop, FormFor, KeptForm, ScreenName, Switch, WhyOf};
use super::context::ScreenContext;
use super::form::{Form, KEPT_FORM, Tried, begun, begun_at, goes_with};
use super::keys::{Key, kind_for_tray};
use super::layer::{AskDay, Confirm, DayFor, Find, Help, Kinds, Layer, Leaving, News, Options, Why};
use super::look::Ink;
use super::message::{Answer, Effect, Message, Request};
use super::model::{Meant, Model};
use super::screens::screen::Screen;
use super::tap::{Tapped, tapped};
use crate::desk::{DeskError, LineFaults, Meant as MeantEntry, Reason, Recorded, Remark, Withdraws};
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;
use crate::nursery::envelope::Draft;
use crate::reckon::forecast::ForecastBasis;
use crate::reckon::picture::{Doubt, Looking};
use crate::wording::entry::is_not_said;
use crate::wording::{Lang, Wording};

/// Takes a message in.
pub(crate) fn update(model: &mut Model, message: Message) -> Vec<Effect> {
    match message {
        Message::Key(key) => press(model, key),
        Message::Text(text) => take_text(model, &text),
        Message::Resized(columns, rows) => {
            model.size = (columns, rows);
            vec![Effect::Redraw]
        }
        Message::Tap(column, row) => tap(model, column, row),
        Message::Answer(answer) => take_answer(model, *answer),
    }
}

/// The program was just opened, or a screen is shown: what it needs is asked for.
pub(crate) fn refresh(model: &mut Model) -> Vec<Effect> {
    let acts = with_screen(model, |screen, cx| screen.refresh(cx));
    act_all(model, acts)
}

fn tap(model: &mut Model, column: u16, row: u16) -> Vec<Effect> {
    match tapped(model, column, row) {
        Tapped::Key(key) => press(model, key),
        Tapped::Screen(name) => act(model, Act::Screen(name)),
        Tapped::Line(line) => tap_line(model, &line),
        Tapped::Nothing => Vec::new(),
    }
}

/// Chooses what a line names; what is chosen already is opened.
fn tap_line(model: &mut Model, line: &str) -> Vec<Effect> {
    let before = with_screen(model, |screen, cx| screen.choice(cx));
    let found = with_screen(model, |screen, cx| screen.tap(line, cx));
    if !found {
        return Vec::new();
    }
    if before.is_some() && before == with_screen(model, |screen, cx| screen.choice(cx)) {
        return press(model, Key::Enter);
    }
    refresh(model)
}

fn with_screen<T>(model: &mut Model, run: impl FnOnce(&mut dyn Screen, &ScreenContext<'_>) -> T) -> T {
    let at = model.at;
    with_screen_at(model, at, run)
}

fn with_screen_at<T>(
    model: &mut Model,
    at: ScreenName,
    run: impl FnOnce(&mut dyn Screen, &ScreenContext<'_>) -> T,
) -> T {
    // The screens are taken out for the moment, so that they can look at the rest.
    let mut screens = std::mem::take(&mut model.screens);
    let answer = run(screens.at_mut(at), &model.context());
    model.screens = screens;
    answer
}

fn press(model: &mut Model, key: Key) -> Vec<Effect> {
    match model.meant(key) {
        Meant::Key(key) => press_meant(model, key),
        Meant::Text(letter) => take_text(model, letter.encode_utf8(&mut [0; 4])),
    }
}

fn press_meant(model: &mut Model, key: Key) -> Vec<Effect> {
    match key {
        Key::Interrupt => return leave(model),
        Key::Suspend => return vec![Effect::Suspend],
        Key::Redraw => return vec![Effect::Redraw],
        _ => {}
    }
    if let Some(mut layer) = model.layers.pop() {
        let acts = layer.press(key, &model.context());
        return after_layer(model, layer, acts);
    }
    model.notice = None;
    if let Some(acts) = with_screen(model, |screen, cx| screen.press(key, cx)) {
        return act_all(model, acts);
    }
    everywhere(model, key)
}

/// What a layer asked for is done with the layer in its place; a form's trial follows every key.
fn after_layer(model: &mut Model, layer: Layer, acts: Vec<Act>) -> Vec<Effect> {
    let mut effects = Vec::new();
    let closing = acts.contains(&Act::Close);
    if acts.contains(&Act::Submit) {
        if let Layer::Form(form) = layer {
            return submit(model, *form);
        }
        return effects;
    }
    match layer {
        Layer::Form(form) if closing => effects.extend(put_away(model, &form)),
        Layer::Form(mut form) => {
            effects.extend(keep_form(&form));
            effects.extend(try_out(model, &mut form));
            model.layers.push(Layer::Form(form));
        }
        _ if closing => {}
        other => model.layers.push(other),
    }
    effects.extend(act_all(model, acts.into_iter().filter(|act| *act != Act::Close).collect()));
    effects
}

/// A form is closed half-filled: what was typed is kept and offered again.
fn put_away(model: &mut Model, form: &Form) -> Vec<Effect> {
    let Some(kept) = form.to_keep() else { return forget_form(model, form.kind()) };
    let name = form.called(&model.context());
    model.say(model.wording.said_draft_kept(name), Ink::Plain);
    model.kept.insert(KEPT_FORM.to_string(), kept);
    keep_form(form)
}

fn keep_form(form: &Form) -> Vec<Effect> {
    let text = form.to_keep().and_then(|kept| serde_json::to_string(&kept).ok()).unwrap_or_default();
    if text.is_empty() { Vec::new() } else { vec![Effect::Ask(Request::keep(KEPT_FORM, text))] }
}

/// Forgets the kept form of a kind, once it is written or emptied.
fn forget_form(model: &mut Model, kind: &str) -> Vec<Effect> {
    if model.kept.get(KEPT_FORM).is_none_or(|kept| kept.kind == kind) {
        model.kept.remove(KEPT_FORM);
        return vec![Effect::Ask(Request::keep(KEPT_FORM, String::new()))];
    }
    Vec::new()
}

fn try_out(model: &mut Model, form: &mut Form) -> Vec<Effect> {
    let drafts = {
        let cx = model.context();
        form.as_enter_takes_it(&cx).drafts(&cx, &model.who)
    };
    match drafts {
        Ok(drafts) => {
            let ticket = model.ticket();
            form.trying(ticket);
            vec![Effect::Ask(Request::TryOut { ticket, drafts })]
        }
        Err(_) => {
            // An answer that is still to come is of what was typed before: it is for no number any more.
            form.trying(model.ticket());
            form.tried(Tried::Nothing);
            Vec::new()
        }
    }
}

/// Enter: the form goes to the clerk and the walk goes on; where it is refused, it comes back with what was typed.
fn submit(model: &mut Model, mut form: Form) -> Vec<Effect> {
    let drafts = match form.drafts(&model.context(), &model.who) {
        Ok(drafts) => drafts,
        Err((at, sentence)) => {
            form.mend(at, sentence);
            model.layers.push(Layer::Form(Box::new(form)));
            return Vec::new();
        }
    };
    let ticket = model.ticket();
    let mut effects = vec![Effect::Ask(Request::Record { ticket, drafts, sure: form.is_sure() })];
    let (stop, sentence, at) = (form.stop().clone(), form.summary(&model.context()), form.screen());
    let kind = form.kind();
    model.pending.insert(ticket, form);
    if stop.id().is_some() {
        let acts = with_screen_at(model, at, |screen, cx| screen.handed_in(&stop, kind, &sentence, cx));
        effects.extend(act_all(model, acts));
    }
    effects
}

fn take_text(model: &mut Model, text: &str) -> Vec<Effect> {
    if let Some(mut layer) = model.layers.pop() {
        let acts = layer.text(text, &model.context());
        return after_layer(model, layer, acts);
    }
    if let Some(acts) = with_screen(model, |screen, cx| screen.text(text, cx)) {
        return act_all(model, acts);
    }
    // Text is never a command: it is looked for.
    let mut find = Find::default();
    let acts = find.text(text, &model.context());
    after_layer(model, Layer::Find(find), acts)
}

/// Keys that mean the same everywhere.
fn everywhere(model: &mut Model, key: Key) -> Vec<Effect> {
    let at = ScreenName::ALL.iter().position(|name| *name == model.at).unwrap_or(0);
    match key {
        Key::Char(digit @ '1'..='9') => {
            let name = digit.to_digit(10).and_then(|digit| ScreenName::ALL.get(digit as usize - 1));
            name.map_or_else(Vec::new, |name| act(model, Act::Screen(*name)))
        }
        Key::Tab => act(model, Act::Screen(ScreenName::ALL[(at + 1) % ScreenName::ALL.len()])),
        Key::BackTab => {
            let before = at.checked_sub(1).unwrap_or(ScreenName::ALL.len() - 1);
            act(model, Act::Screen(ScreenName::ALL[before]))
        }
        // Esc goes back, and here there is nothing to go back from.
        Key::Esc => Vec::new(),
        Key::Char('q') => {
            model.layers.push(Layer::Leaving(Leaving));
            Vec::new()
        }
        Key::Char('h' | '?') => {
            let (screen, cx) = (model.screens.at(model.at), model.context());
            let help = Help::new(screen.keys(&cx), screen.signs(&cx));
            model.layers.push(Layer::Help(help));
            Vec::new()
        }
        Key::Char('y') => match model.screens.at(model.at).why(&model.context()) {
            Some(of) => act(model, Act::Why(of)),
            None => act(model, Act::Say(model.wording.said_no_reason())),
        },
        Key::Char('f') => {
            model.layers.push(Layer::Find(Find::default()));
            Vec::new()
        }
        Key::Char('n') => act(model, Act::Kinds),
        Key::Char('d') => {
            model.layers.push(Layer::Day(AskDay::new(DayFor::Looking)));
            Vec::new()
        }
        Key::Char('b') => {
            model.layers.push(Layer::Day(AskDay::new(DayFor::Writing)));
            Vec::new()
        }
        Key::Char('e') => act(model, Act::News),
        Key::Char('u') => act(model, Act::TakeBack(Withdraws::LastCommand)),
        Key::Char('x') => act(model, Act::Switch(Switch::Contrast)),
        Key::Char('z') => {
            let options = Options { mouse: model.mouse, read_only: model.read_only };
            model.layers.push(Layer::Options(options));
            Vec::new()
        }
        Key::Char(letter) => write_about_chosen(model, letter),
        _ => Vec::new(),
    }
}

/// A letter that writes about the tray that is chosen.
fn write_about_chosen(model: &mut Model, letter: char) -> Vec<Effect> {
    let Some(kind) = kind_for_tray(letter) else { return Vec::new() };
    let chosen = model.screens.at(model.at).chosen(&model.context());
    match chosen {
        Some(subject @ Subject::Tray(_)) => {
            let form = begun(kind, Some(&subject), &model.context());
            act(model, Act::Form(form))
        }
        Some(_) | None => Vec::new(),
    }
}

fn act_all(model: &mut Model, acts: Vec<Act>) -> Vec<Effect> {
    acts.into_iter().flat_map(|one| act(model, one)).collect()
}

fn act(model: &mut Model, act: Act) -> Vec<Effect> {
    match act {
        Act::Form(asked) => open_form(model, &asked),
        Act::TakeUp(kept) => take_up(model, &kept),
        Act::Fill(kept) => fill(model, &kept),
        Act::Line(text) => {
            let (happened, who) = (model.writing_day, model.who.clone());
            vec![Effect::Ask(Request::Line { text, happened, who })]
        }
        Act::Kinds => {
            if let Some(sentence) = why_not_write(model) {
                model.say(sentence, Ink::Waits);
                return Vec::new();
            }
            let about = model.screens.at(model.at).chosen(&model.context());
            let kept = model.kept.get(KEPT_FORM).cloned();
            model.layers.push(Layer::Kinds(Kinds::new(about, kept)));
            Vec::new()
        }
        Act::Why(of) => open_why(model, of),
        Act::Go(subject) => go_to(model, &subject),
        Act::Screen(name) => {
            model.at = name;
            refresh(model)
        }
        Act::Write(drafts) => {
            if let Some(sentence) = why_not_write(model) {
                model.say(sentence, Ink::Waits);
                return Vec::new();
            }
            let ticket = model.ticket();
            // The screen asked before it handed them over.
            vec![Effect::Ask(Request::Record { ticket, drafts, sure: true })]
        }
        Act::TakeBack(what) => ask_take_back(model, what),
        Act::WriteOn(day) => {
            model.writing_day = day;
            Vec::new()
        }
        Act::Say(sentence) => {
            model.say(sentence, Ink::Plain);
            Vec::new()
        }
        Act::Entries(search, most) => {
            vec![Effect::Ask(Request::Entries { search, wording: Arc::clone(&model.wording), most })]
        }
        Act::News => {
            let day = model.book.picture.day.plus(-1);
            model.layers.push(Layer::News(News::since(day)));
            vec![Effect::Ask(Request::News(day))]
        }
        Act::Switch(switch) => switch_option(model, switch),
        Act::Ask(request) => vec![Effect::Ask(request)],
        Act::Leave => leave(model),
        Act::Close | Act::Submit => Vec::new(),
    }
}

/// Why nothing can be written now, where that is so.
fn why_not_write(model: &Model) -> Option<String> {
    if model.cannot_write() {
        return Some(model.wording.said_read_only());
    }
    (model.book.picture.looking != Looking::Today).then(|| model.wording.said_looking())
}

/// Opens a form, or says why nothing can be written.
pub(super) fn open_form(model: &mut Model, asked: &FormFor) -> Vec<Effect> {
    if let Some(sentence) = why_not_write(model) {
        model.say(sentence, Ink::Waits);
        return Vec::new();
    }
    // A form left half-filled for the same kind and thing is taken up where it was.
    if let Some(kept) = model.kept.get(KEPT_FORM).filter(|kept| same_form(kept, asked)).cloned() {
        return take_up(model, &kept);
    }
    let Some(mut form) = Form::open(asked) else { return Vec::new() };
    form.opened_from(model.at);
    let effects = try_out(model, &mut form);
    model.layers.push(Layer::Form(Box::new(form)));
    effects
}

fn same_form(kept: &KeptForm, asked: &FormFor) -> bool {
    kept.kind == asked.kind && !asked.preset.is_empty() && asked.preset.iter().all(|pair| kept.typed.contains(pair))
}

fn take_up(model: &mut Model, kept: &KeptForm) -> Vec<Effect> {
    let effects = fill(model, kept);
    if matches!(model.layers.last(), Some(Layer::Form(_))) {
        model.say(model.wording.form_is_kept(), Ink::Plain);
    }
    effects
}

/// Opens a form with what is typed in it.
fn fill(model: &mut Model, kept: &KeptForm) -> Vec<Effect> {
    let Some(mut form) = Form::take_up(kept) else { return Vec::new() };
    form.opened_from(model.at);
    let effects = try_out(model, &mut form);
    model.layers.push(Layer::Form(Box::new(form)));
    effects
}

/// A line is not taken as it is: the picker says why, and shows the lines that may be meant.
fn line_not_taken(model: &mut Model, faults: &LineFaults) {
    let (wording, first) = (Arc::clone(&model.wording), faults.listed.first());
    let lines = first.map(|fault| wording.meant_lines(&fault.reason)).unwrap_or_default();
    let open = first.map(|fault| forms_to_fill(&fault.reason)).unwrap_or_default();
    let meant = lines.into_iter().zip(open).collect();
    let sentence = first.map(|fault| wording.line_fault_alone(&fault.reason)).unwrap_or_default();
    if let Some(Layer::Kinds(kinds)) = model.layers.last_mut() {
        kinds.not_taken(sentence, meant);
    }
}

/// For each line that may be meant its form, where something of it is still missing.
fn forms_to_fill(reason: &Reason) -> Vec<Option<KeptForm>> {
    let Reason::Words { meant, .. } = reason else { return Vec::new() };
    let text = |value: &serde_json::Value| value.as_str().map_or_else(|| value.to_string(), str::to_string);
    let form = |one: &MeantEntry| {
        let first = *one.missing.first()?;
        let typed = one.fields.iter().map(|(field, value)| (field.clone(), text(value))).collect();
        let day = if one.names_its_day { one.happened.to_string() } else { String::new() };
        Some(KeptForm { kind: one.kind.to_string(), typed, day, stop: AtStop::default(), at: Some(first.to_string()) })
    };
    meant.iter().flatten().map(form).collect()
}

/// A line was read: its form opens, filled with what it says, and shows what it would do. Several entries are no form.
fn line_read(model: &mut Model, drafts: &[Draft]) -> Vec<Effect> {
    let [draft] = drafts else {
        let sentence = model.wording.kinds_line_several();
        if let Some(Layer::Kinds(kinds)) = model.layers.last_mut() {
            kinds.not_taken(sentence, Vec::new());
        }
        return Vec::new();
    };
    // An answer that comes after the picker was closed, or for a line read already, opens nothing.
    let waits = matches!(model.layers.last(), Some(Layer::Kinds(kinds)) if kinds.reads());
    if !waits {
        return Vec::new();
    }
    model.layers.pop();
    let text = |value: &serde_json::Value| value.as_str().map_or_else(|| value.to_string(), str::to_string);
    let of_another_day = draft.happened != model.writing_day.unwrap_or(model.book.now.today);
    let typed: Vec<(String, String)> = draft.body.iter().map(|(field, value)| (field.clone(), text(value))).collect();
    let kept = KeptForm {
        kind: draft.kind.clone(),
        // What nobody said is asked for first, else the field that is written at once.
        at: match typed.iter().find(|(_, value)| is_not_said(value)) {
            Some((field, _)) => Some(field.clone()),
            None => {
                begun_at(FormFor { kind: draft.kind.clone(), preset: typed.clone(), ..FormFor::default() }).begin_at
            }
        },
        typed,
        day: if of_another_day { draft.happened.to_string() } else { String::new() },
        stop: AtStop::default(),
    };
    fill(model, &kept)
}

fn open_why(model: &mut Model, of: WhyOf) -> Vec<Effect> {
    let subject = of.subject(&model.context());
    model.layers.push(Layer::Why(Why::new(of)));
    let missing = subject.filter(|subject| model.book.story_of(subject).is_none());
    missing.map_or_else(Vec::new, |subject| vec![Effect::Ask(Request::Story(subject))])
}

/// The screen that shows a subject best; the present one where it shows it.
fn go_to(model: &mut Model, subject: &Subject) -> Vec<Effect> {
    let best = match subject {
        Subject::Tray(_) => ScreenName::Trays,
        Subject::Bed(_) => ScreenName::Beds,
        Subject::Lot(_) => ScreenName::Seed,
        Subject::Place(_) | Subject::Site => ScreenName::Trays,
    };
    for name in [model.at, best] {
        model.at = name;
        if with_screen(model, |screen, cx| screen.go_to(subject, cx)) {
            break;
        }
    }
    refresh(model)
}

fn ask_take_back(model: &mut Model, what: Withdraws) -> Vec<Effect> {
    if let Some(sentence) = why_not_write(model) {
        model.say(sentence, Ink::Waits);
        return Vec::new();
    }
    let ticket = model.ticket();
    let why = model.wording.confirm_why();
    model.layers.push(Layer::Confirm(Confirm::new(what.clone(), ticket, model.who.clone(), why)));
    vec![Effect::Ask(Request::WouldTakeBack { ticket, what })]
}

fn switch_option(model: &mut Model, switch: Switch) -> Vec<Effect> {
    match switch {
        Switch::Lang => {
            let other = if model.wording.lang() == Lang::En { Lang::Es } else { Lang::En };
            model.wording = Arc::new(Wording::with_letters(other, model.wording.letters().clone()));
            model.notice = None;
        }
        Switch::Contrast => model.look.toggle_contrast(),
        Switch::Ascii => model.look.ascii = !model.look.ascii,
        Switch::ReadOnly => model.read_only = !model.read_only,
        Switch::Handbook => {
            let other = if model.book.forecast_basis == ForecastBasis::OwnRecords {
                ForecastBasis::Handbook
            } else {
                ForecastBasis::OwnRecords
            };
            return vec![Effect::Ask(Request::ForecastBasis(other))];
        }
        Switch::Mouse => {
            model.mouse = !model.mouse;
            return vec![Effect::Mouse(model.mouse)];
        }
    }
    Vec::new()
}

/// Leaves at once; a form that is open is kept.
fn leave(model: &mut Model) -> Vec<Effect> {
    let mut effects: Vec<Effect> = model
        .layers
        .iter()
        .flat_map(|layer| match layer {
            Layer::Form(form) => keep_form(form),
            _ => Vec::new(),
        })
        .collect();
    effects.push(Effect::Leave);
    effects
}

/// What was said of entries that were taken back is said no more.
fn taken_back(model: &mut Model, entries: &[Arc<Entry>]) -> Vec<Effect> {
    model.say(model.wording.said_taken_back(entries.len() as i64), Ink::Strong);
    let acts = with_screen_at(model, ScreenName::Walk, |screen, cx| screen.taken_back(entries, cx));
    act_all(model, acts)
}

fn take_answer(model: &mut Model, answer: Answer) -> Vec<Effect> {
    match answer {
        Answer::Drawn(drawn) => {
            model.book.take(drawn);
            return refresh(model);
        }
        Answer::Recorded { ticket, recorded } => return written(model, ticket, &recorded),
        Answer::Tried { ticket, outcome } => {
            let tried = match outcome {
                Ok((effects, doubts, remarks)) => Tried::Does(effects, doubts, remarks),
                Err(fault) => Tried::Refused(refusal_lines(model, &fault)),
            };
            for layer in &mut model.layers {
                if let Layer::Form(form) = layer
                    && form.ticket() == ticket
                {
                    form.tried(tried);
                    break;
                }
            }
        }
        Answer::WouldTakeBack { ticket, entries } => {
            let entries = entries.map_err(|fault| refusal_lines(model, &fault));
            for layer in &mut model.layers {
                if let Layer::Confirm(confirm) = layer
                    && confirm.ticket == ticket
                {
                    match entries {
                        Ok(entries) => confirm.found(entries),
                        Err(lines) => confirm.refused(lines),
                    }
                    break;
                }
            }
        }
        Answer::TookBack(taken) => return taken_back(model, &taken.entries),
        Answer::Asks { ticket, doubts, remarks } => return asks(model, ticket, &doubts, &remarks),
        Answer::Refused { ticket, fault } => return refused(model, ticket, &fault),
        Answer::NotRead(fault) => {
            let lines = refusal_lines(model, &fault);
            model.say(lines.join(" "), Ink::Danger);
        }
        Answer::Story(subject, entries) => model.book.story = Some((subject, entries)),
        Answer::Line(Ok(drafts)) => return line_read(model, &drafts),
        Answer::Line(Err(faults)) => line_not_taken(model, &faults),
        Answer::Entries(found) => {
            model.book.found = Some(found);
            return refresh(model);
        }
        // Drawn before something was written or another day was looked at.
        Answer::YearDay(asked, _) if asked.generation != model.book.generation => {}
        Answer::YearDay(asked, day) => {
            if model.book.year.as_ref().is_none_or(|(of, _)| *of != asked) {
                model.book.year = Some((asked, std::collections::BTreeMap::new()));
            }
            if let Some((_, days)) = &mut model.book.year {
                days.insert(day.day, *day);
            }
        }
        // Reckoned before something was written, or of another bed than the one that is shown now.
        Answer::LightMonth(asked, ..) if asked.generation != model.book.generation => {}
        Answer::LightMonth(asked, at, month) => model.book.take_light(asked, at, *month),
        Answer::News(changed, before, entries) => {
            let lines = super::layer::news_words(&changed, &before, &entries, &model.context());
            for layer in &mut model.layers {
                if let Layer::News(news) = layer {
                    news.found(lines);
                    break;
                }
            }
        }
    }
    Vec::new()
}

fn refusal_lines(model: &Model, fault: &DeskError) -> Vec<String> {
    model.wording.desk_error(fault, &model.file, &model.book.picture.site.species)
}

/// It is in the file: now, and not before, it is said.
fn written(model: &mut Model, ticket: u64, recorded: &Recorded) -> Vec<Effect> {
    let doubts = &recorded.doubts;
    let form = model.pending.remove(&ticket);
    // What a screen wrote without a form is named by how many entries it took.
    let entries = || model.wording.entries(recorded.entries.len() as i64);
    let what = form.as_ref().map_or_else(entries, |form| form.told(&model.context()));
    let sentence = match doubts.first() {
        Some(doubt) => {
            let doubt = model.wording.doubt(doubt, &model.book.picture.site.species);
            model.wording.said_saved_doubt(what, doubt)
        }
        None => model.wording.said_saved(what),
    };
    let ink = if doubts.is_empty() { Ink::Strong } else { Ink::Waits };
    model.say(sentence, ink);
    let Some(form) = form else { return Vec::new() };
    let mut effects = forget_form(model, form.kind());
    let (stop, at) = (form.stop().clone(), form.screen());
    if stop.id().is_some() {
        let acts = with_screen_at(model, at, |screen, cx| screen.written(&stop, cx));
        effects.extend(act_all(model, acts));
    }
    // Who types on already is not held up by what usually goes with it.
    let next = goes_with(&form, &model.context()).filter(|_| model.layers.is_empty());
    if let Some(next) = next {
        effects.extend(act(model, Act::Form(next)));
    }
    effects
}

/// It is not in the file: the form comes back with what was typed, and why.
fn refused(model: &mut Model, ticket: u64, fault: &DeskError) -> Vec<Effect> {
    let lines = refusal_lines(model, fault);
    match model.pending.remove(&ticket) {
        Some(mut form) => {
            // On top it says why itself; under a form that is typed in, the line of messages does.
            let said = match types_ahead(model) {
                true => model.wording.said_refused(lines.join(" ")),
                false => model.wording.said_not_written(),
            };
            model.say(said, Ink::Danger);
            form.refused(lines);
            form.go_to_fault(fault);
            return come_back(model, form);
        }
        None => model.say(model.wording.said_refused(lines.join(" ")), Ink::Danger),
    }
    Vec::new()
}

/// It is not in the file yet: the form comes back with what would be doubted, and the next Enter writes it.
fn asks(model: &mut Model, ticket: u64, doubts: &[Doubt], remarks: &[Remark]) -> Vec<Effect> {
    let Some(mut form) = model.pending.remove(&ticket) else { return Vec::new() };
    form.ask(&model.wording);
    let first = doubts.first().map(|doubt| model.wording.doubt(doubt, &model.book.picture.site.species));
    let first = first.or_else(|| remarks.first().map(|remark| model.wording.remark(remark, model.book.picture.day)));
    model.say(first.unwrap_or_default(), Ink::Waits);
    come_back(model, form)
}

/// A form lies open again, and its screen hears of it.
fn come_back(model: &mut Model, form: Form) -> Vec<Effect> {
    let (stop, at) = (form.stop().clone(), form.screen());
    put_back(model, form);
    if stop.id().is_none() {
        return Vec::new();
    }
    let acts = with_screen_at(model, at, |screen, cx| screen.came_back(&stop, cx));
    act_all(model, acts)
}

/// A form that came back lies under one that is being typed in, so that no digit falls into the wrong one.
fn put_back(model: &mut Model, form: Form) {
    let at = model.layers.len() - usize::from(types_ahead(model));
    model.layers.insert(at, Layer::Form(Box::new(form)));
}

/// Whether a person types in another form already.
fn types_ahead(model: &Model) -> bool {
    matches!(model.layers.last(), Some(Layer::Form(above)) if above.to_keep().is_some())
}
