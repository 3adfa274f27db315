# Commands answer after they have asked the client to edit.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"workspace": {"applyEdit": true}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "We count them. Then we write it down on the sheet. Then we take it home and look at it for a while.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "run-on",
    "message": "3 sentences follow on for 6.2 s with no gap to let each one land",
    "range": {"end": {"character": 99, "line": 0}, "start": {"character": 0, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "workspace/executeCommand",
    "params": {"command": "sayline.splitScript", "arguments": ["file:///tide/pool.say"]}}
<-- {"id": 1, "jsonrpc": "2.0", "method": "workspace/applyEdit",
    "params": {"edit": {"changes": {"file:///tide/pool.say": [{"newText": "\n\n",
    "range": {"end": {"character": 15, "line": 0}, "start": {"character": 14, "line": 0}}},
    {"newText": "\n\n", "range": {"end": {"character": 51, "line": 0}, "start": {"character": 50,
    "line": 0}}}]}}, "label": "Give each sentence its own thought, in the whole script"}}
<-- {"id": 1, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "id": 1, "result": {"applied": true}}
--> {"jsonrpc": "2.0", "id": 2, "method": "workspace/executeCommand",
    "params": {"command": "sayline.fixAll", "arguments": [{"uri": "file:///tide/pool.say"}]}}
<-- {"id": 2, "jsonrpc": "2.0", "method": "workspace/applyEdit",
    "params": {"edit": {"changes": {"file:///tide/pool.say": [{"newText": "\n\n",
    "range": {"end": {"character": 15, "line": 0}, "start": {"character": 14, "line": 0}}},
    {"newText": "\n\n", "range": {"end": {"character": 51, "line": 0}, "start": {"character": 50,
    "line": 0}}}]}}, "label": "Mend all that keeps every word"}}
<-- {"id": 2, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "id": 3, "method": "workspace/executeCommand",
    "params": {"command": "tide.turn", "arguments": ["file:///tide/pool.say"]}}
<-- {"error": {"code": -32803, "message": "unknown command tide.turn"}, "id": 3, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 4, "method": "workspace/executeCommand",
    "params": {"command": "sayline.fixAll"}}
<-- {"error": {"code": -32602, "message": "arguments: expected the script's URI as the first one"},
    "id": 4, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
