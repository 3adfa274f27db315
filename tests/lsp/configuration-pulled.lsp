# Settings are asked for, once for all and for each script; a change announces itself.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"workspace": {"configuration": true,
    "didChangeConfiguration": {"dynamicRegistration": true},
    "inlayHint": {"refreshSupport": true}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
<-- {"id": 1, "jsonrpc": "2.0", "method": "client/registerCapability",
    "params": {"registrations": [{"id": "settings", "method": "workspace/didChangeConfiguration",
    "registerOptions": {"section": "sayline"}}]}}
<-- {"id": 2, "jsonrpc": "2.0", "method": "workspace/configuration",
    "params": {"items": [{"section": "sayline"}]}}
--> {"jsonrpc": "2.0", "id": 1, "result": null}
--> {"jsonrpc": "2.0", "id": 2, "result": [{}]}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "We walk along the shore with a square of string and count every limpet we find in it.\n"}}}
<-- {"id": 3, "jsonrpc": "2.0", "method": "workspace/configuration",
    "params": {"items": [{"scopeUri": "file:///tide/pool.say", "section": "sayline"}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 3, "result": [{"breath_limit": 3}]}
<-- {"id": 4, "jsonrpc": "2.0", "method": "workspace/inlayHint/refresh"}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "no-breath",
    "message": "… s on one breath; it gives out near “…”, the limit is 3.0 s",
    "range": {"end": {"character": 85, "line": 0}, "start": {"character": 0, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 4, "result": null}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration", "params": {"settings": null}}
<-- {"id": 5, "jsonrpc": "2.0", "method": "workspace/configuration",
    "params": {"items": [{"scopeUri": "file:///tide/pool.say", "section": "sayline"}]}}
--> {"jsonrpc": "2.0", "id": 5, "result": [{"breath_limit": 3}]}
--> {"jsonrpc": "2.0", "method": "workspace/didChangeConfiguration", "params": {"settings": null}}
<-- {"id": 6, "jsonrpc": "2.0", "method": "workspace/configuration",
    "params": {"items": [{"scopeUri": "file:///tide/pool.say", "section": "sayline"}]}}
--> {"jsonrpc": "2.0", "id": 6, "result": [null]}
<-- {"id": 7, "jsonrpc": "2.0", "method": "workspace/inlayHint/refresh"}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
