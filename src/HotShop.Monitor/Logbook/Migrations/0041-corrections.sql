-- Who asks for entries asks for their corrections too: without this, all of the log is read for them.
CREATE INDEX IF NOT EXISTS log_entry_by_corrected ON log_entry (corrects) WHERE corrects IS NOT NULL;
