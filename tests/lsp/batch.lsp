# What is asked as a batch is answered as one array; JSON-RPC 2.0, section 6, whose examples these are
# where they fit. Messages inside are taken in order.

--> [{"jsonrpc": "2.0", "id": "0", "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}, {"jsonrpc": "2.0", "method": "initialized",
    "params": {}}]
<-- …
--> []
<-- {"error": {"code": -32600, "message": "a batch holds a message"}, "id": null, "jsonrpc": "2.0"}
--> [1]
<-- [{"error": {"code": -32600, "message": "a message is a JSON object"}, "id": null,
    "jsonrpc": "2.0"}]
--> [1, 2, [3]]
<-- [{"error": {"code": -32600, "message": "a message is a JSON object"}, "id": null,
    "jsonrpc": "2.0"}, {"error": {"code": -32600, "message": "a message is a JSON object"},
    "id": null, "jsonrpc": "2.0"}, {"error": {"code": -32600,
    "message": "a message is a JSON object"}, "id": null, "jsonrpc": "2.0"}]
--> [{"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "Count *them*.\n"}}}]
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> [{"jsonrpc": "2.0", "id": 1, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 7,
    "character": 0}}}, {"foo": "boo"}, {"jsonrpc": "2.0", "id": 2, "method": "foobar"},
    {"jsonrpc": "2.0", "method": "$/setTrace", "params": {"value": "off"}}, {"jsonrpc": "2.0",
    "id": "3", "method": "textDocument/documentHighlight",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}]
<-- [{"error": {"code": -32600, "message": "the message has no method"}, "id": null,
    "jsonrpc": "2.0"}, {"error": {"code": -32601, "message": "no method foobar"}, "id": 2,
    "jsonrpc": "2.0"}, {"id": 1, "jsonrpc": "2.0", "result": null}, {"id": "3", "jsonrpc": "2.0",
    "result": null}]
--> [{"jsonrpc": "2.0", "id": 4, "method": "workspace/symbol", "params": {"query": ""}},
    {"jsonrpc": "2.0", "method": "$/cancelRequest", "params": {"id": 4}}]
<-- [{"error": {"code": -32800, "message": "cancelled"}, "id": 4, "jsonrpc": "2.0"}]
--> [{"jsonrpc": "2.0", "id": 99, "method": "shutdown"}, {"jsonrpc": "2.0", "method": "exit"}]
<-- [{"id": 99, "jsonrpc": "2.0", "result": null}]
