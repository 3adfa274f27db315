# What is no message is answered with an error that names no request, and the stream goes on.
# Sources: JSON-RPC 2.0, sections 4 and 5; RFC 8259.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
raw> Content-Length: 9\r\n\r\n{"tide": 
<-- ?
raw> Content-Length: 0\r\n\r\n
<-- ?
raw> Content-Length: 5\r\n\r\n"low"
<-- ?
--> 17
<-- ?
--> null
<-- ?
--> []
<-- ?
--> [{"jsonrpc": "2.0", "id": 1, "method": "shutdown"}]
<-- ?
--> {"jsonrpc": "2.0"}
<-- ?
--> {"jsonrpc": "2.0", "id": 2}
<-- ?
--> {"jsonrpc": "2.0", "id": 3, "method": 4}
<-- ?
--> {"jsonrpc": "1.0", "id": 4, "method": "shutdown"}
<-- ?
--> {"id": 5, "method": "shutdown"}
<-- ?
--> {"jsonrpc": "2.0", "id": null, "method": "shutdown"}
<-- ?
--> {"jsonrpc": "2.0", "id": 1.5, "method": "shutdown"}
<-- ?
--> {"jsonrpc": "2.0", "id": {}, "method": "shutdown"}
<-- ?
# An answer to a question that nobody asked.
--> {"jsonrpc": "2.0", "id": 77, "result": null}
# Bytes that are not UTF-8, then a NUL inside a string.
raw> Content-Length: 6\r\n\r\n"\xff\xfe "
<-- ?
raw> Content-Length: 5\r\n\r\n"\x00 "
<-- ?
# Two of a kind: the last counts.
--> {"jsonrpc": "2.0", "id": 5, "id": 6, "method": "tide/one", "method": "tide/two"}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
