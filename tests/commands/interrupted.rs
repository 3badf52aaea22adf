//! Writing that is cut short: never half a file, the old one stays.
#![cfg(unix)]

use std::fs;
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use crate::{PLAIN, sketch, text};

fn program() -> Command {
    let mut command = Command::new(assert_cmd::cargo::cargo_bin!("fairfoot"));
    command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::piped());
    command
}

/// Files in a folder, by name, without hidden ones that a kill may leave behind.
fn names(folder: &Path) -> Vec<String> {
    let all = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> =
        all.map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.retain(|name| !name.starts_with(".tmp"));
    names.sort();
    names
}

#[test]
fn a_kill_at_any_moment_leaves_a_whole_page_or_the_old_one() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("house.pdf");
    let whole = {
        let sides = sketch("farmhouse.sides");
        assert!(program().arg("sheet").arg(&sides).arg("-o").arg(&out).status().unwrap().success());
        fs::read(&out).unwrap()
    };
    let mut killed = 0;
    for k in 0..60_u64 {
        fs::write(&out, b"the old one").unwrap();
        let mut child = program()
            .arg("sheet")
            .arg(sketch("farmhouse.sides"))
            .arg("-o")
            .arg(&out)
            .spawn()
            .unwrap();
        std::thread::sleep(Duration::from_millis(2 * k));
        killed += usize::from(child.kill().is_ok());
        child.wait().unwrap();
        let found = fs::read(&out).unwrap();
        assert!(found == b"the old one" || found == whole, "half a file after {k}");
    }
    assert!(killed > 0);
    assert_eq!(names(folder.path()), ["house.pdf"]);
}

#[test]
fn a_kill_at_any_moment_leaves_the_sides_tidy_or_as_they_were() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("house.sides");
    let untidy = PLAIN.replace("    north", "north");
    for k in 0..60_u64 {
        fs::write(&file, &untidy).unwrap();
        let mut child = program().args(["tidy", "--write"]).arg(&file).spawn().unwrap();
        std::thread::sleep(Duration::from_micros(100 * k));
        let _ = child.kill();
        child.wait().unwrap();
        let found = fs::read_to_string(&file).unwrap();
        assert!(found == untidy || found == PLAIN, "{found}");
    }
}

#[test]
fn a_disk_that_is_full_is_told_and_the_old_page_stays() {
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
    let status = program().arg("sheet").arg(sketch("cottage.sides")).arg("-o").arg(&link).status();
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
        program().arg("sheet").arg(sketch("cottage.sides")).arg("-o").arg(&out).output().unwrap();
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
        program().arg("sheet").arg(sketch("cottage.sides")).arg("-o").arg(&pipe).spawn().unwrap();
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
