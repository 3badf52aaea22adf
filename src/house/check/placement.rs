//! Where each space is on its level: at the origin, at an offset from it, or at a corner of another space.

use crate::diagnostic::words;
use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::geometry::compass::Axis;
use crate::house::Space;
use crate::house::check::names::TYPED_TWICE;
use crate::house::check::{Checker, OnLevel};
use crate::sketch::statement::Place;
use crate::sketch::{Kind, LevelSketch, SpaceSketch, WalkSketch};
use crate::units::length::Length;

impl Checker<'_> {
    /// The position of the first corner of a space in nanometers, east then north; `None` after reporting an error.
    pub(super) fn place(
        &mut self,
        on: &LevelSketch,
        sketch: &SpaceSketch,
        on_level: &OnLevel,
    ) -> Option<(i64, i64)> {
        match &sketch.space.place {
            Place::Origin => Some((0, 0)),
            Place::Start(offsets) => {
                let along = |axis: Axis| -> i64 {
                    let parts = offsets.iter().filter(|(direction, _)| direction.axis() == axis);
                    parts.map(|(direction, length)| direction.sign() * length.length().nm()).sum()
                };
                Some((along(Axis::East), along(Axis::North)))
            }
            Place::Corner(name) => {
                let mut found = Vec::new();
                for (i, space) in on.spaces.iter().enumerate().take(on_level.len()) {
                    found.extend(
                        space
                            .walk
                            .corners
                            .iter()
                            .filter(|corner| corner.name == *name)
                            .map(|corner| (i, corner)),
                    );
                }
                match found[..] {
                    [(i, corner)] => self.corner_place(on_level[i], corner.after),
                    [] => {
                        if !on.doubtful {
                            let known: Vec<String> = on
                                .spaces
                                .iter()
                                .take(on_level.len())
                                .flat_map(|space| names_of(&space.walk))
                                .collect();
                            let shown = format!("corner {}", quoted(&name.text));
                            self.report(no_such_corner(name.span, &shown, "a corner is named on the walk of a space given earlier on this level", &known));
                        }
                        self.whole = false;
                        None
                    }
                    [(_, first), (_, second), ..] => {
                        let shown = quoted(&name.text);
                        self.report(
                            Diagnostic::new(
                                Word::NameTwice,
                                second.name.span,
                                format!("two corners of this level are called {shown}"),
                            )
                            .also(first.name.span, "the other one")
                            .help("give each a name of its own, since another line refers to it"),
                        );
                        None
                    }
                }
            }
            Place::CornerOf(name, corner) => {
                let earlier = on
                    .spaces
                    .iter()
                    .take(on_level.len())
                    .position(|space| space.space.name == *name);
                let Some(i) = earlier else {
                    let is_elsewhere = self.sketch.levels.iter().any(|level| {
                        !std::ptr::eq(level, on)
                            && level.spaces.iter().any(|space| space.space.name == *name)
                    });
                    if is_elsewhere && on_level.is_empty() {
                        self.report(on_another_level(name));
                    } else if !on.doubtful {
                        self.report(no_such_space(name, on, on_level.len()));
                    }
                    self.whole = false;
                    return None;
                };
                // The corners of a space that itself has errors are not reported.
                let sides = self.house.spaces[on_level[i]?].sides.len();
                if !(1..=sides).contains(&corner.number) {
                    let has = format!("{} has corners 1 to {sides}", quoted(&name.text));
                    let typed = format!("corner {}", corner.number);
                    self.report(no_such_corner(corner.span, &typed, &has, &[]));
                    return None;
                }
                self.corner_place(on_level[i], corner.number - 1)
            }
        }
    }

    pub(super) fn corner_place(&self, space: Option<usize>, after: usize) -> Option<(i64, i64)> {
        let space = &self.house.spaces[space?];
        let points = space.closed.outline.points();
        let corner = points.get(after).or(points.first())?;
        Some((space.at.0 + corner.0, space.at.1 + corner.1))
    }

    /// Warns of a level without a space.
    pub(super) fn report_empty_level(&mut self, level: &LevelSketch) {
        let name = &level.level.name;
        let message =
            format!("{} has no space: nothing of it is drawn or counted", quoted(&name.text));
        self.report(Diagnostic::new(Word::EmptyLevel, name.span, message).help(
            "on the lines below it type its space, as `living \"Rooms\"` or `unfinished \"Rooms\"`, and its sides, one on each line; if nothing of it was measured, put its line after a `#`",
        ));
    }

    /// Reports two levels with the same name. Spaces of different levels are not compared, so spaces typed under two
    /// such lines could overlap unnoticed.
    pub(super) fn report_level_twice(&mut self, number: usize, level: &LevelSketch) {
        let name = &level.level.name;
        // A name that could not be read has an error of its own.
        if name.text.is_empty() {
            return;
        }
        let before = &self.sketch.levels[..number];
        // One that was assumed, for spaces above which no level stands, is on no line of the file.
        let is_typed = |other: &&LevelSketch| other.level.name.span != Span::default();
        if let Some(first) = before.iter().filter(is_typed).find(|other| other.level.name == *name)
        {
            let message = format!("two levels are called {}", quoted(&name.text));
            self.report(
                Diagnostic::new(Word::NameTwice, name.span, message)
                    .also(first.level.name.span, "the other one")
                    .help("take this line out if its spaces are on that level, or give it a name of its own"),
            );
        }
    }

    /// Reports a name that two spaces of a level have and that something refers to.
    pub(super) fn report_name_twice(&mut self, level: &LevelSketch, i: usize) {
        if i == 0 {
            return;
        }
        let name = &level.spaces[i].space.name;
        let first = level.spaces[..i].iter().find(|other| other.space.name == *name);
        let refers = |space: &SpaceSketch| {
            space.space.within.as_ref() == Some(name)
                || matches!(&space.space.place, Place::CornerOf(of, ..) if of == name)
        };
        let referred = level.spaces.iter().any(refers)
            || self.sketch.figures.iter().any(|figure| figure.figure.basis.counting.contains(name))
            || self.sketch.outlines.iter().any(|outline| outline.of.as_ref() == Some(name));
        if let Some(first) = first.filter(|_| referred) {
            let shown = quoted(&name.text);
            self.report(
                Diagnostic::new(
                    Word::NameTwice,
                    name.span,
                    format!("two spaces of this level are called {shown}"),
                )
                .also(first.space.name.span, "the other one")
                .help("give each a name of its own, since another line refers to it"),
            );
            return;
        }
        self.report_typed_twice(level, i);
    }

    /// Tells where a part of a space lies that the file gives no place: in a corner, where nothing else shows it.
    pub(super) fn report_not_placed(&mut self, placed: &[usize]) {
        for &space in placed {
            let here = &self.house.spaces[space];
            let is_room = matches!(here.kind, Kind::Living | Kind::Unfinished);
            let Some(parent) = here.parent.filter(|_| !is_room) else {
                continue;
            };
            if !self.unplaced.contains(&space) || self.misplaced.contains(&space) {
                continue;
            }
            let around = &self.house.spaces[parent];
            // A strip along a whole wall, or a part that fills its space, lies where its size puts it.
            let long = |(low, high): (i64, i64)| high - low;
            let is_strip = [Axis::East, Axis::North].into_iter().any(|axis| {
                let of = |space: &Space| match axis {
                    Axis::East => space.extent.east(),
                    Axis::North => space.extent.north(),
                };
                long(of(here)) + Length::FOOT.nm() >= long(of(around))
            });
            if is_strip {
                continue;
            }
            let name = quoted(&here.name);
            let (begins, there) = match self.corner_at(space, here.at) {
                Some((of, corner)) => {
                    let of = &self.house.spaces[of].name;
                    (
                        format!("at corner {corner} of {}", quoted(of)),
                        format!("from \"{of}\" corner {corner}"),
                    )
                }
                None => ("where the house's first walk does".to_owned(), "start east 0".to_owned()),
            };
            let example = self.example();
            let note = Diagnostic::new(
                Word::NotPlaced,
                here.span,
                format!("nothing says where {name} is: as typed it begins {begins}"),
            )
            .help(format!(
                "if it is there, type `{there}` after its name; elsewhere `start` and how far east and north its walk begins from where the house's first walk does, as `start east {example}`"
            ));
            self.report(note);
        }
    }

    /// Asks about a space that has the kind and the name of one above it on its level, or, if both are taken off, the name
    /// alone: typed twice, it counts twice, and nothing else shows it where the two lie apart.
    fn report_typed_twice(&mut self, level: &LevelSketch, i: usize) {
        let space = &level.spaces[i].space;
        let usual = |space: &SpaceSketch| space.space.name.text.trim().to_lowercase();
        let own = usual(&level.spaces[i]);
        let is_part = |kind: Kind| matches!(kind, Kind::Open | Kind::Low | Kind::Stair);
        let lengths = |one: &SpaceSketch| {
            let typed = one.walk.sides.iter().map(|side| {
                side.typed.split_once(' ').map_or_else(String::new, |(_, length)| length.to_owned())
            });
            let mut typed: Vec<String> = typed.collect();
            typed.sort_unstable();
            typed
        };
        // Of another size at another place it is another one, and so is a low strip along another wall.
        let is_another = |other: &SpaceSketch| {
            let (here, there) = (&space.place, &other.space.place);
            let stated = *here != Place::Origin && *there != Place::Origin && here != there;
            let low = space.kind == Kind::Low && other.space.kind == Kind::Low;
            stated && (low || lengths(other) != lengths(&level.spaces[i]))
        };
        let same = |other: &&SpaceSketch| {
            let kind = other.space.kind;
            (kind == space.kind || is_part(kind) && is_part(space.kind))
                && usual(other) == own
                && !is_another(other)
        };
        if own.is_empty() {
            return;
        }
        if let Some(first) = level.spaces[..i].iter().find(same) {
            let takes = if matches!(space.kind, Kind::Open | Kind::Low) {
                "taken off the floor"
            } else {
                "drawn"
            };
            let name = &space.name;
            let message = format!(
                "two spaces of this level are called {}, and both are {takes}",
                quoted(&name.text)
            );
            self.report(
                Diagnostic::new(Word::TypedTwice, name.span, message)
                    .also(first.space.name.span, "the other one")
                    .help(TYPED_TWICE)
                    .help("if there are two, give each a name of its own, as `west` and `east` after the name"),
            );
        }
    }
}

/// What is wrong with the first space of a level that begins at a corner of a space of another one.
fn on_another_level(name: &crate::sketch::statement::Named) -> Diagnostic {
    let shown = quoted(&name.text);
    Diagnostic::new(
        Word::NoSuchSpace,
        name.span,
        format!("{shown} is on another level, and a place at a corner is on one level"),
    )
    .help("take the place out if the walk begins right above where the house's first walk begins; if not, write instead of it `start` and how far east and north of there")
}

pub(super) fn no_such_space(
    name: &crate::sketch::statement::Named,
    level: &LevelSketch,
    before: usize,
) -> Diagnostic {
    let earlier: Vec<&str> =
        level.spaces.iter().take(before).map(|space| space.space.name.text.as_str()).collect();
    let shown = quoted(&name.text);
    let fault = Diagnostic::new(
        Word::NoSuchSpace,
        name.span,
        format!("no space given earlier on this level is called {shown}"),
    );
    if let Some(near) = words::nearest(&name.text, &earlier) {
        return fault.help(format!("did you mean `\"{near}\"`?"));
    }
    let living = level.spaces.iter().take(before).find(|space| space.space.kind == Kind::Living);
    match (&earlier[..], living) {
        ([], _) => {
            fault.help("put the space it refers to on a line before this one, on the same level")
        }
        ([only], _) => {
            fault.help(format!("did you mean `\"{only}\"`? It is the only one above on this level"))
        }
        (all, Some(living)) => fault.help(format!(
            "did you mean `\"{}\"`? Above on this level are {}",
            living.space.name.text,
            words::all_of(&all.iter().map(|name| quoted(name)).collect::<Vec<_>>())
        )),
        (all, None) => fault.help(format!(
            "above on this level are {}",
            words::all_of(&all.iter().map(|name| quoted(name)).collect::<Vec<_>>())
        )),
    }
}

pub(super) fn names_of(walk: &WalkSketch) -> Vec<String> {
    walk.corners.iter().map(|corner| corner.name.text.clone()).collect()
}

pub(super) fn no_such_corner(span: Span, shown: &str, has: &str, known: &[String]) -> Diagnostic {
    let fault =
        Diagnostic::new(Word::NoSuchCorner, span, format!("there is no {shown} here")).note(has);
    if known.is_empty() {
        // A number names no corner.
        let name = shown.split(['`', '"']).rev().find(|part| part.contains(char::is_alphabetic));
        let name = name.filter(|name| !name.contains("corner")).unwrap_or("porch");
        return fault
            .help(format!("name a corner on the walk where it is reached: `corner \"{name}\"`"));
    }
    let known: Vec<String> = known.iter().map(|name| format!("`\"{name}\"`")).collect();
    fault.help(format!("named so far: {}", words::all_of(&known)))
}
