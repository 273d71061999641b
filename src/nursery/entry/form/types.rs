//! The types that fields of entries have.

use serde::{Deserialize, Serialize};
use std::sync::Arc;

use super::shape::{FieldType, NameOf, Shape};
use crate::base::word::Word;
use crate::base::{BedName, ContainerName, Day, EntryId, FieldName, LotCode, PlaceName, SpeciesKey, TrayCode};
use crate::nursery::entry::subject::Subject;
use crate::words;

macro_rules! shapes {
    ($($type:ty => $shape:expr;)*) => {$(impl FieldType for $type { const SHAPE: Shape = $shape; })*};
}

macro_rules! numbers {
    ($($(#[$note:meta])* $name:ident $least:expr, $most:expr, $decimals:expr;)*) => {$(
        $(#[$note])*
        #[derive(Clone, Copy, PartialEq, PartialOrd, Debug, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub f64);
        impl FieldType for $name {
            const SHAPE: Shape = Shape::Number { least: $least, most: $most, decimals: $decimals };
        }
    )*};
}

macro_rules! word_fields {
    ($($name:ident)*) => {$(
        impl FieldType for $name {
            const SHAPE: Shape = Shape::Word(&{
                const WORDS: &[($name, &[&str])] = <$name as Word>::WORDS;
                let mut spellings: [&[&str]; WORDS.len()] = [&[]; WORDS.len()];
                let mut i = 0;
                while i < WORDS.len() {
                    spellings[i] = WORDS[i].1;
                    i += 1;
                }
                spellings
            });
        }
    )*};
}

/// A whole number of plants, seeds, cells or things, 0 or more.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Count(pub u32);

/// Free text without unseen characters.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Text(pub Arc<str>);

/// A day of the year, MM-DD.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[serde(transparent)]
pub struct MonthDay(pub Arc<str>);

/// A place in a bed, row.place.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Spot(pub Arc<str>);

/// A nursery's own figures, by name.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[serde(transparent)]
pub struct OpenRecord(pub serde_json::Map<String, serde_json::Value>);

/// The lowest temperature that can be written, degrees C.
pub(super) const COLDEST_C: f64 = -60.0;

numbers! {
    /// Percent, 0 to 100.
    Percent 0.0, 100.0, 2;
    /// A share, 0 to 1.
    ShareOfOne 0.0, 1.0, 4;
    /// A number of 0 or more, to three decimals.
    NotNegative 0.0, 1e9, 3;
    /// A length or size above nothing (at least 0.001), to three decimals.
    Size 0.001, 1e7, 3;
    /// Height of a seedling, cm: 0.1 to 1,000 (a number beyond is another unit).
    SeedlingHeight 0.1, 1000.0, 3;
    /// Root-collar diameter of a seedling, mm: 0.05 to 200 (a number beyond is another unit).
    Collar 0.05, 200.0, 3;
    /// Rain of a day, mm; the most ever measured is 1,825 (World Meteorological Organization, from memory).
    DayRain 0.0, 2000.0, 2;
    /// A latitude in degrees.
    Latitude -90.0, 90.0, 6;
    /// A longitude in degrees.
    Longitude -180.0, 180.0, 6;
    /// An altitude, m.
    Altitude -500.0, 9000.0, 1;
    /// Hours ahead of UTC.
    OffsetHours -14.0, 14.0, 2;
    /// A temperature, degrees C.
    Celsius COLDEST_C, 70.0, 2;
    /// A bearing, degrees from north.
    Bearing 0.0, 360.0, 1;
    /// Slope, percent.
    Slope 0.0, 500.0, 1;
}

/// Names of what has a story of its own.
macro_rules! subjects {
    ($($type:ident => $of:ident;)*) => {$(
        impl FieldType for $type {
            const SHAPE: Shape = Shape::Code(NameOf::$of);
            const NAMES: bool = true;
            fn subject(&self) -> Option<Subject> { Some(Subject::$of(self.clone())) }
        }
    )*};
}

subjects! { TrayCode => Tray; LotCode => Lot; BedName => Bed; PlaceName => Place; }

shapes! {
    FieldName => Shape::Code(NameOf::Field);
    ContainerName => Shape::Code(NameOf::Container);
    SpeciesKey => Shape::Species;
    Count => Shape::Count;
    bool => Shape::Flag;
    Text => Shape::Text;
    Day => Shape::Day;
    MonthDay => Shape::MonthDay;
    Spot => Shape::Spot;
    EntryId => Shape::Entry;
    OpenRecord => Shape::Open;
}

words! {
    /// What the file was alarmed about.
    Alarm {
        /// Entries that were saved here are gone.
        Restored: "restored", "restaurado";
        /// The clock was wrong when something was written.
        Clock: "clock", "reloj";
    }
}

words! {
    /// How seed is kept.
    Kept {
        /// In the pod or fruit.
        InPod: "in_pod", "en mazorca", "en fruto";
        /// With the mucilage on.
        MucilageOn: "mucilage_on", "con mucilago";
        /// Washed and kept moist.
        WashedMoist: "washed_moist", "lavada humeda";
        /// In parchment.
        InParchment: "in_parchment", "en pergamino";
        /// Dry in a closed vessel.
        DrySealed: "dry_sealed", "seca cerrada", "seca sellada";
        /// Dry in the open.
        DryOpen: "dry_open", "seca abierta";
        /// Cold.
        Cold: "cold", "frio", "en frio";
        /// Another way.
        Other: "other", "otro", "otra";
        /// Nobody knows how.
        Unknown: "unknown", "desconocido", "desconocida", "no se sabe";
    }
    /// Where plants that are not from our seed come from.
    ArrivedFrom {
        /// Already standing when the book was begun.
        Opening: "opening", "apertura", "inicio";
        /// Bought.
        Bought: "bought", "comprado", "comprada";
        /// Lifted from under a mother tree.
        Wildling: "wildling", "rescate", "brinzal";
        /// A rooted cutting.
        Cutting: "cutting", "esqueje", "estaca";
        /// A graft.
        Graft: "graft", "injerto";
        /// A gift.
        Gift: "gift", "regalo";
    }
    /// The form a plant comes in.
    PlantForm {
        /// A plug from a cell.
        Plug: "plug", "pilon", "cepellon", "tubete";
        /// A bag.
        Bag: "bag", "bolsa", "funda";
        /// Bare roots.
        BareRoot: "bare_root", "raiz desnuda";
        /// A stump.
        Stump: "stump", "tocon";
    }
    /// How seedlings go into another tray.
    MovedHow {
        /// Pricked out of the seedbed.
        PrickedOut: "pricked_out", "repicado", "repique";
        /// Into a larger container.
        PottedOn: "potted_on", "trasplantado", "cambio de bolsa";
        /// Together with another tray.
        Merged: "merged", "juntado", "unido";
    }
    /// What a lifted plug shows.
    Roots {
        /// The plug falls apart: too early.
        Crumbles: "crumbles", "se desmorona";
        /// It holds, white tips visible.
        Holds: "holds", "firme", "sostiene";
        /// A mat of circling roots: late.
        Circling: "circling", "enrollada", "enrolladas";
    }
    /// How planting positions are laid out.
    PlantingPattern {
        /// Same distance both ways.
        Square: "square", "cuadrado", "marco real";
        /// Different distance between rows and in the row.
        Rectangle: "rectangle", "rectangulo";
        /// Each second row shifted by half.
        Triangle: "triangle", "triangulo", "tresbolillo";
        /// A square with one more in its centre.
        Quincunx: "quincunx", "cinco de oros";
        /// Pairs of rows.
        DoubleRow: "double_row", "doble surco", "surco doble";
    }
    /// What is cut of a nurse plant.
    CutWhat {
        /// Leaves.
        Leaves: "leaves", "hojas";
        /// The stem.
        Stem: "stem", "tallo";
        /// Bunch or tubers harvested.
        Harvest: "harvest", "cosecha";
        /// The whole plant.
        Felled: "felled", "tumbado", "tumbada";
    }
    /// The sky during a light reading.
    Sky {
        /// Overcast.
        Overcast: "overcast", "nublado";
        /// Clear.
        Clear: "clear", "despejado";
    }
    /// Where the ground was read.
    SoilWhere {
        /// In the bottom of a dug hole.
        Beneath: "beneath", "debajo", "fondo del hoyo";
        /// Beside a dug hole.
        Beside: "beside", "al lado", "junto al hoyo";
        /// Where nobody dug.
        Undug: "undug", "sin cavar", "no cavado";
    }
    /// The shape of lifted tubers.
    Tubers {
        /// Pinched thin: hard ground.
        ThinNecked: "thin_necked", "delgadas", "cuello delgado";
        /// Even.
        Even: "even", "parejas";
        /// Full.
        Full: "full", "gruesas", "llenas";
    }
    /// Where the first row and place of a bed stand.
    BedEdges {
        /// Half a spacing inside.
        Half: "half", "media", "a media distancia";
        /// On the edge, counted on both sides.
        Counted: "counted", "contados", "contando las orillas";
    }
    /// Ground work.
    GroundTask {
        /// Cleared of grass and brush.
        Cleared: "cleared", "limpiado", "chapeado", "limpio";
        /// Holes dug.
        Holes: "holes", "hoyos", "ahoyado";
        /// A ring weeded.
        Weeded: "weeded", "deshierbado", "desyerbado", "plateo";
        /// Mulched.
        Mulched: "mulched", "acolchado", "cobertura";
        /// Fenced.
        Fenced: "fenced", "cercado";
    }
}

word_fields! { Alarm BedEdges Kept ArrivedFrom PlantForm MovedHow Roots PlantingPattern CutWhat Sky SoilWhere Tubers GroundTask }
