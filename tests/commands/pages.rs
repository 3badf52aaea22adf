//! `pages`, `reconcile --pages` and `verify`, run as a user runs them.

use super::{PLAIN, fairfoot, sketch, text};

#[test]
fn a_pdf_is_one_file_and_svg_pages_are_numbered() {
    let folder = tempfile::tempdir().unwrap();
    let pdf = folder.path().join("house.pdf");
    let run = fairfoot().args(["pages", "-", "-o"]).arg(&pdf).write_stdin(PLAIN).assert().success();
    assert!(run.get_output().stdout.is_empty());
    assert!(text(&run.get_output().stderr).contains("2 pages: "));
    assert!(std::fs::read(&pdf).unwrap().starts_with(b"%PDF-"));
    let svg = folder.path().join("house.svg");
    fairfoot().args(["pages", "-", "-o"]).arg(&svg).write_stdin(PLAIN).assert().success();
    let mut names: Vec<String> = std::fs::read_dir(folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    assert_eq!(names, ["house-1.svg", "house-2.svg", "house.pdf"]);
}

#[test]
fn pages_do_not_depend_on_clock_locale_and_folder() {
    let (one, other) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let file = std::fs::canonicalize(sketch("brick-garage.sides")).unwrap();
    let copy = other.path().join("another name.sides");
    std::fs::copy(&file, &copy).unwrap();
    for kind in ["pdf", "svg", "png"] {
        fairfoot()
            .current_dir(one.path())
            .arg("pages")
            .arg(&file)
            .args(["-o", &format!("a.{kind}")])
            .assert()
            .success();
        fairfoot()
            .current_dir(other.path())
            .envs([
                ("TZ", "Asia/Tokyo"),
                ("LANG", "de_DE.UTF-8"),
                ("LC_ALL", "tr_TR.UTF-8"),
                ("HOME", "/"),
            ])
            .arg("pages")
            .arg("another name.sides")
            .args(["-o", &format!("a.{kind}")])
            .assert()
            .success();
    }
    let mut looked_at = 0;
    for entry in std::fs::read_dir(one.path()).unwrap() {
        let name = entry.unwrap().file_name();
        let read = |folder: &std::path::Path| std::fs::read(folder.join(&name)).unwrap();
        assert!(read(one.path()) == read(other.path()), "{name:?} differs");
        looked_at += 1;
    }
    assert_eq!(looked_at, 9, "a PDF, four SVG and four PNG");
}

#[test]
fn reconcile_writes_the_pages_beside_its_report() {
    let folder = tempfile::tempdir().unwrap();
    let pdf = folder.path().join("house.pdf");
    let run = fairfoot()
        .args(["reconcile", "-", "--paper", "a4", "--pages"])
        .arg(&pdf)
        .write_stdin(PLAIN)
        .assert()
        .success();
    assert!(text(&run.get_output().stdout).contains("Record 1,200 sq ft."));
    assert!(pdf.is_file());
    // Custom weights would give figures that nobody else could compute again.
    fairfoot()
        .args(["reconcile", "-", "--weights", "w.json", "--pages", "a.pdf"])
        .write_stdin(PLAIN)
        .assert()
        .code(2);
}

#[test]
fn an_unknown_file_extension_is_refused_before_any_work() {
    for name in ["house", "house.txt", "house.svgz", ".pdf"] {
        let run = fairfoot().args(["pages", "no such file", "-o", name]).assert().code(2);
        assert!(
            text(&run.get_output().stderr).contains("end it in `.pdf`, `.svg` or `.png`"),
            "{name}"
        );
    }
}

#[test]
fn a_missing_folder_and_a_folder_in_the_way_are_errors() {
    let folder = tempfile::tempdir().unwrap();
    let missing = folder.path().join("nowhere").join("a.pdf");
    let run =
        fairfoot().args(["pages", "-", "-o"]).arg(&missing).write_stdin(PLAIN).assert().code(2);
    assert!(text(&run.get_output().stderr).contains("there is no such folder"));
    let inside = folder.path().join("a.pdf");
    std::fs::create_dir(&inside).unwrap();
    let run =
        fairfoot().args(["pages", "-", "-o"]).arg(&inside).write_stdin(PLAIN).assert().code(2);
    assert!(text(&run.get_output().stderr).contains("is a folder; give a file in it"));
}

#[test]
fn a_faulty_house_has_no_pages_and_leaves_the_old_ones() {
    let folder = tempfile::tempdir().unwrap();
    let pdf = folder.path().join("house.pdf");
    std::fs::write(&pdf, "the old one").unwrap();
    let faulty = PLAIN.replace("west  42' 7\"", "west  40'");
    fairfoot().args(["pages", "-", "-o"]).arg(&pdf).write_stdin(faulty).assert().code(1);
    assert_eq!(std::fs::read_to_string(&pdf).unwrap(), "the old one");
}

#[test]
fn verify_says_genuine_or_not_as_made() {
    let folder = tempfile::tempdir().unwrap();
    let svg = folder.path().join("house.svg");
    fairfoot().args(["pages", "-", "-o"]).arg(&svg).write_stdin(PLAIN).assert().success();
    let page = folder.path().join("house-1.svg");
    let run = fairfoot().arg("verify").arg(&page).assert().success();
    let said = text(&run.get_output().stdout);
    assert!(said.contains("house-1.svg`: genuine\n"), "{said}");
    assert!(said.contains("byte for byte") && said.contains("page 1 of 2"), "{said}");
    assert!(said.contains("That does not show that the sides are right."), "{said}");
    let made = std::fs::read_to_string(&page).unwrap();
    std::fs::write(&page, made.replace("Measured 1,206", "Measured 1,106")).unwrap();
    let run = fairfoot().arg("verify").arg(&page).assert().code(3);
    let said = text(&run.get_output().stdout);
    assert!(said.contains("not as made: nothing printed on this page can be relied on"), "{said}");
    assert!(said.contains("1,106") && said.contains("`--remake true.pdf`"), "{said}");
    let run = fairfoot().args(["verify", "--sides"]).arg(&page).assert().code(3);
    assert_eq!(text(&run.get_output().stdout), PLAIN);
    assert!(text(&run.get_output().stderr).contains("not as made"));
    let run = fairfoot().args(["verify", "--json"]).arg(&page).assert().code(3);
    let json: serde_json::Value = serde_json::from_slice(&run.get_output().stdout).unwrap();
    assert_eq!(json[0]["genuine"], false);
    assert_eq!(json[0]["why"], "differs");
    assert!(json[0]["differences"][0]["found"].as_str().unwrap().contains("1,106"));
    // One option writes the true pages, and the forged file is left unchanged.
    let anew = folder.path().join("true.svg");
    fairfoot().arg("verify").arg(&page).arg("--remake").arg(&anew).assert().code(3);
    assert_eq!(std::fs::read_to_string(folder.path().join("true-1.svg")).unwrap(), made);
    let run = fairfoot().arg("verify").arg(&page).arg("--remake").arg(&svg).assert().code(2);
    assert!(text(&run.get_output().stderr).contains("is read in this run and would be lost"));
}

#[test]
fn settings_and_paper_of_the_pages_are_part_of_the_answer() {
    let folder = tempfile::tempdir().unwrap();
    let pdf = folder.path().join("house.pdf");
    fairfoot()
        .args(["pages", "-", "--ties", "down", "--step", "inch", "--paper", "a4", "-o"])
        .arg(&pdf)
        .write_stdin(PLAIN)
        .assert()
        .success();
    let run = fairfoot().arg("verify").arg(&pdf).assert().success();
    let said = text(&run.get_output().stdout);
    assert!(said.contains("settings other than the usual: halves=down; step=inch"), "{said}");
}

#[test]
fn the_fingerprint_of_a_sides_file_is_that_on_the_foot_of_its_pages() {
    let folder = tempfile::tempdir().unwrap();
    let (sides, svg) = (folder.path().join("house.sides"), folder.path().join("house.svg"));
    std::fs::write(&sides, PLAIN).unwrap();
    fairfoot().arg("pages").arg(&sides).arg("-o").arg(&svg).assert().success();
    let run = fairfoot().args(["verify", "--print"]).arg(&sides).assert().success();
    let print = text(&run.get_output().stdout)[..11].to_owned();
    for number in 1..=2 {
        let page = folder.path().join(format!("house-{number}.svg"));
        let page = std::fs::read_to_string(page).unwrap();
        assert!(page.contains(&format!("fingerprint {print}, fairfoot ")), "{print}");
    }
    let down = fairfoot().args(["verify", "--print", "--ties", "down"]).arg(&sides).assert();
    assert_ne!(text(&down.success().get_output().stdout)[..11], print);
}

#[test]
fn a_file_that_is_no_page_is_reported_and_the_others_are_still_verified() {
    let folder = tempfile::tempdir().unwrap();
    let pdf = folder.path().join("house.pdf");
    fairfoot().args(["pages", "-", "-o"]).arg(&pdf).write_stdin(PLAIN).assert().success();
    let run = fairfoot().arg("verify").arg(sketch("cottage.sides")).arg(&pdf).assert().code(3);
    let said = text(&run.get_output().stdout);
    assert!(
        said.contains("not as made") && said.contains("there is no sides file inside"),
        "{said}"
    );
    assert!(said.contains("house.pdf`: genuine"), "{said}");
    let run = fairfoot().args(["verify", "nowhere.pdf"]).arg(&pdf).assert().code(2);
    assert!(text(&run.get_output().stdout).contains("genuine"));
}

#[test]
fn a_letter_that_the_pages_cannot_show_is_a_warning() {
    let folder = tempfile::tempdir().unwrap();
    let pdf = folder.path().join("house.pdf");
    let named = PLAIN.replace("\"House\"", "\"Haus 👍\"");
    let run = fairfoot().args(["pages", "-", "-o"]).arg(&pdf).write_stdin(named).assert().success();
    assert!(text(&run.get_output().stderr).contains("warning[letter-not-shown]"));
}

#[test]
fn a_draft_of_a_walk_that_does_not_close_is_written_beside_its_error() {
    let folder = tempfile::tempdir().unwrap();
    let open = "level \"Ground\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 30'\n";
    for kind in ["pdf", "svg", "png"] {
        let out = folder.path().join(format!("walk.{kind}"));
        let run = fairfoot()
            .args(["pages", "-", "--draft", "-o"])
            .arg(&out)
            .write_stdin(open)
            .assert()
            .success();
        let message = text(&run.get_output().stderr).to_owned();
        assert!(message.contains("error[does-not-close]"), "{message}");
        assert!(message.contains("1 page: "), "{message}");
        if kind != "png" {
            let run = fairfoot().arg("verify").arg(&out).assert().success();
            assert!(text(&run.get_output().stdout).contains("a draft"));
        }
    }
    let nothing = folder.path().join("nothing.pdf");
    fairfoot().args(["pages", "-", "--draft", "-o"]).arg(&nothing).write_stdin("").assert().code(1);
    assert!(!nothing.exists());
    fairfoot().args(["pages", "-", "--draft", "--only", "source"]).assert().code(2);
}

#[test]
fn a_metric_file_without_an_american_place_is_drawn_on_a4() {
    let metric = "level \"Ground\"\n  living \"House\"\n    north 9 m\n    east 12 m\n    south 9 m\n    west 12 m\n";
    let feet = metric.replace(" 9 m", " 30'").replace(" 12 m", " 40'");
    let texas = format!("tax year 2026\nplace texas\n{metric}");
    let none = format!("tax year 2026\nplace none\n{metric}");
    let widths = [
        (metric, &[][..], "8.268in"),
        (&none, &[], "8.268in"),
        (&texas, &[], "8.5in"),
        (&feet, &[], "8.5in"),
        (metric, &["--paper", "letter"], "8.5in"),
        (&feet, &["--paper", "a4"], "8.268in"),
    ];
    for (text, arguments, width) in widths {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("a.sides"), text).unwrap();
        let mut command = super::fairfoot();
        command
            .current_dir(folder.path())
            .args(["pages", "a.sides", "--only", "exhibit", "-o", "a.svg"]);
        command.args(arguments).assert().success();
        let page = std::fs::read_to_string(folder.path().join("a.svg")).unwrap();
        // 595.276 / 72 and 612 / 72 inches.
        assert!(page.contains(&format!("width=\"{width}\"")), "{text} {arguments:?}");
    }
}

#[test]
fn pages_with_a_supplement_say_where_it_begins() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("house.pdf");
    let said = |more: &[&str]| {
        let file = sketch("small-record.sides");
        let run = fairfoot().arg("pages").arg(file).arg("-o").arg(&out).args(more).assert();
        text(&run.success().get_output().stderr).to_owned()
    };
    let all = said(&[]);
    assert!(all.contains("the supplement after page 3 is for the owner alone"), "{all}");
    assert!(all.contains("prints values, rates and sales"), "{all}");
    let private = said(&["--private"]);
    assert!(!private.contains("supplement") && !private.contains("rates"), "{private}");
    let exhibit = said(&["--only", "exhibit"]);
    assert!(!exhibit.contains("supplement") && !exhibit.contains("rates"), "{exhibit}");
}

#[test]
fn sections_without_anything_to_show_write_nothing_and_say_what_to_add() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("a.sides"), super::PLAIN).unwrap();
    std::fs::write(folder.path().join("a.pdf"), "precious").unwrap();
    for out in ["a.pdf", "a.svg", "a.png"] {
        let mut command = fairfoot();
        command.current_dir(folder.path()).args([
            "pages",
            "a.sides",
            "--only",
            "photographs",
            "-o",
            out,
        ]);
        let run = command.assert().code(2);
        let told = text(&run.get_output().stderr);
        assert!(told.contains("add `exhibit`, which every house has"), "{told}");
    }
    assert_eq!(std::fs::read_to_string(folder.path().join("a.pdf")).unwrap(), "precious");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 2);
}
