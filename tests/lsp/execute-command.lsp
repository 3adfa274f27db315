# Commands answer after they have asked the client to edit.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {"workspace": {"applyEdit": true}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline", "version": 1, "text": "We count them. Then we write it down. Then we go home.\n"}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 1, "method": "workspace/executeCommand", "params": {"command": "sayline.splitScript", "arguments": ["file:///tide/pool.say"]}}
<-- ?
--> {"jsonrpc": "2.0", "id": 1, "result": {"applied": true}}
--> {"jsonrpc": "2.0", "id": 2, "method": "workspace/executeCommand", "params": {"command": "sayline.fixAll", "arguments": [{"uri": "file:///tide/pool.say"}]}}
<-- ?
--> {"jsonrpc": "2.0", "id": 3, "method": "workspace/executeCommand", "params": {"command": "tide.turn", "arguments": ["file:///tide/pool.say"]}}
<-- ?
--> {"jsonrpc": "2.0", "id": 4, "method": "workspace/executeCommand", "params": {"command": "sayline.fixAll"}}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
