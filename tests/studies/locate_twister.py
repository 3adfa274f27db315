#!/usr/bin/env python3
"""Text a line in, the words that trip a line out: first and end, counted by blanks from 0."""
import re

import explained


def words_under(text, begin, end):
    places = [match.span() for match in re.finditer(rb"\S+", text.encode())]
    inside = [i for i, (first, last) in enumerate(places) if first < end and last > begin]
    return (inside[0], inside[-1] + 1) if inside else (0, 0)


for item in explained.items():
    place = item.get("twister", {"begin": 0, "end": 0})
    print(*words_under(item.get("text", ""), place["begin"], place["end"]))
