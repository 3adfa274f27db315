# `^` offers the arrows; the text is that of now, though the request comes with the edit.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null,
    "capabilities": {"textDocument": {"completion": {"completionItem": {"snippetSupport": true,
    "documentationFormat": ["markdown"]}, "completionItemKind": {"valueSet": [1, 2, 3, 4, 5, 6, 7,
    8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25]}}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "The tide is out."}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 4}, "end": {"line": 0,
    "character": 4}}, "text": "^"}]}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/completion",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 5}, "context": {"triggerKind": 2, "triggerCharacter": "^"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"isIncomplete": false,
    "items": [{"detail": "steps up in pitch", "documentation": {"kind": "markdown",
    "value": "The reader steps up in pitch.\n\nTime: no time of its own.\n\n*X-SAMPA upstep, Jefferson transcription*"},
    "filterText": "^", "insertTextFormat": 1, "kind": 24, "label": "↑ step up", "sortText": "1001",
    "textEdit": {"newText": "↑", "range": {"end": {"character": 5, "line": 0},
    "start": {"character": 4, "line": 0}}}}, {"detail": "steps down in pitch",
    "documentation": {"kind": "markdown",
    "value": "The reader steps down in pitch.\n\nTime: no time of its own.\n\n*Jefferson transcription*"},
    "filterText": "^", "insertTextFormat": 1, "kind": 24, "label": "↓ step down",
    "sortText": "1002", "textEdit": {"newText": "↓", "range": {"end": {"character": 5, "line": 0},
    "start": {"character": 4, "line": 0}}}}, {"detail": "lets the tune rise at the end",
    "documentation": {"kind": "markdown",
    "value": "The reader lets the tune rise at the end.\n\nTime: no time of its own.\n\n*IPA global rise*"},
    "filterText": "^", "insertTextFormat": 1, "kind": 24, "label": "↗ end up", "sortText": "1003",
    "textEdit": {"newText": "↗", "range": {"end": {"character": 5, "line": 0},
    "start": {"character": 4, "line": 0}}}}, {"detail": "lets the tune fall at the end",
    "documentation": {"kind": "markdown",
    "value": "The reader lets the tune fall at the end.\n\nTime: no time of its own.\n\n*IPA global fall*"},
    "filterText": "^", "insertTextFormat": 1, "kind": 24, "label": "↘ end down", "sortText": "1004",
    "textEdit": {"newText": "↘", "range": {"end": {"character": 5, "line": 0},
    "start": {"character": 4, "line": 0}}}}]}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
