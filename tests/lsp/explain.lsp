# sayline/explain: a thought under the cursor, or all of them.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline", "version": 1, "text": "Go now.\n\nStop.\n"}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/explain", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0, "character": 1}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 2, "method": "sayline/explain", "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 3, "method": "sayline/explain", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 1, "character": 0}}}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
