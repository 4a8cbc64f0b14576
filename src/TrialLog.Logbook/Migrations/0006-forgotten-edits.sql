-- A record that was removed here and comes back from another logbook is as it is there: what was edited here before the removal went with
-- it. forgotten is the local change, a merge, that brought the record back; where that merge is taken back, the edit counts again.
ALTER TABLE edits ADD COLUMN forgotten INTEGER;
