# For a client that watches no files, saving is the moment to look at the settings again.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "${folder-uri}/pool.say", "languageId": "sayline", "version": 1, "text": "We walk along the shore with a square of string and count every limpet we find in it.\n"}}}
<-- ?
files> .sayline/settings.json {"breath_limit": 3}
--> {"jsonrpc": "2.0", "method": "textDocument/didSave", "params": {"textDocument": {"uri": "${folder-uri}/pool.say"}}}
<-- ?
--> {"jsonrpc": "2.0", "method": "textDocument/didSave", "params": {"textDocument": {"uri": "${folder-uri}/pool.say"}}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
