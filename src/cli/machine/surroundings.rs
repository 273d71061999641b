//! What the program stands in: environment, terminal, clock, user. Read once, here, and handed on.

use chrono::{Local, Timelike};
use std::io::IsTerminal;
use std::path::PathBuf;

use crate::base::{Clock, Day, Moment};
use crate::desk::Now;
use crate::settings::Folders;

/// The surroundings of one run.
#[derive(Clone, Debug)]
pub struct Surroundings {
    /// Where things are kept.
    pub folders: Folders,
    /// `OUTPLANT_NURSERY`.
    pub nursery: Option<PathBuf>,
    /// `OUTPLANT_TODAY`.
    pub today: Option<String>,
    /// The language of the system: `LC_ALL`, `LC_MESSAGES`, `LANG`, the first that is set.
    pub lang: Option<String>,
    /// The system's user.
    pub user: Option<String>,
    /// Columns of the screen.
    pub columns: usize,
    /// Whether answers go to a screen.
    pub out_is_terminal: bool,
    /// Whether notes go to a screen.
    pub notes_are_seen: bool,
    /// Whether questions can be asked.
    pub can_ask: bool,
    /// Whether colour may be used.
    pub colour: bool,
    /// Whether only ASCII can be shown: the language of the system is not in UTF-8, or it is the bare console.
    pub ascii: bool,
    /// Whether the terminal, or the person, can only use prompts: `TERM=dumb`, or `ACCESSIBLE` set.
    pub prompts_only: bool,
    /// Whether the terminal is a telephone's, which is touched: `TERMUX_VERSION` is set.
    pub touched: bool,
}

impl Surroundings {
    /// Reads the surroundings of this process.
    pub fn of_process() -> Surroundings {
        let text = |name: &str| std::env::var(name).ok().filter(|value| !value.is_empty());
        let out_is_terminal = std::io::stdout().is_terminal();
        let dumb = text("TERM").as_deref() == Some("dumb");
        Surroundings {
            folders: Folders::of_user(),
            nursery: std::env::var_os("OUTPLANT_NURSERY").filter(|value| !value.is_empty()).map(PathBuf::from),
            today: text("OUTPLANT_TODAY"),
            lang: text("LC_ALL").or_else(|| text("LC_MESSAGES")).or_else(|| text("LANG")),
            user: text("USER").or_else(|| text("LOGNAME")).or_else(|| text("USERNAME")),
            columns: columns(text("COLUMNS").as_deref(), out_is_terminal),
            out_is_terminal,
            notes_are_seen: std::io::stderr().is_terminal(),
            can_ask: out_is_terminal && std::io::stdin().is_terminal(),
            colour: colour_wanted(&text, out_is_terminal),
            ascii: is_ascii(text("LC_ALL").or_else(|| text("LC_CTYPE")).or_else(|| text("LANG")), text("TERM")),
            prompts_only: dumb || text("ACCESSIBLE").is_some(),
            touched: text("TERMUX_VERSION").is_some(),
        }
    }

    /// What the clock says; the error is the text that is no day.
    pub fn now(&self) -> Result<Now, String> {
        let local = Local::now();
        let moment = Moment::from_millis(local.timestamp_millis());
        match &self.today {
            None => Ok(Now {
                today: Day::from_date(local.date_naive()),
                clock: Clock::from_hm(local.hour(), local.minute()),
                moment,
            }),
            Some(written) => {
                let today: Day = written.parse().map_err(|_| written.clone())?;
                // The instant follows the day that was set, at the time of day the clock shows.
                let offset_h = f64::from(local.offset().local_minus_utc()) / 3600.0;
                let since_midnight = i64::from(local.num_seconds_from_midnight()) * 1000;
                let midnight = Moment::end_of(today.plus(-1), offset_h).millis() + 1;
                Ok(Now {
                    today,
                    clock: Clock::from_hm(local.hour(), local.minute()),
                    moment: Moment::from_millis(midnight + since_midnight),
                })
            }
        }
    }
}

/// Whether colour is used where neither an option nor the settings say so. What leads over what: `NO_COLOR` (no-color.org),
/// then `CLICOLOR_FORCE` or `FORCE_COLOR`, `CLICOLOR=0`, `TERM=dumb`, and whether a screen shows it.
fn colour_wanted(set: &dyn Fn(&str) -> Option<String>, out_is_terminal: bool) -> bool {
    let says = |name: &str| set(name).filter(|value| !value.is_empty());
    let forced = ["CLICOLOR_FORCE", "FORCE_COLOR"].iter().any(|name| says(name).is_some_and(|value| value != "0"));
    match says("NO_COLOR") {
        Some(_) => false,
        None if forced => true,
        None => out_is_terminal && says("CLICOLOR").as_deref() != Some("0") && says("TERM").as_deref() != Some("dumb"),
    }
}

/// Whether the characters of the system are too few for more than ASCII.
fn is_ascii(locale: Option<String>, term: Option<String>) -> bool {
    let utf8 = locale.is_none_or(|locale| {
        let folded = locale.to_lowercase();
        folded.contains("utf-8") || folded.contains("utf8")
    });
    !utf8 || term.as_deref() == Some("linux")
}

/// Widest lines of answers: as COLUMNS or the screen says, 80 where nobody does, at most 120, as long lines are hard to
/// read.
fn columns(written: Option<&str>, out_is_terminal: bool) -> usize {
    const USUAL: usize = 80;
    const MOST: usize = 120;
    const LEAST: usize = 40;
    let screen = || {
        let size = if out_is_terminal { terminal_size::terminal_size() } else { None };
        size.map(|(width, _)| usize::from(width.0)).filter(|columns| *columns > 0)
    };
    written.and_then(|text| text.parse().ok()).or_else(screen).unwrap_or(USUAL).clamp(LEAST, MOST)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_says_whether_there_is_colour_leads_in_the_stated_order() {
        let wanted = |set: &[(&str, &str)], out_is_terminal| {
            let get = |name: &str| set.iter().find(|(known, _)| *known == name).map(|(_, value)| value.to_string());
            colour_wanted(&get, out_is_terminal)
        };
        let dumb = ("TERM", "dumb");
        for (set, on_screen, in_pipe) in [
            (&[][..], true, false),
            (&[dumb], false, false),
            (&[("CLICOLOR", "0")], false, false),
            (&[("CLICOLOR", "1")], true, false),
            (&[("CLICOLOR_FORCE", "1"), dumb], true, true),
            (&[("FORCE_COLOR", "1"), ("CLICOLOR", "0")], true, true),
            (&[("FORCE_COLOR", "0")], true, false),
            (&[("NO_COLOR", "1"), ("FORCE_COLOR", "1")], false, false),
            (&[("NO_COLOR", ""), ("FORCE_COLOR", "1")], true, true),
            (&[("NO_COLOR", "1")], false, false),
        ] {
            assert_eq!((wanted(set, true), wanted(set, false)), (on_screen, in_pipe), "{set:?}");
        }
    }
}
