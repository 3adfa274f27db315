# What is no message is answered with an error that names no request, and the stream goes on.
# Sources: JSON-RPC 2.0, sections 4 and 5; RFC 8259.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
raw> Content-Length: 9\r\n\r\n{"tide": 
<-- {"error": {"code": -32700, "message": "the message is not JSON"}, "id": null, "jsonrpc": "2.0"}
raw> Content-Length: 0\r\n\r\n
<-- {"error": {"code": -32700, "message": "the message is not JSON"}, "id": null, "jsonrpc": "2.0"}
raw> Content-Length: 5\r\n\r\n"low"
<-- {"error": {"code": -32600, "message": "a message is a JSON object"}, "id": null,
    "jsonrpc": "2.0"}
--> 17
<-- {"error": {"code": -32600, "message": "a message is a JSON object"}, "id": null,
    "jsonrpc": "2.0"}
--> null
<-- {"error": {"code": -32600, "message": "a message is a JSON object"}, "id": null,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0"}
<-- {"error": {"code": -32600, "message": "the message has no method"}, "id": null,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 2}
<-- {"error": {"code": -32600, "message": "the message has no method"}, "id": 2, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 3, "method": 4}
<-- {"error": {"code": -32600, "message": "method: expected a name"}, "id": 3, "jsonrpc": "2.0"}
--> {"jsonrpc": "1.0", "id": 4, "method": "shutdown"}
<-- {"error": {"code": -32600, "message": "jsonrpc: expected \"2.0\""}, "id": 4, "jsonrpc": "2.0"}
--> {"id": 5, "method": "shutdown"}
<-- {"error": {"code": -32600, "message": "jsonrpc: expected \"2.0\""}, "id": 5, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": null, "method": "shutdown"}
<-- {"error": {"code": -32600, "message": "id: expected a whole number or a string"}, "id": null,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 1.5, "method": "shutdown"}
<-- {"error": {"code": -32600, "message": "id: expected a whole number or a string"}, "id": null,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": {}, "method": "shutdown"}
<-- {"error": {"code": -32600, "message": "id: expected a whole number or a string"}, "id": null,
    "jsonrpc": "2.0"}
# An answer to a question that nobody asked.
--> {"jsonrpc": "2.0", "id": 77, "result": null}
# Bytes that are not UTF-8, then a NUL inside a string.
raw> Content-Length: 5\r\n\r\n"\xff\xfe "
<-- {"error": {"code": -32700, "message": "the message is not JSON"}, "id": null, "jsonrpc": "2.0"}
raw> Content-Length: 4\r\n\r\n"\x00 "
<-- {"error": {"code": -32700, "message": "the message is not JSON"}, "id": null, "jsonrpc": "2.0"}
# Two of a kind: the last counts.
--> {"jsonrpc": "2.0", "id": 5, "id": 6, "method": "tide/one", "method": "tide/two"}
<-- {"error": {"code": -32601, "message": "no method tide/two"}, "id": 6, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
