//! The output is the same bytes on every run, whatever the clock, locale, home, folder and number of cores.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use super::{fairfoot, sketch};

/// How often everything is made: 20 times, or a few of them.
fn runs() -> usize {
    if std::env::var_os("FAIRFOOT_FULL").is_some() { 10 } else { 4 }
}

/// The environment of a run, which must not affect the output.
fn surroundings(run: usize) -> [(&'static str, &'static str); 6] {
    const CLOCKS: [&str; 4] = ["UTC", "Asia/Tokyo", "America/Chicago", "Pacific/Chatham"];
    const TONGUES: [&str; 5] = ["C", "en_US.UTF-8", "de_DE.UTF-8", "tr_TR.UTF-8", "POSIX"];
    const HOMES: [&str; 3] = ["/", "/nowhere", "/tmp"];
    let some = |list: &[&'static str]| list[run % list.len()];
    [
        ("TZ", some(&CLOCKS)),
        ("LANG", some(&TONGUES)),
        ("LC_ALL", some(&TONGUES)),
        ("HOME", some(&HOMES)),
        ("TERM", some(&["dumb", "xterm-256color"])),
        ("RAYON_NUM_THREADS", some(&["1", "7"])),
    ]
}

/// All outputs of the program for a sketch and for a folder, by name.
fn all_made(run: usize, folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let houses = folder.join("houses");
    fs::create_dir(&houses).unwrap();
    for name in ["brick-garage.sides", "cottage.sides", "farmhouse.sides", "notice.sides"] {
        fs::copy(sketch(name), houses.join(name)).unwrap();
    }
    for name in ["notice-west-wall.jpg", "notice-beside-porch.jpg", "notice-porch.png"] {
        fs::copy(sketch(name), houses.join(name)).unwrap();
    }
    let jobs = (run % 4 + 1).to_string();
    let runs: [(&str, &[&str]); 11] = [
        ("report", &["reconcile", "houses/notice.sides", "--today", "2026-11-25"]),
        ("why", &["reconcile", "--why", "houses/brick-garage.sides"]),
        ("json", &["reconcile", "--json", "houses/farmhouse.sides"]),
        ("area", &["area", "houses/farmhouse.sides"]),
        ("check", &["check", "houses/cottage.sides"]),
        ("tidy", &["tidy", "houses/cottage.sides"]),
        ("pdf", &["pages", "houses/notice.sides", "-o", "made.pdf"]),
        ("svg", &["pages", "houses/notice.sides", "-o", "made.svg"]),
        ("png", &["pages", "houses/cottage.sides", "-o", "made.png"]),
        ("rows", &["batch", "houses", "--format", "jsonl", "--jobs", &jobs]),
        (
            "summary",
            &[
                "batch",
                "houses",
                "--format",
                "csv",
                "--jobs",
                &jobs,
                "--summary",
                "--plot",
                "made-plot.svg",
            ],
        ),
    ];
    let mut made = BTreeMap::new();
    for (name, arguments) in runs {
        let mut command = fairfoot();
        command.current_dir(folder).envs(surroundings(run)).args(arguments);
        let output = command.output().unwrap();
        assert!(output.status.success(), "{name}: {}", String::from_utf8_lossy(&output.stderr));
        made.insert(format!("{name} printed"), output.stdout);
        made.insert(format!("{name} told"), output.stderr);
    }
    for entry in fs::read_dir(folder).unwrap() {
        let entry = entry.unwrap();
        if entry.file_type().unwrap().is_file() {
            let name = entry.file_name().into_string().unwrap();
            made.insert(name, fs::read(entry.path()).unwrap());
        }
    }
    made
}

#[test]
fn every_run_makes_the_same_bytes() {
    let folders: Vec<tempfile::TempDir> =
        (0..runs()).map(|_| tempfile::tempdir().unwrap()).collect();
    let first = all_made(0, folders[0].path());
    assert!(first.len() > 30, "{:?}", first.keys());
    for (run, folder) in folders.iter().enumerate().skip(1) {
        for (name, bytes) in all_made(run, folder.path()) {
            assert!(first.get(&name) == Some(&bytes), "{name} differs in run {run}");
        }
    }
}
