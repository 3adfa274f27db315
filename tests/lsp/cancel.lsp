# A request that still waits is answered RequestCancelled, once; one that is done or unknown is left alone.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "The tide is out."}}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}
--> {"jsonrpc": "2.0", "id": "two", "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}
--> {"jsonrpc": "2.0", "method": "$/cancelRequest", "params": {"id": 1}}
--> {"jsonrpc": "2.0", "method": "$/cancelRequest", "params": {"id": "two"}}
--> {"jsonrpc": "2.0", "method": "$/cancelRequest", "params": {"id": 1}}
<-- {"error": {"code": -32800, "message": "cancelled"}, "id": 1, "jsonrpc": "2.0"}
<-- {"error": {"code": -32800, "message": "cancelled"}, "id": "two", "jsonrpc": "2.0"}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "$/cancelRequest", "params": {"id": 99}}
--> {"jsonrpc": "2.0", "method": "$/cancelRequest", "params": {"id": "nobody"}}
--> {"jsonrpc": "2.0", "method": "$/cancelRequest", "params": {}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/inlayHint",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 0}, "end": {"line": 1, "character": 0}}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"label": "… s", "paddingLeft": true,
    "position": {"character": 16, "line": 0}, "tooltip": "between … s and … s; from … to …"}]}
--> {"jsonrpc": "2.0", "method": "$/cancelRequest", "params": {"id": 1}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
