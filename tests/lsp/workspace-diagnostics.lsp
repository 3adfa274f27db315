# The findings of the folder's scripts, open or not; what the client knows by name is not told again.

files> a.say You should utilize a pencil.
files> rocks/b.say Go out and count.
files> rocks/c.say We purchase string.
--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"textDocument": {"diagnostic": {}},
    "window": {"workDoneProgress": true}}, "workspaceFolders": [{"uri": "${folder-uri}",
    "name": "tide"}]}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "${folder-uri}/rocks/b.say", "languageId": "sayline",
    "version": 7, "text": "We utilize string.\n"}}}
--> {"jsonrpc": "2.0", "id": 1, "method": "workspace/diagnostic",
    "params": {"identifier": "sayline", "previousResultIds": [], "workDoneToken": "folder"}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": "folder",
    "value": {"cancellable": true, "kind": "begin", "percentage": 0,
    "title": "Checking the scripts of the folder"}}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": "folder",
    "value": {"kind": "report", "message": "1 of 3", "percentage": 33}}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": "folder",
    "value": {"kind": "report", "message": "2 of 3", "percentage": 66}}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": "folder",
    "value": {"kind": "report", "message": "3 of 3", "percentage": 100}}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": "folder",
    "value": {"kind": "end"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"items": [{"items": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 18, "line": 0}, "start": {"character": 11, "line": 0}},
    "severity": 4, "source": "sayline"}], "kind": "full", "resultId": "003af8eee40219e4",
    "uri": "${folder-uri}/a.say", "version": null}, {"items": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}},
    "severity": 4, "source": "sayline"}], "kind": "full", "resultId": "18fd1c7efe7266a7",
    "uri": "${folder-uri}/rocks/b.say", "version": 7}, {"items": [], "kind": "full",
    "resultId": "fdbdf6ac4fc52e7f", "uri": "${folder-uri}/rocks/c.say", "version": null}]}}
# Parts as they come, then an answer without any.
--> {"jsonrpc": "2.0", "id": 2, "method": "workspace/diagnostic",
    "params": {"previousResultIds": [{"uri": "${folder-uri}/a.say", "value": "8fa8a8030538922e"}],
    "partialResultToken": 5}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": 5,
    "value": {"items": [{"items": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 18, "line": 0}, "start": {"character": 11, "line": 0}},
    "severity": 4, "source": "sayline"}], "kind": "full", "resultId": "003af8eee40219e4",
    "uri": "${folder-uri}/a.say", "version": null}]}}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": 5,
    "value": {"items": [{"items": [{"code": "written-wording",
    "message": "“utilize” is written, not said; people say “use”",
    "range": {"end": {"character": 10, "line": 0}, "start": {"character": 3, "line": 0}},
    "severity": 4, "source": "sayline"}], "kind": "full", "resultId": "18fd1c7efe7266a7",
    "uri": "${folder-uri}/rocks/b.say", "version": 7}]}}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": 5,
    "value": {"items": [{"items": [], "kind": "full", "resultId": "fdbdf6ac4fc52e7f",
    "uri": "${folder-uri}/rocks/c.say", "version": null}]}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"items": []}}
# A folder that is gone is not looked at.
--> {"jsonrpc": "2.0", "method": "workspace/didChangeWorkspaceFolders",
    "params": {"event": {"added": [], "removed": [{"uri": "${folder-uri}", "name": "tide"}]}}}
--> {"jsonrpc": "2.0", "id": 3, "method": "workspace/diagnostic",
    "params": {"previousResultIds": []}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"items": []}}
--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
