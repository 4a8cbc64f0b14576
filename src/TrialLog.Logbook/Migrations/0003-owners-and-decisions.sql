-- Whose a paddle is, how trials are done and timed, what was decided, and that soreness is gone.

ALTER TABLE outings ADD COLUMN blind INTEGER NOT NULL DEFAULT 0 CHECK (blind IN (0, 1));

ALTER TABLE pieces ADD COLUMN timed_by TEXT CHECK (timed_by IN ('hand', 'watch'));
ALTER TABLE pieces ADD COLUMN speed_error_percent REAL;

ALTER TABLE paddlers ADD COLUMN arm_span_nm INTEGER;
ALTER TABLE paddlers ADD COLUMN overhead_reach_nm INTEGER;
ALTER TABLE paddlers ADD COLUMN hand_length_nm INTEGER;
ALTER TABLE paddlers ADD COLUMN palm_length_nm INTEGER;
ALTER TABLE paddlers ADD COLUMN trial_pieces INTEGER;
ALTER TABLE paddlers ADD COLUMN trial_distance_um INTEGER;
ALTER TABLE paddlers ADD COLUMN trial_minutes INTEGER;
ALTER TABLE paddlers ADD COLUMN trial_timed_by TEXT CHECK (trial_timed_by IN ('hand', 'watch'));
ALTER TABLE paddlers ADD COLUMN trial_price_percent REAL;

ALTER TABLE paddles ADD COLUMN owner_id TEXT REFERENCES paddlers (id) ON DELETE SET NULL;
ALTER TABLE paddles ADD COLUMN belongs_to_club INTEGER NOT NULL DEFAULT 0 CHECK (belongs_to_club IN (0, 1));
CREATE INDEX paddles_by_owner ON paddles (owner_id);

-- given_by is the coach whose card it is; own_lengths_nm what the program would have given instead.
ALTER TABLE cards ADD COLUMN blind INTEGER NOT NULL DEFAULT 0 CHECK (blind IN (0, 1));
ALTER TABLE cards ADD COLUMN given_by TEXT;
ALTER TABLE cards ADD COLUMN given_because TEXT;
ALTER TABLE cards ADD COLUMN own_lengths_nm TEXT;
ALTER TABLE cards ADD COLUMN to_go_median INTEGER;
ALTER TABLE cards ADD COLUMN to_go_low INTEGER;
ALTER TABLE cards ADD COLUMN to_go_high INTEGER;

CREATE TABLE soreness_clearances (
    id         TEXT PRIMARY KEY,
    paddler_id TEXT NOT NULL REFERENCES paddlers (id) ON DELETE CASCADE,
    date       TEXT NOT NULL,
    said_by    TEXT NOT NULL,
    because    TEXT
);
CREATE INDEX soreness_clearances_by_paddler ON soreness_clearances (paddler_id);

CREATE TABLE decisions (
    id         TEXT PRIMARY KEY,
    paddler_id TEXT NOT NULL REFERENCES paddlers (id) ON DELETE CASCADE,
    hull_id    TEXT NOT NULL REFERENCES hulls (id),
    paddle_id  TEXT NOT NULL REFERENCES paddles (id),
    length_nm  INTEGER NOT NULL,
    kind       TEXT NOT NULL CHECK (kind IN ('raced', 'ordered', 'cut', 'delivered', 'kept')),
    date       TEXT NOT NULL,
    decided_by TEXT,
    because    TEXT
);
CREATE INDEX decisions_by_paddler ON decisions (paddler_id);
CREATE INDEX decisions_by_paddle ON decisions (paddle_id);

-- The list of scripts that an earlier way of running them kept beside user_version.
DROP TABLE IF EXISTS SchemaVersions;
