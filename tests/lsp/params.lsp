# Parameters that are not as they should be: the answer names the place.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline", "version": 1, "text": "The tide is out."}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/hover", "params": {}}
<-- ?
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/hover"}
<-- ?
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/hover", "params": []}
<-- ?
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": "one", "character": 0}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 5, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0.5, "character": 0}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 6, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": -1, "character": 0}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 7, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 8, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/other.say"}, "position": {"line": 0, "character": 0}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 9, "method": "textDocument/inlayHint", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0, "character": 5}, "end": {"line": 0, "character": 2}}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 10, "method": "textDocument/inlayHint", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0, "character": 0}}}}
<-- ?
# An inverted range in a change: passed over, and the text stays as it was.
--> {"jsonrpc": "2.0", "method": "textDocument/didChange", "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2}, "contentChanges": [{"range": {"start": {"line": 0, "character": 5}, "end": {"line": 0, "character": 2}}, "text": "x"}]}}
# null where nothing is needed, members that nobody knows, numbers beyond any line.
--> {"jsonrpc": "2.0", "id": 11, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say", "tide": 1}, "position": {"line": 4294967296, "character": 1e300}, "workDoneToken": null}, "tide": []}
<-- ?
--> {"jsonrpc": "2.0", "id": 12, "method": "textDocument/formatting", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "options": null}}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
