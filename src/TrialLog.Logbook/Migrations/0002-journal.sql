-- The journal of changes, from which undo and the log as it once was are worked out.

-- One row for each thing the user did, numbered from 1; number 0 is what every logbook starts with.
--   state     standing: in force; taken back: undone, can be redone; gone: undone, and something else done since;
--             noted: the program's own note, which undo passes over
--   reverses  for the rows that undo and redo write: the number of the change whose journal was played backwards
CREATE TABLE changes (
    number   INTEGER PRIMARY KEY AUTOINCREMENT,
    at       TEXT NOT NULL,
    what     TEXT NOT NULL,
    state    TEXT NOT NULL CHECK (state IN ('standing', 'taken back', 'gone', 'noted')),
    reverses INTEGER REFERENCES changes (number)
);

-- One row for each row that a change touched, in the order it did: the row as it was before, as JSON, or null where
-- the change added it. Playing a change's rows backwards takes it back. The triggers below write it; nothing else does.
CREATE TABLE journal (
    number INTEGER PRIMARY KEY,
    change INTEGER NOT NULL REFERENCES changes (number),
    kind   TEXT NOT NULL,
    row_id TEXT NOT NULL,
    before TEXT
);
CREATE INDEX journal_by_change ON journal (change);
CREATE INDEX journal_by_row ON journal (row_id) WHERE before IS NOT NULL;

-- The journal's triggers: for each table, a row added, edited (only if anything differs) and removed.

CREATE TRIGGER hulls_added AFTER INSERT ON hulls
BEGIN
    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), 'hulls', NEW.id);
END;
CREATE TRIGGER hulls_edited AFTER UPDATE ON hulls
WHEN (OLD.id, OLD.name, OLD.name_key, OLD.crew, OLD.seat_height_nm)
    IS NOT (NEW.id, NEW.name, NEW.name_key, NEW.crew, NEW.seat_height_nm)
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'hulls', OLD.id, json_object(
        'id', OLD.id, 'name', OLD.name, 'name_key', OLD.name_key, 'crew', OLD.crew,
        'seat_height_nm', OLD.seat_height_nm));
END;
CREATE TRIGGER hulls_removed AFTER DELETE ON hulls
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'hulls', OLD.id, json_object(
        'id', OLD.id, 'name', OLD.name, 'name_key', OLD.name_key, 'crew', OLD.crew,
        'seat_height_nm', OLD.seat_height_nm));
END;

CREATE TRIGGER paddles_added AFTER INSERT ON paddles
BEGIN
    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), 'paddles', NEW.id);
END;
CREATE TRIGGER paddles_edited AFTER UPDATE ON paddles
WHEN (OLD.id, OLD.name, OLD.name_key, OLD.blade_nm, OLD.blade_in2, OLD.steering, OLD.shortest_nm, OLD.longest_nm,
        OLD.step_nm)
    IS NOT (NEW.id, NEW.name, NEW.name_key, NEW.blade_nm, NEW.blade_in2, NEW.steering, NEW.shortest_nm,
        NEW.longest_nm, NEW.step_nm)
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'paddles', OLD.id, json_object(
        'id', OLD.id, 'name', OLD.name, 'name_key', OLD.name_key, 'blade_nm', OLD.blade_nm,
        'blade_in2', OLD.blade_in2, 'steering', OLD.steering, 'shortest_nm', OLD.shortest_nm,
        'longest_nm', OLD.longest_nm, 'step_nm', OLD.step_nm));
END;
CREATE TRIGGER paddles_removed AFTER DELETE ON paddles
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'paddles', OLD.id, json_object(
        'id', OLD.id, 'name', OLD.name, 'name_key', OLD.name_key, 'blade_nm', OLD.blade_nm,
        'blade_in2', OLD.blade_in2, 'steering', OLD.steering, 'shortest_nm', OLD.shortest_nm,
        'longest_nm', OLD.longest_nm, 'step_nm', OLD.step_nm));
END;

CREATE TRIGGER paddlers_added AFTER INSERT ON paddlers
BEGIN
    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), 'paddlers', NEW.id);
END;
CREATE TRIGGER paddlers_edited AFTER UPDATE ON paddlers
WHEN (OLD.id, OLD.name, OLD.name_key, OLD.unit, OLD.seated_reach_nm, OLD.stature_nm,
        OLD.sitting_shoulder_height_nm, OLD.shoulder_elbow_nm, OLD.elbow_grip_nm, OLD.eye_height_nm,
        OLD.shoulder_breadth_nm, OLD.known_length_nm, OLD.goal_hull_id, OLD.goal_distance_um, OLD.goal_time_ms,
        OLD.swaps_on_water, OLD.worthwhile_percent)
    IS NOT (NEW.id, NEW.name, NEW.name_key, NEW.unit, NEW.seated_reach_nm, NEW.stature_nm,
        NEW.sitting_shoulder_height_nm, NEW.shoulder_elbow_nm, NEW.elbow_grip_nm, NEW.eye_height_nm,
        NEW.shoulder_breadth_nm, NEW.known_length_nm, NEW.goal_hull_id, NEW.goal_distance_um,
        NEW.goal_time_ms, NEW.swaps_on_water, NEW.worthwhile_percent)
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'paddlers', OLD.id, json_object(
        'id', OLD.id, 'name', OLD.name, 'name_key', OLD.name_key, 'unit', OLD.unit,
        'seated_reach_nm', OLD.seated_reach_nm, 'stature_nm', OLD.stature_nm,
        'sitting_shoulder_height_nm', OLD.sitting_shoulder_height_nm,
        'shoulder_elbow_nm', OLD.shoulder_elbow_nm, 'elbow_grip_nm', OLD.elbow_grip_nm,
        'eye_height_nm', OLD.eye_height_nm, 'shoulder_breadth_nm', OLD.shoulder_breadth_nm,
        'known_length_nm', OLD.known_length_nm, 'goal_hull_id', OLD.goal_hull_id,
        'goal_distance_um', OLD.goal_distance_um, 'goal_time_ms', OLD.goal_time_ms,
        'swaps_on_water', OLD.swaps_on_water, 'worthwhile_percent', OLD.worthwhile_percent));
END;
CREATE TRIGGER paddlers_removed AFTER DELETE ON paddlers
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'paddlers', OLD.id, json_object(
        'id', OLD.id, 'name', OLD.name, 'name_key', OLD.name_key, 'unit', OLD.unit,
        'seated_reach_nm', OLD.seated_reach_nm, 'stature_nm', OLD.stature_nm,
        'sitting_shoulder_height_nm', OLD.sitting_shoulder_height_nm,
        'shoulder_elbow_nm', OLD.shoulder_elbow_nm, 'elbow_grip_nm', OLD.elbow_grip_nm,
        'eye_height_nm', OLD.eye_height_nm, 'shoulder_breadth_nm', OLD.shoulder_breadth_nm,
        'known_length_nm', OLD.known_length_nm, 'goal_hull_id', OLD.goal_hull_id,
        'goal_distance_um', OLD.goal_distance_um, 'goal_time_ms', OLD.goal_time_ms,
        'swaps_on_water', OLD.swaps_on_water, 'worthwhile_percent', OLD.worthwhile_percent));
END;

CREATE TRIGGER outings_added AFTER INSERT ON outings
BEGIN
    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), 'outings', NEW.id);
END;
CREATE TRIGGER outings_edited AFTER UPDATE ON outings
WHEN (OLD.id, OLD.paddler_id, OLD.hull_id, OLD.date, OLD.time, OLD.label, OLD.place, OLD.wind, OLD.water, OLD.notes)
    IS NOT (NEW.id, NEW.paddler_id, NEW.hull_id, NEW.date, NEW.time, NEW.label, NEW.place, NEW.wind,
        NEW.water, NEW.notes)
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'outings', OLD.id, json_object(
        'id', OLD.id, 'paddler_id', OLD.paddler_id, 'hull_id', OLD.hull_id, 'date', OLD.date,
        'time', OLD.time, 'label', OLD.label, 'place', OLD.place, 'wind', OLD.wind, 'water', OLD.water,
        'notes', OLD.notes));
END;
CREATE TRIGGER outings_removed AFTER DELETE ON outings
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'outings', OLD.id, json_object(
        'id', OLD.id, 'paddler_id', OLD.paddler_id, 'hull_id', OLD.hull_id, 'date', OLD.date,
        'time', OLD.time, 'label', OLD.label, 'place', OLD.place, 'wind', OLD.wind, 'water', OLD.water,
        'notes', OLD.notes));
END;

CREATE TRIGGER pieces_added AFTER INSERT ON pieces
BEGIN
    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), 'pieces', NEW.id);
END;
CREATE TRIGGER pieces_edited AFTER UPDATE ON pieces
WHEN (OLD.id, OLD.outing_id, OLD.piece_order, OLD.paddle_id, OLD.length_nm, OLD.distance_um, OLD.time_ms,
        OLD.effort_halves, OLD.heart_rate, OLD.stroke_rate_tenths, OLD.course, OLD.soreness_halves,
        OLD.fade_percent, OLD.excluded_because, OLD.notes, OLD.origin)
    IS NOT (NEW.id, NEW.outing_id, NEW.piece_order, NEW.paddle_id, NEW.length_nm, NEW.distance_um,
        NEW.time_ms, NEW.effort_halves, NEW.heart_rate, NEW.stroke_rate_tenths, NEW.course,
        NEW.soreness_halves, NEW.fade_percent, NEW.excluded_because, NEW.notes, NEW.origin)
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'pieces', OLD.id, json_object(
        'id', OLD.id, 'outing_id', OLD.outing_id, 'piece_order', OLD.piece_order,
        'paddle_id', OLD.paddle_id, 'length_nm', OLD.length_nm, 'distance_um', OLD.distance_um,
        'time_ms', OLD.time_ms, 'effort_halves', OLD.effort_halves, 'heart_rate', OLD.heart_rate,
        'stroke_rate_tenths', OLD.stroke_rate_tenths, 'course', OLD.course,
        'soreness_halves', OLD.soreness_halves, 'fade_percent', OLD.fade_percent,
        'excluded_because', OLD.excluded_because, 'notes', OLD.notes, 'origin', OLD.origin));
END;
CREATE TRIGGER pieces_removed AFTER DELETE ON pieces
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'pieces', OLD.id, json_object(
        'id', OLD.id, 'outing_id', OLD.outing_id, 'piece_order', OLD.piece_order,
        'paddle_id', OLD.paddle_id, 'length_nm', OLD.length_nm, 'distance_um', OLD.distance_um,
        'time_ms', OLD.time_ms, 'effort_halves', OLD.effort_halves, 'heart_rate', OLD.heart_rate,
        'stroke_rate_tenths', OLD.stroke_rate_tenths, 'course', OLD.course,
        'soreness_halves', OLD.soreness_halves, 'fade_percent', OLD.fade_percent,
        'excluded_because', OLD.excluded_because, 'notes', OLD.notes, 'origin', OLD.origin));
END;

CREATE TRIGGER cards_added AFTER INSERT ON cards
BEGIN
    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), 'cards', NEW.id);
END;
CREATE TRIGGER cards_edited AFTER UPDATE ON cards
WHEN (OLD.id, OLD.paddler_id, OLD.hull_id, OLD.paddle_id, OLD.given_at, OLD.lengths_nm, OLD.distance_um,
        OLD.effort_halves, OLD.rest_ms, OLD.reason, OLD.best_nm, OLD.likely_low_nm, OLD.likely_high_nm,
        OLD.gain_left_percent, OLD.diminishing_returns, OLD.outings, OLD.pieces, OLD.as_of_change, OLD.paddled_as)
    IS NOT (NEW.id, NEW.paddler_id, NEW.hull_id, NEW.paddle_id, NEW.given_at, NEW.lengths_nm, NEW.distance_um,
        NEW.effort_halves, NEW.rest_ms, NEW.reason, NEW.best_nm, NEW.likely_low_nm, NEW.likely_high_nm,
        NEW.gain_left_percent, NEW.diminishing_returns, NEW.outings, NEW.pieces, NEW.as_of_change,
        NEW.paddled_as)
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'cards', OLD.id, json_object(
        'id', OLD.id, 'paddler_id', OLD.paddler_id, 'hull_id', OLD.hull_id, 'paddle_id', OLD.paddle_id,
        'given_at', OLD.given_at, 'lengths_nm', OLD.lengths_nm, 'distance_um', OLD.distance_um,
        'effort_halves', OLD.effort_halves, 'rest_ms', OLD.rest_ms, 'reason', OLD.reason,
        'best_nm', OLD.best_nm, 'likely_low_nm', OLD.likely_low_nm,
        'likely_high_nm', OLD.likely_high_nm, 'gain_left_percent', OLD.gain_left_percent,
        'diminishing_returns', OLD.diminishing_returns, 'outings', OLD.outings, 'pieces', OLD.pieces,
        'as_of_change', OLD.as_of_change, 'paddled_as', OLD.paddled_as));
END;
CREATE TRIGGER cards_removed AFTER DELETE ON cards
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'cards', OLD.id, json_object(
        'id', OLD.id, 'paddler_id', OLD.paddler_id, 'hull_id', OLD.hull_id, 'paddle_id', OLD.paddle_id,
        'given_at', OLD.given_at, 'lengths_nm', OLD.lengths_nm, 'distance_um', OLD.distance_um,
        'effort_halves', OLD.effort_halves, 'rest_ms', OLD.rest_ms, 'reason', OLD.reason,
        'best_nm', OLD.best_nm, 'likely_low_nm', OLD.likely_low_nm,
        'likely_high_nm', OLD.likely_high_nm, 'gain_left_percent', OLD.gain_left_percent,
        'diminishing_returns', OLD.diminishing_returns, 'outings', OLD.outings, 'pieces', OLD.pieces,
        'as_of_change', OLD.as_of_change, 'paddled_as', OLD.paddled_as));
END;

CREATE TRIGGER technique_checks_added AFTER INSERT ON technique_checks
BEGIN
    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), 'technique_checks', NEW.id);
END;
CREATE TRIGGER technique_checks_edited AFTER UPDATE ON technique_checks
WHEN (OLD.id, OLD.paddler_id, OLD.hull_id, OLD.paddle_id, OLD.length_nm, OLD.hand_above_eye_inches,
        OLD.shaft_lean_degrees, OLD.from_photo, OLD.date)
    IS NOT (NEW.id, NEW.paddler_id, NEW.hull_id, NEW.paddle_id, NEW.length_nm, NEW.hand_above_eye_inches,
        NEW.shaft_lean_degrees, NEW.from_photo, NEW.date)
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'technique_checks', OLD.id, json_object(
        'id', OLD.id, 'paddler_id', OLD.paddler_id, 'hull_id', OLD.hull_id, 'paddle_id', OLD.paddle_id,
        'length_nm', OLD.length_nm, 'hand_above_eye_inches', OLD.hand_above_eye_inches,
        'shaft_lean_degrees', OLD.shaft_lean_degrees, 'from_photo', OLD.from_photo, 'date', OLD.date));
END;
CREATE TRIGGER technique_checks_removed AFTER DELETE ON technique_checks
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'technique_checks', OLD.id, json_object(
        'id', OLD.id, 'paddler_id', OLD.paddler_id, 'hull_id', OLD.hull_id, 'paddle_id', OLD.paddle_id,
        'length_nm', OLD.length_nm, 'hand_above_eye_inches', OLD.hand_above_eye_inches,
        'shaft_lean_degrees', OLD.shaft_lean_degrees, 'from_photo', OLD.from_photo, 'date', OLD.date));
END;

CREATE TRIGGER notes_added AFTER INSERT ON notes
BEGIN
    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), 'notes', NEW.id);
END;
CREATE TRIGGER notes_edited AFTER UPDATE ON notes
WHEN (OLD.id, OLD.about_id, OLD.about, OLD.author, OLD.written_at, OLD.text)
    IS NOT (NEW.id, NEW.about_id, NEW.about, NEW.author, NEW.written_at, NEW.text)
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'notes', OLD.id, json_object(
        'id', OLD.id, 'about_id', OLD.about_id, 'about', OLD.about, 'author', OLD.author,
        'written_at', OLD.written_at, 'text', OLD.text));
END;
CREATE TRIGGER notes_removed AFTER DELETE ON notes
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'notes', OLD.id, json_object(
        'id', OLD.id, 'about_id', OLD.about_id, 'about', OLD.about, 'author', OLD.author,
        'written_at', OLD.written_at, 'text', OLD.text));
END;

CREATE TRIGGER imports_added AFTER INSERT ON imports
BEGIN
    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), 'imports', NEW.id);
END;
CREATE TRIGGER imports_edited AFTER UPDATE ON imports
WHEN (OLD.id, OLD.file_name, OLD.imported_at)
    IS NOT (NEW.id, NEW.file_name, NEW.imported_at)
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'imports', OLD.id, json_object(
        'id', OLD.id, 'file_name', OLD.file_name, 'imported_at', OLD.imported_at));
END;
CREATE TRIGGER imports_removed AFTER DELETE ON imports
BEGIN
    INSERT INTO journal (change, kind, row_id, before) VALUES ((SELECT max(number) FROM changes), 'imports', OLD.id, json_object(
        'id', OLD.id, 'file_name', OLD.file_name, 'imported_at', OLD.imported_at));
END;

INSERT INTO changes (number, at, what, state) VALUES (0, strftime('%Y-%m-%dT%H:%M:%SZ'), 'Began the logbook', 'standing');
INSERT INTO hulls (id, name, name_key, crew) VALUES
    ('0c100000-0000-4000-8000-000000000001', 'OC1', 'OC1', 1),
    ('0c200000-0000-4000-8000-000000000002', 'OC2', 'OC2', 2),
    ('0c600000-0000-4000-8000-000000000006', 'OC6', 'OC6', 6),
    ('0f100000-0000-4000-8000-000000000001', 'V1', 'V1', 1),
    ('0f600000-0000-4000-8000-000000000006', 'V6', 'V6', 6);
