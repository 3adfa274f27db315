# A client that knows no actions but commands: it sends one back and gets the edit to apply.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"workspace": {"applyEdit": true}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "We utilize a square of string.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 5}, "end": {"line": 0, "character": 5}}, "context": {"diagnostics": [],
    "only": ["quickfix"]}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"arguments": ["file:///tide/pool.say",
    {"changes": {"file:///tide/pool.say": [{"newText": "use", "range": {"end": {"character": 10,
    "line": 0}, "start": {"character": 3, "line": 0}}}]}}], "command": "sayline.applyFix",
    "title": "Say “use”"}, {"arguments": ["file:///tide/pool.say",
    {"changes": {"file:///tide/pool.say": [{"newText": "% allow: written-wording\n",
    "range": {"end": {"character": 0, "line": 0}, "start": {"character": 0, "line": 0}}}]}}],
    "command": "sayline.applyFix", "title": "Leave this one (written-wording)"}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
