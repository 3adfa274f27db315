# A script that has no file yet.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "untitled:Untitled-1", "languageId": "sayline", "version": 1, "text": "We utilize it."}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/times", "params": {"textDocument": {"uri": "untitled:Untitled-1"}}}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
