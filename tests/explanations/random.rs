//! A small random generator, so that a run is the same on every machine.

pub(crate) struct Random(u64);

impl Random {
    pub(crate) fn new(seed: u64) -> Random {
        Random(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x1234_5678_9abc_def1)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number from 0 up to but not including 1.
    pub(crate) fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub(crate) fn chance(&mut self, chance: f64) -> bool {
        self.unit() < chance
    }

    pub(crate) fn real(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// An integer between the bounds, inclusive.
    pub(crate) fn between(&mut self, low: i64, high: i64) -> i64 {
        low + (self.next() % (high - low + 1) as u64) as i64
    }

    pub(crate) fn pick<T: Copy>(&mut self, list: &[T]) -> T {
        list[(self.next() % list.len() as u64) as usize]
    }

    /// A number from a table of the 5, 25, 50, 75 and 95 % quantiles, interpolated linearly.
    pub(crate) fn by_table(&mut self, table: [f64; 5]) -> f64 {
        let at = self.real(0.05, 0.95);
        let shares = [0.05, 0.25, 0.5, 0.75, 0.95];
        let i = shares.iter().rposition(|share| *share <= at).unwrap().min(3);
        let part = (at - shares[i]) / (shares[i + 1] - shares[i]);
        table[i] + part * (table[i + 1] - table[i])
    }
}
