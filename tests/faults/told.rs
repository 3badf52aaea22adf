//! Walls and places told by what they are at: what the message offers, typed as is, gives the house that was meant. Areas
//! are computed by hand.

use fairfoot::diagnostic::draw;
use fairfoot::{Diagnostic, Settings};

use super::diagnostics_of;
use super::typing::errors;

/// A house of two rectangles: 30' by 20', and 12' by 8' at its back on the east side, 600 and 96 sq ft.
fn house(lines: &[&str]) -> String {
    let mut text = "front south\nlevel \"Ground floor\"\nliving \"House\"\n".to_owned();
    for line in lines {
        text.push_str(line);
        text.push('\n');
    }
    text
}

const WALLS: [&str; 6] = ["north 20'", "east 18'", "north 8'", "east 12'", "south 28'", "west 30'"];

/// The text with each offered change made, the first one of several.
fn obeyed(text: &str) -> String {
    let mut text = text.to_owned();
    for error in errors(&text.clone()).iter().rev() {
        let fix = error.fixes().first().unwrap_or_else(|| panic!("nothing is offered: {text}"));
        text.replace_range(fix.span.start..fix.span.end, &fix.text);
    }
    text
}

/// The helps of the errors of a text.
fn helps(text: &str) -> String {
    let list = errors(text);
    list.iter().flat_map(Diagnostic::helps).map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

/// What is said of a text, with single blanks between the words.
fn drawn(text: &str) -> String {
    let (source, list) = diagnostics_of("told.sides", text.as_bytes().to_vec());
    let said = draw(&source, &list, false).replace('|', " ");
    said.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn counted(text: &str) -> i64 {
    let house = fairfoot::read("told.sides", text).unwrap_or_else(|errors| panic!("{errors}"));
    house.areas(&Settings::default()).unwrap().gross().as_measured().whole_sq_ft()
}

#[test]
fn the_last_wall_told_by_what_it_is_at_leads_back_to_the_start() {
    for last in [
        "garage side 30'",
        "porch wall 30'",
        "by the garage 30'",
        "along garage west 30'",
        "front of porch 30'",
        "kitchen side: 30'",
    ] {
        let mut walls = WALLS;
        walls[5] = last;
        assert_eq!(counted(&obeyed(&house(&walls))), 696, "{last}");
    }
}

#[test]
fn a_wall_after_one_by_closing_is_still_a_wall_of_the_walk() {
    let mut walls = WALLS.to_vec();
    walls[4] = "south by closing";
    walls[5] = "porch front 12'";
    walls.push("west 18'");
    let text = house(&walls);
    assert!(helps(&text).contains("`west 12' note \"porch front\"`"), "{}", helps(&text));
    assert!(!helps(&text).contains("its walls follow"));
    let typed = text.replace("porch front 12'", "west 12' note \"porch front\"");
    assert_eq!(counted(&typed), 696);
    // `right side` says where the wall stands: it was walked south.
    let by_side = typed.replace("south by closing", "right side by closing");
    assert!(helps(&by_side).contains("`south by closing`"), "{}", helps(&by_side));
}

#[test]
fn no_wall_is_made_of_a_space_below_a_walk_that_is_back_at_its_start() {
    for line in ["porch side 10'", "garage wall 10'", "by the kitchen 10'"] {
        let text = format!("{}{line}\n", house(&WALLS));
        let said = helps(&text);
        assert!(
            !said.contains("` note \"") && !said.contains("as it was walked"),
            "{line}: {said}"
        );
    }
}

#[test]
fn in_the_middle_of_a_side_with_a_jog_is_in_the_middle_of_each_of_its_walls() {
    let check = |line: &str| {
        let text = format!("{}{line}\n", house(&WALLS));
        let (source, list) = diagnostics_of("told.sides", text.into_bytes());
        draw(&source, &list, false).split_whitespace().collect::<Vec<_>>().join(" ")
    };
    // 18' less 6' leaves 6' on each side; on the 12' wall, which begins 18' east, 3'.
    let said = check("deck 6' x 6' centered on the rear wall");
    assert!(said.contains("start east 6' north 20'"), "{said}");
    assert!(said.contains("start east 21' north 28'"), "{said}");
    // A distance says more: it is not asked for again.
    let said = check("deck 6' x 6' centered on the rear wall, 2' from the west end");
    assert!(said.contains("start east 2' north 20'"), "{said}");
}

#[test]
fn a_single_wall_walked_the_other_way_by_a_street_word_is_turned() {
    let mut walls = WALLS;
    walls[4] = "back 28'";
    let text = house(&walls);
    let (source, list) = diagnostics_of("told.sides", text.clone().into_bytes());
    let said = draw(&source, &list, false).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("type `south 28'` for `back 28'`"), "{said}");
    assert!(!said.contains("measure again"), "{said}");
    assert_eq!(counted(&text.replace("back 28'", "south 28'")), 696);
}

#[test]
fn another_wall_on_the_line_of_a_slanted_one_is_kept() {
    // The corner between the first two walls is cut off: 4' each way, 8 sq ft less. Its length is 5' 7 7/8".
    let text = house(&[
        "north 16'",
        "NE 5' 7 7/8\", east 14'",
        "north 8'",
        "east 12'",
        "south 28'",
        "west 30'",
    ]);
    assert_eq!(counted(&obeyed(&text)), 688);
}

#[test]
fn a_wall_that_has_no_brick_in_a_brick_house_is_measured_without_it() {
    // 4 5/8" of brick, an inch of it more than 4 1/2": measured at the frame, each brick wall moves out by that much.
    for words in ["siding", "no brick, siding", "vinyl siding", "is siding"] {
        let text =
            house(&WALLS).replacen("front south", "veneer 4 5/8\"\nfaces frame\nfront south", 1);
        let text = text.replacen("north 8'", &format!("north 8' {words}"), 1);
        assert!(helps(&text).contains("`north 8' veneer none`"), "{words}: {}", helps(&text));
    }
}

#[test]
fn a_whole_extent_by_another_word_is_a_check_and_no_wall() {
    for line in ["west 30' total", "west total 30'", "west 30' overall"] {
        let mut walls = WALLS.to_vec();
        walls.push(line);
        assert!(helps(&house(&walls)).contains("`overall west 30'`"), "{line}");
        assert_eq!(counted(&obeyed(&house(&walls))), 696, "{line}");
    }
}

#[test]
fn the_first_space_of_an_upper_floor_that_is_set_back_starts_there() {
    // An upper floor of 30' by 16' over the front block of 30' by 20', 4' back from the street: 480 sq ft more.
    for line in
        ["living \"Upper\" set back 4' from the front", "living \"Upper\", 4' back from front"]
    {
        let mut walls = WALLS.to_vec();
        walls.extend([
            "level \"Upper floor\"",
            line,
            "north 16'",
            "east 30'",
            "south 16'",
            "west 30'",
        ]);
        assert!(helps(&house(&walls)).contains("`living \"Upper\" start north 4'`"), "{line}");
        assert_eq!(counted(&obeyed(&house(&walls))), 1_176, "{line}");
    }
}

#[test]
fn walls_named_by_their_sides_beside_bearings_are_told_as_sides() {
    // The south wall with an angled bay of 45 degrees between `front` walls; `back` and `front` are where the walls stand.
    let walls = [
        "north 28'",
        "back 36'",
        "south 28'",
        "front 10'",
        "bearing S 45° W 2' 10\"",
        "front 5'",
        "bearing N 45° W 2' 10\"",
        "front 17'",
    ];
    let said = drawn(&house(&walls));
    assert!(said.contains("`east` for `back`"), "{said}");
    assert!(!said.contains("measure again"), "{said}");
}

#[test]
fn a_barn_on_a_level_of_its_own_goes_to_the_level_of_the_house() {
    let text = format!(
        "level \"Yard\"\n{}level \"Barn\"\noutbuilding \"Barn\"\nnorth 40'\neast 30'\nsouth 40'\nwest 30'\n",
        house(&WALLS).replacen("front south\n", "", 1)
    );
    let said = drawn(&text);
    assert!(said.contains("under the last space of `Ground floor`"), "{said}");
    assert!(said.contains("`detached` after its name"), "{said}");
    assert!(said.contains("take the line of the level `Barn` out"), "{said}");
}

#[test]
fn parts_of_a_record_by_kind_are_the_living_area_and_what_else_there_is() {
    let text = house(&WALLS).replacen(
        "front south",
        "record 696 living + 440 garage + 72 porch\nfront south",
        1,
    );
    let said = helps(&text);
    assert!(said.contains("this line is `record 696 sq ft`"), "{said}");
    assert!(
        said.contains("if the house has a garage, `recorded 440 sq ft` goes on its line"),
        "{said}"
    );
    assert!(
        said.contains("if the house has a porch, `recorded 72 sq ft` goes on its line"),
        "{said}"
    );
}

#[test]
fn the_last_wall_that_says_that_it_leads_back_is_a_wall() {
    for last in ["west 30' total", "back to start 30'", "west same as 2+4"] {
        let mut walls = WALLS;
        walls[5] = last;
        assert_eq!(counted(&obeyed(&house(&walls))), 696, "{last}");
    }
}

/// The house with these lines at the top and these spaces below its walls.
fn with(top: &str, below: &str) -> String {
    format!("{top}{}{below}", house(&WALLS))
}

const GARAGE: &str =
    "garage \"Garage\" from \"House\" corner 6\nsouth 20'\nwest 22'\nnorth 20'\neast 22'\n";
const PORCH: &str =
    "porch \"Front porch\" from \"House\" corner 1\nwest 6'\nnorth 12'\neast 6'\nsouth 12'\n";
const BARN: &str = "outbuilding \"Barn\" detached\nnorth 8 m\neast 14 m\nsouth 8 m\nwest 14 m\n";

#[test]
fn the_records_area_of_a_space_that_the_file_has_goes_on_its_line() {
    let spaces = format!("{GARAGE}{PORCH}{BARN}");
    for (line, wanted) in [
        ("garage on record 484", vec!["`garage \"Garage\"` write `recorded 484 sq ft`"]),
        ("Garage per county: 484 sqft", vec!["`garage \"Garage\"` write `recorded 484 sq ft`"]),
        ("porch on the card 72", vec!["`porch \"Front porch\"` write `recorded 72 sq ft`"]),
        ("Barn on county record 115 sqm", vec!["`outbuilding \"Barn\"` write `recorded 115 sq m`"]),
        (
            "record garage 484 sq ft, porch 72 sq ft",
            vec![
                "`garage \"Garage\"` write `recorded 484 sq ft`",
                "`porch \"Front porch\"` write `recorded 72 sq ft`",
            ],
        ),
        (
            "county: garage 484, front porch 72",
            vec![
                "`garage \"Garage\"` write `recorded 484 sq ft`",
                "`porch \"Front porch\"` write `recorded 72 sq ft`",
            ],
        ),
        (
            "record 110 sq m, barn 115 sq m",
            vec![
                "this line is `record 110 sq m`",
                "`outbuilding \"Barn\"` write `recorded 115 sq m`",
            ],
        ),
        (
            "record 696 sq ft, garage 484 sq ft, deck 90 sq ft",
            vec![
                "this line is `record 696 sq ft`",
                "`garage \"Garage\"` write `recorded 484 sq ft`",
                "`missing deck \"Deck\" recorded 90 sq ft`",
            ],
        ),
    ] {
        let text = with(&format!("{line}\n"), &spaces);
        let said = helps(&text);
        for part in wanted {
            assert!(said.contains(part), "{line}: {said}");
        }
        let (_, list) = diagnostics_of("told.sides", text.into_bytes());
        assert!(list.iter().all(|one| one.fixes().is_empty()), "{line}: {said}");
    }
    // Obeyed: the figure of the house, and the barn with its own.
    let obeyed =
        with("record 110 sq m\n", &spaces.replace("detached", "detached recorded 115 sq m"));
    assert_eq!(counted(&obeyed), 696);
    // Without a second figure of the house.
    let text = with("record 696 sq ft\ngarage 484, house 696 per county\n", &spaces);
    assert!(helps(&text).starts_with("take this line out"), "{}", helps(&text));
}

#[test]
fn what_is_taken_off_by_its_own_line_is_not_taken_off_again() {
    let open = "level \"Up\"\nliving \"Beds\"\nnorth 20'\neast 30'\nsouth 20'\nwest 30'\nopen \"Foyer\" start east 4' north 2'\nnorth 8'\neast 8'\nsouth 8'\nwest 8'\n";
    for line in [
        "deduct foyer",
        "minus the foyer",
        "less foyer 64 sq ft",
        "- foyer",
        "foyer not counted",
        "foyer is taken off, don't count",
        "deduct foyer 8' x 8'",
    ] {
        let text = with("", &format!("{open}{line}\n"));
        let said = helps(&text);
        assert!(said.contains("take this line out"), "{line}: {said}");
        assert!(!said.contains("did you mean"), "{line}: {said}");
        // 696, and 600 less 64.
        assert_eq!(counted(&with("", open)), 1_232);
    }
    // Above its walls it is the line of the opening.
    let text =
        with("", &open.replace("open \"Foyer\" start east 4' north 2'", "foyer not counted"));
    assert!(!helps(&text).contains("take this line out"), "{}", helps(&text));
}

#[test]
fn two_spaces_of_one_kind_and_name_are_asked_about() {
    let said = |text: &str| {
        let (source, list) = diagnostics_of("told.sides", text.as_bytes().to_vec());
        draw(&source, &list, false).split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let barn = BARN.replace("\"Barn\"", "\"barn\"");
    assert!(said(&with("", &format!("{BARN}{barn}"))).contains("typed-twice"));
    let foyer = "open \"Foyer\" start east 4' north 2'\nnorth 8'\neast 8'\nsouth 8'\nwest 8'\n";
    let other = "low \"foyer\" start east 18' north 2'\nnorth 8'\neast 8'\nsouth 8'\nwest 8'\n";
    assert!(said(&with("", &format!("{foyer}{other}"))).contains("typed-twice"));
    // By name or by kind alone they are two.
    let porch =
        "porch \"Garage\" from \"House\" corner 1\nwest 6'\nnorth 12'\neast 6'\nsouth 12'\n";
    assert!(!said(&with("", &format!("{GARAGE}{porch}"))).contains("typed-twice"));
    assert!(
        !said(&with("", &format!("{BARN}{}", BARN.replace("Barn", "Shed"))))
            .contains("typed-twice")
    );
    // On another level a name may come again.
    let up = "level \"Up\"\nliving \"House\"\nnorth 20'\neast 30'\nsouth 20'\nwest 30'\n";
    assert!(!said(&with("", up)).contains("typed-twice"));
}

#[test]
fn a_wall_by_closing_keeps_the_way_that_was_typed() {
    for (at, line) in [
        (0, "left wall north by closing"),
        (1, "back wall east by closing"),
        (4, "right side south by closing"),
        (5, "front wall: west by closing"),
        (5, "front w by closing"),
        (0, "left side of the house, going north, by closing"),
    ] {
        let mut walls = WALLS;
        walls[at] = line;
        assert_eq!(counted(&obeyed(&house(&walls))), 696, "{line}");
    }
    // 20' north and 18' east follow from the others.
    let mut walls = WALLS;
    (walls[0], walls[1]) = ("left wall north by closing", "back wall east by closing");
    assert_eq!(counted(&obeyed(&house(&walls))), 696);
}

#[test]
fn a_slanted_wall_keeps_the_way_that_was_typed() {
    // A bay on the front: 2' out, 3' along on each side, and 6' flat, so 2' times 9' more.
    let bay = |one: &str, two: &str| {
        house(&["north 20'", "east 30'", "south 20'", "west 10'", one, "west 6'", two, "west 8'"])
    };
    for (one, two) in [
        ("south-west, out 2' over 3'", "north-west, in 2' over 3'"),
        ("SW 2' out, 3' along", "NW 2' back, 3' along"),
        ("southwest wall out 2 ft, over 3 ft", "northwest wall back 2 ft, over 3 ft"),
    ] {
        assert_eq!(counted(&obeyed(&bay(one, two))), 618, "{one}");
    }
    let said = helps(&bay("SW diagonal 2ft 3in out", "NW diagonal 2ft 3in back"));
    assert!(said.contains("`bearing S 45° W 2ft 3in`"), "{said}");
    assert!(said.contains("`diagonal south 2ft 3in west 2ft 3in`"), "{said}");
    assert!(said.contains("`bearing N 45° W 2ft 3in`"), "{said}");
    assert!(said.contains("`diagonal north 2ft 3in west 2ft 3in`"), "{said}");
}

#[test]
fn an_address_and_a_deed_by_their_headings_are_kept() {
    let said = helps(&with("Address: Calder County\n", ""));
    assert!(said.contains("`address \"Calder County\"`"), "{said}");
    let deed = "Deed:\nBeginning at an iron pin, thence N 0° E 100';\nthence N 90° E 80';\nthence S 0° E 100';\nthence S 90° W 80'\n";
    let said = helps(&with("", deed));
    assert!(said.contains("`lot \"Lot\"  # Deed:`"), "{said}");
    let said = helps(&with("", "wall thickness 4 1/2\"\n"));
    assert!(
        said.contains("above the first line that begins with `level` write `wall 4 1/2\"`"),
        "{said}"
    );
}

#[test]
fn a_porch_in_a_notch_with_its_walls_below_is_asked_for_its_corner() {
    for line in
        ["Covered porch, in the notch", "porch, in the notch", "porch \"Porch\" in the recess"]
    {
        let said = helps(&with("", &format!("{line}\nnorth 8'\nwest 18'\nsouth 8'\neast 18'\n")));
        assert!(said.contains("`from \"House\" corner`"), "{line}: {said}");
        assert!(!said.contains('#'), "{line}: {said}");
    }
}

#[test]
fn a_size_that_is_no_exact_one_gives_estimated_sides() {
    for line in [
        "porch \"Veranda\" 4.20 x 2.05 approx",
        "porch \"Veranda\" approx 4.20 x 2.05",
        "porch \"Veranda\" 4.20 m x 2.05 m (roughly)",
    ] {
        let text = format!("units m\n{}{line}\n", house(&WALLS));
        let said = helps(&text);
        assert!(said.contains("estimated"), "{line}: {said}");
    }
    let said = helps(&format!("units m\n{}porch \"Veranda\" 4.20 x 2.05\n", house(&WALLS)));
    assert!(!said.contains("estimated"), "{said}");
}

#[test]
fn two_low_strips_and_two_porches_of_other_sizes_are_not_asked_about() {
    let mut walls = WALLS.to_vec();
    walls.extend([
        "porch \"Porch\" start south 6'",
        "south 6'",
        "east 10'",
        "north 6'",
        "west 10'",
        "porch \"Porch\" start north 20'",
        "north 4'",
        "east 8'",
        "south 4'",
        "west 8'",
        "low \"Eaves\" under 5' start north 2'",
        "north 10'",
        "east 2'",
        "south 10'",
        "west 2'",
        "low \"Eaves\" under 5' start north 2' east 28'",
        "north 10'",
        "east 2'",
        "south 10'",
        "west 2'",
    ]);
    let said = drawn(&house(&walls));
    assert!(!said.contains("typed-twice"), "{said}");
    // The same size once more, and without a place.
    walls.extend(["porch \"Porch\" detached", "north 4'", "east 8'", "south 4'", "west 8'"]);
    assert!(drawn(&house(&walls)).contains("typed-twice"));
}

#[test]
fn a_wall_beside_another_that_is_named_by_its_side_is_asked_about() {
    let text = house(&[
        "north wall 30'",
        "east wall 28'",
        "south 12'",
        "east 8'",
        "south 18'",
        "west 20'",
    ]);
    let said = helps(&text);
    assert!(said.contains("`south 28'`"), "{said}");
}

#[test]
fn the_first_wall_by_closing_keeps_its_way_below_a_level_that_cannot_be_read() {
    let text = house(&[
        "left wall north by closing",
        "back wall east by closing",
        "south 20'",
        "west 30'",
    ]);
    let text = text.replacen("level \"Ground floor\"", "level Ground floor", 1);
    assert!(helps(&text).contains("`north by closing note \"left wall\"`"), "{}", helps(&text));
}

#[test]
fn a_barn_on_a_level_typed_before_that_of_the_house_goes_down() {
    let text = format!(
        "level \"Yard\"\noutbuilding \"Barn\" detached\nnorth 40'\neast 30'\nsouth 40'\nwest 30'\n{}",
        house(&WALLS).replacen("front south\n", "", 1)
    );
    let said = drawn(&text);
    assert!(said.contains("a level with nothing of the house"), "{said}");
    assert!(said.contains("move its lines down, under the last space of `Ground floor`"), "{said}");
}

#[test]
fn a_garage_that_was_typed_twice_is_to_be_taken_out_once() {
    let mut walls = WALLS.to_vec();
    let garage = ["north 20'", "east 22'", "south 20'", "west 22'"];
    walls.push("garage \"Garage\" from \"House\" corner 6");
    walls.extend(garage);
    let once = house(&walls);
    // Once walked the other way round, with the record's area.
    walls.push("garage \"Garage 2\" from \"House\" corner 6 recorded 440 sq ft");
    walls.extend(["east 22'", "north 20'", "west 22'", "south 20'"]);
    let said = drawn(&house(&walls));
    let twice =
        said.find("typed twice, take one of the two out").unwrap_or_else(|| panic!("{said}"));
    assert!(said.find("if `Garage").is_none_or(|other| twice < other), "{said}");
    assert!(!said.contains("detached"), "{said}");
    assert_eq!(counted(&once), 696);
}

#[test]
fn a_stair_without_a_place_is_said_to_lie_in_a_corner() {
    let mut walls = WALLS.to_vec();
    walls.extend(["stair \"Stairs\"", "north 10'", "east 4'", "south 10'", "west 4'"]);
    let said = drawn(&house(&walls));
    assert!(
        said.contains("nothing says where `Stairs` is: as typed it begins at corner 1"),
        "{said}"
    );
    let placed = house(&walls).replace("\"Stairs\"", "\"Stairs\" from \"House\" corner 1");
    assert!(!drawn(&placed).contains("nothing says where"), "{}", drawn(&placed));
    // A strip along a whole wall has no other place along it.
    walls[6] = "low \"Eaves\"";
    walls[7] = "north 20'";
    walls[9] = "south 20'";
    assert!(drawn(&house(&walls)).contains("nothing says where"));
    walls[7] = "north 28'";
    walls[8] = "east 1'";
    walls[9] = "south 28'";
    walls[10] = "west 1'";
    assert!(!drawn(&house(&walls)).contains("nothing says where"));
}

#[test]
fn a_garage_in_a_corner_of_the_house_may_be_in_each_of_them() {
    let text = "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\ngarage \"Garage\" within \"House\" start east 25' north 12'\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\n";
    let said = drawn(text);
    assert!(said.contains("it fits inside `House` in more than one place"), "{said}");
    for place in ["start east 20' north 10'", "start east 20'"] {
        assert!(said.contains(&format!("`{place}`")), "{said}");
        assert_eq!(counted(&text.replace("start east 25' north 12'", place)), 800);
    }
}

#[test]
fn a_second_length_that_is_said_to_be_rough_gives_estimated_sides() {
    for line in [
        "porch \"Veranda\" 12' by about 6'",
        "porch \"Veranda\" 12' x approx 6'",
        "porch 12' by roughly 6'",
        "porch 12' x 6' approx",
    ] {
        let said = helps(&format!("{}{line}\n", house(&WALLS)));
        assert!(said.contains("estimated"), "{line}: {said}");
    }
    // On the line of a wall it makes no walls.
    let mut walls = WALLS;
    walls[5] = "west 30' by about 6'";
    let said = helps(&house(&walls));
    assert!(!said.contains("on the lines below it"), "{said}");
}

#[test]
fn a_chimney_between_two_walls_leaves_the_wall_whole() {
    let mut walls = WALLS;
    walls[4] = "south 12' chimney 4' x 2' then south 12'";
    let said = helps(&house(&walls));
    assert!(said.contains("write `south 28'` if the two lengths stop at the chimney"), "{said}");
    walls[4] = "south 28'";
    assert_eq!(counted(&house(&walls)), 696);
}

#[test]
fn a_door_before_its_wall_hides_no_wall() {
    for line in ["patio door here west 30'", "deck steps west 30'", "porch post here, west 30'"] {
        let mut walls = WALLS;
        walls[5] = line;
        assert_eq!(counted(&obeyed(&house(&walls))), 696, "{line}");
    }
}

#[test]
fn brick_of_one_level_by_another_word_leaves_the_others_without_it() {
    let said = helps(&format!("exterior brick on first floor 4 5/8\"\n{}", house(&WALLS)));
    assert!(said.contains("write `veneer 4 5/8\"`") && said.contains("`veneer none`"), "{said}");
    // Upstairs without brick, measured inside with walls of 6": 29' by 19' is 30' by 20', 600 sq ft, over 696.
    let text = format!(
        "wall 6\"\nveneer 4 5/8\"\n{}level \"Upper floor\"\nliving \"Bedrooms\" measured to inside veneer none\nnorth 19'\neast 29'\nsouth 19'\nwest 29'\n",
        house(&WALLS)
    );
    let house = fairfoot::read("told.sides", text).unwrap_or_else(|errors| panic!("{errors}"));
    let areas = house.areas(&Settings::default()).unwrap();
    assert_eq!(areas.gross().outside().whole_sq_ft(), 1_296);
}

#[test]
fn a_record_of_floors_and_a_value_of_last_year_are_told_where_they_go() {
    let text = format!("2nd floor 1,172 sf\n{}", house(&WALLS));
    assert!(helps(&text).contains("`recorded 1,172 sq ft`"), "{}", helps(&text));
    let text = format!("market value 412K, last year 371.5K\n{}", house(&WALLS));
    assert!(helps(&text).contains("`value market $412,000`"), "{}", helps(&text));
    assert!(helps(&text).contains("`last year assessed $371,500`"), "{}", helps(&text));
    assert_eq!(counted(&obeyed(&text)), 696);
}

#[test]
fn a_guess_and_the_way_back_are_walls_as_the_format_has_them() {
    // 30' leads back to the start, measured or guessed.
    for (last, read) in [
        ("west, hard to reach, maybe 30'", "estimated"),
        ("west maybe 30'", "estimated"),
        ("back around to start", "close"),
        ("and back to where I began", "close"),
    ] {
        let mut walls = WALLS;
        walls[5] = last;
        let text = house(&walls);
        assert!(helps(&text).contains(read), "{last}: {}", helps(&text));
        assert_eq!(counted(&obeyed(&text)), 696, "{last}");
    }
}

#[test]
fn a_place_that_waits_for_a_walk_leaves_the_walk_its_own_error() {
    // The walk ends 1 m off: said, and not hidden by a line whose first word is no kind.
    for line in [
        "covered veranda front 4m by 2.4m starts 2m from left corner",
        "porch front 4m by 2.4m starts 2m from left corner",
    ] {
        let walls = ["north 8.6m", "east 8.24m", "south 9.6m", "west 8.24m", line];
        let said = drawn(&house(&walls));
        assert!(said.contains("error[does-not-close]"), "{said}");
    }
}

#[test]
fn sides_of_which_two_run_as_they_were_walked_are_told_apart() {
    // 36' 5" and 8' 11" north; 6' 5", 5' and the wall by closing south; 58' 8" each of east and west.
    let walls = |seventh: &str, ninth: &str, right: &str| {
        let lines = [
            "left 36' 5\"",
            "back 30' 1\"",
            "south 6' 5\"",
            "back 28' 7\"",
            right,
            "front 22' 7\"",
            seventh,
            "front 13' 1\"",
            ninth,
            "front 23'",
        ];
        drawn(&house(&lines))
    };
    let said = walls("back 8' 11\"", "front 5'", "right by closing");
    let both = "if `back 8' 11\"` and `front 5'` run another way than that";
    assert!(said.contains(both), "{said}");
    // With the last length known, 33' 11", only one way of each brings the walk back.
    let said = walls("back 8' 11\"", "front 5'", "right 33' 11\"");
    assert!(
        said.contains("with `back 8' 11\"` as `north` and `front 5'` as `south` instead"),
        "{said}"
    );
}
