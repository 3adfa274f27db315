# Titles, speakers and sections of the folder: of an open script as it is typed, of others as they are saved.

files> a.say # Saved tide
files> rocks/b.say # Old tide
files> rocks/notes.txt # No script's tide
--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}, "workspaceFolders": [{"uri": "${folder-uri}",
    "name": "tide"}, {"uri": "${folder-uri}/rocks", "name": "rocks"}]}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "${folder-uri}/rocks/b.say", "languageId": "sayline",
    "version": 1, "text": "---\ntitle: The tide 🐚\nspeakers: TIDA, JO\n---\n# New tide (0:10)\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "${folder-uri}/rocks/b.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "workspace/symbol", "params": {"query": "TID"}}
<-- {"id": 1, "jsonrpc": "2.0", "result": [{"containerName": "a.say", "kind": 3,
    "location": {"range": {"end": {"character": 12, "line": 0}, "start": {"character": 0,
    "line": 0}}, "uri": "${folder-uri}/a.say"}, "name": "Saved tide"}, {"containerName": "b.say",
    "kind": 1, "location": {"range": {"end": {"character": 18, "line": 1}, "start": {"character": 7,
    "line": 1}}, "uri": "${folder-uri}/rocks/b.say"}, "name": "The tide 🐚"},
    {"containerName": "b.say", "kind": 19, "location": {"range": {"end": {"character": 14,
    "line": 2}, "start": {"character": 10, "line": 2}}, "uri": "${folder-uri}/rocks/b.say"},
    "name": "TIDA"}, {"containerName": "b.say", "kind": 3,
    "location": {"range": {"end": {"character": 17, "line": 4}, "start": {"character": 0,
    "line": 4}}, "uri": "${folder-uri}/rocks/b.say"}, "name": "New tide"}]}
--> {"jsonrpc": "2.0", "id": 2, "method": "workspace/symbol", "params": {"query": "boat"}}
<-- {"id": 2, "jsonrpc": "2.0", "result": []}
--> {"jsonrpc": "2.0", "id": 3, "method": "workspace/symbol", "params": {}}
<-- {"error": {"code": -32602, "message": "query: missing"}, "id": 3, "jsonrpc": "2.0"}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
