-- Bills as typed in or imported. Append-only: a bill that corrects another takes its place, one that corrects without a quantity strikes it out.
-- Quantities and amounts are text, so that what was typed stays to the last digit. Days are YYYY-MM-DD of the studio's zone, both included.
CREATE TABLE bill (
    seq INTEGER PRIMARY KEY NOT NULL,
    id TEXT NOT NULL UNIQUE,
    energy TEXT NOT NULL CHECK (energy IN ('gas', 'electricity')),
    first TEXT NOT NULL,
    last TEXT NOT NULL,
    quantity TEXT,
    unit TEXT NOT NULL,
    energy_kwh TEXT,
    amount TEXT,
    note TEXT,
    who TEXT,
    corrects TEXT,
    arrived INTEGER NOT NULL
) STRICT;

CREATE INDEX bill_by_day ON bill (last, first);
