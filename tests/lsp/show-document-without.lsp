# An editor that cannot be asked to open a file is told where it is.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say", "languageId": "sayline",
    "version": 1, "text": "We count limpets.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "${folder-uri}/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "workspace/executeCommand",
    "params": {"command": "sayline.openSettings", "arguments": ["${folder-uri}/pool.say"]}}
<-- {"error": {"code": -32803,
    "message": "there is no ${folder}/.sayline/settings.json yet; docs/options.md says what may stand in it"},
    "id": 1, "jsonrpc": "2.0"}
files> .sayline/settings.json {}
--> {"jsonrpc": "2.0", "id": 2, "method": "workspace/executeCommand",
    "params": {"command": "sayline.openSettings", "arguments": ["${folder-uri}/pool.say"]}}
<-- {"error": {"code": -32803,
    "message": "this editor cannot be asked to open a file; it is ${folder}/.sayline/settings.json"},
    "id": 2, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
