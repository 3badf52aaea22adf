"""Lists the license of every library in the program, using cargo's own data.

    python3 .ci/licenses.py           prints them, one license per line
    python3 .ci/licenses.py --write   writes them to DEVELOPERS.md, and their texts to src/cli/notices.txt
    python3 .ci/licenses.py --check   fails if either is out of date, or a license is not allowed
"""

import json
import re
import subprocess
import sys
from collections import defaultdict
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
BEGIN, END = "<!-- licenses: python3 .ci/licenses.py --write -->", "<!-- end of licenses -->"
# The allowed licenses: each permits distributing the program together with its notice.
OURS = {
    "MIT", "Apache-2.0", "Apache-2.0 WITH LLVM-exception", "BSD-2-Clause", "BSD-3-Clause", "ISC",
    "Zlib", "0BSD", "Unlicense", "Unicode-3.0", "BSL-1.0", "CC0-1.0", "BlueOak-1.0.0", "MIT-0",
}


def packages():
    """Every package the program itself needs on any platform, without those only tests need."""
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
    """Whether at least one of the alternative licenses is allowed."""
    text = (expression or "").replace("/", " OR ").replace("(", "").replace(")", "")
    ways = [way.strip() for way in text.split(" OR ")]
    return any(all(part.strip() in OURS for part in way.split(" AND ")) for way in ways)


MIT_BODY = """Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
documentation files (the "Software"), to deal in the Software without restriction, including without limitation the
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit
persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the
Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.
"""


def bare(text):
    """The letters and digits of a text, to compare wordings regardless of line breaks and quotation marks."""
    return re.sub(r"[^a-z0-9]", "", text.lower())


def license_texts(package):
    """The license files of a package; only the MIT one if it may be chosen."""
    folder = Path(package["manifest_path"]).parent
    wanted = r"(?i)(licen[sc]e|copying|notice|unlicense|copyright)"
    files = [file for file in sorted(folder.iterdir()) if re.match(wanted, file.name) and file.is_file()]
    mit = [file for file in files if re.search("(?i)mit", file.name)]
    if mit and " AND " not in (package["license"] or ""):
        files = mit
    return [file.read_text(encoding="utf-8", errors="replace").strip() for file in files]


def notices():
    """Every notice that must accompany the program, each text once."""
    mit, others = defaultdict(set), defaultdict(set)
    bodies = {}
    found = sorted(packages(), key=lambda package: (package["name"], package["version"]))
    for package in found:
        name = package["name"]
        texts = license_texts(package)
        if not texts:
            if "MIT" not in (package["license"] or ""):
                sys.exit(f"{name} has no license text and is not under the MIT license")
            texts = [f"Copyright (c) {', '.join(package['authors']) or 'the authors of ' + name}\n\n{MIT_BODY}"]
        for text in texts:
            head, permission, rest = text.partition("Permission is hereby granted")
            if bare(permission + rest) == bare(MIT_BODY):
                lines = [line.strip() for line in head.splitlines()]
                holders = [line for line in lines if re.match(r"(?i)copyright", line)]
                mit[" / ".join(holders) or f"Copyright (c) the authors of {name}"].add(name)
            else:
                others[bare(text)].add(name)
                bodies.setdefault(bare(text), text)
    mit["Copyright (c) The Rust Project Contributors"].add("the Rust standard library")
    parts = ["Under the MIT license, below:\n"]
    parts += [f"{', '.join(sorted(names))}: {holder}" for holder, names in sorted(mit.items(), key=lambda one: (sorted(one[1]), one[0]))]
    parts += ["", MIT_BODY]
    for key, names in sorted(others.items(), key=lambda one: (sorted(one[1]), one[0])):
        text = "\n".join(line.rstrip() for line in bodies[key].splitlines())
        parts += ["-" * 78, "", f"{', '.join(sorted(names))}:", "", text, ""]
    return "\n".join(parts)


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
    notices_path = ROOT / "src/cli/notices.txt"
    if "--write" in sys.argv:
        path.write_text(made, encoding="utf-8")
        notices_path.write_text(notices(), encoding="utf-8")
    elif "--check" in sys.argv:
        if made != document or notices() != notices_path.read_text(encoding="utf-8"):
            sys.exit("the libraries have changed: look at their licenses, then python3 .ci/licenses.py --write")
    else:
        print(text)
    if strangers:
        sys.exit("a license that is none of ours: " + "; ".join(strangers))


main()
