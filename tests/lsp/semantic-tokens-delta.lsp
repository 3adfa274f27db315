# Tokens under a name; from that name on only what is new. An unknown name gets all of them.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "# One\n\nWe *count*.\n\nAnd ~rest~.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/semanticTokens/full",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"data": [0, 0, 5, 0, 0, 2, 3, 1, 6, 1, 0, 1, 5, 7, 1, 0,
    5, 1, 6, 1, 2, 4, 1, 6, 4, 0, 1, 4, 7, 4, 0, 4, 1, 6, 4], "resultId": "3c71e9cc5f21ae39"}}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/semanticTokens/full/delta",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"},
    "previousResultId": "3c71e9cc5f21ae39"}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"edits": [], "resultId": "3c71e9cc5f21ae39"}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 2, "character": 3}, "end": {"line": 2,
    "character": 3}}, "text": "all "}]}}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/semanticTokens/full/delta",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"},
    "previousResultId": "3c71e9cc5f21ae39"}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"edits": [{"data": [7], "deleteCount": 1, "start": 6}],
    "resultId": "0db65fc74e7d345a"}}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/semanticTokens/full/delta",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"},
    "previousResultId": "3c71e9cc5f21ae39"}}
<-- {"id": 4, "jsonrpc": "2.0", "result": {"data": [0, 0, 5, 0, 0, 2, 7, 1, 6, 1, 0, 1, 5, 7, 1, 0,
    5, 1, 6, 1, 2, 4, 1, 6, 4, 0, 1, 4, 7, 4, 0, 4, 1, 6, 4], "resultId": "0db65fc74e7d345a"}}
--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
