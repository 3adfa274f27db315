# Positions in utf-8: a shell (U+1F41A) stands before the letter that is edited.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null, "rootUri": null, "capabilities": {"general": {"positionEncodings": ["utf-8"]}}}}
<-- {"id": 0, "jsonrpc": "2.0", "result": {"capabilities": {…"positionEncoding": "utf-8", …
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline", "version": 1, "text": "Go.\r\n\r\n🐚x counts.\r\rLine ends are three\n"}}}
<-- ?
--> {"jsonrpc": "2.0", "method": "textDocument/didChange", "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2}, "contentChanges": [{"range": {"start": {"line": 2, "character": 4}, "end": {"line": 2, "character": 5}}, "text": " Jo"}]}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/explain", "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/hover", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 2, "character": 6}}}
<-- ?
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/inlayHint", "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0, "character": 0}, "end": {"line": 99, "character": 0}}}}
<-- ?

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
