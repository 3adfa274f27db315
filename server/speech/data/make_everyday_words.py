#!/usr/bin/env python3
"""Writes everyday_words.inc: sounds for the words of everyday_words.txt, which the CMU dictionary lacks.

    python3 -m pip download --no-deps misaki==0.9.4
    python3 server/speech/data/make_everyday_words.py misaki-0.9.4-py3-none-any.whl

The words are those of the Debian package wbritish 2020.12.07 (SCOWL) that neither the dictionary nor the
rules for endings and compounds know, the more frequent ones (wordfreq 3.1.1), and some of the shore, the
kitchen and the museum. The sounds are those of misaki's American dictionary (us_gold.json, Apache-2.0, see
NOTICE), written in the symbols of the CMU dictionary. The same file gives the same text.
"""
import json
import pathlib
import sys
import zipfile

HERE = pathlib.Path(__file__).resolve().parent

VOWELS = {
    "A": "EY", "I": "AY", "W": "AW", "Y": "OY", "O": "OW", "æ": "AE", "ɑ": "AA", "ɔ": "AO", "ɛ": "EH", "ɪ": "IH",
    "i": "IY", "ʊ": "UH", "u": "UW", "ʌ": "AH", "ə": "AH", "ᵊ": "AH", "ᵻ": "IH", "ɜ": "AH",
}
CONSONANTS = {
    "b": "B", "ʧ": "CH", "d": "D", "ð": "DH", "f": "F", "ɡ": "G", "h": "HH", "ʤ": "JH", "k": "K", "l": "L",
    "m": "M", "n": "N", "ŋ": "NG", "p": "P", "ɹ": "R", "s": "S", "ʃ": "SH", "t": "T", "θ": "TH", "v": "V",
    "w": "W", "j": "Y", "z": "Z", "ʒ": "ZH", "ɾ": "T", "T": "T",
}
STRESS = {"ˈ": 1, "ˌ": 2}


def to_arpabet(symbols):
    phones = []
    stress = 0
    at = 0
    while at < len(symbols):
        symbol = symbols[at]
        at += 1
        if symbol in STRESS:
            stress = STRESS[symbol]
        elif symbol in VOWELS:
            # A weak or open mid vowel and an r are one sound: "ER".
            with_r = symbol in "ɜəᵊ" and symbols[at:at + 1] == "ɹ"
            phones.append(f"{'ER' if with_r else VOWELS[symbol]}{stress}")
            at += with_r
            stress = 0
        elif phones[-1:] != [CONSONANTS[symbol]] or symbol not in "lɹ":
            phones.append(CONSONANTS[symbol])
    return " ".join(phones)


def main():
    with zipfile.ZipFile(sys.argv[1]) as wheel:
        gold = json.loads(wheel.read("misaki/data/us_gold.json"))
    words = (HERE / "everyday_words.txt").read_text(encoding="utf-8").split()
    lines = []
    for word in sorted(words):
        symbols = gold[word]
        if isinstance(symbols, dict):
            symbols = symbols["DEFAULT"]
        lines.append(f'{{"{word}", "{to_arpabet(symbols)}"}},\n')
    (HERE / "everyday_words.inc").write_text("".join(lines), encoding="utf-8")


if __name__ == "__main__":
    main()
