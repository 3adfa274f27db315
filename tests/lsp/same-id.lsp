# An id may be used again once it was answered, and not before.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "The tide is out."}}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"error": {"code": -32600, "message": "a request with this id still waits"}, "id": 1,
    "jsonrpc": "2.0"}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"high": 1.2, "low": 0.58, "off": 0.0, "schema": 1,
    "seconds": 0.89, "sections": [], "target": null, "words": 4}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"high": …, "low": …, "off": …, "schema": 1, "seconds": …,
    "sections": [], "target": null, "words": 4}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
