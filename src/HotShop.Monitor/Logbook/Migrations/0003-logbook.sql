-- Append-only. A correction is an entry that points at another by its id.
CREATE TABLE log_entry (
    seq INTEGER PRIMARY KEY NOT NULL,
    id TEXT NOT NULL UNIQUE,
    appliance TEXT NOT NULL,
    entry TEXT NOT NULL,
    at INTEGER NOT NULL,
    who TEXT,
    fields TEXT NOT NULL,
    corrects TEXT,
    arrived INTEGER NOT NULL
) STRICT;

CREATE INDEX log_entry_by_appliance ON log_entry (appliance, at);
