using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Logbook.Rows;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>The records of a logbook or a shared file with what is known of their edits, found by id.</summary>
internal sealed class RecordSet
{
    private readonly HashSet<string> _leftOut = [];

    private RecordSet(EditSets edits) => Edits = edits;

    /// <summary>Every record that is there, named without what keeps names apart, pieces in the order that they were given.</summary>
    public Dictionary<Guid, SharedItem> Items { get; } = [];

    /// <summary>The outing of each piece.</summary>
    public Dictionary<Guid, Guid> OutingOf { get; } = [];

    /// <summary>The records that were removed, each with the one that it became where two were joined.</summary>
    public Dictionary<Guid, Guid?> Removed { get; } = [];

    /// <summary>What is known of edits.</summary>
    public EditSets Edits { get; }

    /// <summary>Whether edits are known at all; a file of the first version does not tell them.</summary>
    public bool TellsEdits { get; private init; } = true;

    /// <summary>The number of the logbook's newest change; 0 for a file.</summary>
    public long LastChange { get; private init; }

    /// <summary>The change number with which each card was given in this logbook.</summary>
    public Dictionary<Guid, long> GivenAfter { get; } = [];

    /// <summary>Names as this logbook shows them, by id: where two are the same, with a number that keeps them apart.</summary>
    public Dictionary<Guid, string> ShownNames { get; } = [];

    /// <summary>What a logbook holds at one moment: all, or of outings, pieces and what else belongs to somebody one paddler's.</summary>
    public static RecordSet Of(LogbookFile logbook, Guid? paddler = null) => logbook.AskAtOneMoment(connection =>
    {
        // Of a whole squad's outings only a few hundred are held twice.
        LogbookSnapshot log = LogbookReader.Everything(connection, paddler, withOutings: paddler is not null);
        var set = new RecordSet(EditSets.Of(connection)) { LastChange = log.LastChange };
        Dictionary<Guid, string> trueNames = connection.Query<TextOfId>("""
            SELECT id, true_name AS text FROM hulls WHERE true_name IS NOT NULL
            UNION ALL SELECT id, true_name FROM paddles WHERE true_name IS NOT NULL
            UNION ALL SELECT id, true_name FROM paddlers WHERE true_name IS NOT NULL
            """).ToDictionary(row => Guid.Parse(row.Id), row => row.Text);
        foreach (NamedItem named in log.Hulls.Select(SharedHull.Of).Concat<NamedItem>(log.Paddlers.Select(SharedPaddler.Of))
            .Concat(log.Paddles.Select(SharedPaddle.Of)))
        {
            set.ShownNames.Add(named.Id, named.Name);
            set.Items.Add(named.Id, trueNames.TryGetValue(named.Id, out string? trueName) ? named with { Name = trueName } : named);
        }

        // As they are stored: where two pieces have one number, the reader shows them numbered anew.
        Dictionary<Guid, int> given = connection.Query<PieceRow>("""
            SELECT id, piece_order FROM pieces
            WHERE outing_id IN (SELECT outing_id FROM pieces GROUP BY outing_id, piece_order HAVING count(*) > 1)
            """).ToDictionary(row => Guid.Parse(row.Id), row => row.PieceOrder);
        foreach (Outing outing in paddler is null ? LogbookReader.OutingsByDay(connection, listed: true) : log.Outings)
            set.Add(SharedOuting.Of(outing), outing.Pieces.Select(SharedPiece.Of)
                .Select(piece => given.TryGetValue(piece.Id, out int order) ? piece with { Order = order } : piece));
        foreach (GivenCard card in log.Cards)
        {
            set.Items.Add(card.Id, SharedCard.Of(card));
            set.GivenAfter.Add(card.Id, card.AsOfChange);
        }

        foreach (SharedItem item in log.TechniqueChecks.Select(SharedTechniqueCheck.Of)
            .Concat<SharedItem>(log.SorenessClearances.Select(SharedSorenessClearance.Of))
            .Concat(log.Decisions.Select(SharedDecision.Of)).Concat(log.Notes.Select(SharedNote.Of)))
            set.Items.Add(item.Id, item);

        Dictionary<Guid, Guid> joins = connection.Query<TextOfId>("SELECT id, into_id AS text FROM joins")
            .ToDictionary(row => Guid.Parse(row.Id), row => Guid.Parse(row.Text));
        HashSet<Guid> others = paddler is null ? [] : EditedAndThere(connection);
        foreach (Guid id in set.Edits.Ids.Where(id => !set.Items.ContainsKey(id) && !others.Contains(id)))
            set.Removed.Add(id, joins.TryGetValue(id, out Guid into) ? into : null);
        return set;
    });

    private static HashSet<Guid> EditedAndThere(SqliteConnection connection) => [.. connection.Query<string>($"""
        SELECT DISTINCT row_id FROM edits WHERE
        {string.Join(" OR ", RecordFields.ByTable.Keys.Select(table => $"EXISTS (SELECT 1 FROM {table} WHERE id = edits.row_id)"))}
        """, buffered: false).Select(Guid.Parse)];

    /// <summary>What a shared file holds.</summary>
    public static RecordSet Of(SharedContents contents)
    {
        var set = new RecordSet(new EditSets()) { TellsEdits = contents.Version > 1 };
        set._leftOut.UnionWith(contents.LeftOut ?? []);
        foreach (SharedItem item in contents.Hulls.Concat<SharedItem>(contents.Paddlers).Concat(contents.Paddles).Concat(contents.Cards)
            .Concat(contents.TechniqueChecks).Concat(contents.SorenessClearances ?? []).Concat(contents.Decisions ?? [])
                .Concat(contents.CoachNotes))
        {
            set.Items.Add(item.Id, item);
            set.Edits.Read(item.Id, item.Edits);
        }

        foreach (SharedOuting outing in contents.Outings)
        {
            set.Add(outing, outing.Pieces ?? []);
            set.Edits.Read(outing.Id, outing.Edits);
            foreach (SharedPiece piece in outing.Pieces ?? [])
                set.Edits.Read(piece.Id, piece.Edits);
        }

        foreach (SharedRemoval removal in contents.Removed ?? [])
        {
            set.Removed.Add(removal.Id, removal.Into);
            set.Edits.Read(removal.Id, removal.Edits);
        }

        return set;
    }

    /// <summary>The record that it hangs on; null for what stands alone.</summary>
    public Guid? ContainerOf(SharedItem item) => item is SharedPiece ? OutingOf[item.Id] : item.Container();

    /// <summary>The record's fields.</summary>
    public ItemFields FieldsOf(Guid id) => new(Items[id], OutingOf.TryGetValue(id, out Guid outing) ? outing : null);

    /// <summary>Whether the file says nothing of a field, so that its absence means nothing.</summary>
    public bool IsUntold(SharedItem item, string field) => item.Untold?.Contains(field) == true || (item, field) switch
    {
        (SharedOuting or SharedPiece, "notes") => _leftOut.Contains("notes"),
        (SharedPiece, "heart_rate") => _leftOut.Contains("heart_rate"),
        (SharedPaddler, _) => _leftOut.Contains("body_measures") && ItemFields.IsBodyMeasure(field),
        _ => false,
    };

    /// <summary>Points every reference to one record at another.</summary>
    public void Redirect(IReadOnlyDictionary<Guid, Guid> to)
    {
        if (to.Count == 0)
            return;
        foreach (Guid id in Items.Keys.ToList())
            Items[id] = Redirected(Items[id], to);
    }

    /// <summary>The record with its reference to one record pointed at another.</summary>
    public static SharedItem Redirected(SharedItem item, Guid from, Guid to) =>
        Redirected(item, new Dictionary<Guid, Guid> { [from] = to });

    private static SharedItem Redirected(SharedItem item, IReadOnlyDictionary<Guid, Guid> to)
    {
        Guid At(Guid id) => to.TryGetValue(id, out Guid other) ? other : id;
        return item switch
        {
            SharedPaddler paddler => paddler with { GoalHull = paddler.GoalHull is Guid hull ? At(hull) : null },
            SharedPaddle paddle => paddle with { Owner = paddle.Owner is Guid owner ? At(owner) : null },
            SharedOuting outing => outing with { Paddler = At(outing.Paddler), Hull = At(outing.Hull) },
            SharedPiece piece => piece with { Paddle = At(piece.Paddle) },
            SharedCard card => card with { Paddler = At(card.Paddler), Hull = At(card.Hull), Paddle = At(card.Paddle) },
            SharedTechniqueCheck check => check with { Paddler = At(check.Paddler), Hull = At(check.Hull), Paddle = At(check.Paddle) },
            SharedSorenessClearance clearance => clearance with { Paddler = At(clearance.Paddler) },
            SharedDecision decision =>
                decision with { Paddler = At(decision.Paddler), Hull = At(decision.Hull), Paddle = At(decision.Paddle) },
            SharedNote note => note with { AboutId = At(note.AboutId) },
            _ => item,
        };
    }

    private void Add(SharedOuting outing, IEnumerable<SharedPiece> pieces)
    {
        Items.Add(outing.Id, outing with { Pieces = null });
        foreach (SharedPiece piece in pieces)
        {
            Items.Add(piece.Id, piece);
            OutingOf.Add(piece.Id, outing.Id);
        }
    }
}
