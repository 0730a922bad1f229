-- How far raw readings and minutes of a series were let go: none stands before these times, but for what came late into a minute that had been empty. 0: all are there.
ALTER TABLE series ADD COLUMN raw_from    INTEGER NOT NULL DEFAULT 0;
ALTER TABLE series ADD COLUMN raw_let_go  INTEGER NOT NULL DEFAULT 0;  -- how many: the ledger counts them as stored
ALTER TABLE series ADD COLUMN minute_from INTEGER NOT NULL DEFAULT 0;
