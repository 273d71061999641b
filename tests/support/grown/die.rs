//! A seeded die (SplitMix64, Steele, Lea & Flood 2014).

pub struct Die(pub u64);

impl Die {
    fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 up to but not 1.
    pub fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub fn chance(&mut self, share: f64) -> bool {
        self.share() < share
    }

    /// Both ends can come.
    pub fn between(&mut self, least: i32, most: i32) -> i32 {
        least + (self.share() * f64::from(most - least + 1)) as i32
    }

    /// The middle, give or take so much of it, rarely more than twice that.
    pub fn about(&mut self, middle: f64, spread: f64) -> f64 {
        middle * (1.0 + spread * 2.0 * (self.share() + self.share() + self.share() - 1.5))
    }

    pub fn pick<'a, T>(&mut self, from: &'a [T]) -> &'a T {
        &from[(self.share() * from.len() as f64) as usize]
    }

    /// Of so many, how many, where each has this chance.
    pub fn of(&mut self, count: u32, chance: f64) -> u32 {
        (0..count).map(|_| u32::from(self.chance(chance))).sum()
    }
}
