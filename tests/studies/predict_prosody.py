#!/usr/bin/env python3
"""Text a line in, `word|stress|boundary` for each of its words a line out."""
import explained

for item in explained.items():
    print(*(f"{word['text']}|{word['stress']}|{word['boundary']}"
            for word in item.get("words", [])))
