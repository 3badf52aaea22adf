"""Instructions by group of functions, with callgrind: the same figures on every run of one program.

    cargo rustc --release --bin fairfoot -- -C strip=none
    python3 tests/bench/count.py target/release/fairfoot [COUNT]

Each row is what one house costs (the batch rows) or one whole process (the others), in thousand instructions; the
groups are the rooms of the source and the libraries that matter. Only what a function does itself is counted to it;
what the compiler put into another function is counted there.
"""

import collections
import re
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).parent
GROUPS = [
    ("sketch", r"fairfoot::(sketch|read)"),
    ("house", r"fairfoot::house"),
    ("geometry", r"fairfoot::(geometry|units)"),
    ("areas", r"fairfoot::areas"),
    ("reconcile", r"fairfoot::reconcile"),
    ("batch", r"fairfoot::(batch|cli::batch)"),
    ("pages, words", r"fairfoot::(pages|wording|report)"),
    ("JSON", r"serde"),
    ("heap", r"mi_|mimalloc|malloc|free|alloc::raw_vec|RawVec"),
    ("memcpy", r"mem(cpy|set|move|cmp)"),
    ("numbers", r"rust_decimal|core::fmt|core::num|__(u?div|u?mod)ti3"),
    ("sorting, maps", r"core::slice::sort|hashbrown|alloc::collections|rstar"),
    ("SVG", r"usvg|roxmltree|simplecss|svgtypes|rustybuzz|ttf_parser"),
    ("glyphs", r"tiny_skia|resvg"),
    ("packing", r"miniz|zlib|flate|deflate|png::|adler|crc32"),
    ("PDF", r"krilla|pdf_writer|subsetter|skrifa|write_fonts|read_fonts"),
    ("command line", r"clap"),
    ("loader", r"_dl_|do_lookup|dl_main|strcmp"),
]


def counted(command, stdin):
    """Instructions by function name of one run."""
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "out"
        subprocess.run(
            ["valgrind", "--tool=callgrind", f"--callgrind-out-file={out}", *command],
            stdin=stdin, check=True, capture_output=True, cwd=folder,
        )
        table = subprocess.run(
            ["callgrind_annotate", "--threshold=99.95", out],
            check=True, capture_output=True, text=True,
        ).stdout
    functions = collections.Counter()
    total = 0
    for line in table.splitlines():
        found = re.match(r"\s*([\d,]+) *\([^)]*\) +(.*)", line)
        if found:
            number = int(found[1].replace(",", ""))
            if "PROGRAM TOTALS" in found[2]:
                total = number
            else:
                functions[found[2].split(" [")[0].split(":", 1)[-1]] += number
    return functions, total


def grouped(functions, total):
    groups = collections.Counter()
    for name, number in functions.items():
        group = next((group for group, shape in GROUPS if re.search(shape, name)), "rest")
        groups[group] += number
    groups["rest"] += total - sum(groups.values())
    return groups


def main(program, count):
    program = Path(program).resolve()
    root = HERE.parent.parent
    brick = root / "sketches" / "brick-garage.sides"
    with tempfile.TemporaryDirectory() as folder:
        typed, plain, none = (Path(folder) / name for name in ("typed", "plain", "none"))
        for path, sides in ((typed, []), (plain, ["12"])):
            command = [sys.executable, HERE / "houses.py", str(count), *sides]
            path.write_bytes(subprocess.run(command, check=True, capture_output=True).stdout)
        none.write_bytes(b"")
        search = [program, "batch", "-", "--jobs", "1", "--format", "jsonl"]
        batch = [*search, "--plain"]
        rows = [
            ("batch --plain, as typed", batch, typed, count),
            ("batch --plain, plain outlines", batch, plain, count),
            ("batch with the search, as typed", search, typed, count),
            ("batch with the search, plain outlines", search, plain, count),
            ("reconcile brick-garage", [program, "reconcile", brick], none, 1),
            ("its pages to PDF", [program, "pages", brick, "-o", "made.pdf"], none, 1),
            ("its Exhibit to PNG", [program, "pages", brick, "--only", "exhibit", "-o", "made.png"], none, 1),
            ("all its pages to PNG", [program, "pages", brick, "-o", "made.png"], none, 1),
        ]
        for name, command, stdin, divided in rows:
            with stdin.open("rb") as opened:
                functions, total = counted(command, opened)
            groups = grouped(functions, total)
            shares = ", ".join(
                f"{group} {number / divided / 1000:,.1f}"
                for group, number in groups.most_common()
                if number > total / 100
            )
            print(f"{name}: {total / divided / 1000:,.1f} thousand: {shares}", flush=True)


main(sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 500)
