# Ends that read the same are linked, others are not.

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
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/linkedEditingRange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 11}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"ranges": [{"end": {"character": 11, "line": 5},
    "start": {"character": 10, "line": 5}}, {"end": {"character": 18, "line": 5},
    "start": {"character": 17, "line": 5}}], "wordPattern": "^(?:\\*{0,3}|_{0,2})$"}}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/linkedEditingRange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 7,
    "character": 13}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/linkedEditingRange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 6}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": null}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
