# Unknown requests are answered, unknown notifications and $/ notifications passed over.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "tide/turned", "params": {"at": "6:12"}}
--> {"jsonrpc": "2.0", "method": "$/tide"}
--> {"jsonrpc": "2.0", "id": 1, "method": "tide/times"}
<-- ?
--> {"jsonrpc": "2.0", "id": 2, "method": "$/tide", "params": {}}
<-- ?
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/didOpen", "params": {}}
<-- ?
--> {"jsonrpc": "2.0", "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0, "character": 0}}}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0, "character": 0}}}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
