# Times against targets above the first line and each heading.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\ntarget: 0:20\n---\n# Hello (0:05 max)\n\n[wait 12s]\n\n# Later\n\n[wait 3s]\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "off-target",
    "message": "runs 0:12 (between 0:12 and 0:12), 7 s over its 0:05 max",
    "range": {"end": {"character": 17, "line": 3}, "start": {"character": 9, "line": 3}},
    "severity": 2, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/codeLens",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"command": {"command": "",
    "title": "Script: 0:15, 5 s short of 0:20"}, "range": {"end": {"character": 3, "line": 0},
    "start": {"character": 0, "line": 0}}}, {"command": {"command": "",
    "title": "0:12, 7 s over 0:05 max"}, "range": {"end": {"character": 18, "line": 3},
    "start": {"character": 0, "line": 3}}}, {"command": {"command": "", "title": "0:03"},
    "range": {"end": {"character": 7, "line": 7}, "start": {"character": 0, "line": 7}}}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
