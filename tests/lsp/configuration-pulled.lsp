# Settings are asked for, once for all and for each script; a change announces itself.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {"workspace": {"configuration": true, "didChangeConfiguration": {"dynamicRegistration": true}, "inlayHint": {"refreshSupport": true}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
<-- ?
--> {"jsonrpc": "2.0", "id": 1, "result": null}
--> {"jsonrpc": "2.0", "id": 2, "result": [{}]}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline", "version": 1, "text": "We walk along the shore with a square of string and count every limpet we find in it.\n"}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 3, "result": [{"breath_limit": 3}]}
<-- ?
--> {"jsonrpc": "2.0", "id": 4, "result": null}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration", "params": {"settings": null}}
<-- ?
--> {"jsonrpc": "2.0", "id": 5, "result": [{"breath_limit": 3}]}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration", "params": {"settings": null}}
<-- ?
--> {"jsonrpc": "2.0", "id": 6, "result": [null]}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
