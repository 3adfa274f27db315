# Blanks at line ends go, too many blank lines too; a second time changes nothing.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "One.  \n\n\n\nTwo ***three***. \n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/formatting",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "options": {"tabSize": 4,
    "insertSpaces": true}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"newText": "", "range": {"end": {"character": 6,
    "line": 0}, "start": {"character": 4, "line": 0}}}, {"newText": "",
    "range": {"end": {"character": 0, "line": 4}, "start": {"character": 0, "line": 2}}},
    {"newText": "**", "range": {"end": {"character": 7, "line": 4}, "start": {"character": 4,
    "line": 4}}}, {"newText": "**", "range": {"end": {"character": 15, "line": 4},
    "start": {"character": 12, "line": 4}}}, {"newText": "", "range": {"end": {"character": 17,
    "line": 4}, "start": {"character": 16, "line": 4}}}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/rangeFormatting",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 0}, "end": {"line": 1, "character": 0}}, "options": {"tabSize": 4,
    "insertSpaces": true}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": [{"newText": "", "range": {"end": {"character": 6,
    "line": 0}, "start": {"character": 4, "line": 0}}}]}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"text": "One.\n\nTwo **three**.\n"}]}}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/formatting",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "options": {"tabSize": 4,
    "insertSpaces": true}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": []}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
