-- A device gone wild is refused ten thousand times an hour. Its newest refusals say what is wrong, the older ones are only counted here.
CREATE TABLE refusal_forgotten (
  partition INTEGER NOT NULL,
  reason    TEXT NOT NULL,
  count     INTEGER NOT NULL,
  PRIMARY KEY (partition, reason)
) STRICT, WITHOUT ROWID;
CREATE INDEX refusal_by_reason ON refusal (partition, reason);
