"""Holds the picture of a script's rhythm against the script's running order, and draws it with another program.

    rhythm.py SAYLINE SCRIPT...

The shapes are read back with Python's XML parser and measured; path commands are those of SVG 1.1, chapter 8 (M, h, v,
z). rsvg-convert (Debian's librsvg2-bin) then draws the file. Contrast of the text: WCAG 2.2, 1.4.3, ratio as defined
there.
"""

import json
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as xml

SVG = "{http://www.w3.org/2000/svg}"
WORD_SHARE = 0.75  # of a word's time is ink, so that neighbours stay apart
BOX = re.compile(r"M([\d.-]+) ([\d.-]+)h([\d.-]+)v([\d.-]+)h([\d.-]+)z")


def export(program, target, script):
    run = subprocess.run([program, "export", "--to", target, "-"], input=script.encode(), capture_output=True)
    assert run.returncode == 0, run.stderr.decode()
    return run.stdout.decode()


def boxes(picture, style):
    found = []
    for path in picture.findall(f"{SVG}path"):
        if path.get("class") != style:
            continue
        written = path.get("d")
        assert BOX.sub("", written) == "", "a path holds something else than boxes"
        found += [tuple(map(float, box)) for box in BOX.findall(written)]
    return found


def rows(picture):
    """Seconds a unit: from the clocks beside the rows and the ticks, which cut a row in six."""
    clocks = [label.text for label in picture.findall(f"{SVG}text") if label.get("class") == "clock"][1:]
    lines = [line for line in picture.findall(f"{SVG}line") if line.get("class") == "base"]
    assert len(clocks) == len(lines) and len(lines) <= 12
    seconds = [sum(int(part) * 60 ** i for i, part in enumerate(reversed(clock.split(":")))) for clock in clocks]
    length = max(float(line.get("x2")) - float(line.get("x1")) for line in lines)
    return lines, (seconds[1] / length if len(seconds) > 1 else None)


def contrast(one, other):
    def light(colour):
        channels = [int(colour[i:i + 2], 16) / 255 for i in (0, 2, 4)]
        linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    high, low = sorted((light(one), light(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def check(program, script):
    text = export(program, "svg", script)
    picture = xml.fromstring(text)
    order = json.loads(export(program, "json", script))
    words = [part for thought in order["thoughts"] for part in thought["parts"] if "word" in part]
    pauses = [part for thought in order["thoughts"] for part in thought["parts"] if "pause" in part]
    lines, scale = rows(picture)
    if scale:
        ink = sum(box[2] for style in ("word", "stressed", "heavy") for box in boxes(picture, style))
        spoken = sum(word["seconds"] for word in words) * WORD_SHARE
        assert abs(ink * scale - spoken) < 0.02 * spoken, f"{ink * scale} s drawn, {spoken} s spoken"
        held = sum(box[2] for box in boxes(picture, "pause")) * scale
        marked = sum(pause["seconds"] for pause in pauses)
        assert abs(held - marked) < 0.02 * marked + 0.05, f"{held} s of pauses drawn, {marked} s marked"
        drawn = sum(float(line.get("x2")) - float(line.get("x1")) for line in lines) * scale
        assert abs(drawn - order["seconds"]) < 0.01 * order["seconds"], "the rows are not as long as the script"
    heavy = {"heavy stress", "punch"}
    assert len(boxes(picture, "heavy")) >= sum(bool(heavy & set(word.get("marks", []))) for word in words)
    left, top, width, height = map(float, picture.get("viewBox").split())
    for style in ("word", "stressed", "heavy", "pace", "pause", "held"):
        for x, y, across, up, back in boxes(picture, style):
            assert left <= x and x + across <= left + width + 0.1 and top <= y + up and y <= top + height
            assert across == -back
    return picture, text


def check_words(picture, name):
    assert name in picture.find(f"{SVG}title").text, "the title is not what a screen reader is given"
    assert picture.get("role") == "img" and "thoughts" in picture.find(f"{SVG}desc").text


def check_contrast(text):
    light, dark = text.split("@media", 1)
    for style, paper in ((light, "ffffff"), (dark, "15181c")):
        for colour in re.findall(r"text[^{]*\{[^}]*fill:#(\w{6})|\.clock[^{]*\{fill:#(\w{6})", style):
            ratio = contrast(colour[0] or colour[1], paper)
            assert ratio >= 4.5, f"{colour} on {paper}: {ratio:.2f}"


def main():
    program, *scripts = sys.argv[1:]
    for name in scripts:
        with open(name, encoding="utf-8") as file:
            picture, text = check(program, file.read())
        check_contrast(text)
        with tempfile.TemporaryDirectory() as folder:
            run = subprocess.run(["rsvg-convert", "-o", f"{folder}/a.png"], input=text.encode(), capture_output=True)
            assert run.returncode == 0, run.stderr.decode()
            with open(f"{folder}/a.png", "rb") as image:
                assert len(image.read()) > 10_000, "the drawing is empty"
    hostile = "---\ntitle: <b>&\x01 \"so\"\n---\n# </svg><script>\n\nWe *count* limpets ]]> here.\n"
    picture, _ = check(program, hostile)
    check_words(picture, "<b>")
    check(program, "% a note\n")
    check(program, "xxxxxxxx\n")
    check(program, "".join(f"# Part {n}\n\nWe **count** the limpets / on the rock here.\n\n" for n in range(1200)))
    print(f"{len(scripts)} scripts drawn")


main()
