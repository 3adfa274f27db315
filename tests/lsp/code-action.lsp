# Fixes of the findings in the range, linked with them, as edits of the version they were made for.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null,
    "capabilities": {"textDocument": {"codeAction": {"codeActionLiteralSupport": {"codeActionKind": {"valueSet": ["quickfix"]}},
    "isPreferredSupport": true}}, "workspace": {"workspaceEdit": {"documentChanges": true}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "We utilize a square of string.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 5}, "end": {"line": 0, "character": 5}}, "context": {"diagnostics": [],
    "only": ["quickfix"]}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"diagnostics": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}},
    "severity": 4, "source": "sayline"}], "edit": {"documentChanges": [{"edits": [{"newText": "use",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 1}}]}, "isPreferred": true,
    "kind": "quickfix", "title": "Say “use”"}, {"diagnostics": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}},
    "severity": 4, "source": "sayline"}],
    "edit": {"documentChanges": [{"edits": [{"newText": "% allow: written-wording\n",
    "range": {"end": {"character": 0, "line": 0}, "start": {"character": 0, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 1}}]}, "kind": "quickfix",
    "title": "Leave this one (written-wording)"}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 20}, "end": {"line": 0, "character": 20}}, "context": {"diagnostics": [],
    "only": ["source.fixAll"]}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": []}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 20}, "end": {"line": 0, "character": 20}}, "context": {"diagnostics": [],
    "only": ["quick"]}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": []}

# Two sentences at the cursor: a rewrite, and the bulk fix of the whole script.
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "version": 2},
    "contentChanges": [{"text": "We count them. Then we write it down on the sheet. Then we take it home and look at it for a while.\n"}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "run-on",
    "message": "3 sentences follow on for 6.2 s with no gap to let each one land",
    "range": {"end": {"character": 99, "line": 0}, "start": {"character": 0, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "file:///tide/pool.say", "version": 2}}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 20}, "end": {"line": 0, "character": 20}}, "context": {"diagnostics": [],
    "only": ["refactor"]}}}
<-- {"id": 4, "jsonrpc": "2.0",
    "result": [{"edit": {"documentChanges": [{"edits": [{"newText": "\n\n",
    "range": {"end": {"character": 20, "line": 0}, "start": {"character": 19, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 2}}]}, "kind": "refactor.rewrite",
    "title": "Begin a new thought at “we”"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "/ ", "range": {"end": {"character": 20,
    "line": 0}, "start": {"character": 20, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 2}}]}, "kind": "refactor.rewrite",
    "title": "Breathe before “we”"}, {"edit": {"documentChanges": [{"edits": [{"newText": "\n\n",
    "range": {"end": {"character": 15, "line": 0}, "start": {"character": 14, "line": 0}}},
    {"newText": "\n\n", "range": {"end": {"character": 51, "line": 0}, "start": {"character": 50,
    "line": 0}}}], "textDocument": {"uri": "file:///tide/pool.say", "version": 2}}]},
    "kind": "refactor.rewrite", "title": "Give each sentence its own thought"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "*", "range": {"end": {"character": 44,
    "line": 0}, "start": {"character": 44, "line": 0}}}, {"newText": "*",
    "range": {"end": {"character": 49, "line": 0}, "start": {"character": 49, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 2}}]}, "kind": "refactor.rewrite",
    "title": "Lean on “sheet”: a reader likely would"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "*", "range": {"end": {"character": 44,
    "line": 0}, "start": {"character": 44, "line": 0}}}, {"newText": "*",
    "range": {"end": {"character": 49, "line": 0}, "start": {"character": 49, "line": 0}}},
    {"newText": "*", "range": {"end": {"character": 67, "line": 0}, "start": {"character": 67,
    "line": 0}}}, {"newText": "*", "range": {"end": {"character": 71, "line": 0},
    "start": {"character": 71, "line": 0}}}, {"newText": "/ ", "range": {"end": {"character": 72,
    "line": 0}, "start": {"character": 72, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 2}}]}, "kind": "refactor.rewrite",
    "title": "Mark this thought lightly"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "\n\n", "range": {"end": {"character": 15,
    "line": 0}, "start": {"character": 14, "line": 0}}}, {"newText": "\n\n",
    "range": {"end": {"character": 51, "line": 0}, "start": {"character": 50, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 2}}]}, "kind": "refactor.rewrite",
    "title": "Give each sentence its own thought, in the whole script"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "*", "range": {"end": {"character": 44,
    "line": 0}, "start": {"character": 44, "line": 0}}}, {"newText": "*",
    "range": {"end": {"character": 49, "line": 0}, "start": {"character": 49, "line": 0}}},
    {"newText": "*", "range": {"end": {"character": 67, "line": 0}, "start": {"character": 67,
    "line": 0}}}, {"newText": "*", "range": {"end": {"character": 71, "line": 0},
    "start": {"character": 71, "line": 0}}}, {"newText": "/ ", "range": {"end": {"character": 72,
    "line": 0}, "start": {"character": 72, "line": 0}}}],
    "textDocument": {"uri": "file:///tide/pool.say", "version": 2}}]}, "kind": "refactor.rewrite",
    "title": "Mark the script lightly"}]}
--> {"jsonrpc": "2.0", "id": 5, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "range": {"start": {"line": 0,
    "character": 20}, "end": {"line": 0, "character": 20}}, "context": {"diagnostics": [],
    "only": ["source"]}}}
<-- {"id": 5, "jsonrpc": "2.0",
    "result": [{"edit": {"documentChanges": [{"edits": [{"newText": "\n\n",
    "range": {"end": {"character": 15, "line": 0}, "start": {"character": 14, "line": 0}}},
    {"newText": "\n\n", "range": {"end": {"character": 51, "line": 0}, "start": {"character": 50,
    "line": 0}}}], "textDocument": {"uri": "file:///tide/pool.say", "version": 2}}]},
    "kind": "source.fixAll.sayline", "title": "Mend all that keeps every word"}]}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
