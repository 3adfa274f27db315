# Fixes of the findings in the range, linked with them, as edits of the version they were made for.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {"textDocument": {"codeAction": {"codeActionLiteralSupport": {"codeActionKind": {"valueSet": ["quickfix"]}}, "isPreferredSupport": true}}, "workspace": {"workspaceEdit": {"documentChanges": true}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline", "version": 1, "text": "We utilize a square of string.\n"}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/codeAction", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0, "character": 5}, "end": {"line": 0, "character": 5}}, "context": {"diagnostics": [], "only": ["quickfix"]}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/codeAction", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0, "character": 20}, "end": {"line": 0, "character": 20}}, "context": {"diagnostics": [], "only": ["source.fixAll"]}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/codeAction", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0, "character": 20}, "end": {"line": 0, "character": 20}}, "context": {"diagnostics": [], "only": ["quick"]}}}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
