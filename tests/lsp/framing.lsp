# Headers in any case and order, blanks left out, several messages in one piece.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
raw> content-length:48\r\nX-Tide: low\r\n\r\n{"jsonrpc": "2.0", "id": 1, "method": "tide/one"}
raw> CONTENT-TYPE: application/vscode-jsonrpc;charset=utf8\r\nContent-Length: 48\r\n\r\n{"jsonrpc": "2.0", "id": 2, "method": "tide/two"}
<-- ?
raw> Content-Length: 2\r\nContent-Type: text/plain; charset=latin1\r\n\r\n{}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
