"""Holds every message of the server against the official meta model of LSP 3.17.

    metamodel.py SAYLINE FOLDER FILE.lsp...

Source: the Python package lsprotocol, whose types are generated from the meta model that is
published with the specification. It is installed into FOLDER once; where that cannot be done the
test is skipped (77). Each transcript is played; each message that the server sends is read into the
type of its method and written again, and must come out as it went in: a misspelt, missing or
superfluous member does not.
"""

import importlib
import json
import pathlib
import subprocess
import sys
import tempfile

from transcript import Client, frame, parse

PACKAGE = "lsprotocol==2025.0.0"

# Members that a result may hold although the meta model does not name them: none so far.
# Error answers are those of JSON-RPC, which every method shares.
ERROR_CODES = {-32700, -32600, -32601, -32602, -32603, -32002, -32800, -32801, -32802, -32803}


def install(folder):
    if not (folder / "lsprotocol").is_dir():
        command = [sys.executable, "-m", "pip", "install", "--quiet", "--target", str(folder), PACKAGE]
        try:
            subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        except (OSError, subprocess.CalledProcessError) as error:
            print(f"skipped: {PACKAGE} cannot be installed:", getattr(error, "stderr", b""))
            sys.exit(77)
    sys.path.insert(0, str(folder))


def without_nulls(value):
    if isinstance(value, dict):
        return {key: without_nulls(item) for key, item in value.items() if item is not None}
    if isinstance(value, list):
        return [without_nulls(item) for item in value]
    return value


class Model:
    def __init__(self):
        self.types = importlib.import_module("lsprotocol.types")
        self.converter = importlib.import_module("lsprotocol.converters").get_converter()
        self.checked = 0

    def check(self, message, kind):
        read = self.converter.structure(message, kind)
        written = json.loads(json.dumps(self.converter.unstructure(read)))
        assert without_nulls(written) == without_nulls(message), (
            f"{kind.__name__} does not hold all of it:\n"
            f"{json.dumps(message, sort_keys=True)}\n{json.dumps(written, sort_keys=True)}"
        )
        self.checked += 1

    def check_server_message(self, message, asked):
        """`asked` is the method of each request of the client by its id."""
        assert message["jsonrpc"] == "2.0"
        known = self.types.METHOD_TO_TYPES
        method = message.get("method")
        if method is not None:
            assert method in known, f"the protocol has no {method}"
            self.check(message, known[method][0])
        elif "error" in message:
            assert set(message) == {"jsonrpc", "id", "error"}
            assert message["error"]["code"] in ERROR_CODES
            self.check(message, self.types.ResponseErrorMessage)
        else:
            method = asked[json.dumps(message["id"])]
            assert method in known or method.startswith("sayline/"), f"no method {method}"
            if method in known:
                self.check(message, known[method][1])


def messages_in(text):
    """A message, or those of a batch."""
    message = json.loads(text)
    return message if isinstance(message, list) else [message]


def requests_of(text):
    """The ids of a client's message and the methods that their answers belong to."""
    try:
        messages = messages_in(text)
    except ValueError:
        return {}
    return {json.dumps(each["id"]): each.get("method")
            for each in messages if isinstance(each, dict) and "id" in each}


def play(sayline, path, model):
    asked = {}
    with tempfile.TemporaryDirectory(prefix="sayline-") as folder:
        uri = pathlib.Path(folder).as_uri()
        client = Client([sayline, "serve", "--in-step"], cwd=folder)
        for line in parse(path.read_text(encoding="utf-8").rstrip("\n")):
            if line.kind == "-->":
                text = line.text.replace("${folder-uri}", uri)
                asked.update(requests_of(text))
                client.write(frame(text))
            elif line.kind == "<--":
                text = client.read()
                assert text is not None, "the server says less than the transcript"
                for message in messages_in(text):
                    model.check_server_message(message, asked)
            elif line.kind == "files>":
                name, _, text = line.text.partition(" ")
                file = pathlib.Path(folder) / name
                file.parent.mkdir(parents=True, exist_ok=True)
                file.write_text(text + "\n", encoding="utf-8")
        for text in client.close()[0]:
            for message in messages_in(text):
                model.check_server_message(message, asked)


def main():
    sayline, folder, *files = sys.argv[1:]
    install(pathlib.Path(folder))
    model = Model()
    failed = 0
    for name in files:
        path = pathlib.Path(name)
        if "raw>" in path.read_text(encoding="utf-8"):
            continue  # bytes that are no messages; its answers are errors like all others
        try:
            play(sayline, path, model)
        except Exception as error:  # whatever the converter makes of a wrong message
            failed += 1
            print(f"{path.name}: {type(error).__name__}: {error}")
    print(f"{model.checked} messages checked")
    assert model.checked > len(files), "hardly anything was checked"
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
