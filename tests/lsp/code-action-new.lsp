# What LSP 3.18 adds to code actions, for clients that ask for it: a guess put in by a fix is
# selected, to be typed over, and the kind of action is documented.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"workspace": {"applyEdit": true,
    "workspaceEdit": {"documentChanges": true, "snippetEditSupport": true}},
    "textDocument": {"codeAction": {"documentationSupport": true,
    "codeActionLiteralSupport": {"codeActionKind": {"valueSet": []}}}},
    "window": {"showDocument": {"support": true}}}}}
<-- {"id": 0, "jsonrpc": "2.0",
    "result": {"capabilities": {"codeActionProvider": {"codeActionKinds": ["quickfix",
    "refactor.rewrite", "source.fixAll.sayline"],
    "documentation": [{"command": {"command": "sayline.openRules",
    "title": "What the rules look for"}, "kind": "quickfix"}], "resolveProvider": true}, …
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "---\nstage: read\n---\n\nWe call it the Zwyrgle pool.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "unknown-word",
    "message": "“Zwyrgle” is in no dictionary: it is timed as ZWIHR-guhl, a guess",
    "range": {"end": {"character": 22, "line": 4}, "start": {"character": 15, "line": 4}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 4,
    "character": 16}, "end": {"line": 4, "character": 16}}, "context": {"diagnostics": [],
    "only": ["quickfix"]}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"diagnostics": [{"code": "unknown-word",
    "message": "“Zwyrgle” is in no dictionary: it is timed as ZWIHR-guhl, a guess",
    "range": {"end": {"character": 22, "line": 4}, "start": {"character": 15, "line": 4}},
    "severity": 4, "source": "sayline"}],
    "edit": {"documentChanges": [{"edits": [{"range": {"end": {"character": 22, "line": 4},
    "start": {"character": 22, "line": 4}}, "snippet": {"kind": "snippet",
    "value": "{${1:ZWIHR-guhl}\\}"}}], "textDocument": {"uri": "file:///tide/pool.say",
    "version": 1}}]}, "kind": "quickfix", "title": "Add the pronouncer ZWIHR-guhl"},
    {"diagnostics": [{"code": "unknown-word",
    "message": "“Zwyrgle” is in no dictionary: it is timed as ZWIHR-guhl, a guess",
    "range": {"end": {"character": 22, "line": 4}, "start": {"character": 15, "line": 4}},
    "severity": 4, "source": "sayline"}],
    "edit": {"documentChanges": [{"edits": [{"newText": "% allow: unknown-word\n",
    "range": {"end": {"character": 0, "line": 4}, "start": {"character": 0, "line": 4}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 1}}]}, "kind": "quickfix",
    "title": "Leave this one (unknown-word)"}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
