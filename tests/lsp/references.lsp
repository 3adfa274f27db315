# Uses of a speaker with and without the header, of a direction, of a section; none of a word.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\r\nspeakers: MIRA, 🐚\r\n---\r\n# Hello (0:05)\r\n\r\n🐚: Every *spring* we walk.\r\n\r\nMIRA AND 🐚: >You need< no boat. [smile]\r\n\r\nMIRA: [smile] So.\r\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/references",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 7,
    "character": 2}, "context": {"includeDeclaration": true}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"range": {"end": {"character": 14, "line": 1},
    "start": {"character": 10, "line": 1}}, "uri": "file:///tide/pool.say"},
    {"range": {"end": {"character": 4, "line": 7}, "start": {"character": 0, "line": 7}},
    "uri": "file:///tide/pool.say"}, {"range": {"end": {"character": 4, "line": 9},
    "start": {"character": 0, "line": 9}}, "uri": "file:///tide/pool.say"}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/references",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 7,
    "character": 2}, "context": {"includeDeclaration": false}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": [{"range": {"end": {"character": 4, "line": 7},
    "start": {"character": 0, "line": 7}}, "uri": "file:///tide/pool.say"},
    {"range": {"end": {"character": 4, "line": 9}, "start": {"character": 0, "line": 9}},
    "uri": "file:///tide/pool.say"}]}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/references",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 9,
    "character": 8}, "context": {"includeDeclaration": false}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": [{"range": {"end": {"character": 40, "line": 7},
    "start": {"character": 33, "line": 7}}, "uri": "file:///tide/pool.say"},
    {"range": {"end": {"character": 13, "line": 9}, "start": {"character": 6, "line": 9}},
    "uri": "file:///tide/pool.say"}]}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/references",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 3,
    "character": 3}, "context": {"includeDeclaration": true}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": [{"range": {"end": {"character": 7, "line": 3},
    "start": {"character": 2, "line": 3}}, "uri": "file:///tide/pool.say"}]}
--> {"jsonrpc": "2.0", "id": 5, "method": "textDocument/references",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 6}, "context": {"includeDeclaration": true}}}
<-- {"id": 5, "jsonrpc": "2.0", "result": null}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
