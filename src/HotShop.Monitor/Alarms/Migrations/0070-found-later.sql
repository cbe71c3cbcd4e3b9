-- Readings that came too late to ring, joined to stretches: what they would have said is told in the morning. Times: whole microseconds since 1970 UTC.
CREATE TABLE found_later (
    id          INTEGER NOT NULL PRIMARY KEY,
    channel     TEXT    NOT NULL,
    alarm       TEXT    NOT NULL,                -- the alarm they would have raised; empty where they broke no limit
    from_at     INTEGER NOT NULL,
    until_at    INTEGER NOT NULL,
    lowest      REAL    NOT NULL,                -- canonical unit of the channel
    highest     REAL    NOT NULL,
    count       INTEGER NOT NULL,
    arrived_at  INTEGER NOT NULL                 -- when the last of them came
) STRICT;

CREATE INDEX found_later_by_time ON found_later (channel, alarm, until_at);
