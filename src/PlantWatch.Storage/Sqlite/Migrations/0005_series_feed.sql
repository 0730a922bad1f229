-- How far each series is written to InfluxDB. Newer readings follow by themselves; what came in before `upto` is marked by its minute. A series without a row was never taken up and marks nothing.
CREATE TABLE feed_series (
  series  INTEGER PRIMARY KEY,
  upto    INTEGER NOT NULL,
  circuit TEXT NOT NULL,                  -- the names under which it was written last
  probe   TEXT NOT NULL
) STRICT;

-- times: how often it was marked, so that a mark that was set again meanwhile is not taken away with what was written before.
CREATE TABLE feed_minute (
  series INTEGER NOT NULL,
  t      INTEGER NOT NULL,
  times  INTEGER NOT NULL DEFAULT 1,
  PRIMARY KEY (series, t)
) STRICT, WITHOUT ROWID;

-- Lines that the other side refuses for good, a row a series and reason.
CREATE TABLE feed_parked (
  series INTEGER NOT NULL,
  words  TEXT NOT NULL,
  first  INTEGER NOT NULL,
  last   INTEGER NOT NULL,
  lines  INTEGER NOT NULL,
  sample TEXT NOT NULL,
  at     INTEGER NOT NULL,
  PRIMARY KEY (series, words)
) STRICT, WITHOUT ROWID;

CREATE TABLE feed_note (
  name  TEXT PRIMARY KEY,
  value INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
