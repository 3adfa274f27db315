# A client without snippets and markdown gets plain text and the oldest kinds.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "---\nta\n---\n"}}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/completion",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 1,
    "character": 2}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"isIncomplete": false,
    "items": [{"detail": "What the script is called.", "documentation": {"kind": "plaintext",
    "value": "What the script is called.\n\ntitle: Counting limpets"}, "insertTextFormat": 1,
    "kind": 10, "label": "title", "sortText": "1001", "textEdit": {"newText": "title: ",
    "range": {"end": {"character": 2, "line": 1}, "start": {"character": 0, "line": 1}}}},
    {"detail": "Whose pace the times are for: a name in .sayline/readers.",
    "documentation": {"kind": "plaintext",
    "value": "Whose pace the times are for: a name in .sayline/readers.\n\nreader: mira"},
    "insertTextFormat": 1, "kind": 10, "label": "reader", "sortText": "1002",
    "textEdit": {"newText": "reader: ", "range": {"end": {"character": 2, "line": 1},
    "start": {"character": 0, "line": 1}}}},
    {"detail": "A speed on top of the reader's own, or words a minute in its place.",
    "documentation": {"kind": "plaintext",
    "value": "A speed on top of the reader's own, or words a minute in its place.\n\npace: 1.1x"},
    "insertTextFormat": 1, "kind": 10, "label": "pace", "sortText": "1003",
    "textEdit": {"newText": "pace: ", "range": {"end": {"character": 2, "line": 1},
    "start": {"character": 0, "line": 1}}}}, {"detail": "How long the script may run.",
    "documentation": {"kind": "plaintext",
    "value": "How long the script may run.\n\ntarget: 2:30 max"}, "insertTextFormat": 1, "kind": 10,
    "label": "target", "sortText": "1004", "textEdit": {"newText": "target: ",
    "range": {"end": {"character": 2, "line": 1}, "start": {"character": 0, "line": 1}}}},
    {"detail": "Who speaks, each with a reader if you like.", "documentation": {"kind": "plaintext",
    "value": "Who speaks, each with a reader if you like.\n\nspeakers: MIRA=mira, JO"},
    "insertTextFormat": 1, "kind": 10, "label": "speakers", "sortText": "1005",
    "textEdit": {"newText": "speakers: ", "range": {"end": {"character": 2, "line": 1},
    "start": {"character": 0, "line": 1}}}},
    {"detail": "How far the script is: draft, mark or read.", "documentation": {"kind": "plaintext",
    "value": "How far the script is: draft, mark or read.\n\nstage: mark"}, "insertTextFormat": 1,
    "kind": 10, "label": "stage", "sortText": "1006", "textEdit": {"newText": "stage: ",
    "range": {"end": {"character": 2, "line": 1}, "start": {"character": 0, "line": 1}}}},
    {"detail": "The language as a BCP 47 tag.", "documentation": {"kind": "plaintext",
    "value": "The language as a BCP 47 tag.\n\nlanguage: en-GB"}, "insertTextFormat": 1, "kind": 10,
    "label": "language", "sortText": "1007", "textEdit": {"newText": "language: ",
    "range": {"end": {"character": 2, "line": 1}, "start": {"character": 0, "line": 1}}}},
    {"detail": "Rules that stay silent in this script.", "documentation": {"kind": "plaintext",
    "value": "Rules that stay silent in this script.\n\nallow: long-sentence"},
    "insertTextFormat": 1, "kind": 10, "label": "allow", "sortText": "1008",
    "textEdit": {"newText": "allow: ", "range": {"end": {"character": 2, "line": 1},
    "start": {"character": 0, "line": 1}}}}, {"detail": "When it is read.",
    "documentation": {"kind": "plaintext", "value": "When it is read.\n\ndate: 2027-04-12"},
    "insertTextFormat": 1, "kind": 10, "label": "date", "sortText": "1009",
    "textEdit": {"newText": "date: ", "range": {"end": {"character": 2, "line": 1},
    "start": {"character": 0, "line": 1}}}}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
