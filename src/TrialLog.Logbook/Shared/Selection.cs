using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook.Shared;

/// <summary>Chooses what of a logbook goes into a shared file.</summary>
internal static class Selection
{
    public static readonly IReadOnlyDictionary<LeftOut, string> LeftOutNames = new Dictionary<LeftOut, string>
    {
        [LeftOut.Notes] = "notes",
        [LeftOut.HeartRate] = "heart_rate",
        [LeftOut.BodyMeasures] = "body_measures",
    };

    /// <summary>The paddler's record or everybody's, with the hulls and paddles it needs (everybody's: all).</summary>
    public static SharedContents Of(LogbookSnapshot log, LogbookHistory history, ShareOptions options)
    {
        if (options.PaddlerId is Guid id && log.Paddlers.All(paddler => paddler.Id != id))
            throw new LogbookException("That paddler is not in the logbook; triallog history lists who is.");
        bool Chosen(Guid paddler) => options.PaddlerId is null || options.PaddlerId == paddler;
        List<Paddler> paddlers = [.. log.Paddlers.Where(paddler => Chosen(paddler.Id))];
        List<Outing> outings = [.. log.Outings.Where(outing => Chosen(outing.PaddlerId))];
        List<GivenCard> cards = [.. log.Cards.Where(card => Chosen(card.PaddlerId))];
        List<TechniqueCheck> checks = [.. log.TechniqueChecks.Where(check => Chosen(check.PaddlerId))];
        List<Decision> decisions = [.. log.Decisions.Where(decision => Chosen(decision.PaddlerId))];
        HashSet<Guid> subjects = [.. paddlers.Select(x => x.Id), .. outings.Select(x => x.Id), .. cards.Select(x => x.Id)];
        HashSet<Guid> boats =
        [
            .. outings.Select(x => x.HullId), .. outings.SelectMany(x => x.Pieces).Select(x => x.PaddleId),
            .. cards.Select(x => x.HullId), .. cards.Select(x => x.PaddleId),
            .. checks.Select(x => x.HullId), .. checks.Select(x => x.PaddleId),
            .. decisions.Select(x => x.HullId), .. decisions.Select(x => x.PaddleId),
            .. paddlers.Where(x => x.Goal is not null).Select(x => x.Goal!.HullId),
        ];
        bool leaveNotes = options.LeftOut.HasFlag(LeftOut.Notes);

        T Versioned<T>(T item) where T : SharedItem
        {
            // What is left out cannot be guessed from a fingerprint, so there is none of the whole then.
            IEnumerable<string> Prints(SharedItem version) =>
                options.LeftOut == LeftOut.Nothing ? [version.CorePrint(), version.WholePrint()] : [version.CorePrint()];
            string[] earlier = [.. history.Earlier[item.Id].SelectMany(Prints).Except(Prints(item))];
            return earlier.Length == 0 ? item : item with { Earlier = earlier };
        }

        SharedPiece Piece(Piece piece)
        {
            SharedPiece shared = Versioned(SharedPiece.Of(piece));
            return shared with
            {
                Notes = leaveNotes ? null : shared.Notes,
                HeartRate = options.LeftOut.HasFlag(LeftOut.HeartRate) ? null : shared.HeartRate,
            };
        }

        SharedPaddler Paddler(Paddler paddler)
        {
            SharedPaddler shared = Versioned(SharedPaddler.Of(paddler));
            return options.LeftOut.HasFlag(LeftOut.BodyMeasures) ? shared with { Body = null } : shared;
        }

        // An owner whose record is not shared is nobody to whom receives it.
        SharedPaddle Paddle(Paddle paddle) => Versioned(SharedPaddle.Of(paddle.OwnerId is Guid owner && !Chosen(owner) ? paddle with { OwnerId = null } : paddle));

        SharedOuting Outing(Outing outing)
        {
            SharedOuting shared = Versioned(SharedOuting.Of(outing));
            return shared with { Notes = leaveNotes ? null : shared.Notes, Pieces = [.. outing.Pieces.Select(Piece)] };
        }

        return new SharedContents
        {
            Format = SharedContents.FormatName,
            Version = SharedContents.CurrentVersion,
            WrittenAt = DateTimeOffset.UtcNow,
            LeftOut = options.LeftOut == LeftOut.Nothing ? null
                : [.. LeftOutNames.Where(name => options.LeftOut.HasFlag(name.Key)).Select(name => name.Value)],
            Hulls = [.. log.Hulls.Where(x => options.PaddlerId is null || boats.Contains(x.Id)).Select(x => Versioned(SharedHull.Of(x)))],
            Paddles = [.. log.Paddles.Where(x => options.PaddlerId is null || boats.Contains(x.Id)).Select(Paddle)],
            Paddlers = [.. paddlers.Select(Paddler)],
            Outings = [.. outings.Select(Outing)],
            Cards = [.. cards.Select(x => Versioned(SharedCard.Of(x)) with { PaddledAs = x.PaddledAs is Guid outing && subjects.Contains(outing) ? outing : null })],
            TechniqueChecks = [.. checks.Select(x => Versioned(SharedTechniqueCheck.Of(x)))],
            SorenessClearances = [.. log.SorenessClearances.Where(x => Chosen(x.PaddlerId)).Select(x => Versioned(SharedSorenessClearance.Of(x)))],
            Decisions = [.. decisions.Select(x => Versioned(SharedDecision.Of(x)))],
            CoachNotes = leaveNotes ? [] : [.. log.Notes.Where(x => subjects.Contains(x.AboutId)).Select(x => Versioned(SharedNote.Of(x)))],
        };
    }
}
