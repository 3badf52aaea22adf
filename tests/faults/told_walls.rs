//! Walls, corners and sizes that are told in other words: what is offered, once typed, gives the house that was meant. The
//! areas were worked out here by hand.

use fairfoot::{Diagnostic, Settings};

use super::diagnostics_of;

const TOP: &str =
    "property \"9 Alder Lane, Juniper County\"\nveneer none\nlevel \"Ground floor\"\n";
/// A house of 30 by 40 feet.
const WALLS: &str = "living \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";

fn errors(text: &str) -> Vec<Diagnostic> {
    let (_, list) = diagnostics_of("told.sides", text.as_bytes().to_vec());
    list.into_iter().filter(Diagnostic::is_error).collect()
}

fn helps(text: &str) -> String {
    let list = errors(text);
    list.iter().flat_map(Diagnostic::helps).cloned().collect::<Vec<_>>().join("\n")
}

/// The text with every error's first suggestion in its place.
fn obeyed(text: &str) -> String {
    let mut fixed = text.to_owned();
    for error in errors(text).iter().rev() {
        let fix = error.fixes().first().unwrap_or_else(|| panic!("{text}: {error:?}"));
        fixed.replace_range(fix.span.start..fix.span.end, &fix.text);
    }
    assert!(errors(&fixed).is_empty(), "{fixed}\n{:?}", errors(&fixed));
    fixed
}

/// The gross area above grade in whole square feet.
fn gross(text: &str) -> i64 {
    let source = fairfoot::Source::new("told.sides", text);
    let house = fairfoot::read_source(source).unwrap();
    house.areas(&Settings::default()).unwrap().gross().as_measured().whole_sq_ft()
}

#[test]
fn a_wall_as_long_as_another_has_its_length_and_the_way_that_leads_back() {
    for line in
        ["same as wall 2", "wall 4 same as wall 2", "ditto side 2", "same as the opposite wall"]
    {
        let text = format!("{TOP}living \"House\"\nnorth 30'\neast 40'\nsouth 30'\n{line}\n");
        let fixed = obeyed(&text);
        assert!(fixed.contains("west 40'  # "), "{fixed}");
        assert_eq!(gross(&fixed), 1200, "{line}");
    }
    // Where the walk may go on either way it is asked.
    let text = format!("{TOP}living \"House\"\nnorth 30'\neast 40'\nsame as wall 1\nwest 10'\n");
    let help = helps(&text);
    assert!(help.contains("`south 30'  # same as wall 1` or `north 30'"), "{help}");
}

#[test]
fn a_jog_to_a_hand_and_the_wall_after_it_are_two_walls() {
    // 42 by 40 feet, and 4 by 12 feet of it stand out at the south end of the east side.
    for line in
        ["jog left 4', then straight 12'", "jog left 4' and on 12'", "jog L 4', then south 12'"]
    {
        let text =
            format!("{TOP}living \"House\"\nnorth 42'\neast 40'\nsouth 30'\n{line}\nwest 44'\n");
        assert_eq!(gross(&obeyed(&text)), 42 * 40 + 4 * 12, "{line}");
    }
}

#[test]
fn a_corner_that_is_left_out_is_two_walls() {
    let text = |wall: &str, corner: &str| {
        format!("{TOP}living \"House\"\nnorth 30'\neast 40'\n{wall}\n{corner}\nwest 38'\n")
    };
    let help = helps(&text("south 28'", "corner post missing 2 x 2"));
    assert!(help.contains("`west 2'` and `south 2'`, where `south 28'` ends 2' short"), "{help}");
    // 2 by 2 feet are missing at the corner.
    assert_eq!(gross(&text("south 28'", "west 2'\nsouth 2'")), 1196);
}

#[test]
fn a_slanted_corner_has_the_bearing_of_its_turn() {
    let help = helps(&format!(
        "{TOP}living \"House\"\nnorth 30'\neast 40'\nsouth 27'\n135 degree corner\n"
    ));
    assert!(help.contains("`bearing S 45° W` and its length if it turns to the right"), "{help}");
    let help =
        helps(&format!("{TOP}living \"House\"\nnorth 30'\neast 40'\nsouth 27'\nturn left 45°\n"));
    assert!(help.contains("`bearing S 45° E` and its length"), "{help}");
}

#[test]
fn a_box_bay_is_as_wide_as_its_longer_length() {
    for line in ["box bay 6' x 1.5'", "box bay 1.5' x 6'", "box bay 1.5' deep x 6' wide"] {
        let help =
            helps(&format!("{TOP}living \"House\"\nnorth 30'\neast 40'\nsouth 30'\n{line}\n"));
        assert!(help.contains("`1.5'` out, `6'` along and `1.5'` back"), "{help}");
    }
}

#[test]
fn the_wall_to_the_own_garage_is_no_common_wall() {
    let fixed = obeyed(&format!(
        "{TOP}living \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40' common wall shared w/ garage\n"
    ));
    assert!(fixed.contains("west 40' note \"common wall shared w/ garage\""), "{fixed}");
    let fixed = obeyed(&format!(
        "{TOP}living \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40' party wall with the neighbor's garage\n"
    ));
    assert!(fixed.contains("west 40' common note"), "{fixed}");
}

#[test]
fn a_size_says_wide_and_deep_after_its_lengths() {
    let fixed = obeyed(
        &format!("{TOP}units meters\n{WALLS}barn \"Barn\" 15.24 wide x 9.75 deep\n").replace(
            "level \"Ground floor\"\nunits meters",
            "units meters\nlevel \"Ground floor\"",
        ),
    );
    assert!(fixed.contains("outbuilding \"Barn\" detached\nnorth 15.24\neast 9.75\n"), "{fixed}");
    let fixed = obeyed(&format!(
        "{TOP}{WALLS}deck 12' deep x 20' wide on the north side, 6' from the west end\n"
    ));
    assert!(
        fixed.contains("deck \"Deck\" start east 6' north 30'\nnorth 12'\neast 20'"),
        "{fixed}"
    );
}

#[test]
fn a_number_before_an_x_is_no_inches_of_the_height_before_it() {
    // 6 by 12 feet are too low.
    let fixed = obeyed(&format!(
        "{TOP}{WALLS}low ceiling under 7' 6 x 12, 6' from the south end, 10' from the west end\n"
    ));
    assert!(fixed.contains("under 7'"), "{fixed}");
    assert_eq!(gross(&fixed), 1200 - 72);
}

#[test]
fn an_opening_over_a_room_is_at_its_corner_of_the_upper_floor() {
    // 7 by 8 feet of the upper floor are not there.
    let text = format!(
        "{TOP}{WALLS}level \"Upper floor\"\nliving \"Rooms\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\nvoid over entry 7x8 SE corner\n"
    );
    let fixed = obeyed(&text);
    assert!(fixed.contains("open \"Void over entry\" start east 32'"), "{fixed}");
    assert_eq!(gross(&fixed), 1200 + 1200 - 56);
}

#[test]
fn a_cover_for_a_vehicle_is_a_carport() {
    let fixed =
        obeyed(&format!("{TOP}{WALLS}RV cover 14' x 40' on the north side, at the west end\n"));
    assert!(fixed.contains("carport \"RV cover\" from \"House\" corner 2"), "{fixed}");
    assert_eq!(gross(&fixed), 1200);
}

#[test]
fn what_a_basement_is_stands_behind_its_level() {
    for line in
        ["basement unfinished, full", "full basement, unfinished", "basement: unfinished, full"]
    {
        let text = format!("{TOP}{WALLS}{line}\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n");
        let fixed = obeyed(&text);
        assert!(fixed.contains("level \"Basement\" below grade  # "), "{fixed}");
        assert!(fixed.contains("\nunfinished \"Basement\"\nnorth 30'"), "{fixed}");
        assert_eq!(gross(&fixed), 1200, "{line}");
    }
}

#[test]
fn a_floor_that_stands_back_starts_there() {
    let upper = "living \"Rooms\"\nnorth 26'\neast 40'\nsouth 26'\nwest 40'\n";
    let text = format!("front south\n{TOP}{WALLS}second floor sits back 4' from front\n{upper}");
    let help = helps(&text);
    assert!(help.contains("`level \"Second floor\"` on this line, and `start north 4'`"), "{help}");
    // As it says: the upper floor lies over the one below and is counted whole.
    let placed = upper.replace("\"Rooms\"", "\"Rooms\" start north 4'");
    let text = format!("front south\n{TOP}{WALLS}level \"Second floor\"\n{placed}");
    assert_eq!(gross(&text), 1200 + 26 * 40);
}

#[test]
fn the_last_call_by_a_length_alone_is_close() {
    // 100 by 80 feet, halved along the road.
    let text = format!(
        "{TOP}{WALLS}lot \"Lot 4\"\nbearing N 0° E 100'\nbearing N 90° E 80'\nthen 128 ft along the road to the point of beginning\n"
    );
    let fixed = obeyed(&text);
    assert!(fixed.contains("close  # then 128 ft along the road"), "{fixed}");
}

#[test]
fn an_account_with_areas_is_lines_of_their_own() {
    let fixed = obeyed(&format!("account 12-034 1,230 sf\n{TOP}{WALLS}"));
    assert!(fixed.starts_with("account \"12-034\"\nrecord 1,230 sq ft\n"), "{fixed}");
    let help = helps(&format!("parcel 12-034 1,230 sf 440 garage\n{TOP}{WALLS}"));
    assert!(
        help.contains("`account \"12-034\"`") && help.contains("`recorded 440 sq ft`"),
        "{help}"
    );
}

#[test]
fn two_thicknesses_before_the_frame_are_that_of_the_file_and_that_of_sides() {
    for line in ["stone 6\", brick 4\" elsewhere", "brick 4\", stone 6\" on front"] {
        let help = helps(&format!("{line}\nlevel \"Ground floor\"\n{WALLS}"));
        assert!(help.contains("`veneer 4\"` for the brick on this line"), "{help}");
        assert!(help.contains("`north 30' veneer 6\"`"), "{help}");
    }
}

#[test]
fn the_county_goes_into_the_name_of_the_property() {
    let help = helps(&format!(
        "property \"27 Millrace Road\"\nJuniper County\nlevel \"Ground floor\"\n{WALLS}"
    ));
    assert!(help.contains("`property \"27 Millrace Road, Juniper County\"`"), "{help}");
    let help = helps(&format!(
        "property \"27 Millrace Road\"\nrecord 1,250 sq ft\nJuniper County\nlevel \"Ground floor\"\n{WALLS}"
    ));
    assert!(help.contains("add it to the line that begins with `property`"), "{help}");
}

#[test]
fn what_a_letter_is_about_is_no_address() {
    let fixed = obeyed(&format!("re: 2026 value\n{TOP}{WALLS}"));
    assert!(fixed.starts_with("# re: 2026 value\n"), "{fixed}");
    let fixed = obeyed(&format!("re: 9 Alder Lane\nlevel \"Ground floor\"\n{WALLS}"));
    assert!(fixed.starts_with("address \"9 Alder Lane\"\n"), "{fixed}");
}

#[test]
fn a_wall_taped_in_stretches_is_their_sum() {
    for line in [
        "west 38-6 to gate, then 1-6 behind gate",
        "west 30' to the fence, 10' more behind it",
        "kitchen wall west 22' plus den wall 18'",
    ] {
        let text = format!("{TOP}living \"House\"\nnorth 30'\neast 40'\nsouth 30'\n{line}\n");
        let fixed = obeyed(&text);
        assert!(fixed.contains("\nwest 40'"), "{fixed}");
        assert_eq!(gross(&fixed), 1200, "{line}");
    }
}

#[test]
fn calls_by_the_compass_keep_what_they_run_along_in_a_comment() {
    let text = format!(
        "{TOP}{WALLS}lot \"Lot 4\"\nnorth 100'\neast 80'\nS along alley 100' then W 80' to pin\n"
    );
    let fixed = obeyed(&text);
    assert!(fixed.ends_with("south 100'  # along alley\nwest 80'  # to pin\n"), "{fixed}");
}

#[test]
fn what_stands_in_the_garage_unfinished_is_in_its_area() {
    let garage = "garage \"Garage\" start east 40'\nnorth 22'\neast 24'\nsouth 22'\nwest 24'\n";
    let fixed = obeyed(&format!("{TOP}{WALLS}{garage}storage loft in garage 8 x 22\n"));
    assert!(fixed.ends_with("# storage loft in garage 8 x 22\n"), "{fixed}");
    assert_eq!(gross(&fixed), 1200);
    let help = helps(&format!("{TOP}{WALLS}{garage}closet bumped into garage 3 x 6\n"));
    assert!(help.contains("write `living \"Closet\"`"), "{help}");
}

#[test]
fn what_is_up_is_a_level_with_its_size() {
    let fixed = obeyed(&format!("{TOP}{WALLS}up: 2 bd 1 ba 24 x 30\n"));
    assert!(fixed.contains("level \"Upstairs\"\nliving \"Upper rooms\"  # 2 bd 1 ba\n"), "{fixed}");
    assert_eq!(gross(&fixed), 1200 + 720);
}
