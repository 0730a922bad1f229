-- What people are to be told. A notice is written before anything is sent and keeps the words it was written with; beside it stands what became of it.
CREATE TABLE notice (
  ordinal    INTEGER PRIMARY KEY,
  partition  INTEGER NOT NULL,
  id         BLOB NOT NULL,
  alarm      BLOB NOT NULL,
  queued     INTEGER NOT NULL,
  notice     TEXT NOT NULL,
  content    TEXT NOT NULL,
  tries      INTEGER NOT NULL DEFAULT 0,
  first_try  INTEGER NOT NULL DEFAULT 0,   -- 0 while it was never tried
  last_try   INTEGER NOT NULL DEFAULT 0,
  fate       INTEGER NOT NULL DEFAULT 0,   -- 0 waits, 1 sent, 2 given up
  trouble    TEXT NOT NULL DEFAULT '',
  UNIQUE (partition, id)
) STRICT;
