#!/usr/bin/env python3
"""DOCX and ODT files from two independent makers each, with all that a draft may hold.

    documents.py PROGRAM FOLDER

DOCX: python-docx (PyPI) and docx (npm). ODT: odfpy and odfdo (PyPI). What they write is the same
draft, so that it must become the same script.
"""
import pathlib
import subprocess
import sys
import tempfile

import makers

PROGRAM = pathlib.Path(sys.argv[1]).resolve()
FOLDER = makers.install(pathlib.Path(sys.argv[2]).resolve())

SCRIPT = """---
title: Counting limpets
---

# Hello

If you can count to **ten** you can *help* us.

All of this long paragraph is bold.

## What you carry

- a metre of *string*
- a pencil

1. walk to the rock
2. count

% Ana: is that so?
Write \\[the name] down: Patella, this \\/ that one.
"""

NODE_DOCX = r"""
const fs = require('fs');
const d = require('docx');
const run = (text, more) => new d.TextRun(Object.assign({text}, more));
const p = (children, more) => new d.Paragraph(Object.assign({children}, more));
const list = (text, reference, more) => p([].concat(text), {numbering: {reference, level: 0}});
const numbering = {config: [
  {reference: 'count', levels: [{level: 0, format: d.LevelFormat.DECIMAL, text: '%1.'}]},
  {reference: 'dot', levels: [{level: 0, format: d.LevelFormat.BULLET, text: '•'}]}]};
const document = new d.Document({
  title: 'Counting limpets', numbering,
  comments: {children: [{id: 0, author: 'Ana', date: new Date(0), children: [p([run('is that so?')])]}]},
  sections: [{children: [
    p([run('Hello')], {heading: d.HeadingLevel.HEADING_1}),
    p([run('If you can count to '), run('ten', {bold: true}), run(' you can '),
       run('help', {italics: true}), run(' us.')]),
    p([run('All of this long paragraph is bold.', {bold: true})]),
    p([run('What you carry')], {heading: d.HeadingLevel.HEADING_2}),
    list([run('a metre of '), run('string', {underline: {}})], 'dot'), list(run('a pencil'), 'dot'),
    list(run('walk to the rock'), 'count'), list(run('count'), 'count'),
    p([new d.CommentRangeStart(0), run('Write [the name] down: Patella, this / that one.'),
       new d.CommentRangeEnd(0), new d.TextRun({children: [new d.CommentReference(0)]})]),
  ]}]});
d.Packer.toBuffer(document).then(bytes => fs.writeFileSync(process.argv[2], bytes));
"""


def python_docx(file):
    import docx
    draft = docx.Document()
    draft.core_properties.title = "Counting limpets"
    draft.add_heading("Hello", 1)
    paragraph = draft.add_paragraph("If you can count to ")
    paragraph.add_run("ten").bold = True
    paragraph.add_run(" you can ")
    paragraph.add_run("help").italic = True
    paragraph.add_run(" us.")
    draft.add_paragraph().add_run("All of this long paragraph is bold.").bold = True
    draft.add_heading("What you carry", 2)
    item = draft.add_paragraph("a metre of ", style="List Bullet")
    item.add_run("string").underline = True
    draft.add_paragraph("a pencil", style="List Bullet")
    draft.add_paragraph("walk to the rock", style="List Number")
    draft.add_paragraph("count", style="List Number")
    noted = draft.add_paragraph("Write [the name] down: Patella, this / that one.")
    draft.add_comment(noted.runs, text="is that so?", author="Ana")
    draft.save(file)


def node_docx(file):
    script = FOLDER / "make-docx.js"
    script.write_text(NODE_DOCX)
    subprocess.run(["node", script, file], check=True)


def odfpy(file):
    from odf import dc, office, style, text
    from odf.opendocument import OpenDocumentText
    draft = OpenDocumentText()
    draft.meta.addElement(dc.Title(text="Counting limpets"))

    def text_style(name, **properties):
        made = style.Style(name=name, family="text")
        made.addElement(style.TextProperties(**properties))
        draft.automaticstyles.addElement(made)
        return made
    bold = text_style("B", fontweight="bold")
    italic = text_style("I", fontstyle="italic")
    line = text_style("U", textunderlinestyle="solid")
    counting = text.ListStyle(name="Count")
    counting.addElement(text.ListLevelStyleNumber(level=1, numformat="1"))
    bullets = text.ListStyle(name="Dot")
    bullets.addElement(text.ListLevelStyleBullet(level=1, bulletchar="•"))
    draft.automaticstyles.addElement(counting)
    draft.automaticstyles.addElement(bullets)

    def paragraph(*parts):
        made = text.P()
        for part in parts:
            if isinstance(part, str):
                made.addText(part)
            else:
                made.addElement(part)
        return made

    def listed(kind, *items):
        made = text.List(stylename=kind)
        for each in items:
            item = text.ListItem()
            item.addElement(each)
            made.addElement(item)
        draft.text.addElement(made)
    draft.text.addElement(text.H(outlinelevel=1, text="Hello"))
    draft.text.addElement(paragraph(
        "If you can count to ", text.Span(stylename=bold, text="ten"), " you can ",
        text.Span(stylename=italic, text="help"), " us."))
    draft.text.addElement(paragraph(
        text.Span(stylename=bold, text="All of this long paragraph is bold.")))
    draft.text.addElement(text.H(outlinelevel=2, text="What you carry"))
    listed(bullets, paragraph("a metre of ", text.Span(stylename=line, text="string")),
           paragraph("a pencil"))
    listed(counting, paragraph("walk to the rock"), paragraph("count"))
    note = office.Annotation()
    note.addElement(dc.Creator(text="Ana"))
    note.addElement(text.P(text="is that so?"))
    draft.text.addElement(paragraph(
        "Write [the name] down:", note, " Patella, this / that one."))
    draft.save(file)


def odfdo(file):
    from odfdo import Annotation, Document, Element, Header, List, ListItem, Paragraph, Style
    draft = Document("text")
    draft.body.clear()
    draft.meta.title = "Counting limpets"
    draft.insert_style(Style("text", name="B", bold=True), automatic=True)
    draft.insert_style(Style("text", name="I", italic=True), automatic=True)
    draft.insert_style(Element.from_tag(
        '<style:style style:name="U" style:family="text">'
        '<style:text-properties style:text-underline-style="solid"/></style:style>'), automatic=True)
    draft.insert_style(Element.from_tag(
        '<text:list-style style:name="Count"><text:list-level-style-number text:level="1" '
        'style:num-format="1"/></text:list-style>'), automatic=True)
    body = draft.body
    body.append(Header(1, "Hello"))
    paragraph = Paragraph("If you can count to ten you can help us.")
    paragraph.set_span("B", regex="ten")
    paragraph.set_span("I", regex="help")
    body.append(paragraph)
    paragraph = Paragraph("All of this long paragraph is bold.")
    paragraph.set_span("B", regex="All.*")
    body.append(paragraph)
    body.append(Header(2, "What you carry"))
    string = Paragraph("a metre of string")
    string.set_span("U", regex="string")
    first = ListItem()
    first.append(string)
    bullets = List()
    bullets.append(first)
    bullets.append(ListItem("a pencil"))
    body.append(bullets)
    body.append(List(["walk to the rock", "count"], style="Count"))
    noted = Paragraph("Write [the name] down: Patella, this / that one.")
    noted.insert_annotation(Annotation("is that so?", creator="Ana"), after="down:")
    body.append(noted)
    draft.save(file)


CELLS = ["Time", "Height", "04:12", "0.6", "10:27", "4.9"]


def docx_table(file):
    import docx
    draft = docx.Document()
    table = draft.add_table(rows=3, cols=2)
    for cell, words in zip(table._cells, CELLS):
        cell.text = words
    draft.save(file)


def odt_table(file):
    import odfdo
    draft = odfdo.Document("text")
    draft.body.clear()
    table = odfdo.Table("Tides", width=2, height=3)
    for at, words in enumerate(CELLS):
        table.set_value((at % 2, at // 2), words)
    draft.body.append(table)
    draft.save(file)


# --- words that are struck out, and links ---------------------------------------------------------

LINKED = """% Struck out: never move
% Link: https://shore.example/guide
Limpets go home, says the guide.
"""

NODE_LINKED = r"""
const fs = require('fs');
const d = require('docx');
const run = (text, more) => new d.TextRun(Object.assign({text}, more));
const document = new d.Document({sections: [{children: [new d.Paragraph({children: [
  run('Limpets '), run('never move', {strike: true}), run(' go home, says '),
  new d.ExternalHyperlink({link: 'https://shore.example/guide', children: [run('the guide')]}),
  run('.')]})]}]});
d.Packer.toBuffer(document).then(bytes => fs.writeFileSync(process.argv[2], bytes));
"""


def python_docx_linked(file):
    import docx
    from docx.opc.constants import RELATIONSHIP_TYPE
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn
    draft = docx.Document()
    paragraph = draft.add_paragraph("Limpets ")
    paragraph.add_run("never move").font.double_strike = True
    paragraph.add_run(" go home, says ")
    link = OxmlElement("w:hyperlink")
    link.set(qn("r:id"), draft.part.relate_to("https://shore.example/guide", RELATIONSHIP_TYPE.HYPERLINK,
                                              is_external=True))
    link.append(paragraph.add_run("the guide")._r)
    paragraph._p.append(link)
    paragraph.add_run(".")
    draft.save(file)


def node_docx_linked(file):
    script = FOLDER / "make-linked.js"
    script.write_text(NODE_LINKED)
    subprocess.run(["node", script, file], check=True)


def odfpy_linked(file):
    from odf import style, text
    from odf.opendocument import OpenDocumentText
    draft = OpenDocumentText()
    struck = style.Style(name="S", family="text")
    struck.addElement(style.TextProperties(textlinethroughstyle="solid"))
    draft.automaticstyles.addElement(struck)
    paragraph = text.P(text="Limpets ")
    paragraph.addElement(text.Span(stylename=struck, text="never move"))
    paragraph.addText(" go home, says ")
    paragraph.addElement(text.A(href="https://shore.example/guide", text="the guide"))
    paragraph.addText(".")
    draft.text.addElement(paragraph)
    draft.save(file)


def odfdo_linked(file):
    from odfdo import Document, Element, Paragraph
    draft = Document("text")
    draft.body.clear()
    draft.insert_style(Element.from_tag(
        '<style:style style:name="S" style:family="text">'
        '<style:text-properties style:text-line-through-style="solid"/></style:style>'), automatic=True)
    paragraph = Paragraph("Limpets never move go home, says the guide.")
    paragraph.set_span("S", regex="never move")
    paragraph.set_link("https://shore.example/guide", regex="the guide")
    draft.body.append(paragraph)
    draft.save(file)


def main():
    checks = makers.Checks()
    with tempfile.TemporaryDirectory() as scratch:
        for make, ending in [(python_docx, "docx"), (node_docx, "docx"), (odfpy, "odt"), (odfdo, "odt")]:
            file = pathlib.Path(scratch) / f"{make.__name__}.{ending}"
            make(str(file))
            script, told = makers.imported(PROGRAM, file)
            checks.same(make.__name__, script, SCRIPT)
            checks.same(make.__name__, told, f"{file}: 1 of 4 stresses left out: a reader leans on "
                                             "3 words at most (“All of this long …”)\n")
            # The content tells the kind, whatever the file is called.
            other = file.with_suffix(".txt")
            file.rename(other)
            checks.same(f"{make.__name__} by content", makers.imported(PROGRAM, other)[0], SCRIPT)
        for make, ending in [(python_docx_linked, "docx"), (node_docx_linked, "docx"),
                             (odfpy_linked, "odt"), (odfdo_linked, "odt")]:
            file = pathlib.Path(scratch) / f"{make.__name__}.{ending}"
            make(str(file))
            checks.same(make.__name__, makers.imported(PROGRAM, file)[0], LINKED)
        for make, ending in [(docx_table, "docx"), (odt_table, "odt")]:
            file = pathlib.Path(scratch) / f"{make.__name__}.{ending}"
            make(str(file))
            script, told = makers.imported(PROGRAM, file)
            checks.same(make.__name__, script, "\n\n".join(CELLS) + "\n")
            checks.same(make.__name__, told, f"{file}: 1 table: its 6 cells are read one by one; say it in sentences\n")
        thoughts = makers.explained(PROGRAM, SCRIPT)
        checks.same("stressed words", [mark["name"] for thought in thoughts
                                       for mark in thought.get("marks", [])],
                    ["heavy stress", "stress", "stress"])
    checks.finish()


main()
