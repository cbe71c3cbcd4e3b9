-- A series is one channel in one unit: a changed unit begins a new one.
CREATE TABLE series (
    id INTEGER PRIMARY KEY NOT NULL,
    channel TEXT NOT NULL,
    unit TEXT NOT NULL,
    UNIQUE (channel, unit)
) STRICT;

-- Append-only, in the order of arrival; times in microseconds since 1970 UTC. Moved into "reading" every hour.
CREATE TABLE arrival (
    seq INTEGER PRIMARY KEY NOT NULL,
    series INTEGER NOT NULL,
    at INTEGER NOT NULL,
    value REAL NOT NULL,
    marks INTEGER NOT NULL,
    arrived INTEGER NOT NULL
) STRICT;

CREATE TABLE reading (
    series INTEGER NOT NULL,
    at INTEGER NOT NULL,
    value REAL NOT NULL,
    marks INTEGER NOT NULL,
    PRIMARY KEY (series, at)
) STRICT, WITHOUT ROWID;

CREATE TABLE minute (
    series INTEGER NOT NULL,
    minute INTEGER NOT NULL,
    mean REAL NOT NULL,
    min REAL NOT NULL,
    max REAL NOT NULL,
    count INTEGER NOT NULL,
    PRIMARY KEY (series, minute)
) STRICT, WITHOUT ROWID;

-- amount: time integral in (unit x hours), or what a counter passed; both only over covered seconds.
CREATE TABLE hour (
    series INTEGER NOT NULL,
    hour INTEGER NOT NULL,
    amount REAL NOT NULL,
    covered_seconds REAL NOT NULL,
    gap_seconds REAL NOT NULL,
    mean REAL,
    min REAL,
    max REAL,
    count INTEGER NOT NULL,
    resets INTEGER NOT NULL,
    PRIMARY KEY (series, hour)
) STRICT, WITHOUT ROWID;

-- Hours of a series whose hour row is not, or no longer, true.
CREATE TABLE dirty (
    series INTEGER NOT NULL,
    hour INTEGER NOT NULL,
    PRIMARY KEY (series, hour)
) STRICT, WITHOUT ROWID;

-- What could not become a value, with the reason; the last thousand.
CREATE TABLE refused (
    id INTEGER PRIMARY KEY NOT NULL,
    at INTEGER NOT NULL,
    topic TEXT NOT NULL,
    reason TEXT NOT NULL,
    sample TEXT NOT NULL,
    sender TEXT
) STRICT;

-- Same channel, same time, other value: the first stays; the last thousand are kept here.
CREATE TABLE conflict (
    id INTEGER PRIMARY KEY NOT NULL,
    at INTEGER NOT NULL,
    series INTEGER NOT NULL,
    reading_at INTEGER NOT NULL,
    kept REAL NOT NULL,
    offered REAL NOT NULL
) STRICT;
