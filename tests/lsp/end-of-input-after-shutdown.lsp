# The input ends after shutdown: status 0.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}

--> {"jsonrpc": "2.0", "id": 1, "method": "shutdown"}
<-- {"id": 1, "jsonrpc": "2.0", "result": null}
