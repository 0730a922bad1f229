-- Pictures of jobs by the SHA-256 of their bytes. One that no job names yet may go; one that a job names stays as long as the record, and is never changed.
CREATE TABLE picture (
  hash  BLOB PRIMARY KEY,
  kind  INTEGER NOT NULL,
  kept  INTEGER NOT NULL,
  tied  INTEGER NOT NULL DEFAULT 0,
  bytes BLOB NOT NULL
) STRICT;
CREATE INDEX picture_waiting ON picture (kept) WHERE tied = 0;
CREATE TRIGGER picture_is_never_changed BEFORE UPDATE OF hash, kind, bytes ON picture BEGIN SELECT RAISE(ABORT, 'a picture is never changed'); END;
CREATE TRIGGER picture_stays_tied BEFORE UPDATE OF tied ON picture WHEN NEW.tied < OLD.tied BEGIN SELECT RAISE(ABORT, 'a picture of a job stays with it'); END;
CREATE TRIGGER picture_of_a_job_is_never_removed BEFORE DELETE ON picture WHEN OLD.tied = 1 BEGIN SELECT RAISE(ABORT, 'a picture of a job is never removed'); END;
