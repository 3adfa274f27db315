# Words taught to the project: a list that is made, used at once when it changes, and added to.

--> {"jsonrpc": "2.0", "id": 0, "method": "initialize", "params": {"processId": null,
    "rootUri": null,
    "capabilities": {"textDocument": {"codeAction": {"codeActionLiteralSupport": {"codeActionKind": {"valueSet": ["quickfix"]}}}},
    "workspace": {"workspaceEdit": {"documentChanges": true, "resourceOperations": ["create"]},
    "didChangeWatchedFiles": {"dynamicRegistration": true}}}}}
<-- {"id": 0, …}
--> {"jsonrpc": "2.0", "method": "initialized", "params": {}}
<-- {"id": 1, …}
--> {"jsonrpc": "2.0", "id": 1, "result": null}
--> {"jsonrpc": "2.0", "method": "textDocument/didOpen",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say", "languageId": "sayline",
    "version": 1, "text": "Mirrenka{mih-REHN-kuh}'s team met in Fowey.\n"}}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "unknown-word",
    "message": "“Fowey” is in no dictionary: it is timed as FOW-ee, a guess",
    "range": {"end": {"character": 42, "line": 0}, "start": {"character": 37, "line": 0}},
    "severity": 4, "source": "sayline"}], "uri": "${folder-uri}/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 2, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say"}, "range": {"start": {"line": 0,
    "character": 38}, "end": {"line": 0, "character": 38}}, "context": {"diagnostics": [],
    "only": ["quickfix"]}}}
<-- {"id": 2, "jsonrpc": "2.0", "result": [{"diagnostics": [{"code": "unknown-word",
    "message": "“Fowey” is in no dictionary: it is timed as FOW-ee, a guess",
    "range": {"end": {"character": 42, "line": 0}, "start": {"character": 37, "line": 0}},
    "severity": 4, "source": "sayline"}],
    "edit": {"documentChanges": [{"edits": [{"newText": "{FOW-ee}",
    "range": {"end": {"character": 42, "line": 0}, "start": {"character": 42, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]}, "kind": "quickfix",
    "title": "Add the pronouncer FOW-ee"}, {"diagnostics": [{"code": "unknown-word",
    "message": "“Fowey” is in no dictionary: it is timed as FOW-ee, a guess",
    "range": {"end": {"character": 42, "line": 0}, "start": {"character": 37, "line": 0}},
    "severity": 4, "source": "sayline"}], "edit": {"documentChanges": [{"kind": "create",
    "options": {"ignoreIfExists": true}, "uri": "${folder-uri}/.sayline/words.pls"},
    {"edits": [{"newText": "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<!-- How this project says its own words, in the International Phonetic Alphabet. -->\n<lexicon version=\"1.0\" xmlns=\"http://www.w3.org/2005/01/pronunciation-lexicon\"\n         alphabet=\"ipa\" xml:lang=\"en-US\">\n  <lexeme>\n    <grapheme>Fowey</grapheme>\n    <phoneme>ˈfaʊi</phoneme>\n  </lexeme>\n</lexicon>\n",
    "range": {"end": {"character": 0, "line": 0}, "start": {"character": 0, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/.sayline/words.pls", "version": null}}]},
    "kind": "quickfix", "title": "Teach the project “Fowey” as FOW-ee"},
    {"diagnostics": [{"code": "unknown-word",
    "message": "“Fowey” is in no dictionary: it is timed as FOW-ee, a guess",
    "range": {"end": {"character": 42, "line": 0}, "start": {"character": 37, "line": 0}},
    "severity": 4, "source": "sayline"}],
    "edit": {"documentChanges": [{"edits": [{"newText": "% allow: unknown-word\n",
    "range": {"end": {"character": 0, "line": 0}, "start": {"character": 0, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]}, "kind": "quickfix",
    "title": "Leave this one (unknown-word)"}]}
--> {"jsonrpc": "2.0", "id": 3, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say"}, "range": {"start": {"line": 0,
    "character": 3}, "end": {"line": 0, "character": 3}}, "context": {"diagnostics": [],
    "only": ["refactor"]}}}
<-- {"id": 3, "jsonrpc": "2.0",
    "result": [{"edit": {"documentChanges": [{"edits": [{"newText": "\n\n",
    "range": {"end": {"character": 25, "line": 0}, "start": {"character": 24, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]}, "kind": "refactor.rewrite",
    "title": "Begin a new thought at “team”"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "/ ", "range": {"end": {"character": 25,
    "line": 0}, "start": {"character": 25, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]}, "kind": "refactor.rewrite",
    "title": "Breathe before “team”"}, {"edit": {"documentChanges": [{"edits": [{"newText": "*",
    "range": {"end": {"character": 37, "line": 0}, "start": {"character": 37, "line": 0}}},
    {"newText": "*", "range": {"end": {"character": 42, "line": 0}, "start": {"character": 42,
    "line": 0}}}], "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]},
    "kind": "refactor.rewrite", "title": "Lean on “Fowey”: a reader likely would"},
    {"edit": {"documentChanges": [{"kind": "create", "options": {"ignoreIfExists": true},
    "uri": "${folder-uri}/.sayline/words.pls"},
    {"edits": [{"newText": "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<!-- How this project says its own words, in the International Phonetic Alphabet. -->\n<lexicon version=\"1.0\" xmlns=\"http://www.w3.org/2005/01/pronunciation-lexicon\"\n         alphabet=\"ipa\" xml:lang=\"en-US\">\n  <lexeme>\n    <grapheme>Mirrenka</grapheme>\n    <phoneme>mɪˈɹɛnkə</phoneme>\n  </lexeme>\n</lexicon>\n",
    "range": {"end": {"character": 0, "line": 0}, "start": {"character": 0, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/.sayline/words.pls", "version": null}}]},
    "kind": "refactor.rewrite", "title": "Keep this pronunciation of “Mirrenka” for the project"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "*", "range": {"end": {"character": 37,
    "line": 0}, "start": {"character": 37, "line": 0}}}, {"newText": "*",
    "range": {"end": {"character": 42, "line": 0}, "start": {"character": 42, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]}, "kind": "refactor.rewrite",
    "title": "Mark the script lightly"}]}

# The list as the editor would have written it, empty first: nothing is wrong with a new file.
files> .sayline/words.pls 
--> {"jsonrpc": "2.0", "method": "workspace/didChangeWatchedFiles",
    "params": {"changes": [{"uri": "${folder-uri}/.sayline/words.pls", "type": 1}]}}
--> {"jsonrpc": "2.0", "id": 4, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say"}, "position": {"line": 0,
    "character": 38}}}
<-- {"id": 4, "jsonrpc": "2.0", "result": {"contents": {"kind": "plaintext",
    "value": "Fowey · FOW-ee · /ˈfaʊi/\n\n2 syllables, … s\n\nNot in the dictionary: the sound is a guess."},
    "range": {"end": {"character": 42, "line": 0}, "start": {"character": 37, "line": 0}}}}
files> .sayline/words.pls <lexicon version="1.0" xmlns="http://www.w3.org/2005/01/pronunciation-lexicon" alphabet="ipa" xml:lang="en"><lexeme><grapheme>Fowey</grapheme><phoneme>ˈfɔɪ</phoneme></lexeme><!-- more --></lexicon>
--> {"jsonrpc": "2.0", "method": "workspace/didChangeWatchedFiles",
    "params": {"changes": [{"uri": "${folder-uri}/.sayline/words.pls", "type": 2}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics", "params": {"diagnostics": [],
    "uri": "${folder-uri}/pool.say", "version": 1}}
--> {"jsonrpc": "2.0", "id": 5, "method": "textDocument/hover",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say"}, "position": {"line": 0,
    "character": 38}}}
<-- {"id": 5, "jsonrpc": "2.0", "result": {"contents": {"kind": "plaintext",
    "value": "Fowey · foy · /fɔɪ/\n\n1 syllable, … s\n\nFrom the project's word list."},
    "range": {"end": {"character": 42, "line": 0}, "start": {"character": 37, "line": 0}}}}
--> {"jsonrpc": "2.0", "id": 6, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say"}, "range": {"start": {"line": 0,
    "character": 12}, "end": {"line": 0, "character": 12}}, "context": {"diagnostics": [],
    "only": ["refactor"]}}}
<-- {"id": 6, "jsonrpc": "2.0",
    "result": [{"edit": {"documentChanges": [{"edits": [{"newText": "\n\n",
    "range": {"end": {"character": 25, "line": 0}, "start": {"character": 24, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]}, "kind": "refactor.rewrite",
    "title": "Begin a new thought at “team”"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "/ ", "range": {"end": {"character": 25,
    "line": 0}, "start": {"character": 25, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]}, "kind": "refactor.rewrite",
    "title": "Breathe before “team”"}, {"edit": {"documentChanges": [{"edits": [{"newText": "*",
    "range": {"end": {"character": 37, "line": 0}, "start": {"character": 37, "line": 0}}},
    {"newText": "*", "range": {"end": {"character": 42, "line": 0}, "start": {"character": 42,
    "line": 0}}}], "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]},
    "kind": "refactor.rewrite", "title": "Lean on “Fowey”: a reader likely would"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "\n  <lexeme>\n    <grapheme>Mirrenka</grapheme>\n    <phoneme>mɪˈɹɛnkə</phoneme>\n  </lexeme>\n",
    "range": {"end": {"character": 187, "line": 0}, "start": {"character": 187, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/.sayline/words.pls", "version": null}}]},
    "kind": "refactor.rewrite", "title": "Keep this pronunciation of “Mirrenka” for the project"},
    {"edit": {"documentChanges": [{"edits": [{"newText": "*", "range": {"end": {"character": 37,
    "line": 0}, "start": {"character": 37, "line": 0}}}, {"newText": "*",
    "range": {"end": {"character": 42, "line": 0}, "start": {"character": 42, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/pool.say", "version": 1}}]}, "kind": "refactor.rewrite",
    "title": "Mark the script lightly"}]}

# Another sound in the text than in the list: the list's takes its place.
--> {"jsonrpc": "2.0", "method": "textDocument/didChange",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say", "version": 2},
    "contentChanges": [{"text": "They met in Fowey{FOH-ee}.\n"}]}}
--> {"jsonrpc": "2.0", "id": 7, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say"}, "range": {"start": {"line": 0,
    "character": 14}, "end": {"line": 0, "character": 14}}, "context": {"diagnostics": [],
    "only": ["refactor"]}}}
<-- {"id": 7, "jsonrpc": "2.0",
    "result": [{"edit": {"documentChanges": [{"edits": [{"newText": "ˈfoʊi",
    "range": {"end": {"character": 155, "line": 0}, "start": {"character": 151, "line": 0}}}],
    "textDocument": {"uri": "${folder-uri}/.sayline/words.pls", "version": null}}]},
    "kind": "refactor.rewrite", "title": "Keep this pronunciation of “Fowey” for the project"}]}

# A list that is no lexicon is reported where it is wrong, and is left alone.
files> .sayline/words.pls <words/>
--> {"jsonrpc": "2.0", "method": "workspace/didChangeWatchedFiles",
    "params": {"changes": [{"uri": "${folder-uri}/.sayline/words.pls", "type": 2}]}}
<-- {"jsonrpc": "2.0", "method": "textDocument/publishDiagnostics",
    "params": {"diagnostics": [{"code": "settings",
    "message": "<words> is no lexicon; the root may be <lexicon>: nothing in this file applies",
    "range": {"end": {"character": 8, "line": 0}, "start": {"character": 0, "line": 0}},
    "severity": 2, "source": "sayline"}], "uri": "${folder-uri}/.sayline/words.pls"}}
--> {"jsonrpc": "2.0", "id": 8, "method": "textDocument/codeAction",
    "params": {"textDocument": {"uri": "${folder-uri}/pool.say"}, "range": {"start": {"line": 0,
    "character": 14}, "end": {"line": 0, "character": 14}}, "context": {"diagnostics": [],
    "only": ["quickfix"]}}}
<-- {"id": 8, "jsonrpc": "2.0", "result": []}

--> {"jsonrpc": "2.0", "id": 99, "method": "shutdown"}
<-- {"id": 99, "jsonrpc": "2.0", "result": null}
--> {"jsonrpc": "2.0", "method": "exit"}
