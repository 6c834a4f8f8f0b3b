"""Floor: read the columns, make the dicts, print them as JSON.

A column called "reasons:lines" holds a list of words, one a line; "left:json" something nested.
"""

import json
import sqlite3
import sys

db = sqlite3.connect(sys.argv[1])
found = db.execute("select * from due order by rowid")
names = [column[0].partition(":") for column in found.description]
rows = [
    {
        name: value.split("\n") if kind == "lines" else json.loads(value) if kind else value
        for (name, _, kind), value in zip(names, row, strict=True)
    }
    for row in found
]
print(json.dumps(rows, ensure_ascii=False))
