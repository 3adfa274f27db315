# What may be renamed; an editor that asks first is told so.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"textDocument": {"rename": {"prepareSupport": true}},
    "general": {"positionEncodings": ["utf-8"]}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\r\nspeakers: MIRA, 🐚\r\n---\r\n# Hello (0:05)\r\n\r\n🐚: Every *spring* we walk.\r\n\r\nMIRA AND 🐚: >You need< no boat. [smile]\r\n\r\nMIRA: [smile] So.\r\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/prepareRename",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 7,
    "character": 10}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"placeholder": "🐚", "range": {"end": {"character": 13,
    "line": 7}, "start": {"character": 9, "line": 7}}}}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/prepareRename",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 3,
    "character": 13}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/prepareRename",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 3,
    "character": 7}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"placeholder": "Hello", "range": {"end": {"character": 7,
    "line": 3}, "start": {"character": 2, "line": 3}}}}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/prepareRename",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 6}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": null}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
