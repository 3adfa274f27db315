# A word, a mark and a key are told of once they are there, or when the writer saves or rests.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "We walk along the shr today.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "unknown-word",
    "message": "“shr” is in no dictionary: it is timed as EHSS-AY-CHAHR, a guess",
    "range": {"end": {"character": 21, "line": 0}, "start": {"character": 18, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 21}, "end": {"line": 0,
    "character": 21}}, "text": "b"}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 2}}
--> {"jsonrpc": "2.0", "method": "textDocument/didSave",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "unknown-word",
    "message": "“shrb” is in no dictionary: it is timed as EHSS-AY-CHAHR-BEE, a guess",
    "range": {"end": {"character": 22, "line": 0}, "start": {"character": 18, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 2}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 3},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 22}, "end": {"line": 0,
    "character": 22}}, "text": "*"}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "unknown-word",
    "message": "“shrb” is in no dictionary: it is timed as EHSS-AY-CHAHR-BEE, a guess",
    "range": {"end": {"character": 22, "line": 0}, "start": {"character": 18, "line": 0}},
    "severity": 4, "source": "sayline"}, {"code": "mark-stray",
    "message": "`*` closes nothing: it stays on the page and does nothing",
    "range": {"end": {"character": 23, "line": 0}, "start": {"character": 22, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 3}}

# Behind another key elsewhere it is told at once.
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 4},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 0}, "end": {"line": 0,
    "character": 2}}, "text": "Some of us"}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "unknown-word",
    "message": "“shrb” is in no dictionary: it is timed as EHSS-AY-CHAHR-BEE, a guess",
    "range": {"end": {"character": 30, "line": 0}, "start": {"character": 26, "line": 0}},
    "severity": 4, "source": "sayline"}, {"code": "mark-stray",
    "message": "`*` closes nothing: it stays on the page and does nothing",
    "range": {"end": {"character": 31, "line": 0}, "start": {"character": 30, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 4}}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
--> {"jsonrpc": "2.0", "method": "exit"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
