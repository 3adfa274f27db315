#!/usr/bin/env python3
"""Compares what an editor has painted with colours.json, the cases of docs/format.md.

    painted.py EDITOR FILE [--captures]

FILE is JSON: for each case the list of [name, text] that the editor painted, in order, as raw as it comes. Names that
colours.json does not use are passed over. Most editors paint by the shapes of a line; --captures: the names are those
of a tree-sitter query, and a case has "grammar" where the grammar sees another shape. EDITOR is "server" for what the
program's semantic tokens paint: "server" where it knows better still, by the speakers declared or a list of words.
"""
import json
import pathlib
import sys

CASES = json.loads((pathlib.Path(__file__).parent / "colours.json").read_text(encoding="utf-8"))
NAMES = set("heading value key speaker note direction header mark escape raw link".split())
NAMES |= set("stress heavy soft quick slow quoted".split())


CAPTURES = {
    "property": "key", "variable.other.member": "key", "label": "speaker", "keyword": "mark", "operator": "mark",
    "markup.list": "mark", "punctuation.special": "mark", "string.special": "mark", "punctuation.bracket": "mark",
    "string.escape": "escape", "constant.character.escape": "escape", "markup.raw": "raw", "markup.link.url": "link",
    "markup.strong": "heavy", "markup.bold": "heavy", "markup.quote": "quoted", "punctuation.delimiter": "header",
}


def by_capture(case, pieces):
    """A query names a colour; what is meant shows from where it stands."""
    heading = any(name == "markup.heading" for name, _ in pieces)
    for name, text in pieces:
        name = name.removeprefix("sayline-")
        if heading and name:
            name = "heading"
        elif name == "comment":
            name = "note" if text.startswith("%") else "direction"
        elif name == "string":
            name = "value" if case["text"].startswith("---") else "mark"
        elif name == "markup.italic":
            name = "soft" if any(f": {text}" in row and row.startswith("soft") for row in case["painted"]) else "stress"
        elif text in ("(", ")", ":"):
            name = ""
        yield CAPTURES.get(name, name), text


def tidy(pieces):
    """Pieces as colours.json has them: trimmed, and neighbours of one name with no more than blanks between as one."""
    rows, gap = [], "."
    for name, text in pieces:
        if name not in NAMES or not text.strip():
            gap += text
            continue
        if rows and rows[-1][0] == name and not gap.strip(" "):
            rows[-1][1] += gap + text
        else:
            rows.append([name, text])
        gap = ""
    return [f"{name}: {text.strip()}" for name, text in rows]


def main():
    editor, path = sys.argv[1:3]
    painted = json.loads(pathlib.Path(path).read_text(encoding="utf-8"))
    if len(painted) != len(CASES):
        sys.exit(f"{editor}: {len(CASES)} cases, but {len(painted)} answers")
    wrong = 0
    for case, pieces in zip(CASES, painted):
        wanted = case["painted"]
        if "--captures" in sys.argv:
            pieces = list(by_capture(case, pieces))
            wanted = case.get("grammar", wanted)
            if editor != "emacs":  # themes have no colour for a pace
                wanted = [row for row in wanted if not row.startswith(("quick: ", "slow: "))]
        if editor == "server":  # left to the editor's own colours
            wanted = case.get("server", case.get("grammar", wanted))
            wanted = [row for row in wanted if not row.startswith(("header: ", "escape: ", "raw: ", "link: "))]
        got = tidy(pieces)
        if got != wanted:
            wrong += 1
            print(f"{editor}: {case['text']!r} is painted\n    {got}, not\n    {wanted}")
    if wrong:
        sys.exit(f"{editor}: {wrong} of {len(CASES)} cases are painted otherwise than the format says")
    print(f"{editor}: {len(CASES)} cases are painted as the format says")


if __name__ == "__main__":
    main()
