"""Holds the captions that are written against parsers that others wrote.

    captions.py SAYLINE FOLDER SCRIPT...

FOLDER is where the parsers are installed once, from the Python package index; where that cannot be
done the test is skipped (77). WebVTT is read by webvtt-py and pysubs2, SRT by srt and pysubs2.
"""

import importlib
import pathlib
import re
import subprocess
import sys

PACKAGES = ["webvtt-py==0.5.1", "srt==3.5.3", "pysubs2==1.8.0"]


def install(folder):
    if not (folder / "pysubs2").is_dir():
        command = [sys.executable, "-m", "pip", "install", "--quiet", "--target", str(folder), *PACKAGES]
        try:
            subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        except (OSError, subprocess.CalledProcessError) as error:
            print("skipped: the parsers cannot be installed:", getattr(error, "stderr", b""))
            sys.exit(77)
    sys.path.insert(0, str(folder))


def exported(program, script, target):
    run = subprocess.run([program, "export", "--to", target, script], capture_output=True, check=True)
    return run.stdout.decode()


def seconds(stamp):
    hours, minutes, rest = stamp.replace(",", ".").split(":")
    return int(hours) * 3600 + int(minutes) * 60 + float(rest)


def cues(text):
    """Begin, end and words of each cue, by the eye of a regular expression."""
    stamp = r"(\d\d:\d\d:\d\d[.,]\d{3})"
    found = re.findall(rf"^\d+\n{stamp} --> {stamp}\n((?:.+\n)+)", text, re.M)
    return [(seconds(begin), seconds(end), words(body)) for begin, end, body in found]


def words(text):
    text = re.sub(r"<[^>]*>|\{[^}]*\}", " ", text.replace("\\N", " "))
    for escaped, plain in (("&lt;", "<"), ("&gt;", ">"), ("&amp;", "&")):
        text = text.replace(escaped, plain)
    return text.split()


def same(name, ours, theirs):
    theirs = list(theirs)
    assert len(ours) == len(theirs) > 0, f"{name}: {len(ours)} and {len(theirs)} cues"
    for one, other in zip(ours, theirs):
        assert abs(one[0] - other[0]) < 0.002 and abs(one[1] - other[1]) < 0.002, (name, one, other)
        assert one[2] == other[2], (name, one, other)


def main():
    program, folder, *scripts = sys.argv[1:]
    install(pathlib.Path(folder))
    webvtt, srt, pysubs2 = map(importlib.import_module, ("webvtt", "srt", "pysubs2"))
    for script in scripts:
        vtt_text, srt_text = exported(program, script, "vtt"), exported(program, script, "srt")
        read = webvtt.from_string(vtt_text)
        same("webvtt-py", cues(vtt_text), ((seconds(c.start), seconds(c.end), words(c.text)) for c in read))
        for name, text in (("vtt", vtt_text), ("srt", srt_text)):
            read = pysubs2.SSAFile.from_string(text, format_=name)
            same(f"pysubs2 {name}", cues(text), ((e.start / 1000, e.end / 1000, words(e.text)) for e in read))
        read = srt.parse(srt_text)
        same("srt", cues(srt_text),
             ((c.start.total_seconds(), c.end.total_seconds(), words(c.content)) for c in read))
        print(f"{script}: {len(cues(vtt_text))} captions, read alike by all")


main()
