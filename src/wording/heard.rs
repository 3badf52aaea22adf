//! Text for screen readers: signs that a voice skips or misreads are spelled out.

/// A text as it should be read aloud: `46' 1/2"` as `46 feet 1/2 inch`, `−6` as `minus 6`, `± 4 sq ft` as
/// `plus or minus 4 square feet`.
pub(crate) fn heard(text: &str) -> String {
    let mut ear = Ear { letters: text.chars().collect(), at: 0, out: String::new(), quoted: false };
    while ear.at < ear.letters.len() {
        ear.step();
    }
    ear.out
        .replace("sq ft", "square feet")
        .replace("sq m", "square meters")
        .split_whitespace()
        .collect::<Vec<&str>>()
        .join(" ")
}

struct Ear {
    letters: Vec<char>,
    at: usize,
    out: String,
    /// Whether it is inside a quoted name, where `12"` is not a length.
    quoted: bool,
}

impl Ear {
    fn peek(&self, ahead: usize) -> Option<char> {
        self.letters.get(self.at + ahead).copied()
    }

    fn before(&self) -> Option<char> {
        self.at.checked_sub(1).map(|at| self.letters[at])
    }

    fn step(&mut self) {
        let Some(letter) = self.peek(0) else { return };
        let follows_word = self.before().is_some_and(char::is_alphanumeric);
        if letter.is_ascii_digit() && !follows_word && !self.quoted {
            return self.number();
        }
        self.at += 1;
        match letter {
            '"' => {
                self.quoted = !self.quoted;
                self.out.push('"');
            }
            '\u{2212}' => self.out.push_str("minus "),
            '±' => self.out.push_str("plus or minus "),
            '+' if self.peek(0).is_some_and(|next| next.is_ascii_digit()) => {
                self.out.push_str("plus ");
            }
            '×' => self.out.push_str("times"),
            '÷' => self.out.push_str("divided by"),
            other => self.out.push(other),
        }
    }

    /// Spells out a number with its unit, if a sign of length or angle follows.
    fn number(&mut self) {
        let number = self.digits();
        match (self.peek(0), self.peek(1)) {
            (Some('°'), _) => {
                self.at += 1;
                self.out.push_str(&counted(&number, "degree", "degrees"));
                self.angle('\'', "minute", "minutes");
                self.angle('"', "second", "seconds");
            }
            (Some('\''), next) if !next.is_some_and(char::is_alphabetic) => {
                self.at += 1;
                self.out.push_str(&counted(&number, "foot", "feet"));
                self.inches_after_feet();
            }
            _ => match self.inches(&number) {
                Some(inches) => self.out.push_str(&inches),
                None => self.out.push_str(&number),
            },
        }
        self.metric_unit();
    }

    /// Reads digits with commas and a decimal point among them, or a fraction.
    fn digits(&mut self) -> String {
        let mut number = String::new();
        while let Some(letter) = self.peek(0) {
            let digit_next = self.peek(1).is_some_and(|next| next.is_ascii_digit());
            if !(letter.is_ascii_digit() || matches!(letter, '.' | ',' | '/') && digit_next) {
                break;
            }
            number.push(letter);
            self.at += 1;
        }
        number
    }

    /// The rest of inches that begin with `number`: `1/2"` after `1 `, or the mark alone. `None` without reading
    /// anything if they are not inches.
    fn inches(&mut self, number: &str) -> Option<String> {
        if self.peek(0) == Some('"') {
            self.at += 1;
            return Some(counted(number, "inch", "inches"));
        }
        let from = self.at;
        if self.peek(0) == Some(' ') && self.peek(1).is_some_and(|next| next.is_ascii_digit()) {
            self.at += 1;
            let fraction = self.digits();
            if fraction.contains('/') && self.peek(0) == Some('"') {
                self.at += 1;
                return Some(match number {
                    "0" => format!("{fraction} inch"),
                    _ => format!("{number} {fraction} inches"),
                });
            }
        }
        self.at = from;
        None
    }

    fn inches_after_feet(&mut self) {
        let from = self.at;
        if self.peek(0) == Some(' ') && self.peek(1).is_some_and(|next| next.is_ascii_digit()) {
            self.at += 1;
            let number = self.digits();
            if let Some(inches) = self.inches(&number) {
                self.out.push_str(&format!(" {inches}"));
                return;
            }
        }
        self.at = from;
    }

    fn angle(&mut self, mark: char, one: &str, many: &str) {
        let from = self.at;
        if self.peek(0) == Some(' ') && self.peek(1).is_some_and(|next| next.is_ascii_digit()) {
            self.at += 1;
            let number = self.digits();
            if self.peek(0) == Some(mark) {
                self.at += 1;
                self.out.push_str(&format!(" {}", counted(&number, one, many)));
                return;
            }
        }
        self.at = from;
    }

    fn metric_unit(&mut self) {
        let rest: String = self.letters[self.at..].iter().take(4).collect();
        for (short, long) in [(" mm", " millimeters"), (" cm", " centimeters"), (" m", " meters")] {
            let after = rest.strip_prefix(short).map(|after| after.chars().next());
            if after.is_some_and(|next| !next.is_some_and(char::is_alphanumeric)) {
                self.at += short.len();
                let is_one = self.out.ends_with('1')
                    && !self.out[..self.out.len() - 1]
                        .ends_with(|c: char| c.is_ascii_digit() || c == '.' || c == ',');
                self.out.push_str(if is_one { long.trim_end_matches('s') } else { long });
                return;
            }
        }
    }
}

fn counted(number: &str, one: &str, many: &str) -> String {
    let is_one = number == "1" || number.contains('/');
    format!("{number} {}", if is_one { one } else { many })
}

#[cfg(test)]
mod tests {
    use super::heard;

    #[test]
    fn signs_are_read_as_words() {
        for (seen, read) in [
            (
                "side 1: north 34' 1 1/2\", east 46' 1/2\".",
                "side 1: north 34 feet 1 1/2 inches, east 46 feet 1/2 inch.",
            ),
            ("within 1/2\"; 4\"; 1'", "within 1/2 inch; 4 inches; 1 foot"),
            ("east 46' 0 1/2\"", "east 46 feet 1/2 inch"),
            ("\u{2212}6, +22, ± 4 sq ft", "minus 6, plus 22, plus or minus 4 square feet"),
            ("bearing N 1° 34' E 142.67'", "bearing N 1 degree 34 minutes E 142.67 feet"),
            ("S 5° 13' 50\" E", "S 5 degrees 13 minutes 50 seconds E"),
            (
                "\"Lot 12\" has 9.9 m, 13,050 mm and 2 moons",
                "\"Lot 12\" has 9.9 meters, 13,050 millimeters and 2 moons",
            ),
            (
                "within 1 cm; 11 cm; 0.1 m; 1 m",
                "within 1 centimeter; 11 centimeters; 0.1 meters; 1 meter",
            ),
            ("R-104417, the 1990's, 483 = 23 × 21.", "R-104417, the 1990's, 483 = 23 times 21."),
        ] {
            assert_eq!(heard(seen), read);
        }
    }
}
