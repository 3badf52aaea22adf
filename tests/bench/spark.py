"""Runs the filter under Apache Spark's `pipe` and compares it, line by line, with the single process.

    pip install pyspark        # and a Java runtime
    cargo build --release
    python3 tests/bench/spark.py target/release/fairfoot [COUNT]
"""

import json
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from pyspark.sql import SparkSession

HERE = Path(__file__).parent


def main(fairfoot, count):
    command = [str(Path(fairfoot).resolve()), "batch", "-", "--plain", "--jobs", "1"]
    houses = subprocess.run(
        [sys.executable, HERE / "houses.py", str(count), "12"], check=True, capture_output=True
    ).stdout
    began = time.perf_counter()
    single = subprocess.run(command, input=houses, check=True, capture_output=True).stdout
    alone = time.perf_counter() - began
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "houses.jsonl"
        path.write_bytes(houses)
        spark = (
            SparkSession.builder.master("local[2]")
            .config("spark.ui.enabled", "false")
            .config("spark.driver.bindAddress", "127.0.0.1")
            .config("spark.driver.host", "127.0.0.1")
            .getOrCreate()
        )
        spark.sparkContext.setLogLevel("ERROR")
        began = time.perf_counter()
        lines = spark.sparkContext.textFile(str(path), 8).pipe(" ".join(command)).collect()
        piped = time.perf_counter() - began
        spark.stop()
    expected = single.decode().splitlines()
    by_id = {json.loads(line)["id"]: line for line in expected}
    assert len(lines) == len(expected) == count, (len(lines), len(expected))
    assert all(by_id[json.loads(line)["id"]] == line for line in lines), "a line differs"
    assert lines == expected, "the order differs"
    print(f"{count} houses: the same lines in the same order")
    print(f"one process {alone:.2f} s, under Spark with its start {piped:.2f} s")


main(sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 100_000)
