-- Times: whole microseconds since 1970 UTC. What has happened is a fact: occurrences and transitions are never changed.
CREATE TABLE alarm_occurrence (
    seq           INTEGER NOT NULL PRIMARY KEY,
    id            TEXT    NOT NULL UNIQUE,       -- alarm and start: the same start is the same occurrence
    alarm         TEXT    NOT NULL,
    appliance     TEXT    NOT NULL,
    channel       TEXT,
    kind          TEXT    NOT NULL,
    priority      INTEGER NOT NULL,
    since         INTEGER NOT NULL,
    value         REAL,
    limit_value   REAL,
    unit          TEXT,                          -- UCUM, of value and limit
    sentence      TEXT    NOT NULL,
    consequence   TEXT    NOT NULL,
    first_step    TEXT    NOT NULL,
    caution       TEXT    NOT NULL,
    inhibited_by  TEXT                           -- the alarm that is its cause: shown, calls nobody
) STRICT;

CREATE INDEX alarm_occurrence_by_alarm ON alarm_occurrence (alarm, seq);
CREATE INDEX alarm_occurrence_by_time ON alarm_occurrence (since);

CREATE TABLE alarm_transition (
    seq         INTEGER NOT NULL PRIMARY KEY,
    occurrence  TEXT    NOT NULL REFERENCES alarm_occurrence (id),
    change      TEXT    NOT NULL CHECK (change IN ('raised', 'acknowledged', 'cleared')),
    at          INTEGER NOT NULL,                -- by the channel's time where a sample caused it
    written_at  INTEGER NOT NULL,
    state       TEXT    NOT NULL,                -- after it
    who         TEXT,
    value       REAL,
    limit_value REAL,
    UNIQUE (occurrence, change)
) STRICT;

CREATE TRIGGER alarm_occurrence_is_a_fact BEFORE UPDATE ON alarm_occurrence BEGIN SELECT RAISE(ABORT, 'alarm history is never rewritten'); END;
CREATE TRIGGER alarm_occurrence_stays BEFORE DELETE ON alarm_occurrence BEGIN SELECT RAISE(ABORT, 'alarm history is never rewritten'); END;
CREATE TRIGGER alarm_transition_is_a_fact BEFORE UPDATE ON alarm_transition BEGIN SELECT RAISE(ABORT, 'alarm history is never rewritten'); END;
CREATE TRIGGER alarm_transition_stays BEFORE DELETE ON alarm_transition BEGIN SELECT RAISE(ABORT, 'alarm history is never rewritten'); END;

-- Conditions that are under way, with their since-when: they go on through a restart. Written when they change, not with each reading.
CREATE TABLE alarm_pending (
    alarm        TEXT    NOT NULL PRIMARY KEY,
    wrong_since  INTEGER,
    wrong_samples INTEGER NOT NULL,
    fine_since   INTEGER,
    fine_samples INTEGER NOT NULL,
    not_before   INTEGER,
    rule         TEXT                            -- what the rule remembers, JSON
) STRICT;
