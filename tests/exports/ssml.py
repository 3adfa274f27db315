"""Holds SSML against the Recommendation, and lets a synthesiser speak it.

    ssml.py SAYLINE SCRIPT...

Elements, attributes and the shape of their values: SSML 1.1, W3C Recommendation of 7 September 2010, sections 3.1 to
3.3, those that are written. espeak-ng (Debian) then speaks short scripts, and the silences in the sound are measured.
"""

import random
import re
import shutil
import subprocess
import sys
import tempfile
import wave
import xml.etree.ElementTree as xml

SPACE = "{http://www.w3.org/2001/10/synthesis}"
LANGUAGE = "{http://www.w3.org/XML/1998/namespace}lang"
TIME = r"\+?\d*\.?\d+(ms|s)"
RATE = r"\d+%"
PITCH = r"[+-]\d+%"
# Element: the parents it may have among those that are written, and its attributes.
SPOKEN = {"s", "emphasis", "prosody"}
RULES = {
    "p": ({"speak", "prosody", "voice"}, {}),
    "s": ({"p"}, {}),
    "voice": ({"speak", "prosody"}, {"variant": r"[1-9]\d*"}),
    "mark": ({"speak", "prosody"}, {"name": r"section-\d+"}),
    "break": (SPOKEN | {"speak", "p"}, {"time": TIME, "strength": "none"}),
    "emphasis": (SPOKEN, {"level": "strong|moderate|reduced|none"}),
    "prosody": (SPOKEN | {"speak"}, {"rate": RATE, "pitch": PITCH, "duration": TIME,
                                     "contour": r"\(\d+%,[+-]\d+%\)( \(\d+%,[+-]\d+%\))*"}),
    "phoneme": (SPOKEN, {"alphabet": "ipa", "ph": ".+"}),
    "sub": (SPOKEN, {"alias": ".+"}),
    "say-as": (SPOKEN, {"interpret-as": "characters"}),
}
NEEDED = {"voice": {"variant"}, "mark": {"name"}, "emphasis": {"level"}, "phoneme": {"alphabet", "ph"},
          "sub": {"alias"}, "say-as": {"interpret-as"}}


def exported(program, text):
    run = subprocess.run([program, "export", "--to", "ssml", "-"], input=text.encode(), capture_output=True)
    return run.stdout.decode() if run.returncode == 0 else None


def check(element, parent):
    name = element.tag.removeprefix(SPACE)
    parents, attributes = RULES[name]
    assert parent in parents, f"{name} in {parent}"
    for attribute, value in element.attrib.items():
        assert re.fullmatch(attributes[attribute], value), f"{name} {attribute}={value}"
    assert NEEDED.get(name, set()) <= set(element.attrib), f"{name} lacks an attribute"
    assert name not in ("prosody", "break") or element.attrib, f"{name} says nothing"
    for child in element:
        check(child, name)


def check_document(text):
    root = xml.fromstring(text.encode())
    assert root.tag == SPACE + "speak" and root.get("version") == "1.1" and root.get(LANGUAGE)
    for child in root:
        check(child, "speak")
    return root


def check_scripts(program, scripts):
    for script in scripts:
        with open(script, encoding="utf-8", newline="") as file:
            root = check_document(exported(program, file.read()))
        print(f"{script}: {sum(1 for _ in root.iter())} elements")


def check_noise(program):
    draw = random.Random(11)
    pieces = ["<", ">", "&", "]]>", "<!--", "\x01", "\ufffe", "*", "**", "~", "(", ")", "\"", "/", "...", "[wait 2s]",
              "^", "\u2191", "\u2197", "so::", "{KUHM}", "{= x & y}", "limpet", "1,250", "NASA", " ", " ", " ", "\n\n",
              "# A <b>\n", "JO: ", "x ", "é🐚", ". "]
    for _ in range(120):
        text = "---\nspeakers: JO, MIRA\n---\nGo.\n\n" + "".join(draw.choice(pieces) for _ in range(50))
        made = exported(program, text)
        assert made is not None, text
        check_document(made)


def longest_silence_inside(program, script, folder):
    sound = f"{folder}/talk.wav"
    subprocess.run(["espeak-ng", "-m", "-w", sound], input=exported(program, script).encode(), check=True)
    with wave.open(sound) as file:
        rate = file.getframerate()
        samples = memoryview(file.readframes(file.getnframes())).cast("h")
    loud = [i for i, sample in enumerate(samples) if abs(sample) >= 100]
    longest = run = 0
    for sample in samples[loud[0]:loud[-1]]:
        run = run + 1 if abs(sample) < 100 else 0
        longest = max(longest, run)
    return longest / rate


def check_sound(program):
    if shutil.which("espeak-ng") is None:
        print("espeak-ng is not there: not spoken")
        return
    with tempfile.TemporaryDirectory() as folder:
        plain = longest_silence_inside(program, "We count limpets on the rock.\n", folder)
        assert plain < 0.3, plain
        for mark, seconds in (("(2.0)", 2.0), ("xx", 2.0), ("(1.5)", 1.5), ("//", 0.7)):
            silence = longest_silence_inside(program, f"We count limpets {mark} on the rock.\n", folder)
            print(f"{mark}: {silence:.2f} s of silence for {seconds} s")
            # What the synthesiser adds of its own at a break is not ours to say.
            assert seconds - 0.1 < silence < seconds + 0.5, (mark, silence)


def main():
    program, *scripts = sys.argv[1:]
    check_scripts(program, scripts)
    check_noise(program)
    check_sound(program)


main()
