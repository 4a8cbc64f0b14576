-- What is known of each record's edits, so that two logbooks can be merged field by field.

-- Every change has a random number of its own, the same in every logbook that learns of it. A merged change brings in
-- others' edits and makes none itself.
ALTER TABLE changes ADD COLUMN edit INTEGER NOT NULL DEFAULT 0;
ALTER TABLE changes ADD COLUMN merged INTEGER NOT NULL DEFAULT 0 CHECK (merged IN (0, 1));

-- The edits that a field's value builds upon, its own among them; the field '' is whether the record is there. A field
-- that was never edited since its record was added has none. Of two values the one that builds upon all edits of the
-- other is the newer. change is the local change by which the edit became known; those of a merge that was taken back
-- do not count. Rows of removed records stay: they tell what the removal knew.
CREATE TABLE edits (
    row_id TEXT NOT NULL,
    field  TEXT NOT NULL,
    edit   INTEGER NOT NULL,
    change INTEGER NOT NULL,
    PRIMARY KEY (row_id, field, edit)
) WITHOUT ROWID;

-- What was removed before edits were known.
INSERT INTO edits (row_id, field, edit, change)
SELECT DISTINCT row_id, '', random(), 0 FROM journal
WHERE before IS NOT NULL AND kind <> 'imports'
  AND change IN (SELECT number FROM changes WHERE state = 'standing' AND reverses IS NULL)
  AND row_id NOT IN (SELECT id FROM hulls UNION ALL SELECT id FROM paddles UNION ALL SELECT id FROM paddlers
      UNION ALL SELECT id FROM outings UNION ALL SELECT id FROM pieces UNION ALL SELECT id FROM cards
      UNION ALL SELECT id FROM technique_checks UNION ALL SELECT id FROM notes)
GROUP BY row_id;

-- Two records that were joined: the one that is gone, and the one that it became.
CREATE TABLE joins (
    id      TEXT PRIMARY KEY,
    into_id TEXT NOT NULL
);

-- What others call it, where this logbook shows another name ("NAME (2)") to keep it apart from a record of the same name.
ALTER TABLE hulls ADD COLUMN true_name TEXT;
ALTER TABLE paddles ADD COLUMN true_name TEXT;
ALTER TABLE paddlers ADD COLUMN true_name TEXT;
