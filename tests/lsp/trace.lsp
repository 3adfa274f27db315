# With trace on, each answer is followed by a line about it.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "Go."}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "$/setTrace", "params": {"value": "messages"}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, …}
<-- {"jsonrpc": "2.0", "method": "$/logTrace",
    "params": {"message": "sayline/times on version 1: … ms"}}
--> {"jsonrpc": "2.0", "method": "$/setTrace", "params": {"value": "off"}}
--> {"jsonrpc": "2.0", "id": 2, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 2, …}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
