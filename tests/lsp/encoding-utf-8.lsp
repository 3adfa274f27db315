# Positions in utf-8: a shell (U+1F41A) stands before the letter that is edited.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"general": {"positionEncodings": ["utf-8"]}}}}
<-- {"id": 0, "jsonrpc": "2.0", "result": {"capabilities": {…"positionEncoding": "utf-8", …
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "Go.\r\n\r\n🐚x counts.\r\rLine ends are three\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "unspoken-sign", "message": "“🐚” is not spoken",
    "range": {"end": {"character": 4, "line": 2}, "start": {"character": 0, "line": 2}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 2, "character": 4}, "end": {"line": 2,
    "character": 5}}, "text": " Jo"}]}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/explain",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{…"place": {"line": 1, "section": "", "speaker": ""},
    "schema": 1, …"spoken": "go", "text": "Go.", …}, {…"place": {"line": 2, "section": "",
    "speaker": ""}, "schema": 1, …"spoken": "", "text": "", …}, {…"place": {"line": 3,
    "section": "", "speaker": ""}, "schema": 1, …"spoken": "jo counts", "text": "🐚 Jo counts.", …},
    {…"place": {"line": 4, "section": "", "speaker": ""}, "schema": 1, …"spoken": "", "text": "",
    …}, {…"place": {"line": 5, "section": "", "speaker": ""}, "schema": 1,
    …"spoken": "line ends are three", "text": "Line ends are three", …}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 2,
    "character": 6}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"contents": {"kind": "plaintext",
    "value": "Jo · joh · /dʒoʊ/\n\n1 syllable, … s\n\nFrom the dictionary."},
    "range": {"end": {"character": 7, "line": 2}, "start": {"character": 5, "line": 2}}}}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/inlayHint",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 0}, "end": {"line": 99, "character": 0}}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": [{"label": "… s", "paddingLeft": true,
    "position": {"character": 3, "line": 0}, "tooltip": "between … s and … s; from … to …"},
    {"label": "… s", "paddingLeft": true, "position": {"character": 15, "line": 2},
    "tooltip": "between … s and … s; from … to …"}, {"label": "… s", "paddingLeft": true,
    "position": {"character": 19, "line": 4}, "tooltip": "between … s and … s; from … to …"}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
