#!/usr/bin/env python3
"""The timing study's table with each reader timed by the program itself.

    SAYLINE=build/release/sayline judge_calibrated.py STUDY [--json]

STUDY is the folder of the study's data: `utterances.tsv` and `talks.tsv` (or `sample.tsv`), with the
columns id, source, speaker, seconds, text, split and, where there are lengths, length. The items
marked `cal` of a reader go through `sayline calibrate`; the others are read with the file that it
wrote. Each cell is the median and the 90th percentile of the error in per cent, a mean over the
sources; `inside` is the share of items between low and high.
"""
import collections
import csv
import json
import math
import os
import pathlib
import re
import subprocess
import sys
import tempfile

PROGRAM = os.path.abspath(os.environ.get("SAYLINE", "sayline"))
LENGTHS = ["sentence", "1min", "5min"]


def load(folder):
    rows = []
    for base in ("utterances", "talks", "sample"):
        file = pathlib.Path(folder) / f"{base}.tsv"
        if not file.exists():
            continue
        with open(file, encoding="utf-8") as opened:
            lines = (line for line in opened if not line.startswith("#"))
            for row in csv.DictReader(lines, delimiter="\t", quoting=csv.QUOTE_NONE):
                row["seconds"] = float(row["seconds"])
                row["length"] = row.get("length") or "sentence"
                row["reader"] = re.sub(r"[^A-Za-z0-9_-]", "-", f"{base}-{row['speaker']}")[:60]
                rows.append(row)
    return rows


def percentile(values, q):
    values = sorted(values)
    at = (len(values) - 1) * q / 100
    low = math.floor(at)
    return values[low] + (values[min(low + 1, len(values) - 1)] - values[low]) * (at - low)


def calibrate(place, reader, rows):
    lines = "".join(f"{row['seconds']}\t{row['text']}\n" for row in rows)
    (place / "times.tsv").write_text(lines, encoding="utf-8")
    subprocess.run([PROGRAM, "calibrate", "--reader", reader, "--from", "times.tsv"], cwd=place,
                   stdout=subprocess.DEVNULL, check=True)


def predict(place, rows, flags):
    text = "".join(row["text"].replace("\n", " ") + "\n" for row in rows)
    run = subprocess.run([PROGRAM, "explain", "--lines", "--plain", *flags], cwd=place,
                         input=text.encode(), stdout=subprocess.PIPE, check=True)
    return [json.loads(line) for line in run.stdout.decode().splitlines()]


def judge(rows, answers):
    """(source, length) to (median, 90th percentile, share inside, items)."""
    errors, inside = collections.defaultdict(list), collections.defaultdict(list)
    for row, said in zip(rows, answers):
        key = row["source"], row["length"]
        errors[key].append(abs(said["seconds"] / row["seconds"] - 1) * 100)
        inside[key].append(said["low"] <= row["seconds"] <= said["high"])
    return {key: (percentile(each, 50), percentile(each, 90),
                  100 * sum(inside[key]) / len(each), len(each))
            for key, each in errors.items() if len(each) >= 5}


def mean(table, length, column):
    cells = [cell[column] for (_, each), cell in table.items() if each == length]
    return sum(cells) / len(cells) if cells else None


def tables(folder):
    rows = load(folder)
    tests = [row for row in rows if row["split"] != "cal"]
    readers = collections.defaultdict(list)
    for row in rows:
        readers[row["reader"]].append(row)
    with tempfile.TemporaryDirectory() as scratch:
        place = pathlib.Path(scratch)
        nobody = judge(tests, predict(place, tests, []))
        (place / ".sayline").mkdir()
        answered = {}
        for reader, items in readers.items():
            timed = [row for row in items if row["split"] == "cal"]
            asked = [row for row in items if row["split"] != "cal"]
            if timed:
                calibrate(place, reader, timed)
            flags = ["--reader", reader] if timed else []
            answered.update(zip(map(id, asked), predict(place, asked, flags)))
        calibrated = judge(tests, [answered[id(row)] for row in tests])
    return {"nobody timed": nobody, "calibrated": calibrated}


def main():
    result = tables(sys.argv[1])
    if "--json" in sys.argv:
        print(json.dumps({name: {f"{source} {length}": cell for (source, length), cell in
                                 table.items()} for name, table in result.items()}, indent=1))
        return
    for name, table in result.items():
        print(name)
        for (source, length), cell in table.items():
            print("  %-10s %-9s %5.1f /%5.1f   inside %3.0f %%   n=%d" % (source, length, *cell))
        for length in LENGTHS:
            if mean(table, length, 0) is not None:
                print("  %-20s %5.1f /%5.1f   inside %3.0f %%" % (
                    "mean, " + length, *(mean(table, length, i) for i in range(3))))


if __name__ == "__main__":
    main()
