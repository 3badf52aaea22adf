#!/usr/bin/env python3
"""Checks the rooms of src/: each room uses only rooms below it, and no files use each other in a circle.

Usage: python3 .ci/rooms.py [--table]
"""

import pathlib
import re
import sys

# From bottom to top. A room may use the rooms before it.
ROOMS = [
    "error",
    "units",
    "diagnostic",
    "geometry",
    "maps",
    "sketch",
    "house",
    "read",
    "areas",
    "reconcile",
    "value",
    "wording",
    "report",
    "batch",
    "pages",
    "verify",
    "lib",
]
SRC = pathlib.Path(__file__).resolve().parent.parent / "src"


def files():
    """Every file of the library with its module path: ("areas", "range")."""
    for path in sorted(SRC.rglob("*.rs")):
        parts = list(path.relative_to(SRC).with_suffix("").parts)
        if parts[0] in ("cli", "main", "pad"):
            continue
        yield path, tuple(part for part in parts if part != "mod")


def code(path):
    """The code of a file without comments and tests."""
    text = path.read_text()
    text = text.split("\n#[cfg(test)]", 1)[0]
    return "\n".join(re.sub(r"//.*", "", line) for line in text.splitlines())


def uses(text):
    """Every path from the crate root used in the code."""
    for match in re.finditer(r"\bcrate::([a-z_]+(?:::[a-z_]+)*)", text):
        yield tuple(match.group(1).split("::"))
    for match in re.finditer(r"\bcrate::([A-Z]\w*)", text):
        yield ("crate::" + match.group(1),)


def circles(edges):
    """The groups of files that use each other in a circle."""
    reach = {a: set(bs) for a, bs in edges.items()}
    changed = True
    while changed:
        changed = False
        for a in reach:
            more = set().union(*(reach.get(b, set()) for b in reach[a])) - reach[a]
            if more:
                reach[a] |= more
                changed = True
    rings = {frozenset(b for b in reach[a] if a in reach.get(b, ())) for a in reach if a in reach[a]}
    return [ring for ring in rings if len(ring) > 1]


def main():
    known = {module: path for path, module in files()}
    upward, roots, edges = [], [], {module: set() for module in known}
    rooms = {}
    for module, path in known.items():
        text = code(path)
        for used in uses(text):
            if used[0].startswith("crate::"):
                roots.append(f"{path.relative_to(SRC)}: {used[0]}")
                continue
            here, there = module[0] if module else "lib", used[0]
            if there not in ROOMS:
                continue
            rooms.setdefault(here, set()).add(there)
            if here in ROOMS and ROOMS.index(there) > ROOMS.index(here):
                upward.append(f"{path.relative_to(SRC)}: {'::'.join(used)}")
            target = used
            while target and target not in known:
                target = target[:-1]
            # The index of a room only names its files.
            if target and target != module and len(target) > 1 and len(module) > 1:
                edges[module].add(target)
    rings = circles({m: {t for t in ts if t[0] == m[0]} for m, ts in edges.items()})
    long = [f"{p.relative_to(SRC)}: {n}" for m, p in known.items() if (n := len(p.read_text().splitlines())) > 700]
    for title, found in [
        ("a room uses one above it", upward),
        ("a name of the crate's root is used inside", roots),
        ("files in a circle", [", ".join(sorted("::".join(m) for m in ring)) for ring in rings]),
        ("files of over 700 lines", long),
    ]:
        print(f"{title}: {len(found)}")
        for line in found:
            print(f"  {line}")
    if "--table" in sys.argv:
        for room in ROOMS:
            print(room, "->", ", ".join(sorted(rooms.get(room, set()) - {room})))
    sys.exit(bool(upward or roots or rings))


main()
