//! The program itself, run in a folder of its own with nothing of this machine's settings.

use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use serde_json::Value;

/// A home folder for one test.
pub struct Home {
    pub folder: tempfile::TempDir,
    pub today: String,
}

impl Default for Home {
    fn default() -> Home {
        Home { folder: tempfile::tempdir().unwrap(), today: "2026-04-15".into() }
    }
}

/// How a run ended.
pub struct Ended {
    pub code: i32,
    pub out: String,
    pub err: String,
}

impl Home {
    /// The folder.
    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    /// A file in it.
    pub fn file(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// A file with a text, this person's alone as a nursery is.
    pub fn with(&self, name: &str, text: impl AsRef<[u8]>) -> PathBuf {
        let path = self.file(name);
        std::fs::write(&path, text).unwrap();
        #[cfg(unix)]
        std::fs::set_permissions(&path, std::os::unix::fs::PermissionsExt::from_mode(0o600)).unwrap();
        path
    }

    /// The program, ready to be given arguments.
    pub fn program(&self) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_outplant"));
        command
            .env_clear()
            .env("HOME", self.path())
            .env("LANG", "C")
            // The clock of the wall runs as at the nursery, so that no hour of the day at which tests run matters.
            .env("TZ", "NUR-2")
            .env("USER", "tester")
            .env("OUTPLANT_TODAY", &self.today)
            .env("OUTPLANT_NURSERY", self.file("nursery.outplant"))
            .stdin(Stdio::null());
        command
    }

    /// Runs it with words as typed.
    pub fn run(&self, words: &[&str]) -> Ended {
        ended(self.program().args(words).output().unwrap())
    }

    /// Runs it with words as typed and a text piped in.
    pub fn run_with(&self, words: &[&str], piped: &str) -> Ended {
        use std::io::Write;
        let mut command = self.program();
        command.args(words).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut running = command.spawn().unwrap();
        // The program may end without reading all of it.
        let _ = running.stdin.take().unwrap().write_all(piped.as_bytes());
        ended(running.wait_with_output().unwrap())
    }

    /// Runs it and expects it to do its work.
    pub fn done(&self, words: &[&str]) -> String {
        let ended = self.run(words);
        assert_eq!(ended.code, 0, "{words:?}\n{}\n{}", ended.out, ended.err);
        ended.out
    }

    /// Runs it and expects a refusal; the answer is what it says.
    pub fn refused(&self, words: &[&str]) -> String {
        let ended = self.run(words);
        assert_eq!(ended.code, 1, "{words:?}\n{}\n{}", ended.out, ended.err);
        assert_eq!(ended.out, "", "{words:?}");
        ended.err
    }

    /// Runs it with `--json` and reads the answer.
    pub fn json(&self, words: &[&str]) -> Value {
        let mut all = words.to_vec();
        all.push("--json");
        serde_json::from_str(&self.done(&all)).unwrap()
    }

    /// Begins a nursery.
    pub fn begun(self) -> Home {
        self.done(&["begin", "--name", "Test terrace", "--lat", "-1.2", "--lon", "36.1", "--altitude", "1650"]);
        self
    }

    /// Writes one entry.
    pub fn write(&self, kind: &str, fields: &[&str]) {
        let mut words = vec!["write", kind];
        words.extend(fields);
        self.done(&words);
    }
}

fn ended(output: Output) -> Ended {
    Ended {
        code: output.status.code().unwrap_or(-1),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}
