-- The logbook. Units are in the names: _nm nanometres, _um micrometres, _ms milliseconds, _halves half points,
-- _tenths tenths. Ids are lower-case guids, dates and times ISO 8601. name_key is the upper-case name, which makes names
-- unique without regard to case.

-- Half-typed input, and choices of the user. Outside undo.
CREATE TABLE drafts (
    name     TEXT PRIMARY KEY,
    text     TEXT NOT NULL,
    saved_at TEXT NOT NULL
);
CREATE TABLE settings (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
);

-- A craft.
CREATE TABLE hulls (
    id             TEXT PRIMARY KEY,
    name           TEXT NOT NULL,
    name_key       TEXT NOT NULL UNIQUE,
    crew           INTEGER NOT NULL CHECK (crew BETWEEN 1 AND 24),
    seat_height_nm INTEGER
);

-- A blade on its shaft. A fixed paddle has shortest = longest.
CREATE TABLE paddles (
    id           TEXT PRIMARY KEY,
    name         TEXT NOT NULL,
    name_key     TEXT NOT NULL UNIQUE,
    blade_nm     INTEGER NOT NULL,
    blade_in2    REAL,
    steering     INTEGER NOT NULL CHECK (steering IN (0, 1)),
    shortest_nm  INTEGER NOT NULL,
    longest_nm   INTEGER NOT NULL CHECK (longest_nm >= shortest_nm),
    step_nm      INTEGER NOT NULL CHECK (step_nm >= 0)
);

CREATE TABLE paddlers (
    id                         TEXT PRIMARY KEY,
    name                       TEXT NOT NULL,
    name_key                   TEXT NOT NULL UNIQUE,
    unit                       TEXT NOT NULL CHECK (unit IN ('in', 'cm')),
    seated_reach_nm            INTEGER,
    stature_nm                 INTEGER,
    sitting_shoulder_height_nm INTEGER,
    shoulder_elbow_nm          INTEGER,
    elbow_grip_nm              INTEGER,
    eye_height_nm              INTEGER,
    shoulder_breadth_nm        INTEGER,
    known_length_nm            INTEGER,
    goal_hull_id               TEXT REFERENCES hulls (id),
    goal_distance_um           INTEGER,
    goal_time_ms               INTEGER,
    swaps_on_water             INTEGER NOT NULL CHECK (swaps_on_water IN (0, 1)),
    worthwhile_percent         REAL
);

CREATE TABLE outings (
    id         TEXT PRIMARY KEY,
    paddler_id TEXT NOT NULL REFERENCES paddlers (id) ON DELETE CASCADE,
    hull_id    TEXT NOT NULL REFERENCES hulls (id),
    date       TEXT NOT NULL,
    time       TEXT,
    label      TEXT NOT NULL,
    place      TEXT,
    wind       INTEGER CHECK (wind BETWEEN 0 AND 12),
    water      TEXT,
    notes      TEXT
);
CREATE INDEX outings_by_paddler ON outings (paddler_id);

CREATE TABLE pieces (
    id                 TEXT PRIMARY KEY,
    outing_id          TEXT NOT NULL REFERENCES outings (id) ON DELETE CASCADE,
    piece_order        INTEGER NOT NULL CHECK (piece_order >= 1),
    paddle_id          TEXT NOT NULL REFERENCES paddles (id),
    length_nm          INTEGER NOT NULL CHECK (length_nm BETWEEN 0 AND 10000000000),
    distance_um        INTEGER NOT NULL CHECK (distance_um BETWEEN 1000000 AND 1000000000000),
    time_ms            INTEGER NOT NULL CHECK (time_ms BETWEEN 1000 AND 172800000),
    effort_halves      INTEGER CHECK (effort_halves BETWEEN 0 AND 20),
    heart_rate         INTEGER CHECK (heart_rate BETWEEN 25 AND 250),
    stroke_rate_tenths INTEGER CHECK (stroke_rate_tenths BETWEEN 50 AND 1500),
    course             TEXT NOT NULL CHECK (course IN ('round-trip', 'out', 'back', 'loop')),
    soreness_halves    INTEGER CHECK (soreness_halves BETWEEN 0 AND 20),
    fade_percent       REAL,
    excluded_because   TEXT,
    notes              TEXT,
    origin             TEXT
);
CREATE INDEX pieces_by_outing ON pieces (outing_id);

-- Trial cards as they were given. lengths_nm is a JSON array: one length for each piece, in order.
CREATE TABLE cards (
    id                  TEXT PRIMARY KEY,
    paddler_id          TEXT NOT NULL REFERENCES paddlers (id) ON DELETE CASCADE,
    hull_id             TEXT NOT NULL REFERENCES hulls (id) ON DELETE CASCADE,
    paddle_id           TEXT NOT NULL REFERENCES paddles (id) ON DELETE CASCADE,
    given_at            TEXT NOT NULL,
    lengths_nm          TEXT NOT NULL,
    distance_um         INTEGER NOT NULL,
    effort_halves       INTEGER NOT NULL,
    rest_ms             INTEGER NOT NULL,
    reason              TEXT NOT NULL,
    best_nm             INTEGER NOT NULL,
    likely_low_nm       INTEGER NOT NULL,
    likely_high_nm      INTEGER NOT NULL,
    gain_left_percent   REAL NOT NULL,
    diminishing_returns INTEGER NOT NULL CHECK (diminishing_returns IN (0, 1)),
    outings             INTEGER NOT NULL,
    pieces              INTEGER NOT NULL,
    as_of_change        INTEGER NOT NULL,
    paddled_as          TEXT REFERENCES outings (id) ON DELETE SET NULL
);
CREATE INDEX cards_by_paddler ON cards (paddler_id);
CREATE INDEX cards_by_outing ON cards (paddled_as);

CREATE TABLE technique_checks (
    id                    TEXT PRIMARY KEY,
    paddler_id            TEXT NOT NULL REFERENCES paddlers (id) ON DELETE CASCADE,
    hull_id               TEXT NOT NULL REFERENCES hulls (id),
    paddle_id             TEXT NOT NULL REFERENCES paddles (id),
    length_nm             INTEGER NOT NULL,
    hand_above_eye_inches REAL NOT NULL,
    shaft_lean_degrees    REAL,
    from_photo            INTEGER NOT NULL CHECK (from_photo IN (0, 1)),
    date                  TEXT NOT NULL
);
CREATE INDEX technique_checks_by_paddler ON technique_checks (paddler_id);

-- A coach's notes. What one is about is a paddler, an outing or a card, so no foreign key can say it.
CREATE TABLE notes (
    id         TEXT PRIMARY KEY,
    about_id   TEXT NOT NULL,
    about      TEXT NOT NULL CHECK (about IN ('paddler', 'outing', 'card')),
    author     TEXT NOT NULL,
    written_at TEXT NOT NULL,
    text       TEXT NOT NULL
);
CREATE INDEX notes_by_subject ON notes (about_id);

-- Files already imported; the id is the hash of the file's bytes.
CREATE TABLE imports (
    id          TEXT PRIMARY KEY,
    file_name   TEXT NOT NULL,
    imported_at TEXT NOT NULL
);
