# Colours of the whole script and of a range.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline", "version": 1, "text": "---\ntitle: Counting limpets\ntarget: 0:20 max\nspeakers: MIRA, JO\n---\n# Hello (0:05)\n\nMIRA: Every spring we walk the *same* stretch of shore / with a square of string.\n\nJO: You do not need a boat.\n"}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/semanticTokens/full", "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/semanticTokens/range", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 7, "character": 0}, "end": {"line": 8, "character": 0}}}}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
