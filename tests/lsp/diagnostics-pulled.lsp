# A client that pulls findings is sent none; asked again with their name, it hears that nothing is new.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"textDocument": {"diagnostic": {}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "You should utilize a pencil.\n"}}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/diagnostic",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"items": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 18, "line": 0}, "start": {"character": 11, "line": 0}},
    "severity": 4, "source": "sayline"}], "kind": "full", "resultId": "003af8eee40219e4"}}
# Asked with another name all of them come again; with theirs, nothing; moved down, all again.
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/diagnostic",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "previousResultId": "nothing"}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"items": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 18, "line": 0}, "start": {"character": 11, "line": 0}},
    "severity": 4, "source": "sayline"}], "kind": "full", "resultId": "003af8eee40219e4"}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"range": {"start": {"line": 1, "character": 0}, "end": {"line": 1,
    "character": 0}}, "text": "\nGo.\n"}]}}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/diagnostic",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"},
    "previousResultId": "8fa8a8030538922e"}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"items": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 18, "line": 0}, "start": {"character": 11, "line": 0}},
    "severity": 4, "source": "sayline"}], "kind": "full", "resultId": "003af8eee40219e4"}}
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 3},
    "contentChanges": [{"range": {"start": {"line": 0, "character": 0}, "end": {"line": 0,
    "character": 0}}, "text": "\n\n"}]}}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/diagnostic",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"},
    "previousResultId": "8fa8a8030538922e"}}
<-- {"id": 4, "jsonrpc": "2.0", "result": {"items": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 18, "line": 2}, "start": {"character": 11, "line": 2}},
    "severity": 4, "source": "sayline"}], "kind": "full", "resultId": "fca398ed19119b2e"}}
--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
