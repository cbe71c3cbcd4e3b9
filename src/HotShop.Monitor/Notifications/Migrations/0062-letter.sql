-- Mails that are no calls (reports, handovers): who had which. The key names the letter, e.g. report/2026-10; a person gets each once.
-- Times: whole microseconds since 1970 UTC.
CREATE TABLE letter (
    key         TEXT    NOT NULL,
    person      TEXT    NOT NULL,
    state       TEXT    NOT NULL CHECK (state IN ('waiting', 'sent', 'refused', 'skipped')),
    attempts    INTEGER NOT NULL,
    at          INTEGER NOT NULL,                -- of the last attempt
    note        TEXT    NOT NULL,                -- what the mail server answered, or why nothing was sent
    PRIMARY KEY (key, person)
) STRICT;
