from __future__ import annotations

import datetime as dt
import email
import email.header
import email.message
import email.policy
import re
import subprocess
import sys
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notices.rendering.mail import InlineImage, Message, compose

CALENDAR = b"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nMETHOD:PUBLISH\r\nPRODID:x\r\nEND:VCALENDAR\r\n"
PNG = b"\x89PNG\r\n\x1a\nnot really\r\n.\r\n"

FULL = Message(
    subject="Greens work, 12 to 14 October 2026",
    sender=("Course Manager", "course@marlpit.example"),
    to=("Members", "members@marlpit.example"),
    reply_to=("Club office", "office@marlpit.example"),
    date=dt.datetime(2026, 9, 14, 9, 0, tzinfo=dt.UTC),
    message_id="<marlpit-announcement-1@marlpit.example>",
    list_id="Course notices <notices.marlpit.example>",
    list_unsubscribe="mailto:office@marlpit.example?subject=unsubscribe%20course%20notices",
    text="Work starts on 12 October.\n\nFrom then on – sand.\n.\nFrom the office\n",
    html='<!doctype html><html lang="en-GB"><body><img src="cid:course@marlpit.example"></body></html>',
    images=(InlineImage("course@marlpit.example", "course.png", PNG),),
    calendar=CALENDAR,
    calendar_name="calendar.ics",
)


def parse(raw: bytes) -> email.message.EmailMessage:
    return email.message_from_bytes(raw, policy=email.policy.default)


def shape(part: email.message.Message) -> object:
    if not part.is_multipart():
        return part.get_content_type()
    kids = [kid for kid in part.get_payload() if isinstance(kid, email.message.Message)]
    return (part.get_content_type(), *(shape(kid) for kid in kids))


def head(raw: bytes) -> list[str]:
    """Unfolded header fields, read without the library."""
    top = raw.split(b"\r\n\r\n", 1)[0].decode("ascii")
    return re.sub(r"\r\n(?=[ \t])", "", top).split("\r\n")


def decoded(value: str) -> str:
    return str(email.header.make_header(email.header.decode_header(value)))


def test_the_layers_are_as_mail_programs_want_them() -> None:
    assert shape(parse(compose(FULL))) == (
        "multipart/mixed",
        (
            "multipart/alternative",
            "text/plain",
            ("multipart/related", "text/html", "image/png"),
        ),
        "text/calendar",
    )


def test_a_layer_with_one_part_is_left_out() -> None:
    bare = replace(FULL, images=(), calendar=None)
    assert shape(parse(compose(bare))) == ("multipart/alternative", "text/plain", "text/html")
    assert shape(parse(compose(replace(FULL, images=())))) == (
        "multipart/mixed",
        ("multipart/alternative", "text/plain", "text/html"),
        "text/calendar",
    )
    assert shape(parse(compose(replace(FULL, calendar=None)))) == (
        "multipart/alternative",
        "text/plain",
        ("multipart/related", "text/html", "image/png"),
    )


def test_what_goes_in_comes_out() -> None:
    message = parse(compose(FULL))
    plain, html, image, calendar = (p for p in message.walk() if not p.is_multipart())
    assert isinstance(plain, email.message.EmailMessage)
    assert plain.get_content().replace("\r\n", "\n") == FULL.text
    assert isinstance(html, email.message.EmailMessage)
    assert html.get_content().rstrip() == FULL.html
    assert image.get_payload(decode=True) == PNG
    assert image["Content-ID"] == "<course@marlpit.example>"
    assert image.get_content_disposition() == "inline"
    assert image.get_filename() == "course.png"
    assert calendar.get_payload(decode=True) == CALENDAR
    assert calendar["Content-Transfer-Encoding"] == "base64"
    assert calendar.get_content_disposition() == "attachment"
    assert calendar.get_filename() == "calendar.ics"
    assert calendar.get_param("method") == "PUBLISH"
    assert calendar.get_param("charset") == "utf-8"
    for part in message.walk():
        assert not part.defects


def test_the_header_says_what_it_should() -> None:
    assert head(compose(FULL)) == [
        "From: Course Manager <course@marlpit.example>",
        "To: Members <members@marlpit.example>",
        "Reply-To: Club office <office@marlpit.example>",
        "Subject: Greens work, 12 to 14 October 2026",
        "Date: Mon, 14 Sep 2026 09:00:00 +0000",
        "Message-ID: <marlpit-announcement-1@marlpit.example>",
        "Auto-Submitted: auto-generated",
        "List-Id: Course notices <notices.marlpit.example>",
        "List-Unsubscribe: <mailto:office@marlpit.example?subject=unsubscribe%20course%20notices>",
        "X-Unsent: 1",
        "MIME-Version: 1.0",
        'Content-Type: multipart/mixed; boundary="=_notice_0"',
    ]


def test_what_is_not_wanted_is_not_there() -> None:
    bare = replace(FULL, reply_to=None, list_id=None, list_unsubscribe=None, draft=False)
    names = {line.split(":")[0] for line in head(compose(bare))}
    assert not names & {"Reply-To", "List-Id", "List-Unsubscribe", "X-Unsent", "Bcc"}


def test_related_names_its_root() -> None:
    related = [
        part for part in parse(compose(FULL)).walk() if part.get_content_subtype() == "related"
    ]
    assert [part.get_param("type") for part in related] == ["text/html"]


def test_the_same_message_gives_the_same_bytes_in_another_process() -> None:
    code = (
        "import importlib.util, sys; spec = importlib.util.spec_from_file_location('t', sys.argv[1]);"
        "t = importlib.util.module_from_spec(spec); spec.loader.exec_module(t);"
        "sys.stdout.buffer.write(t.compose(t.FULL))"
    )
    other = subprocess.run([sys.executable, "-c", code, __file__], capture_output=True, check=True)
    assert other.stdout == compose(FULL)


def test_no_line_is_too_long_and_all_is_ascii() -> None:
    raw = compose(
        replace(
            FULL,
            text="Größe – " * 100 + "\n" + "x" * 3000,
            html="<p>" + "naïve café " * 400,
            subject="Übermäßig lange Überschrift – " * 9,
            sender=("Ærøskøbing Golfklub, grønne områder og alt det andet " * 4, "a@b.example"),
        )
    )
    raw.decode("ascii")
    # An address to unsubscribe at is never folded.
    assert all(len(x) <= 76 for x in raw.split(b"\r\n") if not x.startswith(b"List-Unsub"))
    assert not re.search(rb"(?<!\r)\n|\r(?!\n)", raw)


@pytest.mark.parametrize(
    "name",
    [
        "Manager, Course",
        'The "Old" Course',
        "back\\slash",
        "J. Smith (Greens)",
        "Señor Núñez, Club de Golf",
        "球場 ⛳",
        "=?utf-8?q?sneaky?=",
        "",
    ],
)
def test_a_name_comes_back_as_it_was(name: str) -> None:
    message = parse(compose(replace(FULL, sender=(name, "course@marlpit.example"))))
    (address,) = message["From"].addresses
    assert (address.display_name, address.addr_spec) == (name, "course@marlpit.example")
    assert not message["From"].defects


def test_a_long_name_comes_back_as_it_was() -> None:
    # Read by the older functions: the newer ones of Python 3.11 put a space of their own between
    # two encoded words in a name, against RFC 2047 section 6.2.
    for name in ("A long name, with a comma, that goes on and on " * 3, "Ærø Golfklub " * 12):
        field = head(compose(replace(FULL, sender=(name, "a@b.example"))))[0]
        assert decoded(field.removeprefix("From: ")) == f"{name.strip()} <a@b.example>"


@pytest.mark.parametrize(
    "subject",
    [
        "Short",
        "Grünpflege – Übersicht",
        "=?utf-8?q?sneaky?=",
        "Greens: what happens, and when, " * 8 + "end",
        "⛳" * 60,
        "x" * 500,
    ],
)
def test_a_subject_comes_back_as_it_was(subject: str) -> None:
    raw = compose(replace(FULL, subject=subject))
    assert parse(raw)["Subject"] == subject
    line = next(line for line in head(raw) if line.startswith("Subject: "))
    for word in line.removeprefix("Subject: ").split(" "):
        assert len(word) <= 75 or not word.startswith("=?")


def test_a_long_address_to_unsubscribe_at_stays_in_one_piece() -> None:
    url = "mailto:office@marlpit.example?subject=" + "unsubscribe%20" * 20
    raw = compose(replace(FULL, list_unsubscribe=url))
    assert f"\r\nList-Unsubscribe: <{url}>\r\n".encode() in raw


@pytest.mark.parametrize(
    ("given_id", "written"),
    [
        ("<notices.club.example>", "<notices.club.example>"),
        ("Greens, notices <n.club.example>", '"Greens, notices" <n.club.example>'),
        ("Château <n.club.example>", "<n.club.example>"),
        ("a\r\nBcc: x <n.club.example>", '"a Bcc: x" <n.club.example>'),
    ],
)
def test_a_list_identifier_is_never_encoded(given_id: str, written: str) -> None:
    assert f"List-Id: {written}" in head(compose(replace(FULL, list_id=given_id)))


@pytest.mark.parametrize(
    "changes",
    [
        {"date": dt.datetime(2026, 9, 14, 9, 0)},  # noqa: DTZ001 - that is the fault
        {"subject": " \r\n "},
        {"sender": ("x", "no address")},
        {"sender": ("x", "a@b.example\r\nBcc: c@d.example")},
        {"sender": ("x", "a@b.example>, <c@d.example")},
        {"to": ("x", "ä@b.example")},
        {"message_id": "a@b.example"},
        {"message_id": "<a@b.example>\r\nBcc: c@d.example"},
        {"message_id": "<a@b.example>\n"},
        {"list_id": "no brackets"},
        {"list_id": "<a.b>\r\n"},
        {"list_unsubscribe": "https://marlpit.example/leave"},
        {"list_unsubscribe": "mailto:a@b.example\r\nBcc: c@d.example"},
        {"list_unsubscribe": "mailto:a@b.example>"},
        {"list_unsubscribe": "mailto:a@b.example?body=" + "x" * 1000},
        {"calendar": b"BEGIN:VCALENDAR\r\nMETHOD:REQUEST\r\n"},
        {"calendar_name": "../calendar.ics"},
        {"calendar_name": 'a"; x="b.ics'},
        {"images": (InlineImage("no-at-sign", "a.png", PNG),)},
        {"images": (InlineImage("a@b", "a/b.png", PNG),)},
        {"images": (InlineImage("a@b", "a.png", PNG), InlineImage("a@b", "b.png", PNG))},
    ],
    ids=lambda changes: next(iter(changes)),
)
def test_what_is_not_right_is_refused(changes: dict[str, object]) -> None:
    with pytest.raises((ValueError, TypeError)):
        compose(replace(FULL, **changes))  # type: ignore[arg-type]


AWKWARD = st.text(
    st.one_of(
        st.sampled_from('\r\n\t\0\x0b\x0c\x1c\x85\u2028\u2029"\\,;:<>()@=?_ é⛳'), st.characters()
    ),
    max_size=120,
)


def as_read(words: str) -> str:
    """Return what a reader may see: lone surrogates and line ends are spaces."""
    clean = re.sub(r"[\x00-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff]", " ", words)
    return " ".join(clean.split())


@settings(deadline=None)
@given(AWKWARD, AWKWARD, AWKWARD)
def test_nothing_that_is_typed_becomes_a_field(subject: str, name: str, reply: str) -> None:
    raw = compose(
        replace(
            FULL,
            subject=f"S{subject}",
            sender=(name, "course@marlpit.example"),
            reply_to=(reply, "office@marlpit.example"),
        )
    )
    fields = head(raw)
    assert [field.split(":")[0] for field in fields] == [
        "From",
        "To",
        "Reply-To",
        "Subject",
        "Date",
        "Message-ID",
        "Auto-Submitted",
        "List-Id",
        "List-Unsubscribe",
        "X-Unsent",
        "MIME-Version",
        "Content-Type",
    ]
    assert decoded(fields[3].removeprefix("Subject: ")) == as_read(f"S{subject}")
    assert fields[0].endswith("<course@marlpit.example>")
    assert len(parse(raw)["From"].addresses) == 1
    assert all(len(line) <= 76 for line in raw.split(b"\r\n\r\n")[0].split(b"\r\n")[:7])


@settings(deadline=None)
@given(st.text(st.characters(exclude_categories=["Cs"])))
def test_any_text_arrives(text: str) -> None:
    message = parse(compose(replace(FULL, text=text)))
    (plain,) = (part for part in message.walk() if part.get_content_type() == "text/plain")
    assert isinstance(plain, email.message.EmailMessage)
    # A line end is a line end, however it was written, and the last line has one.
    expected = re.sub(r"\r\n|\r", "\n", text)
    found = plain.get_content().replace("\r\n", "\n")
    assert found.rstrip("\n") == expected.rstrip("\n")
