"""Writes invented houses as JSON lines: `python3 tests/bench/houses.py COUNT [SIDES]`.

The same houses on every run, and every walk closes. Without SIDES they are written as people write them: figures with
thousands commas, feet and inches, fractions, tenths of a foot or meters, a garage within the house or beside it, a
porch, a second level, a wall by closing, notes and lengths of the record. With SIDES each is one plain outline of so
many sides in feet and whole inches: a base with towers side by side.

The shares are our judgment of what a stream of typed houses holds: of 100 houses 70 in feet and inches (a third of
them with fractions), 20 in tenths of a foot, 10 in meters; 45 have a garage within, 20 one beside; 60 a porch, 35 a
second level, 15 a wall by closing, 20 notes, 25 lengths of the record.
"""

import json
import random
import sys


def feet(inches):
    return f"{inches // 12}' {inches % 12}\""


def plain(rng, sides):
    towers = max(1, (sides - 2) // 2)
    heights = [rng.randrange(180, 500)]
    while len(heights) < towers:
        step = rng.choice([-1, 1]) * rng.randrange(14, 120)
        heights.append(max(150, heights[-1] + step) if heights[-1] + step != heights[-1] else 200)
    widths = [rng.randrange(60, 180) for _ in range(towers)]
    lines = [f"north {feet(heights[0])}"]
    area = 0
    for i, (width, height) in enumerate(zip(widths, heights)):
        area += width * height
        lines.append(f"east {feet(width)}")
        after = heights[i + 1] if i + 1 < towers else 0
        if after != height:
            lines.append(f"{'north' if after > height else 'south'} {feet(abs(after - height))}")
    lines.append(f"west {feet(sum(widths))}")
    record = round(area / 144 * rng.uniform(0.97, 1.05))
    return f"record {record} sq ft\nlevel \"Ground floor\"\nliving \"House\"\n" + "\n".join(lines) + "\n"


class Unit:
    """How lengths of one house are written. A length is a whole number of the unit's smallest step."""

    def __init__(self, rng):
        kind = rng.random()
        self.kind = "inches" if kind < 0.47 else "quarters" if kind < 0.70 else "tenths" if kind < 0.90 else "meters"
        self.per_foot = {"inches": 12, "quarters": 48, "tenths": 10, "meters": 30.48}[self.kind]

    def near(self, feet):
        return max(1, round(feet * self.per_foot))

    def text(self, steps):
        if self.kind == "inches":
            return feet(steps)
        if self.kind == "tenths":
            return f"{steps // 10}.{steps % 10}'"
        if self.kind == "meters":
            return f"{steps // 100}.{steps % 100:02} m"
        inches, quarter = divmod(steps, 4)
        fraction = ["", " 1/4", " 1/2", " 3/4"][quarter]
        return f"{inches // 12}' {inches % 12}{fraction}\""


def walk(unit, steps, rng, marks, indent="    "):
    """Lines of a walk out of (direction, steps), with words after some of the sides."""
    lines = []
    closing = rng.randrange(len(steps)) if marks["closing"] else None
    for i, (way, length) in enumerate(steps):
        line = f"{indent}{way} {unit.text(length)}"
        if i == closing:
            line = f"{indent}{way} by closing"
        if marks["recorded"]:
            line += f" recorded {max(1, round(length / unit.per_foot))}'"
        if marks["notes"] and rng.random() < 0.2:
            line += ' note "measured along the fence"'
        lines.append(line)
    return lines


def rectangle(unit, rng, wide, deep):
    plain_marks = {"closing": False, "recorded": False, "notes": False}
    steps = [("north", deep), ("east", wide), ("south", deep), ("west", wide)]
    return walk(unit, steps, rng, plain_marks)


def outline(unit, rng, wide, deep):
    """4 to 12 sides: a rectangle with steps along its back."""
    count = rng.choice([1, 2, 2, 3, 3, 4, 5])
    cuts = sorted(rng.sample(range(1, 12), count - 1)) if count > 1 else []
    edges = [0] + [round(wide * cut / 12) for cut in cuts] + [wide]
    heights = [deep]
    for _ in range(count - 1):
        step = unit.near(rng.uniform(2, 9)) * rng.choice([-1, 1])
        after = heights[-1] + step
        heights.append(after if unit.near(16) < after else heights[-1] + abs(step))
    steps = [("north", heights[0])]
    area = 0
    for i, height in enumerate(heights):
        width = edges[i + 1] - edges[i]
        area += width * height
        steps.append(("east", width))
        after = heights[i + 1] if i + 1 < count else 0
        steps.append(("north" if after > height else "south", abs(after - height)))
    steps.append(("west", wide))
    return steps, area, min(heights)


def house(rng):
    unit = Unit(rng)
    wide, deep = unit.near(rng.uniform(34, 70)), unit.near(rng.uniform(24, 46))
    marks = {
        "closing": rng.random() < 0.15,
        "recorded": rng.random() < 0.25,
        "notes": rng.random() < 0.2,
    }
    steps, area, low = outline(unit, rng, wide, deep)
    lines = [f'property "{rng.randrange(1, 999)} Mill Road, Juniper County"']
    lines += [f'account "R-{rng.randrange(100_000, 999_999)}"'] if rng.random() < 0.6 else []
    lines += ['measured 2026-04-18 by "the owner" with "tape"'] if rng.random() < 0.5 else []
    lines += ["front south"] if rng.random() < 0.5 else []
    body = ['level "Ground floor"', '  living "House"'] + walk(unit, steps, rng, marks)
    garage = rng.random()
    size = unit.near(rng.uniform(19, 22))
    if garage < 0.45 and low > size:
        body += [f'  garage "Garage" within "House" start east {unit.text(wide - size)}']
        body += rectangle(unit, rng, size, size)
        area -= size * size
    elif garage < 0.65:
        body += [f'  garage "Garage" start east {unit.text(wide)}'] + rectangle(unit, rng, size, size)
    if rng.random() < 0.6:
        out, along = unit.near(rng.uniform(5, 9)), unit.near(rng.uniform(8, 20))
        at = unit.near(rng.uniform(1, 10))
        place = f"start south {unit.text(out)} east {unit.text(at)}"
        body += [f'  porch "Porch" {place}'] + rectangle(unit, rng, along, out)
    if rng.random() < 0.35:
        share = min(wide, unit.near(rng.uniform(20, 34)))
        back = min(low, unit.near(rng.uniform(16, 26)))
        body += ['level "Upper floor"', '  living "Bedrooms"'] + rectangle(unit, rng, share, back)
        area += share * back
    record = round(area / unit.per_foot**2 * rng.uniform(0.97, 1.05))
    lines += [f'record {record:,} sq ft "Juniper County record, 2026"']
    if rng.random() < 0.4:
        lines += [f"listing {round(record, -1):,} sq ft"]
    return "\n".join(lines + [""] + body) + "\n"


def main(count, sides=None):
    rng = random.Random(20261125)
    for i in range(count):
        text = house(rng) if sides is None else plain(rng, sides)
        print(json.dumps({"id": f"house-{i:07}", "sides": text}, ensure_ascii=False))


main(int(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else None)
