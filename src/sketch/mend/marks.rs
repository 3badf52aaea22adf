//! Marks of feet and inches as other keyboards have them.

/// What is wrong with a line that reads once its marks are plain.
pub(super) const CAUSE: &str = "feet take `'` and inches `\"`";

/// Marks that stand for feet, and two of them in a row for inches.
const FEET: &str = "'’‘′´`ʹˈ";
/// Marks that stand for inches.
const INCHES: &str = "ʺ˝‶″";

/// The line with plain marks after its numbers: `28''` becomes `28"`, `9·5` becomes `9.5`. Texts stay as they are.
pub(super) fn evened(line: &str) -> String {
    let mut out = String::with_capacity(line.len());
    let mut inside = false;
    let mut rest = line.chars().peekable();
    while let Some(c) = rest.next() {
        let after_number =
            out.ends_with(|last: char| last.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(last));
        let next_is_digit = rest.peek().is_some_and(char::is_ascii_digit);
        match c {
            '"' => {
                inside = !inside && !after_number;
                out.push(c);
            }
            _ if inside || !after_number => out.push(c),
            c if FEET.contains(c) && rest.peek().is_some_and(|next| FEET.contains(*next)) => {
                rest.next();
                out.push('"');
            }
            'ʹ' | 'ˈ' => out.push('\''),
            c if INCHES.contains(c) => out.push('"'),
            '·' if next_is_digit => out.push('.'),
            c => out.push(c),
        }
    }
    out
}
