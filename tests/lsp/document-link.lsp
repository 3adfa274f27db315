# Files that are there, beside the script or in the folder of its settings, and nothing else.

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
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/documentLink",
    "params": {"textDocument": {"uri": "${folder-uri}/tide/scripts/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"range": {"end": {"character": 10, "line": 1},
    "start": {"character": 8, "line": 1}}, "target": "${folder-uri}/tide/.sayline/readers/jo.json",
    "tooltip": "The pace of jo"}, {"range": {"end": {"character": 10, "line": 2},
    "start": {"character": 6, "line": 2}}, "target": "${folder-uri}/tide/.sayline/readers/jo.json",
    "tooltip": "The pace of jo"}, {"range": {"end": {"character": 19, "line": 3},
    "start": {"character": 15, "line": 3}},
    "target": "${folder-uri}/tide/.sayline/readers/mira.json", "tooltip": "The pace of mira"},
    {"range": {"end": {"character": 21, "line": 5}, "start": {"character": 13, "line": 5}},
    "target": "${folder-uri}/tide/film.mp4"}, {"range": {"end": {"character": 39, "line": 5},
    "start": {"character": 32, "line": 5}}, "target": "${folder-uri}/tide/scripts/map.png"},
    {"range": {"end": {"character": 57, "line": 5}, "start": {"character": 46, "line": 5}},
    "target": "${folder-uri}/tide/plan.png"}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
