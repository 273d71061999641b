//! The program on a real terminal: a pseudo-terminal of the system, and what it shows read by a terminal's rules.

use portable_pty::{Child, CommandBuilder, ExitStatus, MasterPty, PtySize, native_pty_system};
use std::io::{Read, Write};
use std::num::NonZeroU16;
use std::path::Path;
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

/// The longest a test waits for anything to appear.
const PATIENCE: Duration = Duration::from_secs(60);

/// What the terminal has received.
struct Received {
    parser: vt100::Parser,
    bytes: usize,
    escapes: usize,
}

/// A terminal with the program on it.
pub struct Screen {
    master: Option<Box<dyn MasterPty + Send>>,
    child: Box<dyn Child + Send + Sync>,
    writer: Option<Box<dyn Write + Send>>,
    received: Arc<Mutex<Received>>,
    settings_before: String,
}

fn size(columns: u16, rows: u16) -> PtySize {
    PtySize { rows, cols: columns, pixel_width: 0, pixel_height: 0 }
}

fn at_least_one(value: u16) -> NonZeroU16 {
    NonZeroU16::new(value.max(1)).unwrap()
}

impl Screen {
    /// Runs a program with arguments and variables, in a home folder.
    pub fn run(program: &Path, words: &[&str], home: &Path, variables: &[(&str, &str)], at: (u16, u16)) -> Screen {
        let pair = native_pty_system().openpty(size(at.0, at.1)).unwrap();
        let mut command = CommandBuilder::new(program);
        command.args(words);
        command.env_clear();
        for (name, value) in [("HOME", home.to_str().unwrap()), ("TERM", "xterm-256color"), ("LANG", "en_US.UTF-8")] {
            command.env(name, value);
        }
        for (name, value) in variables {
            command.env(name, value);
        }
        let settings_before = format!("{:?}", pair.master.get_termios());
        let child = pair.slave.spawn_command(command).unwrap();
        // Kept open, the terminal would never be seen to end.
        drop(pair.slave);
        let parser = vt100::Parser::new(at_least_one(at.1), at_least_one(at.0), 0);
        let received = Arc::new(Mutex::new(Received { parser, bytes: 0, escapes: 0 }));
        let mut reader = pair.master.try_clone_reader().unwrap();
        let into = Arc::clone(&received);
        std::thread::spawn(move || {
            let mut chunk = [0; 4096];
            while let Ok(count) = reader.read(&mut chunk) {
                if count == 0 {
                    break;
                }
                let mut received = into.lock().unwrap();
                received.parser.process(&chunk[..count]);
                received.bytes += count;
                received.escapes += chunk[..count].iter().filter(|byte| **byte == 0x1b).count();
            }
        });
        let writer = Some(pair.master.take_writer().unwrap());
        Screen { master: Some(pair.master), child, writer, received, settings_before }
    }

    /// Types keys.
    pub fn keys(&mut self, typed: &str) {
        let writer = self.writer.as_mut().unwrap();
        writer.write_all(typed.as_bytes()).unwrap();
        writer.flush().unwrap();
    }

    /// Types keys one read apart, as a person does: the next one when the program has done with the one before.
    pub fn slowly(&mut self, typed: &str) {
        for letter in typed.chars() {
            self.wait_until_it_rests();
            self.keys(letter.encode_utf8(&mut [0; 4]));
        }
        self.wait_until_it_rests();
    }

    /// Types a key again and again until something is shown: on a busy machine a key may be read together with the one
    /// before, and what comes at once is text and no command. For keys that do the same however often they are typed.
    pub fn insist(&mut self, key: &str, wanted: &str) {
        let begun = Instant::now();
        while !self.text().contains(wanted) {
            assert!(begun.elapsed() < PATIENCE, "no {wanted:?} after {key:?} in:\n{}", self.text());
            self.slowly(key);
        }
    }

    /// Waits until the program waits: twice in a row no thread of it runs and nothing new was received.
    pub fn wait_until_it_rests(&self) {
        let begun = Instant::now();
        let (mut at_rest, mut bytes) = (0, self.bytes());
        while at_rest < 2 {
            assert!(begun.elapsed() < PATIENCE, "never at rest:\n{}", self.text());
            std::thread::sleep(Duration::from_millis(20));
            let now = self.bytes();
            at_rest = if now == bytes && !self.runs() { at_rest + 1 } else { 0 };
            bytes = now;
        }
    }

    /// Whether a thread of the program runs or would; where the system does not say, it is taken not to.
    fn runs(&self) -> bool {
        let threads = std::fs::read_dir(format!("/proc/{}/task", self.process())).into_iter().flatten().flatten();
        let mut states = threads.filter_map(|thread| std::fs::read_to_string(thread.path().join("stat")).ok());
        states.any(|stat| stat.rsplit(") ").next().is_some_and(|rest| rest.starts_with(['R', 'D'])))
    }

    /// What is shown.
    pub fn text(&self) -> String {
        self.received.lock().unwrap().parser.screen().contents()
    }

    /// Bytes received so far.
    pub fn bytes(&self) -> usize {
        self.received.lock().unwrap().bytes
    }

    /// Whether any escape sequence was received.
    pub fn received_escapes(&self) -> bool {
        self.received.lock().unwrap().escapes > 0
    }

    /// Waits until something is shown.
    pub fn wait_for(&self, wanted: &str) {
        self.wait_until(&format!("{wanted:?} on the screen"), |text| text.contains(wanted));
    }

    /// Waits until what is shown is as wanted.
    pub fn wait_until(&self, what: &str, wanted: impl Fn(&str) -> bool) {
        let begun = Instant::now();
        while !wanted(&self.text()) {
            assert!(begun.elapsed() < PATIENCE, "no {what} in:\n{}", self.text());
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// Another size.
    pub fn resize(&self, columns: u16, rows: u16) {
        let mut received = self.received.lock().unwrap();
        received.parser.screen_mut().set_size(at_least_one(rows), at_least_one(columns));
        drop(received);
        self.master.as_ref().unwrap().resize(size(columns, rows)).unwrap();
    }

    /// The number of the process.
    pub fn process(&self) -> u32 {
        self.child.process_id().unwrap()
    }

    /// Sends a signal by its name.
    pub fn signal(&self, name: &str) {
        let sent = std::process::Command::new("kill").args(["-s", name, &self.process().to_string()]).status();
        assert!(sent.unwrap().success());
    }

    /// Waits for the end, and how it was.
    pub fn end(&mut self, within: Duration) -> ExitStatus {
        let begun = Instant::now();
        loop {
            if let Some(status) = self.child.try_wait().unwrap() {
                // What was written last is still on its way.
                std::thread::sleep(Duration::from_millis(100));
                return status;
            }
            assert!(begun.elapsed() < within, "still running after {within:?}:\n{}", self.text());
            std::thread::sleep(Duration::from_millis(10));
        }
    }

    /// Kills it at once.
    pub fn kill(&mut self) {
        self.signal("KILL");
        self.end(PATIENCE);
    }

    /// Whether the program asked for the mouse.
    pub fn takes_the_mouse(&self) -> bool {
        self.received.lock().unwrap().parser.screen().mouse_protocol_mode() != vt100::MouseProtocolMode::None
    }

    /// That the terminal is as it was before the program.
    pub fn is_given_back(&self) {
        let settings = || format!("{:?}", self.master.as_ref().unwrap().get_termios());
        // What was written last may still be on its way.
        let begun = Instant::now();
        let given_back = || {
            let received = self.received.lock().unwrap();
            let screen = received.parser.screen();
            settings() == self.settings_before && !screen.alternate_screen() && !screen.hide_cursor()
        };
        while !given_back() && begun.elapsed() < PATIENCE {
            std::thread::sleep(Duration::from_millis(20));
        }
        assert_eq!(settings(), self.settings_before, "the terminal's settings");
        let received = self.received.lock().unwrap();
        let screen = received.parser.screen();
        assert!(!screen.alternate_screen(), "still on the other screen");
        assert!(!screen.hide_cursor(), "the cursor is away");
        assert!(!screen.bracketed_paste(), "pasted text is still marked");
        assert_eq!(screen.mouse_protocol_mode(), vt100::MouseProtocolMode::None, "the mouse is still taken");
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        let _ = self.child.kill();
    }
}
