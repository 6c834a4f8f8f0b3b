"""A page that any browser prints. Who makes its body escapes what a person typed."""

from __future__ import annotations

from html import escape

# A sheet of sixty lines is to fit on one page of A4 and of Letter.
_STYLE = (
    "body{font-family:Arial,Helvetica,'Liberation Sans',sans-serif;margin:1.5em}"
    "table{border-collapse:collapse;width:100%}"
    "td,th{border-bottom:1px solid #888;text-align:left;padding:.15em .5em;vertical-align:top}"
    "td:last-child,.day{white-space:nowrap}.part{padding-top:.6em;border-bottom:2px solid #000}"
    ".box{display:inline-block;width:.8em;height:.8em;border:1px solid #000}"
    ".pen{display:inline-block;width:5em}"
    "@page{margin:10mm}@media print{body{margin:0;font-size:7.5pt;line-height:1.12}"
    "h1{font-size:12pt;margin:0 0 2pt}h2{font-size:10pt;margin:8pt 0 2pt}p{margin:3pt 0}"
    "td,th{padding:.07em .4em}.part{padding-top:.5em}.loose td{padding:.45em .4em}"
    "tr{break-inside:avoid}h2,.part{break-after:avoid}}"
)


def page(title: str, body: str, style: str = "", *, headed: bool = True) -> str:
    """The whole page; `body` is markup. Without a head nothing of the paper is lost to a title."""
    said = escape(title)
    return (
        f'<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>{said}'
        f"</title><style>{_STYLE}{style}</style></head><body>"
        f"{f'<h1>{said}</h1>' if headed else ''}{body}</body></html>\n"
    )
