"""The protocol's abuse, played against the server as it runs in an editor (analysing beside).

    conformance.py SAYLINE

Sources: the Language Server Protocol 3.17 ("Base Protocol", "Text Documents", "Server lifecycle"),
JSON-RPC 2.0, RFC 8259. What transcripts can say is in the transcripts; here is what needs many
messages, odd bytes, time or processes.
"""

import json
import os
import random
import signal
import subprocess
import sys
import time

from transcript import Client, frame

SAYLINE = ""
URI = "file:///tide/pool.say"


def start(capabilities=None, process=None):
    client = Client([SAYLINE, "serve"])
    answer = client.request(
        0,
        "initialize",
        {"processId": process, "rootUri": None, "capabilities": capabilities or {}},
    )
    assert "result" in answer, answer
    client.send(note("initialized", {}))
    return client


def note(method, params=None):
    return {"jsonrpc": "2.0", "method": method, "params": params}


def request(id, method, params=None):
    return {"jsonrpc": "2.0", "id": id, "method": method, "params": params}


def document(uri=URI):
    return {"textDocument": {"uri": uri}}


def opened(text, uri=URI, version=1):
    item = {"uri": uri, "languageId": "sayline", "version": version, "text": text}
    return note("textDocument/didOpen", {"textDocument": item})


def changed(version, *changes, uri=URI):
    return note(
        "textDocument/didChange",
        {"textDocument": {"uri": uri, "version": version}, "contentChanges": list(changes)},
    )


def change(text, *places):
    if not places:
        return {"text": text}
    (line, column), (end_line, end_column) = places
    return {
        "text": text,
        "range": {
            "start": {"line": line, "character": column},
            "end": {"line": end_line, "character": end_column},
        },
    }


def stop(client):
    assert client.request("bye", "shutdown")["result"] is None
    client.send(note("exit"))
    rest, status, log = client.close()
    assert status == 0, (status, log)
    return rest


def explained(client, id=1000):
    return client.request(id, "sayline/explain", document())["result"]


def split_at_every_byte():
    client = start()
    data = frame(json.dumps(opened("The tide is out."))) + frame(
        json.dumps(request(1, "sayline/times", document()))
    )
    for byte in data:
        client.write(bytes([byte]))
    answer = client.request(2, "sayline/times", document())
    assert answer["result"]["words"] == 4, answer
    stop(client)


def many_in_one_write():
    client = start()
    client.send(
        opened("Go."), *[request(id, "sayline/times", document()) for id in range(1, 501)]
    )
    answers = set()
    while len(answers) < 500:
        message = json.loads(client.read())
        if "id" in message:
            assert "result" in message, message
            answers.add(message["id"])
    assert answers == set(range(1, 501))
    stop(client)


def deep_nesting():
    client = start()
    depth = 100_000
    for body in (
        "[" * depth,
        "[" * depth + "]" * depth,
        '{"jsonrpc": "2.0", "id": 1, "method": "tide/deep", "params": '
        + '{"a":' * depth + "1" + "}" * depth + "}",
        '{"jsonrpc": "2.0", "id": 2, "method": "textDocument/hover", "params": '
        + '{"textDocument":' * depth + "1" + "}" * depth + "}",
    ):
        client.write(frame(body))
        answer = json.loads(client.read())  # of a batch within batches: one error in an array
        assert "error" in (answer[0] if isinstance(answer, list) else answer), body[:80]
    stop(client)


def odd_texts():
    """Whatever a text holds, it is answered about."""
    client = start()
    texts = [
        "", "\n", "\r", "\0", "\ufeffLow tide.", "a\0b", "---", "---\n", "# ", "*", "\\", "🐚" * 50,
        "e\u0301" * 50, "\u202e\u200f\u200b", "[" * 500, "{" * 500, "(((" * 300, "x xx xxx " * 99,
        "\ud800".encode("utf-16", "surrogatepass").decode("utf-16", "replace"), "\x7f\x1b[31m",
    ]
    for version, text in enumerate(texts, 2):
        client.send(opened(text, version=version))
        for method, more in (
            ("textDocument/onTypeFormatting", {"position": {"line": 1, "character": 0}, "ch": "\n"}),
            ("textDocument/inlineCompletion", {"position": {"line": 0, "character": 0}}),
            ("textDocument/hover", {"position": {"line": 0, "character": 1}}),
            ("textDocument/completion", {"position": {"line": 0, "character": 1}}),
            ("textDocument/documentSymbol", {}),
            ("textDocument/semanticTokens/full", {}),
            ("textDocument/formatting", {"options": {"tabSize": 2, "insertSpaces": True}}),
            ("textDocument/codeLens", {}),
            ("textDocument/foldingRange", {}),
            ("textDocument/documentHighlight", {"position": {"line": 0, "character": 1}}),
            ("textDocument/linkedEditingRange", {"position": {"line": 0, "character": 1}}),
            ("textDocument/references", {"position": {"line": 0, "character": 1}, "context": {}}),
            ("textDocument/definition", {"position": {"line": 0, "character": 1}}),
            ("textDocument/prepareRename", {"position": {"line": 0, "character": 1}}),
            ("textDocument/documentLink", {}),
            ("workspace/symbol", {"query": text}),
            ("textDocument/selectionRange", {"positions": [{"line": 0, "character": 1}] * 3}),
            ("sayline/explain", {}),
        ):
            answer = client.request(version, method, {**document(), **more})
            assert "result" in answer, (text, method, answer)
    stop(client)


def ranges_in(value):
    if isinstance(value, dict):
        if set(value) == {"start", "end"}:
            yield value
        for item in value.values():
            yield from ranges_in(item)
    elif isinstance(value, list):
        for item in value:
            yield from ranges_in(item)


def places_at_every_column():
    """In each encoding, at each column and beyond the end: what is answered lies in the text, and
    a larger selection holds the smaller one."""
    draw = random.Random(5)
    pieces = ["MIRA: ", "🐚 ", "e\u0301 ", "*so* ", "~half ", "[smile 2s] ", "\r\n", "\n\n", "# Tide (0:05)\n",
              "limpet, ", "\r", "JO + MIRA: ", "% note\n", "\"so "]
    for encoding in ("utf-8", "utf-16", "utf-32"):
        client = start({"general": {"positionEncodings": [encoding]}})
        for version in range(1, 9):
            text = "---\r\nspeakers: MIRA=🐚, JO\r\n---\r\n" * (version % 2)
            text += "".join(draw.choice(pieces) for _ in range(25))
            client.send(opened(text, version=version))
            lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
            width = {"utf-8": lambda s: len(s.encode()), "utf-32": len,
                     "utf-16": lambda s: len(s.encode("utf-16-le")) // 2}[encoding]
            spots = [{"line": number, "character": column}
                     for number, line in enumerate(lines) for column in range(width(line) + 2)]
            asked = [(method, {"position": spot, **more}) for spot in spots for method, more in (
                ("textDocument/documentHighlight", {}),
                ("textDocument/linkedEditingRange", {}),
                ("textDocument/references", {"context": {"includeDeclaration": True}}),
                ("textDocument/definition", {}),
                ("textDocument/prepareRename", {}),
                ("textDocument/onTypeFormatting", {"ch": "\n", "options": {}}),
                ("textDocument/inlineCompletion", {"context": {"triggerKind": 1}}),
            )]
            asked += [("textDocument/selectionRange", {"positions": spots}),
                      ("textDocument/codeLens", {}), ("textDocument/documentLink", {})]
            client.send(*[request(id, method, {**document(), **more})
                          for id, (method, more) in enumerate(asked, 1)])
            answers = {}
            while len(answers) < len(asked):
                message = json.loads(client.read())
                if "id" in message:
                    answers[message["id"]] = message
            for id, message in answers.items():
                assert "result" in message, message
                for found in ranges_in(message["result"]):
                    for end in found.values():
                        assert end["character"] <= width(lines[end["line"]]), (text, asked[id - 1], found)
            for chain in answers[len(asked) - 2]["result"]:
                while "parent" in chain:
                    inner, chain = chain["range"], chain["parent"]
                    outer = chain["range"]
                    key = lambda end: (end["line"], end["character"])
                    assert key(outer["start"]) <= key(inner["start"]), text
                    assert key(inner["end"]) <= key(outer["end"]), text
        stop(client)


def names_that_cannot_be():
    """Odd new names are refused with a sentence or taken; the server lives."""
    client = start()
    client.send(opened("---\nspeakers: MIRA, JO\n---\nMIRA: Hi.\n\nJO: So.\n"))
    for id, name in enumerate(
        ["", " ", "\n", "a\r\nb", "JO", "---", "# x", "% x", "- x", "[x]", "a:b", "a,b", "a=b",
         "\0", "🐚", "e\u0301", "x" * 100_000, "\u2028", "MIRA AND JO", "+"], 1
    ):
        params = {**document(), "position": {"line": 3, "character": 1}, "newName": name}
        answer = client.request(id, "textDocument/rename", params)
        assert ("result" in answer) != ("error" in answer), answer
        if "error" in answer:
            assert answer["error"]["code"] == -32803 and answer["error"]["message"], answer
    for id, params in enumerate(({}, {"newName": 1}, {"newName": None}), 100):
        answer = client.request(
            id, "textDocument/rename", {**document(), "position": {"line": 3, "character": 1}, **params}
        )
        assert answer["error"]["code"] == -32602, answer
    stop(client)


def resolved_by_strangers():
    """What never was an item of ours is refused, or comes back as it was; the server lives."""
    client = start()
    client.send(opened("We count limpets."))
    for method in ("inlayHint/resolve", "completionItem/resolve"):
        for params in (None, 1, [], {}, {"data": None}, {"data": "x"}, {"data": []},
                       {"data": {"uri": 1}}, {"data": {"uri": URI}}, {"data": {"uri": "x", "topic": "x"}}):
            answer = client.request(1, method, params)
            assert "result" in answer or answer["error"]["code"] == -32602, (method, params, answer)
        for place_ in ({"line": 2**31 - 1, "character": 2**31 - 1}, {"line": 0, "character": 17}):
            item = {"label": "x", "position": place_, "data": {"uri": URI, "topic": "mark:" + "x" * 100_000}}
            answer = client.request(2, method, item)
            assert answer["result"]["label"] == "x", answer
    stop(client)


def typed_equals_opened():
    """A thousand changes without a breath leave the text that opening it at once gives."""
    draw = random.Random(20)
    pieces = ["a", "tide ", "\n", "\r\n", "\r", "🐚", "e\u0301", "*", "/ ", "\n\n", "# Hello\n", "…"]
    for encoding in ("utf-8", "utf-16", "utf-32"):
        client = start({"general": {"positionEncodings": [encoding]}})
        text = "We count limpets.\r\nMira 🐚 and Jo.\n\nThe end.\n"
        client.send(opened(text))
        changes = []
        for version in range(2, 1002):
            begin = draw.randrange(len(text) + 1)
            end = min(len(text), begin + draw.choice([0, 0, 0, 1, 3]))
            # No position lies between the two characters of a line end.
            begin -= text[begin - 1 : begin + 1] == "\r\n"
            end -= text[end - 1 : end + 1] == "\r\n"
            piece = draw.choice(pieces)
            changes.append(
                changed(version, change(piece, place(text, begin, encoding), place(text, end, encoding)))
            )
            text = text[:begin] + piece + text[max(begin, end) :]
        client.send(*changes)
        typed = explained(client)
        client.send(opened(text, version=5000))
        assert typed == explained(client, 1001), encoding
        assert typed, "nothing was left to compare"
        stop(client)


def place(text, at, encoding):
    before = text[:at].replace("\r\n", "\n").replace("\r", "\n")
    line = before.count("\n")
    column = before[before.rfind("\n") + 1 :]
    if encoding == "utf-32":
        return line, len(column)
    width = 1 if encoding == "utf-8" else 2
    return line, len(column.encode(encoding if width == 1 else "utf-16-le")) // width


def cancel_while_typing():
    """Every request is answered once, with a result or RequestCancelled."""
    client = start()
    client.send(opened("We count limpets.\n\n" * 300))
    for id in range(1, 201):
        client.send(
            changed(id + 1, change("x", (0, 0), (0, 0))),
            request(id, "textDocument/hover", {**document(), "position": {"line": 0, "character": 1}}),
        )
        if id % 2:
            client.send(note("$/cancelRequest", {"id": id}))
    answers = {}
    while len(answers) < 200:
        message = json.loads(client.read())
        if "id" in message:
            assert message["id"] not in answers, message
            answers[message["id"]] = message
    for id, message in answers.items():
        if "error" in message:
            assert message["error"]["code"] == -32800 and id % 2, message
    stop(client)


def large_texts():
    client = start()
    for text in ("a" * 1_000_000, "low tide " * 110_000, "A limpet sits. " * 67_000, "tide\n\n" * 1_000_000, "tide " * 10_000_000):
        begin = time.monotonic()
        client.send(opened(text, uri=f"file:///tide/{len(text)}.say"))
        answer = client.request(
            1, "textDocument/hover",
            {**document(f"file:///tide/{len(text)}.say"), "position": {"line": 0, "character": 3}},
        )
        assert "result" in answer, answer
        assert time.monotonic() - begin < 60, len(text)
    stop(client)


def too_large_is_one_finding():
    client = start()
    client.send(opened("tide " * 10_000_000))
    found = json.loads(client.read())["params"]["diagnostics"]
    assert len(found) == 1 and "too large" in found[0]["message"], found
    # Back to a size that can be read, and everything works again.
    client.send(changed(2, change("We utilize it.")))
    found = json.loads(client.read())["params"]["diagnostics"]
    assert found and "too large" not in found[0]["message"], found
    stop(client)


def a_client_that_does_not_read():
    """Answers wait in a queue of limited size; nothing is lost once they are read."""
    client = start()
    text = "We count limpets on the shore with a square of string.\n\n" * 400
    client.send(opened(text))
    asked = 60
    pid = os.fork()
    if pid == 0:  # writes while nobody reads yet
        client.send(*[request(id, "sayline/explain", document()) for id in range(1, asked + 1)])
        os._exit(0)
    time.sleep(1)
    answered = 0
    while answered < asked:
        answered += "id" in json.loads(client.read())
    os.waitpid(pid, 0)
    with open(f"/proc/{client.process.pid}/status", encoding="ascii") as status:
        peak = next(int(line.split()[1]) for line in status if line.startswith("VmHWM"))
    assert peak < 400_000, f"{peak} kB"
    stop(client)


def parent_dies():
    """The server ends with the process that the client named, though its input stays open."""
    parent = subprocess.Popen(["sleep", "60"])
    client = start(process=parent.pid)
    parent.send_signal(signal.SIGKILL)
    parent.wait()
    assert client.process.wait(10) == 1
    client.close()


def client_is_gone():
    """Nobody reads any more: the server ends."""
    client = start()
    client.process.stdout.close()
    client.send(opened("We utilize it."), request(1, "sayline/times", document()))
    assert client.process.wait(10) == 1


def idle_takes_no_time():
    client = start()
    client.send(opened("We count limpets."))
    assert explained(client)
    time.sleep(0.3)

    def used():
        with open(f"/proc/{client.process.pid}/stat", encoding="ascii") as stat:
            return sum(int(field) for field in stat.read().rsplit(")", 1)[1].split()[11:13])

    before = used()
    time.sleep(1.5)
    assert used() == before
    stop(client)


def random_bytes():
    """Noise ends the session or is answered, and never crashes the server."""
    draw = random.Random(3)
    for _ in range(40):
        client = start()
        client.send(opened("We count limpets."))
        noise = draw.randbytes(draw.randrange(1, 400))
        if draw.random() < 0.5:
            noise = b"Content-Length: %d\r\n\r\n" % len(noise) + noise
        try:
            client.write(noise)
        except BrokenPipeError:
            pass
        _, status, log = client.close()
        assert status in (0, 1), (status, noise, log)


TESTS = [
    split_at_every_byte,
    many_in_one_write,
    deep_nesting,
    odd_texts,
    places_at_every_column,
    names_that_cannot_be,
    resolved_by_strangers,
    typed_equals_opened,
    cancel_while_typing,
    large_texts,
    too_large_is_one_finding,
    a_client_that_does_not_read,
    parent_dies,
    client_is_gone,
    idle_takes_no_time,
    random_bytes,
]


def main():
    global SAYLINE
    SAYLINE, *names = sys.argv[1:]
    failed = 0
    for test in TESTS:
        if names and test.__name__ not in names:
            continue
        begin = time.monotonic()
        try:
            test()
            verdict = "ok"
        except Exception as error:
            failed += 1
            verdict = f"FAILED: {type(error).__name__}: {str(error)[:2000]}"
        print(f"{test.__name__}: {verdict} ({time.monotonic() - begin:.1f} s)", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
