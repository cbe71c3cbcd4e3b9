-- What was said of a day when it was over, so that a replay can tell what is said differently now. The day is the studio's, YYYY-MM-DD.
CREATE TABLE stated_figure (
    day        TEXT    NOT NULL,
    appliance  TEXT    NOT NULL,
    name       TEXT    NOT NULL,
    value      REAL    NOT NULL,                -- unit as the name says
    stated_at  INTEGER NOT NULL,                -- whole microseconds since 1970 UTC
    PRIMARY KEY (day, appliance, name)
) STRICT, WITHOUT ROWID;
