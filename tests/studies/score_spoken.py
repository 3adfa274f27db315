#!/usr/bin/env python3
"""Share of written forms said as expected, class by class: the table of docs/spoken-forms.md.

Usage: score_spoken.py PAIRS [ALTERNATIVES]

PAIRS is a table with the columns class, input and spoken; ALTERNATIVES has input and every accepted
reading, parted by " ||| ". Lines that begin with # are comments. Case, hyphens, commas, full stops and
the word "and" do not count. The program's path is in the environment variable SAYLINE, the language
in LANGUAGE_TAG (en-US unless given).
"""
import collections
import json
import os
import re
import subprocess
import sys


def rows(path):
    with open(path, encoding="utf-8") as file:
        lines = [line.rstrip("\n").split("\t") for line in file if not line.startswith("#")]
    return [dict(zip(lines[0], line)) for line in lines[1:]]


def comparable(spoken):
    plain = spoken.lower().replace("-", " ").replace(".", "")
    return [word for word in re.findall(r"[a-z']+", plain) if word != "and"]


def said(inputs):
    command = [os.environ["SAYLINE"], "explain", "--lines", "--plain", "--language",
               os.environ.get("LANGUAGE_TAG", "en-US")]
    result = subprocess.run(command, input="\n".join(inputs) + "\n", capture_output=True, text=True,
                            check=True)
    return [json.loads(line)["spoken"] for line in result.stdout.splitlines()]


def main():
    pairs = [(row["class"], row["input"], [row["spoken"]]) for row in rows(sys.argv[1])]
    if len(sys.argv) > 2:
        pairs += [("several readings", row["input"], row["accepted"].split(" ||| "))
                  for row in rows(sys.argv[2])]
    right, all_of = collections.Counter(), collections.Counter()
    missed = []
    for (kind, written, accepted), spoken in zip(pairs, said([pair[1] for pair in pairs])):
        all_of[kind] += 1
        if comparable(spoken) in [comparable(reading) for reading in accepted]:
            right[kind] += 1
        else:
            missed.append(f"{kind}: {written!r} is said {spoken!r}, not {accepted[0]!r}")
    print("| class | right | of |\n| --- | --- | --- |")
    for kind in all_of:
        print(f"| {kind} | {right[kind]} | {all_of[kind]} |")
    print(f"| all | {sum(right.values())} | {sum(all_of.values())} |")
    print("\n".join(missed))


if __name__ == "__main__":
    main()
