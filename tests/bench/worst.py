"""The worst input of each kind that the bounds allow: how long the program takes, and how much memory.

    python3 tests/bench/worst.py [PROGRAM] [--only WORD] [--keep FOLDER] [--curves]

Each row is a file and a command: processor seconds (user and system), peak memory, exit code. Checking is to stay
under 1 s and 200 MB, everything else under 2 s, on one ordinary machine. `--curves` tells how the time grows instead.
"""

import argparse
import os
import re
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

LEVEL = 'level "Ground floor"\n'


def box(kind, name, high, wide, words=""):
    return f'{kind} "{name}" {words}\nnorth {high}\'\neast {wide}\'\nsouth {high}\'\nwest {wide}\'\n'


def house(record="record 2,000 sq ft\n", veneer=""):
    return record + veneer + LEVEL + box("living", "House", 40, 50)


def levels(count, each):
    text = "record 2,000 sq ft\n"
    for i in range(count):
        text += f'level "Level {i}"\n'
        for k in range(each):
            text += box("living", f"Room {i} {k}", 20, 10, f"start east {10 * k}'" if k else "")
    return text


def without_zeros(text):
    """A place is given by lengths over zero: those of zero are left out."""
    text = re.sub(r"(?<=start)((?: (?:east|north) \d+')+)", lambda at: re.sub(r" (?:east|north) 0'", "", at[1]), text)
    return re.sub(r"start *(?=\n)", "", text)


def moved(text):
    """The same with every wall to be moved: measured inside, brick outside, one space at the frame."""
    text = "faces inside\nveneer 4 5/8\"\n" + text
    return text.replace('"House"', '"House" measured to frame', 1)


def porches(count):
    return house() + "".join(
        box("porch", f"Porch {i}", 5, 4, f"start east {50 + 4 * i}'") for i in range(count)
    )


def small_spaces(count):
    """Small spaces packed in a square: the drawing has room for few of their labels."""
    wide = int(count**0.5) + 1
    return "record 2,000 sq ft\n" + LEVEL + "".join(
        box("living", f"S{i}", 5, 5, f"start east {5 * (i % wide)}' north {5 * (i // wide)}'")
        for i in range(count)
    )


def overlapping(count):
    return LEVEL + "".join(box("living", f"S{i}", 20 + i % 7, 30 + i % 5) for i in range(count))


def spread_overlapping(count):
    return LEVEL + "".join(
        box("living", f"S{i}", 20, 30, f"start east {i}' north {i % 13}'") for i in range(count)
    )


def nested(count):
    text = LEVEL + box("living", "S0", 3000, 3000)
    for i in range(1, count):
        size = 3000 - 4 * i
        text += box("garage", f"S{i}", size, size, f'within "S{i - 1}" start east {i}\' north {i}\'')
    return text


def one_in_all(count):
    """Openings that each have to be looked for in every space."""
    text = LEVEL + "".join(
        box("living", f"S{i}", 3000 - i, 3000 - i, "") for i in range(count // 2)
    )
    return text + "".join(
        box("open", f"O{i}", 2, 2, f"start east {3 * i + 1}' north 5'") for i in range(count // 2)
    )


def comb(kind, name, sides, words="", recorded=False, step=2):
    """A wall with teeth: as many sides, each at a right angle."""
    text = f'{kind} "{name}" {words}\nnorth 40\'\n'
    teeth = (sides - 3) // 4
    for i in range(teeth):
        record = f" recorded {step}'" if recorded else ""
        text += f"east {step}' 1\"{record}\nnorth 2' 7\"\neast {step}' 5\"\nsouth 2' 7\"\n"
    return text + "south 40'\nwest by closing\n"


def outline(sides, record_outline=False):
    text = "record 2,000 sq ft\n" + LEVEL + comb("living", "Comb", sides)
    if record_outline:
        text += comb("record outline", "Theirs", sides, 'of "Comb"').replace(" 1\"", "").replace(
            " 5\"", "").replace(" 7\"", "")
    return text


def outlines(count, sides, apart):
    text = "record 2,000 sq ft\n" + LEVEL
    for i in range(count):
        place = f"start north {90 * i}'" if apart else f"start east {3 * i}'"
        text += comb("living", f"Comb {i}", sides, place, step=2)
    return text


def chevrons(count, teeth):
    """Bent strips, one inside the other: every two boxes overlap and no two spaces do."""
    text = LEVEL
    for i in range(count):
        long, at = 4000 - 8 * i, 8 * i
        steps = "".join("east 1'\nnorth 1'\neast 1'\nsouth 1'\n" for _ in range(teeth))
        text += (
            f'living "V{i}" start east {at}\' north {at}\'\nnorth {long}\'\neast 3\'\nsouth {long - 3}\'\n'
            f"{steps}east {long - 3 - 2 * teeth}'\nsouth 3'\nwest by closing\n"
        )
    return text


def crossing(sides):
    """Every second wall crosses all others of its axis."""
    text = LEVEL + 'living "Knot"\n'
    for i in range(sides // 4):
        text += f"north 100'\neast {100 + i}'\nsouth {100 + i}'\nwest {100 + i}'\n"
    return text + "close\n"


def arcs(sides):
    text = LEVEL + "living \"Waves\"\nnorth 400'\n"
    for i in range(sides - 3):
        way = "north" if i % 2 else "south"
        text += f"arc east 4' rise 1' {way}\n"
    return text + "south 400'\nwest by closing\n"


def zigzag(sides):
    text = "record 2,000 sq ft\n" + LEVEL + "living \"Saw\"\nnorth 400'\n"
    for i in range(sides - 3):
        way = "north" if i % 2 else "south"
        text += f"diagonal {way} 3' east 4'\n"
    return text + "close\n"


def unknown(lines):
    return "".join(f"nrth {i}'\n" for i in range(lines))


def long_words(lines, length):
    return "".join("n" + "o" * length + f"{i} 5'\n" for i in range(lines))


def unclosed(count):
    return LEVEL + "".join(
        f'living "S{i}" start east {60 * i}\'\nnorth 40\'\neast 50\'\nsouth 39\'\nwest 50\'\n'
        for i in range(count)
    )


def comments(lines, length):
    line = "# " + "word " * (length // 5) + "\n"
    return line * lines + house()


def notes(lines, length):
    text = 'record 2,000 sq ft\n' + LEVEL + 'living "House"\nnorth 40\'\n'
    note = "x" * length
    text += "".join(f'east 1\' note "{note}"\n' for _ in range(lines))
    return text + "south 40'\nwest by closing\n"


def figures(count):
    return "".join(f'figure "Site {i}" {1900 + i} sq ft\n' for i in range(count)) + house("")


def missing(count):
    return "record 2,900 sq ft\n" + house("").replace(LEVEL, "".join(
        f'missing outbuilding "Shed {i}" recorded {100 + i} sq ft\n' for i in range(count)) + LEVEL)


def counting(count):
    words = ", ".join(f'"Porch {i}"' for i in range(count))
    return porches(count).replace("record 2,000 sq ft", f"record 2,000 sq ft counting {words[:1500].rsplit(',', 1)[0]}")


def names(count):
    """Corners by name, each the place of the next space."""
    text = LEVEL
    for i in range(count):
        place = f'from corner "C{i - 1}"' if i else ""
        text += f'living "S{i}" {place}\nnorth 5\'\neast 5\'\ncorner "C{i}"\nsouth 5\'\nwest 5\'\n'
    return text


def lots(count):
    return house() + "".join(
        f"lot \"Lot {i}\"\nnorth 100'\neast 50'\nsouth 100'\nwest 50'\n" for i in range(count)
    )


def big_lots(count, sides):
    """The area of a lot decides nothing, so its last side is never by closing."""
    return house() + "".join(comb("lot", f"Lot {i}", sides).replace("west by closing", "close") for i in range(count))


def record_outlines(count, sides, kind="record outline"):
    return house() + "".join(comb(kind, f"R{i}", sides, 'of "House"') for i in range(count))


def open_walk(sides):
    """A walk that does not close, for a draft."""
    return outline(sides).replace("south 40'", "south 39'").replace("west by closing", "west 1'")


def jogs(count):
    """A wall of small recesses: each may be filled in or left off."""
    return "record 2,400 sq ft\n" + LEVEL + comb("living", "House", 4 * count + 3, recorded=False)


def ties(count):
    text = LEVEL + comb("living", "Comb", 999)
    return text + "".join(
        f"tie corner {1 + i % 900} to corner {5 + i % 900} 7'\n" for i in range(count)
    )


CASES = [
    # name, text, commands
    ("60 levels of 8 spaces", lambda: levels(60, 8), "crpv"),
    ("500 porches in a row", lambda: porches(499), "crpv"),
    ("500 small spaces in a square", lambda: small_spaces(500), "crpv"),
    ("60 levels of 8 spaces, walls moved", lambda: moved(levels(60, 8)), "crpv"),
    ("2 levels of 250 small spaces, walls moved", lambda: moved(small_spaces(250) + small_spaces(250).replace(LEVEL, 'level "Up"\n').replace("record 2,000 sq ft\n", "").replace('"S', '"T')), "crpv"),
    ("500 small spaces in a square, walls moved", lambda: moved(small_spaces(500)), "crpv"),
    ("500 porches in a row, walls moved", lambda: moved(porches(499)), "crpv"),
    ("500 garages in a row, walls moved", lambda: moved(porches(499).replace("porch", "garage")), "crpv"),
    ("500 spaces, each in the one before, walls moved", lambda: moved(nested(500)), "crpv"),
    ("500 bent strips, one inside the other", lambda: chevrons(490, 2), "cr"),
    ("500 spaces on one place", lambda: overlapping(500), "c"),
    ("500 spaces that overlap in a row", lambda: spread_overlapping(500), "c"),
    ("500 spaces, each in the one before", lambda: nested(500), "crpv"),
    ("250 openings in 250 spaces on one place", lambda: one_in_all(500), "c"),
    ("500 spaces at corners by name", lambda: names(500), "cr"),
    ("500 lots", lambda: lots(499), "crpv"),
    ("an outline of 300 sides", lambda: outline(299), "crpv"),
    ("an outline of 1,000 sides", lambda: outline(999), "crpv"),
    ("the same with the record's outline", lambda: outline(999, True), "crpv"),
    ("an outline of 1,000 curves", lambda: arcs(1000), "crpv"),
    ("an outline of 1,000 slanted sides", lambda: zigzag(1000), "crpv"),
    ("an outline of 1,000 sides that cross", lambda: crossing(999), "c"),
    ("9 outlines of 1,000 sides apart", lambda: outlines(9, 999, True), "crp"),
    ("9 outlines of 1,000 sides that overlap", lambda: outlines(9, 999, False), "c"),
    ("9 outlines of 1,000 sides apart, walls moved", lambda: moved(outlines(9, 999, True)), "crpv"),
    ("9 record outlines of 1,000 sides", lambda: record_outlines(9, 999), "crp"),
    ("9 map outlines of 1,000 sides", lambda: record_outlines(9, 999, "map outline"), "crp"),
    ("4 lots of 1,000 sides", lambda: big_lots(4, 999), "crp"),
    ("a walk of 1,000 sides that does not close", lambda: open_walk(999), "cd"),
    ("500 walks that do not close", lambda: unclosed(500), "cd"),
    ("1,000 ties and overalls", lambda: ties(5000), "cr"),
    ("10,000 unknown words", lambda: unknown(9999), "c"),
    ("480 long unknown words", lambda: long_words(480, 1900), "c"),
    ("4,000 unknown words of middling length", lambda: long_words(4000, 200), "c"),
    ("9,900 lines of comments", lambda: comments(9900, 90), "crpv"),
    ("900 KB of long comments", lambda: comments(480, 1900), "crpv"),
    ("900 long notes", lambda: notes(900, 900), "crpv"),
    ("2,000 figures", lambda: figures(2000), "crp"),
    ("500 spaces missing", lambda: missing(500), "crp"),
    ("200 jogs", lambda: jogs(200), "crp"),
]

CURVES = [
    ("sides of an outline", outline, [10, 30, 100, 300, 999], "crpv"),
    ("spaces in a square", small_spaces, [10, 30, 100, 300, 500], "crpv"),
    ("spaces, each in the one before", nested, [10, 30, 100, 300, 500], "c"),
    ("spaces that overlap", spread_overlapping, [10, 30, 100, 300, 500], "c"),
    ("levels of 8 spaces", lambda n: levels(n, 8), [1, 3, 10, 30, 60], "crp"),
    ("porches that may be counted", porches, [10, 30, 100, 300, 499], "r"),
    ("lines that are errors", unknown, [10, 100, 1000, 9999], "c"),
    ("curves of an outline", arcs, [10, 30, 100, 300, 1000], "c"),
]

WORDS = {"c": "check", "r": "reconcile", "p": "pages", "d": "draft", "v": "verify"}


def end_at_last():
    """No command is waited for longer than this, in processor seconds."""
    resource.setrlimit(resource.RLIMIT_CPU, (20, 20))


def run(arguments):
    """Processor seconds, peak megabytes, exit code."""
    with open(os.devnull, "wb") as nothing:
        child = subprocess.Popen(arguments, stdout=nothing, stderr=nothing, preexec_fn=end_at_last)
        _, status, used = os.wait4(child.pid, 0)
    return used.ru_utime + used.ru_stime, used.ru_maxrss / 1024, os.waitstatus_to_exitcode(status)


def measured(program, text, commands, folder):
    text = without_zeros(text)
    file, pdf = folder / "worst.sides", folder / "worst.pdf"
    file.write_text(text)
    arguments = {
        "c": [program, "check", file],
        "r": [program, "reconcile", file],
        "p": [program, "sheet", file, "-o", pdf],
        "d": [program, "sheet", "--draft", file, "-o", pdf],
        "v": [program, "verify", pdf],
    }
    pdf.unlink(missing_ok=True)
    for command in commands:
        if command == "v" and not pdf.exists():
            continue
        yield command, *run([str(word) for word in arguments[command]])


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program", nargs="?", default="target/release/fairfoot")
    parser.add_argument("--only", default="")
    parser.add_argument("--commands", default="crpdv")
    parser.add_argument("--keep", type=Path)
    parser.add_argument("--curves", action="store_true")
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        folder = Path(folder)
        if options.curves:
            print("| what | how many | command | s |\n|---|---|---|---|")
            for name, make, counts, commands in CURVES:
                if options.only not in name:
                    continue
                for count in counts:
                    for command, seconds, _, _ in measured(options.program, make(count), commands, folder):
                        print(f"| {name} | {count:,} | {WORDS[command]} | {seconds:.3f} |", flush=True)
            return
        print("| the worst of its kind | command | s | MB | exit |\n|---|---|---|---|---|")
        late = 0
        for name, make, commands in CASES:
            if options.only not in name:
                continue
            text = make()
            if options.keep:
                options.keep.mkdir(exist_ok=True)
                (options.keep / (name.replace(" ", "-").replace(",", "") + ".sides")).write_text(without_zeros(text))
            kept = [word for word in commands if word in options.commands]
            for command, seconds, megabytes, code in measured(options.program, text, kept, folder):
                most = 1.0 if command == "c" else 2.0
                is_late = seconds > most or megabytes > 200
                late += is_late
                mark = " *" if is_late else ""
                print(f"| {name} | {WORDS[command]} | {seconds:.2f}{mark} | {megabytes:.0f} | {code} |", flush=True)
        print(f"\n{late} over the bounds" if late else "\nall within the bounds", file=sys.stderr)
        sys.exit(1 if late else 0)


if __name__ == "__main__":
    main()
