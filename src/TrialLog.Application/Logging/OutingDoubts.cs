using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;

namespace TrialLog.Application.Logging;

/// <summary>What may be a slip in a logged outing, though it can be right. It is kept as typed; the paddler is asked.</summary>
internal static class OutingDoubts
{
    /// <summary>The questions, each in a sentence.</summary>
    /// <param name="workspace">The open logbook, in which the outing is.</param>
    /// <param name="outing">The outing.</param>
    /// <param name="before">The outing as it was before it was edited, so that only what changed is asked about; null where it is
    /// new.</param>
    public static IReadOnlyList<string> Of(Workspace workspace, Outing outing, Outing? before = null)
    {
        HashSet<(Guid, Distance, PieceTime)> asked = [.. (before?.Pieces ?? []).Select(Timed)];
        IReadOnlyList<Outing> all = workspace.Logbook.Outings(outing.PaddlerId);
        UsualSpeed usual = UsualSpeed.Of(all, outing.HullId);
        List<string> doubts =
        [
            .. from piece in outing.Pieces
               where piece.ExcludedBecause is null && !asked.Contains(Timed(piece))
               let doubt = usual.Doubt(piece.Distance, piece.Time)
               where doubt is not null
               select $"Piece {piece.Order}, {Say.Distance(piece.Distance)} in {Say.Time(piece.Time)}, is {doubt} than the " +
                   $"others; is it right?",
        ];
        if ((before is null || !Same(before, outing))
            && all.FirstOrDefault(other => other.Id != outing.Id && Same(other, outing)) is { } twin)
            doubts.Add($"All pieces are the same as those of {FindOuting.NameOf(twin)}; is it logged twice?");
        if (MixesClocks(outing) && before?.Pieces.Select(piece => piece.TimedBy)
            .SequenceEqual(outing.Pieces.Select(piece => piece.TimedBy)) != true)
            doubts.Add($"Some pieces are timed by the watch, some by hand: {Compare} Is it so?");
        return doubts;
    }

    private const string Compare = "the watch leaves out the start, a stopwatch does not, so they compare badly.";

    /// <summary>Whether some pieces of an outing are timed by the watch and some are not.</summary>
    public static bool MixesClocks(Outing outing) => outing.Pieces.Any(piece => piece.TimedBy == TimedBy.Watch)
        && outing.Pieces.Any(piece => piece.TimedBy != TimedBy.Watch);

    /// <summary>What may be a slip in an import: clocks that mix within an outing, pieces far off the paddler's others.</summary>
    /// <param name="logbook">The logbook, in which they are.</param>
    /// <param name="before">The outings that have grown, as they were; others beside them do not matter.</param>
    /// <param name="paddlers">Whose outings are new or have grown.</param>
    /// <param name="put">The outings that are new or have grown, in their order.</param>
    public static IReadOnlyList<string> OfImport(
        LogbookFile logbook, IReadOnlyList<Outing> before, IEnumerable<Guid> paddlers, IReadOnlyDictionary<Guid, int> put)
    {
        HashSet<Guid> known = [.. before.SelectMany(outing => outing.Pieces).Select(piece => piece.Id)];
        Found odd = new(), mixed = new();

        // A paddler's whole log at a time, and no more of the logbook.
        foreach (Guid paddler in paddlers)
        {
            IReadOnlyList<Outing> all = logbook.Outings(paddler);
            var usual = new Dictionary<Guid, UsualSpeed>();
            foreach (Outing outing in all.Where(outing => put.ContainsKey(outing.Id)))
            {
                if (MixesClocks(outing))
                    mixed.Add(put[outing.Id], () => FindOuting.NameOf(outing));
                if (!usual.TryGetValue(outing.HullId, out UsualSpeed? speed))
                    usual[outing.HullId] = speed = UsualSpeed.Of(all, outing.HullId);
                foreach (Piece piece in outing.Pieces.Where(piece => piece.ExcludedBecause is null && !known.Contains(piece.Id)))
                {
                    if (speed.Doubt(piece.Distance, piece.Time) is { } doubt)
                        odd.Add(put[outing.Id], () => $"{FindOuting.NameOf(outing)}, piece {piece.Order}, " +
                            $"{Say.Distance(piece.Distance)} in {Say.Time(piece.Time)}, {doubt}");
                }
            }
        }

        List<string> doubts = [];
        if (odd.Count > 0)
            doubts.Add(odd.Count == 1 ? $"1 piece is far off the paddler's others: {odd.First}; is it right?"
                : $"{Say.Count(odd.Count, "piece")} are far off their paddler's others, the first {odd.First}; are they right?");
        if (mixed.Count > 0)
            doubts.Add($"{Say.Count(mixed.Count, "outing")}, the first {mixed.First}, with some pieces timed by the watch and " +
                $"some by hand: {Compare}");
        return doubts;
    }

    // How many there are, and the first of them in the order of the file.
    private sealed class Found
    {
        private int _at = int.MaxValue;

        public int Count { get; private set; }

        public string First { get; private set; } = "";

        public void Add(int at, Func<string> name)
        {
            Count++;
            if (at < _at)
                (_at, First) = (at, name());
        }
    }

    private static bool Same(Outing a, Outing b) => a.Date == b.Date && a.HullId == b.HullId
        && a.Pieces.Select(Paddled).SequenceEqual(b.Pieces.Select(Paddled));

    private static (Guid, Distance, PieceTime) Timed(Piece piece) => (piece.Id, piece.Distance, piece.Time);

    private static (Guid, Length, Distance, PieceTime) Paddled(Piece piece) => (piece.PaddleId, piece.Length, piece.Distance, piece.Time);
}
