//! Lines in a person's own words: why one is not written as it is, and the lines that may be meant, ready to copy.

use serde_json::Value;

use crate::desk::{Meant, Reason, Why};
use crate::nursery::entry::fields::find_field;
use crate::nursery::entry::in_spanish::{field_in_spanish, kind_in_spanish};
use crate::nursery::entry::shape::Shape;
use crate::nursery::entry::{all_kinds, kind_of_entry};
use crate::nursery::species::Catalogue;
use crate::wording::{Lang, Wording};

/// Reasons that are told of one line; the first ones matter most.
const MOST_REASONS: usize = 2;

impl Wording {
    /// Why a line is not written, and that lines follow which may be meant.
    pub(crate) fn not_written_as(&self, why: &[Why], meant: &[Vec<Meant>]) -> String {
        let said: Vec<String> = why.iter().take(MOST_REASONS).map(|why| self.why_not_written(why)).collect();
        let said = said.join("; ");
        if meant.is_empty() {
            return said;
        }
        let bare = if said.ends_with(['.', '?']) { said } else { format!("{said}.") };
        let is_open = |one: &Meant| {
            let is_left_out = one.fields.values().any(|value| value == NOT_SAID);
            !one.missing.is_empty() || is_left_out && self.short_line(one).is_none()
        };
        if meant.iter().flatten().any(is_open) { self.words_to_fill(bare) } else { self.words_meant(bare) }
    }

    /// The lines that may be meant, ready to copy; none where none is.
    pub(crate) fn meant_lines(&self, reason: &Reason) -> Vec<String> {
        let Reason::Words { meant, .. } = reason else { return Vec::new() };
        meant.iter().flatten().map(|one| self.line_meaning(one)).collect()
    }

    fn why_not_written(&self, why: &Why) -> String {
        match why {
            Why::NotDone(word) => self.why_not_done(word),
            Why::Intent(word) => self.why_intent(word),
            Why::Coming(word) => self.why_coming(word),
            Why::Unsure(word) => self.why_unsure(word),
            Why::Question(names) if names.is_empty() => self.why_question(),
            Why::Question(names) => self.why_question_of(names.join(", ")),
            Why::NoNumber => self.why_no_number(),
            Why::NotWhole(value) => self.why_not_whole(self.number(*value, 3)),
            Why::Range(low, high) => self.why_range(self.number(*low, 3), self.number(*high, 3)),
            Why::UnknownName(name, near) => self.nearest_after(self.why_unknown_name(name), near),
            Why::NoTray => self.why_no_tray(),
            Why::NoPlace => self.why_no_place(),
            Why::NoLot => self.why_no_lot(),
            Why::NoRemedy => self.why_no_remedy(),
            Why::NoUnit("h") => self.why_no_hours(),
            Why::NoUnit(units) => self.why_no_unit(units),
            Why::EachOrAll(trays) => self.why_each_or_all(trays.join(", ")),
            Why::BadDay(day) => self.why_bad_day(day),
            Why::FarOpen(day) => self.why_far_open(day),
            Why::SeveralDays(days) => self.why_several_days(days.join(", ")),
            Why::SomeHoles(holes, Some(places)) => self.why_some_holes(*holes, *places),
            Why::SomeHoles(holes, None) => self.why_some_holes_of(*holes),
            Why::WeedsOrAll(word) => self.why_weeds_or_all(word),
            Why::OverHalf(standing) => self.why_over_half(*standing),
            Why::MoreThanThere(there) => self.why_more_than_there(*there),
            Why::InUse(name) => self.why_in_use(name),
            Why::Crossed(low, high) => self.why_crossed(self.number(*low, 1), self.number(*high, 1)),
            Why::WholeOrPart(seen, all) => self.why_whole_or_part(self.number(*seen, 0), self.number(*all, 0)),
            Why::MoreThanAll(alive, all) => self.why_more_than_all(self.number(*alive, 0), self.number(*all, 0)),
            Why::Both(name) => self.why_both(name),
            Why::NoneThere(plant, bed) => self.why_none_there(plant, bed),
            Why::Several => self.why_several(),
            Why::NotSaid(field) => self.why_not_said(self.field_in_words(field)),
            Why::Lacks(kind, fields) => {
                let parts: Vec<String> = fields.iter().map(|field| self.field_in_words(field)).collect();
                self.why_lacks(self.kind_name(kind), parts.join(", "))
            }
            Why::WhichTray(trays) => self.why_which_tray(trays.join(", ")),
            Why::WhichContainer(containers) => self.why_which_container(containers.join(", ")),
            Why::WhichBed(beds) => self.why_which_bed(beds.join(", ")),
            Why::WhichPlant(keys) => {
                let named: Vec<String> = keys.iter().map(|key| self.plant(key)).collect();
                self.why_which_plant(named.join(", "))
            }
            Why::FenceDown(word) => self.why_fence_down(word),
            Why::DeadOrLeafless(word) => self.why_dead_or_leafless(word),
            Why::LivedThroughIt(word) => self.why_lived_through_it(word),
            Why::CauseNearly(written, known) => self.why_cause_nearly(written, known),
            Why::Correction(word) => self.why_correction(word),
            Why::OfAPart(word) => self.why_of_a_part(word),
            Why::NotThrownAway(word) => self.why_not_thrown_away(word),
            Why::GraftTook(word) => self.why_graft_took(word),
            Why::AwayFrom(word) => self.why_away_from(word),
            Why::Ended(word) => self.why_ended(word),
            Why::CameBack(word) => self.why_came_back(word),
            Why::NotOfPlants(word) => self.why_not_of_plants(word),
            Why::FoodOrRemedy(word) => self.why_food_or_remedy(word),
            Why::CollarAlone => self.why_collar_alone(),
            Why::DayOrHeight(word) => self.why_day_or_height(word),
            Why::NumberNow(number) => self.why_number_now(number),
            Why::PestGone(word) => self.why_pest_gone(word),
            Why::NoMillimetres(word) => self.why_no_millimetres(word),
            Why::SinceThen(word) => self.why_since_then(word),
            Why::HalfOfWhat(word) => self.why_half_of_what(word),
            Why::PlantedOrOnTheWay => self.why_planted_or_on_the_way(),
            Why::NoReceiver(word) => self.why_no_receiver(word),
            Why::NoReading(words) if words.is_empty() => self.why_no_reading(),
            Why::NoReading(words) => self.why_no_reading_of(words.join(" ")),
        }
    }

    /// The line that says just this entry: a short form where one says all of it, else its kind and fields.
    pub(crate) fn line_meaning(&self, meant: &Meant) -> String {
        let day = meant.names_its_day.then(|| meant.happened.to_string());
        match (self.short_line(meant), day) {
            (Some(short), Some(day)) => format!("{day} {short}"),
            (Some(short), None) => short,
            (None, day) => {
                let named = |field: &str| self.field_of_kind_typed(meant.kind, field).to_string();
                let mut pieces = vec![self.kind_typed(meant.kind).to_string()];
                let is_said = |value: &Value| value != NOT_SAID;
                pieces.extend(meant.fields.iter().filter(|(_, value)| is_said(value)).map(|(field, value)| {
                    format!("{}={}", named(field), quoted(&self.value_typed(meant.kind, field, value)))
                }));
                let left_out = meant.fields.iter().filter(|(_, value)| !is_said(value));
                pieces.extend(left_out.map(|(field, _)| format!("{}=...", named(field))));
                pieces.extend(
                    meant.missing.iter().map(|field| format!("{}={}", named(field), self.words_for(meant.kind, field))),
                );
                pieces.extend(day.map(|day| format!("{}={day}", named("happened"))));
                pieces.join(" ")
            }
        }
    }

    fn short_line(&self, meant: &Meant) -> Option<String> {
        let field = |name: &str| plain(meant.fields.get(name));
        let has_only = |must: &[&str], may: &[&str]| {
            let known = |key: &String| must.contains(&key.as_str()) || may.contains(&key.as_str());
            meant.missing.is_empty()
                && meant.fields.keys().all(known)
                && must.iter().all(|key| meant.fields.contains_key(*key))
        };
        let said = |name: &str| Some(field(name)).filter(|text| !text.is_empty() && text != NOT_SAID);
        let behind = |name: &str| said(name).map_or(String::new(), |text| format!(" {text}"));
        match meant.kind {
            "counted" if has_only(&["tray", "standing"], &["dead", "about"]) => {
                let about = if meant.fields.get("about") == Some(&Value::Bool(true)) { "~" } else { "" };
                let dead = said("dead").map_or(String::new(), |dead| format!(", {dead} {}", self.line_word_dead()));
                // "about" and the dead in one line have no short form.
                (about.is_empty() || dead.is_empty())
                    .then(|| format!("{} {about}{}{dead}", field("tray"), field("standing")))
            }
            "lost" if has_only(&["tray", "count", "cause"], &[]) => {
                Some(format!("{} -{}{}", field("tray"), field("count"), behind("cause")))
            }
            "culled" if has_only(&["tray", "count", "why"], &[]) => {
                Some(format!("{} x {}{}", field("tray"), field("count"), behind("why")))
            }
            "carried" if has_only(&["tray", "place"], &[]) => Some(format!("{} > {}", field("tray"), field("place"))),
            "outplanted" if has_only(&["tray", "bed", "count"], &[]) => {
                Some(format!("{} @ {} {}", field("tray"), field("bed"), field("count")))
            }
            "given_out" if has_only(&["tray", "count", "to"], &[]) => {
                let given = self.line_word_given();
                Some(format!("{} {given} {}{}", field("tray"), field("count"), behind("to")))
            }
            "stocktaken" if has_only(&["tray", "standing"], &[]) => {
                Some(format!("{} {} {}", field("tray"), self.line_word_recount(), field("standing")))
            }
            "shade_set" if has_only(&["tray", "shade_pct"], &[]) || has_only(&["place", "shade_pct"], &[]) => {
                let subject = said("tray").or_else(|| said("place"))?;
                Some(format!("{subject} {} {}", self.line_word_shade(), field("shade_pct")))
            }
            "watering_set" if has_only(&["tray", "every_days"], &[]) || has_only(&["place", "every_days"], &[]) => {
                let subject = said("tray").or_else(|| said("place"))?;
                Some(format!("{subject} {} {}", self.line_word_water(), field("every_days")))
            }
            "weather" if has_only(&["rain_mm"], &[]) => Some(format!("{} {}", self.line_word_rain(), field("rain_mm"))),
            "light_read" if has_only(&["bed", "light_share"], &[]) || has_only(&["place", "light_share"], &[]) => {
                let subject = said("bed").or_else(|| said("place"))?;
                let share = meant.fields.get("light_share").and_then(Value::as_f64)?;
                // Said in hundredths: a share of a part of a percent keeps its own form.
                let percent = (share * 100.0).round();
                ((share * 100.0 - percent).abs() < 1e-9)
                    .then(|| format!("{subject} {} {percent}%", self.line_word_light()))
            }
            "hardening_begun" if has_only(&["tray"], &[]) => {
                Some(format!("{} {}", field("tray"), self.line_word_hardening()))
            }
            "flushed" if has_only(&["tray"], &[]) => Some(format!("{} {}", field("tray"), self.line_word_flush())),
            "survival_counted" | "nurse_counted" => self.count_in_bed(meant),
            "noted" if has_only(&["text"], &["about"]) => {
                let about = said("about").map_or(String::new(), |about| format!("{about} "));
                Some(format!("{about}{} {}", self.line_word_note(), field("text")))
            }
            _ => None,
        }
    }

    /// `Upper 1 coffee 70 alive 5 dead`, `Upper 1 pigeon pea 38`.
    fn count_in_bed(&self, meant: &Meant) -> Option<String> {
        let field = |name: &str| meant.fields.get(name).map(|value| plain(Some(value)));
        let (bed, alive) = (field("bed")?, field("alive")?);
        let dead = field("dead");
        let plant = self.plant(&field("species").or_else(|| field("nurse"))?);
        let known = 3 + usize::from(dead.is_some());
        if !meant.missing.is_empty() || meant.fields.len() != known {
            return None;
        }
        Some(match dead {
            Some(dead) => {
                format!("{bed} {plant} {alive} {} {dead} {}", self.line_word_alive(), self.line_word_dead())
            }
            None => format!("{bed} {plant} {alive}"),
        })
    }

    /// A kind as it is typed in the language asked for.
    pub fn kind_typed<'a>(&self, kind: &'a str) -> &'a str {
        match self.lang() {
            Lang::En => kind,
            Lang::Es => kind_in_spanish(kind),
        }
    }

    /// A field as it is typed in the language asked for.
    pub(crate) fn field_typed<'a>(&self, field: &'a str) -> &'a str {
        match self.lang() {
            Lang::En => field,
            Lang::Es => field_in_spanish(field),
        }
    }

    /// The same of a field of a kind: a count that is about so many is about nothing.
    pub(crate) fn field_of_kind_typed<'a>(&self, kind: &str, field: &'a str) -> &'a str {
        let is_about = self.lang() == Lang::Es && kind == "counted" && field == "about";
        if is_about { "mas_o_menos" } else { self.field_typed(field) }
    }

    /// A word of a closed list as it is typed in the language asked for: its first spelling, or the first in Spanish; in one
    /// piece, so that it can be copied.
    pub(crate) fn word_typed(&self, spellings: &'static [&'static str]) -> String {
        let spanish = spellings.get(1).filter(|_| self.lang() == Lang::Es);
        spanish.or(spellings.first()).copied().unwrap_or_default().replace(' ', "_")
    }

    /// A word of any closed list of the entries as it is typed in the language asked for; itself where it stands in none.
    pub(crate) fn word_of_a_list(&self, word: &str) -> String {
        let shapes = all_kinds().flat_map(|known| known.fields).map(|field| &field.shape);
        let mut words = shapes.filter_map(|shape| if let Shape::Word(words) = shape { Some(*words) } else { None });
        let found = words.find_map(|words| words.iter().find(|spellings| spellings.first() == Some(&word)));
        found.map_or_else(|| word.to_string(), |spellings| self.word_typed(spellings))
    }

    /// Records with the names of their fields in the language asked for.
    fn records_typed(&self, value: &Value) -> Value {
        match value {
            Value::Array(items) => items.iter().map(|item| self.records_typed(item)).collect(),
            Value::Object(fields) => Value::Object(
                fields.iter().map(|(field, value)| (self.field_typed(field).to_string(), value.clone())).collect(),
            ),
            Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => value.clone(),
        }
    }

    fn value_typed(&self, kind: &str, field: &str, value: &Value) -> Value {
        let known = kind_of_entry(kind).and_then(|known| find_field(known.fields, field));
        let Some(Shape::Word(words)) = known.map(|field| &field.shape) else { return self.records_typed(value) };
        let spellings = words.iter().find(|spellings| spellings.first().is_some_and(|first| value == *first));
        spellings.map_or_else(|| value.clone(), |spellings| Value::from(self.word_typed(spellings)))
    }

    /// What may stand for a field: its words where it has some.
    fn words_for(&self, kind: &str, field: &str) -> String {
        let known = kind_of_entry(kind).and_then(|known| find_field(known.fields, field));
        match known.map(|field| &field.shape) {
            Some(Shape::Word(words)) => {
                words.iter().map(|spellings| self.word_typed(spellings)).collect::<Vec<_>>().join("|")
            }
            Some(_) | None => "...".to_string(),
        }
    }

    /// A species by the name people call it, its key where it has none here.
    fn plant(&self, key: &str) -> String {
        let built_in = Catalogue::built_in();
        built_in.find(key).map_or_else(|| key.to_string(), |known| self.species_of(&known, &built_in))
    }
}

/// Where a person gives no cause, reason or name; as the short forms write it.
const NOT_SAID: &str = "not said";

fn plain(value: Option<&Value>) -> String {
    match value {
        Some(Value::String(text)) => text.clone(),
        Some(other) => other.to_string(),
        None => String::new(),
    }
}

fn quoted(value: &Value) -> String {
    match value {
        Value::String(text) if text.contains([' ', '"', '\\', '#']) || text.is_empty() => {
            format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\""))
        }
        other => plain(Some(other)),
    }
}
