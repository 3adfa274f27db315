#!/usr/bin/env python3
"""What the server paints by semantic tokens (LSP 3.17), on the cases of colours.json.

    tokens.py PROGRAM OUT
"""
import json
import pathlib
import subprocess
import sys

program, out = sys.argv[1:3]
here = pathlib.Path(__file__).parent
cases = json.loads((here / "colours.json").read_text(encoding="utf-8"))
server = subprocess.Popen([program, "serve"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)


def send(method, params, number=None):
    message = {"jsonrpc": "2.0", "method": method, "params": params}
    if number is not None:
        message["id"] = number
    body = json.dumps(message).encode()
    server.stdin.write(b"Content-Length: %d\r\n\r\n%s" % (len(body), body))
    server.stdin.flush()


def answer(number):
    while True:
        length = 0
        while (line := server.stdout.readline()) not in (b"\r\n", b""):
            if line.lower().startswith(b"content-length:"):
                length = int(line.split(b":")[1])
        message = json.loads(server.stdout.read(length))
        if message.get("id") == number and "method" not in message:
            return message["result"]


def pieces(text, data, legend):
    """Each token with its text; columns count UTF-16 units, which are the characters of all cases."""
    lines, row, column, found = text.split("\n"), 0, 0, []
    for at in range(0, len(data), 5):
        down, right, length, kind, bits = data[at:at + 5]
        row, column = row + down, (0 if down else column) + right
        name = legend["tokenTypes"][kind]
        if name == "words":
            how = [each for bit, each in enumerate(legend["tokenModifiers"]) if bits >> bit & 1]
            name = how[0] if how else ""
        if found and found[-1][2] == row:
            found.append(["", lines[row][found[-1][3]:column], row, column])
        elif found:
            found.append(["", "\n", row, 0])
        found.append([name, lines[row][column:column + length], row, column + length])
    return [[name, words] for name, words, _, _ in found]


send("initialize", {"processId": None, "rootUri": None, "capabilities": {}}, 0)
legend = answer(0)["capabilities"]["semanticTokensProvider"]["legend"]
send("initialized", {})
painted = []
for number, case in enumerate(cases, 1):
    document = {"uri": f"file:///tide/case{number}.say", "languageId": "sayline", "version": 1, "text": case["text"]}
    send("textDocument/didOpen", {"textDocument": document})
    send("textDocument/semanticTokens/full", {"textDocument": {"uri": document["uri"]}}, number)
    painted.append(pieces(case["text"], answer(number)["data"], legend))
server.stdin.close()
server.kill()
pathlib.Path(out).write_text(json.dumps(painted), encoding="utf-8")
