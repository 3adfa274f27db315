"""Plays recorded sessions against the built server and compares what it says.

    transcript.py SAYLINE FILE.lsp...

A transcript is a text file:

    # a comment
    --> {"jsonrpc": "2.0", "id": 1, "method": "shutdown"}       a line of the client
    <-- {"id": 1, "jsonrpc": "2.0", "result": null}             a line of the server
        continues on lines that are indented
    raw> Content-Length: 2\\r\\n\\r\\n{}                        bytes of the client, with \\r \\n \\xHH
    files> .sayline/settings.json {"breath_limit": 4}           a file beside the scripts
    status> 0                                                   how the server ends; 0 unless given

Client lines that follow each other are sent in one piece; then as many messages are read as lines
are expected. `${folder}` stands for a fresh folder of this transcript's own, `${folder-uri}` for its
address. In an expected line `…` matches anything. The server analyses in step, so that its order is
always the same. UPDATE_EXPECTED=1 writes what came instead of what was expected; lines that match
stay as they are, with their `…`.
"""

import json
import os
import pathlib
import re
import select
import subprocess
import sys
import tempfile
import time

WAIT = 20  # seconds until a server that says nothing has failed
WIDTH = 100


class Client:
    """One server process and its messages."""

    def __init__(self, command, cwd=None):
        self.log = tempfile.TemporaryFile()  # a pipe could fill up and stop the server
        self.process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=self.log, cwd=cwd,
            # What the server makes for itself stays in the folder too.
            env=os.environ | ({"XDG_CACHE_HOME": os.path.realpath(cwd)} if cwd else {}),
        )
        self.bytes = b""

    def write(self, data):
        self.process.stdin.write(data)
        self.process.stdin.flush()

    def send(self, *messages):
        self.write(b"".join(frame(json.dumps(message)) for message in messages))

    def _more(self, wait):
        ready, _, _ = select.select([self.process.stdout], [], [], wait)
        if not ready:
            return False
        data = os.read(self.process.stdout.fileno(), 1 << 16)
        self.bytes += data
        return bool(data)

    def read(self, wait=WAIT):
        """The next message's text, or None if none comes."""
        end = time.monotonic() + wait
        while True:
            head, found, rest = self.bytes.partition(b"\r\n\r\n")
            if found:
                match = re.fullmatch(rb"Content-Length: (\d+)", head)
                if not match:
                    raise AssertionError(f"not a header: {head!r}")
                size = int(match[1])
                if len(rest) >= size:
                    self.bytes = rest[size:]
                    return rest[:size].decode("utf-8")
            left = end - time.monotonic()
            if left <= 0 or not self._more(left):
                return None

    def request(self, id, method, params=None):
        """The answer to a request; what comes before it is passed over."""
        message = {"jsonrpc": "2.0", "id": id, "method": method}
        if params is not None:
            message["params"] = params
        self.send(message)
        while (text := self.read()) is not None:
            answer = json.loads(text)
            if answer.get("id") == id and "method" not in answer:
                return answer
        raise AssertionError(f"no answer to {method}")

    def close(self):
        """Ends the input; the messages that still come, the exit status and the log."""
        try:
            self.process.stdin.close()
        except BrokenPipeError:
            pass
        rest = []
        while (text := self.read()) is not None:
            rest.append(text)
        try:
            status = self.process.wait(WAIT)
        except subprocess.TimeoutExpired:
            self.process.kill()
            status = None
        self.process.stdout.close()
        self.log.seek(0)
        log = self.log.read().decode("utf-8", "replace")
        self.log.close()
        return rest, status, log


def frame(body):
    data = body.encode("utf-8", "surrogatepass")
    return b"Content-Length: %d\r\n\r\n" % len(data) + data


def canonical(text):
    return json.dumps(json.loads(text), sort_keys=True, ensure_ascii=False)


def matches(expected, actual):
    pattern = ".*".join(re.escape(part) for part in expected.split("…"))
    return re.fullmatch(pattern, actual, re.DOTALL) is not None


def unescape(text):
    return re.sub(
        rb"\\(r|n|t|\\|x[0-9a-fA-F]{2})",
        lambda m: {b"r": b"\r", b"n": b"\n", b"t": b"\t", b"\\": b"\\"}.get(m[1])
        or bytes([int(m[1][1:], 16)]),
        text.encode("utf-8"),
    )


class Line:
    def __init__(self, kind, text):
        self.kind = kind
        self.text = text


def parse(source):
    lines = []
    for number, line in enumerate(source.split("\n"), 1):
        match = re.match(r"(-->|<--|raw>|files>|status>)\s?(.*)", line)
        if match:
            lines.append(Line(match[1], match[2]))
        elif line.startswith("    ") and lines and lines[-1].kind in ("-->", "<--"):
            lines[-1].text += " " + line.strip()
        elif line == "" or line.startswith("#"):
            lines.append(Line("", line))
        else:
            raise SystemExit(f"line {number} is neither a message nor a comment: {line}")
    return lines


def wrapped(kind, text):
    """Breaks a long message at blanks behind commas, where no string is open."""
    pieces = re.findall(r'(?:"(?:[^"\\]|\\.)*"|[^,"]|,(?! ))+(?:, |$)', text)
    rows = [""]
    for piece in pieces or [text]:
        if rows[-1] and len(rows[-1]) + len(piece.rstrip()) > WIDTH - 4:
            rows.append("")
        rows[-1] += piece
    return f"{kind} " + "\n    ".join(row.rstrip() for row in rows)


def play(sayline, path):
    """Problems found, and the transcript as it should read."""
    lines = parse(path.read_text(encoding="utf-8").rstrip("\n"))
    updating = bool(os.environ.get("UPDATE_EXPECTED"))
    problems = []
    result = []
    expected_status = "0"
    with tempfile.TemporaryDirectory(prefix="sayline-") as folder:
        folder_uri = pathlib.Path(folder).as_uri()

        def filled(text):
            return text.replace("${folder-uri}", folder_uri).replace("${folder}", folder)

        def emptied(text):
            return text.replace(folder_uri, "${folder-uri}").replace(folder, "${folder}")

        client = Client([sayline, "serve", "--in-step"], cwd=folder)
        index = 0
        while index < len(lines):
            sent = b""
            while index < len(lines) and lines[index].kind != "<--":
                line = lines[index]
                index += 1
                if line.kind == "-->":
                    sent += frame(filled(line.text))
                    result.append(wrapped("-->", line.text))
                    continue
                result.append(f"{line.kind} {line.text}" if line.kind else line.text)
                if line.kind == "raw>":
                    sent += unescape(filled(line.text))
                elif line.kind == "files>":
                    name, _, text = line.text.partition(" ")
                    file = pathlib.Path(folder) / name
                    file.parent.mkdir(parents=True, exist_ok=True)
                    file.write_text(text + "\n", encoding="utf-8")
                elif line.kind == "status>":
                    expected_status = line.text.strip()
            if sent:
                try:
                    client.write(sent)
                except BrokenPipeError:
                    problems.append("the server stopped reading")
            wanted = []
            while index < len(lines) and lines[index].kind == "<--":
                wanted.append(lines[index].text)
                index += 1
            came = []
            while len(came) < len(wanted) or updating:
                # Nobody says how many come: until it has been quiet for a while.
                enough = updating and len(came) >= len(wanted)
                text = client.read(0.3 if enough else WAIT)
                if text is None:
                    break
                came.append(emptied(canonical(text)))
            compare(wanted, came, problems, result)
        rest, status, log = client.close()
        compare([], [emptied(canonical(text)) for text in rest], problems, result)
        if str(status) != expected_status:
            problems.append(f"the server ended with {status}, expected {expected_status}")
        if problems and log:
            problems.append("its log:\n" + log)
    return problems, "\n".join(result) + "\n"


def compare(wanted, came, problems, result):
    for number in range(max(len(wanted), len(came))):
        want = wanted[number] if number < len(wanted) else None
        have = came[number] if number < len(came) else None
        if want is not None and have is not None and matches(want, have):
            result.append(wrapped("<--", want))
            continue
        if have is not None:
            result.append(wrapped("<--", have))
        problems.append(
            f"expected {wrapped('<--', want) if want is not None else 'nothing more'}\n"
            f"received {wrapped('<--', have) if have is not None else 'nothing'}"
        )


def main():
    sayline, *files = sys.argv[1:]
    failed = 0
    for name in files:
        path = pathlib.Path(name)
        problems, result = play(sayline, path)
        if not problems:
            continue
        if os.environ.get("UPDATE_EXPECTED"):
            path.write_text(result, encoding="utf-8")
            print(f"{name}: written anew")
            continue
        failed += 1
        print(f"{name}:", *problems, sep="\n")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
