#!/usr/bin/env python3
"""Text a line in, how likely it trips the tongue a line out: higher is likelier."""
import explained

for item in explained.items():
    print(item["twister"]["score"] if "twister" in item else -100)
