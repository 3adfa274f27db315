# The life of a session: initialize, initialized, shutdown, exit with status 0.
# What comes too early, twice or too late is refused as the protocol says.

--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0, "character": 0}}}
<-- ?
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline", "version": 1, "text": "Too early, so passed over."}}}
--> {"jsonrpc": "2.0", "id": 2, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- ?
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "id": 3, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0, "character": 0}}}
<-- ?
--> {"jsonrpc": "2.0", "id": "five", "method": "shutdown"}
<-- ?
--> {"jsonrpc": "2.0", "id": 6, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0, "character": 0}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 7, "method": "shutdown"}
<-- ?
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "exit"}
