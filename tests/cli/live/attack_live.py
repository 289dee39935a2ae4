#!/usr/bin/env python3
"""Attacks the server of the live page as other pages and programs of one machine could:
    attack_live.py TUMPLINE SAMPLES FOLDER [CONNECTIONS]
Every attack is refused with its status, nothing is written, and the server goes on. Answers 0 if so,
1 with what is wrong. The system calls are looked at where strace is installed."""

import json
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import threading
import time

TUMPLINE, SAMPLES, FOLDER = sys.argv[1:4]
CONNECTIONS = int(sys.argv[4]) if len(sys.argv) > 4 else 2000
TRIP = os.path.join(FOLDER, "trip.json")
wrong = []


def expect(holds, what):
    if not holds:
        wrong.append(what)
        print("WRONG", what)


class Server:
    def __init__(self, prefix=()):
        self.process = subprocess.Popen([*prefix, TUMPLINE, "live", TRIP], stdout=subprocess.PIPE, text=True)
        address = self.process.stdout.readline().strip()
        found = re.fullmatch(r"http://127\.0\.0\.1:(\d+)/#([0-9a-f]{32})", address)
        if not found:
            raise SystemExit("the server says: " + address)
        self.port, self.key = int(found[1]), found[2]

    def headers(self, **more):
        fair = {"Host": f"127.0.0.1:{self.port}", "Authorization": f"Bearer {self.key}",
                "Content-Type": "application/json"}
        fair.update({name.replace("_", "-"): text for name, text in more.items()})
        return "".join(f"{name}: {text}\r\n" for name, text in fair.items() if text is not None)

    def raw(self, bytes_, wait=15.0):
        with socket.create_connection(("127.0.0.1", self.port), timeout=wait) as one:
            try:
                one.sendall(bytes_)
            except OSError:
                pass  # refused before all was sent
            return received(one)

    def ask(self, method, path, body=None, **headers):
        data = body if isinstance(body, bytes) else b"" if body is None else json.dumps(body).encode()
        if method == "POST" and "Content_Length" not in headers:
            headers["Content_Length"] = str(len(data))
        return self.raw(f"{method} {path} HTTP/1.1\r\n{self.headers(**headers)}\r\n".encode() + data)


def received(one):
    parts = b""
    try:
        while block := one.recv(65536):
            parts += block
    except OSError:
        pass
    found = re.match(rb"HTTP/1\.1 (\d+)", parts)
    return (int(found[1]) if found else 0), parts


def goes_on(server, after):
    status, answer = server.ask("POST", "/api/plan", {"edits": [], "want": ["view"]})
    expect(status == 200 and b'"verdict"' in answer, f"no plan any more after {after}: {status}")


def check_gate(server):
    plan = {"edits": []}
    for status, what, headers in [
            (403, "a foreign Host", {"Host": "rebound.example"}),
            (403, "no Host", {"Host": None}),
            (403, "the Host of another port", {"Host": "127.0.0.1:1"}),
            (403, "a foreign Origin", {"Origin": "http://page.example"}),
            (403, "the Origin null", {"Origin": "null"}),
            (401, "no key", {"Authorization": None}),
            (401, "another key", {"Authorization": "Bearer " + "0" * 32}),
            (415, "a packed body", {"Content_Encoding": "gzip"}),
            (413, "a length of 2 MiB", {"Content_Length": str(2 * 1024 * 1024)}),
            (413, "a length that is none", {"Content_Length": "-5"}),
            (416, "parts of a file", {"Range": "bytes=0-1,0-2,0-3"})]:
        answer = server.ask("POST", "/api/plan", plan, **headers)
        expect(answer[0] == status, f"{what}: {answer[0]} instead of {status}")
        expect(b"Access-Control" not in answer[1], f"{what}: another page may read the answer")
    _, page = server.ask("GET", "/", Authorization=None)
    for header in (b"Content-Security-Policy: default-src 'none'", b"nosniff", b"no-referrer", b"DENY"):
        expect(header in page, f"the page lacks {header}")
    expect(server.key.encode() not in page, "the page holds the key")


def check_gate_everywhere(server):
    """What takes long is refused to others as early as the rest."""
    for path in ("/api/odds", "/api/nights", "/api/compare"):
        for status, what, headers in [
                (403, "a foreign Host", {"Host": "rebound.example"}),
                (403, "a foreign Origin", {"Origin": "http://page.example"}),
                (401, "no key", {"Authorization": None}),
                (413, "a length of 2 MiB", {"Content_Length": str(2 * 1024 * 1024)})]:
            answer = server.ask("POST", path, {"edits": []}, **headers)
            expect(answer[0] == status, f"{path}, {what}: {answer[0]} instead of {status}")
        for body in (b"", b"{", b"[]", b'{"edits": 1}', b'{"edits": [{}]}', b'{"edits": [], "draws": 1e9}',
                     b'{"edits": [], "draws": -1}', b'{"edits": [], "draws": "many"}', b'{"edits": [], "pinned": 7}',
                     b'{"edits": [], "pinned": [{"op": "copy", "path": "/a"}]}', b"[" * 500_000):
            status, _ = server.ask("POST", path, body)
            expect(status == 400, f"{path} {body[:50]}: {status} instead of 400")
        for where, value in [("/party", []), ("/kit/99999", {}), ("/days/nights", ["nowhere"]), ("/route/tracks", ["/etc/passwd"])]:
            status, answer = server.ask("POST", path, {"edits": [{"op": "add", "path": where, "value": value}]})
            expect(status == 422 and b'"problems"' in answer, f"{where} at {path}: {status} instead of 422")
        expect(server.ask("GET", path)[0] == 404, f"{path} answers to GET")
    goes_on(server, "long questions that are none")


def check_odds(server):
    """Told line by line; who leaves is drawn for no longer, who does not read holds up nobody, and more than a few are refused."""
    _, answer = server.ask("POST", "/api/odds", {"edits": [], "draws": 50})
    lines = [json.loads(line) for line in re.findall(rb"^\{.*\}$", answer, re.M)]
    expect(lines and "view" in lines[-1] and lines[-1]["odds"]["draws"] == 50, "odds do not end with the odds")
    expect(all(line["draws"] == 50 for line in lines[:-1]), "odds do not say how far they are")
    status, answer = server.ask("POST", "/api/nights", {"edits": []})
    expect(status == 200 and b'"options"' in answer, f"no nights: {status}")
    status, answer = server.ask("POST", "/api/compare", {"edits": [], "pinned": []})
    expect(status == 200 and b'"lines"' in answer, f"no comparison: {status}")
    body = b'{"edits": [], "draws": 2000}'
    request = f"POST /api/odds HTTP/1.1\r\n{server.headers(Content_Length=str(len(body)))}\r\n".encode() + body
    silent = []
    for _ in range(8):  # that never read
        one = socket.create_connection(("127.0.0.1", server.port))
        one.sendall(request)
        silent.append(one)
    start = time.monotonic()
    for _ in range(5):
        goes_on(server, "odds that nobody reads")
    expect(time.monotonic() - start < 3.0, "odds that nobody reads hold up plans")
    refused = [one for one in silent if (one.settimeout(2.0), received_head(one))[1] == 503]
    expect(len(refused) >= 1, "eight questions of odds are taken at a time")
    for one in silent:
        one.close()
    start = time.monotonic()
    while server.ask("POST", "/api/nights", {"edits": []})[0] == 503 and time.monotonic() - start < 10.0:
        time.sleep(0.1)
    expect(time.monotonic() - start < 5.0, "odds go on though everybody has left")


def received_head(one):
    try:
        found = re.match(rb"HTTP/1\.1 (\d+)", one.recv(64))
    except OSError:
        return 0
    return int(found[1]) if found else 0


def check_bodies(server):
    long = b'{"edits": [' + b" " * (2 * 1024 * 1024) + b"]}"
    expect(server.ask("POST", "/api/plan", long)[0] == 413, "a body of 2 MiB passes")
    chunks = b"".join(b"10000\r\n" + b" " * 65536 + b"\r\n" for _ in range(32)) + b"0\r\n\r\n"
    head = f"POST /api/plan HTTP/1.1\r\n{server.headers(Transfer_Encoding='chunked')}\r\n".encode()
    expect(server.raw(head + chunks)[0] == 411, "a chunked body passes")
    goes_on(server, "long bodies")
    for body in (b"", b"{", b"[]", b"null", b'{"edits": 1}', b'{"edits": [{}]}', b'{"edits": [1]}', b"[" * 500_000,
                 b'{"edits": [{"op": "move", "path": "/a", "from": "/b"}]}', b'{"edits": [{"op": "add", "path": "/a"}]}',
                 b'{"edits": [], "edits": []}', b'{"edits": [], "seen": 5}', b"\xff\xfe", b'{"edits": ["\xff"]}',
                 b'{"edits": [{"op": "add", "path": "/x", "value": ' + b'{"a":' * 5000 + b"1" + b"}" * 5000 + b"}]}"):
        status, _ = server.ask("POST", "/api/plan", body)
        expect(status == 400, f"{body[:50]}: {status} instead of 400")
    goes_on(server, "bodies that are none")


def check_edits(server):
    with open(TRIP, "rb") as file:
        before = file.read()
    digest = json.loads(server.ask("GET", "/api/trip")[1].split(b"\r\n\r\n", 1)[1])["seen"]
    for path, value in [("/route/tracks", ["../../etc/passwd"]), ("/route/tracks/0", "/etc/shadow"),
                        ("/party", []), ("/parti", 1), ("/kit/99999", {}), ("/kit/-1", {}), ("/days/set_off/x/y", 1),
                        ("days", 1), ("", {}), ("/~2", 1), ("/a" * 5000, 1), ("/" + "a" * 100_000, 1),
                        ("/days/nights", ["nowhere"]), ("/days/hours", "<b>many</b>"), ("/route/elevation", ["/dev/zero"])]:
        edit = {"edits": [{"op": "add", "path": path, "value": value}], "seen": digest}
        for where in ("/api/plan", "/api/write"):
            status, answer = server.ask("POST", where, edit)
            expect(status == 422, f"{path[:40]} at {where}: {status} instead of 422")
            expect(b'"problems"' in answer, f"{path[:40]} at {where} is not told what is wrong")
    expect(server.ask("POST", "/api/write", {"edits": [{"op": "add", "path": "/days/hours", "value": 7}], "seen": "0"})[0] == 409,
           "a text that nobody saw is written over")
    with open(TRIP, "rb") as file:
        after = file.read()
    expect(after == before, "an edit that was refused is written")
    goes_on(server, "edits that fit nowhere")


def check_paths(server):
    for path in ("/../../../../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/live.css/../../trip.json", "//etc/passwd", "/trip.json",
                 "/api", "/api/plan/", "/api/%00", "/" + "a" * 7000, "/?" + "a" * 7000):
        status, answer = server.ask("GET", path)
        expect(status in (400, 404) or path.startswith("/?"), f"{path[:30]}: {status}")
        expect(b"root:" not in answer, f"{path[:30]} gives a file of the machine")
    expect(server.ask("GET", "/" + "a" * 9000)[0] in (0, 400, 414), "a path of 9000 letters passes")
    for method in ("PUT", "DELETE", "OPTIONS", "PATCH", "TRACE", "BREW"):
        status, _ = server.ask(method, "/api/trip")
        expect(status in (400, 405), f"{method}: {status}")
    goes_on(server, "odd requests")


def check_slow(server):
    slow = []
    for _ in range(8):  # heads that never end
        one = socket.create_connection(("127.0.0.1", server.port))
        one.sendall(b"GET / HTTP/1.1\r\nHost:")
        slow.append(one)
    readers = []
    for _ in range(6):  # listeners that never read
        one = socket.create_connection(("127.0.0.1", server.port))
        one.sendall(f"GET /api/events HTTP/1.1\r\n{server.headers()}\r\n".encode())
        readers.append(one)
    start = time.monotonic()
    goes_on(server, "slow heads and listeners that do not read")
    expect(time.monotonic() - start < 3.0, "slow others hold up a plan")
    for one in slow + readers:
        one.close()


def what_waits(server):
    """Requests that the server hears out until its time is up: begun first, each in a thread."""
    def odd(text):
        status, _ = server.raw(text, 13.0)
        expect(status in (0, 400, 403, 414, 505), f"{text[:20]}: {status}")
    odds = (b"\r\n\r\n", b"GET\r\n\r\n", b"\x16\x03\x01\x02\x00" * 50, b"\x00" * 5000, b"GET / HTTP/9.9\r\n\r\n")
    hands = [threading.Thread(target=odd, args=(text,)) for text in odds]
    hands.append(threading.Thread(target=check_trickle, args=(server,)))
    for hand in hands:
        hand.start()
    return hands


def check_trickle(server):
    trickle = socket.create_connection(("127.0.0.1", server.port))
    start = time.monotonic()
    try:
        while time.monotonic() - start < 14.0:
            trickle.sendall(b"x")
            time.sleep(0.2)
    except OSError:
        pass
    expect(time.monotonic() - start < 13.0, "a head that trickles in is listened to without end")


def check_many(server):
    def many(count):
        for _ in range(count):
            with socket.create_connection(("127.0.0.1", server.port)) as one:
                one.sendall(b"GET /api/trip HTTP/1.1\r\nHost: elsewhere\r\n\r\n")
                received(one)
    hands = [threading.Thread(target=many, args=(CONNECTIONS // 4,)) for _ in range(4)]
    for hand in hands:
        hand.start()
    for hand in hands:
        hand.join()
    open_files = len(os.listdir(f"/proc/{server.process.pid}/fd"))
    expect(open_files < 60, f"{open_files} files are open after {CONNECTIONS} connections")
    goes_on(server, f"{CONNECTIONS} connections")


def check_names():
    """Markup in every name comes back as text."""
    with open(TRIP, encoding="utf-8") as file:
        text = file.read()
    with open(TRIP, "w", encoding="utf-8") as file:
        file.write(text.replace("Ada", "<img src=x onerror=alert(1)>"))
    server = Server()
    status, answer = server.ask("POST", "/api/plan", {"edits": [], "want": ["drawing"]})
    expect(status == 200, f"a trip with markup in its names is not planned: {status}")
    expect(b"<img" not in answer, "a drawing holds a name as markup")
    server.ask("POST", "/api/end", {})
    server.process.wait(10)
    with open(TRIP, "w", encoding="utf-8") as file:
        file.write(text)


def check_calls():
    if not shutil.which("strace"):
        print("system calls not looked at: this machine has no strace")
        return
    log = os.path.join(FOLDER, "calls.txt")
    server = Server(["strace", "-f", "-qq", "-o", log, "-e", "trace=socket,bind,listen,connect"])
    goes_on(server, "being traced")
    server.ask("POST", "/api/end", {})
    server.process.wait(20)
    with open(log, encoding="utf-8", errors="replace") as file:
        calls = [line for line in file if re.search(r"\b(socket|bind|listen|connect)\(", line)]
    listening = [line for line in calls if "listen(" in line]
    bound = [line for line in calls if "bind(" in line]
    made = [line for line in calls if re.search(r"socket\((AF|PF)_INET", line)]
    expect(len(listening) == 1, f"{len(listening)} sockets listen")
    expect(all('inet_addr("127.0.0.1")' in line for line in bound) and len(bound) == 1, f"bound to: {bound}")
    expect(len(made) == 1, f"{len(made)} sockets are made")
    expect(not [line for line in calls if "connect(" in line and "AF_UNIX" not in line], "something is connected to")


def main():
    shutil.rmtree(FOLDER, ignore_errors=True)
    shutil.copytree(os.path.join(SAMPLES, "saddle"), FOLDER)
    server = Server()
    goes_on(server, "starting")
    began = time.monotonic()
    waiting = what_waits(server)
    for check in (check_gate, check_gate_everywhere, check_odds, check_bodies, check_edits, check_paths, check_slow, check_many):
        start = time.monotonic()
        check(server)
        print(f"{check.__name__}: {time.monotonic() - start:.1f} s")
    for hand in waiting:
        hand.join()
    goes_on(server, "requests that never end")
    print(f"all of it: {time.monotonic() - began:.1f} s")
    status, _ = server.ask("POST", "/api/end", {})
    expect(status == 200, "the server cannot be ended")
    expect(server.process.wait(10) == 0, f"the server ends with {server.process.returncode}")
    check_names()
    check_calls()
    server = Server()
    server.process.send_signal(signal.SIGINT)
    server.process.wait(10)
    return 1 if wrong else 0


sys.exit(main())
