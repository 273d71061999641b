//! A form drawn: its heading, its fields with the one that has the keys always in view, what fits there, and what it does.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::Modifier;

use super::field::FieldLine;
use super::outcome::outcome_words;
use super::suggest::may_be_new;
use super::{Form, Tried};
use crate::base::TrayCode;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Sheet, scroll_marks, width_of};
use crate::nursery::entry::shape::{Field, Shape};
use crate::wording::Wording;

/// Between names that are offered.
const BETWEEN_NAMES: &str = " · ";
/// A least value that only keeps nought out.
const TINY: f64 = 0.001;
/// A row of each list, as it is typed.
const ROWS_FOR_INSTANCE: [(&str, &str); 4] =
    [("plants", "24.5 3.1 6"), ("readings", "12000 40000"), ("replicates", "50 38"), ("rains", "10-15 12-20")];
/// The widest column of field names.
const LABEL_MOST: usize = 30;
/// Rows of a form that its lines of care leave to the heading, the fields and what it does.
const CARE_LEAVES: usize = 9;
/// Fields that are shown at the least, the one with the keys among them.
const FIELDS_LEAST: usize = 3;
/// Rows beside what speaks against a form: its heading, the field with the keys, a gap.
const AGAINST_LEAVES: usize = 3;

impl Form {
    /// Draws the form over the whole area.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        if area.height == 0 {
            return;
        }
        buffer.set_stringn(area.x, area.y, self.heading(cx), usize::from(area.width), Ink::Strong.style());
        let height = usize::from(area.height);
        // What it does counts before what may stand in a field.
        let whole = self.below(cx, area.width, true);
        let tight = whole.height() + FIELDS_LEAST + 2 > height;
        let below = if tight { self.below(cx, area.width, false) } else { whole };
        // What speaks against it is said whole, and before all else.
        let against = !self.against().is_empty();
        let leaves = if against { AGAINST_LEAVES + below.height() } else { CARE_LEAVES };
        let care = self.care_sheet(cx, area.width, height.saturating_sub(leaves.max(CARE_LEAVES)));
        let under_heading = Rect { y: area.y + 1, height: area.height - 1, ..area };
        care.draw(0, under_heading, buffer);
        let care_rows = care.height() as u16;
        let area = Rect { y: area.y + care_rows, height: area.height - care_rows, ..area };
        let fields: Vec<usize> = (0..self.lines.len()).filter(|at| !self.is_hidden(*at)).collect();
        let rows = fields.len() + 1;
        let room = usize::from(area.height).saturating_sub(2);
        // What it does keeps its place below; the fields get the rest, and at least three lines, or the one with the keys.
        let least = if against { 1 } else { FIELDS_LEAST };
        let fields_room = rows.min(room.saturating_sub(below.height()).max(room.min(least))).max(1);
        self.draw_fields(&fields, fields_room, cx, area, buffer);
        let top = area.y + 1 + fields_room as u16 + 1;
        if top < area.bottom() {
            let rest = Rect { y: top, height: area.bottom() - top, ..area };
            below.draw(0, rest, buffer);
        }
    }

    /// The fields around the one with the keys, in so many lines; the day is always the last of them.
    fn draw_fields(&self, fields: &[usize], room: usize, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let label = self.label_room(cx, area.width);
        let mut draw = |row: usize, i: usize| {
            let line = Rect { y: area.y + 1 + row as u16, height: 1, ..area };
            if line.y < area.bottom() {
                self.draw_field(i, label, cx, line, buffer);
            }
        };
        if room < 2 {
            draw(0, self.at);
            return;
        }
        let window = (room - 1).min(fields.len());
        let shown = self.fields_in_view(fields, window);
        for (row, i) in shown.iter().enumerate() {
            draw(row, *i);
        }
        draw(window, self.lines.len());
        let seen = Rect { y: area.y + 1, height: (window as u16).min(area.height.saturating_sub(1)), ..area };
        let (above, below) = (shown.first() != fields.first(), shown.last() != fields.last());
        let between = !above && !below && shown.len() < fields.len();
        scroll_marks(above, below || between, seen, buffer);
    }

    /// The fields that have room: all that hold something and the one with the keys where they have, so that nothing is
    /// written unseen; else those around the one with the keys.
    fn fields_in_view(&self, fields: &[usize], window: usize) -> Vec<usize> {
        let at = fields.iter().position(|at| *at == self.at).unwrap_or(fields.len().saturating_sub(1));
        let first = (at + 1).saturating_sub(window).min(fields.len() - window);
        let around = || fields.iter().skip(first).take(window).copied().collect::<Vec<usize>>();
        let counts = |i: &usize| *i == self.at || self.lines.get(*i).is_some_and(|line| !line.value().is_empty());
        let mut shown: Vec<usize> = fields.iter().filter(|i| counts(i)).copied().collect();
        if shown.len() > window {
            return around();
        }
        let others = fields[at..].iter().chain(fields[..at].iter().rev()).filter(|i| !counts(i));
        shown.extend(others.take(window - shown.len()));
        shown.sort_unstable();
        shown
    }

    fn label_room(&self, cx: &ScreenContext<'_>, width: u16) -> usize {
        let widest = self.lines.iter().map(|line| width_of(&self.label(line, cx))).max().unwrap_or(0);
        widest.min(LABEL_MOST).min(usize::from(width) / 2)
    }

    fn label(&self, line: &FieldLine, cx: &ScreenContext<'_>) -> String {
        if line.field.name == "until" && self.is_done_by_letting_go(cx) {
            return cx.wording.let_go_ask_again();
        }
        let name = cx.wording.field_title_of(self.kind(), line.field.name);
        // The names of a row's fields stand in its hint.
        if line.row_fields().is_some() { name.split(':').next().unwrap_or_default().to_string() } else { name }
    }

    fn draw_field(&self, i: usize, label_room: usize, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let has_keys = i == self.at;
        let (name, missing) = match self.lines.get(i) {
            Some(line) => (self.label(line, cx), line.field.required && line.value().is_empty()),
            None => (cx.wording.form_day(), false),
        };
        let mark = if has_keys {
            ">"
        } else if missing {
            "*"
        } else {
            " "
        };
        buffer.set_string(area.x, area.y, mark, Ink::Strong.style());
        let ink = if has_keys { Ink::Strong } else { Ink::Plain };
        // Where the unit has no room, the name stands whole.
        let name = if width_of(&name) > label_room { name.split(", ").next().unwrap_or_default() } else { &name };
        let shown = Sheet::shortened(name, label_room);
        buffer.set_string(area.x + 2, area.y, shown, ink.style());
        let x = area.x + 2 + label_room as u16 + 2;
        let value = Rect { x, width: area.right().saturating_sub(x), ..area };
        match self.lines.get(i) {
            Some(line) => self.draw_value(line, has_keys, cx, value, buffer),
            None if self.day.is_empty() && !has_keys => {
                let day = cx.writing_day.map_or_else(|| cx.wording.form_today(), |day| cx.wording.day(day));
                buffer.set_stringn(value.x, value.y, day, usize::from(value.width), Ink::Quiet.style());
            }
            None => self.day.draw(value, buffer, has_keys),
        }
    }

    fn draw_value(&self, line: &FieldLine, has_keys: bool, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        if !line.choices().is_empty() {
            let typed = line.typed.text();
            let name = if typed.is_empty() { String::new() } else { cx.wording.choice_name(&typed) };
            let shown = if has_keys { format!("‹ {name} ›") } else { name };
            buffer.set_stringn(area.x, area.y, shown, usize::from(area.width), Ink::Plain.style());
            return;
        }
        if line.is_not_said() {
            let said = cx.wording.text_told(&line.value());
            buffer.set_stringn(area.x, area.y, said, usize::from(area.width), Ink::Quiet.style());
            if has_keys && let Some(cell) = buffer.cell_mut((area.x, area.y)) {
                cell.modifier.insert(Modifier::REVERSED);
            }
            return;
        }
        let mut x = area.x;
        if line.row_fields().is_some() && !line.rows.is_empty() {
            let rows = format!("{}  ", cx.wording.form_rows(line.rows.len() as i64));
            buffer.set_stringn(x, area.y, &rows, usize::from(area.width), Ink::Plain.style());
            x += width_of(&rows) as u16;
        }
        line.typed.draw(Rect { x, width: area.right().saturating_sub(x), ..area }, buffer, has_keys);
    }

    /// What stands under the fields: why it was refused, what fits in the field, what it does.
    fn below(&self, cx: &ScreenContext<'_>, width: u16, hints: bool) -> Sheet {
        let wording = cx.wording;
        let mut page = Sheet::new(width);
        for message in &self.fault {
            page.hanging("x ", Ink::Danger, message, Ink::Strong);
        }
        if let Tried::Refused(lines) = &self.tried
            && self.fault.is_empty()
        {
            lines.iter().for_each(|message| page.hanging("x ", Ink::Danger, message, Ink::Strong));
        }
        if let Some(line) = self.lines.get(self.at) {
            self.rows_and_sample(line, cx, &mut page);
            self.tell_book(line, cx, &mut page);
            self.offer(line, hints, cx, &mut page);
            self.tell_completed(cx, &mut page);
        } else if hints {
            page.paragraph(&wording.form_day_hint(), Ink::Quiet);
        }
        if self.lines.iter().any(|line| line.field.required && line.value().is_empty()) {
            page.paragraph(&wording.form_star(), Ink::Quiet);
        }
        match &self.tried {
            Tried::Nothing | Tried::Refused(_) => {}
            Tried::Waiting => page.paragraph(&wording.outcome_looking(), Ink::Quiet),
            Tried::Does(effects, doubts, remarks) => {
                page.heading(&wording.form_effect());
                outcome_words(effects, cx)
                    .iter()
                    .for_each(|message| page.hanging("  ", Ink::Plain, message, Ink::Plain));
                for doubt in doubts {
                    let message = wording.doubt(doubt, &cx.book.picture.site.species);
                    page.hanging("! ", Ink::Waits, &message, Ink::Plain);
                }
                for remark in remarks {
                    page.hanging("! ", Ink::Waits, &wording.remark(remark, cx.day()), Ink::Plain);
                }
                self.tell_unknown(cx, &mut page);
            }
        }
        page
    }

    fn rows_and_sample(&self, line: &FieldLine, cx: &ScreenContext<'_>, page: &mut Sheet) {
        if line.row_fields().is_none() {
            return;
        }
        const NEWEST_ROWS: usize = 4;
        let from = line.rows.len().saturating_sub(NEWEST_ROWS);
        for (i, row) in line.rows.iter().enumerate().skip(from) {
            page.hanging(&format!("{:>3}  ", i + 1), Ink::Quiet, row, Ink::Plain);
        }
        if let Some(typed) = self.light_for_readings() {
            let light = cx.wording.field_title_of(self.kind(), "light_share");
            let asked = cx.wording.form_light_for_readings(typed.trim_end_matches(['%', ' ']), light);
            page.hanging("! ", Ink::Waits, &asked, Ink::Strong);
        }
        if let Some(message) = self.sample_words(cx).filter(|_| line.field.name == "plants") {
            page.paragraph(&message, Ink::Strong);
        }
    }

    /// What the book says of the tray that is counted or taken from: what one counts against.
    fn tell_book(&self, line: &FieldLine, cx: &ScreenContext<'_>, page: &mut Sheet) {
        let counts = matches!(line.field.shape, Shape::Count) && matches!(line.field.name, "standing" | "count");
        let code = self.typed("tray").or_else(|| self.typed("from")).and_then(|code| TrayCode::new(&code).ok());
        let tray = code.and_then(|code| cx.book.picture.trays.get(&code)).filter(|_| counts);
        if let Some(tray) = tray {
            let stands = cx.wording.form_in_book(tray.standing);
            let counted = tray.counted_on.map(|day| cx.wording.form_counted_on(cx.wording.day_beside(day, cx.day())));
            page.paragraph(&[Some(stands), counted].into_iter().flatten().collect::<Vec<_>>().join(", "), Ink::Strong);
        }
    }

    /// What stays unknown where a field is left empty.
    fn tell_unknown(&self, cx: &ScreenContext<'_>, page: &mut Sheet) {
        if self.kind() != "moved_on" {
            return;
        }
        if self.typed("place").is_none() {
            page.hanging("! ", Ink::Waits, &cx.wording.form_no_place(), Ink::Plain);
        }
    }

    /// What was taken for what was typed, or the only name that fits it.
    fn tell_completed(&self, cx: &ScreenContext<'_>, page: &mut Sheet) {
        if let Some(done) = self
            .completed
            .as_ref()
            .filter(|done| done.at == self.at && self.lines.get(done.at).is_some_and(|line| line.value() == done.is))
        {
            page.hanging("! ", Ink::Waits, &cx.wording.form_completed(&done.typed, &done.is), Ink::Strong);
        }
    }

    /// What may stand in the field that has the keys.
    fn offer(&self, line: &FieldLine, hints: bool, cx: &ScreenContext<'_>, page: &mut Sheet) {
        let wording = cx.wording;
        let choices = line.choices();
        if !choices.is_empty() {
            let names =
                choices.iter().enumerate().map(|(i, choice)| format!("{} {}", i + 1, wording.choice_name(choice)));
            page.paragraph(&names.collect::<Vec<_>>().join(BETWEEN_NAMES), Ink::Plain);
        }
        let picks = self.picks(cx);
        if !picks.is_empty() {
            let numbered = line.takes_picks_by_digit() && line.is_open();
            let list: Vec<String> = picks
                .iter()
                .enumerate()
                .map(|(i, pick)| if numbered { format!("{} {pick}", i + 1) } else { pick.clone() })
                .collect();
            page.paragraph(&list.join(BETWEEN_NAMES), Ink::Plain);
            let meant = super::suggest::only_one_meant(line, self.kind(), &|name| self.typed(name), cx);
            if let ([only], false) = (meant.as_slice(), line.is_open()) {
                page.paragraph(&wording.form_only_fit(only), Ink::Quiet);
            }
            return;
        }
        if hints {
            page.paragraph(&hint_of(line, self.kind(), wording), Ink::Quiet);
        }
    }

    /// What may stand in a field, in words.
    pub(crate) fn hint_at(&self, at: usize, cx: &ScreenContext<'_>) -> String {
        self.lines.get(at).map(|line| hint_of(line, self.kind(), cx.wording)).unwrap_or_default()
    }
}

fn hint_of(line: &FieldLine, kind: &str, wording: &Wording) -> String {
    let hint = match line.field.shape {
        Shape::Text if line.field.name == "rows" => wording.form_rows_hint(),
        Shape::Number { .. } if line.is_share() => wording.form_share_hint(),
        Shape::Count => wording.form_count_hint(),
        Shape::Number { least, most, .. } if least > 0.0 && least <= TINY => match most < 1e6 {
            true => wording.form_number_hint_above(wording.number(most, 3)),
            false => wording.form_number_hint_above_nought(),
        },
        Shape::Number { least, most, .. } if most < 1e6 => {
            wording.form_number_hint(wording.number(least, 3), wording.number(most, 3))
        }
        Shape::Number { least, .. } => wording.form_number_hint_least(wording.number(least, 3)),
        Shape::Day => wording.form_day_hint(),
        Shape::MonthDay => wording.form_month_day_hint(),
        Shape::Word(_) | Shape::Flag => wording.form_choice_hint(),
        Shape::Spot => wording.form_spot_hint(),
        Shape::List(Shape::Record(fields)) if line.field.name == "plan" => {
            // The example first: where there is little room the end is not seen. In brackets what may be left out.
            let name = |field: &Field| wording.field_title(field.name).replace(", ", " ").to_lowercase();
            let of = |needed: bool| fields.iter().filter(move |field| field.required == needed).map(name);
            let (needed, more): (Vec<String>, Vec<String>) = (of(true).collect(), of(false).collect());
            let names = format!("{} [{}]", needed.join(", "), more.join(", "));
            format!("{}; {}", wording.form_plan_example(), wording.form_row_hint(names))
        }
        Shape::List(Shape::Record(fields)) => {
            // The unit stands behind the name: "height cm, collar mm".
            let name = |field: &Field| wording.field_title(field.name).replace(", ", " ").to_lowercase();
            let names: Vec<String> = fields.iter().map(name).collect();
            let hint = wording.form_row_hint(names.join(", "));
            let example = ROWS_FOR_INSTANCE.iter().find(|(list, _)| *list == line.field.name);
            example.map_or(hint.clone(), |(_, row)| format!("{hint}; {}", wording.form_row_example(row)))
        }
        Shape::List(Shape::Spot) => wording.form_spot_hint(),
        Shape::List(_) => wording.form_list_hint(),
        Shape::Open => wording.form_open_hint(),
        Shape::Code(_) if may_be_new(line.field.name, kind) => wording.form_new_name_hint(),
        Shape::Code(_) => wording.form_name_hint(),
        Shape::Species | Shape::Text | Shape::Clock | Shape::Entry | Shape::Record(_) => wording.form_text_hint(),
    };
    let optional = if line.field.required { String::new() } else { format!("; {}", wording.form_optional()) };
    format!("{hint}{optional}")
}
