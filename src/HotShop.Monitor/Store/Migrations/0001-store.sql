-- Facts about the store itself: demo mark, next sequence numbers, jobs done up to.
CREATE TABLE fact (
    name TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Things that must not go unnoticed, counted since the store was made.
CREATE TABLE counter (
    name TEXT PRIMARY KEY NOT NULL,
    count INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Every configuration that was in force, from when.
CREATE TABLE configuration (
    valid_from INTEGER PRIMARY KEY NOT NULL,
    hash TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT;
