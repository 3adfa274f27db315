#!/usr/bin/env python3
"""Holds a page of the manual equal to what the program prints.

    page.py PROGRAM PAGE FILE        UPDATE_EXPECTED=1 rewrites the file
"""
import os
import pathlib
import subprocess
import sys


def main():
    program, page, name = sys.argv[1:]
    file = pathlib.Path(name)
    printed = subprocess.run([program, "docs", page], capture_output=True, check=True).stdout
    if file.exists() and file.read_bytes() == printed:
        return
    if os.environ.get("UPDATE_EXPECTED"):
        file.parent.mkdir(exist_ok=True)
        file.write_bytes(printed)
        return
    sys.exit(f"{file.name} is not what `sayline docs {page}` prints: run this test with "
             "UPDATE_EXPECTED=1 and read the difference")


main()
