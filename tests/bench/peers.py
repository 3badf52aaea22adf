"""Houses a second beside named peers, on the same houses in the same run, one core each.

    pip install shapely numpy
    cargo build --release
    python3 tests/bench/peers.py target/release/fairfoot [COUNT]

fairfoot reads each text, checks the house, works out both areas with their range and writes JSON; of houses as people
write them, and of plain outlines of 12 sides. The peers get the plain ones and do less: Python's `decimal` only the two areas, from the same text, by a reading that takes
nothing but `DIRECTION FEET' INCHES"` lines and does not see if rounded walls close; `shapely` only the
area of parsed walls, a vector of all houses at once; `geo` in 64-bit floats is in `cargo bench`.
"""

import json
import re
import subprocess
import sys
import time
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

HERE = Path(__file__).parent
SIDE = re.compile(r"^(north|east|south|west) (\d+)' (\d+)\"$", re.M)
WAY = {"north": (0, 1), "east": (1, 0), "south": (0, -1), "west": (-1, 0)}


def timed(work):
    began = time.perf_counter()
    result = work()
    return result, time.perf_counter() - began


def sides(text):
    return [(way, 12 * int(feet) + int(inches)) for way, feet, inches in SIDE.findall(text)]


def area(walk):
    """By cross products; a last corner that is off its first is joined to it."""
    east = north = doubled = 0
    for (right, up), length in walk:
        doubled += east * up * length - north * right * length
        east, north = east + right * length, north + up * length
    return abs(doubled) / 2


def decimal_areas(texts):
    found = []
    for text in texts:
        walk = sides(text)
        for step in (Decimal("0.1"), Decimal(1)):
            rounded = [
                (WAY[way], (Decimal(length) / 12).quantize(step, ROUND_HALF_UP))
                for way, length in walk
            ]
            found.append(area(rounded))
    return found


def shapely_areas(corners):
    import numpy
    import shapely

    counts = numpy.array([len(house) for house in corners])
    rings = numpy.repeat(numpy.arange(len(corners)), counts)
    points = numpy.concatenate(corners)
    return lambda: shapely.area(shapely.polygons(shapely.linearrings(points, indices=rings)))


def corners_of(texts):
    import numpy

    houses = []
    for text in texts:
        at, ring = (0.0, 0.0), [(0.0, 0.0)]
        for way, length in sides(text):
            right, up = WAY[way]
            at = (at[0] + right * length / 12, at[1] + up * length / 12)
            ring.append(at)
        ring[-1] = ring[0]
        houses.append(numpy.array(ring))
    return houses


def houses(count, *sides):
    command = [sys.executable, HERE / "houses.py", str(count), *sides]
    return subprocess.run(command, check=True, capture_output=True).stdout


def main(fairfoot, count):
    plain, typed = houses(count, "12"), houses(count)
    texts = [json.loads(line)["sides"] for line in plain.splitlines()]
    rates = {}
    for name, jobs, jsonl in [
        ("fairfoot batch, houses as typed, one core", "1", typed),
        ("fairfoot batch, houses as typed, all cores", "64", typed),
        ("fairfoot batch, plain outlines, all cores", "64", plain),
        ("fairfoot batch, plain outlines, one core", "1", plain),
    ]:
        run = [fairfoot, "batch", "-", "--plain", "--format", "jsonl", "--jobs", jobs]
        out, seconds = timed(
            lambda: subprocess.run(run, input=jsonl, check=True, capture_output=True).stdout
        )
        rates[name] = count / seconds
    ours = [float(json.loads(line)["tenth_foot_exact"]) for line in out.splitlines()]
    found, seconds = timed(lambda: decimal_areas(texts))
    rates["Python decimal, two areas, one core"] = count / seconds
    near = sum(abs(a - float(b)) < 0.005 * a for a, b in zip(ours, found[::2]))
    work = shapely_areas(corners_of(texts))
    _, seconds = timed(work)
    rates["shapely, one area of parsed walls, one core"] = count / seconds
    base = rates["fairfoot batch, plain outlines, one core"]
    for name, rate in rates.items():
        print(f"{name:46} {rate:12,.0f} a second  {rate / base:6.2f}")
    print(f"{near} of {count} tenth-foot areas lie within 0.5 % of the peer's, which closes nothing")


main(sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 50_000)
