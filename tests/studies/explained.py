"""What the program says of each line of standard input, for the wrappers beside this file.

The program's path is in the environment variable SAYLINE.
"""
import json
import os
import subprocess
import sys


def items():
    program = os.environ.get("SAYLINE", "sayline")
    with subprocess.Popen([program, "explain", "--lines", "--plain"], stdin=sys.stdin,
                          stdout=subprocess.PIPE) as run:
        for line in run.stdout:
            item = json.loads(line)
            if "error" in item:
                print(item["error"], file=sys.stderr)
            yield item
    if run.returncode:
        sys.exit(run.returncode)
