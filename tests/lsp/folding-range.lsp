# Header, section, thought and note; the end column is in UTF-16.

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
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/foldingRange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"endCharacter": 3, "endLine": 4, "startLine": 0},
    {"endCharacter": 27, "endLine": 13, "startLine": 5}, {"endCharacter": 27, "endLine": 8,
    "startLine": 7}, {"endCharacter": 21, "endLine": 11, "kind": "comment", "startLine": 10}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
