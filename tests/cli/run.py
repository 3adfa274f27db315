#!/usr/bin/env python3
"""Runs one case of the command line and compares what comes out.

    run.py PROGRAM CASE

A case is a folder: `args` (one argument a line), `out` (standard output), and where they matter
`in/` (the folder it runs in), `stdin`, `err` (standard error), `status` (0 if absent) and `after/`
(files of `in/` as they should be afterwards). `…` in an expected line stands for anything, so that
a better timing model does not rewrite every case. UPDATE_EXPECTED=1 rewrites what differs.
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

ENCODING = {"encoding": "utf-8", "errors": "surrogateescape"}


def fits(expected, got):
    pattern = ".*".join(re.escape(part) for part in expected.split("…"))
    return re.fullmatch(pattern, got) is not None


def same(expected, got):
    expected, got = expected.split("\n"), got.split("\n")
    return len(expected) == len(got) and all(map(fits, expected, got))


class Case:
    def __init__(self, folder):
        self.folder = pathlib.Path(folder)
        self.wrong = []

    def read(self, name, default=""):
        file = self.folder / name
        return file.read_bytes().decode(**ENCODING) if file.exists() else default

    def compare(self, name, got, default=""):
        expected = self.read(name, default)
        if same(expected, got):
            return
        if os.environ.get("UPDATE_EXPECTED"):
            (self.folder / name).write_bytes(got.encode(**ENCODING))
            return
        self.wrong.append(f"--- {name} expected\n{expected}\n--- {name} came out\n{got}")


def main():
    program, case = os.path.abspath(sys.argv[1]), Case(sys.argv[2])
    arguments = case.read("args").split("\n")[:-1]
    environment = {**os.environ, "NO_COLOR": "1", "LC_ALL": "C.UTF-8"}
    with tempfile.TemporaryDirectory() as scratch:
        # A folder below the scratch one, so that no `.sayline` of the machine is near.
        place = pathlib.Path(scratch) / "in"
        if (case.folder / "in").exists():
            shutil.copytree(case.folder / "in", place)
        else:
            place.mkdir()
        stdin = case.folder / "stdin"
        with open(stdin if stdin.exists() else os.devnull, "rb") as given:
            run = subprocess.run([program, *arguments], cwd=place, stdin=given, env=environment,
                                 capture_output=True, timeout=60, check=False)
        case.compare("out", run.stdout.decode(**ENCODING))
        case.compare("err", run.stderr.decode(**ENCODING))
        case.compare("status", f"{run.returncode}\n", "0\n")
        for file in sorted((case.folder / "after").rglob("*")):
            if file.is_file():
                inside = file.relative_to(case.folder / "after")
                case.compare(f"after/{inside}", (place / inside).read_bytes().decode(**ENCODING))
    if case.wrong:
        print("\n".join(case.wrong).encode("utf-8", "replace").decode())
        sys.exit(1)


main()
