#!/usr/bin/env python3
"""Compares what an editor has painted with colours.json, the cases of docs/format.md.

    painted.py EDITOR FILE [--shapes]

FILE is JSON: for each case the list of [name, text] that the editor painted, in order, as raw as it comes. Names that
colours.json does not use are passed over. --shapes: by shape alone, so an omission's dots pass for a pause; a case has
"known" where a parser knows better.
"""
import json
import pathlib
import sys

CASES = json.loads((pathlib.Path(__file__).parent / "colours.json").read_text(encoding="utf-8"))
NAMES = set("heading value key speaker note direction header mark escape raw link".split())
NAMES |= set("stress heavy soft quick slow quoted".split())


def tidy(pieces):
    """Neighbours without blanks, as colours.json has them."""
    return [f"{name}: {text.strip()}" for name, text in pieces if name in NAMES and text.strip()]


def main():
    editor, path = sys.argv[1:3]
    shapes = "--shapes" in sys.argv
    painted = json.loads(pathlib.Path(path).read_text(encoding="utf-8"))
    if len(painted) != len(CASES):
        sys.exit(f"{editor}: {len(CASES)} cases, but {len(painted)} answers")
    wrong = 0
    for case, pieces in zip(CASES, painted):
        wanted = case["painted"] if shapes else case.get("known", case["painted"])
        got = tidy(pieces)
        if got != wanted:
            wrong += 1
            print(f"{editor}: {case['text']!r} is painted\n    {got}, not\n    {wanted}")
    if wrong:
        sys.exit(f"{editor}: {wrong} of {len(CASES)} cases are painted otherwise than the format says")
    print(f"{editor}: {len(CASES)} cases are painted as the format says")


if __name__ == "__main__":
    main()
