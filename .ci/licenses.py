"""The license of every library in the program, from cargo's own data.

    python3 .ci/licenses.py           prints them, a license a line
    python3 .ci/licenses.py --write   puts them into DEVELOPERS.md
    python3 .ci/licenses.py --check   fails if the list there is another, or a license is not one of ours
"""

import json
import subprocess
import sys
from collections import defaultdict
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
BEGIN, END = "<!-- licenses: python3 .ci/licenses.py --write -->", "<!-- end of licenses -->"
# Each lets a program be given away with its notice kept.
OURS = {
    "MIT", "Apache-2.0", "Apache-2.0 WITH LLVM-exception", "BSD-2-Clause", "BSD-3-Clause", "ISC",
    "Zlib", "0BSD", "Unlicense", "Unicode-3.0", "BSL-1.0", "CC0-1.0", "BlueOak-1.0.0", "MIT-0",
}


def packages():
    """Every package that the program itself needs, on any machine; not those of the tests."""
    command = ["cargo", "metadata", "--locked", "--format-version", "1"]
    data = json.loads(subprocess.run(command, cwd=ROOT, check=True, capture_output=True).stdout)
    by_id = {package["id"]: package for package in data["packages"]}
    nodes = {node["id"]: node for node in data["resolve"]["nodes"]}
    root = data["resolve"]["root"]
    seen, open_ = set(), [root]
    while open_:
        node = nodes[open_.pop()]
        for dependency in node["deps"]:
            kinds = {kind["kind"] for kind in dependency["dep_kinds"]}
            if kinds <= {"dev"} or dependency["pkg"] in seen:
                continue
            seen.add(dependency["pkg"])
            open_.append(dependency["pkg"])
    return [by_id[package] for package in seen]


def allowed(expression):
    """Whether one of the licenses that may be chosen is one of ours."""
    text = (expression or "").replace("/", " OR ").replace("(", "").replace(")", "")
    ways = [way.strip() for way in text.split(" OR ")]
    return any(all(part.strip() in OURS for part in way.split(" AND ")) for way in ways)


def main():
    by_license = defaultdict(list)
    strangers = []
    for package in packages():
        license = package["license"] or "no license named"
        by_license[license].append(package["name"])
        if not allowed(package["license"]):
            strangers.append(f"{package['name']}: {license}")
    lines = [
        f"- {license}: {', '.join(sorted(set(names)))}"
        for license, names in sorted(by_license.items())
    ]
    count = sum(len(set(names)) for names in by_license.values())
    text = f"{BEGIN}\n\n{count} libraries:\n\n" + "\n".join(lines) + f"\n\n{END}"
    path = ROOT / "DEVELOPERS.md"
    document = path.read_text(encoding="utf-8")
    before, rest = document.split(BEGIN, 1)
    after = rest.split(END, 1)[1]
    made = before + text + after
    if "--write" in sys.argv:
        path.write_text(made, encoding="utf-8")
    elif "--check" in sys.argv:
        if made != document:
            sys.exit("the libraries have changed: look at their licenses, then python3 .ci/licenses.py --write")
    else:
        print(text)
    if strangers:
        sys.exit("a license that is none of ours: " + "; ".join(strangers))


main()
