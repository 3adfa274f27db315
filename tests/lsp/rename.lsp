# Speakers and sections; a name that changes how a line is read, a word, and a direction are refused.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"workspace": {"workspaceEdit": {"documentChanges": true}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\r\nspeakers: MIRA, 🐚\r\n---\r\n# Hello (0:05)\r\n\r\n🐚: Every *spring* we walk.\r\n\r\nMIRA AND 🐚: >You need< no boat. [smile]\r\n\r\nMIRA: [smile] So.\r\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/rename",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 1}, "newName": "JO"}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"documentChanges": [{"edits": [{"newText": "JO",
    "range": {"end": {"character": 18, "line": 1}, "start": {"character": 16, "line": 1}}},
    {"newText": "JO", "range": {"end": {"character": 2, "line": 5}, "start": {"character": 0,
    "line": 5}}}, {"newText": "JO", "range": {"end": {"character": 11, "line": 7},
    "start": {"character": 9, "line": 7}}}], "textDocument": {"uri": "file:///tide/pool.say",
    "version": 1}}]}}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/rename",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 3,
    "character": 4}, "newName": "Low water 🐚"}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"documentChanges": [{"edits": [{"newText": "Low water 🐚",
    "range": {"end": {"character": 7, "line": 3}, "start": {"character": 2, "line": 3}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 1}}]}}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/rename",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 1}, "newName": "MIRA"}}
<-- {"error": {"code": -32803, "message": "MIRA is a speaker already"}, "id": 3, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/rename",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 6}, "newName": "some"}}
<-- {"error": {"code": -32803, "message": "only speakers and sections have a name to change"},
    "id": 4, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 5, "method": "textDocument/rename",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 9,
    "character": 8}, "newName": "laugh"}}
<-- {"error": {"code": -32803, "message": "only speakers and sections have a name to change"},
    "id": 5, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
