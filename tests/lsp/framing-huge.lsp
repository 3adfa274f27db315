# A header that does not say where the next message begins ends the session: status 1.

status> 1
--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
raw> Content-Length: 99999999999999999999\r\n\r\n{}
<-- {"error": {"code": -32700,
    "message": "Content-Length 99999999999999999999 is above the limit of 268435456"}, "id": null,
    "jsonrpc": "2.0"}
