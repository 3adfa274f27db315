# Settings from initialize and from the client's own accord; a bad value is told once and the rest applies.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}, "initializationOptions": {"breath_limit": 3}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "We walk along the shore with a square of string and count every limpet we find in it.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "no-breath",
    "message": "… s on one breath; it gives out near “…”, the limit is 3.0 s",
    "range": {"end": {"character": 85, "line": 0}, "start": {"character": 0, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration",
    "params": {"settings": {"sayline": {"breath_limit": 6}}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration",
    "params": {"settings": {"sayline": {"breath_limit": 3, "tide": "low"}}}}
<-- {"jsonrpc": "2.0", "method": "window/logMessage",
    "params": {"message": "Settings: no setting is called \"tide\"", "type": 2}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "no-breath",
    "message": "… s on one breath; it gives out near “…”, the limit is 3.0 s",
    "range": {"end": {"character": 85, "line": 0}, "start": {"character": 0, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration", "params": {"settings": null}}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration", "params": {"settings": 17}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
