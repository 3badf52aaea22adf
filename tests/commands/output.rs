//! What is printed, at which width and color, and to which pipe.

use std::io::Read;
use std::process::{Command, Stdio};

use super::{PLAIN, fairfoot, text};

#[test]
fn the_report_begins_with_record_measured_and_difference() {
    let run = fairfoot().args(["reconcile", "-"]).write_stdin(PLAIN).assert().success();
    let out = text(&run.get_output().stdout);
    let first = out.lines().find(|line| !line.is_empty()).unwrap();
    // 28.3 × 42.6 = 1,205.58; 1,200 less that is -5.58.
    assert_eq!(
        first,
        "Record 1,200 sq ft. Measured 1,206 sq ft. The record is 6 sq ft smaller (0.5% of"
    );
}

#[test]
fn the_cautions_are_at_the_end() {
    let run = fairfoot().args(["reconcile", "-"]).write_stdin(PLAIN).assert().success();
    let out = text(&run.get_output().stdout).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(out.contains("Not an appraisal, not a survey, not legal advice; local rules and licensed practice come first."));
}

#[test]
fn no_line_is_wider_than_the_page() {
    for width in [30, 40, 60, 72, 80, 100] {
        for name in std::fs::read_dir(super::sketch("")).unwrap() {
            let path = name.unwrap().path();
            if path.extension().is_none_or(|ending| ending != "sides") {
                continue;
            }
            let width_text = width.to_string();
            let run = fairfoot()
                .args(["reconcile", "--why", "--width", &width_text])
                .arg(&path)
                .assert()
                .success();
            for line in text(&run.get_output().stdout).lines() {
                let columns = line.chars().count();
                assert!(columns <= width, "{}: {columns} > {width}: {line}", path.display());
            }
        }
    }
}

#[test]
fn figures_of_a_step_by_step_line_up_at_the_right_edge() {
    let run = fairfoot().args(["reconcile", "-"]).write_stdin(PLAIN).assert().success();
    let out = text(&run.get_output().stdout);
    let steps: Vec<&str> = out
        .lines()
        .skip_while(|line| !line.contains("step by step"))
        .skip(1)
        .take_while(|line| !line.is_empty())
        .filter(|line| line.ends_with(|c: char| c.is_ascii_digit()) && !line.starts_with("      "))
        .collect();
    assert!(steps.len() >= 4, "{steps:?}");
    assert!(steps.iter().all(|line| line.chars().count() == 80), "{steps:#?}");
}

#[test]
fn a_day_to_count_from_must_exist() {
    let notice = format!("place texas\nnotice 2026-04-17\n{PLAIN}");
    let on = |day: &str| {
        let mut command = fairfoot();
        command.args(["reconcile", "--today", day, "-"]).write_stdin(notice.clone()).assert()
    };
    let printed = text(&on("2026-05-06").success().get_output().stdout);
    assert!(printed.contains("Monday, May 18, 2026, 12 days left"), "{printed}");
    for day in ["2026-02-30", "5/6/2026", "tomorrow"] {
        let said = text(&on(day).code(2).get_output().stderr);
        assert!(said.contains("year-month-day: `2026-05-01`"), "{said}");
    }
}

#[test]
fn a_pipe_gets_no_color_even_when_a_terminal_would() {
    let run = fairfoot().args(["reconcile", "-"]).write_stdin(PLAIN).assert().success();
    assert!(!text(&run.get_output().stdout).contains('\u{1b}'));
    let run = fairfoot().args(["check", "-"]).write_stdin("frob\n").assert().code(1);
    assert!(!text(&run.get_output().stderr).contains('\u{1b}'));
}

#[test]
fn no_color_wins_over_a_wish_for_color() {
    let colored = |command: &mut assert_cmd::Command| {
        let run = command.args(["reconcile", "-"]).write_stdin(PLAIN).assert().success();
        text(&run.get_output().stdout).contains('\u{1b}')
    };
    assert!(colored(fairfoot().env("CLICOLOR_FORCE", "1")));
    assert!(!colored(fairfoot().env("NO_COLOR", "1")));
}

#[test]
fn a_pipe_that_closes_early_is_no_fault() {
    let mut child = Command::new(assert_cmd::cargo::cargo_bin!("fairfoot"))
        .args(["completions", "zsh"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let mut message = String::new();
    child.stderr.take().unwrap().read_to_string(&mut message).unwrap();
    assert!(child.wait().unwrap().success());
    assert_eq!(message, "");
}

#[test]
fn output_does_not_depend_on_clock_and_folder() {
    let folder = tempfile::tempdir().unwrap();
    let plain = |command: &mut assert_cmd::Command| {
        let run = command.args(["reconcile", "--json", "-"]).write_stdin(PLAIN).assert().success();
        run.get_output().stdout.clone()
    };
    let first = plain(&mut fairfoot());
    let elsewhere = plain(
        fairfoot()
            .current_dir(&folder)
            .env("TZ", "Asia/Kathmandu")
            .env("LANG", "de_DE.UTF-8")
            .env("HOME", folder.path()),
    );
    assert_eq!(first, elsewhere);
}

#[test]
fn a_corner_is_squared_off_with_the_lengths_that_the_record_has() {
    // By the record 32 × 20 + 18 × 20 = 1,000, and 32 × 40 = 1,280 with the corner squared off; our own
    // corner of 12 × 20 would leave 40.
    let sides = "record 1,280 sq ft\nlevel \"G\"\nliving \"House\"\nnorth 30' recorded 32'\neast 20' recorded 20'\nsouth 12' recorded 14'\neast 20' recorded 20'\nsouth 18' recorded 18'\nwest 40' recorded 40'\n";
    let output = fairfoot().args(["reconcile", "-"]).write_stdin(sides).output().unwrap();
    let page = text(&output.stdout).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        page.contains(
            "corner after side 3 of the house, 12' by 20', squared off (only common cause that fits): gives 1,280, as the record says"
        ),
        "{page}"
    );
}

#[test]
fn percentages_are_of_the_figures_as_printed() {
    // 238 ÷ 1,784 = 13.34 %; without rounding first it would be 13.4 %.
    let notice = std::fs::read_to_string(super::sketch("notice.sides")).unwrap();
    let output = fairfoot().args(["reconcile", "-"]).write_stdin(notice).output().unwrap();
    let page = text(&output.stdout).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        page.contains("The record is 238 sq ft larger (13.3% of the measured area)."),
        "{page}"
    );
}

#[test]
#[cfg(unix)]
fn a_file_name_that_is_not_utf_8_is_answered_by_every_command() {
    use std::os::unix::ffi::OsStrExt as _;
    let name = std::ffi::OsStr::from_bytes(b"e\xff.svg");
    for command in ["reconcile", "check", "area", "pages", "verify", "batch", "tidy", "outline"] {
        let run = fairfoot().arg(command).arg(name).assert();
        let output = run.get_output();
        assert_eq!(output.status.code(), Some(2), "{command}");
        let told = text(&output.stderr);
        assert!(!told.contains("panicked"), "{command}: {told}");
    }
    // One argument alone, which might be a file in place of a command.
    fairfoot().arg(name).assert().code(2);
}

#[test]
fn wrong_options_say_what_to_write_instead() {
    let folder = tempfile::tempdir().unwrap();
    let house = folder.path().join("a.sides");
    std::fs::write(&house, super::PLAIN).unwrap();
    let weights = folder.path().join("w.json");
    std::fs::write(&weights, "{\"counted\": 0.06}").unwrap();
    let weights = weights.to_str().unwrap();
    let told = |command: &str, arguments: &[&str]| {
        let run = fairfoot().arg(command).args(arguments).arg(&house).assert().code(2);
        text(&run.get_output().stderr).to_owned()
    };
    for (command, arguments, wanted) in [
        ("reconcile", ["--band", "abc"], "write a whole percentage from 1 to 100, as `--band 15`"),
        ("reconcile", ["--band", "-5"], "write a whole percentage from 1 to 100, as `--band 15`"),
        ("reconcile", ["--reading", "-1"], "a length has no sign; leave the sign out"),
        ("reconcile", ["--weights", "nope.json"], "give a JSON file of weights"),
        ("reconcile", ["--weights", weights], "under each name stand a chance and the reason"),
        ("batch", ["--jobs", "0"], "write a whole number of at least 1, as `--jobs 2`"),
        ("batch", ["--over", "-5"], "it must be between 0% and 1000%"),
    ] {
        let told = told(command, &arguments);
        assert!(told.contains(wanted), "{arguments:?}: {told}");
        assert!(!told.contains("use '-- "), "{told}");
    }
}
