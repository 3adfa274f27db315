# The reader's file and the project's settings, opened in the editor.

files> .sayline/readers/mira.json {"version": 1, "name": "mira", "speech": 1.05, "pauses": 0.9}
--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"window": {"showDocument": {"support": true}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say", "languageId": "sayline",
    "version": 1, "text": "---\nreader: mira\n---\nWe count limpets.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "${folder-uri}/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "workspace/executeCommand",
    "params": {"command": "sayline.openReader", "arguments": ["${folder-uri}/pool.say"]}}
<-- {"id": 1, "jsonrpc": "2.0", "method": "window/showDocument", "params": {"takeFocus": true,
    "uri": "${folder-uri}/.sayline/readers/mira.json"}}
<-- {"id": 1, "jsonrpc": "2.0", "result": null}
files> .sayline/settings.json {}
--> {"jsonrpc": "2.0", "id": 2, "method": "workspace/executeCommand",
    "params": {"command": "sayline.openSettings", "arguments": ["${folder-uri}/pool.say"]}}
<-- {"id": 2, "jsonrpc": "2.0", "method": "window/showDocument", "params": {"takeFocus": true,
    "uri": "${folder-uri}/.sayline/settings.json"}}
<-- {"id": 2, "jsonrpc": "2.0", "result": null}

# The page about the rules needs no script.
--> {"jsonrpc": "2.0", "id": 7, "method": "workspace/executeCommand",
    "params": {"command": "sayline.openRules"}}
<-- {"id": 3, "jsonrpc": "2.0", "method": "window/showDocument", "params": {"takeFocus": true,
    "uri": "${folder-uri}/sayline/rules.md"}}
<-- {"id": 7, "jsonrpc": "2.0", "result": null}

# Nothing is shown of a script that is no file.
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "untitled:shore", "languageId": "sayline", "version": 1,
    "text": "Go."}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "untitled:shore", "version": 1}}
--> {"jsonrpc": "2.0", "id": 3, "method": "workspace/executeCommand",
    "params": {"command": "sayline.openReader", "arguments": ["untitled:shore"]}}
<-- {"error": {"code": -32803,
    "message": "the script is not saved yet, so no folder has its readers"}, "id": 3,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 4, "method": "workspace/executeCommand",
    "params": {"command": "sayline.openSettings", "arguments": ["untitled:shore"]}}
<-- {"error": {"code": -32803,
    "message": "the script is not saved yet, so no folder has its settings"}, "id": 4,
    "jsonrpc": "2.0"}

# No reader is set, or their file is not there.
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say", "version": 2},
    "contentChanges": [{"text": "We count limpets."}]}}
--> {"jsonrpc": "2.0", "id": 5, "method": "workspace/executeCommand",
    "params": {"command": "sayline.openReader", "arguments": ["${folder-uri}/pool.say"]}}
<-- {"error": {"code": -32803,
    "message": "no reader is set; name one in the header, as in \"reader: mira\""}, "id": 5,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say", "version": 3},
    "contentChanges": [{"text": "---\nreader: jo\n---\nWe count limpets."}]}}
--> {"jsonrpc": "2.0", "id": 6, "method": "workspace/executeCommand",
    "params": {"command": "sayline.openReader", "arguments": ["${folder-uri}/pool.say"]}}
<-- {"error": {"code": -32803,
    "message": "there is no ${folder}/.sayline/readers/jo.json yet; sayline calibrate learns it from a timed read"},
    "id": 6, "jsonrpc": "2.0"}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "header-value",
    "message": "“jo” has no file .sayline/readers/jo.json, so its pace is not known; write mira, or let sayline calibrate learn it",
    "range": {"end": {"character": 10, "line": 1}, "start": {"character": 8, "line": 1}},
    "severity": 2, "source": "sayline"}], "uri": "${folder-uri}/pool.say", "version": 3}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
