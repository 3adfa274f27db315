# sayline/speak: the guide read, whole or of one thought, into a file that the client names.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\nspeakers: MIRA, JO\n---\n\nMIRA: Every spring we walk the *same* stretch of shore with a square of string.\n\n% a note\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "sayline/speak",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "file": "file:///dev/null",
    "workDoneToken": "speech"}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": "speech",
    "value": {"cancellable": true, "kind": "begin", "percentage": 0,
    "title": "Speaking the script"}}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": "speech",
    "value": {"kind": "end"}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"file": "file:///dev/null",
    "range": {"end": {"character": 79, "line": 4}, "start": {"character": 0, "line": 4}},
    "seconds": …}}
--> {"jsonrpc": "2.0", "id": 2, "method": "sayline/speak",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "file": "file:///dev/null",
    "position": {"line": 6, "character": 0}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"file": "file:///dev/null",
    "range": {"end": {"character": 79, "line": 4}, "start": {"character": 0, "line": 4}},
    "seconds": …}}
--> {"jsonrpc": "2.0", "id": 3, "method": "sayline/speak",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"},
    "file": "file:///no/such/folder/a.wav"}}
<-- {"error": {"code": -32803,
    "message": "/no/such/folder/a.wav: cannot be written (No such file or directory)"}, "id": 3,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 10, "method": "sayline/speak",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "file": "file:///tide/pool.say"}}
--> {"jsonrpc": "2.0", "id": 4, "method": "sayline/speak",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "file": "untitled:a.wav"}}
<-- {"error": {"code": -32602, "message": "file: expected a file URI, where the sound is written"},
    "id": 4, "jsonrpc": "2.0"}
<-- {"error": {"code": -32803,
    "message": "/tide/pool.say: that is a script's name; give another ending"}, "id": 10,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 5, "method": "sayline/speak",
    "params": {"textDocument": {"uri": "file:///tide/rock.say"}, "file": "file:///dev/null"}}
<-- {"error": {"code": -32602, "message": "textDocument.uri: file:///tide/rock.say is not open"},
    "id": 5, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 6, "method": "sayline/speak",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}}}
<-- {"error": {"code": -32602, "message": "file: missing"}, "id": 6, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 7, "method": "sayline/export",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "target": "wav"}}
<-- {"error": {"code": -32803,
    "message": "wav is a sound, not a text; sayline/speak writes it to a file"}, "id": 7,
    "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 8, "method": "sayline/speak",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "file": "file:///dev/null",
    "workDoneToken": 8}}
--> {"jsonrpc": "2.0", "method": "$/cancelRequest", "params": {"id": 8}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": 8, "value": {"cancellable": true,
    "kind": "begin", "percentage": 0, "title": "Speaking the script"}}}
<-- {"jsonrpc": "2.0", "method": "$/progress", "params": {"token": 8, "value": {"kind": "end"}}}
<-- {"error": {"code": -32800, "message": "cancelled"}, "id": 8, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/note.say", "languageId": "sayline",
    "version": 1, "text": "% Nobody says this.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/note.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 9, "method": "sayline/speak",
    "params": {"textDocument": {"uri": "file:///tide/note.say"}, "file": "file:///dev/null"}}
<-- {"error": {"code": -32803, "message": "nothing is said here"}, "id": 9, "jsonrpc": "2.0"}
--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
