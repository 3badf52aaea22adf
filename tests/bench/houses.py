"""Writes invented houses as JSON lines: `python3 tests/bench/houses.py COUNT [SIDES]`, 12 sides unless said.

The same houses on every run. Every walk closes: a base with towers side by side.
"""

import json
import random
import sys


def feet(inches):
    return f"{inches // 12}' {inches % 12}\""


def house(rng, sides):
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


def main(count, sides):
    rng = random.Random(20261125)
    for i in range(count):
        print(json.dumps({"id": f"house-{i:07}", "sides": house(rng, sides)}))


main(int(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 12)
