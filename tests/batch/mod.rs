//! Tests of `batch`: rows keep their order on any number of cores, faulty houses become rows, memory stays bounded.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::process::{Child, Command, Stdio};

use fairfoot::batch::{BatchOptions, Input, compute};
use serde_json::Value;

fn program() -> Command {
    Command::new(assert_cmd::cargo::cargo_bin!("fairfoot"))
}

/// Starts the program with pipes for standard input, output and error.
fn started(arguments: &[&str]) -> Child {
    program()
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

/// A house of 28' 4" by 42' 7": 28.3 × 42.6 = 1,205.58; 28 × 43 = 1,204.
fn house(record: i64) -> String {
    format!(
        "record {record} sq ft\nlevel \"G\"\nliving \"House\"\nnorth 28' 4\"\neast 42' 7\"\nsouth 28' 4\"\nwest 42' 7\"\n"
    )
}

fn line(id: &str, sides: &str) -> String {
    serde_json::json!({"id": id, "sides": sides}).to_string() + "\n"
}

/// The result of a run with this standard input: exit code, standard output, standard error.
fn run(arguments: &[&str], stdin: &[u8]) -> (i32, String, String) {
    let mut child = started(&[&["batch"], arguments].concat());
    let mut input = child.stdin.take().unwrap();
    let stdin = stdin.to_vec();
    let writer = std::thread::spawn(move || {
        let _ = input.write_all(&stdin);
    });
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    (output.status.code().unwrap(), text(output.stdout), text(output.stderr))
}

fn rows(out: &str) -> Vec<Value> {
    out.lines().map(|line| serde_json::from_str(line).unwrap()).collect()
}

#[test]
fn a_line_in_is_a_line_out_with_its_areas_and_its_gap() {
    let (code, out, _) = run(&["-"], line("7", &house(1_300)).as_bytes());
    assert_eq!(code, 0);
    let house = &rows(&out)[0];
    assert_eq!(house["id"], "7");
    assert_eq!(house["tenth_foot"], 1_206);
    assert_eq!(house["tenth_foot_exact"], "1205.58");
    assert_eq!(house["whole_foot"], 1_204);
    let row = &house["figures"][0];
    assert_eq!((&row["figure"], &row["sq_ft"]), (&Value::from("record"), &Value::from(1_300)));
    assert_eq!(row["gap_sq_ft"], 94);
    // 94.42 ÷ 1,205.58 = 7.83 %.
    assert_eq!(row["per_cent"], "7.8");
    assert_eq!(house["second_look"], true);
    let reasons = house["reasons"].as_array().unwrap();
    assert!(reasons.contains(&Value::from("figures disagree by over 3%")), "{reasons:?}");
}

#[test]
fn a_house_worth_a_second_look_has_reasons() {
    let reasons =
        |text: &str| compute("1", &Input::Sides(text.to_owned()), &BatchOptions::default()).reasons;
    assert!(reasons(&house(1_206)).is_empty());
    // At most 29 × 43 = 1,247.
    assert!(!reasons(&house(1_247)).contains(&"record outside the possible range".to_owned()));
    assert_eq!(reasons(&house(1_248))[0], "record outside the possible range");
    let both = house(1_220).replace("level", "listing 1,220 sq ft\nlevel");
    assert!(reasons(&both).contains(&"listing repeats the record".to_owned()));
    let estimated = house(1_206).replacen("north 28' 4\"", "north 28' 4\" estimated", 1);
    assert_eq!(reasons(&estimated), ["a wall is estimated"]);
    // 1,242 is 36 over 1,206, and 3 % of 1,206 is 36.18; 1,243 is 37 over.
    let over = "figures disagree by over 3%".to_owned();
    assert!(!reasons(&house(1_242)).contains(&over));
    assert!(reasons(&house(1_243)).contains(&over));
}

#[test]
fn a_faulty_line_becomes_a_row_with_its_error_and_the_other_rows_stay() {
    let mut text = line("a", &house(1_206));
    text.push_str("not json\n\n{\"id\": 2}\n");
    text.push_str(&line("c", "north 12'\n"));
    text.push_str(line("d", &house(1_206)).trim_end());
    let (code, out, _) = run(&["-"], text.as_bytes());
    assert_eq!(code, 1);
    let rows = rows(&out);
    let ids: Vec<&str> = rows.iter().map(|row| row["id"].as_str().unwrap()).collect();
    assert_eq!(ids, ["a", "not json", "{\"id\": 2}", "c", "d"]);
    let fault = |i: usize| rows[i]["faults"][0].as_str().unwrap_or_default();
    assert!(fault(1).starts_with("no house in JSON"), "{}", fault(1));
    assert!(fault(3).starts_with("line 1: out-of-place: "), "{}", fault(3));
    assert!(fault(4).is_empty() && rows[4]["tenth_foot"] == 1_206);
}

#[test]
fn output_is_identical_on_any_number_of_cores() {
    let text: String = (0..1_500)
        .map(|i| {
            if i % 97 == 5 {
                "broken\n".to_owned()
            } else {
                line(&i.to_string(), &house(1_150 + i % 120))
            }
        })
        .collect();
    let runs: Vec<String> =
        ["1", "2", "5"].iter().map(|jobs| run(&["-", "--jobs", jobs], text.as_bytes()).1).collect();
    assert_eq!(rows(&runs[0]).len(), 1_500);
    assert!(runs[0] == runs[1] && runs[0] == runs[2]);
    let plain = run(&["-", "--plain"], text.as_bytes()).1;
    for (full, plain) in rows(&runs[0]).iter().zip(rows(&plain)) {
        assert_eq!(full["tenth_foot_exact"], plain["tenth_foot_exact"]);
        assert_eq!(full["reasons"], plain["reasons"]);
        if let Some(row) = plain["figures"].get(0) {
            assert!(row["explanation"].is_null());
        }
    }
}

#[test]
fn empty_input_is_no_row_and_no_error() {
    let head = fairfoot::batch::HEADS.join(",") + "\n";
    assert!(head.starts_with("id,figure,sq_ft,"));
    for (arguments, wanted) in [(&["-"][..], ""), (&["-", "--format", "csv"][..], head.as_str())] {
        let (code, out, message) = run(arguments, b"");
        assert_eq!((code, out.as_str(), message.as_str()), (0, wanted, ""));
    }
}

#[test]
fn folders_are_read_and_an_unreadable_file_becomes_a_row() {
    let folder = tempfile::tempdir().unwrap();
    fs::create_dir(folder.path().join("inner")).unwrap();
    fs::write(folder.path().join("b.sides"), house(1_206)).unwrap();
    fs::write(folder.path().join("inner/a.sides"), house(1_206).replace('\n', "\r\n")).unwrap();
    fs::write(folder.path().join("c.sides"), [0xff, 0xfe, 0]).unwrap();
    fs::write(folder.path().join("notes.txt"), "no house").unwrap();
    let path = folder.path().to_str().unwrap();
    let (code, out, _) = run(&[path, "--format", "jsonl"], b"");
    assert_eq!(code, 1);
    let rows = rows(&out);
    assert_eq!(rows.len(), 3);
    assert_eq!(rows[0]["tenth_foot"], 1_206);
    assert!(rows[1]["faults"][0].as_str().unwrap().contains("is not text in UTF-8"));
    assert_eq!(rows[2]["tenth_foot"], 1_206);
    let (code, _, message) = run(&["no such folder"], b"");
    assert_eq!(code, 2);
    assert!(message.contains("cannot be read"), "{message}");
}

#[test]
fn a_table_of_figures_needs_no_sides() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("a.sides"), house(1_206)).unwrap();
    let table = folder.path().join("list.csv");
    fs::write(
        &table,
        "ID,record,listing,plan,sides\none,\"1,877\",1877,,\ntwo,1500,1560,,\nthree,,,,a.sides\nfour,none,,,\nfive,,,,\nsix,,1300,,a.sides\n",
    )
    .unwrap();
    let (code, out, _) = run(&[table.to_str().unwrap(), "--format", "jsonl"], b"");
    assert_eq!(code, 1);
    let rows = rows(&out);
    assert_eq!(rows[0]["reasons"][0], "listing repeats the record");
    // 60 over 1,500 is 4 %.
    assert_eq!(rows[1]["reasons"][0], "figures disagree by over 3%");
    assert_eq!(rows[2]["figures"][0]["sq_ft"], 1_206);
    assert_eq!(rows[3]["faults"][0], "`none` is not a record in whole square feet");
    assert_eq!(rows[4]["faults"][0], "the row has no figure");
    let listing =
        rows[5]["figures"].as_array().unwrap().iter().find(|row| row["figure"] == "listing");
    assert_eq!(listing.unwrap()["gap_sq_ft"], 94);
    let over = run(&[table.to_str().unwrap(), "--over", "5%", "--format", "csv"], b"").1;
    assert!(!over.contains("figures disagree by over 5%;") && over.contains("two,listing,1560"));
}

#[test]
fn csv_and_table_have_one_row_a_figure() {
    let both = house(1_220).replace("level", "listing 1,300 sq ft\nlevel");
    let text = line("a, \"b\"", &both);
    let (_, csv, _) = run(&["-", "--format", "csv"], text.as_bytes());
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let records: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!(records.len(), 2);
    assert!(records.iter().all(|record| record.len() == 16 && &record[0] == "a, \"b\""));
    let (_, table, _) = run(&["-", "--format", "table"], text.as_bytes());
    assert_eq!(table.lines().count(), 3);
}

#[test]
fn a_file_is_written_whole_or_not_at_all() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("rows.csv");
    fs::write(&out, "the old one").unwrap();
    let (code, ..) = run(
        &["-", "--format", "csv", "-o", out.to_str().unwrap()],
        line("1", &house(1_206)).as_bytes(),
    );
    assert_eq!(code, 0);
    assert_eq!(fs::read_to_string(&out).unwrap().lines().count(), 2);
    let missing = folder.path().join("nowhere/rows.csv");
    assert_eq!(run(&["-", "-o", missing.to_str().unwrap()], b"").0, 2);
    // A file that may not be written, and a run that is ended before its last row.
    let is_written = |may: bool| {
        let mut permissions = fs::metadata(&out).unwrap().permissions();
        permissions.set_readonly(!may);
        fs::set_permissions(&out, permissions).unwrap();
    };
    fs::write(&out, "the old one").unwrap();
    is_written(false);
    let arguments = ["-", "--format", "csv", "-o", out.to_str().unwrap()];
    let (code, _, message) = run(&arguments, line("1", &house(1_206)).as_bytes());
    assert_eq!(code, 2);
    assert!(message.contains("may not be written; it is as it was"), "{message}");
    assert_eq!(fs::read_to_string(&out).unwrap(), "the old one");
    is_written(true);
    let mut child = started(&[&["batch"][..], &arguments].concat());
    let mut input = child.stdin.take().unwrap();
    let rows: String = (0..200).map(|i| line(&i.to_string(), &house(1_206))).collect();
    input.write_all(rows.as_bytes()).unwrap();
    let unfinished = || {
        let others = fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap());
        let sizes = others.filter(|entry| entry.path() != out);
        sizes.map(|entry| entry.metadata().unwrap().len()).sum::<u64>()
    };
    while unfinished() == 0 {
        assert!(child.try_wait().unwrap().is_none(), "it ended without its input's end");
        std::thread::yield_now();
    }
    assert_eq!(fs::read_to_string(&out).unwrap(), "the old one");
    child.kill().unwrap();
    child.wait().unwrap();
    assert_eq!(fs::read_to_string(&out).unwrap(), "the old one");
}

#[test]
fn a_summary_has_counts_medians_and_the_largest_gaps() {
    let text: String = (0..101).map(|i| line(&i.to_string(), &house(1_206 + i - 50))).collect();
    let folder = tempfile::tempdir().unwrap();
    let plot = folder.path().join("gaps.svg");
    let (_, _, message) =
        run(&["-", "--summary", "--plot", plot.to_str().unwrap()], text.as_bytes());
    assert!(message.starts_with("101 houses: 0 with errors, "), "{message}");
    // The median of 1,156 to 1,256 is 1,206 itself.
    assert!(message.contains("median 1.000"), "{message}");
    assert!(message.contains("+50 sq ft (+4.1%)  record  100"), "{message}");
    let (_, largest) = message.split_once("the largest gaps:\n").unwrap();
    assert_eq!(largest.lines().count(), 20);
    let svg = fs::read_to_string(plot).unwrap();
    assert!(svg.starts_with("<svg") && svg.contains("101 figures"));
}

/// The peak memory of a process, in kilobytes; `None` if the system does not say.
fn peak_kb(child: &Child) -> Option<u64> {
    let status = fs::read_to_string(format!("/proc/{}/status", child.id())).ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM"))?;
    line.split_whitespace().nth(1)?.parse().ok()
}

#[test]
fn a_slow_reader_stops_the_stream_and_memory_stays() {
    let mut child = started(&["batch", "-", "--plain"]);
    let mut input = child.stdin.take().unwrap();
    let text: String = (0..500).map(|i| line(&i.to_string(), &house(1_206))).collect();
    let sent = std::sync::Arc::new(std::sync::atomic::AtomicUsize::new(0));
    let count = std::sync::Arc::clone(&sent);
    let writer = std::thread::spawn(move || {
        for _ in 0..100 {
            if input.write_all(text.as_bytes()).is_err() {
                return;
            }
            count.fetch_add(500, std::sync::atomic::Ordering::Relaxed);
        }
    });
    // Nothing is read for a while, so the writer has to wait long before its 50,000 houses are written.
    std::thread::sleep(std::time::Duration::from_millis(1_500));
    let waiting = sent.load(std::sync::atomic::Ordering::Relaxed);
    assert!(waiting < 25_000, "{waiting} houses were taken in although nobody reads");
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut first = String::new();
    out.read_line(&mut first).unwrap();
    assert!(first.starts_with("{\"id\":\"0\""), "{first}");
    let mut rest = String::new();
    out.read_to_string(&mut rest).unwrap();
    assert_eq!(rest.lines().count(), 49_999);
    if let Some(peak) = peak_kb(&child) {
        assert!(peak < 100_000, "{peak} kB");
    }
    writer.join().unwrap();
    assert!(child.wait().unwrap().success());
}

#[test]
fn a_single_house_is_answered_before_more_input() {
    let mut child = started(&["batch", "-"]);
    let mut input = child.stdin.take().unwrap();
    let mut out = BufReader::new(child.stdout.take().unwrap());
    for i in 0..5 {
        input.write_all(line(&i.to_string(), &house(1_206)).as_bytes()).unwrap();
        let mut row = String::new();
        out.read_line(&mut row).unwrap();
        assert!(row.starts_with(&format!("{{\"id\":\"{i}\"")), "{row}");
    }
    drop(input);
    assert!(child.wait().unwrap().success());
}

#[test]
fn a_reader_that_leaves_ends_it_quietly() {
    let text: String = (0..20_000).map(|i| line(&i.to_string(), &house(1_206))).collect();
    let mut child = started(&["batch", "-", "--plain"]);
    let mut input = child.stdin.take().unwrap();
    let writer = std::thread::spawn(move || {
        let _ = input.write_all(text.as_bytes());
    });
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut first = String::new();
    out.read_line(&mut first).unwrap();
    drop(out);
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stderr.is_empty());
}

#[cfg(unix)]
#[test]
fn an_interrupt_leaves_whole_rows() {
    let text: String = (0..200_000).map(|i| line(&i.to_string(), &house(1_206))).collect();
    let mut child = started(&["batch", "-", "--jobs", "2"]);
    let mut input = child.stdin.take().unwrap();
    let writer = std::thread::spawn(move || {
        let _ = input.write_all(text.as_bytes());
    });
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut read = String::new();
    out.read_line(&mut read).unwrap();
    let id = child.id().to_string();
    assert!(Command::new("kill").args(["-INT", &id]).status().unwrap().success());
    out.read_to_string(&mut read).unwrap();
    assert!(read.ends_with('\n'));
    assert!(rows(&read).len() < 200_000);
    let output = child.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    writer.join().unwrap();
}

#[test]
fn a_figure_of_the_table_replaces_that_of_the_file() {
    let folder = tempfile::tempdir().unwrap();
    let walls = "level \"G\"\n  living \"House\"\n    north 30'\n    east 40'\n    south 30'\n    west 40'\n";
    let own = format!(
        "record 1,300 sq ft\n{walls}record outline \"House\"\n  north 30'\n  east 41'\n  south 30'\n  west 41'\n"
    );
    std::fs::write(folder.path().join("own.sides"), own).unwrap();
    std::fs::write(folder.path().join("open.sides"), walls.replace("west 40'", "west 30'"))
        .unwrap();
    let table = folder.path().join("list.csv");
    std::fs::write(&table, "id,record,sides\na,1250,own.sides\nb,1250,open.sides\n").unwrap();
    let (_, out, _) = run(&[table.to_str().unwrap(), "--format", "jsonl"], b"");
    let rows: Vec<serde_json::Value> =
        out.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!(rows[0]["figures"][0]["sq_ft"], 1_250);
    assert_eq!(rows[0]["figures"].as_array().unwrap().len(), 1);
    let reasons = rows[0]["reasons"].to_string();
    assert!(reasons.contains("the sides file gives another record"), "{reasons}");
    // The error is at the line of the file where its space begins.
    assert!(rows[1]["faults"][0].as_str().unwrap().starts_with("line 2: does-not-close"), "{out}");
}

#[test]
fn no_csv_cell_begins_like_a_formula() {
    let names = ["=1+1", "+1+1", "-1+1", "@sum(a1)", "=cmd|' /c calc'!a0", "plain", "-5"];
    let text: String = names.iter().map(|name| line(name, &house(1_206))).collect();
    let (code, rows, _) = run(&["-", "--format", "csv", "--plain"], text.as_bytes());
    assert_eq!(code, 0);
    let mut reader = csv::Reader::from_reader(rows.as_bytes());
    let ids: Vec<String> =
        reader.records().map(|record| record.unwrap().get(0).unwrap().to_owned()).collect();
    // Texts get an apostrophe in front; numbers stay unchanged.
    let safe = ["'=1+1", "'+1+1", "'-1+1", "'@sum(a1)", "'=cmd|' /c calc'!a0", "plain", "-5"];
    assert_eq!(ids, safe);
}

#[test]
fn a_byte_order_mark_before_the_first_line_is_no_error() {
    let text = format!("\u{feff}{}{}", line("1", &house(1_206)), line("2", &house(1_206)));
    let (code, rows, _) = run(&["-", "--plain"], text.as_bytes());
    assert_eq!(code, 0, "{rows}");
}

#[cfg(unix)]
#[test]
fn a_pipe_in_a_folder_is_left_out_with_a_warning() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("a.sides"), house(1_206)).unwrap();
    let pipe = folder.path().join("b.sides");
    assert!(std::process::Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    let folder = folder.path().to_str().unwrap();
    let (code, rows, message) = run(&[folder, "--format", "jsonl", "--plain"], b"");
    assert_eq!((code, rows.lines().count()), (0, 1), "{message}");
    assert!(message.contains("b.sides` is a pipe or a device"), "{message}");
}

#[test]
fn no_input_is_overwritten() {
    let folder = tempfile::tempdir().unwrap();
    let (sides, figures) = (folder.path().join("a.sides"), folder.path().join("figures.csv"));
    fs::write(&sides, house(1_206)).unwrap();
    fs::write(&figures, "id,record,sides\n1,1206,a.sides\n").unwrap();
    let path = |path: &std::path::Path| path.to_str().unwrap().to_owned();
    let other = folder.path().join("other.sides");
    for (input, flag, out) in [
        (&figures, "-o", &figures),
        (&figures, "--plot", &figures),
        (&sides, "-o", &sides),
        (&sides, "--plot", &sides),
        (&sides, "-o", &other),
    ] {
        let before = fs::read(input).unwrap();
        let (code, _, message) = run(&[&path(input), flag, &path(out)], b"");
        assert_eq!(code, 2, "{flag} {}: {message}", out.display());
        assert_eq!(fs::read(input).unwrap(), before);
    }
    assert!(!other.exists());
}

#[test]
fn a_quotation_mark_that_is_never_closed_and_a_column_twice_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let table = folder.path().join("list.csv");
    std::fs::write(&table, "id,record\na,1250\n\"b,1260\nc,1270\n").unwrap();
    let path = table.to_str().unwrap();
    let (code, out, _) = run(&[path, "--format", "jsonl"], b"");
    let rows: Vec<serde_json::Value> =
        out.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!((code, rows.len()), (1, 2), "{out}");
    let why = rows[1]["faults"][0].as_str().unwrap();
    assert!(why.contains("begins in line 3 of the table is not closed in that line"), "{why}");
    std::fs::write(&table, "id,record,Record\na,1250,1260\n").unwrap();
    let (code, _, message) = run(&[path], b"");
    assert_eq!(code, 2);
    assert!(message.contains("two columns are named `Record`; keep one"), "{message}");
}

#[test]
fn only_an_object_with_an_id_is_a_house() {
    for row in ["[\"a\",\"level\"]", "{\"id\":null,\"sides\":\"\"}", "[]", "7"] {
        let (code, out, _) = run(&["-"], format!("{row}\n").as_bytes());
        let row: serde_json::Value = serde_json::from_str(&out).unwrap();
        assert_eq!(code, 1);
        let why = row["faults"][0].as_str().unwrap();
        assert!(why.starts_with("no house in JSON") && !why.contains("struct"), "{why}");
    }
}

#[test]
fn a_figure_of_a_table_is_above_zero() {
    use fairfoot::batch::TableFigure;
    let zero = Input::Figures(vec![(TableFigure::Listing, 0)]);
    let outcome = compute("1", &zero, &BatchOptions::default());
    assert_eq!(outcome.faults, ["a figure has to be above 0 sq ft"]);
    assert!(outcome.figures.is_empty());
}
