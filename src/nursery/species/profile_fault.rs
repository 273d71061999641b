//! Why a profile cannot stand. `wording` says it in the person's language; the texts here are for logs and tests.

use thiserror::Error;

use crate::base::SpeciesKey;

/// What makes no sense in a species profile.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug, Error, serde::Serialize, serde::Deserialize)]
pub enum ProfileFault {
    /// A figure names no source.
    #[error("'{name}' names no source")]
    NoSource {
        /// Name of the figure or list.
        name: String,
    },
    /// A figure is not a number.
    #[error("'{name}' is not a number")]
    NotANumber {
        /// Name of the figure or list.
        name: String,
    },
    /// A figure cannot be negative; written was written.
    #[error("'{name}' cannot be negative; {written} was written")]
    Negative {
        /// Name of the figure or list.
        name: String,
        /// What was written.
        written: String,
    },
    /// A figure cannot be 0.
    #[error("'{name}' cannot be 0")]
    Zero {
        /// Name of the figure or list.
        name: String,
    },
    /// A figure cannot be more than most; written was written.
    #[error("'{name}' cannot be more than {most}; {written} was written")]
    MoreThan {
        /// Name of the figure or list.
        name: String,
        /// The most.
        most: String,
        /// What was written.
        written: String,
    },
    /// A figure holds an invisible or control character.
    #[error("'{name}' holds an invisible or control character")]
    Unseen {
        /// Name of the figure or list.
        name: String,
    },
    /// A figure is longer than most characters.
    #[error("'{name}' is longer than {most} characters")]
    TooLong {
        /// Name of the figure or list.
        name: String,
        /// The most.
        most: String,
    },
    /// 'least' is low, which is more than 'most' at high.
    #[error("'{least}' is {low}, which is more than '{most}' at {high}")]
    OutOfOrder {
        /// The figure that should be the smaller.
        least: String,
        /// Its value.
        low: String,
        /// The most.
        most: String,
        /// The value of the other.
        high: String,
    },
    /// 'growth_points' holds points points; 1 to most can be read.
    #[error("'growth_points' holds {points} points; 1 to {most} can be read")]
    GrowthCount {
        /// How many.
        points: String,
        /// The most.
        most: String,
    },
    /// 'growth_points' reaches month month; 1200 is the last.
    #[error("'growth_points' reaches month {month}; 1200 is the last")]
    GrowthMonth {
        /// The month.
        month: String,
    },
    /// 'growth_points': month month follows month after.
    #[error("'growth_points': month {month} follows month {after}")]
    GrowthOrder {
        /// The month.
        month: String,
        /// What it follows.
        after: String,
    },
    /// 'hardening_steps' holds steps steps; most is the most.
    #[error("'hardening_steps' holds {steps} steps; {most} is the most")]
    StepCount {
        /// How many.
        steps: String,
        /// The most.
        most: String,
    },
    /// 'hardening_steps' counts days from 1 to 365.
    #[error("'hardening_steps' counts days from 1 to 365")]
    StepDays,
    /// 'hardening_steps' go toward planting out, but days days before follows after.
    #[error("'hardening_steps' go toward planting out, but {days} days before follows {after}")]
    StepOrder {
        /// Days before planting out.
        days: String,
        /// What it follows.
        after: String,
    },
    /// A figure holds count texts; most is the most.
    #[error("'{name}' holds {count} texts; {most} is the most")]
    TooMany {
        /// Name of the figure or list.
        name: String,
        /// How many.
        count: String,
        /// The most.
        most: String,
    },
    /// A figure holds an empty text.
    #[error("'{name}' holds an empty text")]
    EmptyText {
        /// Name of the figure or list.
        name: String,
    },
    /// A species needs a name in English or Spanish.
    #[error("a species needs a name in English or Spanish")]
    NoCommonName,
    /// A species' code is three letters a to z; 'written' is not.
    #[error("a species' code is three letters a to z; '{written}' is not")]
    BadCode {
        /// What was written.
        written: String,
    },
    /// The key of a species cannot be changed.
    #[error("the key of a species cannot be changed")]
    KeyChanged,
    /// Unknown role 'written': nursery or nurse.
    #[error("unknown role '{written}': nursery or nurse")]
    UnknownRole {
        /// What was written.
        written: String,
    },
    /// Unknown flag 'written'.
    #[error("unknown flag '{written}'")]
    UnknownFlag {
        /// What was written.
        written: String,
    },
    /// Unknown figure 'written'.
    #[error("unknown figure '{written}'")]
    UnknownFigure {
        /// What was written.
        written: String,
    },
    /// Unknown figure 'written'; the nearest is 'nearest'.
    #[error("unknown figure '{written}'; the nearest is '{nearest}'")]
    UnknownFigureNear {
        /// What was written.
        written: String,
        /// The nearest name.
        nearest: String,
    },
    /// A figure is a text.
    #[error("'{name}' is a text")]
    NotText {
        /// Name of the figure or list.
        name: String,
    },
    /// A figure is a text or a list of texts.
    #[error("'{name}' is a text or a list of texts")]
    NotTexts {
        /// Name of the figure or list.
        name: String,
    },
    /// 'names' holds 'en' and 'es', each a name or a list of names.
    #[error("'names' holds 'en' and 'es', each a name or a list of names")]
    NotNames,
    /// 'names' holds 'en' and 'es', not 'written'.
    #[error("'names' holds 'en' and 'es', not '{written}'")]
    NamesLanguage {
        /// What was written.
        written: String,
    },
    /// A figure is true or false.
    #[error("'{name}' is true or false")]
    NotYesOrNo {
        /// Name of the figure or list.
        name: String,
    },
    /// A figure is one of: words.
    #[error("'{name}' is one of: {words}")]
    NotTheWord {
        /// Name of the figure or list.
        name: String,
        /// The words that are read.
        words: String,
    },
    /// A figure is a list of records with month, height_m and radius_m.
    #[error("'{name}' is a list of records with month, height_m and radius_m")]
    NotPoints {
        /// Name of the figure or list.
        name: String,
    },
    /// A figure is a list of records with days_before and shade_pct, bed_shade, water_every_days or soak.
    #[error("'{name}' is a list of records with days_before and shade_pct, bed_shade, water_every_days or soak")]
    NotSteps {
        /// Name of the figure or list.
        name: String,
    },
    /// A species needs a name.
    #[error("a species needs a name")]
    NoName,
    /// The species' name holds an invisible or control character: shown.
    #[error("the species' name holds an invisible or control character: {shown}")]
    NameUnseen {
        /// The name, its unseen characters shown.
        shown: String,
    },
    /// A species' name has at most most characters.
    #[error("a species' name has at most {most} characters")]
    NameTooLong {
        /// The most.
        most: String,
    },
    /// A figure has no letters a to z: give the species a code of three letters.
    #[error("'{name}' has no letters a to z: give the species a code of three letters")]
    NoLetters {
        /// Name of the figure or list.
        name: String,
    },
    /// No code is free for A figure: give the species a code of three letters.
    #[error("no code is free for '{name}': give the species a code of three letters")]
    NoFreeCode {
        /// Name of the figure or list.
        name: String,
    },
    /// Several plants bear a name.
    #[error("several plants are called '{name}': {}", .plants.iter().map(SpeciesKey::as_str).collect::<Vec<_>>().join(", "))]
    SeveralPlants {
        /// The name.
        name: String,
        /// The plants.
        plants: Vec<SpeciesKey>,
    },
    /// A figure already names other.
    #[error("'{name}' already names {other}")]
    NameTaken {
        /// Name of the figure or list.
        name: String,
        /// The species it names.
        other: String,
    },
}
