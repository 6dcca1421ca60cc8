"""The desk's doors under attack: what comes from nobody, from another site or in another form is refused plainly."""

import gc
import http.client
import json
import resource
import socket
import ssl
import stat
import subprocess
import warnings

import pytest
from cryptography import x509

from assistant.adapters import desk_link
from assistant.adapters.desk_link import DeskLink, LostError, RefusedError, pair_with
from assistant.desk import lab_guard, pairing, to_the_end
from assistant.desk.certificate import own_certificate
from assistant.desk.pairing import LASTS_S, MOST_A_MINUTE, MOST_WRONG, PairedStore, Pairing
from assistant.errors import LinkError
from assistant.link.addresses import DeskAddress, read_address
from assistant.link.messages import Begun, Hello, Lines, Pair, Waiting
from assistant.link.pairing_code import PairingCode, read_code
from tests.link.lab import desk
from tests.link.test_keeping import attempt_of, begun, chain, report

LIMIT_S = 30
NAME = "bench-1"
TRUSTING = ssl.create_default_context()
"""As a browser whose user has gone on past its warning."""
TRUSTING.check_hostname, TRUSTING.verify_mode = False, ssl.CERT_NONE


@pytest.fixture(scope="module")
def lab(tmp_path_factory):
    with desk(tmp_path_factory.mktemp("desk"), lab=("127.0.0.1", 0)) as one:
        yield one


@pytest.fixture(autouse=True)
def minute_has_passed(request):
    """Tries of an earlier test do not count."""
    if "lab" in request.fixturenames:
        request.getfixturevalue("lab").doors.pairing._tries.clear()


def paired(lab, name=NAME):
    code = lab.on(lambda: lab.doors.pairing.new_code("station"))
    return pair_with("127.0.0.1", lab.doors.lab_port, name, read_code(code))


def local(lab):
    return read_address(lab.link / "desk.json")


def asked(lab, path, method="GET", body=None, *, tls=True, port=None, **headers):
    """Status, headers and text of one request."""
    port = port or (lab.doors.lab_port if tls else int(local(lab).url.rpartition(":")[2]))
    connection = (
        http.client.HTTPSConnection("127.0.0.1", port, timeout=LIMIT_S, context=TRUSTING)
        if tls
        else http.client.HTTPConnection("127.0.0.1", port, timeout=LIMIT_S)
    )
    sent = {"Host": f"127.0.0.1:{port}", **{name.replace("_", "-"): value for name, value in headers.items()}}
    try:
        connection.request(method, path, body, sent)
        answer = connection.getresponse()
        return answer.status, answer.headers, answer.read().decode()
    finally:
        connection.close()


# Pairing.


def test_a_code_pairs_once(lab):
    """The token is known afterwards, the code is void, and the desk keeps no token."""
    code = lab.on(lambda: lab.doors.pairing.new_code("station"))
    address = pair_with("127.0.0.1", lab.doors.lab_port, NAME, read_code(code))
    assert len(DeskLink(address).hello(Hello(station=NAME)).desk) == 64
    with pytest.raises(LinkError, match="wrong, used or too old"):
        pair_with("127.0.0.1", lab.doors.lab_port, "bench-2", read_code(code))
    kept = lab.link / "paired.json"
    assert address.token not in kept.read_text()
    for path in (kept, lab.link / "desk-key.pem", lab.link / "desk.json"):
        assert stat.S_IMODE(path.stat().st_mode) == 0o600
    lab.on(lambda: lab.doors.store.remove("station", NAME))
    with pytest.raises(RefusedError, match="does not know the station"):
        DeskLink(address).hello(Hello(station=NAME))


def test_the_secret_goes_to_no_other_certificate(lab, tmp_path, monkeypatch):
    """Whoever stands in between has another certificate: the station says so, and sends nothing."""
    code = read_code(lab.on(lambda: lab.doors.pairing.new_code("station")))
    sent = []
    monkeypatch.setattr(desk_link.DeskLink, "pair", lambda self, pair: sent.append(pair))
    with desk(tmp_path, lab=("127.0.0.1", 0)) as other, pytest.raises(LinkError, match="Nothing was sent"):
        pair_with("127.0.0.1", other.doors.lab_port, NAME, code)
    assert sent == []
    with pytest.raises(LinkError, match="No desk answers"):
        pair_with("127.0.0.1", 9, NAME, code)


def test_a_paired_station_speaks_with_no_other_certificate(lab, tmp_path):
    """The pin holds for every request, not for the first one alone."""
    address = paired(lab)
    with desk(tmp_path, lab=("127.0.0.1", 0)) as other:
        wrong = address.model_copy(update={"url": f"https://127.0.0.1:{other.doors.lab_port}"})
        with pytest.raises(LostError, match=r"[Ff]ingerprint"):
            DeskLink(wrong).hello(Hello(station=NAME))
        assert other.seen(NAME) is None


class Time:
    """A clock that is set."""

    now = 1_000.0

    def __call__(self):
        return self.now


@pytest.fixture
def codes(tmp_path):
    clock = Time()
    return Pairing(PairedStore(tmp_path), "ab" * 32, clock), clock


def secret_in(code):
    return read_code(code).secret


def test_guessing_ends_soon(codes):
    """After some wrong tries the code is void, even for the right secret; in a minute only so many are looked at."""
    one, clock = codes
    right = secret_in(one.new_code("station"))
    for _ in range(MOST_WRONG):
        with pytest.raises(LinkError, match="not taken"):
            one.use("station", "0" * 10, NAME)
    with pytest.raises(LinkError, match="not taken"):
        one.use("station", right, NAME)
    right = secret_in(one.new_code("station"))
    for _ in range(MOST_A_MINUTE - MOST_WRONG - 1):
        with pytest.raises(LinkError, match="not taken"):
            one.use("station", "0" * 10, NAME)
    with pytest.raises(LinkError, match="too many tries"):
        one.use("station", right, NAME)
    clock.now += 61
    assert one.use("station", right, NAME)


def test_a_code_lasts_five_minutes_and_only_the_newest_counts(codes):
    """An old one, one that a newer one replaced, one for another kind: refused."""
    one, clock = codes
    right = secret_in(one.new_code("station"))
    clock.now += LASTS_S
    with pytest.raises(LinkError):
        one.use("station", right, NAME)
    older = secret_in(one.new_code("station"))
    newer = secret_in(one.new_code("station"))
    for kind, secret in (("station", older), ("browser", newer), ("station", "")):
        with pytest.raises(LinkError):
            one.use(kind, secret, NAME)
    token = one.use("station", newer, NAME)
    assert one._store.who("station", token) == NAME
    assert one._store.who("browser", token) == ""


def test_the_pairings_outlive_the_desk_and_a_name_is_one_station_s(tmp_path):
    """Pairing a name again ends the earlier token."""
    store = PairedStore(tmp_path)
    first = store.add("station", NAME)
    second = PairedStore(tmp_path).add("station", NAME)
    later = PairedStore(tmp_path)
    assert (later.who("station", first), later.who("station", second)) == ("", NAME)
    (tmp_path / "paired.json").write_text("{")
    with pytest.raises(LinkError, match="pair the stations anew"):
        PairedStore(tmp_path)
    assert pairing.MOST_PAIRED >= 30


def test_the_certificate_is_made_once(tmp_path):
    """Read back by another library function: its own digest, no authority, its key not for others to read."""
    made = own_certificate(tmp_path)
    assert own_certificate(tmp_path) == made
    read = x509.load_pem_x509_certificate(made.path.read_bytes())
    assert read.extensions.get_extension_for_class(x509.BasicConstraints).value.ca is False
    assert stat.S_IMODE(made.key.stat().st_mode) == 0o600
    # OpenSSL's own fingerprint of the same file.
    told = subprocess.run(
        ["openssl", "x509", "-in", made.path, "-noout", "-fingerprint", "-sha256"], capture_output=True, text=True
    )
    if told.returncode == 0:
        assert told.stdout.strip().rpartition("=")[2].replace(":", "").lower() == made.fingerprint


# Reports.


def test_nobody_reports_without_a_token_or_from_a_page(lab):
    """No token, a wrong one, one of the other door, a page's request: refused before the report is read."""
    address = paired(lab)
    hello = Hello(station=NAME).model_dump_json()
    form = {"Content_Type": "application/json"}
    good = {"Authorization": f"Bearer {address.token}", **form}
    here = {"Authorization": f"Bearer {local(lab).token}", **form}
    assert asked(lab, "/link/hello", "POST", hello, **good)[0] == 200
    assert asked(lab, "/link/hello", "POST", hello.replace(NAME, "bench-9"), tls=False, **here)[0] == 200
    for refused in (
        asked(lab, "/link/hello", "POST", hello, **form),
        asked(lab, "/link/hello", "POST", hello, **{**good, "Authorization": "Bearer x"}),
        asked(lab, "/link/hello", "POST", hello, **{**good, "Authorization": f"Basic {address.token}"}),
        asked(lab, "/link/hello", "POST", hello, **here),
        asked(lab, "/link/hello", "POST", hello, tls=False, **good),
    ):
        assert (refused[0], refused[2]) == (401, "This desk does not know the station. Pair it.\n")
    assert asked(lab, "/link/hello", "POST", hello, Origin="https://evil.example", **good)[0] == 403
    assert asked(lab, "/link/hello", "POST", hello, tls=False, Host="evil.example", **here)[0] == 421
    assert asked(lab, "/link/hello", "POST", hello, **{**good, "Content_Type": "text/plain"})[0] == 415
    assert asked(lab, "/link/hello", **good)[0] == 405
    assert asked(lab, "/link/secrets", "POST", hello, **good)[0] == 404
    status, _, text = asked(lab, "/link/hello", "POST", '{"station": 7}', **good)
    assert (status, text) == (400, "That is no such report: station: Input should be a valid string\n")
    assert asked(lab, "/link/pair", "POST", hello, tls=False, **here)[0] == 404


def test_a_station_speaks_for_itself_alone(lab):
    """Under another's name, of another's attempt, of one that nobody began: refused, and nothing changes."""
    one, other = DeskLink(paired(lab)), DeskLink(paired(lab, "bench-2"))
    lines = chain(3)
    assert one.begun(begun(lines, NAME)) == 0
    assert one.lines(report(lines[:2])) == 2
    for wrong, status in (
        (lambda: other.hello(Hello(station=NAME)), 403),
        (lambda: other.begun(begun(lines, NAME)), 403),
        (lambda: other.begun(begun(lines, "bench-2")), 403),
        (lambda: other.lines(report(lines, 3)), 403),
        (lambda: other.orders(Waiting(station=NAME)), 403),
        (lambda: one.lines(report(chain(2, words="x"))), 404),
        (lambda: one.lines(Lines(attempt=attempt_of(lines), first=3, lines=(lines[2].replace("yes", "no"),))), 409),
        (lambda: DeskLink(local(lab)).hello(Hello(station=NAME)), 403),
        (lambda: one.pair(Pair(station="bench-77", secret="0" * 10)), 403),
    ):
        with pytest.raises(RefusedError) as refused:
            wrong()
        assert refused.value.status == status, refused.value
    assert "does not follow" in lab.seen(NAME).trouble
    assert len(lab.entries(attempt_of(lines))) == 2
    assert one.lines(report(lines, 3)) == 3
    assert lab.seen(NAME).trouble == ""


def test_what_is_too_long_is_refused(lab):
    """10 MB of a note, with and without a told length, from friends and strangers at every door; 501 lines."""
    address = paired(lab)
    form = {"Content_Type": "application/json"}
    good = {"Authorization": f"Bearer {address.token}", **form}
    too_long = "That is too long for one report.\n"
    pair = {"Content_Type": "application/x-www-form-urlencoded", "Origin": f"https://127.0.0.1:{lab.doors.lab_port}"}
    for path, headers, answer in (
        ("/link/lines", good, (413, too_long)),
        ("/link/pair", form, (413, too_long)),
        ("/pair", pair, (413, "That is too long for a code.\n")),
        ("/link/lines", form, (401, "This desk does not know the station. Pair it.\n")),
        ("/desk/start", pair, (401, "This browser is not paired with the desk.\n")),
        ("/desk/start", form, (403, "Only the desk's own pages may do this.\n")),
    ):
        for body in (b"x" * 10_000_000, iter([b"x" * 1_000_000] * 10)):
            status, _, text = asked(lab, path, "POST", body, **headers)
            assert (status, text) == answer, path
    many = json.dumps({"attempt": "0" * 64, "first": 1, "lines": ["x"] * 501})
    assert asked(lab, "/link/lines", "POST", many, **good)[0] == 400
    assert asked(lab, "/link/pair", "POST", b"x" * 20_000, Content_Type="application/json")[0] == 413


def test_what_comes_too_slowly_is_told_so(lab, monkeypatch):
    """A request of which the rest never comes, and one that never ends, are answered and cut off."""
    monkeypatch.setattr(to_the_end, "BODY_S", 0.3)
    monkeypatch.setattr(to_the_end, "MOST_READ", 1_000_000)
    port = int(local(lab).url.rpartition(":")[2])
    head = f"POST /link/hello HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nContent-Type: application/json\r\n"
    good = f"{head}Authorization: Bearer {local(lab).token}\r\n"
    for sent, status in ((f"{good}Content-Length: 9\r\n\r\n{{", 408), (f"{head}Content-Length: 9\r\n\r\n{{", 401)):
        with socket.create_connection(("127.0.0.1", port), timeout=LIMIT_S) as one:
            one.sendall(sent.encode())
            told = b"".join(iter(lambda: one.recv(4_096), b"")).decode()
        assert told.startswith(f"HTTP/1.1 {status} ")
        assert told.endswith(".\n" if status == 401 else "That took too long to come.")
    with socket.create_connection(("127.0.0.1", port), timeout=LIMIT_S) as one, pytest.raises(OSError, match=r"."):
        one.sendall(f"{good}Transfer-Encoding: chunked\r\n\r\n".encode())
        while True:
            one.sendall(b"10000\r\n" + b"x" * 0x10000 + b"\r\n")


def test_what_the_disk_refuses_is_taken_later(lab):
    """With no file left to open the report is not taken, and not refused for good either."""
    link = DeskLink(paired(lab))
    lines = chain(3, words="later")
    assert link.begun(begun(lines, NAME)) == 0
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    resource.setrlimit(resource.RLIMIT_NOFILE, (1, hard))
    try:
        with pytest.raises(LostError, match="503"):
            link.lines(report(lines))
    finally:
        resource.setrlimit(resource.RLIMIT_NOFILE, (soft, hard))
    assert link.lines(report(lines)) == 3


def test_a_hostile_name_is_only_a_name(lab):
    """What a station is called is text for a page to escape; the file's name is checked before a path is made of it."""
    address = paired(lab, "<img src=x onerror=alert(1)>")
    assert DeskLink(address).hello(Hello(station="<img src=x onerror=alert(1)>")).desk
    good = {"Authorization": f"Bearer {address.token}", "Content_Type": "application/json"}
    body = Begun(station=address.station, attempt="0" * 64, file="x.jsonl", plan=()).model_dump()
    for file in ("../x.jsonl", "/etc/x.jsonl", "x.toml", "a/b.jsonl", ""):
        assert asked(lab, "/link/begun", "POST", json.dumps({**body, "file": file}), **good)[0] == 400


def test_a_thousand_connections_leave_the_desk_working(lab):
    """Whoever only connects, with or without TLS, keeps no station from reporting for longer than some seconds."""
    address = paired(lab)
    where = ("127.0.0.1", lab.doors.lab_port)
    idle = []
    try:
        for _ in range(1_000):
            idle.append(socket.create_connection(where))
        assert DeskLink(address).hello(Hello(station=NAME)).desk
        assert asked(lab, "/", tls=False)[0] == 404
    finally:
        for one in idle:
            one.close()


def test_who_does_not_say_goodbye_is_cut_off_at_the_end(tmp_path):
    """A browser that keeps a connection over TLS open and reads nothing more: nothing of it outlives the desk."""
    with desk(tmp_path, lab=("127.0.0.1", 0)) as one:
        where = ("127.0.0.1", one.doors.lab_port)
        silent = TRUSTING.wrap_socket(socket.create_connection(where))
        silent.sendall(b"GET / HTTP/1.1\r\nHost: %s:%d\r\n\r\n" % (where[0].encode(), where[1]))
        silent.recv(1)
    gc.collect()
    with warnings.catch_warnings(record=True) as told:
        warnings.simplefilter("always", ResourceWarning)
        del one
        gc.collect()
    assert [str(one.message) for one in told] == []
    silent.close()


# The instructor's phone or tablet.


def cookie_of(lab):
    code = lab.on(lambda: lab.doors.pairing.new_code("browser"))
    own = f"https://127.0.0.1:{lab.doors.lab_port}"
    form = {"Content_Type": "application/x-www-form-urlencoded", "Origin": own}
    return code, asked(lab, "/pair", "POST", f"code={code.replace(' ', '+')}", **form), form


def test_a_browser_is_paired_by_a_code(lab):
    """The cookie is for this host alone, over TLS alone, for no script and no other site (RFC 6265bis, from memory)."""
    code, (status, headers, _), form = cookie_of(lab)
    assert (status, headers["location"]) == (303, f"/{lab_guard.PAGES}/")
    parts = {part.strip().split("=")[0].lower() for part in headers["set-cookie"].split(";")}
    assert parts >= {"__host-desk", "secure", "httponly", "samesite", "path"}
    assert "domain" not in parts
    assert "samesite=strict" in headers["set-cookie"].lower()
    cookie = headers["set-cookie"].split(";")[0]
    status, headers, text = asked(lab, f"/{lab_guard.PAGES}/", Cookie=cookie)
    assert (status, text) == (200, "a page")
    assert "default-src 'none'" in headers["content-security-policy"]
    assert asked(lab, "/other/", Cookie=cookie)[0] == 404
    status, _, text = asked(lab, "/pair", "POST", f"code={code.replace(' ', '+')}", **form)
    assert status == 403
    assert "wrong, used or too old" in text
    (browser,) = [one for one in lab.doors.store.listed if one.kind == "browser"]
    lab.on(lambda: lab.doors.store.remove("browser", browser.name))
    assert asked(lab, f"/{lab_guard.PAGES}/", Cookie=cookie)[0] == 303


def test_other_browsers_and_sites_get_nowhere(lab):
    """No cookie, another host name, another site's page, another origin: refused in plain words."""
    _, (_, headers, _), form = cookie_of(lab)
    cookie = headers["set-cookie"].split(";")[0]
    page = f"/{lab_guard.PAGES}/"
    status, headers, _ = asked(lab, page)
    assert (status, headers["location"]) == (303, "/pair")
    assert asked(lab, page, "POST", "x")[0] == 403
    assert asked(lab, page, "POST", "x", Origin=form["Origin"])[0] == 401
    assert asked(lab, page, Cookie="__Host-desk=guess", Sec_Fetch_Dest="empty")[0] == 401
    assert asked(lab, page, Cookie=cookie, Host=f"evil.example:{lab.doors.lab_port}")[0] == 421
    assert asked(lab, page, Cookie=cookie, Host="127.0.0.1:1")[0] == 421
    assert asked(lab, page, Cookie=cookie, Sec_Fetch_Site="cross-site")[0] == 403
    assert asked(lab, page, "POST", "x", Cookie=cookie, Origin="https://evil.example")[0] == 403
    assert asked(lab, page, "POST", "x", Cookie=cookie)[0] == 403
    assert asked(lab, "/pair", "POST", "code=AAAAAAAA", Content_Type=form["Content_Type"])[0] == 403
    status, _, text = asked(lab, "/pair", "POST", "code=%3Cimg%20src%3Dx%3E", **form)
    assert (status, "<img" in text) == (403, False)
    assert asked(lab, "/pair", "POST", "x" * 10_000, **form)[0] == 413


def test_the_verb_pairs_and_says_what_is_wrong(lab, tmp_path, monkeypatch, capsys):
    """As somebody in the lab types it."""
    from assistant.cli.main import main

    monkeypatch.setenv("CHECKOFF_LINK", str(tmp_path / "link"))
    code = lab.on(lambda: lab.doors.pairing.new_code("station"))
    where = f"127.0.0.1:{lab.doors.lab_port}"
    assert main(["station", "pair", "127.0.0.1", code]) == 2
    assert main(["station", "pair", where, "ABCD"]) == 2
    assert main(["station", "pair", where, PairingCode("00" * 10, "00" * 5).text]) == 1
    assert "Nothing was sent" in capsys.readouterr().err
    assert main(["station", "pair", where, *code.lower().split(), "--name", "bench-7"]) == 0
    address = read_address(tmp_path / "link" / "paired-desk.json")
    assert isinstance(address, DeskAddress)
    assert DeskLink(address).hello(Hello(station="bench-7")).desk
    assert main(["station", "bench-8"]) == 2
    assert "paired as bench-7" in capsys.readouterr().err
