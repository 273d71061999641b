//! Keys: what a person can press, and the one table from which hints and help are made.
//!
//! Only letters, digits, arrows, Enter, Tab, Space and `+ - . ,` mean anything, so that every keyboard has them; Esc,
//! Home, End and the page keys are shorter ways. The same key means the same in both languages; its word is translated.

use crate::words;

/// A key as this program knows it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Key {
    /// A letter, digit or sign.
    Char(char),
    /// Enter.
    Enter,
    /// Escape.
    Esc,
    /// Tab.
    Tab,
    /// Shift and Tab.
    BackTab,
    /// Arrow up.
    Up,
    /// Arrow down.
    Down,
    /// Arrow left.
    Left,
    /// Arrow right.
    Right,
    /// To the beginning.
    Home,
    /// To the end.
    End,
    /// A page up.
    PageUp,
    /// A page down.
    PageDown,
    /// Takes out the letter before.
    Backspace,
    /// Takes out the letter behind.
    Delete,
    /// Ctrl-L: draw all again.
    Redraw,
    /// Ctrl-Z: to the shell and back.
    Suspend,
    /// Ctrl-C: leave at once.
    Interrupt,
    /// Ctrl-U: empties the line that is typed.
    ClearLine,
}

impl Key {
    /// Whether it closes what is open: `q` as well as Esc.
    pub(crate) fn goes_back(self) -> bool {
        matches!(self, Key::Esc | Key::Char('q'))
    }
}

words! {
    /// What a key does. The file spelling names its sentence.
    KeyAction {
        /// Another screen by its digit.
        ScreenDigit: "screen_digit";
        /// The next screen.
        ScreenNext: "screen_next";
        /// Up and down a list.
        Move: "move";
        /// A page up or down.
        Page: "page";
        /// Opens what is chosen, or does the usual.
        Open: "open";
        /// Back.
        Back: "back";
        /// Leaves the program, after asking once.
        Leave: "leave";
        /// Help.
        Help: "help";
        /// Why.
        Why: "why";
        /// All reasons, or only what is not met.
        AllReasons: "all_reasons";
        /// Those that matter most.
        FewerReasons: "fewer_reasons";
        /// Finds a tray or bed by its code.
        Find: "find";
        /// Writes anything down.
        Write: "write";
        /// Another day.
        Day: "day";
        /// The day for what is written.
        WritingDay: "writing_day";
        /// What changed.
        News: "news";
        /// Takes the last back.
        Undo: "undo";
        /// Language, contrast, reading only, mouse.
        Options: "options";
        /// High contrast.
        Contrast: "contrast";
        /// The stop's usual action.
        Usual: "usual";
        /// Counts.
        Count: "count";
        /// Lost.
        Lost: "lost";
        /// Culled.
        Cull: "cull";
        /// Moved on.
        MoveOn: "move_on";
        /// Carried to another place.
        Carry: "carry";
        /// A step of the shade.
        Shade: "shade";
        /// A step of the water.
        Water: "water";
        /// A sample.
        Measure: "measure";
        /// A plug.
        Plug: "plug";
        /// New leaves.
        Flush: "flush";
        /// Out to a bed.
        Outplant: "outplant";
        /// A note.
        Note: "note";
        /// Passes a stop over.
        Skip: "skip";
        /// One stop a screen.
        OneStop: "one_stop";
        /// The task is let go.
        LetGo: "let_go";
        /// Filters as one types.
        Filter: "filter";
        /// Sorts by the next column.
        Sort: "sort";
        /// Groups otherwise.
        Group: "group";
        /// The next pane or part.
        NextPart: "next_part";
        /// On the loading list.
        Load: "load";
        /// More or fewer of it.
        MoreOrFewer: "more_or_fewer";
        /// What goes out is written down.
        ConfirmLoad: "confirm_load";
        /// Withdraws an entry.
        Withdraw: "withdraw";
        /// A day earlier or later.
        DayStep: "day_step";
        /// A month earlier or later.
        MonthStep: "month_step";
        /// The next field.
        NextField: "next_field";
        /// Writes the form.
        Submit: "submit";
        /// Changes the choice.
        Choice: "choice";
        /// To what it is about.
        GoThere: "go_there";
        /// Empty trays too, or not.
        EmptyToo: "empty_too";
        /// Sows from a lot.
        SowLot: "sow_lot";
        /// How many to sow for how many plants.
        SowFor: "sow_for";
        /// Tests a lot.
        TestLot: "test_lot";
        /// Counts what is left of a lot.
        CountLot: "count_lot";
        /// A lot is kept another way.
        KeepLot: "keep_lot";
        /// Lots that are used up too, or not.
        UsedUpToo: "used_up_too";
        /// What can wait of the round.
        RestOfRound: "rest_of_round";
        /// Reads the light.
        ReadLight: "read_light";
        /// Checks the soil.
        CheckSoil: "check_soil";
        /// Ground work done.
        GroundWork: "ground_work";
        /// Counts nurse plants.
        CountNurses: "count_nurses";
        /// Counts survivors.
        CountSurvivors: "count_survivors";
        /// Along the plan of a bed.
        AlongBed: "along_bed";
        /// The light of a bed by position and month, or its plan again.
        LightMap: "light_map";
        /// A number is typed.
        HowMany: "how_many";
        /// Off the loading list.
        Unload: "unload";
        /// Writes the whole list.
        WriteList: "write_list";
    }
}

impl KeyAction {
    /// Whether it writes something down, or begins to: not named where nothing can be written.
    pub(crate) fn writes(self) -> bool {
        use KeyAction::*;
        match self {
            Usual | Count | Lost | Cull | MoveOn | Carry | Shade | Water | Measure | Plug | Flush | Outplant | Note
            | LetGo | ConfirmLoad | WriteList | Withdraw | SowLot | TestLot | CountLot | KeepLot | ReadLight
            | CheckSoil | GroundWork | CountNurses | CountSurvivors | Write | Undo | Submit => true,
            ScreenDigit | ScreenNext | Move | Page | Open | Back | Leave | Help | Why | AllReasons | FewerReasons
            | Find | Day | WritingDay | News | Options | Contrast | Skip | OneStop | Filter | Sort | Group
            | NextPart | Load | MoreOrFewer | DayStep | MonthStep | NextField | Choice | GoThere | EmptyToo
            | SowFor | UsedUpToo | RestOfRound | AlongBed | LightMap | HowMany | Unload => false,
        }
    }
}

/// A line of the key table.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct KeyLine {
    /// The keys as they are shown: `l`, `1-7`, `Enter`, `arrows`.
    pub(crate) keys: &'static str,
    /// What they do.
    pub(crate) does: KeyAction,
    /// Whether the hint line names it.
    pub(crate) hinted: bool,
}

/// A line that the hints name.
pub(crate) const fn hinted(keys: &'static str, does: KeyAction) -> KeyLine {
    KeyLine { keys, does, hinted: true }
}

/// A line that only help names.
pub(crate) const fn known(keys: &'static str, does: KeyAction) -> KeyLine {
    KeyLine { keys, does, hinted: false }
}

/// Keys that mean the same on every screen.
pub(crate) const EVERYWHERE: &[KeyLine] = &[
    known("1-7", KeyAction::ScreenDigit),
    known("Tab", KeyAction::ScreenNext),
    known("arrows", KeyAction::Move),
    known(", .", KeyAction::Page),
    known("Enter", KeyAction::Open),
    hinted("q", KeyAction::Leave),
    known("Esc", KeyAction::Back),
    hinted("h", KeyAction::Help),
    hinted("y", KeyAction::Why),
    known("f", KeyAction::Find),
    hinted("n", KeyAction::Write),
    known("d", KeyAction::Day),
    known("b", KeyAction::WritingDay),
    known("e", KeyAction::News),
    known("u", KeyAction::Undo),
    known("x", KeyAction::Contrast),
    known("z", KeyAction::Options),
];

/// Keys that write about the tray that is chosen, on the Walk and on the Trays.
pub(crate) const ON_A_TRAY: &[KeyLine] = &[
    known("c", KeyAction::Count),
    known("l", KeyAction::Lost),
    known("k", KeyAction::Cull),
    known("m", KeyAction::MoveOn),
    known("s", KeyAction::Shade),
    known("w", KeyAction::Water),
    known("g", KeyAction::Measure),
    known("p", KeyAction::Plug),
    known("t", KeyAction::Flush),
    known("o", KeyAction::Outplant),
    known("a", KeyAction::Note),
];

/// The kind of entry that a key of [`ON_A_TRAY`] opens the form of.
pub(crate) fn kind_for_tray(key: char) -> Option<&'static str> {
    match key {
        'c' => Some("counted"),
        'l' => Some("lost"),
        'k' => Some("culled"),
        'm' => Some("moved_on"),
        's' => Some("shade_set"),
        'w' => Some("watering_set"),
        'g' => Some("measured"),
        'p' => Some("plug_checked"),
        't' => Some("flushed"),
        'o' => Some("outplanted"),
        'a' => Some("noted"),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_keys_that_every_keyboard_has() {
        for line in EVERYWHERE.iter().chain(ON_A_TRAY) {
            for bad in "[]{}\\|@#~^/?'\"`".chars() {
                assert!(!line.keys.contains(bad), "{} needs {bad}", line.keys);
            }
        }
    }

    #[test]
    fn no_key_of_a_tray_means_something_else_everywhere() {
        for line in ON_A_TRAY {
            assert!(EVERYWHERE.iter().all(|other| other.keys != line.keys), "{} has two meanings", line.keys);
            assert!(kind_for_tray(line.keys.chars().next().unwrap()).is_some());
        }
    }
}
