//! Files that are missing, unreadable or not files; standard input; exit codes.

use std::fs;

use super::{PLAIN, fairfoot, text};

fn stderr_of(arguments: &[&str], code: i32) -> String {
    let run = fairfoot().args(arguments).assert().code(code);
    text(&run.get_output().stderr)
}

#[test]
fn a_missing_file_is_an_error_with_exit_code_2() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("house");
    let message = stderr_of(&["reconcile", path.to_str().unwrap()], 2);
    assert!(message.contains("there is no file") && message.contains("fairfoot new"), "{message}");
    fs::write(folder.path().join("house.sides"), PLAIN).unwrap();
    let message = stderr_of(&["reconcile", path.to_str().unwrap()], 2);
    assert!(message.contains("did you mean") && message.contains("house.sides"), "{message}");
}

#[test]
fn a_folder_as_input_is_an_error_with_exit_code_2() {
    let folder = tempfile::tempdir().unwrap();
    let message = stderr_of(&["area", folder.path().to_str().unwrap()], 2);
    assert!(message.contains("is a folder"), "{message}");
}

#[test]
fn an_error_exits_with_1_and_prints_nothing_on_standard_output() {
    for command in ["reconcile", "area"] {
        let run = fairfoot().args([command, "-"]).write_stdin("north 12'\n").assert().code(1);
        assert!(run.get_output().stdout.is_empty());
        assert!(text(&run.get_output().stderr).contains("error[out-of-place]"));
    }
}

#[test]
fn a_dash_means_standard_input() {
    let run = fairfoot().args(["area", "-"]).write_stdin(PLAIN).assert().success();
    assert!(text(&run.get_output().stdout).contains("1,206")); // 28.3 × 42.6 = 1,205.58
    assert!(run.get_output().stderr.is_empty());
}

#[test]
fn closed_standard_input_is_an_empty_file() {
    fairfoot().args(["check", "-"]).assert().code(1);
}

#[test]
fn wrong_usage_exits_with_2_and_help_with_0() {
    fairfoot().assert().code(2);
    fairfoot().arg("measure").assert().code(2);
    fairfoot().args(["reconcile"]).assert().code(2);
    fairfoot().args(["reconcile", "-", "--ties", "sideways"]).assert().code(2);
    let message = stderr_of(&["reconcile", "-", "--reach", "42 7"], 2);
    assert!(message.contains("two numbers and no unit"), "{message}");
    fairfoot().arg("--help").assert().success();
    fairfoot().arg("--version").assert().success();
    for command in ["reconcile", "check", "area", "tidy", "new", "completions", "manual"] {
        fairfoot().args([command, "--help"]).assert().success();
    }
}

#[test]
fn check_names_each_file_and_goes_on_after_a_bad_one() {
    let folder = tempfile::tempdir().unwrap();
    let (good, bad) = (folder.path().join("good.sides"), folder.path().join("bad.sides"));
    fs::write(&good, PLAIN).unwrap();
    fs::write(&bad, PLAIN.replace("28' 4\"\n    west", "29' 4\"\n    west")).unwrap();
    let run = fairfoot().arg("check").args([&bad, &good]).assert().code(1);
    let out = text(&run.get_output().stdout);
    assert!(
        out.contains("bad.sides: 1 error\n") && out.contains("good.sides: no errors\n"),
        "{out}"
    );
    let none = folder.path().join("none.sides");
    let run = fairfoot().arg("check").args([&none, &good]).assert().code(2);
    assert!(text(&run.get_output().stdout).contains("good.sides: no errors\n"));
}

#[test]
fn new_writes_a_file_that_works_at_once_and_never_over_another() {
    let folder = tempfile::tempdir().unwrap();
    let run = fairfoot().current_dir(&folder).args(["new", "mine"]).assert().success();
    assert_eq!(text(&run.get_output().stdout), "mine.sides\n");
    let path = folder.path().join("mine.sides");
    fairfoot().arg("reconcile").arg(&path).assert().success();
    fairfoot().args(["tidy", "--check"]).arg(&path).assert().code(1); // its remarks are laid out by hand
    fs::write(&path, "mine").unwrap();
    let run = fairfoot().current_dir(&folder).args(["new", "mine"]).assert().code(2);
    assert!(text(&run.get_output().stderr).contains("exists already"));
    assert_eq!(fs::read_to_string(&path).unwrap(), "mine");
    fairfoot().current_dir(&folder).args(["new", "no/such/folder/mine"]).assert().code(2);
    let run = fairfoot().args(["new", "-"]).assert().success();
    assert!(text(&run.get_output().stdout).starts_with("# A house to start from"));
}

#[cfg(unix)]
#[test]
fn a_new_file_may_be_read_like_any_other() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    fairfoot().current_dir(&folder).args(["new", "mine"]).assert().success();
    let mode = fs::metadata(folder.path().join("mine.sides")).unwrap().permissions().mode();
    fs::write(folder.path().join("other"), "").unwrap();
    let other = fs::metadata(folder.path().join("other")).unwrap().permissions().mode();
    assert_eq!(mode, other);
}

#[test]
fn completions_and_the_man_page_are_printed() {
    for shell in ["bash", "zsh", "fish", "powershell", "elvish"] {
        let run = fairfoot().args(["completions", shell]).assert().success();
        assert!(text(&run.get_output().stdout).contains("reconcile"), "{shell}");
    }
    let page = text(&fairfoot().arg("manual").assert().success().get_output().stdout);
    for word in [".TH fairfoot 1", "RECONCILE", "--halves", "TIDY", "--write"] {
        assert!(page.replace('\\', "").contains(word), "{word}");
    }
}

#[test]
fn about_states_the_limits_of_the_figures_and_has_every_notice() {
    let about = text(&fairfoot().arg("about").assert().success().get_output().stdout);
    assert!(about.contains("Not an appraisal, not a survey, not legal advice"), "{about}");
    assert!(about.contains(env!("CARGO_PKG_VERSION")), "{about}");
    let run = fairfoot().args(["about", "--licenses"]).assert().success();
    let licenses = text(&run.get_output().stdout);
    // Of the kinds of license that the list in DEVELOPERS.md names, one library each.
    for wanted in [
        "the fairfoot authors",
        "Bitstream Vera Fonts Copyright",
        "krilla",
        "the Rust standard library",
        "Boost Software License",
        "UNICODE LICENSE V3",
        "Apache License",
    ] {
        assert!(licenses.contains(wanted), "{wanted}");
    }
}

#[test]
fn new_needs_a_name() {
    let folder = tempfile::tempdir().unwrap();
    for name in [".", "..", "...", "./", "sub/", "sub/.", "sub/.."] {
        let run = fairfoot().current_dir(&folder).args(["new", name]).assert().code(2);
        assert!(text(&run.get_output().stderr).contains("is not a file name"), "{name}");
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn the_printable_form_is_one_page_and_overwrites_no_file() {
    let folder = tempfile::tempdir().unwrap();
    let run = || {
        let mut run = fairfoot();
        run.current_dir(folder.path()).args(["new", "form", "--printable"]);
        run
    };
    run().assert().success();
    let form = std::fs::read(folder.path().join("form.pdf")).unwrap();
    assert!(form.starts_with(b"%PDF-"));
    assert_eq!(lopdf::Document::load_mem(&form).unwrap().get_pages().len(), 1);
    run().assert().code(2);
    assert_eq!(std::fs::read(folder.path().join("form.pdf")).unwrap(), form);
    fairfoot().args(["new", "form.txt", "--printable"]).assert().code(2);
    fairfoot().args(["new", "-", "--printable"]).assert().code(2);
}
