//! `tidy`: prints, checks, and writes a whole file or nothing.

use std::fs;

use super::{PLAIN, fairfoot, text};

const UNTIDY: &str = "Level \"Ground floor\"\nliving “House”   # walked on a Sunday\n\n\n  n 30 ft\ne 40' 6.5\"\ns 30'\nclose\n";
const TIDY: &str = "level \"Ground floor\"\n  living \"House\"  # walked on a Sunday\n\n    north 30'\n    east  40' 6 1/2\"\n    south 30'\n    close\n";

#[test]
fn the_canonical_form_is_printed_with_comments_kept() {
    let run = fairfoot().args(["tidy", "-"]).write_stdin(UNTIDY).assert().success();
    assert_eq!(text(&run.get_output().stdout), TIDY);
    let again = fairfoot().args(["tidy", "-"]).write_stdin(TIDY).assert().success();
    assert_eq!(text(&again.get_output().stdout), TIDY);
}

#[test]
fn check_names_what_is_not_tidy_and_writes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let (one, two) = (folder.path().join("one.sides"), folder.path().join("two.sides"));
    fs::write(&one, UNTIDY).unwrap();
    fs::write(&two, TIDY).unwrap();
    let run = fairfoot().args(["tidy", "--check"]).args([&one, &two]).assert().code(1);
    assert_eq!(text(&run.get_output().stdout), format!("{}\n", one.display()));
    assert_eq!(fs::read_to_string(&one).unwrap(), UNTIDY);
    fairfoot().args(["tidy", "--check"]).arg(&two).assert().success();
}

#[test]
fn write_rewrites_each_file_and_leaves_a_faulty_one_as_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let (good, bad) = (folder.path().join("good.sides"), folder.path().join("bad.sides"));
    fs::write(&good, UNTIDY).unwrap();
    fs::write(&bad, "frob\n").unwrap();
    let run = fairfoot().args(["tidy", "--write"]).args([&bad, &good]).assert().code(1);
    assert!(text(&run.get_output().stderr).contains("left as it is"));
    assert_eq!(fs::read_to_string(&good).unwrap(), TIDY);
    assert_eq!(fs::read_to_string(&bad).unwrap(), "frob\n");
    assert_eq!(fs::read_dir(&folder).unwrap().count(), 2, "nothing is left behind");
}

#[test]
fn a_file_that_does_not_close_can_still_be_tidied() {
    let open = PLAIN.replace("west  42' 7\"", "west 40'");
    fairfoot().args(["tidy", "-"]).write_stdin(open).assert().success();
}

#[test]
fn several_files_are_not_printed_into_one() {
    fairfoot().args(["tidy", "a.sides", "b.sides"]).assert().code(2);
    fairfoot().args(["tidy", "--write", "-"]).write_stdin(TIDY).assert().code(2);
}

#[cfg(unix)]
#[test]
fn write_keeps_permissions_and_links() {
    use std::os::unix::fs::{PermissionsExt, symlink};
    let folder = tempfile::tempdir().unwrap();
    let (file, link) = (folder.path().join("house.sides"), folder.path().join("link.sides"));
    fs::write(&file, UNTIDY).unwrap();
    fs::set_permissions(&file, fs::Permissions::from_mode(0o640)).unwrap();
    symlink(&file, &link).unwrap();
    fairfoot().args(["tidy", "--write"]).arg(&link).assert().success();
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert_eq!(fs::read_to_string(&file).unwrap(), TIDY);
    assert_eq!(fs::metadata(&file).unwrap().permissions().mode() & 0o777, 0o640);
}

#[cfg(unix)]
#[test]
fn a_file_that_may_not_be_written_stays_and_is_reported() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("house.sides");
    fs::write(&file, UNTIDY).unwrap();
    fs::set_permissions(&file, fs::Permissions::from_mode(0o444)).unwrap();
    let run = fairfoot().args(["tidy", "--write"]).arg(&file).assert().code(2);
    assert!(text(&run.get_output().stderr).contains("may not be written"));
    assert_eq!(fs::read_to_string(&file).unwrap(), UNTIDY);
}
