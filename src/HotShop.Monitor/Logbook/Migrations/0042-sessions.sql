-- Sessions are asked for by their own times, not by when they were logged: all of them are read, and these are few.
CREATE INDEX log_entry_sessions ON log_entry (seq) WHERE entry = 'session';
