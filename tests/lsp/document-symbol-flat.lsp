# The same for a client that knows no tree.

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
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/documentSymbol",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"kind": 3,
    "location": {"range": {"end": {"character": 0, "line": 10}, "start": {"character": 0,
    "line": 5}}, "uri": "file:///tide/pool.say"}, "name": "Hello"}, {"containerName": "Hello",
    "kind": 15, "location": {"range": {"end": {"character": 81, "line": 7},
    "start": {"character": 0, "line": 7}}, "uri": "file:///tide/pool.say"},
    "name": "Every spring we walk the same …"}, {"containerName": "Hello", "kind": 15,
    "location": {"range": {"end": {"character": 27, "line": 9}, "start": {"character": 0,
    "line": 9}}, "uri": "file:///tide/pool.say"}, "name": "You do not need a boat"}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
