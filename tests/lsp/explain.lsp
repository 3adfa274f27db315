# sayline/explain: a thought under the cursor, or all of them.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "Go now.\n\nStop.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/explain",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 1}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{…"place": {"line": 1, "section": "", "speaker": ""},
    "schema": 1, …"spoken": "go now", "text": "Go now.", …}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "sayline/explain",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": [{…"place": {"line": 1, "section": "", "speaker": ""},
    "schema": 1, …"spoken": "go now", "text": "Go now.", …}, {…"place": {"line": 2, "section": "",
    "speaker": ""}, "schema": 1, …"spoken": "", "text": "", …}, {…"place": {"line": 3,
    "section": "", "speaker": ""}, "schema": 1, …"spoken": "stop", "text": "Stop.", …}]}
--> {"jsonrpc": "2.0", "id": 3, "method": "sayline/explain",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 1,
    "character": 0}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": []}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
