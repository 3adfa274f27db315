"""What the syntax definition for KDE's editors paints: the highlighter of their framework on each case of colours.json.

    kate.py WORK CASES OUT

A theme made here gives every item a colour of its own, by which the HTML that comes out is read.
"""
import html
import json
import os
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree as xml

work, cases, out = (pathlib.Path(argument) for argument in sys.argv[1:4])
folder = work / "org.kde.syntax-highlighting"
definition = folder / "syntax" / "sayline.xml"
tree = xml.parse(definition)
items = [item.get("name") for item in tree.iter("itemData")]
colours = {f"#0000{number:02x}": name.lower() for number, name in enumerate(items, 1)}
names = {"fence": "header"}
styles = "Normal Keyword Function Variable ControlFlow Operator BuiltIn Extension Preprocessor Attribute Char SpecialChar"
styles += " String VerbatimString SpecialString Import DataType DecVal BaseN Float Constant Comment Documentation"
styles += " Annotation CommentVar RegionMarker Information Warning Alert Error Others"
theme = {
    "metadata": {"name": "Test", "revision": 1},
    "text-styles": {style: {"text-color": "#777777"} for style in styles.split()},
    "custom-styles": {"Sayline": {name: {"text-color": f"#0000{number:02x}"} for number, name in enumerate(items, 1)}},
    "editor-colors": {"BackgroundColor": "#ffffff"},
}
(folder / "themes").mkdir()
(folder / "themes" / "test.theme").write_text(json.dumps(theme), encoding="utf-8")


def references(tree):
    """Contexts and items that a rule names and nobody defines."""
    contexts = {context.get("name") for context in tree.iter("context")}
    for node in tree.iter():
        for key in ("context", "lineEndContext", "lineEmptyContext", "fallthroughContext"):
            name = re.sub(r"^(#pop)*!?|^#stay$", "", node.get(key) or "")
            if name and name not in contexts:
                yield f"no context {name}"
        if node.tag != "itemData" and node.get("attribute") and node.get("attribute") not in items:
            yield f"no item {node.get('attribute')}"


def painted(text):
    script = work / "case.say"
    script.write_text(text, encoding="utf-8")
    done = subprocess.run(["kate-syntax-highlighter", "-t", "Test", script], capture_output=True, text=True, check=True,
                          env={**os.environ, "XDG_DATA_HOME": str(work), "QT_QPA_PLATFORM": "offscreen"})
    if done.stderr.strip():
        sys.exit(f"kate: the highlighter says: {done.stderr.strip()}")
    body = re.search(r"<pre>\n?(.*)</pre>", done.stdout, re.S).group(1)
    pieces = []
    for style, inside, plain in re.findall(r'<span style="([^"]*)">(.*?)</span>|([^<]+)', body, re.S):
        colour = re.search(r"(?<!-)color:(#[0-9a-f]{6})", style)
        name = colours.get(colour.group(1), "") if colour else ""
        pieces.append([names.get(name, name), html.unescape(inside or plain)])
    return pieces


missing = sorted(set(references(tree)))
if missing:
    sys.exit("kate: " + "; ".join(missing))
rows = json.loads(cases.read_text(encoding="utf-8"))
out.write_text(json.dumps([painted(row["text"]) for row in rows]), encoding="utf-8")
