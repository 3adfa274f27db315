# A client that asks for tooltips one by one gets them so.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null,
    "capabilities": {"textDocument": {"inlayHint": {"resolveSupport": {"properties": ["tooltip"]}}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "[wait 4s]\n\nWe count limpets.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/inlayHint",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 0}, "end": {"line": 9, "character": 0}}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"data": {"uri": "file:///tide/pool.say"},
    "label": " 4.0 s", "paddingLeft": true, "position": {"character": 9, "line": 0}},
    {"data": {"uri": "file:///tide/pool.say"}, "label": " 1.0 s", "paddingLeft": true,
    "position": {"character": 17, "line": 2}}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "inlayHint/resolve", "params": {"position": {"line": 0,
    "character": 9}, "label": "4.0 s", "paddingLeft": true,
    "data": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"data": {"uri": "file:///tide/pool.say"},
    "label": "4.0 s", "paddingLeft": true, "position": {"character": 9, "line": 0},
    "tooltip": "between 4.0 s and 4.0 s; from 0:00 to 0:04"}}

# Nothing ends there: the hint comes back as it was.
--> {"jsonrpc": "2.0", "id": 3, "method": "inlayHint/resolve", "params": {"position": {"line": 2,
    "character": 2}, "label": "4.0 s", "data": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"data": {"uri": "file:///tide/pool.say"},
    "label": "4.0 s", "position": {"character": 2, "line": 2}}}

# A hint that was not ours.
--> {"jsonrpc": "2.0", "id": 4, "method": "inlayHint/resolve", "params": {"position": {"line": 0,
    "character": 9}, "label": "4.0 s"}}
<-- {"error": {"code": -32602, "message": "data.uri: missing"}, "id": 4, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 5, "method": "inlayHint/resolve", "params": {"position": {"line": 0,
    "character": 9}, "label": "4.0 s", "data": {"uri": "file:///tide/other.say"}}}
<-- {"error": {"code": -32602, "message": "textDocument.uri: file:///tide/other.say is not open"},
    "id": 5, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
