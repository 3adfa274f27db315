# Seconds at the end of each thought in the range that is asked for.

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
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/inlayHint",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 0}, "end": {"line": 9, "character": 0}}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"label": "… s", "paddingLeft": true,
    "position": {"character": 81, "line": 7}, "tooltip": "between … s and … s; from … to …"}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/inlayHint",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 9,
    "character": 0}, "end": {"line": 10, "character": 0}}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": [{"label": "… s", "paddingLeft": true,
    "position": {"character": 27, "line": 9}, "tooltip": "between … s and … s; from … to …"}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
