"""Texts that would do something if they were taken for more than text."""

WORDS = {
    "script": "<script>alert(1)</script><img src=x onerror=alert(2)>",
    "attribute": '" onmouseover=\'alert(1)\' style="position:fixed;inset:0" x="',
    "end of everything": "</td></table></main></body></html><h1>Passed</h1>",
    "svg": '</text></svg><svg onload="alert(1)">',
    "entity": "&lt;b&gt; &amp; &#x202e; ]]> <!-- -->",
    "template": "{{ 7 * 7 }} {% include 'x' %} ${x} %s {0}",
    "typesetting": '#eval("1") $x^2$ *bold* _it_ \\ @ref <label> // gone\n= Heading',
    "control": "bell\x07 escape\x1b[2J\x1b]0;title\x07 null\x00 delete\x7f csi\x9b31m return\rover tab\tend",
    "direction": "\u202egpj.exe \u2066inside\u2069 \u200fmark \u061cmark",
    "pile": "a" + "\u0301" * 60 + "b",
    "formula": "=1+1",
    "link": '=HYPERLINK("x:";"click")',
    "plus": "+1+1",
    "minus": "-1+1",
    "at": "@SUM(1;1)",
    "wide": "\uff1d1+1",
    "tab first": "\t=1+1",
    "blank first": "  =1+1",
    "line first": "\n=1+1",
    "row": 'a","b"\r\n=1+1,"',
    "exchange": "=cmd|' /C calc'!A0",
    "scripts": "\u05e9\u05dc\u05d5\u05dd \u0639\u0631\u0628\u064a \u4e2d\u6587 \U0001f600 \u017b\u00f3\u0142\u0107",
    "private": "\ue000 \ufeff \u00ad \ufffe",
}
"""By what they are."""

LONG = {"one long word": "x" * 100_000, "many words": "practice makes " * 7_000, "long formula": "=" + "1+" * 50_000}
"""A hundred kilobytes."""
