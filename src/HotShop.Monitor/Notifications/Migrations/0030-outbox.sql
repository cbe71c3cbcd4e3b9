-- Who is called about an occurrence, how far it has gone and when something is due next. Times: whole microseconds since 1970 UTC.
CREATE TABLE call_story (
    occurrence     TEXT    NOT NULL PRIMARY KEY,
    phase          TEXT    NOT NULL CHECK (phase IN ('calling', 'held', 'ended', 'quiet')),
    reason         TEXT    NOT NULL,             -- of the last decision, the same word as in the log
    priority       INTEGER NOT NULL,
    step           INTEGER NOT NULL,             -- number of the last round of messages; the phone sees it as #1, #2, ...
    reached        INTEGER NOT NULL,             -- people called so far, counted in the order of calling
    reached_at     INTEGER NOT NULL,             -- when the last of them was added
    last_round_at  INTEGER NOT NULL,
    next_at        INTEGER,                      -- when something is due; null when nothing is
    held_by        TEXT,
    appliance      TEXT    NOT NULL,             -- the alarm as it was raised, for the words of the repeats
    channel        TEXT,
    kind           TEXT    NOT NULL,
    since          INTEGER NOT NULL,
    sentence       TEXT    NOT NULL,
    first_step     TEXT    NOT NULL,
    caution        TEXT    NOT NULL
) STRICT;

CREATE INDEX call_story_due ON call_story (next_at) WHERE next_at IS NOT NULL;

-- What is to be sent. Written in the transaction of its cause; the key makes a second run change nothing.
CREATE TABLE outbox (
    id          INTEGER NOT NULL PRIMARY KEY,
    kind        TEXT    NOT NULL CHECK (kind IN ('call', 'held', 'closing', 'test')),
    occurrence  TEXT    NOT NULL,
    step        INTEGER NOT NULL,
    person      TEXT    NOT NULL,
    outlet      TEXT    NOT NULL,
    priority    INTEGER NOT NULL,
    reason      TEXT    NOT NULL,
    title       TEXT    NOT NULL,
    message     TEXT    NOT NULL,
    created_at  INTEGER NOT NULL,
    state       TEXT    NOT NULL DEFAULT 'pending' CHECK (state IN ('pending', 'sent', 'failed', 'replaced', 'withdrawn')),
    attempts    INTEGER NOT NULL DEFAULT 0,
    sent_at     INTEGER,
    last_error  TEXT,
    proof       TEXT,                            -- what the receiver answered when it took the message
    UNIQUE (occurrence, step, person, outlet)
) STRICT;

CREATE INDEX outbox_pending ON outbox (person, outlet, id) WHERE state = 'pending';

-- A person's own tap on a link that came this way: the only proof that a way to a phone works from end to end.
CREATE TABLE outlet_receipt (
    person      TEXT    NOT NULL,
    outlet      TEXT    NOT NULL,
    occurrence  TEXT    NOT NULL,
    at          INTEGER NOT NULL,
    PRIMARY KEY (person, outlet, occurrence)
) STRICT;
