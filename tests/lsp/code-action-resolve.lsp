# What is done to a whole script is made when it is chosen, and marks by guess are shown first.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null,
    "capabilities": {"textDocument": {"codeAction": {"codeActionLiteralSupport": {"codeActionKind": {"valueSet": ["refactor"]}},
    "dataSupport": true, "resolveSupport": {"properties": ["edit"]}}},
    "workspace": {"workspaceEdit": {"documentChanges": true, "changeAnnotationSupport": {}}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "We count every limpet.\n\nThen we go home before the tide comes in.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 5}, "end": {"line": 0, "character": 5}}, "context": {"diagnostics": [],
    "only": ["refactor"]}}}
<-- {"id": 1, "jsonrpc": "2.0",
    "result": [{"edit": {"documentChanges": [{"edits": [{"newText": "\n\n",
    "range": {"end": {"character": 9, "line": 0}, "start": {"character": 8, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 1}}]}, "kind": "refactor.rewrite",
    "title": "Begin a new thought at “every”"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "/ ", "range": {"end": {"character": 9,
    "line": 0}, "start": {"character": 9, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 1}}]}, "kind": "refactor.rewrite",
    "title": "Breathe before “every”"}, {"edit": {"documentChanges": [{"edits": [{"newText": "*",
    "range": {"end": {"character": 15, "line": 0}, "start": {"character": 15, "line": 0}}},
    {"newText": "*", "range": {"end": {"character": 21, "line": 0}, "start": {"character": 21,
    "line": 0}}}], "textDocument": {"uri": "file:///tide/pool.say", "version": 1}}]},
    "kind": "refactor.rewrite", "title": "Lean on “limpet”: a reader likely would"},
    {"data": {"sweep": "mark", "uri": "file:///tide/pool.say"}, "kind": "refactor.rewrite",
    "title": "Mark the script lightly"}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "codeAction/resolve",
    "params": {"title": "Mark the script lightly", "kind": "refactor.rewrite",
    "data": {"uri": "file:///tide/pool.say", "sweep": "mark"}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"data": {"sweep": "mark",
    "uri": "file:///tide/pool.say"},
    "edit": {"changeAnnotations": {"preview": {"label": "Mark the script lightly",
    "needsConfirmation": true}}, "documentChanges": [{"edits": [{"annotationId": "preview",
    "newText": "*", "range": {"end": {"character": 15, "line": 0}, "start": {"character": 15,
    "line": 0}}}, {"annotationId": "preview", "newText": "*", "range": {"end": {"character": 21,
    "line": 0}, "start": {"character": 21, "line": 0}}}, {"annotationId": "preview",
    "newText": "/ ", "range": {"end": {"character": 16, "line": 2}, "start": {"character": 16,
    "line": 2}}}, {"annotationId": "preview", "newText": "*", "range": {"end": {"character": 27,
    "line": 2}, "start": {"character": 27, "line": 2}}}, {"annotationId": "preview", "newText": "*",
    "range": {"end": {"character": 31, "line": 2}, "start": {"character": 31, "line": 2}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 1}}]}, "kind": "refactor.rewrite",
    "title": "Mark the script lightly"}}

# An action that was not offered is refused.
--> {"jsonrpc": "2.0", "id": 3, "method": "codeAction/resolve",
    "params": {"title": "Something else", "data": {"uri": "file:///tide/pool.say"}}}
<-- {"error": {"code": -32602, "message": "data.sweep: missing"}, "id": 3, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 4, "method": "shutdown"}
<-- {"id": 4, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
