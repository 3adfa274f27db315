# A client that asks for the documentation of the item it looks at gets it then.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null,
    "capabilities": {"textDocument": {"completion": {"completionItem": {"documentationFormat": ["markdown"],
    "resolveSupport": {"properties": ["documentation"]}}}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "The tide^ is out."}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/completion",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 9}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"isIncomplete": false,
    "items": [{"data": {"topic": "mark:step up", "uri": "file:///tide/pool.say"},
    "detail": "steps up in pitch", "filterText": "^", "insertTextFormat": 1, "kind": 1,
    "label": "↑ step up", "sortText": "1001", "textEdit": {"newText": "↑",
    "range": {"end": {"character": 9, "line": 0}, "start": {"character": 8, "line": 0}}}},
    {"data": {"topic": "mark:step down", "uri": "file:///tide/pool.say"},
    "detail": "steps down in pitch", "filterText": "^", "insertTextFormat": 1, "kind": 1,
    "label": "↓ step down", "sortText": "1002", "textEdit": {"newText": "↓",
    "range": {"end": {"character": 9, "line": 0}, "start": {"character": 8, "line": 0}}}},
    {"data": {"topic": "mark:end up", "uri": "file:///tide/pool.say"},
    "detail": "lets the tune rise at the end", "filterText": "^", "insertTextFormat": 1, "kind": 1,
    "label": "↗ end up", "sortText": "1003", "textEdit": {"newText": "↗",
    "range": {"end": {"character": 9, "line": 0}, "start": {"character": 8, "line": 0}}}},
    {"data": {"topic": "mark:end down", "uri": "file:///tide/pool.say"},
    "detail": "lets the tune fall at the end", "filterText": "^", "insertTextFormat": 1, "kind": 1,
    "label": "↘ end down", "sortText": "1004", "textEdit": {"newText": "↘",
    "range": {"end": {"character": 9, "line": 0}, "start": {"character": 8, "line": 0}}}}]}}
--> {"jsonrpc": "2.0", "id": 2, "method": "completionItem/resolve", "params": {"label": "↑ step up",
    "data": {"uri": "file:///tide/pool.say", "topic": "mark:step up"}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"data": {"topic": "mark:step up",
    "uri": "file:///tide/pool.say"}, "documentation": {"kind": "markdown",
    "value": "The reader steps up in pitch.\n\nTime: no time of its own.\n\n*X-SAMPA upstep, Jefferson transcription*"},
    "label": "↑ step up"}}
--> {"jsonrpc": "2.0", "id": 3, "method": "completionItem/resolve", "params": {"label": "pace",
    "data": {"uri": "file:///tide/pool.say", "topic": "key:pace"}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"data": {"topic": "key:pace",
    "uri": "file:///tide/pool.say"}, "documentation": {"kind": "markdown",
    "value": "A speed on top of the reader's own, or words a minute in its place.\n\n`pace: 1.1x`"},
    "label": "pace"}}
--> {"jsonrpc": "2.0", "id": 4, "method": "completionItem/resolve",
    "params": {"label": "long-sentence", "data": {"uri": "file:///tide/pool.say",
    "topic": "rule:long-sentence"}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": {"data": {"topic": "rule:long-sentence",
    "uri": "file:///tide/pool.say"}, "documentation": {"kind": "markdown",
    "value": "A reader can look back; a listener cannot. GOV.UK asks for sentences of at most 25 words (`long_sentence_words`; `marked_sentence_words` from stage `mark` on). Any pause mark inside the sentence is enough: the reader then knows where to rest. A semicolon, a colon or a dash is a rest as well: only the words between two of them are counted. Where the same thought already runs on or leaves no place to breathe, only that is reported."},
    "label": "long-sentence"}}

# A topic that nobody knows has nothing to add; an item that is not ours is refused.
--> {"jsonrpc": "2.0", "id": 5, "method": "completionItem/resolve", "params": {"label": "tide",
    "data": {"uri": "file:///tide/pool.say", "topic": "mark:tide"}}}
<-- {"id": 5, "jsonrpc": "2.0", "result": {"data": {"topic": "mark:tide",
    "uri": "file:///tide/pool.say"}, "label": "tide"}}
--> {"jsonrpc": "2.0", "id": 6, "method": "completionItem/resolve", "params": {"label": "tide",
    "data": {"uri": "file:///tide/pool.say", "topic": "tide"}}}
<-- {"id": 6, "jsonrpc": "2.0", "result": {"data": {"topic": "tide",
    "uri": "file:///tide/pool.say"}, "label": "tide"}}
--> {"jsonrpc": "2.0", "id": 7, "method": "completionItem/resolve", "params": {"label": "tide"}}
<-- {"error": {"code": -32602, "message": "data.uri: missing"}, "id": 7, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 8, "method": "completionItem/resolve", "params": ["tide"]}
<-- {"error": {"code": -32602, "message": "params: expected an object"}, "id": 8, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
