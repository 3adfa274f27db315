# A speaker in the header, a reader in their file, a file that a direction names; nothing for a word.

files> tide/.sayline/readers/jo.json {"version": 1, "speech": 1.1}
files> tide/.sayline/readers/mira.json {"version": 1, "speech": 0.9}
files> tide/scripts/map.png x
files> tide/film.mp4 x
files> tide/plan.png x
files> outside.png x
--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "${folder-uri}/tide/scripts/pool.say",
    "languageId": "sayline", "version": 1,
    "text": "---\nreader: jo\npace: 1.1x\nspeakers: MIRA=mira, JO=nobody\n---\nMIRA: [clip: film.mp4 4s] Here [map.png] and [../plan.png] and [../../outside.png] and [gone.png].\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "header-value",
    "message": "“nobody” has no file .sayline/readers/nobody.json, so its pace is not known; write jo or mira, or let sayline calibrate learn it",
    "range": {"end": {"character": 30, "line": 3}, "start": {"character": 24, "line": 3}},
    "severity": 2, "source": "sayline"}], "uri": "${folder-uri}/tide/scripts/pool.say",
    "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/definition",
    "params": {"textDocument": {"uri": "${folder-uri}/tide/scripts/pool.say"},
    "position": {"line": 5, "character": 2}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"range": {"end": {"character": 14, "line": 3},
    "start": {"character": 10, "line": 3}}, "uri": "${folder-uri}/tide/scripts/pool.say"}}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/definition",
    "params": {"textDocument": {"uri": "${folder-uri}/tide/scripts/pool.say"},
    "position": {"line": 1, "character": 9}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"range": {"end": {"character": 0, "line": 0},
    "start": {"character": 0, "line": 0}}, "uri": "${folder-uri}/tide/.sayline/readers/jo.json"}}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/definition",
    "params": {"textDocument": {"uri": "${folder-uri}/tide/scripts/pool.say"},
    "position": {"line": 2, "character": 8}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"range": {"end": {"character": 0, "line": 0},
    "start": {"character": 0, "line": 0}}, "uri": "${folder-uri}/tide/.sayline/readers/jo.json"}}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/definition",
    "params": {"textDocument": {"uri": "${folder-uri}/tide/scripts/pool.say"},
    "position": {"line": 3, "character": 16}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": {"range": {"end": {"character": 0, "line": 0},
    "start": {"character": 0, "line": 0}}, "uri": "${folder-uri}/tide/.sayline/readers/mira.json"}}
--> {"jsonrpc": "2.0", "id": 5, "method": "textDocument/definition",
    "params": {"textDocument": {"uri": "${folder-uri}/tide/scripts/pool.say"},
    "position": {"line": 3, "character": 25}}}
<-- {"id": 5, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "id": 6, "method": "textDocument/definition",
    "params": {"textDocument": {"uri": "${folder-uri}/tide/scripts/pool.say"},
    "position": {"line": 5, "character": 38}}}
<-- {"id": 6, "jsonrpc": "2.0", "result": {"range": {"end": {"character": 0, "line": 0},
    "start": {"character": 0, "line": 0}}, "uri": "${folder-uri}/tide/scripts/map.png"}}
--> {"jsonrpc": "2.0", "id": 7, "method": "textDocument/definition",
    "params": {"textDocument": {"uri": "${folder-uri}/tide/scripts/pool.say"},
    "position": {"line": 5, "character": 31}}}
<-- {"id": 7, "jsonrpc": "2.0", "result": null}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
