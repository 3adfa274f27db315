# sayline/times: what a status bar shows.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\ntitle: Counting limpets\ntarget: 0:20 max\nspeakers: MIRA, JO\n---\n# Hello (0:05)\n\nMIRA: Every spring we walk the *same* stretch of shore / with a square of string.\n\nJO: You do not need a boat.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"high": …, "low": …, "off": …, "schema": 1, "seconds": …,
    "sections": [{"at": …, "high": …, "level": 1, "low": …, "name": "Hello", "off": …,
    "range": {"end": {"character": 14, "line": 5}, "start": {"character": 0, "line": 5}},
    "seconds": …, "target": {"high": 5.0, "low": 5.0}, "words": 20}], "target": {"high": 20.0,
    "low": 0.0}, "words": 20}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"text": ""}]}}
--> {"jsonrpc": "2.0", "id": 2, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"high": …, "low": …, "off": …, "schema": 1, "seconds": …,
    "sections": [], "target": null, "words": 0}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 3},
    "contentChanges": [{"text": "One (2.0) two.\n\n(1.5)\n\nThree.\n"}]}}
--> {"jsonrpc": "2.0", "id": 3, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"at": 0.0, "high": 5.63, "low": 4.61, "off": 0.0,
    "schema": 1, "seconds": 5.12, "sections": [], "target": null, "words": 3}}
--> {"jsonrpc": "2.0", "id": 4, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 12}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": {"at": 2.22, "high": 5.63, "low": 4.61, "off": 0.0,
    "schema": 1, "seconds": 5.12, "sections": [], "target": null, "words": 3}}
--> {"jsonrpc": "2.0", "id": 5, "method": "sayline/times",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 4,
    "character": 0}}}
<-- {"id": 5, "jsonrpc": "2.0", "result": {"at": 4.73, "high": 5.63, "low": 4.61, "off": 0.0,
    "schema": 1, "seconds": 5.12, "sections": [], "target": null, "words": 3}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
