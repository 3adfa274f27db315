# Enter begins a new thought behind a finished sentence where that is set, and closes what was left open.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {},
    "initializationOptions": {"blank_line_after_sentence": true}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "We count limpets.\n\n\nWe count\n\nLook [at Jo\n\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "mark-unclosed",
    "message": "`[` opens a direction that nothing closes: its words will be spoken",
    "range": {"end": {"character": 6, "line": 5}, "start": {"character": 5, "line": 5}},
    "severity": 2, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/onTypeFormatting",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 1,
    "character": 0}, "ch": "\n", "options": {"tabSize": 4, "insertSpaces": true}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"newText": "\n", "range": {"end": {"character": 17,
    "line": 0}, "start": {"character": 17, "line": 0}}}]}

# The thought goes on.
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/onTypeFormatting",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 4,
    "character": 0}, "ch": "\n", "options": {"tabSize": 4, "insertSpaces": true}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": []}

# A direction was left open.
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/onTypeFormatting",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 6,
    "character": 0}, "ch": "\n", "options": {"tabSize": 4, "insertSpaces": true}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": [{"newText": "]", "range": {"end": {"character": 11,
    "line": 5}, "start": {"character": 11, "line": 5}}}]}

# Only Enter does anything.
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/onTypeFormatting",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 17}, "ch": ".", "options": {"tabSize": 4, "insertSpaces": true}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": []}
--> {"jsonrpc": "2.0", "id": 5, "method": "textDocument/onTypeFormatting",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 1,
    "character": 0}}}
<-- {"error": {"code": -32602, "message": "ch: missing"}, "id": 5, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
