//! Pictures beside the sides file, as the command line finds them.

use std::fs;

use super::{SHED, halves, is_genuine, jpeg};
use crate::commands::{fairfoot, sketch, text};

fn folder(picture: Option<&[u8]>) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("shed.sides"), SHED).unwrap();
    if let Some(bytes) = picture {
        fs::write(folder.path().join("door.jpg"), bytes).unwrap();
    }
    folder
}

#[test]
fn pages_show_the_picture_beside_the_sides_file_from_any_folder() {
    let folder = folder(Some(&jpeg(&halves(640, 480))));
    let sides = folder.path().join("shed.sides");
    fairfoot().arg("pages").arg(&sides).assert().success();
    let pdf = fs::read(folder.path().join("shed.pdf")).unwrap();
    assert!(is_genuine(&pdf) && super::place_of(&pdf, b"DCTDecode").is_some());
    fairfoot().current_dir(folder.path()).args(["pages", "shed.sides"]).assert().success();
    assert_eq!(fs::read(folder.path().join("shed.pdf")).unwrap(), pdf);
}

#[test]
fn a_picture_that_is_missing_names_the_line_and_writes_nothing() {
    let folder = folder(None);
    let run = fairfoot().current_dir(folder.path()).args(["pages", "shed.sides"]).assert().code(1);
    let told = text(&run.get_output().stderr);
    assert!(
        told.contains("error[bad-picture]: the picture `door.jpg` is not beside the sides file"),
        "{told}"
    );
    assert!(
        told.contains("shed.sides:3:") && told.contains("1 error; no pages were written"),
        "{told}"
    );
    assert!(!folder.path().join("shed.pdf").exists());
    // Nothing else asks for it, nor do pages without photographs.
    for arguments in [
        &["reconcile", "shed.sides"][..],
        &["check", "shed.sides"],
        &["pages", "shed.sides", "--private"],
        &["pages", "shed.sides", "--only", "exhibit"],
    ] {
        fairfoot().current_dir(folder.path()).args(arguments).assert().success();
    }
}

#[test]
fn a_picture_is_not_written_over() {
    let picture = jpeg(&halves(64, 48));
    let folder = folder(None);
    let sides = SHED.replace("door.jpg", "door.png");
    fs::write(folder.path().join("shed.sides"), sides).unwrap();
    fs::write(folder.path().join("door.png"), &picture).unwrap();
    let mut command = fairfoot();
    command.current_dir(folder.path()).args([
        "pages",
        "shed.sides",
        "--only",
        "exhibit,photographs",
        "-o",
    ]);
    // Two pages take numbers; one page would take the name itself.
    command.arg("door.png").assert().success();
    assert_eq!(fs::read(folder.path().join("door.png")).unwrap(), picture);
    let mut command = fairfoot();
    command.current_dir(folder.path()).args([
        "pages",
        "shed.sides",
        "--only",
        "photographs",
        "-o",
        "door.png",
    ]);
    let run = command.assert().code(2);
    assert!(text(&run.get_output().stderr).contains("is read in this run and would be lost"));
    assert_eq!(fs::read(folder.path().join("door.png")).unwrap(), picture);
}

#[test]
fn standard_input_has_no_pictures_beside_it() {
    let mut command = fairfoot();
    let run =
        command.args(["pages", "-", "-o", "/dev/null.pdf"]).write_stdin(SHED).assert().code(1);
    let told = text(&run.get_output().stderr);
    let told: Vec<&str> = told.split_whitespace().collect();
    assert!(told.join(" ").contains("no folder"), "{told:?}");
}

#[cfg(unix)]
#[test]
fn links_and_folders_are_not_followed() {
    let folder = folder(None);
    let elsewhere = tempfile::tempdir().unwrap();
    let secret = elsewhere.path().join("secret.jpg");
    fs::write(&secret, jpeg(&halves(64, 48))).unwrap();
    let picture = folder.path().join("door.jpg");
    std::os::unix::fs::symlink(&secret, &picture).unwrap();
    let told = || {
        let run =
            fairfoot().current_dir(folder.path()).args(["pages", "shed.sides"]).assert().code(1);
        text(&run.get_output().stderr)
    };
    assert!(told().contains("is a link to somewhere else"));
    fs::remove_file(&picture).unwrap();
    fs::create_dir(&picture).unwrap();
    assert!(told().contains("is a folder"));
}

#[test]
fn the_demo_has_three_photographs() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("notice.pdf");
    fairfoot().arg("pages").arg(sketch("notice.sides")).arg("-o").arg(&out).assert().success();
    let pdf = fs::read(&out).unwrap();
    let shown = pdf.windows(9).filter(|window| window == b"DCTDecode").count();
    assert_eq!(shown, 3);
    assert!(is_genuine(&pdf));
}

#[test]
fn a_report_names_the_walls_that_differ_and_have_no_photo() {
    // 30' is recorded for the north wall that was taped at 24'.
    let house = |photo: &str| {
        format!(
            "record 1,200 sq ft\nlevel \"Ground\"\n  living \"House\"\n    north 24'{photo} recorded 30'\n    east 40'\n    south 24'\n    west 40'\n"
        )
    };
    let reported = |sides: String| {
        let run = fairfoot().args(["reconcile", "-"]).write_stdin(sides).assert().success();
        text(&run.get_output().stdout)
    };
    assert!(reported(house("")).contains("no photo is named yet of side 1 of House"));
    assert!(!reported(house(" photo \"1: north wall\"")).contains("no photo"));
}

/// A shed with pictures of its walls, with more of them than go on one page.
fn five_walls() -> String {
    let mut text = "level \"Ground floor\"\n  living \"Shed\"\n".to_owned();
    let walls = ["north 16'", "east 10'", "north 2'", "east 10'", "south 18'", "west 20'"];
    for (i, wall) in walls.iter().enumerate() {
        text.push_str(&format!("    {wall} photo \"{i}: a wall\" file \"{i}.jpg\"\n"));
    }
    text
}

#[test]
fn pages_of_sets_with_other_photographs_do_not_pass_as_one_set() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::write(at("shed.sides"), five_walls()).unwrap();
    let write_pictures = |first: u32| {
        for i in 0..6 {
            fs::write(at(&format!("{i}.jpg")), jpeg(&halves(64 + 2 * (i + first), 48))).unwrap();
        }
    };
    let pages = |out: &str| {
        let mut command = fairfoot();
        command.current_dir(folder.path()).args(["pages", "shed.sides", "-o", out]);
        command.assert().success();
    };
    write_pictures(0);
    pages("one.svg");
    write_pictures(1);
    pages("two.svg");
    let verify = |names: &[&str]| {
        let run = fairfoot().current_dir(folder.path()).arg("verify").args(names).assert();
        let output = run.get_output();
        (output.status.code(), text(&output.stdout).to_owned(), text(&output.stderr).to_owned())
    };
    let (code, told, _) = verify(&["one-1.svg"]);
    assert_eq!(code, Some(0));
    assert!(told.contains("Photographs on other pages of the set are not in this file"), "{told}");
    let (code, _, _) = verify(&["one-1.svg", "one-2.svg"]);
    assert_eq!(code, Some(0));
    // Each page alone is what the program makes, and together they are of two sets.
    let (code, _, message) = verify(&["one-1.svg", "two-2.svg"]);
    assert_eq!(code, Some(3));
    assert!(message.contains("the photographs that the two name differ"), "{message}");
    fairfoot().current_dir(folder.path()).args(["pages", "shed.sides"]).assert().success();
    let (code, told, _) = verify(&["shed.pdf"]);
    assert!(code == Some(0) && !told.contains("Photographs on other pages"), "{told}");
}
