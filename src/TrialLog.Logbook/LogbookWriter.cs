using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
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

    /// <summary>Where it writes, for what only a merge does.</summary>
    internal SqliteConnection Connection => _connection;

    /// <summary>Its statements, for what only a merge does.</summary>
    internal Statements Statements => _statements;

    /// <summary>Adds or replaces a paddler.</summary>
    /// <exception cref="InvalidValueException">The name is taken, or a value is out of its range.</exception>
    public void Put(Paddler paddler)
    {
        paddler = RecordRules.Checked(paddler);
        CheckNameIsFree("paddlers", "paddler", paddler.Id, paddler.Name);
        BodyMeasures body = paddler.Body;
        _statements.Put("paddlers",
            ("id", Stored.Id(paddler.Id)), ("name", paddler.Name), ("true_name", TrueName("paddlers", paddler.Id, paddler.Name)),
            ("name_key", Stored.NameKey(paddler.Name)), ("unit", Stored.Unit(paddler.Unit)),
            ("seated_reach_nm", body.SeatedReach?.Nanometres), ("stature_nm", body.Stature?.Nanometres),
            ("sitting_shoulder_height_nm", body.SittingShoulderHeight?.Nanometres), ("shoulder_elbow_nm", body.ShoulderElbow?.Nanometres),
            ("elbow_grip_nm", body.ElbowGrip?.Nanometres), ("eye_height_nm", body.EyeHeight?.Nanometres),
            ("shoulder_breadth_nm", body.ShoulderBreadth?.Nanometres), ("arm_span_nm", body.ArmSpan?.Nanometres),
            ("overhead_reach_nm", body.OverheadReach?.Nanometres), ("hand_length_nm", body.HandLength?.Nanometres),
            ("palm_length_nm", body.PalmLength?.Nanometres), ("known_length_nm", paddler.KnownLength?.Nanometres),
            ("goal_hull_id", Stored.Id(paddler.Goal?.HullId)), ("goal_distance_um", paddler.Goal?.Distance?.Micrometres),
            ("goal_time_ms", paddler.Goal?.Time?.Milliseconds), ("swaps_on_water", paddler.SwapsOnWater),
            ("worthwhile_percent", paddler.WorthwhilePercent), ("trial_pieces", paddler.Trials.Pieces),
            ("trial_distance_um", paddler.Trials.Distance?.Micrometres), ("trial_minutes", paddler.Trials.Minutes),
            ("trial_timed_by", Stored.TimedByName(paddler.Trials.TimedBy)), ("trial_price_percent", paddler.Trials.PricePercent));
    }

    /// <summary>Adds or replaces a hull.</summary>
    /// <exception cref="InvalidValueException">The name is taken, or a value is out of its range.</exception>
    public void Put(Hull hull)
    {
        hull = RecordRules.Checked(hull);
        CheckNameIsFree("hulls", "hull", hull.Id, hull.Name);
        _statements.Put("hulls",
            ("id", Stored.Id(hull.Id)), ("name", hull.Name), ("true_name", TrueName("hulls", hull.Id, hull.Name)),
            ("name_key", Stored.NameKey(hull.Name)), ("crew", hull.Crew),
            ("seat_height_nm", hull.SeatHeight?.Nanometres));
    }

    /// <summary>Adds or replaces a paddle.</summary>
    /// <exception cref="InvalidValueException">The name is taken, or a value is out of its range.</exception>
    public void Put(Paddle paddle)
    {
        paddle = RecordRules.Checked(paddle);
        CheckNameIsFree("paddles", "paddle", paddle.Id, paddle.Name);
        _statements.Put("paddles",
            ("id", Stored.Id(paddle.Id)), ("name", paddle.Name), ("true_name", TrueName("paddles", paddle.Id, paddle.Name)),
            ("name_key", Stored.NameKey(paddle.Name)),
            ("blade_nm", paddle.Blade.Nanometres), ("blade_in2", paddle.BladeAreaSquareInches), ("steering", paddle.Steering),
            ("shortest_nm", paddle.Shortest.Nanometres), ("longest_nm", paddle.Longest.Nanometres), ("step_nm", paddle.Step.Nanometres),
            ("owner_id", Stored.Id(paddle.OwnerId)), ("belongs_to_club", paddle.BelongsToClub));
    }

    /// <summary>Adds an outing with its pieces, or replaces the whole of it: pieces it no longer has are removed.</summary>
    /// <exception cref="InvalidValueException">A value is out of its range, or a paddler, hull or paddle is not in the logbook.</exception>
    public void Put(Outing outing)
    {
        outing = RecordRules.Checked(outing);
        string id = Stored.Id(outing.Id);
        _statements.Put("outings",
            ("id", id), ("paddler_id", Stored.Id(outing.PaddlerId)), ("hull_id", Stored.Id(outing.HullId)),
                ("date", Stored.Date(outing.Date)),
            ("time", Stored.Time(outing.Time)), ("label", outing.Label), ("place", outing.Place), ("wind", outing.Wind?.Number),
            ("water", outing.Water), ("notes", outing.Notes), ("blind", outing.Blind));
        _statements.Run("""
            DELETE FROM pieces WHERE outing_id = @outing AND id NOT IN (SELECT value FROM json_each(@kept))
            """,
            id, "[" + string.Join(",", outing.Pieces.Select(piece => $"\"{Stored.Id(piece.Id)}\"")) + "]");
        foreach (Piece piece in outing.Pieces)
            Put(id, piece);
    }

    private void Put(string outing, Piece piece) => _statements.Put("pieces",
        ("id", Stored.Id(piece.Id)), ("outing_id", outing), ("piece_order", piece.Order), ("paddle_id", Stored.Id(piece.PaddleId)),
        ("length_nm", piece.Length.Nanometres), ("distance_um", piece.Distance.Micrometres), ("time_ms", piece.Time.Milliseconds),
        ("effort_halves", piece.Effort?.Halves), ("heart_rate", piece.HeartRate?.BeatsPerMinute),
        ("stroke_rate_tenths", piece.StrokeRate?.Tenths), ("course", Stored.CourseName(piece.Course)),
        ("soreness_halves", piece.Soreness?.Halves), ("fade_percent", piece.FadePercent), ("excluded_because", piece.ExcludedBecause),
        ("notes", piece.Notes), ("origin", piece.Origin), ("timed_by", Stored.TimedByName(piece.TimedBy)),
        ("speed_error_percent", piece.SpeedErrorPercent));

    /// <summary>Adds or replaces a given card.</summary>
    /// <exception cref="InvalidValueException">A value is out of its range, or a paddler, hull or paddle is not in the logbook.</exception>
    public void Put(GivenCard given)
    {
        given = RecordRules.Checked(given);
        _statements.Put("cards",
            ("id", Stored.Id(given.Id)), ("paddler_id", Stored.Id(given.PaddlerId)), ("hull_id", Stored.Id(given.HullId)),
            ("paddle_id", Stored.Id(given.PaddleId)), ("given_at", Stored.Moment(given.GivenAt)),
            ("lengths_nm", CardRow.Lengths(given.Card.Lengths)), ("distance_um", given.Card.Distance.Micrometres),
            ("effort_halves", given.Card.Effort.Halves), ("rest_ms", given.Card.Rest.Milliseconds), ("reason", given.Reason),
            ("best_nm", given.Best.Nanometres), ("likely_low_nm", given.LikelyLow.Nanometres),
                ("likely_high_nm", given.LikelyHigh.Nanometres),
            ("gain_left_percent", given.GainLeftPercent), ("diminishing_returns", given.DiminishingReturns), ("outings", given.Outings),
            ("pieces", given.Pieces), ("as_of_change", given.AsOfChange), ("paddled_as", Stored.Id(given.PaddledAs)),
                ("blind", given.Blind),
            ("given_by", given.By), ("given_because", given.Because),
            ("own_lengths_nm", given.OwnLengths.Count == 0 ? null : CardRow.Lengths(given.OwnLengths)),
            ("to_go_median", given.OutingsToGo?.Median), ("to_go_low", given.OutingsToGo?.Low), ("to_go_high", given.OutingsToGo?.High));
    }

    /// <summary>Adds or replaces a technique check.</summary>
    /// <exception cref="InvalidValueException">A value is out of its range, or a paddler, hull or paddle is not in the logbook.</exception>
    public void Put(TechniqueCheck check)
    {
        check = RecordRules.Checked(check);
        _statements.Put("technique_checks",
            ("id", Stored.Id(check.Id)), ("paddler_id", Stored.Id(check.PaddlerId)), ("hull_id", Stored.Id(check.HullId)),
            ("paddle_id", Stored.Id(check.PaddleId)), ("length_nm", check.Length.Nanometres),
            ("hand_above_eye_inches", check.HandAboveEyeInches), ("shaft_lean_degrees", check.ShaftLeanDegrees),
            ("from_photo", check.FromPhoto), ("date", Stored.Date(check.Date)));
    }

    /// <summary>Adds or replaces word that soreness is gone.</summary>
    /// <exception cref="InvalidValueException">Nobody is named, a text is too long, or the paddler is not in the logbook.</exception>
    public void Put(SorenessClearance clearance)
    {
        clearance = RecordRules.Checked(clearance);
        _statements.Put("soreness_clearances",
            ("id", Stored.Id(clearance.Id)), ("paddler_id", Stored.Id(clearance.PaddlerId)), ("date", Stored.Date(clearance.Date)),
            ("said_by", clearance.By), ("because", clearance.Because));
    }

    /// <summary>Adds or replaces a decision.</summary>
    /// <exception cref="InvalidValueException">A value is out of its range, or a paddler, hull or paddle is not in the logbook.</exception>
    public void Put(Decision decision)
    {
        decision = RecordRules.Checked(decision);
        _statements.Put("decisions",
            ("id", Stored.Id(decision.Id)), ("paddler_id", Stored.Id(decision.PaddlerId)), ("hull_id", Stored.Id(decision.HullId)),
            ("paddle_id", Stored.Id(decision.PaddleId)), ("length_nm", decision.Length.Nanometres),
            ("kind", Stored.DecisionName(decision.Kind)), ("date", Stored.Date(decision.Date)), ("decided_by", decision.By),
            ("because", decision.Because));
    }

    /// <summary>Adds or replaces a coach's note.</summary>
    /// <exception cref="InvalidValueException">The text or its author is empty or too long, or what it is about is not in the
    /// logbook.</exception>
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
        _statements.Put("notes",
            ("id", Stored.Id(note.Id)), ("about_id", Stored.Id(note.AboutId)), ("about", Stored.Subject(note.About)),
            ("author", note.Author), ("written_at", Stored.Moment(note.WrittenAt)), ("text", note.Text));
    }

    // Where a paddler, hull or paddle is named, as table and column.
    private static readonly Dictionary<string, (string Table, string Column)[]> NamedIn = new()
    {
        ["paddlers"] =
        [
            ("outings", "paddler_id"), ("cards", "paddler_id"), ("technique_checks", "paddler_id"), ("soreness_clearances", "paddler_id"),
            ("decisions", "paddler_id"), ("paddles", "owner_id"), ("notes", "about_id"),
        ],
        ["hulls"] = [("outings", "hull_id"), ("cards", "hull_id"), ("technique_checks", "hull_id"), ("decisions", "hull_id"),
            ("paddlers", "goal_hull_id")],
        ["paddles"] = [("pieces", "paddle_id"), ("cards", "paddle_id"), ("technique_checks", "paddle_id"), ("decisions", "paddle_id")],
    };

    /// <summary>Makes one paddler of two: all that is the first one's becomes the other's, and the first is no more.</summary>
    /// <exception cref="InvalidValueException">One of them is not in the logbook, or they are the same.</exception>
    public void JoinPaddlers(Guid id, Guid into) => Join("paddlers", id, into);

    /// <summary>Makes one hull of two: what was paddled in the first was paddled in the other, and the first is no more.</summary>
    /// <exception cref="InvalidValueException">One of them is not in the logbook, or they are the same.</exception>
    public void JoinHulls(Guid id, Guid into) => Join("hulls", id, into);

    /// <summary>Makes one paddle of two: what was paddled with the first was paddled with the other, and the first is no more.</summary>
    /// <exception cref="InvalidValueException">One of them is not in the logbook, or they are the same.</exception>
    public void JoinPaddles(Guid id, Guid into) => Join("paddles", id, into);

    private void Join(string table, Guid id, Guid into)
    {
        if (id == into || _connection.ExecuteScalar<int>(
            $"SELECT count(*) FROM {table} WHERE id IN (@id, @into)", new { id = Stored.Id(id), into = Stored.Id(into) }) != 2)
            throw new InvalidValueException("Two different records of the logbook can be joined, and no others.");
        MoveAll(table, id, into);
        _connection.Execute($"DELETE FROM {table} WHERE id = @id", new { id = Stored.Id(id) });
    }

    /// <summary>Names the other record wherever one is named, and remembers that the one became the other.</summary>
    internal void MoveAll(string table, Guid id, Guid into)
    {
        foreach ((string where, string column) in NamedIn[table])
            _connection.Execute($"UPDATE {where} SET {column} = @into WHERE {column} = @id",
                new { id = Stored.Id(id), into = Stored.Id(into) });
        RememberJoin(id, into);
    }

    /// <summary>Remembers that a record that is gone became another.</summary>
    internal void RememberJoin(Guid id, Guid into) => _connection.Execute("""
        INSERT INTO joins (id, into_id) VALUES (@id, @into) ON CONFLICT (id) DO UPDATE SET into_id = excluded.into_id
        """, new { id = Stored.Id(id), into = Stored.Id(into) });

    /// <summary>Whether a paddler, hull or paddle is named by something that goes with it or cannot go without it.</summary>
    internal bool IsInUse(string table, Guid id) => NamedIn[table].Where(use => use is not (("notes" or "paddles"), _))
        .Any(use => _connection.ExecuteScalar<bool>(
            $"SELECT EXISTS (SELECT 1 FROM {use.Table} WHERE {use.Column} = @id)", new { id = Stored.Id(id) }));

    /// <summary>
    /// Moves an outing to another paddler, or another hull. A card that it was paddled by and that is for somebody else, or another hull,
    /// is no longer tied to it.
    /// </summary>
    /// <exception cref="InvalidValueException">The outing, paddler or hull is not in the logbook.</exception>
    public void MoveOuting(Guid id, Guid paddlerId, Guid hullId)
    {
        var move = new { id = Stored.Id(id), paddler = Stored.Id(paddlerId), hull = Stored.Id(hullId) };
        if (_connection.Execute("UPDATE outings SET paddler_id = @paddler, hull_id = @hull WHERE id = @id", move) == 0)
            throw new InvalidValueException("That outing is not in the logbook.");
        _connection.Execute(
            "UPDATE cards SET paddled_as = NULL WHERE paddled_as = @id AND (paddler_id <> @paddler OR hull_id <> @hull)", move);
    }

    /// <summary>
    /// Removes a paddler and all that is theirs: outings, cards, technique checks, decisions and the notes about them. A paddle of theirs
    /// stays, as nobody's.
    /// </summary>
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
                (SELECT count(*) FROM technique_checks WHERE hull_id = @id) + (SELECT count(*) FROM decisions WHERE hull_id = @id)
                    + (SELECT count(*) FROM paddlers WHERE goal_hull_id = @id) AS others
            FROM hulls WHERE id = @id
            """, "hull", "goal races, technique checks or decisions", id);
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
                (SELECT count(*) FROM technique_checks WHERE paddle_id = @id)
                    + (SELECT count(*) FROM decisions WHERE paddle_id = @id) AS others
            FROM paddles WHERE id = @id
            """, "paddle", "technique checks or decisions", id);
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

    /// <summary>Removes word that soreness is gone.</summary>
    public void RemoveSorenessClearance(Guid id) =>
        _connection.Execute("DELETE FROM soreness_clearances WHERE id = @id", new { id = Stored.Id(id) });

    /// <summary>Removes a decision.</summary>
    public void RemoveDecision(Guid id) => _connection.Execute("DELETE FROM decisions WHERE id = @id", new { id = Stored.Id(id) });

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

    internal sealed class Use
    {
        public string Name { get; init; } = "";
        public long Outings { get; init; }
        public long Others { get; init; }
    }

    private void CheckUnused(string sql, string kind, string others, Guid id)
    {
        Use? use = _connection.QueryFirstOrDefault<Use>(sql, new { id = Stored.Id(id) });
        if (use is { Outings: > 0 })
            throw new InvalidValueException(
                $"The {kind} “{use.Name}” is in use by {use.Outings:N0} {(use.Outings == 1 ? "outing" : "outings")}; remove or " +
                $"change those first.");
        if (use is { Others: > 0 })
            throw new InvalidValueException($"The {kind} “{use.Name}” is in use by {others}; remove or change those first.");
    }

    // A name that is shown with a number, to keep it apart, stays what it truly is until it is changed.
    private string? TrueName(string table, Guid id, string name) => _connection.QueryFirstOrDefault<string>(
        $"SELECT true_name FROM {table} WHERE id = @id AND name = @name", new { id = Stored.Id(id), name });

    private void CheckNameIsFree(string table, string kind, Guid id, string name)
    {
        string? holder = _connection.QueryFirstOrDefault<string>(
            $"SELECT name FROM {table} WHERE name_key = @key AND id <> @id", new { key = Stored.NameKey(name), id = Stored.Id(id) });
        if (holder is not null)
            throw new InvalidValueException($"There is already a {kind} named “{holder}”; choose another name.");
    }
}
