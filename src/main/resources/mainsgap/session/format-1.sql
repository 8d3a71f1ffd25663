-- A session file, format version 1. src/docs/session-format.md explains it.
PRAGMA application_id = 1296520016; -- "MGSP"
PRAGMA user_version = 1;

CREATE TABLE entry (
  number  INTEGER PRIMARY KEY,  -- 1, 2, 3 ... without gaps
  kind    TEXT NOT NULL CHECK (kind IN ('header', 'trial', 'remark', 'set-aside')),
  content TEXT NOT NULL,        -- one JSON object
  seal    TEXT NOT NULL CHECK (length(seal) = 64)
) STRICT;

CREATE TABLE block (
  entry   INTEGER NOT NULL REFERENCES entry (number),
  channel TEXT NOT NULL,
  packed  BLOB NOT NULL,        -- the instrument's data block in zlib form (RFC 1950)
  PRIMARY KEY (entry, channel)
) STRICT;

CREATE TRIGGER entries_follow_each_other BEFORE INSERT ON entry
WHEN NEW.number <> (SELECT coalesce(max(number), 0) + 1 FROM entry)
BEGIN
  SELECT RAISE(ABORT, 'a session entry is only ever appended');
END;

CREATE TRIGGER entries_never_change BEFORE UPDATE ON entry
BEGIN
  SELECT RAISE(ABORT, 'a session entry is never changed');
END;

CREATE TRIGGER entries_stay BEFORE DELETE ON entry
BEGIN
  SELECT RAISE(ABORT, 'a session entry is never deleted');
END;

CREATE TRIGGER blocks_join_the_last_entry BEFORE INSERT ON block
WHEN NEW.entry <> (SELECT coalesce(max(number), 0) FROM entry)
  OR EXISTS (SELECT 1 FROM block WHERE entry = NEW.entry AND channel = NEW.channel)
BEGIN
  SELECT RAISE(ABORT, 'a session block is only ever appended');
END;

CREATE TRIGGER blocks_never_change BEFORE UPDATE ON block
BEGIN
  SELECT RAISE(ABORT, 'a session block is never changed');
END;

CREATE TRIGGER blocks_stay BEFORE DELETE ON block
BEGIN
  SELECT RAISE(ABORT, 'a session block is never deleted');
END;
