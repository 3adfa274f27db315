# Headers in any case and order, blanks left out, several messages in one piece.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
raw> content-length:49\r\nX-Tide: low\r\n\r\n{"jsonrpc": "2.0", "id": 1, "method": "tide/one"}
raw> CONTENT-TYPE: application/vscode-jsonrpc;charset=utf8\r\nContent-Length: 49\r\n\r\n{"jsonrpc": "2.0", "id": 2, "method": "tide/two"}
<-- {"error": {"code": -32601, "message": "no method tide/one"}, "id": 1, "jsonrpc": "2.0"}
<-- {"error": {"code": -32601, "message": "no method tide/two"}, "id": 2, "jsonrpc": "2.0"}
raw> Content-Length: 2\r\nContent-Type: text/plain; charset=latin1\r\n\r\n{}
<-- {"error": {"code": -32600, "message": "charset latin1 is not supported, only utf-8"},
    "id": null, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
