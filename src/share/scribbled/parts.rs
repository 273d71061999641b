//! A line that says several things: read part by part.

use super::choose::{Line, MOST_OFFERS, MOST_PARTINGS, MOST_TRIED, Way, day_of, is_subject, is_verb};
use super::frames::{CLEAR_BY, number_value};
use super::marks::{Mark, What};
use super::named::NameOf;
use super::why::Why;
use super::{EntryDraft, Reading};

impl Line<'_> {
    /// Where a line may be parted: a part begins here.
    fn partings(&self) -> Vec<usize> {
        let mut found = Vec::new();
        let mut seen_number = false;
        for (i, mark) in self.marks.iter().enumerate().skip(1) {
            let parts = matches!(mark.what, What::Sign(',' | ';' | '.' | ':')) || mark.has("small.and");
            let before = &self.marks[i - 1];
            let repeats = mark.is_name_of(NameOf::Tray)
                && seen_number
                && self.marks[..i].iter().any(|other| other.is_name_of(NameOf::Tray))
                && !matches!(before.what, What::Day(_))
                && !before.has("small.from")
                && !before.has("small.to")
                && !before.has("small.and");
            let minus = matches!(mark.what, What::Number { is_minus: true, .. }) && seen_number;
            if parts || repeats || minus {
                found.push(i);
            }
            seen_number |= matches!(before.what, What::Number { .. }) || matches!(mark.what, What::Number { .. });
        }
        found
    }

    pub(super) fn in_parts(&self) -> Option<Reading> {
        let partings = self.partings();
        if partings.is_empty() {
            return None;
        }
        let mut cuts: Vec<Vec<usize>> = Vec::new();
        if partings.len() <= MOST_PARTINGS {
            for mask in 1_u32..(1 << partings.len()) {
                let cut = partings.iter().enumerate().filter(|(n, _)| mask & (1 << n) != 0).map(|(_, at)| *at);
                cuts.push(cut.collect());
            }
            cuts.sort_by_key(Vec::len);
        } else {
            cuts.push(partings.clone());
        }
        let mut found: Vec<(usize, Vec<EntryDraft>, Vec<Why>)> = Vec::new();
        for cut in cuts.iter().filter(|cut| cut.len() <= 3 || cut.len() == partings.len()) {
            if found.first().is_some_and(|(parts, _, lacks)| *parts < cut.len() && lacks.is_empty()) {
                break;
            }
            if let Some((drafts, lacks)) = self.parted(cut)
                && !found.iter().any(|(_, other, _)| *other == drafts)
            {
                found.push((cut.len(), drafts, lacks));
                found.sort_by_key(|(parts, _, lacks)| (!lacks.is_empty(), *parts));
            }
        }
        let (_, drafts, lacks) = found.first()?.clone();
        let rivals = found.iter().skip(1).filter(|(_, _, others)| others.is_empty()).count();
        if lacks.is_empty() && rivals == 0 && self.tried.get() <= MOST_TRIED {
            return Some(Reading::Clear(drafts));
        }
        let mut offers: Vec<Vec<EntryDraft>> =
            found.into_iter().take(MOST_OFFERS).map(|(_, drafts, _)| drafts).collect();
        if lacks.iter().any(|why| matches!(why, Why::WeedsOrAll(_))) && offers.len() < MOST_OFFERS {
            offers.extend(offers.first().cloned().map(weeds_for_all));
        }
        let why = if lacks.is_empty() { vec![Why::Several] } else { lacks };
        Some(Reading::Refused { why, offers })
    }

    /// Reads the parts one by one; a part takes from its neighbours what it does not say.
    fn parted(&self, cut: &[usize]) -> Option<(Vec<EntryDraft>, Vec<Why>)> {
        let mut bounds = vec![0];
        bounds.extend(cut);
        bounds.push(self.marks.len());
        let part = |n: usize| trimmed(&self.marks[bounds[n]..bounds[n + 1]]);
        let parts: Vec<&[Mark]> = (0..bounds.len() - 1).map(part).collect();
        let line_day = self.one_day();
        let (mut drafts, mut lacks, mut day) = (Vec::new(), Vec::new(), line_day);
        // A day that stands alone is that of what follows, unless that names another one.
        let mut alone: Option<crate::base::Day> = None;
        for n in 0..parts.len() {
            if parts[n].iter().filter_map(day_of).count() > 1 {
                return None;
            }
            let own = parts[n].iter().find_map(day_of);
            day = line_day.or(own).or(day);
            let is_day = |mark: &Mark| matches!(mark.what, What::Day(_) | What::Sign(_)) || mark.has("small.filler");
            let other = alone.is_some_and(|alone| own.is_some_and(|own| own != alone));
            if other || parts[n].iter().all(is_day) && own.is_some() && n + 1 == parts.len() && line_day.is_none() {
                return None;
            }
            if parts[n].iter().all(is_day) {
                alone = own.or(alone);
                continue;
            }
            alone = None;
            let way = self.part_read(&parts, n)?;
            drafts.extend(self.dated(&way.drafts, day));
            lacks.extend(way.lacks);
        }
        one_treatment(&mut drafts);
        held_for_what_was_seen(&mut drafts, &mut lacks);
        self.sick_and_not_left(&mut drafts, &mut lacks);
        with_one_cause(&mut drafts, &parts);
        with_one_receiver(&mut drafts, &parts);
        (drafts.len() > 1 || cut.len() == 1 && !drafts.is_empty()).then_some((drafts, lacks))
    }

    /// "c1 with rust, 46 plants": those that have it, or those that are left? A number behind a sickness is asked about, and is taken for
    /// the sick ones.
    fn sick_and_not_left(&self, drafts: &mut Vec<EntryDraft>, lacks: &mut Vec<Why>) {
        const COUNTS: [&str; 7] = ["count", "left", "alive", "up", "survive", "die", "kill"];
        // "has" says how many there are, and what is wrong with them.
        let says_how_many = |mark: &Mark| {
            let has = matches!(mark.folded.as_str(), "has" | "have" | "tiene" | "tienen" | "got" | "con" | "with");
            !has && COUNTS.iter().any(|role| mark.has(role))
        };
        if self.marks.iter().any(says_how_many) {
            return;
        }
        let of_tray = |draft: &EntryDraft| draft.fields.get("tray").and_then(|tray| tray.as_str()).map(str::to_string);
        let open = |draft: &EntryDraft| draft.kind == "pest_seen" && !draft.fields.contains_key("share_pct");
        let Some(seen) = drafts.iter().position(open) else { return };
        let Some(tray) = of_tray(&drafts[seen]) else { return };
        let of_it = |draft: &EntryDraft| draft.kind == "counted" && of_tray(draft).as_ref() == Some(&tray);
        let Some(counted) = drafts.iter().position(of_it) else { return };
        let sick = drafts[counted].fields.get("standing").and_then(|standing| standing.as_f64());
        let stands = self.known.names.standing(&tray).map(f64::from).filter(|stands| *stands > 0.0);
        if let Some((sick, stands)) = sick.zip(stands).filter(|(sick, stands)| sick <= stands) {
            let share = number_value((1000.0 * sick / stands).round() / 10.0);
            drafts[seen].fields.insert("share_pct".to_string(), share);
        }
        drafts.remove(counted);
        lacks.retain(|why| !matches!(why, Why::OverHalf(_)));
        lacks.push(Why::Several);
    }

    /// What stands before a colon at the head of the line and says what happened, to nothing that is named: it is said of
    /// all that follows.
    fn heading(&self) -> &[Mark] {
        let end = self.marks.iter().position(|mark| mark.is_sign(':')).unwrap_or(0);
        let head = &self.marks[..end];
        let is_bare = |mark: &Mark| !matches!(mark.what, What::Name(_) | What::Number { .. } | What::Amount(..));
        if head.iter().any(is_verb) && head.iter().all(is_bare) { head } else { &[] }
    }

    fn part_read(&self, parts: &[&[Mark]], n: usize) -> Option<Way> {
        let clear = |marks: &[Mark]| {
            let ways: Vec<Way> = self.ways(marks).into_iter().filter(|way| way.leftover.is_empty()).collect();
            let best = ways.first()?.clone();
            let doubt = ways.iter().skip(1).any(|way| way.drafts != best.drafts && way.weight > best.weight - CLEAR_BY);
            (!doubt).then_some(best)
        };
        let heading = self.heading();
        if n > 0 && !heading.is_empty() && parts[n].iter().any(is_subject) && !parts[n].iter().any(is_verb) {
            return clear(&[heading, parts[n]].concat());
        }
        let own = clear(parts[n]);
        if let Some(way) = own.as_ref().filter(|own| is_count_beside_a_loss(parts, n, own)) {
            return Some(way.clone());
        }
        if let Some(way) = own.as_ref().and_then(|own| self.with_the_verb_behind(parts, n, own)) {
            return Some(way);
        }
        let is_of_no_loss = parts[n].iter().any(|mark| mark.has("no_dead")) && parts[n].iter().any(is_subject);
        if n > 0 && own.is_none() && is_of_no_loss && !parts[n].iter().any(|mark| mark.number().is_some()) {
            return Some(Way { drafts: Vec::new(), weight: 0, lacks: Vec::new(), leftover: Vec::new() });
        }
        if let Some(way) = own.as_ref().filter(|way| way.lacks.is_empty()) {
            return Some(self.count_or_loss(parts, n, way));
        }
        // What the part before says leads; the first part may learn from the one behind it.
        let mut neighbours: Vec<&[Mark]> = parts[..n].iter().rev().copied().collect();
        neighbours.extend(parts.get(n + 1));
        // "c1 3, c2 5, c4 none lost": the last part may say what happened to all of them.
        neighbours.extend(parts.last().filter(|_| n + 2 < parts.len()));
        let mut lacking = None;
        for neighbour in &neighbours {
            let verbs = what_happened(neighbour);
            let has_name = parts[n].iter().any(|mark| matches!(mark.what, What::Name(_)));
            let names: Vec<Mark> = neighbour.iter().filter(|mark| is_subject(mark)).cloned().collect();
            let places: Vec<Mark> = names.iter().filter(|mark| !mark.is_name_of(NameOf::Tray)).cloned().collect();
            let first = names.first().cloned().into_iter().collect::<Vec<_>>();
            let has_verb = parts[n].iter().any(is_verb);
            let mut tries: Vec<Vec<Mark>> = Vec::new();
            if !has_name {
                tries.push([first.clone(), parts[n].to_vec()].concat());
                tries.push([names.clone(), parts[n].to_vec()].concat());
            }
            if has_name
                && !places.is_empty()
                && !parts[n].iter().any(|mark| mark.is_name_of(NameOf::Bed) || mark.is_name_of(NameOf::Place))
            {
                tries.push([parts[n].to_vec(), places].concat());
            }
            if !has_verb {
                tries.push([parts[n].to_vec(), verbs.clone()].concat());
                tries.push([first, verbs, parts[n].to_vec()].concat());
            }
            let found: Vec<Way> = tries.iter().filter_map(|marks| clear(marks)).collect();
            if let Some(way) = found.iter().find(|way| way.lacks.is_empty()) {
                return Some(way.clone());
            }
            lacking = lacking.or(found.into_iter().next());
        }
        own.or(lacking)
    }

    /// "20 k1 and 30 k2 planted in B3": what is said behind the last part holds for a bare number before it, where so few are
    /// no count; where they may be one it is asked.
    fn with_the_verb_behind(&self, parts: &[&[Mark]], n: usize, own: &Way) -> Option<Way> {
        let last = parts.last().filter(|_| n + 1 < parts.len())?;
        let is_bare = |part: &&[Mark]| !part.iter().any(is_verb);
        let says = ["plant", "give", "cull", "carry"].iter().any(|role| last.iter().any(|mark| mark.has(role)));
        let all_bare = parts[..parts.len() - 1].iter().all(is_bare);
        if own.drafts[0].0 != "counted" || !all_bare || !says || has_a_number_of_its_own(last) {
            return None;
        }
        let places = last.iter().filter(|mark| is_subject(mark) && !mark.is_name_of(NameOf::Tray)).cloned();
        let again = [parts[n].to_vec(), what_happened(last), places.collect()].concat();
        let again = self.ways(&again).into_iter().find(|way| way.leftover.is_empty() && way.lacks.is_empty())?;
        let fields = &own.drafts[0].1;
        let books = fields.get("tray").and_then(|tray| self.known.names.standing(tray.as_str()?)).map(f64::from);
        let counted = fields.get("standing").and_then(serde_json::Value::as_f64).unwrap_or(0.0);
        match books.is_some_and(|books| counted * 2.0 < books) {
            true => Some(again),
            false => Some(Way { lacks: vec![Why::Several], ..again }),
        }
    }

    /// "k1 3 dead and k2 1": a bare number behind a part that says what happened may be a count or the same again; what
    /// stands there decides, and where both can be it is asked.
    fn count_or_loss(&self, parts: &[&[Mark]], n: usize, own: &Way) -> Way {
        let before = n.checked_sub(1).and_then(|before| parts.get(before));
        let Some(before) = before.filter(|_| own.drafts[0].0 == "counted" && !parts[n].iter().any(is_verb)) else {
            return own.clone();
        };
        let verbs = what_happened(before);
        let again = [parts[n].to_vec(), verbs].concat();
        let again = self.ways(&again).into_iter().find(|way| way.leftover.is_empty());
        let Some(again) = again.filter(|way| way.drafts[0].0 != "counted") else { return own.clone() };
        let fields = &own.drafts[0].1;
        let books = fields.get("tray").and_then(|tray| self.known.names.standing(tray.as_str()?));
        let counted = fields.get("standing").and_then(serde_json::Value::as_f64).unwrap_or(0.0);
        let can_be_count = books.is_none_or(|books| counted * 2.0 >= f64::from(books));
        match (can_be_count, again.lacks.is_empty()) {
            (true, false) => own.clone(),
            (false, true) => again,
            _ => Way { lacks: vec![Why::Several], ..own.clone() },
        }
    }
}

/// Whether a part says of how many plants it speaks, and names no tray: its word is of that number alone.
fn has_a_number_of_its_own(part: &[Mark]) -> bool {
    let is_number = |mark: &Mark| matches!(mark.what, What::Number { .. });
    part.iter().any(is_number) && !part.iter().any(|mark| mark.is_name_of(NameOf::Tray))
}

/// "c1 45, 2 dead, rats": a bare number of a tray beside another one that was lost, thrown out or given away is what
/// stands there, however few they are.
fn is_count_beside_a_loss(parts: &[&[Mark]], n: usize, own: &Way) -> bool {
    const LOSES: [&str; 7] = ["die", "kill", "cull", "give", "they_took", "plant", "steal"];
    let loses = |part: &&[Mark]| LOSES.iter().any(|role| part.iter().any(|mark| mark.has(role)));
    let beside = [n.checked_sub(1).and_then(|before| parts.get(before)), parts.get(n + 1)];
    own.drafts[0].0 == "counted"
        && !parts[n].iter().any(is_verb)
        && beside.into_iter().flatten().any(|part| loses(part) && has_a_number_of_its_own(part))
}

/// The other thing that a word of weeding as well as of clearing may say.
fn weeds_for_all(mut drafts: Vec<EntryDraft>) -> Vec<EntryDraft> {
    for task in drafts.iter_mut().filter_map(|draft| draft.fields.get_mut("task")) {
        *task = match task.as_str() {
            Some("weeded") => "cleared".into(),
            Some("cleared") => "weeded".into(),
            _ => continue,
        };
    }
    drafts
}

/// The words of a part that say what happened: an animal goes along with what it did.
fn what_happened(part: &[Mark]) -> Vec<Mark> {
    let eats = part.iter().any(|mark| mark.has("kill") && !mark.has("die"));
    let verbs = part.iter().filter(|mark| is_verb(mark) || eats && mark.has("causes.words")).cloned();
    // Where of one nothing was lost a number of another is one of losses.
    let of_losses = |mark: Mark| match mark.has("no_dead") {
        true => Mark { roles: vec!["die"], ..mark },
        false => mark,
    };
    verbs.map(of_losses).collect()
}

/// "don't let c1 out, has rust": what was seen on it is why it is held.
fn held_for_what_was_seen(drafts: &mut [EntryDraft], lacks: &mut Vec<Why>) {
    let seen = drafts.iter().find(|draft| draft.kind == "pest_seen").cloned();
    let is_open = |draft: &&mut EntryDraft| draft.kind == "held" && !draft.fields.contains_key("why");
    let (Some(seen), Some(held)) = (seen, drafts.iter_mut().find(is_open)) else { return };
    if seen.fields.get("tray").is_some_and(|tray| held.fields.get("tray") == Some(tray)) {
        held.fields.extend(seen.fields.get("what").map(|what| ("why".to_string(), what.clone())));
        lacks.retain(|why| *why != Why::NotSaid("why"));
    }
}

/// "lost 1 k2 and 2 k1 to crickets": one word says what happened to all of them, and so does one cause.
fn with_one_cause(drafts: &mut [EntryDraft], parts: &[&[Mark]]) {
    let says_it = parts.iter().filter(|part| part.iter().any(|mark| mark.has("die") || mark.has("kill"))).count();
    let causes: Vec<serde_json::Value> = drafts.iter().filter_map(|draft| draft.fields.get("cause").cloned()).collect();
    if let [cause] = &causes[..]
        && says_it == 1
        && drafts.iter().all(|draft| draft.kind == "lost")
    {
        drafts.iter_mut().for_each(|draft| _ = draft.fields.insert("cause".into(), cause.clone()));
    }
}

/// "vendí 15 g1 y 5 k1 a la coope": one word says what became of all of them, and so does who got them.
fn with_one_receiver(drafts: &mut [EntryDraft], parts: &[&[Mark]]) {
    let says_it = parts.iter().filter(|part| part.iter().any(|mark| mark.has("give") || mark.has("they_took"))).count();
    let receivers: Vec<serde_json::Value> = drafts.iter().filter_map(|draft| draft.fields.get("to").cloned()).collect();
    if let [receiver] = &receivers[..]
        && says_it == 1
        && drafts.iter().all(|draft| draft.kind == "given_out")
    {
        drafts.iter_mut().for_each(|draft| _ = draft.fields.insert("to".into(), receiver.clone()));
    }
}

/// A part without the signs and joining words around it.
fn trimmed(mut marks: &[Mark]) -> &[Mark] {
    let is_edge = |mark: &Mark| matches!(mark.what, What::Sign(_)) || mark.has("small.and");
    while let [first, rest @ ..] = marks {
        if !is_edge(first) {
            break;
        }
        marks = rest;
    }
    while let [rest @ .., last] = marks {
        if !is_edge(last) {
            break;
        }
        marks = rest;
    }
    marks
}

/// "fumigué k1 con cobre, 7 días": what a part says of the wait is of the treatment before it.
fn one_treatment(drafts: &mut Vec<EntryDraft>) {
    let is_same = |a: &EntryDraft, b: &EntryDraft| {
        let same = |field: &str| a.fields.get(field) == b.fields.get(field);
        a.kind == "treated" && b.kind == "treated" && ["tray", "bed", "place", "with"].iter().all(|field| same(field))
    };
    let mut at = 1;
    while at < drafts.len() {
        match (0..at).find(|first| is_same(&drafts[*first], &drafts[at])) {
            Some(first) => {
                let again = drafts.remove(at);
                for (field, value) in again.fields {
                    drafts[first].fields.entry(field).or_insert(value);
                }
            }
            None => at += 1,
        }
    }
}
