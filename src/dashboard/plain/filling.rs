//! A form gone through in questions: what must be there one after the other, then what it does, then yes or no.

use std::io::{self, BufRead, Write};

use super::Talk;
use super::command::is_yes;
use crate::base::text::folded;
use crate::dashboard::form::Form;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::message::Message;
use crate::nursery::entry::shape::{Field, Shape};

/// Kinds that one figure says all of: they are written without being asked about once more.
const SIMPLE: [&str; 3] = ["counted", "weather", "plug_checked"];
/// Enter is pressed so often at most until a form is handed in: rows are taken in and fields gone through first.
const ENTERS: usize = 8;

/// What a person says to a form that is filled.
enum Agreed {
    /// Write it.
    Yes,
    /// Leave it.
    No,
    /// The fields that may be left empty, too.
    More,
    /// It would be refused.
    Mend,
}

impl<R: BufRead, W: Write> Talk<R, W> {
    /// The form that lies uppermost.
    fn form(&self) -> Option<&Form> {
        if let Some(Layer::Form(form)) = self.model.layers.last() { Some(form) } else { None }
    }

    /// Goes through the form that lies uppermost.
    pub(super) fn fill(&mut self) -> io::Result<()> {
        let heading = self.form().map(|form| form.heading(&self.model.context())).unwrap_or_default();
        self.say(&heading)?;
        self.tell_care()?;
        let way_out = self.model.wording.plain_way_out();
        self.say(&way_out)?;
        let mut places = self.first_places();
        loop {
            if !self.ask_fields(&places)? {
                return self.leave_form();
            }
            match self.agreed()? {
                Agreed::Yes => {}
                Agreed::No => return self.leave_form(),
                Agreed::More => {
                    places = self.other_places();
                    continue;
                }
                Agreed::Mend => {
                    places = self.first_places();
                    if places.is_empty() {
                        return self.leave_form();
                    }
                    continue;
                }
            }
            let (kind, stop) = self.form().map(|form| (form.kind(), form.stop().clone())).unwrap_or_default();
            self.hand_in();
            // A form that was refused has come back with what was typed; another one goes with what was written.
            let Some(form) = self.form() else { return Ok(()) };
            if (form.kind(), form.stop()) != (kind, &stop) {
                self.tell_notice()?;
                return self.fill();
            }
            let against = form.against();
            self.model.notice = None;
            against.iter().try_for_each(|line| self.say(line))?;
            places = self.first_places();
            if places.is_empty() {
                return self.leave_form();
            }
        }
    }

    /// What could hurt somebody; what was said at the stop already is not said again.
    fn tell_care(&mut self) -> io::Result<()> {
        let Some(form) = self.form() else { return Ok(()) };
        let cx = self.model.context();
        if form.stop_it_does(&cx).is_some() {
            return Ok(());
        }
        let lines: Vec<String> =
            form.care(&cx).into_iter().map(|(label, line)| cx.wording.caution_line(label, line)).collect();
        lines.iter().try_for_each(|line| self.say(line))
    }

    fn leave_form(&mut self) -> io::Result<()> {
        self.close();
        let sentence = self.model.wording.plain_left();
        self.say(&sentence)?;
        self.tell_notice()
    }

    /// The fields asked first: those that must be there and are not known, proposals that may be otherwise, and the one the
    /// form begins with.
    fn first_places(&self) -> Vec<usize> {
        let Some(form) = self.form() else { return Vec::new() };
        let about = form.about_place();
        let begin = form.begin_place();
        let fields = form.fields();
        let wanted = |at: usize, field: &Field, value: &str| {
            let proposal = matches!(field.shape, Shape::Count | Shape::Number { .. } | Shape::Code(_));
            let needed = field.required && (value.is_empty() || proposal);
            (needed && Some(at) != about) || at == begin || form.goes_together(field.name)
        };
        let all = fields.iter().enumerate().filter(|(at, (field, value))| wanted(*at, field, value));
        let mut places: Vec<usize> =
            all.map(|(at, _)| at).filter(|at| *at < fields.len() && !is_known_choice(&fields[*at])).collect();
        // What one stands there to write comes first: how many, before into which tray.
        let counts = |at: &usize| matches!(fields[*at].0.shape, Shape::Count) || *at == begin;
        places.sort_by_key(|at| !counts(at));
        places
    }

    /// The fields that may be left empty and were not asked yet.
    fn other_places(&self) -> Vec<usize> {
        let first = self.first_places();
        let fields = self.form().map(Form::fields).unwrap_or_default();
        (0..fields.len()).filter(|at| !first.contains(at) && !fields[*at].0.required).collect()
    }

    /// Asks fields one after the other; false where the form is left.
    fn ask_fields(&mut self, places: &[usize]) -> io::Result<bool> {
        for at in places {
            loop {
                let Some((field, value)) = self.form().and_then(|form| form.fields().get(*at).cloned()) else {
                    return Ok(false);
                };
                let Some(answer) = self.ask_field(*at, &field, &value)? else { return Ok(false) };
                if answer.is_empty() {
                    if field.required && value.is_empty() {
                        return Ok(false);
                    }
                    break;
                }
                if answer == "?" {
                    self.tell_field(*at)?;
                    continue;
                }
                if is_leaving(&answer, &self.model.wording.plain_quit()) {
                    return Ok(false);
                }
                if self.is_a_number_for_a_name(*at, &field, &answer) {
                    let sentence = self.model.wording.plain_name_wanted(&answer);
                    self.say(&sentence)?;
                    continue;
                }
                self.answer(*at, &answer);
                match self.fault_at(*at) {
                    None => break,
                    Some(sentence) => {
                        self.answer(*at, &value);
                        self.say(&sentence)?;
                    }
                }
            }
        }
        Ok(true)
    }

    /// Whether a bare number was answered where a name is asked, nothing is called so and the list has none of that number.
    fn is_a_number_for_a_name(&self, at: usize, field: &Field, answer: &str) -> bool {
        let (Some(form), Ok(number)) = (self.form(), answer.parse::<usize>()) else { return false };
        let cx = self.model.context();
        let picks = form.numbers_pick(at) && number >= 1 && number <= form.offered_first(at, &cx).len();
        matches!(field.shape, Shape::Code(_)) && !picks && !form.is_named(at, answer, &cx)
    }

    /// Asks one field: its name, what may stand there, and what does stand there; rows until an empty one.
    fn ask_field(&mut self, at: usize, field: &Field, value: &str) -> io::Result<Option<String>> {
        let wording = &self.model.wording;
        let Some(form) = self.form() else { return Ok(None) };
        let title = wording.field_title_of(form.kind(), field.name);
        let choices = form.choices_at(at);
        let offered = if choices.is_empty() {
            form.offered_first(at, &self.model.context())
        } else {
            choices.iter().map(|choice| wording.choice_name(choice)).collect()
        };
        let numbered = !choices.is_empty() || form.numbers_pick(at);
        if !offered.is_empty() {
            let list: Vec<String> = offered
                .iter()
                .enumerate()
                .map(|(i, name)| if numbered { format!("{} {name}", i + 1) } else { name.clone() })
                .collect();
            self.say(&list.join(", "))?;
        }
        let question = if value.is_empty() { format!("{title}:") } else { format!("{title} [{value}]:") };
        if !matches!(field.shape, Shape::List(Shape::Record(_))) {
            return self.ask(&question);
        }
        self.tell_field(at)?;
        self.ask_rows(at, &question)
    }

    fn ask_rows(&mut self, at: usize, question: &str) -> io::Result<Option<String>> {
        let mut rows: Vec<String> = Vec::new();
        loop {
            let Some(row) = self.ask(&format!("{question} {}", rows.len() + 1))? else { return Ok(None) };
            if row.is_empty() {
                return Ok(Some(rows.join("\n")));
            }
            if row == "?" {
                self.tell_field(at)?;
                continue;
            }
            rows.push(row);
            self.answer(at, &rows.join("\n"));
            let so_far = self.form().and_then(|form| form.sample_words(&self.model.context()));
            if let Some(sentence) = so_far {
                self.say(&sentence)?;
            }
        }
    }

    fn tell_field(&mut self, at: usize) -> io::Result<()> {
        let sentence = self.form().map(|form| form.hint_at(at, &self.model.context())).unwrap_or_default();
        self.say(&sentence)
    }

    /// Puts an answer into a field and has it tried out.
    fn answer(&mut self, at: usize, answer: &str) {
        match self.model.layers.pop() {
            Some(Layer::Form(mut form)) => {
                form.answer(at, answer, &self.model.context());
                self.model.layers.push(Layer::Form(form));
                self.send(Message::Key(Form::STILL));
            }
            Some(other) => self.model.layers.push(other),
            None => {}
        }
    }

    /// What is wrong with what stands in a field, where it cannot be read.
    fn fault_at(&self, at: usize) -> Option<String> {
        let fault = self.form()?.drafts(&self.model.context(), &self.model.who).err()?;
        (fault.0 == Some(at)).then_some(fault.1)
    }

    /// Says what the form would do and asks whether to write it; a simple count that nothing speaks against is written.
    fn agreed(&mut self) -> io::Result<Agreed> {
        self.send(Message::Key(Form::STILL));
        let Some(form) = self.form() else { return Ok(Agreed::No) };
        let against = match form.drafts(&self.model.context(), &self.model.who) {
            Err((_, sentence)) => vec![sentence],
            Ok(_) => form.against(),
        };
        if !against.is_empty() {
            against.iter().try_for_each(|line| self.say(line))?;
            return Ok(Agreed::Mend);
        }
        if SIMPLE.contains(&form.kind()) && !form.raises_doubt() {
            return Ok(Agreed::Yes);
        }
        let effect = format!("{}:", self.model.wording.form_effect());
        let lines = form.outcome(&self.model.context());
        std::iter::once(effect).chain(lines).try_for_each(|line| self.say(&line))?;
        let question = self.model.wording.plain_write_it();
        let answer = self.ask(&question)?.unwrap_or_default();
        Ok(match folded(&answer).as_str() {
            "m" => Agreed::More,
            other if is_yes(other) => Agreed::Yes,
            _ => Agreed::No,
        })
    }

    /// Hands the form in, as Enter does.
    fn hand_in(&mut self) {
        let kind = self.form().map(Form::kind);
        if let Some(Layer::Form(form)) = self.model.layers.last_mut() {
            form.be_sure();
        }
        for _ in 0..ENTERS {
            let before = self.model.pending.len();
            self.send(Message::Key(Key::Enter));
            let refused = self.form().is_some_and(|form| !form.against().is_empty());
            if self.form().map(Form::kind) != kind || refused || self.model.pending.len() != before {
                return;
            }
        }
    }
}

/// A choice that the stop itself says, as the task of ground work.
fn is_known_choice((field, value): &(Field, String)) -> bool {
    matches!(field.shape, Shape::Word(_) | Shape::Flag) && !value.is_empty()
}

fn is_leaving(answer: &str, quit: &str) -> bool {
    let sentence = folded(answer);
    sentence == "q" || sentence == folded(quit)
}
