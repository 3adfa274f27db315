# Unknown requests are answered, unknown notifications and $/ notifications passed over.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "tide/turned", "params": {"at": "6:12"}}
--> {"jsonrpc": "2.0", "method": "$/tide"}
--> {"jsonrpc": "2.0", "id": 1, "method": "tide/times"}
<-- {"error": {"code": -32601, "message": "no method tide/times"}, "id": 1, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 2, "method": "$/tide", "params": {}}
<-- {"error": {"code": -32601, "message": "no method $/tide"}, "id": 2, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/didOpen", "params": {}}
<-- {"error": {"code": -32600, "message": "textDocument/didOpen is a notification and has no id"},
    "id": 3, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}
<-- {"error": {"code": -32602, "message": "textDocument.uri: file:///tide/pool.say is not open"},
    "id": 4, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
