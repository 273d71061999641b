//! Why a line is not written.

/// Why a line is not written, or what is missing in it.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// The line says that it was not done; the word that says so.
    NotDone(String),
    /// It is still to be done.
    Intent(String),
    /// It is of a coming day.
    Coming(String),
    /// The writer is not sure.
    Unsure(String),
    /// It asks; what it asks of.
    Question(Vec<String>),
    /// The number is missing.
    NoNumber,
    /// Plants are whole.
    NotWhole(f64),
    /// Two numbers where one was to be.
    Range(f64, f64),
    /// A name nobody knows, and the nearest ones.
    UnknownName(String, Vec<String>),
    /// Which tray?
    NoTray,
    /// To which place?
    NoPlace,
    /// Of which lot?
    NoLot,
    /// Treated with what?
    NoRemedy,
    /// A number without its unit, or with one that is not read; those that are.
    NoUnit(&'static str),
    /// One number for several trays.
    EachOrAll(Vec<String>),
    /// No such day; as typed.
    BadDay(String),
    /// A day nobody knows.
    FarOpen(String),
    /// One thing said of several days.
    SeveralDays(Vec<String>),
    /// Holes dug, and the places of the bed where its plan says them.
    SomeHoles(u32, Option<u32>),
    /// Cut with a machete: the weeds of a bed, or all that grew there; the word that says so.
    WeedsOrAll(String),
    /// More lost than half of what stands there.
    OverHalf(u32),
    /// More than there is.
    MoreThanThere(u32),
    /// The tray is in use.
    InUse(String),
    /// The lowest is above the highest.
    Crossed(f64, f64),
    /// A name of two things.
    Both(String),
    /// None of this nurse plant stands in this bed.
    NoneThere(String, String),
    /// It can mean several things.
    Several,
    /// More alive than there are in all: alive, all.
    MoreThanAll(f64, f64),
    /// Counted of so many that are not what stands there: all that stand, or what was seen in a part? Counted, of how many.
    WholeOrPart(f64, f64),
    /// A part that the line does not say, by the field it fills.
    NotSaid(&'static str),
    /// Fields that an entry of this kind must have and the line does not say.
    Lacks(&'static str, Vec<String>),
    /// Of a species several trays stand: which of them?
    WhichTray(Vec<String>),
    /// Of a species that stands in several beds: in which of them?
    WhichBed(Vec<String>),
    /// Of which of the plants of a bed?
    WhichPlant(Vec<String>),
    /// Plants without their leaves, dead or alive; the words that say so.
    DeadOrLeafless(String),
    /// Plants that lived through it; the words that say so.
    LivedThroughIt(String),
    /// A fence that does not stand; the words that say so.
    FenceDown(String),
    /// Several containers are of this volume: which of them?
    WhichContainer(Vec<String>),
    /// A cause that is nearly a known one: as written, and the known one.
    CauseNearly(String, String),
    /// It corrects an earlier line; the word that says so.
    Correction(String),
    /// A number of some of the plants, not of all that live or died; the word that says so.
    OfAPart(String),
    /// Plants taken out for something else than to be thrown away; the words that say so.
    NotThrownAway(String),
    /// Whether grafts took; the word that says so.
    GraftTook(String),
    /// Plants that come away from a bed; the word that says so.
    AwayFrom(String),
    /// It has come to an end; the word that says so.
    Ended(String),
    /// Plants that came back; the word that says so.
    CameBack(String),
    /// A number of something else than plants; of what.
    NotOfPlants(String),
    /// Food or a remedy against pests; its name.
    FoodOrRemedy(String),
    /// Collars without the heights of their plants.
    CollarAlone,
    /// A day, or a height and a collar; as typed.
    DayOrHeight(String),
    /// Of two numbers the second, this one, is right.
    NumberNow(String),
    /// A pest is seen no more; the words that say so.
    PestGone(String),
    /// Rain without millimetres; the words that count something else.
    NoMillimetres(String),
    /// No rain since a day; the word that says so.
    SinceThen(String),
    /// Half, and nobody knows of what; the word.
    HalfOfWhat(String),
    /// Plants on their way to a bed, or planted there.
    PlantedOrOnTheWay,
    /// Not somebody who gets plants; the word.
    NoReceiver(String),
    /// Nothing fits; the words that were not read.
    NoReading(Vec<String>),
}

impl Why {
    /// Whether the line says by itself that it is no fact: not done, still to be done, not sure, a question, at an end, about
    /// an earlier line, about no plants or without a measure.
    pub fn is_no_fact(&self) -> bool {
        matches!(
            self,
            Why::NotDone(_)
                | Why::Intent(_)
                | Why::Coming(_)
                | Why::Unsure(_)
                | Why::Question(_)
                | Why::Correction(_)
                | Why::Ended(_)
                | Why::CameBack(_)
                | Why::NotOfPlants(_)
                | Why::NumberNow(_)
                | Why::PestGone(_)
                | Why::NoMillimetres(_)
                | Why::SinceThen(_)
                | Why::HalfOfWhat(_)
                | Why::FenceDown(_)
                | Why::DeadOrLeafless(_)
                | Why::LivedThroughIt(_)
        )
    }
}
