"""Asks the live reading page as browsers and strangers do.

    live.py SAYLINE

Server-sent events: HTML Living Standard, section 9.2. A name that was made to point at this machine is told by its Host
(RFC 9110, section 7.2). What listens where is read from /proc/net, where there is one.
"""

import http.client
import json
import os
import pathlib
import re
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time

PROGRAM = os.path.abspath(sys.argv[1])
FIRST = "Say hello to the limpets.\n"
SECOND = "Say hello to the limpets.\n\nThen count them </script> all.\n"


class Live:
    def __init__(self, folder, *more):
        self.file = pathlib.Path(folder) / "talk.say"
        self.file.write_text(FIRST)
        self.process = subprocess.Popen([PROGRAM, "page", "--live", *more, str(self.file)], stdout=subprocess.PIPE,
                                        stderr=subprocess.PIPE, text=True)
        self.said = self.process.stdout.readline()
        self.port = int(re.search(r"http://127\.0\.0\.1:(\d+)/", self.said).group(1))

    def ask(self, path="/", method="GET", host=None, headers=None, to="127.0.0.1"):
        talk = http.client.HTTPConnection(to, self.port, timeout=20)
        talk.putrequest(method, path, skip_host=True)
        talk.putheader("Host", host or f"127.0.0.1:{self.port}")
        for name, value in (headers or {}).items():
            talk.putheader(name, value)
        talk.endheaders()
        return talk.getresponse()

    def events(self):
        answer = self.ask("/events")
        assert answer.status == 200 and answer.getheader("Content-Type") == "text/event-stream", answer.headers
        return Events(answer)

    # As editors do: a new file in the place of the old one.
    def save(self, text):
        draft = self.file.with_suffix(".tmp")
        draft.write_bytes(text if isinstance(text, bytes) else text.encode())
        os.replace(draft, self.file)

    def end(self):
        self.process.send_signal(signal.SIGINT)
        status = self.process.wait(10)
        return status, self.process.stderr.read()


class Events:
    def __init__(self, answer):
        self.answer = answer

    # The next event's name and data; comments and the rest are passed over.
    def next(self):
        name = None
        while True:
            line = self.answer.readline().decode().rstrip("\n")
            if line.startswith("event: "):
                name = line[7:]
            elif line.startswith("data: "):
                return name, json.loads(line[6:])
            assert line == "" or line.startswith((":", "retry")) or name, line


def words(script):
    return [thought["text"] for thought in script["thoughts"]]


def serves_the_page(live):
    answer = live.ask()
    page = answer.read().decode()
    assert answer.status == 200 and answer.getheader("Content-Type") == "text/html; charset=utf-8", answer.headers
    assert "Say hello to the limpets" in page and 'data-live="yes"' in page and "connect-src 'self'" in page
    assert answer.getheader("Cache-Control") == "no-store" and answer.getheader("Access-Control-Allow-Origin") is None
    head = live.ask(method="HEAD")
    assert head.status == 200 and head.read() == b"", head.status
    assert live.ask("/etc/passwd").status == 404 and live.ask("/../talk.say").status == 404
    assert live.ask(method="POST").status == 405


# The same file as the export's, and that of the last save.
def serves_the_practice_page(live):
    answer = live.ask("/practice")
    assert answer.status == 200 and answer.getheader("Content-Type") == "text/html; charset=utf-8", answer.headers
    export = subprocess.run([PROGRAM, "export", "--to", "practice", str(live.file)], capture_output=True, check=True)
    assert answer.read() == export.stdout and b"Say hello to the limpets" in export.stdout
    events = live.events()
    events.next()
    live.save(SECOND)
    events.next()
    assert "count them" in live.ask("/practice").read().decode(), "a save does not reach the practice page"
    live.save(FIRST)
    events.next()
    assert live.ask("/practice", host="evil.example").status == 403


def tells_of_saves(live):
    events = live.events()
    name, script = events.next()
    assert name == "script" and words(script) == ["Say hello to the limpets."], (name, script)
    live.save(SECOND)
    name, script = events.next()
    assert name == "script" and len(words(script)) == 2, (name, words(script))
    for broken, told in [(b"\xff\xfe", "UTF-16"), (b"Caf\xe9\n", "not UTF-8"), (b" \n", "empty")]:
        live.save(broken)
        name, message = events.next()
        assert name == "trouble" and told in message and "talk.say" in message, (name, message)
    assert "count them" in live.ask().read().decode(), "the last good page is gone"
    late = live.events()
    assert late.next()[0] == "script" and late.next()[0] == "trouble", "a window that comes late does not hear of it"
    live.file.unlink()
    name, message = events.next()
    assert name == "trouble" and "cannot be opened" in message, (name, message)
    live.save(FIRST)
    assert events.next()[0] == "script" and late.next()[0] == "trouble" and late.next()[0] == "script"
    assert words(json.loads(re.search(r'id="script">(.*?)</script>', live.ask().read().decode(), re.S).group(1))) \
        == ["Say hello to the limpets."]


def follows_its_settings(live):
    events = live.events()
    _, script = events.next()
    before = script["seconds"]
    folder = live.file.parent / ".sayline"
    folder.mkdir()
    (folder / "settings.json").write_text('{"pace": "0.5x"}')
    name, script = events.next()
    assert name == "script" and script["seconds"] > before * 1.2, (before, script["seconds"])
    slow = script["seconds"]
    (folder / "settings.json").write_text('{"pace": "0.5x", "lexicons": ["names.pls"]}')
    assert events.next()[1]["seconds"] == slow, "a word list that is not there changes the time"
    # PLS 1.0 (W3C Recommendation of 14 October 2008): a word that takes long to say.
    (folder / "names.pls").write_text(
        '<?xml version="1.0"?>\n<lexicon version="1.0" xmlns="http://www.w3.org/2005/01/pronunciation-lexicon" alphabet="ipa"'
        ' xml:lang="en"><lexeme><grapheme>limpets</grapheme><phoneme>ˈlɪmpɪtəmɪtəmɪtəmɪtəz</phoneme></lexeme></lexicon>')
    name, script = events.next()
    assert name == "script" and script["seconds"] > slow + 0.3, (slow, script["seconds"])
    shutil.rmtree(folder)
    name, script = events.next()
    assert name == "script" and script["seconds"] == before, (before, script["seconds"])


def refuses_strangers(live):
    for host in ["evil.example", f"evil.example:{live.port}", f"127.0.0.1.evil.example:{live.port}", ""]:
        talk = live.ask(host=host or " ")
        assert talk.status == 403, (host, talk.status)
        assert b"limpets" not in talk.read()
    for origin in ["http://evil.example", "null", f"https://127.0.0.1:{live.port}"]:
        assert live.ask("/events", headers={"Origin": origin}).status == 403, origin
    # With another port, or none, where the page is passed on from a far machine to the near one.
    for host in [f"localhost:{live.port}", f"[::1]:{live.port}", f"127.0.0.1:{live.port + 1}", "127.0.0.1"]:
        assert live.ask(host=host).status == 200, host
    assert live.ask(headers={"Origin": f"http://127.0.0.1:{live.port}"}).status == 200


def listens_on_loopback_alone(live):
    heard = []
    for table in ["/proc/net/tcp", "/proc/net/tcp6"]:
        if not os.path.exists(table):
            continue
        for row in open(table).read().splitlines()[1:]:
            address, port = row.split()[1].split(":")
            if row.split()[3] == "0A" and int(port, 16) == live.port:
                heard.append(address)
    loopback = {"0100007F", "00000000000000000000000001000000"}
    assert set(heard) <= loopback and (heard or not os.path.exists("/proc/net/tcp")), heard


def outlives_abuse(live):

    for sent in [b"", b"\r\n\r\n", b"GET\r\n\r\n", b"GET / HTTP/1.1\r\nHost: " + b"x" * 100000 + b"\r\n\r\n",
                 b"GET / HTTP/1.1\r\nContent-Length: 99999999\r\n\r\n", os.urandom(5000)]:
        with socket.create_connection(("127.0.0.1", live.port), timeout=10) as talk:
            try:
                talk.sendall(sent)
            except OSError:
                pass  # refused while it was still being sent
    deadline = time.time() + 20
    time.sleep(0.5)  # the windows of the check before are closing
    many = [live.events() for _ in range(32)]
    assert live.ask("/events").status == 503
    for each in many:
        each.answer.close()
    assert live.ask().status == 200
    while live.ask("/events").status != 200:
        assert time.time() < deadline, "windows that were closed still count"
        time.sleep(0.1)


def main():
    with tempfile.TemporaryDirectory() as folder:
        live = Live(folder)
        try:
            for check in [serves_the_page, serves_the_practice_page, refuses_strangers, listens_on_loopback_alone, follows_its_settings,
                          tells_of_saves, outlives_abuse]:
                check(live)
                print(" ", check.__name__.replace("_", " "))
            other = subprocess.run([PROGRAM, "page", "--live", "--port", str(live.port), str(live.file)],
                                   capture_output=True, text=True, timeout=20)
            assert other.returncode == 2 and f"port {live.port} cannot be had" in other.stderr, other
        finally:
            status, said = live.end()
        assert status == 0, status
        assert "not UTF-8" in said and "the last good page stays" in said, said
    print("  ends when it is told to")


main()
