# A thought, a word, a mark, a heading; nothing between thoughts.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null, "capabilities": {"textDocument": {"hover": {"contentFormat": ["markdown",
    "plaintext"]}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "file:///tide/pool.say", "languageId": "sayline",
    "version": 1,
    "text": "---\ntitle: Counting limpets\ntarget: 0:20 max\nspeakers: MIRA, JO\n---\n# Hello (0:05)\n\nMIRA: Every spring we walk the *same* stretch of shore / with a square of string.\n\nJO: You do not need a boat.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "file:///tide/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 1, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 7,
    "character": 14}}}
<-- {"id": 1, "jsonrpc": "2.0", "result": {"contents": {"kind": "markdown",
    "value": "**spring** · sprihng · /spɹɪŋ/\n\n1 syllable, … s\n\nFrom the dictionary. Also said: sper-IHNG · /spɚˈɪŋ/."},
    "range": {"end": {"character": 18, "line": 7}, "start": {"character": 12, "line": 7}}}}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 7,
    "character": 31}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": {"contents": {"kind": "markdown",
    "value": "**stress**: the reader leans on it.\n\nTime: the word at 0.9 of its rate.\n\n*hand practice*"},
    "range": {"end": {"character": 37, "line": 7}, "start": {"character": 31, "line": 7}}}}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 5,
    "character": 4}}}
<-- {"id": 3, "jsonrpc": "2.0", "result": {"contents": {"kind": "markdown",
    "value": "**…** · between … s and … s\n\nTarget 0:05: met.\n\nBegins at 0:00.\n\nFor the ear: Easy Listening 1.0; thoughts of 10 words (… s); … stresses, … marked and … written pauses a minute; … words a minute, … syllables a second."},
    "range": {"end": {"character": 14, "line": 5}, "start": {"character": 0, "line": 5}}}}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 8,
    "character": 0}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": null}

--> {"jsonrpc": "2.0", "id": 21, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "file:///tide/pool.say"}, "position": {"line": 2,
    "character": 3}}}
--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
<-- {"id": 21, "jsonrpc": "2.0", "result": {"contents": {"kind": "markdown",
    "value": "**target**: How long the script may run.\n\n`target: 2:30 max`\n\n**0:06** · between 4.4 s and 7.5 s\n\nTarget 0:20 max: met.\n\nFor the ear: Easy Listening 1.0; thoughts of 10 words (2.6 s); 10.0 stresses, 10.0 marked and 10.0 written pauses a minute; 200 words a minute, 4.5 syllables a second."},
    "range": {"end": {"character": 16, "line": 2}, "start": {"character": 0, "line": 2}}}}
--> {"jsonrpc": "2.0", "method": "exit"}
