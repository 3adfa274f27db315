# The mark that a reader would likely put at the cursor (LSP 3.18), for a client that knows what that is.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"textDocument": {"inlineCompletion": {}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "Then we go home before the tide comes in.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}

# Asked for: a breath at the end of a word, a stress before one, nothing in the middle.
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/inlineCompletion",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 15}, "context": {"triggerKind": 1}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"items": [{"insertText": " /",
    "range": {"end": {"character": 15, "line": 0}, "start": {"character": 15, "line": 0}}}]}}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/inlineCompletion",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 27}, "context": {"triggerKind": 1}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"items": [{"insertText": "*tide*",
    "range": {"end": {"character": 31, "line": 0}, "start": {"character": 27, "line": 0}}}]}}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/inlineCompletion",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 29}, "context": {"triggerKind": 1}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"items": []}}

# Not asked for: nothing while drafting.
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/inlineCompletion",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 15}, "context": {"triggerKind": 2}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": {"items": []}}

# From stage mark on it comes by itself.
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 0}, "end": {"line": 0,
    "character": 0}}, "text": "---\nstage: mark\n---\n"}]}}
--> {"jsonrpc": "2.0", "id": 5, "method": "textDocument/inlineCompletion",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 3,
    "character": 15}, "context": {"triggerKind": 2}}}
<-- {"id": 5, "jsonrpc": "2.0", "result": {"items": [{"insertText": " /",
    "range": {"end": {"character": 15, "line": 3}, "start": {"character": 15, "line": 3}}}]}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
