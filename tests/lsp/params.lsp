# Parameters that are not as they should be: the answer names the place.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "The tide is out."}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/hover", "params": {}}
<-- {"error": {"code": -32602, "message": "textDocument.uri: missing"}, "id": 1, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/hover"}
<-- {"error": {"code": -32602, "message": "textDocument.uri: missing"}, "id": 2, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/hover", "params": []}
<-- {"error": {"code": -32602, "message": "params: expected an object"}, "id": 3, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": "one",
    "character": 0}}}
<-- {"error": {"code": -32602, "message": "position.line: expected a whole number from 0"}, "id": 4,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 5, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0.5,
    "character": 0}}}
<-- {"error": {"code": -32602, "message": "position.line: expected a whole number from 0"}, "id": 5,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 6, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": -1,
    "character": 0}}}
<-- {"error": {"code": -32602, "message": "position.line: expected a whole number from 0"}, "id": 6,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 7, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0}}}
<-- {"error": {"code": -32602, "message": "position.character: missing"}, "id": 7, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 8, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/other.say"}, "position": {"line": 0,
    "character": 0}}}
<-- {"error": {"code": -32602, "message": "textDocument.uri: file:///tide/other.say is not open"},
    "id": 8, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 9, "method": "textDocument/inlayHint",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 5}, "end": {"line": 0, "character": 2}}}}
<-- {"error": {"code": -32602, "message": "range: ends before it starts"}, "id": 9,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 10, "method": "textDocument/inlayHint",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 0}}}}
<-- {"error": {"code": -32602, "message": "range.end.line: missing"}, "id": 10, "jsonrpc": "2.0"}
# An inverted range in a change: passed over, and the text stays as it was.
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 5}, "end": {"line": 0,
    "character": 2}}, "text": "x"}]}}
# null where nothing is needed, members that nobody knows, numbers beyond any line.
--> {"jsonrpc": "2.0", "id": 11, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "tide": 1},
    "position": {"line": 4294967296, "character": 1e300}, "workDoneToken": null}, "tide": []}
<-- {"id": 11, "jsonrpc": "2.0", "result": {"contents": {"kind": "plaintext",
    "value": "… s · between … s and … s\n\n4 words, … syllables a second. One breath.\n\nFrom … to …."},
    "range": {"end": {"character": 16, "line": 0}, "start": {"character": 0, "line": 0}}}}
--> {"jsonrpc": "2.0", "id": 12, "method": "textDocument/formatting",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "options": null}}
<-- {"id": 12, "jsonrpc": "2.0", "result": [{"newText": "\n", "range": {"end": {"character": 16,
    "line": 0}, "start": {"character": 16, "line": 0}}}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
