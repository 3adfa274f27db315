# Both ends of a mark, the uses of a speaker and of a direction, nothing on a word.

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
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/documentHighlight",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 10}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"kind": 1, "range": {"end": {"character": 11,
    "line": 5}, "start": {"character": 10, "line": 5}}}, {"kind": 1,
    "range": {"end": {"character": 18, "line": 5}, "start": {"character": 17, "line": 5}}}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/documentHighlight",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 7,
    "character": 10}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": [{"kind": 3, "range": {"end": {"character": 18,
    "line": 1}, "start": {"character": 16, "line": 1}}}, {"kind": 2,
    "range": {"end": {"character": 2, "line": 5}, "start": {"character": 0, "line": 5}}},
    {"kind": 2, "range": {"end": {"character": 11, "line": 7}, "start": {"character": 9,
    "line": 7}}}]}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/documentHighlight",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 9,
    "character": 8}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": [{"kind": 2, "range": {"end": {"character": 40,
    "line": 7}, "start": {"character": 33, "line": 7}}}, {"kind": 2,
    "range": {"end": {"character": 13, "line": 9}, "start": {"character": 6, "line": 9}}}]}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/documentHighlight",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 6}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": null}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
