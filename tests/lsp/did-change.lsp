# Edits of which each sees the result of the last; out of order versions; a whole new text.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "We count shells."}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 9}, "end": {"line": 0,
    "character": 15}}, "text": "limpets"}, {"range": {"start": {"line": 0, "character": 16},
    "end": {"line": 0, "character": 17}}, "text": " here."}]}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/explain",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{…"place": {"line": 1, "section": "", "speaker": ""},
    "schema": 1, …"spoken": "we count limpets here", "text": "We count limpets here.", …}]}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 1},
    "contentChanges": [{"text": "Mira counts."}]}}
--> {"jsonrpc": "2.0", "id": 2, "method": "sayline/explain",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": [{…"place": {"line": 1, "section": "", "speaker": ""},
    "schema": 1, …"spoken": "mira counts", "text": "Mira counts.", …}]}
# A change to what is not open is passed over.
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/other.say", "version": 2},
    "contentChanges": [{"text": "x"}]}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
