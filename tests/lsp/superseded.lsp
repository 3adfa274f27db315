# Versions that follow each other without a breath: only the last is analysed.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "One."}}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 0}, "end": {"line": 0,
    "character": 0}}, "text": "Utilize it. "}]}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 3},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 0}, "end": {"line": 0,
    "character": 0}}, "text": "Utilize it. "}]}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 4},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 0}, "end": {"line": 0,
    "character": 0}}, "text": "Utilize it. "}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "written-wording",
    "message": "“Utilize” is written, not said; people say “use”", "range": {"end": {"character": 7,
    "line": 0}, "start": {"character": 0, "line": 0}}, "severity": 4, "source": "sayline"},
    {"code": "written-wording", "message": "“Utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 19, "line": 0}, "start": {"character": 12, "line": 0}},
    "severity": 4, "source": "sayline"}, {"code": "written-wording",
    "message": "“Utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 31, "line": 0}, "start": {"character": 24, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 4}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
