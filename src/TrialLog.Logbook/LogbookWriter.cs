using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook;

/// <summary>
/// Writes records into a logbook, within one change. Putting a record adds it or, where its id is there, replaces it.
/// Each record is checked first: <see cref="InvalidValueException"/> says in a sentence what is wrong with it, and the
/// whole change comes to nothing.
/// </summary>
public sealed class LogbookWriter
{
    private readonly SqliteConnection _connection;
    private readonly Statements _statements;

    internal LogbookWriter(SqliteConnection connection, Statements statements)
    {
        _connection = connection;
        _statements = statements;
    }

    /// <summary>Adds or replaces a paddler.</summary>
    /// <exception cref="InvalidValueException">The name is taken, or a value is out of its range.</exception>
    public void Put(Paddler paddler)
    {
        paddler = RecordRules.Checked(paddler);
        CheckNameIsFree("paddlers", "paddler", paddler.Id, paddler.Name);
        BodyMeasures body = paddler.Body;
        _statements.Run("""
            INSERT INTO paddlers (id, name, name_key, unit, seated_reach_nm, stature_nm, sitting_shoulder_height_nm,
                shoulder_elbow_nm, elbow_grip_nm, eye_height_nm, shoulder_breadth_nm, known_length_nm, goal_hull_id,
                goal_distance_um, goal_time_ms, swaps_on_water, worthwhile_percent)
            VALUES (@id, @name, @name_key, @unit, @seated_reach, @stature, @sitting_shoulder_height, @shoulder_elbow,
                @elbow_grip, @eye_height, @shoulder_breadth, @known_length, @goal_hull, @goal_distance, @goal_time,
                @swaps_on_water, @worthwhile)
            ON CONFLICT (id) DO UPDATE SET name = @name, name_key = @name_key, unit = @unit,
                seated_reach_nm = @seated_reach, stature_nm = @stature,
                sitting_shoulder_height_nm = @sitting_shoulder_height, shoulder_elbow_nm = @shoulder_elbow,
                elbow_grip_nm = @elbow_grip, eye_height_nm = @eye_height, shoulder_breadth_nm = @shoulder_breadth,
                known_length_nm = @known_length, goal_hull_id = @goal_hull, goal_distance_um = @goal_distance,
                goal_time_ms = @goal_time, swaps_on_water = @swaps_on_water, worthwhile_percent = @worthwhile
            """,
            Stored.Id(paddler.Id), paddler.Name, Stored.NameKey(paddler.Name), Stored.Unit(paddler.Unit),
            body.SeatedReach?.Nanometres, body.Stature?.Nanometres, body.SittingShoulderHeight?.Nanometres,
            body.ShoulderElbow?.Nanometres, body.ElbowGrip?.Nanometres, body.EyeHeight?.Nanometres,
            body.ShoulderBreadth?.Nanometres, paddler.KnownLength?.Nanometres, Stored.Id(paddler.Goal?.HullId),
            paddler.Goal?.Distance?.Micrometres, paddler.Goal?.Time?.Milliseconds, paddler.SwapsOnWater,
            paddler.WorthwhilePercent);
    }

    /// <summary>Adds or replaces a hull.</summary>
    /// <exception cref="InvalidValueException">The name is taken, or a value is out of its range.</exception>
    public void Put(Hull hull)
    {
        hull = RecordRules.Checked(hull);
        CheckNameIsFree("hulls", "hull", hull.Id, hull.Name);
        _statements.Run("""
            INSERT INTO hulls (id, name, name_key, crew, seat_height_nm)
            VALUES (@id, @name, @name_key, @crew, @seat_height)
            ON CONFLICT (id) DO UPDATE SET name = @name, name_key = @name_key, crew = @crew, seat_height_nm = @seat_height
            """,
            Stored.Id(hull.Id), hull.Name, Stored.NameKey(hull.Name), hull.Crew, hull.SeatHeight?.Nanometres);
    }

    /// <summary>Adds or replaces a paddle.</summary>
    /// <exception cref="InvalidValueException">The name is taken, or a value is out of its range.</exception>
    public void Put(Paddle paddle)
    {
        paddle = RecordRules.Checked(paddle);
        CheckNameIsFree("paddles", "paddle", paddle.Id, paddle.Name);
        _statements.Run("""
            INSERT INTO paddles (id, name, name_key, blade_nm, blade_in2, steering, shortest_nm, longest_nm, step_nm)
            VALUES (@id, @name, @name_key, @blade, @area, @steering, @shortest, @longest, @step)
            ON CONFLICT (id) DO UPDATE SET name = @name, name_key = @name_key, blade_nm = @blade, blade_in2 = @area,
                steering = @steering, shortest_nm = @shortest, longest_nm = @longest, step_nm = @step
            """,
            Stored.Id(paddle.Id), paddle.Name, Stored.NameKey(paddle.Name), paddle.Blade.Nanometres,
            paddle.BladeAreaSquareInches, paddle.Steering, paddle.Shortest.Nanometres, paddle.Longest.Nanometres,
            paddle.Step.Nanometres);
    }

    /// <summary>Adds an outing with its pieces, or replaces the whole of it: pieces it no longer has are removed.</summary>
    /// <exception cref="InvalidValueException">A value is out of its range, or a paddler, hull or paddle is not in the logbook.</exception>
    public void Put(Outing outing)
    {
        outing = RecordRules.Checked(outing);
        string id = Stored.Id(outing.Id);
        _statements.Run("""
            INSERT INTO outings (id, paddler_id, hull_id, date, time, label, place, wind, water, notes)
            VALUES (@id, @paddler, @hull, @date, @time, @label, @place, @wind, @water, @notes)
            ON CONFLICT (id) DO UPDATE SET paddler_id = @paddler, hull_id = @hull, date = @date, time = @time,
                label = @label, place = @place, wind = @wind, water = @water, notes = @notes
            """,
            id, Stored.Id(outing.PaddlerId), Stored.Id(outing.HullId), Stored.Date(outing.Date), Stored.Time(outing.Time),
            outing.Label, outing.Place, outing.Wind?.Number, outing.Water, outing.Notes);
        _statements.Run("""
            DELETE FROM pieces WHERE outing_id = @outing AND id NOT IN (SELECT value FROM json_each(@kept))
            """,
            id, "[" + string.Join(",", outing.Pieces.Select(piece => $"\"{Stored.Id(piece.Id)}\"")) + "]");
        foreach (Piece piece in outing.Pieces)
            Put(id, piece);
    }

    private void Put(string outing, Piece piece) => _statements.Run("""
        INSERT INTO pieces (id, outing_id, piece_order, paddle_id, length_nm, distance_um, time_ms, effort_halves, heart_rate,
            stroke_rate_tenths, course, soreness_halves, fade_percent, excluded_because, notes, origin)
        VALUES (@id, @outing, @piece_order, @paddle, @length, @distance, @time, @effort, @heart_rate, @stroke_rate, @course,
            @soreness, @fade, @excluded, @notes, @origin)
        ON CONFLICT (id) DO UPDATE SET outing_id = @outing, piece_order = @piece_order, paddle_id = @paddle,
            length_nm = @length, distance_um = @distance, time_ms = @time, effort_halves = @effort,
            heart_rate = @heart_rate, stroke_rate_tenths = @stroke_rate, course = @course, soreness_halves = @soreness,
            fade_percent = @fade, excluded_because = @excluded, notes = @notes, origin = @origin
        """,
        Stored.Id(piece.Id), outing, piece.Order, Stored.Id(piece.PaddleId), piece.Length.Nanometres,
        piece.Distance.Micrometres, piece.Time.Milliseconds, piece.Effort?.Halves, piece.HeartRate?.BeatsPerMinute,
        piece.StrokeRate?.Tenths, Stored.CourseName(piece.Course), piece.Soreness?.Halves, piece.FadePercent,
        piece.ExcludedBecause, piece.Notes, piece.Origin);

    /// <summary>Adds or replaces a given card.</summary>
    /// <exception cref="InvalidValueException">A value is out of its range, or a paddler, hull or paddle is not in the logbook.</exception>
    public void Put(GivenCard given)
    {
        given = RecordRules.Checked(given);
        _statements.Run("""
            INSERT INTO cards (id, paddler_id, hull_id, paddle_id, given_at, lengths_nm, distance_um, effort_halves, rest_ms,
                reason, best_nm, likely_low_nm, likely_high_nm, gain_left_percent, diminishing_returns, outings, pieces,
                as_of_change, paddled_as)
            VALUES (@id, @paddler, @hull, @paddle, @given_at, @lengths, @distance, @effort, @rest, @reason, @best, @low,
                @high, @gain_left, @diminishing, @outings, @pieces, @as_of, @paddled_as)
            ON CONFLICT (id) DO UPDATE SET paddler_id = @paddler, hull_id = @hull, paddle_id = @paddle,
                given_at = @given_at, lengths_nm = @lengths, distance_um = @distance, effort_halves = @effort,
                rest_ms = @rest, reason = @reason, best_nm = @best, likely_low_nm = @low, likely_high_nm = @high,
                gain_left_percent = @gain_left, diminishing_returns = @diminishing, outings = @outings, pieces = @pieces,
                as_of_change = @as_of, paddled_as = @paddled_as
            """,
            Stored.Id(given.Id), Stored.Id(given.PaddlerId), Stored.Id(given.HullId), Stored.Id(given.PaddleId),
            Stored.Moment(given.GivenAt), CardRow.Lengths(given.Card.Lengths), given.Card.Distance.Micrometres,
            given.Card.Effort.Halves, given.Card.Rest.Milliseconds, given.Reason, given.Best.Nanometres,
            given.LikelyLow.Nanometres, given.LikelyHigh.Nanometres, given.GainLeftPercent, given.DiminishingReturns,
            given.Outings, given.Pieces, given.AsOfChange, Stored.Id(given.PaddledAs));
    }

    /// <summary>Adds or replaces a technique check.</summary>
    /// <exception cref="InvalidValueException">A value is out of its range, or a paddler, hull or paddle is not in the logbook.</exception>
    public void Put(TechniqueCheck check)
    {
        check = RecordRules.Checked(check);
        _statements.Run("""
            INSERT INTO technique_checks (id, paddler_id, hull_id, paddle_id, length_nm, hand_above_eye_inches,
                shaft_lean_degrees, from_photo, date)
            VALUES (@id, @paddler, @hull, @paddle, @length, @hand, @lean, @from_photo, @date)
            ON CONFLICT (id) DO UPDATE SET paddler_id = @paddler, hull_id = @hull, paddle_id = @paddle,
                length_nm = @length, hand_above_eye_inches = @hand, shaft_lean_degrees = @lean,
                from_photo = @from_photo, date = @date
            """,
            Stored.Id(check.Id), Stored.Id(check.PaddlerId), Stored.Id(check.HullId), Stored.Id(check.PaddleId),
            check.Length.Nanometres, check.HandAboveEyeInches, check.ShaftLeanDegrees, check.FromPhoto, Stored.Date(check.Date));
    }

    /// <summary>Adds or replaces a coach's note.</summary>
    /// <exception cref="InvalidValueException">The text or its author is empty or too long, or what it is about is not in the logbook.</exception>
    public void Put(CoachNote note)
    {
        note = RecordRules.Checked(note);
        bool isThere = _connection.ExecuteScalar<bool>(note.About switch
        {
            NoteSubject.Paddler => "SELECT EXISTS (SELECT 1 FROM paddlers WHERE id = @id)",
            NoteSubject.Outing => "SELECT EXISTS (SELECT 1 FROM outings WHERE id = @id)",
            _ => "SELECT EXISTS (SELECT 1 FROM cards WHERE id = @id)",
        }, new { id = Stored.Id(note.AboutId) });
        if (!isThere)
            throw new InvalidValueException($"The note is about a {Stored.Subject(note.About)} that is not in the logbook.");
        _statements.Run("""
            INSERT INTO notes (id, about_id, about, author, written_at, text)
            VALUES (@id, @about_id, @about, @author, @written_at, @text)
            ON CONFLICT (id) DO UPDATE SET about_id = @about_id, about = @about, author = @author,
                written_at = @written_at, text = @text
            """,
            Stored.Id(note.Id), Stored.Id(note.AboutId), Stored.Subject(note.About), note.Author,
            Stored.Moment(note.WrittenAt), note.Text);
    }

    /// <summary>Removes a paddler and all that is theirs: outings, cards, technique checks and the notes about them.</summary>
    public void RemovePaddler(Guid id) => _connection.Execute("""
        DELETE FROM notes WHERE about_id = @id
            OR about_id IN (SELECT id FROM outings WHERE paddler_id = @id)
            OR about_id IN (SELECT id FROM cards WHERE paddler_id = @id);
        DELETE FROM paddlers WHERE id = @id
        """, new { id = Stored.Id(id) });

    /// <summary>Removes a hull, and the cards given for it.</summary>
    /// <exception cref="InvalidValueException">It is still in use.</exception>
    public void RemoveHull(Guid id)
    {
        CheckUnused("""
            SELECT name,
                (SELECT count(*) FROM outings WHERE hull_id = @id) AS outings,
                (SELECT count(*) FROM technique_checks WHERE hull_id = @id)
                    + (SELECT count(*) FROM paddlers WHERE goal_hull_id = @id) AS others
            FROM hulls WHERE id = @id
            """, "hull", "goal events or technique checks", id);
        _connection.Execute("""
            DELETE FROM notes WHERE about_id IN (SELECT id FROM cards WHERE hull_id = @id);
            DELETE FROM hulls WHERE id = @id
            """, new { id = Stored.Id(id) });
    }

    /// <summary>Removes a paddle, and the cards given for it.</summary>
    /// <exception cref="InvalidValueException">It is still in use.</exception>
    public void RemovePaddle(Guid id)
    {
        CheckUnused("""
            SELECT name,
                (SELECT count(DISTINCT outing_id) FROM pieces WHERE paddle_id = @id) AS outings,
                (SELECT count(*) FROM technique_checks WHERE paddle_id = @id) AS others
            FROM paddles WHERE id = @id
            """, "paddle", "technique checks", id);
        _connection.Execute("""
            DELETE FROM notes WHERE about_id IN (SELECT id FROM cards WHERE paddle_id = @id);
            DELETE FROM paddles WHERE id = @id
            """, new { id = Stored.Id(id) });
    }

    /// <summary>Removes an outing, its pieces and the notes about it. A card that was paddled as it stays.</summary>
    public void RemoveOuting(Guid id) => _connection.Execute(
        "DELETE FROM notes WHERE about_id = @id; DELETE FROM outings WHERE id = @id", new { id = Stored.Id(id) });

    /// <summary>Removes a given card and the notes about it.</summary>
    public void RemoveCard(Guid id) => _connection.Execute(
        "DELETE FROM notes WHERE about_id = @id; DELETE FROM cards WHERE id = @id", new { id = Stored.Id(id) });

    /// <summary>Removes a technique check.</summary>
    public void RemoveTechniqueCheck(Guid id) =>
        _connection.Execute("DELETE FROM technique_checks WHERE id = @id", new { id = Stored.Id(id) });

    /// <summary>Removes a coach's note.</summary>
    public void RemoveNote(Guid id) => _connection.Execute("DELETE FROM notes WHERE id = @id", new { id = Stored.Id(id) });

    /// <summary>Notes that a file was imported, by the hash of its bytes, so that it is known when it comes again.</summary>
    public void RememberImport(string fileHash, string fileName)
    {
        RecordRules.Text(fileHash, RecordRules.LongestWord, "file's hash");
        _statements.Run("""
            INSERT INTO imports (id, file_name, imported_at) VALUES (@id, @file_name, @imported_at)
            ON CONFLICT (id) DO NOTHING
            """, fileHash, Quoted.Brief(fileName, RecordRules.LongestWord), Stored.Moment(DateTimeOffset.UtcNow));
    }

    private sealed class Use
    {
        public string Name { get; init; } = "";
        public long Outings { get; init; }
        public long Others { get; init; }
    }

    private void CheckUnused(string sql, string kind, string others, Guid id)
    {
        Use? use = _connection.QueryFirstOrDefault<Use>(sql, new { id = Stored.Id(id) });
        if (use is { Outings: > 0 })
            throw new InvalidValueException($"The {kind} “{use.Name}” is in use by {use.Outings:N0} {(use.Outings == 1 ? "outing" : "outings")}; remove or change those first.");
        if (use is { Others: > 0 })
            throw new InvalidValueException($"The {kind} “{use.Name}” is in use by {others}; remove or change those first.");
    }

    private void CheckNameIsFree(string table, string kind, Guid id, string name)
    {
        string? holder = _connection.QueryFirstOrDefault<string>(
            $"SELECT name FROM {table} WHERE name_key = @key AND id <> @id", new { key = Stored.NameKey(name), id = Stored.Id(id) });
        if (holder is not null)
            throw new InvalidValueException($"There is already a {kind} named “{holder}”; choose another name.");
    }
}
