//! The words by which what people type and write by hand is read, from `words.toml`.

use serde::Deserialize;
use std::sync::LazyLock;

/// Spellings that mean one thing, folded.
pub(in crate::share) type Spellings = Vec<String>;

/// All words, by where they are read.
#[derive(Default, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::share) struct Vocabulary {
    pub line: LineWords,
    pub small: SmallWords,
    pub amount: AmountWords,
    pub numbers: NumberWords,
    pub time: TimeWords,
    pub months: NamesInOrder,
    pub weekdays: NamesInOrder,
    pub sheet: SheetWords,
}

/// Declares tables of words, a list for each field.
macro_rules! tables {
    ($($(#[$note:meta])* $name:ident { $($field:ident)+ })+) => {$(
        $(#[$note])*
        #[derive(Default, Debug, Deserialize)]
        #[serde(deny_unknown_fields)]
        pub(in crate::share) struct $name { $(pub $field: Spellings,)+ }
    )+};
}

tables! {
    /// What stands behind a name in a short line.
    LineWords {
        count dead alive shade water plug cut grafted flush height note given recount hardening held released pest treated light
        rain coldest hottest rows rod wet dry sown test grams seeds let_go until never wait
    }
    /// Words that only fill a line.
    SmallWords { and of with upon within filler before_a_day before_a_wait in_a_day }
    /// Numbers of things.
    AmountWords { about dozen half_dozen inch centimetre plants below_zero half litre millilitre }
    /// Days and spans of time.
    TimeWords {
        today yesterday day_before_yesterday tomorrow day_after_tomorrow day week month year ago_behind ago_before no_wait_behind one
    }
    /// What stands in cells of sheets.
    SheetWords {
        not_known nothing in_the_open shade half_shade middle beginning ending last_month last_year totals bare_root bag plug stump cells
    }
}

/// Numbers in words, from zero up.
#[derive(Default, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::share) struct NumberWords {
    pub figures: Vec<Spellings>,
}

/// The months, or the days of the week, in their order.
#[derive(Default, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::share) struct NamesInOrder {
    pub names: Vec<Spellings>,
}

const WORDS: &str = include_str!("../words.toml");

/// The words, read once.
pub(in crate::share) fn vocabulary() -> &'static Vocabulary {
    static READ: LazyLock<Vocabulary> = LazyLock::new(|| toml::from_str(WORDS).unwrap_or_default());
    &READ
}

/// Whether a folded word is one of these.
pub(in crate::share) fn is(word: &str, spellings: &[String]) -> bool {
    spellings.iter().any(|spelling| spelling == word)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::text;
    use std::collections::BTreeSet;

    fn spellings(value: &toml::Value) -> Vec<&str> {
        match value {
            toml::Value::Array(items) => items.iter().flat_map(spellings).collect(),
            other => vec![other.as_str().unwrap()],
        }
    }

    #[test]
    fn no_word_means_two_things_and_each_can_be_met() {
        toml::from_str::<Vocabulary>(WORDS).unwrap();
        let tables: toml::Table = toml::from_str(WORDS).unwrap();
        for (table, lists) in &tables {
            let mut seen = BTreeSet::new();
            for word in lists.as_table().unwrap().values().flat_map(spellings) {
                assert_eq!(text::folded(word), word, "{table}: no such word is met");
                assert!(table == "small" || seen.insert(word), "{table}: {word} means two things");
            }
        }
        let months = &vocabulary().months.names;
        let weekdays = &vocabulary().weekdays.names;
        assert_eq!((months.len(), weekdays.len(), vocabulary().numbers.figures.len()), (12, 7, 21));
    }
}
