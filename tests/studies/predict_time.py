#!/usr/bin/env python3
"""Text a line in, seconds a line out."""
import explained

for item in explained.items():
    print(item.get("seconds", 0))
