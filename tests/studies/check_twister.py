#!/usr/bin/env python3
"""Floors under the score of tongue-twisters, over sentences in the public domain.

    check_twister.py PROGRAM FOLDER

FOLDER holds `twister/sample.tsv` and `timing/sample.tsv`, with their sources in them. The floors are the study's goals:
a twister outscores a plain sentence in 98.5 % of the pairs, at most one plain sentence in a hundred is flagged at
the default threshold, and two thirds of the twisters are.
A twister buried between two plain sentences must be found where it stands: half of what is pointed at, or more,
lies within it in 96 % of the cases.
"""
import os
import subprocess
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
DEFAULT_THRESHOLD = 1.88  # docs/twisters.md


def rows(path):
    with open(path, encoding="utf-8") as file:
        return [line.rstrip("\n").split("\t") for line in file if not line.startswith("#")][1:]


def answers(wrapper, program, texts):
    run = subprocess.run([sys.executable, os.path.join(HERE, wrapper)], text=True, check=True, capture_output=True,
                         input="".join(text + "\n" for text in texts), env={**os.environ, "SAYLINE": program})
    return [[float(value) for value in line.split()] for line in run.stdout.splitlines()]


def scores(program, texts):
    return [value for [value] in answers("score_twister.py", program, texts)]


def found_inside(program, twisters, plain):
    """The share of twisters that are found among plain words on either side."""
    before, after = plain[:len(twisters)], plain[len(twisters):2 * len(twisters)]
    texts = [f"{a.rstrip('.?!')} {twister.rstrip('.?!')} {b}" for a, twister, b in zip(before, twisters, after)]
    hits = 0
    for a, twister, (first, end) in zip(before, twisters, answers("locate_twister.py", program, texts)):
        begin, last = len(a.split()), len(a.split()) + len(twister.split())
        hits += max(0, min(end, last) - max(first, begin)) >= .5 * max(1, end - first)
    return hits / len(twisters)


def main():
    program, folder = sys.argv[1:]
    sample = rows(os.path.join(folder, "twister", "sample.tsv"))
    twisters = [text for kind, text in sample if kind == "twister"]
    plain = [text for kind, text in sample if kind == "plain"]
    plain += [row[4] for row in rows(os.path.join(folder, "timing", "sample.tsv"))]
    hard, easy = scores(program, twisters), scores(program, plain)
    pairs = [(a > b) + .5 * (a == b) for a in hard for b in easy]
    figures = {"a twister outscores a plain sentence": (sum(pairs) / len(pairs), .985),
               "twisters flagged": (sum(score > DEFAULT_THRESHOLD for score in hard) / len(hard), .67),
               "plain sentences not flagged": (sum(score <= DEFAULT_THRESHOLD for score in easy) / len(easy), .99),
               "found where they stand": (found_inside(program, twisters, plain[::-1]), .96)}
    print(f"{len(hard)} twisters, {len(easy)} plain sentences")
    for name, (figure, least) in figures.items():
        print(f"{name}: {figure:.3f}, at least {least}")
    for score, text in sorted(zip(hard, twisters))[:3]:
        print(f"lowest: {score:.2f} {text}")
    sys.exit(any(figure < least for figure, least in figures.values()))


main()
