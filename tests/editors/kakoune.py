"""What Kakoune paints: it draws each case of colours.json to a program instead of a screen.

    kakoune.py DEFINITION CASES OUT

Each face gets a colour of its own, by which the drawn lines are read.
"""
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

definition, cases, out = (pathlib.Path(argument) for argument in sys.argv[1:4])
faces = re.findall(r"^set-face global sayline_(\w+)", definition.read_text(encoding="utf-8"), re.M)
colours = {f"rgb:0000{number:02x}": face for number, face in enumerate(faces, 1)}
# The faces come with the module, and the cursor may hide nothing.
setting = "\n".join([f"source {definition}", "require-module sayline"]
                    + [f"set-face global sayline_{face} {colour}" for colour, face in colours.items()]
                    + [f"set-face global {face} default" for face in ("PrimaryCursor", "PrimarySelection", "PrimaryCursorEol")])
settings = pathlib.Path(os.environ["XDG_CONFIG_HOME"]) / "kak" / "kakrc"
settings.parent.mkdir(parents=True)
settings.write_text(setting + "\n", encoding="utf-8")


def painted(text, folder):
    script = folder / "case.say"
    script.write_text(text + "\n", encoding="utf-8")
    kak = subprocess.Popen(["kak", "-ui", "json", script], text=True,
                           stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    try:
        kak.stdin.write(json.dumps({"jsonrpc": "2.0", "method": "resize", "params": [60, 200]}) + "\n")
        kak.stdin.flush()
        # The first refresh is that of the start, before the window has its size.
        refreshes, lines = 0, []
        for row in kak.stdout:
            message = json.loads(row)
            if message["method"] == "draw":
                lines = message["params"][0]
            elif message["method"] == "draw_status":
                said = "".join(atom["contents"] for atom in message["params"][0])
                if "error" in said:
                    sys.exit(f"kakoune: {said}")
            elif message["method"] == "refresh":
                refreshes += 1
                if refreshes == 2:
                    break
    finally:
        kak.kill()
        kak.wait()
    pieces = []
    for line in lines:
        for atom in line:
            name = colours.get(atom["face"]["fg"], "")
            text = atom["contents"].rstrip("\n")
            if pieces and pieces[-1][0] == name:
                pieces[-1][1] += text
            else:
                pieces.append([name, text])
        pieces.append(["", "\n"])
    return pieces


with tempfile.TemporaryDirectory() as name:
    rows = json.loads(cases.read_text(encoding="utf-8"))
    out.write_text(json.dumps([painted(row["text"], pathlib.Path(name)) for row in rows]), encoding="utf-8")
