# Findings come with their version; an unchanged list is not sent again.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "You should utilize a pencil."}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 18, "line": 0}, "start": {"character": 11, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 26}, "end": {"line": 0,
    "character": 27}}, "text": "l"}]}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"contents": {"kind": "plaintext",
    "value": "You · yoo · /ju/\n\n1 syllable, … s\n\nFrom the dictionary."},
    "range": {"end": {"character": 3, "line": 0}, "start": {"character": 0, "line": 0}}}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 3},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 11}, "end": {"line": 0,
    "character": 18}}, "text": "use"}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 3}}
# Closing takes back what was found.
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 4},
    "contentChanges": [{"text": "We utilize pens."}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 4}}
--> {"jsonrpc": "2.0", "method": "textDocument/didClose",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say"}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
