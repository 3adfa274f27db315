#!/usr/bin/env python3
"""Findings per 100 words of ordinary text, by rule: the tables of docs/accuracy.md.

Usage: count_findings.py FILE [SENTENCES]

FILE is text a line in (each line a paragraph of its own), or a table with a column `text`. SENTENCES
(1 unless given) is how many sentences share a paragraph: one of the study's texts is a minute of talk,
which nobody would write as one thought. The program's path is in the environment variable SAYLINE.
"""
import collections
import csv
import json
import os
import re
import subprocess
import sys

END = re.compile(r'(?<=[.!?])["”)]?\s+(?=[A-Z"“\'0-9])')


def texts(path):
    with open(path, encoding="utf-8", newline="") as file:
        if not path.endswith(".tsv"):
            return [line.strip() for line in file if line.strip()]
        rows = csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE)
        # The longer texts of such a table hold the shorter ones.
        return list(dict.fromkeys(row["text"] for row in rows if row.get("length", "1min") == "1min"))


def paragraphs(path, size):
    for text in texts(path):
        sentences = [part for part in END.split(text) if part.strip()]
        for at in range(0, len(sentences), size):
            yield " ".join(sentences[at:at + size])


def check(script, stage):
    program = os.environ.get("SAYLINE", "sayline")
    run = subprocess.run([program, "check", "-", "--as", "json", "--stage", stage],
                         input=script, capture_output=True, text=True, check=False)
    if run.returncode == 2:
        sys.exit(run.stderr or run.stdout)
    return json.loads(run.stdout)["files"][0]["findings"]


def main():
    path = sys.argv[1]
    size = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    blocks = list(paragraphs(path, size))
    script = "\n\n".join(blocks) + "\n"
    words = len(script.split())
    counts = {stage: collections.Counter(found["rule"] for found in check(script, stage))
              for stage in ("draft", "mark")}
    print(f"{words} words, {len(blocks)} paragraphs, {size} sentences in each")
    print("| rule | draft | mark |\n| --- | --- | --- |")
    for rule in sorted(set(counts["draft"]) | set(counts["mark"])):
        row = [f"{100 * counts[stage][rule] / words:.2f}" for stage in ("draft", "mark")]
        print(f"| {rule} | {row[0]} | {row[1]} |")
    total = {stage: sum(counts[stage].values()) for stage in counts}
    print(f"| all | {100 * total['draft'] / words:.2f} | {100 * total['mark'] / words:.2f} |")
    print(f"| all, of each paragraph | {total['draft'] / len(blocks):.2f} "
          f"| {total['mark'] / len(blocks):.2f} |")


if __name__ == "__main__":
    main()
