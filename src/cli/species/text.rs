//! The species known here, and one of them with every figure, its source and how far it can be trusted.

use crate::base::SpeciesKey;
use crate::base::columns::{left_aligned, shortened, width_of};
use crate::cli::sheet::{Ink, Sheet};
use crate::nursery::species::{Catalogue, Group, Profile, Trust};
use crate::wording::{Lang, Wording};
use std::collections::BTreeMap;

/// The narrowest page that gets columns.
const WIDE: usize = 60;
/// The most columns of a figure's name.
const MOST_NAME: usize = 36;

/// A word, and the species that it may mean.
pub(crate) struct Asked<'a> {
    /// What was written.
    pub(crate) word: &'a str,
    /// Those that bear it, in the order they are asked about.
    pub(crate) called: &'a [SpeciesKey],
    /// Those that have it in a name.
    pub(crate) with: &'a [SpeciesKey],
}

/// Every species by what growers look for it under: key, code, name in the person's language, scientific name. Or those
/// that a word may mean.
pub(crate) fn species_list_text(
    species: &Catalogue,
    asked: Option<Asked<'_>>,
    wording: &Wording,
    width: usize,
    colour: bool,
) -> String {
    let mut sheet = Sheet::new(width, colour);
    let row = |profile: &Profile| {
        let [code, scientific] = [&profile.code, &profile.scientific].map(|text| crate::base::text::cleaned(text));
        [profile.key.to_string(), code, wording.species_name(profile), scientific]
    };
    let mut groups: BTreeMap<(bool, Option<Group>), Vec<[String; 4]>> = BTreeMap::new();
    match &asked {
        Some(asked) => {
            for (has_word, keys) in
                [(false, asked.called), (true, asked.with)].into_iter().filter(|(_, keys)| !keys.is_empty())
            {
                let rows = keys.iter().filter_map(|key| species.get(key)).map(|profile| row(profile));
                groups.insert((has_word, None), rows.collect());
            }
        }
        None => {
            sheet.heading(&wording.species_heading());
            // A nursery's own come first.
            for (_, profile) in species.iter() {
                groups.entry((profile.group.is_some(), profile.group)).or_default().push(row(profile));
            }
            groups.values_mut().for_each(|rows| rows.sort_by_key(|[_, _, name, _]| crate::base::text::folded(name)));
        }
    }
    let heads =
        [wording.species_key(), wording.species_code(), wording.species_name_heading(), wording.species_scientific()];
    let room = |column: usize| {
        let cells = groups.values().flatten().chain([&heads]).map(|row| width_of(&row[column]));
        cells.max().unwrap_or(0)
    };
    let (keys, codes) = (room(0), room(1));
    let names = room(2).min(sheet.width().saturating_sub(keys + codes + 6) / 2);
    let line = |sheet: &mut Sheet, [key, code, name, scientific]: &[String; 4], ink| {
        let short = left_aligned(&shortened(name, names), names);
        let beginning = format!("{}  {}  {short}  ", left_aligned(key, keys), left_aligned(code, codes));
        let left = sheet.width().saturating_sub(width_of(&beginning));
        sheet.hanging(&beginning, ink, &shortened(scientific, left), ink);
    };
    if asked.is_none() {
        line(&mut sheet, &heads, Ink::Bold);
    }
    for ((later, group), rows) in &groups {
        sheet.heading(&match &asked {
            None => wording.group_name(*group),
            Some(asked) if *later => wording.species_with_word(asked.word),
            Some(asked) => wording.species_found(asked.word),
        });
        if asked.is_some() {
            line(&mut sheet, &heads, Ink::Bold);
        }
        rows.iter().for_each(|row| line(&mut sheet, row, Ink::Plain));
    }
    if let Some([key, ..]) = groups.values().flatten().next() {
        sheet.gap();
        sheet.paragraph(&wording.species_hint(crate::base::text::as_argument(key)), Ink::Plain);
        sheet.paragraph(&wording.species_list_hint(), Ink::Plain);
    }
    sheet.finish()
}

/// How many figures were read, recalled, common practice, ours, the nursery's own: all together, then of each species.
pub(crate) fn sources_text(species: &Catalogue, wording: &Wording, width: usize, colour: bool) -> String {
    let mut sheet = Sheet::new(width, colour);
    let all = Trust::of(species.iter().map(|(_, profile)| profile.as_ref()));
    sheet.heading(&wording.species_sources_heading(all.figures));
    for line in wording.trust_lines(&all) {
        sheet.hanging("- ", Ink::Plain, &line, Ink::Plain);
    }
    sheet.gap();
    let mut rows: Vec<(String, String)> = species
        .iter()
        .map(|(_, profile)| {
            (wording.species_name(profile), wording.trust_lines(&Trust::of([profile.as_ref()])).join("; "))
        })
        .collect();
    rows.sort_by_key(|(name, _)| crate::base::text::folded(name));
    for (name, counts) in &rows {
        sheet.paragraph(name, Ink::Bold);
        sheet.indented(4, counts, Ink::Plain);
    }
    sheet.finish()
}

/// One species: what this nursery knows of it (headings with their lines), every figure with its source and its flag, then
/// notes and cautions.
pub fn species_text(
    profile: &Profile,
    known: &[(String, Vec<String>)],
    wording: &Wording,
    width: usize,
    colour: bool,
) -> String {
    let mut sheet = Sheet::new(width, colour);
    // A species of a nursery's own may have no scientific name.
    let scientific = Some(crate::base::text::cleaned(&profile.scientific)).filter(|name| !name.is_empty());
    let names: Vec<String> = std::iter::once(wording.species_name(profile)).chain(scientific).collect();
    sheet.heading(&names.join(", "));
    sheet.paragraph(&format!("{} · {} · {}", profile.key, profile.code, wording.role_name(profile.role)), Ink::Plain);
    let others: Vec<String> = match wording.lang() {
        Lang::En => profile.names.en.iter().skip(1).chain(&profile.names.es).cloned().collect(),
        Lang::Es => profile.names.es.iter().skip(1).chain(&profile.names.en).cloned().collect(),
    };
    let own = wording.species_name(profile);
    let mut seen = vec![own];
    let others: Vec<String> = others
        .into_iter()
        .filter(|name| {
            let is_new = !seen.contains(name);
            seen.push(name.clone());
            is_new
        })
        .collect();
    if !others.is_empty() {
        sheet.paragraph(&wording.species_also(others.join(", ")), Ink::Plain);
    }
    if !profile.never_confuse_with.is_empty() {
        let never = profile.never_confuse_with.iter().map(|name| crate::base::text::cleaned(name));
        sheet.paragraph(&wording.species_never(never.collect::<Vec<_>>().join(", ")), Ink::Plain);
    }
    sheet.gap();
    wording.in_short_lines(profile).iter().for_each(|line| sheet.paragraph(line, Ink::Plain));
    sheet.paragraph(&wording.danger_line(profile), Ink::Bold);
    for (heading, lines) in known {
        sheet.heading(heading);
        lines.iter().for_each(|line| sheet.hanging("- ", Ink::Plain, line, Ink::Plain));
    }
    sheet.gap();
    figures(profile, wording, &mut sheet);
    for (heading, texts) in [(wording.species_notes(), &profile.notes), (wording.species_cautions(), &profile.cautions)]
    {
        if !texts.is_empty() {
            sheet.heading(&heading);
        }
        for text in texts {
            sheet.hanging("- ", Ink::Plain, &wording.profile_text(text), Ink::Plain);
        }
    }
    sheet.finish()
}

fn figures(profile: &Profile, wording: &Wording, sheet: &mut Sheet) {
    let all = profile.figures();
    if all.is_empty() {
        sheet.paragraph(&wording.species_no_figures(), Ink::Plain);
    }
    let names = all.iter().map(|(name, ..)| width_of(&wording.figure_name(name))).max().unwrap_or(0).min(MOST_NAME);
    for (name, value, source, flag) in &all {
        let message = wording.figure_name(name);
        let lines = wording.figure_value(name, value);
        if sheet.width() >= WIDE {
            for (number, line) in lines.iter().enumerate() {
                let label = if number == 0 { message.as_str() } else { "" };
                sheet.hanging(&format!("{}  ", left_aligned(label, names)), Ink::Plain, line, Ink::Bold);
            }
        } else {
            sheet.paragraph(&message, Ink::Plain);
            for line in &lines {
                sheet.indented(2, line, Ink::Bold);
            }
        }
        sheet.indented(4, &wording.sourced(source, *flag), Ink::Plain);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_wider_than_the_page_for_any_species_in_either_language() {
        let catalogue = Catalogue::built_in();
        for lang in Lang::ALL {
            let wording = Wording::new(lang);
            for width in (40..=120).step_by(7) {
                let pages = catalogue.iter().map(|(_, profile)| species_text(profile, &[], &wording, width, false));
                let lists = [
                    species_list_text(&catalogue, None, &wording, width, false),
                    sources_text(&catalogue, &wording, width, false),
                ];
                for page in pages.chain(lists) {
                    assert!(!page.contains('\u{1b}'));
                    for line in page.lines() {
                        assert!(width_of(line) <= width, "{width}: {line}");
                    }
                }
            }
        }
    }

    #[test]
    fn a_profile_names_each_figure_with_its_source_and_flag() {
        let catalogue = Catalogue::built_in();
        let coffee = catalogue.get(&SpeciesKey::new("COA")).unwrap();
        let page = species_text(coffee, &[], &Wording::new(Lang::En), 100, false);
        for expected in [
            "arabica coffee, Coffea arabica",
            "also called coffee, arabica, café arábica, café, cafeto",
            "height to go out, least         20 cm",
            "International Coffee Organization, page on coffee plant propagation (read in the source)",
            "Wintgens 2004, Coffee (from memory)",
            "- Emergence doubles in cool highlands.",
        ] {
            assert!(page.contains(expected), "{expected}\n{page}");
        }
        let list = species_list_text(&catalogue, None, &Wording::new(Lang::Es), 80, false);
        assert!(
            list.contains("COA    cof ") && list.contains("café arábica") && list.contains("Coffea arabica"),
            "{list}"
        );
    }
}
