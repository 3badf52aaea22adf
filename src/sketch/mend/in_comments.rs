//! Things that a suggestion would put into a comment, where they count for nothing, although a sides file has a place for
//! them: the answer says where they belong.

use super::{Attempt, Mend, comment_of, kinds, read_or_mended};

/// The answer, with what its comments hide told, and without lines that are all comment and hide walls, calls or land.
pub(super) fn told(line: &str, mut mend: Mend, attempt: &Attempt) -> Mend {
    let had = comment_of(line).1.unwrap_or_default();
    let is_all_comment = |offered: &String| offered.trim_start().starts_with('#');
    let typed = comment_of(line).0;
    if mend.lines.iter().any(is_all_comment) && kinds::is_of_a_walk(typed, attempt) {
        mend.lines.retain(|offered| !is_all_comment(offered));
        if mend.lines.is_empty() {
            return Mend {
                cause: "this line says more than a remark does, and a comment counts for nothing"
                    .to_owned(),
                help: Some(kinds::where_it_belongs(typed, attempt).join("; ")),
                asks: None,
                ..mend
            };
        }
    }
    let begins_as_space = |text: &&str| super::begins_as_named_space(text);
    let hidden: Vec<&str> = mend
        .lines
        .iter()
        .flat_map(|offered| {
            // Of a level with its first space, that of the space.
            let second = offered.lines().nth(1).filter(begins_as_space);
            offered.lines().take(1).chain(second)
        })
        .filter_map(|offered| comment_of(offered).1)
        .filter(|comment| comment.trim() != had.trim())
        .collect();
    let told = match (&hidden[..], &mend.help) {
        ([comment, ..], _) => kinds::where_it_belongs(comment, attempt),
        ([], Some(help)) if mend.lines.is_empty() => {
            // `then `# ext walls 6 in``: a comment that is to be written.
            let comment =
                help.split('`').skip(1).step_by(2).find_map(|code| code.strip_prefix("# "));
            match comment {
                Some(comment) => kinds::where_it_belongs(comment, attempt),
                None if help.contains("after a `#`") => kinds::where_it_belongs(typed, attempt),
                None => Vec::new(),
            }
        }
        _ => Vec::new(),
    };
    // What the answer says already.
    let said = format!("{} {}", mend.cause, mend.help.as_deref().unwrap_or_default());
    let is_new = |one: &String| {
        let word =
            one.split('`').nth(1).and_then(|code| code.split(' ').next()).unwrap_or_default();
        !said.contains(&format!("`{word} "))
            && !mend.lines.iter().any(|line| line.starts_with(word))
    };
    let told: Vec<String> = told.into_iter().filter(is_new).collect();
    if told.is_empty() {
        return mend;
    }
    let told = told.join("; ");
    match (&mut mend.help, mend.lines.is_empty()) {
        (Some(help), true) => *help = format!("{help}; {told}"),
        _ => {
            // A line that says such a thing says something of the house.
            let cause = mend.cause.replace("this line says nothing about the house; ", "");
            mend.cause = format!("{cause}; in a comment the rest counts for nothing: {told}");
        }
    }
    mend
}

/// `north 33' 7"; ext walls 6"`: a wall, and how thick the walls are, which stands elsewhere.
pub(super) fn wall_and_thickness(
    line: &str,
    attempt: &mut dyn FnMut(&str) -> Attempt,
) -> Option<Mend> {
    let (wall, clause) = comment_of(line).0.rsplit_once([';', ','])?;
    let here = attempt(line);
    if !super::begins_as_side(wall) || !kinds::is_only_a_thickness(clause, &here) {
        return None;
    }
    let mended = read_or_mended(wall, attempt)?;
    let told = kinds::where_it_belongs(clause, &here).join("; ");
    let cause = match mended.cause.as_str() {
        "" => told,
        cause => format!("{cause}; {told}"),
    };
    (!mended.lines.is_empty()).then_some(Mend { cause, ..mended })
}
