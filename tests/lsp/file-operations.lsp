# A client that watches no files says what it made, renamed or deleted itself.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "We walk along the shore with a square of string and count every limpet we find in it.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "${folder-uri}/pool.say", "version": 1}}
files> .sayline/settings.json {"breath_limit": 3}
--> {"jsonrpc": "2.0", "method": "workspace/didCreateFiles",
    "params": {"files": [{"uri": "${folder-uri}/.sayline/settings.json"}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "no-breath",
    "message": "… s on one breath; it gives out near “…”, the limit is 3.0 s",
    "range": {"end": {"character": 85, "line": 0}, "start": {"character": 0, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "${folder-uri}/pool.say", "version": 1}}

# Nothing changed: nothing is said.
--> {"jsonrpc": "2.0", "method": "workspace/didRenameFiles",
    "params": {"files": [{"oldUri": "${folder-uri}/a.pls", "newUri": "${folder-uri}/b.pls"}]}}
--> {"jsonrpc": "2.0", "method": "workspace/didDeleteFiles", "params": {"files": []}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
