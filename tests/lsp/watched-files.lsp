# A client that watches files says when the settings beside the scripts have changed.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null,
    "capabilities": {"workspace": {"didChangeWatchedFiles": {"dynamicRegistration": true}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
<-- {"id": 1, "jsonrpc": "2.0", "method": "client/registerCapability",
    "params": {"registrations": [{"id": "settings-files",
    "method": "workspace/didChangeWatchedFiles",
    "registerOptions": {"watchers": [{"globPattern": "**/.sayline/**"}, {"globPattern": "**/*.pls"},
    {"globPattern": "**/*.say"}]}}]}}
--> {"jsonrpc": "2.0", "id": 1, "result": null}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "We walk along the shore with a square of string and count every limpet we find in it.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "${folder-uri}/pool.say", "version": 1}}
files> .sayline/settings.json {"breath_limit": 3}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeWatchedFiles",
    "params": {"changes": [{"uri": "${folder-uri}/.sayline/settings.json", "type": 1}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "no-breath",
    "message": "… s on one breath; it gives out near “…”, the limit is 3.0 s",
    "range": {"end": {"character": 85, "line": 0}, "start": {"character": 0, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "${folder-uri}/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeWatchedFiles", "params": {"changes": []}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
