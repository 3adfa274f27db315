#!/usr/bin/env python3
"""Starts the server the ways a client may: on its standard streams, on a port, on a Unix domain socket.

    transports.py SAYLINE

Source of the flags: LSP 3.17, "Implementation Considerations": `--stdio`, `--pipe=NAME`, `--socket=PORT`,
`--clientProcessId`, the client listening in each case but the first.
"""

import contextlib
import json
import os
import pathlib
import socket
import subprocess
import sys
import tempfile
import time

from transcript import Client, frame

WAIT = 20  # seconds


class SocketClient:
    """The other end: listens, starts the server and reads its messages."""

    def __init__(self, command, listener):
        listener.listen(1)
        listener.settimeout(WAIT)
        self.process = subprocess.Popen(
            command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
        self.connection, _ = listener.accept()
        self.connection.settimeout(WAIT)
        self.stream = self.connection.makefile("rb")

    def send(self, message):
        self.connection.sendall(frame(json.dumps({"jsonrpc": "2.0", **message})))

    def read(self):
        head = self.stream.readline()
        if not head:
            return None
        assert self.stream.readline() == b"\r\n"
        return json.loads(self.stream.read(int(head.removeprefix(b"Content-Length: "))))

    def request(self, id, method, params=None):
        self.send({"id": id, "method": method, "params": params or {}})
        while (message := self.read()) is not None:
            if message.get("id") == id:
                return message
        raise AssertionError(f"no answer to {method}")

    def close(self):
        self.stream.close()
        self.connection.close()


def on_port(family=socket.AF_INET, host="127.0.0.1"):
    listener = socket.socket(family, socket.SOCK_STREAM)
    listener.bind((host, 0))
    return listener, str(listener.getsockname()[1])


@contextlib.contextmanager
def on_path():
    with tempfile.TemporaryDirectory() as folder:
        path = str(pathlib.Path(folder) / "tide pool.sock")
        listener = socket.socket(socket.AF_UNIX, socket.SOCK_STREAM)
        listener.bind(path)
        yield listener, path
        listener.close()


def session(client):
    """A whole session; a text long enough that it does not go through in one piece."""
    answer = client.request(1, "initialize", {"processId": os.getpid(), "rootUri": None, "capabilities": {}})
    assert answer["result"]["serverInfo"]["name"] == "sayline", answer
    client.send({"method": "initialized", "params": {}})
    text = "We count limpets at low tide.\n\n" * 20000
    client.send({"method": "textDocument/didOpen", "params": {"textDocument": {
        "uri": "untitled:pool", "languageId": "sayline", "version": 1, "text": text}}})
    hover = client.request(2, "textDocument/hover", {
        "textDocument": {"uri": "untitled:pool"}, "position": {"line": 0, "character": 10}})
    assert "limpets" in json.dumps(hover["result"]), hover
    assert client.request(3, "shutdown")["result"] is None
    client.send({"method": "exit"})
    assert client.process.wait(WAIT) == 0
    assert client.process.stdout.read() == b"", "something was said on standard output"
    assert client.read() is None, "something was said after the end"
    client.close()


def refused(*command):
    done = subprocess.run(command, stdin=subprocess.DEVNULL, capture_output=True, text=True, timeout=WAIT)
    assert done.returncode == 2 and done.stdout == "" and done.stderr.count("\n") == 1, done
    return done.stderr


def main():
    serve = [sys.argv[1], "serve"]
    host_process = str(os.getpid())

    listener, port = on_port()
    session(SocketClient([*serve, f"--socket={port}", f"--clientProcessId={host_process}"], listener))
    session(SocketClient([*serve, "--socket", port], listener))
    listener.close()
    assert "no client listens" in refused(*serve, f"--socket={port}")

    with contextlib.suppress(OSError):  # a machine without IPv6
        listener, port = on_port(socket.AF_INET6, "::1")
        session(SocketClient([*serve, f"--socket={port}"], listener))
        listener.close()

    with on_path() as (listener, path):
        session(SocketClient([*serve, f"--pipe={path}"], listener))
        session(SocketClient([*serve, "--pipe", path, "--clientProcessId", host_process], listener))
    assert "no client listens" in refused(*serve, f"--pipe={path}")
    assert "no client listens" in refused(*serve, "--pipe=" + "/long" * 100)

    # The client goes without a word: by closing the connection, or by dying while it stays open.
    listener, port = on_port()
    client = SocketClient([*serve, f"--socket={port}"], listener)
    client.close()
    assert client.process.wait(WAIT) == 1
    sleeper = subprocess.Popen(["sleep", "1000"])
    client = SocketClient([*serve, f"--socket={port}", f"--clientProcessId={sleeper.pid}"], listener)
    time.sleep(0.2)
    assert client.process.poll() is None
    sleeper.kill()
    sleeper.wait()
    assert client.process.wait(WAIT) == 1
    client.close()
    listener.close()

    standard = Client([*serve, "--stdio", "--clientProcessId=" + host_process])
    assert "result" in standard.request(1, "initialize", {"processId": None, "rootUri": None, "capabilities": {}})
    standard.request(2, "shutdown")
    standard.send({"jsonrpc": "2.0", "method": "exit"})
    assert standard.close()[1] == 0

    for flags in (["--socket=0"], ["--socket=65536"], ["--socket=70 00"], ["--socket"], ["--pipe="],
                  ["--clientProcessId=me"], ["--stdio", "--socket=7000"], ["--pipe=a", "--socket=7000"]):
        refused(*serve, *flags)


main()
