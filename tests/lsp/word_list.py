#!/usr/bin/env python3
"""What the server writes into a project's word list, read by another program: Python's own XML reader.

    word_list.py SAYLINE
"""

import pathlib
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

from transcript import Client

PLS = "{http://www.w3.org/2005/01/pronunciation-lexicon}"
SCRIPT = "The R\\&D team of Renée{ruh-NAY} meets Krill Bay{KRIHL BAY}.\n"


def at(column):
    return {"start": {"line": 0, "character": column}, "end": {"line": 0, "character": column}}


def lessons(client, uri, column, id):
    answer = client.request(id, "textDocument/codeAction", {
        "textDocument": {"uri": uri}, "range": at(column), "context": {"diagnostics": []}})
    return [action for action in answer["result"] if "for the project" in action["title"]]


def main():
    with tempfile.TemporaryDirectory() as folder:
        uri = (pathlib.Path(folder) / "pool.say").as_uri()
        client = Client([sys.argv[1], "serve"])
        client.request(1, "initialize", {"processId": None, "rootUri": None, "capabilities": {
            "textDocument": {"codeAction": {"codeActionLiteralSupport": {}}},
            "workspace": {"workspaceEdit": {"documentChanges": True, "resourceOperations": ["create"]}}}})
        client.send({"jsonrpc": "2.0", "method": "initialized", "params": {}},
                    {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {
                        "uri": uri, "languageId": "sayline", "version": 1, "text": SCRIPT}}})
        found = {}
        for id, word in ((2, "Renée"), (3, "Bay")):
            [action] = lessons(client, uri, SCRIPT.index(word) + 1, id)
            create, change = action["edit"]["documentChanges"]
            assert create["kind"] == "create" and create["uri"].endswith("/.sayline/words.pls"), create
            root = ElementTree.fromstring(change["edits"][0]["newText"].encode())
            assert root.tag == PLS + "lexicon" and root.get("alphabet") == "ipa", root.attrib
            [lexeme] = root
            found[lexeme.findtext(PLS + "grapheme")] = lexeme.findtext(PLS + "phoneme")
        assert found == {"Renée": "ɹəˈneɪ", "Krill Bay": "kɹɪl beɪ"}, found
        client.request(9, "shutdown")
        client.send({"jsonrpc": "2.0", "method": "exit"})
        client.process.wait(10)


main()
