-- Loads of annealers as people typed them. Append-only: a later load of the same annealer takes over from its own start.
CREATE TABLE annealing_load (
    seq           INTEGER NOT NULL PRIMARY KEY,
    id            TEXT    NOT NULL UNIQUE,       -- made by whoever types it: the same id is the same load
    appliance     TEXT    NOT NULL,
    name          TEXT    NOT NULL,
    start_at      INTEGER NOT NULL,              -- whole microseconds since 1970 UTC
    start_celsius REAL    NOT NULL,
    stages        TEXT    NOT NULL,              -- JSON array of {toCelsius, kelvinPerHour} or {holdMinutes}
    written_at    INTEGER NOT NULL
) STRICT;

CREATE TRIGGER annealing_load_is_a_fact BEFORE UPDATE ON annealing_load BEGIN SELECT RAISE(ABORT, 'loads are never rewritten'); END;
CREATE TRIGGER annealing_load_stays BEFORE DELETE ON annealing_load BEGIN SELECT RAISE(ABORT, 'loads are never rewritten'); END;
