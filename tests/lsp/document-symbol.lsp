# Script, sections and thoughts with their times.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null,
    "capabilities": {"textDocument": {"documentSymbol": {"hierarchicalDocumentSymbolSupport": true}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\ntitle: Counting limpets\ntarget: 0:20 max\nspeakers: MIRA, JO\n---\n# Hello (0:05)\n\nMIRA: Every spring we walk the *same* stretch of shore / with a square of string.\n\nJO: You do not need a boat.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/documentSymbol",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"children": [{"detail": "… s", "kind": 15,
    "name": "Every spring we walk the same …", "range": {"end": {"character": 81, "line": 7},
    "start": {"character": 0, "line": 7}}, "selectionRange": {"end": {"character": 81, "line": 7},
    "start": {"character": 0, "line": 7}}}, {"detail": "… s", "kind": 15,
    "name": "You do not need a boat", "range": {"end": {"character": 27, "line": 9},
    "start": {"character": 0, "line": 9}}, "selectionRange": {"end": {"character": 27, "line": 9},
    "start": {"character": 0, "line": 9}}}], "detail": "… of 0:05", "kind": 3, "name": "Hello",
    "range": {"end": {"character": 0, "line": 10}, "start": {"character": 0, "line": 5}},
    "selectionRange": {"end": {"character": 14, "line": 5}, "start": {"character": 0, "line": 5}}}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
