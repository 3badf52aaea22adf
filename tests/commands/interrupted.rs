//! Interrupted writing: never half a file; the old one stays.
#![cfg(unix)]

use std::fs;
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Instant;

use super::{PLAIN, sketch, text};

fn program() -> Command {
    let mut command = Command::new(assert_cmd::cargo::cargo_bin!("fairfoot"));
    command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::piped());
    command
}

/// The files in a folder, by name, without hidden ones that a kill may leave behind.
fn names(folder: &Path) -> Vec<String> {
    let all = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> =
        all.map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.retain(|name| !name.starts_with(".tmp"));
    names.sort();
    names
}

/// Kills a command that writes `out` at 200 moments (a few of them by default), spread over its running time: the file
/// is always `old` or `whole`, and nothing else is left in its folder.
fn killed_at_any_moment(out: &Path, old: &[u8], command: impl Fn() -> Command) {
    fs::write(out, old).unwrap();
    let began = Instant::now();
    assert!(command().status().unwrap().success());
    let takes = began.elapsed();
    let whole = fs::read(out).unwrap();
    assert_ne!(whole, old);
    let kills = crate::cases(200);
    let mut interrupted = 0;
    for k in 0..kills {
        fs::write(out, old).unwrap();
        let mut child = command().spawn().unwrap();
        std::thread::sleep(takes.mul_f64(1.2) * k / kills);
        let _ = child.kill();
        let ended = child.wait().unwrap();
        interrupted += u32::from(!ended.success());
        let found = fs::read(out).unwrap();
        assert!(found == old || found == whole, "half a file after {k}");
        assert!(found == whole || !ended.success(), "success without the file after {k}");
    }
    assert!(interrupted > 0, "none was cut short");
    let name = out.file_name().unwrap().to_string_lossy().into_owned();
    assert_eq!(names(out.parent().unwrap()), [name]);
}

#[test]
fn a_kill_at_any_moment_leaves_a_whole_page_or_the_old_one() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("house.pdf");
    killed_at_any_moment(&out, b"the old one", || {
        let mut command = program();
        command.arg("pages").arg(sketch("cottage.sides")).arg("-o").arg(&out);
        command
    });
}

#[test]
fn a_kill_at_any_moment_leaves_the_sides_tidy_or_as_they_were() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("house.sides");
    let untidy = PLAIN.replace("    north", "north");
    killed_at_any_moment(&file, untidy.as_bytes(), || {
        let mut command = program();
        command.args(["tidy", "--write"]).arg(&file);
        command
    });
    assert!([untidy, PLAIN.to_owned()].contains(&fs::read_to_string(&file).unwrap()));
}

#[test]
fn a_kill_at_any_moment_leaves_all_rows_of_a_batch_or_the_old_ones() {
    let (folder, houses) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let lines = houses.path().join("houses.jsonl");
    let house = |i: u32| {
        format!(
            "{}\n",
            serde_json::json!({"id": i, "sides": PLAIN.replace("1,200", &format!("1,{i:03}"))})
        )
    };
    fs::write(&lines, (0..400).map(house).collect::<String>()).unwrap();
    let out = folder.path().join("rows.jsonl");
    killed_at_any_moment(&out, b"the old one", || {
        let mut command = program();
        command.args(["batch", "-", "--plain", "--jobs", "2", "-o"]).arg(&out);
        command.stdin(fs::File::open(&lines).unwrap());
        command
    });
}

#[test]
fn a_full_disk_is_an_error_and_the_old_page_stays() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("house.pdf");
    fs::write(&out, "the old one").unwrap();
    // No file of this shell's children may grow over 8 blocks of 512 bytes.
    let line = format!(
        "trap '' XFSZ; ulimit -f 8; exec '{}' sheet '{}' -o '{}'",
        assert_cmd::cargo::cargo_bin!("fairfoot").display(),
        sketch("cottage.sides").display(),
        out.display()
    );
    let run = Command::new("sh").args(["-c", &line]).output().unwrap();
    assert_eq!(run.status.code(), Some(2), "{}", text(&run.stderr));
    assert!(text(&run.stderr).contains("cannot be written"), "{}", text(&run.stderr));
    assert_eq!(fs::read_to_string(&out).unwrap(), "the old one");
    assert_eq!(names(folder.path()), ["house.pdf"]);
}

#[test]
fn a_link_stays_a_link_and_what_it_leads_to_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let (real, link) = (folder.path().join("real.pdf"), folder.path().join("link.pdf"));
    fs::write(&real, "the old one").unwrap();
    symlink(&real, &link).unwrap();
    let status = program().arg("pages").arg(sketch("cottage.sides")).arg("-o").arg(&link).status();
    assert!(status.unwrap().success());
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert!(fs::read(&real).unwrap().starts_with(b"%PDF-"));
}

#[test]
fn a_page_that_may_not_be_written_stays() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("house.pdf");
    fs::write(&out, "the old one").unwrap();
    fs::set_permissions(&out, fs::Permissions::from_mode(0o444)).unwrap();
    let run =
        program().arg("pages").arg(sketch("cottage.sides")).arg("-o").arg(&out).output().unwrap();
    assert_eq!(run.status.code(), Some(2));
    assert!(text(&run.stderr).contains("may not be written; it is as it was"));
    assert_eq!(fs::read_to_string(&out).unwrap(), "the old one");
}

#[test]
fn a_pipe_as_output_is_written_as_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let pipe = folder.path().join("pages.pdf");
    assert!(Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    let mut child =
        program().arg("pages").arg(sketch("cottage.sides")).arg("-o").arg(&pipe).spawn().unwrap();
    let bytes = fs::read(&pipe).unwrap();
    assert!(child.wait().unwrap().success());
    assert!(bytes.starts_with(b"%PDF-"));
}

#[test]
fn a_closed_standard_input_is_an_empty_file() {
    let line =
        format!("exec '{}' check - <&-", assert_cmd::cargo::cargo_bin!("fairfoot").display());
    let run = Command::new("sh").args(["-c", &line]).output().unwrap();
    assert_ne!(run.status.code(), Some(101), "{}", text(&run.stderr));
    assert!(run.status.code().is_some_and(|code| code == 1 || code == 2));
}

/// Whether this process ignores HUP, signal 1, as under `nohup`; `false` where the system does not say.
fn is_hup_ignored() -> bool {
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let mask = status.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    mask.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok())
        .is_some_and(|mask| mask & 1 == 1)
}

/// Waits until something is so; fails after half a minute.
#[track_caller]
fn until(mut is_so: impl FnMut() -> bool) {
    for _ in 0..600 {
        if is_so() {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(50));
    }
    panic!("it is not so after half a minute");
}

#[test]
fn a_run_that_is_ended_leaves_no_temporary_file() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("house.pdf");
    let rows = folder.path().join("rows.jsonl");
    let mut interrupted = 0;
    // Started so that it outlives its terminal, a run does not end by HUP, nor do the programs that it starts.
    let signals = ["TERM", "HUP", "INT"];
    for signal in signals.into_iter().filter(|&signal| signal != "HUP" || !is_hup_ignored()) {
        for k in 0..40 {
            let mut child = program()
                .arg("pages")
                .arg(sketch("farmhouse.sides"))
                .arg("-o")
                .arg(&out)
                .spawn()
                .unwrap();
            std::thread::sleep(std::time::Duration::from_millis(2 * k));
            let id = child.id().to_string();
            let _ = Command::new("kill").args([&format!("-{signal}"), &id]).status();
            interrupted += u32::from(!child.wait().unwrap().success());
        }
        // A stream that waits for its next line has its output open already.
        let mut command = program();
        command.args(["batch", "-", "-o"]).arg(&rows).stdin(Stdio::piped());
        let mut child = command.spawn().unwrap();
        let is_open = || {
            let names =
                fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name());
            names.filter(|name| name != "house.pdf").count() > 0
        };
        until(is_open);
        let id = child.id().to_string();
        // The first signal asks; the next one ends the run. Two that arrive together may count as one.
        let mut ended = None;
        until(|| {
            let _ = Command::new("kill").args([&format!("-{signal}"), &id]).status();
            ended = child.try_wait().unwrap();
            ended.is_some()
        });
        assert!(!ended.unwrap().success());
    }
    assert!(interrupted > 0, "none was cut short");
    let left: Vec<_> = fs::read_dir(folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name())
        .filter(|name| name != "house.pdf")
        .collect();
    assert!(left.is_empty(), "{left:?}");
}

#[test]
fn leftover_pages_of_an_older_run_are_reported() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("house.svg");
    for old in ["house-9.svg", "house-01.svg", "house-x.svg", "other-9.svg"] {
        fs::write(folder.path().join(old), "old").unwrap();
    }
    let run =
        program().arg("pages").arg(sketch("cottage.sides")).arg("-o").arg(&out).output().unwrap();
    let message = text(&run.stderr);
    assert!(message.contains("house-9.svg") && message.contains("house-01.svg"), "{message}");
    assert!(!message.contains("house-x.svg") && !message.contains("other-9.svg"), "{message}");
}
