//! Entries out, one a line: readable again by [`super::read_lines`], the same bytes for the same journal.

use std::borrow::Borrow;
use std::io::{self, Write};

use crate::nursery::envelope::Sealed;

/// Writes one entry as its line.
pub fn write_line(entry: &Sealed, out: &mut dyn Write) -> io::Result<()> {
    out.write_all(entry.line().as_bytes())?;
    out.write_all(b"\n")
}

/// Writes entries one a line, in the order given, and answers how many. Nothing of the moment of export goes in. A
/// broken pipe comes back as the error it is.
pub fn write_lines<E: Borrow<Sealed>>(entries: impl IntoIterator<Item = E>, out: &mut dyn Write) -> io::Result<u64> {
    let mut written = 0;
    for entry in entries {
        write_line(entry.borrow(), out)?;
        written += 1;
    }
    out.flush()?;
    Ok(written)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{Day, DeviceId, EntryId, Moment};
    use crate::nursery::envelope::Draft;
    use crate::share::TableFor;

    struct Closed;

    impl Write for Closed {
        fn write(&mut self, _: &[u8]) -> io::Result<usize> {
            Err(io::ErrorKind::BrokenPipe.into())
        }
        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn a_closed_pipe_comes_back_as_the_error_it_is() {
        let body = serde_json::Map::from_iter([("tray".to_string(), "cof-031".into())]);
        let happened = Day::from_ymd(2026, 3, 14).unwrap();
        let draft = Draft { happened, clock: None, who: "mara".into(), kind: "flushed".into(), body };
        let id = EntryId { device: DeviceId::new("k3f9").unwrap(), seq: 1 };
        let entry = draft.seal(id, Moment::from_millis(0), 1, None);
        let csv = |entries: [&Sealed; 1]| crate::share::write_csv(entries, TableFor::AnyProgram, &mut Closed);
        assert_eq!(write_lines([&entry], &mut Closed).unwrap_err().kind(), io::ErrorKind::BrokenPipe);
        assert_eq!(csv([&entry]).unwrap_err().kind(), io::ErrorKind::BrokenPipe);
    }
}
