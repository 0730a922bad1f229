-- Times are microseconds since 1970-01-01T00:00:00Z. Integer ids of partition and series are internal to the store.
-- No foreign keys on reading and the roll-ups: they are written by one class, a thousand times more often than the dictionaries.

CREATE TABLE site (
  only_row  INTEGER PRIMARY KEY CHECK (only_row = 1),
  time_zone TEXT NOT NULL                 -- the zone by which rollup_day was cut
) STRICT;

CREATE TABLE partition (
  id            INTEGER PRIMARY KEY,
  key           TEXT NOT NULL UNIQUE,
  last_seq      INTEGER NOT NULL DEFAULT 0,  -- outlives the pruning of the journal
  already_there INTEGER NOT NULL DEFAULT 0,
  conflicting   INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TABLE series (
  id        INTEGER PRIMARY KEY,
  partition INTEGER NOT NULL,
  key       TEXT NOT NULL,
  UNIQUE (partition, key)
) STRICT;

-- With rowid: a batch is large, and WITHOUT ROWID suits small rows.
CREATE TABLE journal (
  id        INTEGER PRIMARY KEY,
  partition INTEGER NOT NULL,
  seq       INTEGER NOT NULL,
  received  INTEGER NOT NULL,
  events    BLOB NOT NULL,
  UNIQUE (partition, seq)
) STRICT;

CREATE TABLE snapshot (
  id           INTEGER PRIMARY KEY,
  partition    INTEGER NOT NULL,
  seq          INTEGER NOT NULL,
  fold_version INTEGER NOT NULL,
  state_hash   TEXT NOT NULL,
  state        BLOB NOT NULL,
  UNIQUE (partition, seq)
) STRICT;

CREATE TABLE reading (
  series  INTEGER NOT NULL,
  t       INTEGER NOT NULL,
  value   REAL NOT NULL,
  quality INTEGER NOT NULL,
  lag     INTEGER NOT NULL,               -- received less measured
  PRIMARY KEY (series, t)
) STRICT, WITHOUT ROWID;

-- sum, min and max speak of the good readings where there is one, else of all. last is the newest by time.
CREATE TABLE rollup_minute (
  series INTEGER NOT NULL, t INTEGER NOT NULL,
  count INTEGER NOT NULL, good INTEGER NOT NULL,
  sum REAL NOT NULL, min REAL NOT NULL, max REAL NOT NULL, last REAL NOT NULL,
  PRIMARY KEY (series, t)
) STRICT, WITHOUT ROWID;

CREATE TABLE rollup_quarter (
  series INTEGER NOT NULL, t INTEGER NOT NULL,
  count INTEGER NOT NULL, good INTEGER NOT NULL,
  sum REAL NOT NULL, min REAL NOT NULL, max REAL NOT NULL, last REAL NOT NULL,
  PRIMARY KEY (series, t)
) STRICT, WITHOUT ROWID;

CREATE TABLE rollup_hour (
  series INTEGER NOT NULL, t INTEGER NOT NULL,
  count INTEGER NOT NULL, good INTEGER NOT NULL,
  sum REAL NOT NULL, min REAL NOT NULL, max REAL NOT NULL, last REAL NOT NULL,
  PRIMARY KEY (series, t)
) STRICT, WITHOUT ROWID;

CREATE TABLE rollup_day (
  series INTEGER NOT NULL, t INTEGER NOT NULL,
  count INTEGER NOT NULL, good INTEGER NOT NULL,
  sum REAL NOT NULL, min REAL NOT NULL, max REAL NOT NULL, last REAL NOT NULL,
  PRIMARY KEY (series, t)
) STRICT, WITHOUT ROWID;

CREATE TABLE refusal (
  ordinal   INTEGER PRIMARY KEY,
  partition INTEGER NOT NULL,
  id        BLOB NOT NULL,
  received  INTEGER NOT NULL,
  topic     TEXT NOT NULL,
  payload   BLOB NOT NULL,
  reason    TEXT NOT NULL,
  detail    TEXT NOT NULL,
  UNIQUE (partition, id)
) STRICT;
CREATE INDEX refusal_newest ON refusal (partition, received, id);

-- Append-only: no statement of the program updates or deletes here, and the triggers hold anybody else to it.
CREATE TABLE entry (
  ordinal     INTEGER PRIMARY KEY,
  partition   INTEGER NOT NULL,
  id          BLOB NOT NULL,
  kind        TEXT NOT NULL,
  at          INTEGER NOT NULL,
  happened_at INTEGER NOT NULL,
  subject     TEXT NOT NULL,
  body        TEXT NOT NULL,
  UNIQUE (partition, id)
) STRICT;
CREATE INDEX entry_newest ON entry (partition, happened_at, id);
CREATE INDEX entry_by_subject ON entry (partition, subject, happened_at, id);
CREATE INDEX entry_by_kind ON entry (partition, kind, happened_at, id);
CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'the record is append-only'); END;
CREATE TRIGGER entry_is_never_removed BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'the record is append-only'); END;
