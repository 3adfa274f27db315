#!/usr/bin/env python3
"""The examples of the CommonMark specification (0.30, npm commonmark-spec) as drafts.

    markdown.py PROGRAM FOLDER

Each must become a script whose spoken words are those that the specification's own HTML shows. Those with raw HTML or pictures are read but not compared: there is no one way to say them.
"""
import html.parser
import pathlib
import re
import sys

import makers

PROGRAM = pathlib.Path(sys.argv[1]).resolve()
FOLDER = makers.install(pathlib.Path(sys.argv[2]).resolve())

FENCE = "`" * 32
# Keys between two rules at the very top are read as what the draft says of itself.
FRONT = re.compile(r"---\n\w+:.*\n---\n")


def examples():
    spec = (FOLDER / "node_modules" / "commonmark-spec" / "spec.txt").read_text()
    pattern = re.compile(f"^{FENCE} example\n(.*?)^\\.\n(.*?)^{FENCE}$", re.M | re.S)
    for match in pattern.finditer(spec):
        yield match.group(1).replace("→", "\t"), match.group(2).replace("→", "\t")


class Shown(html.parser.HTMLParser):
    """The text of a page, headings apart."""

    def __init__(self):
        super().__init__()
        self.text, self.heading, self.other = "", False, False

    def handle_starttag(self, tag, attrs):
        self.heading |= bool(re.fullmatch("h[1-6]", tag))
        known = "p em strong a code pre ul ol li blockquote hr br h1 h2 h3 h4 h5 h6".split()
        self.other |= tag not in known
        if tag in ("p", "li", "pre", "br", "blockquote"):
            self.text += "\n"

    def handle_endtag(self, tag):
        if re.fullmatch("h[1-6]", tag):
            self.heading = False
        if tag in ("p", "li", "pre", "blockquote"):
            self.text += "\n"

    def handle_data(self, data):
        if not self.heading:
            self.text += data

    def handle_comment(self, data):
        self.other = True

    def handle_pi(self, data):
        self.other = True

    def handle_decl(self, decl):
        self.other = True

    def unknown_decl(self, data):
        self.other = True


def letters(text):
    """Without figures: a list's numbers are its page's, not its text's."""
    return re.sub(r"[\W\d_]+", "", text)


def main():
    checks = makers.Checks()
    compared = 0
    for number, (markdown, page) in enumerate(examples(), 1):
        done = makers.run(PROGRAM, "import", "--from", "md", "-", data=markdown.encode())
        nothing = b"no words" in done.stderr
        checks.holds(f"example {number}: {markdown!r}: {done.stderr}", done.returncode == 0 or nothing)
        shown = Shown()
        shown.feed(page)
        shown.close()
        raw = re.search(r"<[a-z/!?]", re.sub(r"<[a-z][a-z0-9+.-]+:[^ <>]*>|<[^ <>]+@[^ <>]+>", "", markdown), re.I)
        if shown.other or raw or FRONT.match(markdown):
            continue
        compared += 1
        script = done.stdout.decode()
        said = "".join(thought["text"] for thought in makers.explained(PROGRAM, script))
        plain = re.sub(r"^(% |#{1,3} |---$|title:).*$", "", script, flags=re.M)
        checks.same(f"example {number}: {markdown!r}", letters(plain), letters(shown.text))
        # A paragraph that is nothing but words in square brackets is a direction.
        spoken = re.sub(r"(?<!\\)\[[^\]\n]*\]", "", plain)
        checks.holds(f"example {number}: {script!r} is explained", said or not letters(spoken))
    checks.holds("the specification was found", number > 600 and compared > 400)
    print(f"{number} examples read, {compared} of them compared word for word")
    checks.finish()


main()
