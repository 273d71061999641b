//! Muddy hands: random keys from every screen. `OUTPLANT_KEYS=50000 cargo test --release --lib muddy` presses more of them.

use super::Stage;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::wording::Lang;

/// Keys pressed in the usual tests.
const USUAL_KEYS: usize = 500;

fn how_many() -> usize {
    std::env::var("OUTPLANT_KEYS").ok().and_then(|written| written.parse().ok()).unwrap_or(USUAL_KEYS)
}

/// Numbers from a seed; the same seed gives the same keys.
struct Dice(u64);

impl Dice {
    fn throw(&mut self, sides: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % sides as u64) as usize
    }

    fn key(&mut self) -> Key {
        const OTHERS: [Key; 14] = [
            Key::Enter,
            Key::Enter,
            Key::Esc,
            Key::Tab,
            Key::BackTab,
            Key::Up,
            Key::Down,
            Key::Down,
            Key::Left,
            Key::Right,
            Key::Home,
            Key::PageUp,
            Key::PageDown,
            Key::Backspace,
        ];
        const LETTERS: &[u8] = b"abcdefghijklmnopqrstuvwxyz0123456789+-., ";
        match self.throw(3) {
            0 => OTHERS[self.throw(OTHERS.len())],
            _ => Key::Char(char::from(LETTERS[self.throw(LETTERS.len())])),
        }
    }
}

#[test]
fn random_keys_do_no_harm() {
    let each = how_many() / 7 + 1;
    for (i, digit) in ('1'..='7').enumerate() {
        let seed = 20_260_415 + i as u64;
        let mut dice = Dice(seed);
        let mut stage = Stage::sample(if i % 2 == 0 { Lang::En } else { Lang::Es });
        stage = stage.sized([120, 80, 48][i % 3], [40, 24, 18][i % 3]);
        stage.keys(&digit.to_string());
        for pressed in 0..each {
            let key = dice.key();
            let (asked, before) = (matches!(stage.model.layers.last(), Some(Layer::Confirm(_))), stage.taken_back);
            let entries = stage.entries();
            stage.key(key);
            let confirmed = asked && key == Key::Char('w');
            let told = format!("seed {seed}, key {pressed} is {key:?}");
            assert!(stage.taken_back == before || confirmed, "{told}: taken back without being asked");
            assert!(stage.entries() >= entries, "{told}: an entry is gone");
            if pressed % 16 == 0 {
                stage.frame();
            }
            if stage.left {
                stage.left = false;
                stage.keys(&digit.to_string());
            }
        }
    }
}

#[test]
fn every_key_pressed_twice_fast_takes_nothing_back() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    for digit in '1'..='7' {
        for letter in ('a'..='z').filter(|letter| *letter != 'q') {
            stage.keys(&format!("{digit}{letter}{letter}"));
            for _ in 0..6 {
                stage.key(Key::Esc);
            }
            stage.left = false;
        }
    }
    assert_eq!(stage.taken_back, 0);
}
