# One chain a position: word, marks, phrase, breath, thought, section, script.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\ntitle: Counting limpets\ntarget: 0:20 max\nspeakers: MIRA, JO\n---\n# Hello (0:05)\n\nMIRA: Every spring we walk the *same* stretch of shore /\nwith a square of string 🐚.\n\n% The pool by the slipway\n% is the easiest one.\n\nJO: You do not need a boat.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "unspoken-sign", "message": "“🐚” is not spoken",
    "range": {"end": {"character": 26, "line": 8}, "start": {"character": 24, "line": 8}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/selectionRange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "positions": [{"line": 7,
    "character": 33}, {"line": 6, "character": 0}]}}
<-- {"id": 1, "jsonrpc": "2.0",
    "result": [{"parent": {"parent": {"parent": {"parent": {"parent": {"parent": {"range": {"end": {"character": 0,
    "line": 14}, "start": {"character": 0, "line": 0}}}, "range": {"end": {"character": 0,
    "line": 14}, "start": {"character": 0, "line": 5}}}, "range": {"end": {"character": 27,
    "line": 8}, "start": {"character": 0, "line": 7}}}, "range": {"end": {"character": 27,
    "line": 8}, "start": {"character": 6, "line": 7}}}, "range": {"end": {"character": 54,
    "line": 7}, "start": {"character": 6, "line": 7}}}, "range": {"end": {"character": 37,
    "line": 7}, "start": {"character": 31, "line": 7}}}, "range": {"end": {"character": 36,
    "line": 7}, "start": {"character": 32, "line": 7}}},
    {"parent": {"range": {"end": {"character": 0, "line": 14}, "start": {"character": 0,
    "line": 0}}}, "range": {"end": {"character": 0, "line": 14}, "start": {"character": 0,
    "line": 5}}}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/selectionRange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "positions": []}}
<-- {"id": 2, "jsonrpc": "2.0", "result": []}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
