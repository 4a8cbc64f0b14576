using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook;

/// <summary>A logbook's records as a shared file would hold them, found by id.</summary>
internal sealed class MergeSide
{
    public MergeSide(LogbookSnapshot log)
    {
        Log = log;
        foreach (Hull hull in log.Hulls)
            Items.Add(hull.Id, SharedHull.Of(hull));
        foreach (Paddle paddle in log.Paddles)
            Items.Add(paddle.Id, SharedPaddle.Of(paddle));
        foreach (Paddler paddler in log.Paddlers)
            Items.Add(paddler.Id, SharedPaddler.Of(paddler));
        foreach (Outing outing in log.Outings)
        {
            Items.Add(outing.Id, SharedOuting.Of(outing));
            PiecesOf.Add(outing.Id, [.. outing.Pieces.Select(SharedPiece.Of)]);
            foreach (SharedPiece piece in PiecesOf[outing.Id])
            {
                Items.Add(piece.Id, piece);
                OutingOf.Add(piece.Id, outing.Id);
            }
        }
        foreach (GivenCard card in log.Cards)
            Items.Add(card.Id, SharedCard.Of(card));
        foreach (TechniqueCheck check in log.TechniqueChecks)
            Items.Add(check.Id, SharedTechniqueCheck.Of(check));
        foreach (SorenessClearance clearance in log.SorenessClearances)
            Items.Add(clearance.Id, SharedSorenessClearance.Of(clearance));
        foreach (Decision decision in log.Decisions)
            Items.Add(decision.Id, SharedDecision.Of(decision));
        foreach (CoachNote note in log.Notes)
            Items.Add(note.Id, SharedNote.Of(note));
    }

    public LogbookSnapshot Log { get; }

    public Dictionary<Guid, SharedItem> Items { get; } = [];

    /// <summary>The outing of each piece.</summary>
    public Dictionary<Guid, Guid> OutingOf { get; } = [];

    /// <summary>The pieces of each outing, in order.</summary>
    public Dictionary<Guid, IReadOnlyList<SharedPiece>> PiecesOf { get; } = [];
}
