# A script that has no file yet.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "untitled:Untitled-1", "languageId": "sayline", "version": 1,
    "text": "We utilize it."}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "untitled:Untitled-1", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/times",
    "params": {"textDocument": {"uri": "untitled:Untitled-1"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"high": …, "low": …, "off": …, "schema": 1, "seconds": …,
    "sections": [], "target": null, "words": 3}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
