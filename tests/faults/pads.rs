//! What a tape pad says of porches, roofs and shared walls: the advice, typed as it is offered, gives the area that was
//! measured. Areas are computed by hand.

use fairfoot::Settings;
use fairfoot::diagnostic::draw;

use super::diagnostics_of;

/// A house of 40 by 30 ft, its street to the south.
pub(super) const HOUSE: &str = "front south\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";
const ATTIC: &str = "level \"Attic\"\nliving \"Attic\"\nnorth 20'\neast 32'\nsouth 20'\nwest 32'\n";

/// The text with the line of each error replaced by what is offered at this index.
pub(super) fn obeyed(text: &str, offer: usize) -> String {
    let (_, list) = diagnostics_of("pad.sides", text.as_bytes().to_vec());
    let mut fixes: Vec<_> = list.iter().filter_map(|one| one.fixes().get(offer)).collect();
    fixes.sort_by_key(|fix| std::cmp::Reverse(fix.span.start));
    let mut text = text.to_owned();
    for fix in fixes {
        text.replace_range(fix.span.start..fix.span.end, &fix.text);
    }
    text
}

/// The printed diagnostics, with lines joined.
pub(super) fn said(text: &str) -> String {
    let (source, list) = diagnostics_of("pad.sides", text.as_bytes().to_vec());
    draw(&source, &list, false).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The counted area, and the area of the space with this name, in whole square feet.
pub(super) fn areas(text: &str, name: &str) -> (i64, i64) {
    let house =
        fairfoot::read("pad.sides", text).unwrap_or_else(|errors| panic!("{errors}\n{text}"));
    let space = house.spaces().iter().find(|space| space.name() == name);
    let own = space.map_or(0, |space| space.outline().area().whole_sq_ft());
    let all = house.areas(&Settings::default()).unwrap();
    (all.gross().as_measured().whole_sq_ft(), own)
}

#[test]
fn a_porch_round_a_corner_has_the_sides_that_its_words_give_it() {
    for (line, area) in [
        ("porch wraps front and left, 8' deep", 48 * 8 + 30 * 8),
        ("porch wraps front and right side, 8' deep", 48 * 8 + 30 * 8),
        ("porch wraps the NE corner, 10' deep", 50 * 10 + 30 * 10),
        ("wraparound porch 8 ft deep on the back and right", 48 * 8 + 30 * 8),
        ("porch around the SW corner 8 deep, 20 on the front, 16 on the side", 28 * 8 + 16 * 8),
        (
            "porch around the rear right corner, 16' on the right, 20' on the back, 6' deep",
            26 * 6 + 16 * 6,
        ),
        ("porch wraps front and both sides, 8' deep", 56 * 8 + 2 * 30 * 8),
        ("porch wraps left, back and right, 5' deep", 50 * 5 + 2 * 30 * 5),
        ("porch wraps all four sides, 8' deep", 56 * 8 + 2 * 30 * 8),
    ] {
        for walk in [
            HOUSE.to_owned(),
            HOUSE.replace(
                "north 30'\neast 40'\nsouth 30'\nwest 40'",
                "west 40'\nnorth 30'\neast 40'\nsouth 30'",
            ),
        ] {
            let text = obeyed(&format!("{walk}{line}\n"), 0);
            assert_eq!(areas(&text, "Porch"), (1_200, area), "{line}\n{text}");
            assert!(!said(&text).contains("touches-nothing"), "{line}\n{text}");
        }
    }
    // The outer edges of the porch: 20 by 8, and 8 more by 8.
    let outer =
        format!("{HOUSE}porch around the SW corner 8 deep, 20 on the front, 16 on the side\n");
    assert_eq!(areas(&obeyed(&outer, 1), "Porch"), (1_200, 20 * 8 + 8 * 8));
}

#[test]
fn what_is_lower_than_five_feet_does_not_count() {
    for (line, area) in [
        ("5' or more 32 x 18", 32 * 18),
        ("18 x 32 over 5 ft", 32 * 18),
        ("5 ft or more over 32 x 18", 32 * 18),
        ("headroom 5 ft over 18 ft", 32 * 18),
        ("sloped ceiling, 18 wide at 5 ft", 32 * 18),
        ("eaves 1' each side", 32 * 18),
        ("5-foot line at 28 x 20", 28 * 20),
    ] {
        let text = obeyed(&format!("{HOUSE}{ATTIC}{line}\n"), 0);
        assert_eq!(areas(&text, "").0, 1_200 + area, "{line}\n{text}");
    }
    // Straight below the line of the space, it is that part which is walked.
    let text = format!("{HOUSE}level \"Attic\"\nliving \"Attic\"\n5' or more 32 x 18\n");
    assert_eq!(areas(&obeyed(&text, 1), "Attic"), (1_200 + 576, 576));
    let low = said(&format!("{HOUSE}{ATTIC}knee walls 4'\n"));
    assert!(low.contains("how wide that strip is"), "{low}");
}

#[test]
fn a_width_between_shared_walls_never_goes_into_a_note() {
    for line in [
        "east 17' clear",
        "east 17' clear between party walls",
        "east 17 inside to inside",
        "east 17' between the common walls",
    ] {
        let text = format!(
            "level \"Ground floor\"\nliving \"House\"\nnorth 42'\n{line}\nsouth 42' common\nwest 17'\n"
        );
        let said = said(&text);
        assert!(said.contains("half of each shared wall"), "{line}: {said}");
        assert!(!said.contains("note"), "{line}: {said}");
    }
}

#[test]
fn a_garage_on_a_side_is_offered_beside_the_walk_and_in_it() {
    let text = format!("{HOUSE}garage 22' x 22' on the right\n");
    let said = said(&text);
    assert!(said.contains("garage \"Garage\" within \"House\""), "{said}");
    assert!(said.contains("garage \"Garage\" from \"House\" corner"), "{said}");
    let included = self::said(&format!("{HOUSE}garage (22x24) is included\n"));
    assert!(included.contains("inside the walk, in the southeast corner"), "{included}");
}

#[test]
fn what_stands_on_the_ground_and_is_typed_after_an_upper_level_is_told() {
    let upper =
        "level \"Upper floor\"\nliving \"Rooms\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";
    for line in ["garage \"Garage\" start east 40'", "patio \"Patio\" start east 40'"] {
        let text = format!("{HOUSE}{upper}{line}\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\n");
        let said = said(&text);
        assert!(said.contains("outbuilding-above"), "{said}");
        assert!(said.contains("under the last space of `Ground floor`"), "{said}");
    }
}

#[test]
fn walls_named_as_seen_from_the_street_say_how_they_were_read() {
    for (walls, turned) in [
        ("front 40'\nright 30'\nback 40'\nleft 30'", "right 40'\nback 30'\nleft 40'\nfront 30'"),
        ("left 30'\nback 40'\nright 30'\nfront 40'", "back 30'\nright 40'\nfront 30'\nleft 40'"),
    ] {
        let text = |walls: &str| {
            format!("front south\nlevel \"Ground floor\"\nliving \"House\"\n{walls}\n")
        };
        let page = said(&text(walls));
        assert!(page.contains("street-ways") && page.contains("30' wide, and 40' deep"), "{page}");
        // Compass words say either reading, and the note does not come back.
        let seen = |way: &str| match way {
            "front" => "south",
            "back" => "north",
            "left" => "west",
            _ => "east",
        };
        for (from, to) in walls.lines().zip(turned.lines()) {
            let (from, to) = (from.split(' ').next().unwrap(), to.split(' ').next().unwrap());
            for way in [seen(to), seen(from)] {
                assert!(page.contains(&format!("`{way}` for `{from}`")), "{page}");
            }
        }
        let page = said(&text(turned));
        assert!(page.contains("40' wide, and 30' deep"), "{page}");
    }
}

#[test]
fn a_porch_round_all_four_sides_is_two_walks() {
    let text = obeyed(&format!("{HOUSE}porch wraps all four sides, 8' deep\n"), 0);
    assert_eq!(areas(&text, "Porch, north"), (1_200, 56 * 8), "{text}");
    assert!(!said(&text).contains("error"), "{text}");
}

#[test]
fn calls_in_feet_in_a_file_in_meters_are_offered_with_their_mark() {
    let text = "units meters\nlevel \"Ground floor\"\nliving \"House\"\nnorth 8\neast 10\nsouth 8\nwest 10\nlot in feet\nN 88°30' E 300.00\nS 1°30' E 420\n";
    let page = said(text);
    assert!(page.contains("here `bearing N 88°30' E 300.00'`, `bearing S 1°30' E 420'`"), "{page}");
    assert!(page.contains("did you mean `bearing N 88°30' E 300.00'`?"), "{page}");
    assert!(!page.contains("E 300.00`"), "{page}");
}

#[test]
fn what_is_low_on_a_level_without_a_floor_asks_for_the_floor() {
    let text = format!(
        "{HOUSE}level \"Basement\" below grade\nlow \"Low\" under 5'\nnorth 10'\neast 12'\nsouth 10'\nwest 12'\n"
    );
    let page = said(&text);
    assert!(page.contains("`unfinished \"Basement\"` with its own walls"), "{page}");
    assert!(!page.contains("`from \"House\" corner`"), "{page}");
}

#[test]
fn strips_along_walls_are_deducted_wherever_the_words_say_so() {
    // The attic has 32 by 20 ft; along its front and its back it is 32 ft long.
    for (line, low) in [
        ("eaves under 5' 4' deep along front and back", 2 * 4 * 32),
        ("eaves 4' deep under 5' on front and back", 2 * 4 * 32),
        ("ceiling 4' from front, 5 feet high", 4 * 32),
        ("ceiling is 5' high 4' from the front", 4 * 32),
        ("5 ft ceiling 4 ft in from front and back", 2 * 4 * 32),
        ("low part along the back, 6' deep", 6 * 32),
        ("4' low along the left", 4 * 20),
        ("low \"Eaves\" under 5' along the back 4' deep", 4 * 32),
        ("eaves 3' deep along front and left", 3 * 32 + 3 * (20 - 3)),
        ("eaves 2' deep along the back, front and right", 2 * 2 * 32 + 2 * (20 - 4)),
    ] {
        let text = obeyed(&format!("{HOUSE}{ATTIC}{line}\n"), 0);
        assert_eq!(areas(&text, "").0, 1_200 + 640 - low, "{line}\n{text}");
    }
    // The second strip lies in the floor, and not in the first strip, whose line names the floor as well.
    let first = obeyed(&format!("{HOUSE}{ATTIC}low 4' deep along the front\n"), 0);
    let both = obeyed(&format!("{first}eaves 2' at the back\n"), 0);
    assert_eq!(areas(&both, "").0, 1_200 + 640 - 4 * 32 - 2 * 32, "{both}");
    for line in [
        "knee wall 4' in, both sides",
        "low part at the back 10'",
        "low 10' at the back",
        "low ceiling 7' in the back",
        "ceiling 4' from front",
        "ceiling 4' high at the front",
        "roof slopes from 8' at the front to 4' at the back",
    ] {
        let text = format!("{HOUSE}{ATTIC}{line}\n");
        assert_eq!(obeyed(&text, 0), text, "{line}");
        assert!(said(&text).contains("help: "), "{line}");
    }
}

#[test]
fn a_garage_in_the_walk_above_is_deducted_from_it() {
    for line in [
        "garage 20' wide 22' deep, front right, inside the above",
        "garage 20 x 22 inside the above, front right",
        "garage 20x22 front right corner, inside those walls",
        "garage 20x22 within the above walls at the front right",
        "garage 20x22 front right, included above",
    ] {
        let text = obeyed(&format!("{HOUSE}{line}\n"), 0);
        assert_eq!(areas(&text, "Garage"), (1_200 - 440, 440), "{line}\n{text}");
    }
    // Eight inches beyond the east wall.
    let off = format!(
        "{HOUSE}garage \"Garage\" start east 20' 8\"\nnorth 22'\neast 20'\nsouth 22'\nwest 20'\n"
    );
    let page = said(&off);
    assert!(page.contains("`within \"House\" start east 20'"), "{page}");
    let within = off.replace("start east 20' 8\"", "within \"House\" start east 20'");
    assert_eq!(areas(&within, "Garage"), (760, 440));
}

#[test]
fn a_size_has_its_unit_and_its_inches_in_both_lengths() {
    let level = "front south\nlevel \"Ground floor\"\n";
    for line in
        ["house 15.2 x 10.1 m", "house 15.2 m x 10.1", "living \"House\" 15.2 by 10.1 meters"]
    {
        // 153.52 sq m are 1,652.48 sq ft.
        assert_eq!(
            areas(&obeyed(&format!("{level}{line}\n"), 0), "House"),
            (1_652, 1_652),
            "{line}"
        );
    }
    // 98 by 124 inches are 84.39 sq ft.
    let open = format!("{HOUSE}open \"Foyer\" 8' 2 x 10' 4 start east 14'\n");
    assert_eq!(areas(&obeyed(&open, 0), "Foyer"), (1_116, 84));
}

#[test]
fn a_small_house_in_a_file_that_speaks_of_meters_is_asked_about_its_unit() {
    // 16 by 13 meters, or feet.
    let walls = "level \"G\"\nliving \"House\"\nnorth 13\neast 16\nsouth 13\nwest 16\n";
    for before in ["# taped in meters\n", "property \"Farm, metric\"\n"] {
        let page = said(&format!("{before}{walls}"));
        assert!(page.contains("unit-needed") && page.contains("makes it 2,239 sq ft"), "{page}");
    }
    let garage = "garage \"Garage\" start east 16'\nnorth 5 m\neast 6 m\nsouth 5 m\nwest 6 m\n";
    assert!(said(&format!("{walls}{garage}")).contains("unit-needed"));
    assert!(!said(walls).contains("unit-needed"));
    assert!(!said(&format!("# perimeter 58\n{walls}")).contains("unit-needed"));
    assert!(!said(&format!("units feet\n# metric\n{walls}")).contains("unit-needed"));
}

#[test]
fn walls_called_by_their_sides_are_not_measured_again() {
    let walk = |walls: &str| format!("front south\nlevel \"G\"\nliving \"House\"\n{walls}");
    let bay = walk(
        "left 30' 4\"\nback 40' 8\"\nright 30' 4\"\nfront 12' 2\"\nbay west 9' out 2' flat 5'\nfront 19' 6\"\n",
    );
    let page = said(&bay);
    assert!(page.contains("they bring the walk back to its start"), "{page}");
    assert!(!page.contains("measure again"), "{page}");
    // Each word turned as the help says.
    let turned = walk(
        "back 30' 4\"\nright 40' 8\"\nfront 30' 4\"\nleft 12' 2\"\nbay west 9' out 2' flat 5'\nleft 19' 6\"\n",
    );
    // 364 by 488 inches are 1,233.56 sq ft, and the bay has 2 times half of 9 and 5, 14.
    assert_eq!(areas(&turned, "House").0, 1_248);
}

#[test]
fn a_level_with_siding_keeps_its_level_and_its_face() {
    for line in ["upper floor (siding, measured inside)", "second floor, siding, taped inside"] {
        let page = said(&format!(
            "{HOUSE}{line}\nliving \"Rooms\"\nnorth 28'\neast 38'\nsouth 28'\nwest 38'\n"
        ));
        assert!(page.contains("write `level \""), "{page}");
        assert!(page.contains("`measured to inside veneer none` after the name"), "{page}");
    }
}

#[test]
fn what_is_a_level_or_a_space_never_goes_into_a_comment() {
    for line in [
        "house 30 x 24 plus ell 12 x 10",
        "house 30x24 + 12x10 ell",
        "house 30 x 24 two stories",
        "two story house 30 x 24",
        "house 30 x 24, both floors",
    ] {
        let text = format!("front south\nlevel \"Ground floor\"\n{line}\n");
        let page = said(&text);
        assert_eq!(obeyed(&text, 0), text, "{line}");
        assert!(page.contains("write `house 30"), "{page}");
    }
    for line in [
        "second floor 30 x 24 with 10 x 8 open to below",
        "upstairs 30 x 24 less 10 x 8 open to below",
    ] {
        let page = said(&format!("{HOUSE}{line}\n"));
        assert!(page.contains("`open \"Foyer\" 10 x 8`"), "{page}");
    }
}

#[test]
fn inches_alone_beside_feet_are_asked_about() {
    let walk = |east: &str| {
        format!(
            "level \"G\"\nliving \"House\"\nnorth 30' 2\"\neast {east}\nsouth 30' 2\"\nwest {east}\n"
        )
    };
    for (east, meant) in [("402\"", "40' 2\""), ("4011\"", "40' 11\""), ("410\"", "4' 10\"")] {
        let page = said(&walk(east));
        assert!(page.contains("tenths-beside-inches"), "{page}");
        assert!(page.contains(&format!("if {meant} was read")), "{page}");
    }
    assert!(!said(&walk("40' 2\"")).contains("tenths-beside-inches"));
    assert!(!said(&walk("40\"")).contains("tenths-beside-inches"));
}

#[test]
fn words_for_the_house_head_the_file_or_open_its_walls() {
    let walls = "north 30'\neast 40'\nsouth 30'\nwest 40'\n";
    for line in [
        "22 Chandler, row house",
        "house on Wren Lane",
        "house at 14 Wren Lane",
        "our cabin on the lake",
    ] {
        assert_eq!(
            areas(&obeyed(&format!("{line}\n{walls}"), 0), "House"),
            (1_200, 1_200),
            "{line}"
        );
    }
    let level = "front south\nlevel \"Ground floor\"\n";
    for line in [
        "Farmhouse",
        "Cottage",
        "house, start front left corner",
        "house: started at the front left corner",
        "house starting at front left",
        "main house, began SW corner",
    ] {
        assert_eq!(areas(&obeyed(&format!("{level}{line}\n{walls}"), 0), "").0, 1_200, "{line}");
    }
}
