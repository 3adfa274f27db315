# sayline/export: the script in another form, as an editor saves it.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\nspeakers: MIRA, JO\n---\n\nMIRA: Every spring we walk the *same* stretch of shore with a square of string.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/export",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "target": "srt"}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"target": "srt",
    "text": "1\n00:00:00,000 --> 00:00:04,173\nMIRA: Every spring we walk the same\nstretch of shore with a square of string.\n\n"}}
--> {"jsonrpc": "2.0", "id": 2, "method": "sayline/export",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "target": "srt", "columns": 32}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"target": "srt",
    "text": "1\n00:00:00,000 --> 00:00:02,307\nMIRA: Every spring we walk\nthe same stretch of shore\n\n2\n00:00:02,391 --> 00:00:04,391\nwith a square of string.\n\n"}}
--> {"jsonrpc": "2.0", "id": 3, "method": "sayline/export",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "target": "pdf"}}
<-- {"error": {"code": -32803,
    "message": "\"pdf\" is no target; there are vtt, …"}, "id": 3,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 4, "method": "sayline/export",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"error": {"code": -32602, "message": "target: missing"}, "id": 4, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
