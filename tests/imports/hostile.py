#!/usr/bin/env python3
"""Drafts that mean harm or are broken: one clear sentence, status 2, memory within bounds.

    hostile.py PROGRAM FOLDER

Every run has 1 GiB of address space (RLIMIT_AS) and ten seconds; none may crash. Archives are made
with Python's zipfile. Every fixture is also cut short at many places.
"""
import io
import pathlib
import resource
import subprocess
import sys
import tempfile
import zipfile

import makers

PROGRAM = pathlib.Path(sys.argv[1]).resolve()
MEMORY = 1 << 30
SECONDS = 10

W = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
ODF = ('xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" '
       'xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"')
TYPES = "<Types/>"
RELS = ('<Relationships><Relationship Type="http://x/officeDocument" Target="{}"/>'
        '</Relationships>')


def archive(parts, method=zipfile.ZIP_DEFLATED):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as made:
        for name, data in parts.items():
            made.writestr(name, data)
    return out.getvalue()


def docx(document, main="word/document.xml", **more):
    return archive({"[Content_Types].xml": TYPES, "_rels/.rels": RELS.format(main),
                    main: document, **more})


def odt(content):
    return archive({"mimetype": "application/vnd.oasis.opendocument.text", "content.xml": content})


def in_docx(inside):
    return f"<w:document {W}><w:body>{inside}</w:body></w:document>"


def in_odt(inside):
    return (f"<office:document-content {ODF}><office:body><office:text>{inside}</office:text>"
            "</office:body></office:document-content>")


PARAGRAPH = "<w:p><w:r><w:t>We count limpets.</w:t></w:r></w:p>"
ENTITIES = ('<?xml version="1.0"?><!DOCTYPE d [<!ENTITY a "limpets"><!ENTITY b "&a;&a;&a;&a;">'
            '<!ENTITY c "&b;&b;&b;&b;">]>')
OUTSIDE = '<?xml version="1.0"?><!DOCTYPE d [<!ENTITY a SYSTEM "file:///etc/passwd">]>'


def nested_zip():
    inner = archive({"a": b"0" * 10_000_000})
    return archive({"[Content_Types].xml": TYPES, "inner.zip": inner})


# name: bytes, and a part of the sentence that must come.
REFUSED = {
    "bomb.docx": (docx(b" " * 300_000_000), "unpacks to more than 16 MiB"),
    "bomb.odt": (odt(b" " * 100_000_000), "unpacks to more than 16 MiB"),
    "styles-bomb.docx": (docx(in_docx(PARAGRAPH), **{
        "word/_rels/document.xml.rels":
            '<Relationships><Relationship Type="http://x/styles" Target="styles.xml"/></Relationships>',
        "word/styles.xml": b"<a/>" * 10_000_000}), "unpacks to more than 16 MiB"),
    "nested.docx": (nested_zip(), "no DOCX or ODT"),
    "entities.docx": (docx(ENTITIES + in_docx("<w:p><w:r><w:t>&c;</w:t></w:r></w:p>")), "document type"),
    "outside.odt": (odt(OUTSIDE + in_odt("<text:p>&a;</text:p>")), "document type"),
    "deep.docx": (docx(in_docx("<w:p>" * 400_000 + "</w:p>" * 400_000)), "nests deeper"),
    "deep.odt": (odt(in_odt("<text:section>" * 300_000 + "</text:section>" * 300_000)), "nests deeper"),
    "no-xml.docx": (docx("We count limpets."), "no XML"),
    "no-body.docx": (docx(f"<w:document {W}/>"), "no text document"),
    "path.docx": (docx(in_docx(PARAGRAPH), main="word/document.xml").replace(
        b"word/document.xml", b"../../etc/passwd/"), "no text document"),
    "sheet.ods": (archive({"mimetype": "application/vnd.oasis.opendocument.spreadsheet",
                           "content.xml": in_odt("")}), "no DOCX or ODT"),
    "locked.odt": (archive({"mimetype": "application/vnd.oasis.opendocument.text",
                            "META-INF/manifest.xml": "<manifest:encryption-data/>",
                            "content.xml": b"\x00\x01"}), "password"),
    "empty.docx": (b"", "no text document"),
    "old.doc": (b"\xD0\xCF\x11\xE0" + b"\0" * 600, "old DOC"),
    "page.pdf": (b"%PDF-1.7\n", "PDF"),
    "letter.rtf": (b"{\\rtf1 hello}", "RTF"),
    "page.html": (b"<!doctype HTML><p>hello", "web page"),
    "zeros.txt": (b"We count\0\0\0\0 limpets.", "zero byte"),
    "empty.txt": (b" \n\n", "no words"),
    "large.txt": (b"limpet " * 1_300_000, "larger than 8 MiB"),
    "large.md": (b"limpet " * 330_000, "larger than 2 MiB"),
    "huge.docx": (b"PK" + b"\0" * (65 << 20), "larger than 64 MiB"),
    "none.vtt": (b"WEBVTT\n\n", "no captions"),
}

# Read, within the same bounds: the tree of one full part, many entries, inputs that slow parsers.
READ = {
    "tags.docx": docx(in_docx(PARAGRAPH + "<w:r/>" * 2_700_000)),
    "entries.docx": archive({"[Content_Types].xml": TYPES, "_rels/.rels": RELS.format("word/document.xml"),
                             "word/document.xml": in_docx(PARAGRAPH),
                             **{f"{i:x}": b"" for i in range(200_000)}}, zipfile.ZIP_STORED),
    "quotes.md": b"> " * 50_000 + b"limpets",
    "stars.md": b"*a **b " * 20_000,
    "brackets.md": b"[" * 100_000 + b"limpets",
    "links.md": b"[a](" * 30_000,
    "stars.txt": b"limpets " + b"*" * 200_000,
    "ticks.txt": b"` `` ``` " * 10_000,
    "marks.txt": b"*a* ^b [c] {d} <e> >f< (.) (1.5) / // xx " * 5_000,
    "line.txt": b"limpets " * 100_000,
}

GOOD = {
    "cut.docx": docx(in_docx(PARAGRAPH * 20)),
    "cut.odt": odt(in_odt("<text:p>We count <text:span>limpets</text:span>.</text:p>" * 20)),
    "cut.vtt": "WEBVTT\n\n00:01.000 --> 00:02.000\n<v MIRA>We <i>count</i> &amp; write.\n\nNOTE x\n".encode(),
    "cut.srt": "1\n00:00:01,000 --> 00:00:02,000\n>> JO: Café!\n".encode(),
    "cut.md": "---\ntitle: a\n---\n# H\n\n- *a* <!-- é --> [b](c)\n\n```\nd\n```\n".encode(),
    "cut.txt": "We count [é] {x} “limpets” 1. \\* `a`".encode("utf-16"),
}

# What is said of a draft that was read: its encoding, and words whose times were cut off.
TOLD = (b"read as", b"its words stay")


def limited():
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))


def starts_limited():
    """A build with an address sanitizer maps far more than it uses: it runs without the bounds."""
    return subprocess.run([PROGRAM, "--version"], capture_output=True, check=False,
                          preexec_fn=limited).returncode == 0


BOUNDS = limited if starts_limited() else None


def run(file):
    return subprocess.run([PROGRAM, "import", file], capture_output=True, timeout=240, check=False,
                          preexec_fn=BOUNDS)


def main():
    checks = makers.Checks()
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        for name, (data, sentence) in REFUSED.items():
            file = folder / name
            file.write_bytes(data)
            done = run(file)
            told = done.stderr.decode()
            checks.holds(f"{name}: {done.returncode} {told}",
                         done.returncode == 2 and sentence in told and told.count("\n") == 1 and
                         told.startswith(str(file)) and not done.stdout)
        for name, data in READ.items():
            file = folder / name
            file.write_bytes(data)
            done = run(file)
            checks.holds(f"{name}: {done.returncode} {done.stderr[:200]}",
                         done.returncode == 0 and done.stdout)
        for name, data in GOOD.items():
            file = folder / name
            for size in range(0, len(data) + 1, max(1, len(data) // 60)):
                file.write_bytes(data[:size])
                done = run(file)
                checks.holds(f"{name} cut at {size}: {done.returncode} {done.stderr!r}",
                             done.returncode in (0, 2) and (done.returncode == 0) != bool(
                                 done.stderr and not any(told in done.stderr for told in TOLD)))
        used = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
        print("within bounds" if BOUNDS else "without bounds: the program does not start in them")
        print(f"the most memory that one took: {used >> 10} MiB")
    checks.finish()


main()
