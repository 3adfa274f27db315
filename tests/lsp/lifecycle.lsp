# The life of a session: initialize, initialized, shutdown, exit with status 0.
# What comes too early, twice or too late is refused as the protocol says.

--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}
<-- {"error": {"code": -32002, "message": "initialize comes first"}, "id": 1, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1, "text": "Too early, so passed over."}}}
--> {"jsonrpc": "2.0", "id": 2, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 2, "jsonrpc": "2.0",
    "result": {"capabilities": {"codeActionProvider": {"codeActionKinds": ["quickfix",
    "refactor.rewrite", "source.fixAll.sayline"], "resolveProvider": true},
    "codeLensProvider": {"resolveProvider": false}, "completionProvider": {"resolveProvider": true,
    "triggerCharacters": ["^", "{", "[", "*", "/", "(", "%", ":"]}, "definitionProvider": true,
    "diagnosticProvider": {"identifier": "sayline", "interFileDependencies": false,
    "workspaceDiagnostics": true}, "documentFormattingProvider": true,
    "documentHighlightProvider": true, "documentLinkProvider": {"resolveProvider": false},
    "documentOnTypeFormattingProvider": {"firstTriggerCharacter": "\n"},
    "documentRangeFormattingProvider": true, "documentSymbolProvider": true,
    "executeCommandProvider": {"commands": ["sayline.fixAll", "sayline.splitScript",
    "sayline.markScript", "sayline.applyFix", "sayline.openRules", "sayline.openSettings",
    "sayline.openReader"]}, "experimental": {"sayline": {"speak": true, "targets": …}},
    "foldingRangeProvider": true,
    "hoverProvider": true, "inlayHintProvider": {"resolveProvider": true},
    "linkedEditingRangeProvider": true, "positionEncoding": "utf-16", "referencesProvider": true,
    "renameProvider": true, "selectionRangeProvider": true,
    "semanticTokensProvider": {"full": {"delta": true}, "legend": {"tokenModifiers": ["stress",
    "heavy", "soft", "quick", "slow", "aside", "quoted", "punch", "unspoken"],
    "tokenTypes": ["heading", "key", "value", "speaker", "note", "direction", "mark", "words"]},
    "range": true}, "textDocumentSync": {"change": 2, "openClose": true, "save": true},
    "workspace": {"fileOperations": {"didCreate": {"filters": [{"pattern": {"glob": "**/.sayline/**",
    "matches": "file"}, "scheme": "file"}, {"pattern": {"glob": "**/*.pls", "matches": "file"},
    "scheme": "file"}, {"pattern": {"glob": "**/*.say", "matches": "file"}, "scheme": "file"},
    {"pattern": {"glob": "**", "matches": "folder"}, "scheme": "file"}]},
    "didDelete": {"filters": [{"pattern": {"glob": "**/.sayline/**", "matches": "file"},
    "scheme": "file"}, {"pattern": {"glob": "**/*.pls", "matches": "file"}, "scheme": "file"},
    {"pattern": {"glob": "**/*.say", "matches": "file"}, "scheme": "file"},
    {"pattern": {"glob": "**", "matches": "folder"}, "scheme": "file"}]},
    "didRename": {"filters": [{"pattern": {"glob": "**/.sayline/**", "matches": "file"},
    "scheme": "file"}, {"pattern": {"glob": "**/*.pls", "matches": "file"}, "scheme": "file"},
    {"pattern": {"glob": "**/*.say", "matches": "file"}, "scheme": "file"},
    {"pattern": {"glob": "**", "matches": "folder"}, "scheme": "file"}]}},
    "workspaceFolders": {"changeNotifications": true, "supported": true}},
    "workspaceSymbolProvider": true}, "serverInfo": {"name": "sayline", "version": "0.1.0"}}}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "id": 3, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"error": {"code": -32600, "message": "initialize comes only once"}, "id": 3, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}
<-- {"error": {"code": -32602, "message": "textDocument.uri: file:///tide/pool.say is not open"},
    "id": 4, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": "five", "method": "shutdown"}
<-- {"id": "five", "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "id": 6, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 0,
    "character": 0}}}
<-- {"error": {"code": -32600, "message": "the server was shut down"}, "id": 6, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 7, "method": "shutdown"}
<-- {"error": {"code": -32600, "message": "the server was shut down"}, "id": 7, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "exit"}
