#!/usr/bin/env python3
"""Floors under the guesses of stress and pauses, over sentences whose readings were labelled.

    check_prosody.py PROGRAM FOLDER

FOLDER holds `sample.tsv` (its source and licence are in it). The model has learnt from these readers too, so
its figures here are above those of docs/phrasing.md, which are held out: a test of this kind shows that the
weights, the features and the way to the output still belong together, not how good they are.
The floors are the study's goals for unseen readers.
"""
import os
import subprocess
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
FLOORS = {"stressed or not": .825, "none, some or strong": .66, "likeliest word stressed": .94,
          "likeliest word strongly stressed": .74, "F1 of pauses without punctuation": .55}


def sentences(path):
    """Lists of (word, before, after, stress, pause); a label is None where there is none."""
    found = []
    with open(path, encoding="utf-8") as file:
        rows = [line.rstrip("\n") for line in file if not line.startswith("#")]
    for row in rows[1:]:
        if not row:
            found.append([])
            continue
        cells = ["" if cell == "-" else cell for cell in row.split("\t")]
        found[-1].append((*cells[:3], *(int(cell) if cell else None for cell in cells[3:])))
    return found


def guesses(program, texts):
    run = subprocess.run([sys.executable, os.path.join(HERE, "predict_prosody.py")], text=True, check=True,
                         input="".join(text + "\n" for text in texts), capture_output=True,
                         env={**os.environ, "SAYLINE": program})
    return [[tuple(map(float, item.split("|")[1:])) for item in line.split()]
            for line in run.stdout.split("\n")[:-1]]


def level(value):
    return 2 if value >= 1.5 else 1 if value >= .5 else 0


def share(pairs):
    return sum(a == b for a, b in pairs) / len(pairs)


def figures(pairs):
    """pairs: a sentence and what is guessed of each of its words."""
    stress = [(word[3], level(guess[0])) for words, heard in pairs for word, guess in zip(words, heard)
              if word[3] is not None]
    tops = [max(zip((guess[0] for guess in heard), (word[3] or 0 for word in words))) [1]
            for words, heard in pairs]
    pauses = [(word[4] > 0, guess[1] >= .5) for words, heard in pairs
              for word, guess in list(zip(words, heard))[:-1] if word[4] is not None and not word[2]]
    right = sum(heard and said for heard, said in pauses)
    return {"stressed or not": share([(a > 0, b > 0) for a, b in stress]),
            "none, some or strong": share(stress),
            "likeliest word stressed": sum(top > 0 for top in tops) / len(tops),
            "likeliest word strongly stressed": sum(top == 2 for top in tops) / len(tops),
            "F1 of pauses without punctuation":
                2 * right / (sum(heard for heard, _ in pauses) + sum(said for _, said in pauses))}


def main():
    said = sentences(os.path.join(sys.argv[2], "sample.tsv"))
    texts = [" ".join(before + word + after for word, before, after, *_ in words) for words in said]
    pairs = [(words, heard) for words, heard in zip(said, guesses(sys.argv[1], texts))
             if len(words) == len(heard)]
    print(f"{len(pairs)} of {len(said)} sentences have the same words")
    failed = len(pairs) < .9 * len(said)
    for name, figure in figures(pairs).items():
        print(f"{name}: {figure:.3f}, at least {FLOORS[name]}")
        failed |= figure < FLOORS[name]
    sys.exit(failed)


main()
