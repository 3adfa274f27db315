# A client that offers nothing we know gets utf-16, which every client can do.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"general": {"positionEncodings": ["utf-7"]}}}}
<-- {"id": 0, "jsonrpc": "2.0", "result": {"capabilities": {…"positionEncoding": "utf-16", …
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
