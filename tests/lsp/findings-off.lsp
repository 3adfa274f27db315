# Findings off as a whole: hints and hover go on.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}, "initializationOptions": {"findings": false}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "We utilize a square of string.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/inlayHint",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 0}, "end": {"line": 1, "character": 0}}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"label": "…", "paddingLeft": true,
    "position": {"character": 30, "line": 0},
    "tooltip": "between … and …; from … to …"}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 4}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"contents": {"kind": "plaintext",
    "value": "utilize · …"},
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}}}}

# And on again.
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration",
    "params": {"settings": {"sayline": {"findings": true}}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration",
    "params": {"settings": {"sayline": {"findings_from_severity": "error"}}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
