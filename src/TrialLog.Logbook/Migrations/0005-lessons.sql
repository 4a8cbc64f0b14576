-- What each paddler's log by itself says to the others' start lengths, as it was last weighed, so that a card for one needs
-- nobody else's log read. It follows from the rest: it is outside undo and shared with nobody, and goes whenever what it was
-- weighed from changes. weighed_by tells which build weighed it. Both numbers are null where the log has not settled.
CREATE TABLE lessons (
    paddler_id      TEXT PRIMARY KEY,
    weighed_by      TEXT NOT NULL,
    offset_inches   REAL,
    variance        REAL
) WITHOUT ROWID;

CREATE TRIGGER lessons_outing_added AFTER INSERT ON outings
BEGIN
    DELETE FROM lessons WHERE paddler_id = NEW.paddler_id;
END;
CREATE TRIGGER lessons_outing_edited AFTER UPDATE ON outings
BEGIN
    DELETE FROM lessons WHERE paddler_id IN (OLD.paddler_id, NEW.paddler_id);
END;
CREATE TRIGGER lessons_outing_removed AFTER DELETE ON outings
BEGIN
    DELETE FROM lessons WHERE paddler_id = OLD.paddler_id;
END;

CREATE TRIGGER lessons_piece_added AFTER INSERT ON pieces
BEGIN
    DELETE FROM lessons WHERE paddler_id = (SELECT paddler_id FROM outings WHERE id = NEW.outing_id);
END;
CREATE TRIGGER lessons_piece_edited AFTER UPDATE ON pieces
BEGIN
    DELETE FROM lessons WHERE paddler_id IN (SELECT paddler_id FROM outings WHERE id IN (OLD.outing_id, NEW.outing_id));
END;
CREATE TRIGGER lessons_piece_removed AFTER DELETE ON pieces
BEGIN
    DELETE FROM lessons WHERE paddler_id = (SELECT paddler_id FROM outings WHERE id = OLD.outing_id);
END;

CREATE TRIGGER lessons_check_added AFTER INSERT ON technique_checks
BEGIN
    DELETE FROM lessons WHERE paddler_id = NEW.paddler_id;
END;
CREATE TRIGGER lessons_check_edited AFTER UPDATE ON technique_checks
BEGIN
    DELETE FROM lessons WHERE paddler_id IN (OLD.paddler_id, NEW.paddler_id);
END;
CREATE TRIGGER lessons_check_removed AFTER DELETE ON technique_checks
BEGIN
    DELETE FROM lessons WHERE paddler_id = OLD.paddler_id;
END;

CREATE TRIGGER lessons_paddler_edited AFTER UPDATE ON paddlers
BEGIN
    DELETE FROM lessons WHERE paddler_id = OLD.id;
END;
CREATE TRIGGER lessons_paddler_removed AFTER DELETE ON paddlers
BEGIN
    DELETE FROM lessons WHERE paddler_id = OLD.id;
END;

-- A hull or paddle may be in anybody's log; its name and owner are not weighed.
CREATE TRIGGER lessons_hull_edited AFTER UPDATE ON hulls WHEN (OLD.crew, OLD.seat_height_nm) IS NOT (NEW.crew, NEW.seat_height_nm)
BEGIN
    DELETE FROM lessons;
END;
CREATE TRIGGER lessons_paddle_edited AFTER UPDATE ON paddles
WHEN (OLD.blade_nm, OLD.blade_in2, OLD.steering, OLD.shortest_nm, OLD.longest_nm, OLD.step_nm)
    IS NOT (NEW.blade_nm, NEW.blade_in2, NEW.steering, NEW.shortest_nm, NEW.longest_nm, NEW.step_nm)
BEGIN
    DELETE FROM lessons;
END;
