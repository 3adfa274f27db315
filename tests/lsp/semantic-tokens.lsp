# Colours of the whole script and of a range.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\ntitle: Counting limpets\ntarget: 0:20 max\nspeakers: MIRA, JO\n---\n# Hello (0:05)\n\nMIRA: Every spring we walk the *same* stretch of shore / with a square of string.\n\nJO: You do not need a boat.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/semanticTokens/full",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"data": [1, 0, 5, 1, 0, 0, 7, 16, 2, 0, 1, 0, 6, 1, 0, 0,
    8, 8, 2, 0, 1, 0, 8, 1, 0, 0, 10, 8, 2, 0, 2, 0, 14, 0, 0, 2, 0, 5, 3, 0, 0, 31, 1, 6, 1, 0, 1,
    4, 7, 1, 0, 4, 1, 6, 1, 0, 19, 1, 6, 0, 2, 0, 3, 3, 0], "resultId": "419dade76934a191"}}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/semanticTokens/range",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 7,
    "character": 0}, "end": {"line": 8, "character": 0}}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"data": [7, 0, 5, 3, 0, 0, 31, 1, 6, 1, 0, 1, 4, 7, 1, 0,
    4, 1, 6, 1, 0, 19, 1, 6, 0]}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
