using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;

namespace TrialLog.Application.Logging;

/// <summary>Changes, excludes and deletes what was logged. Each can be taken back with undo.</summary>
internal static class CorrectOuting
{
    /// <summary>Puts a changed outing in place of the one with the same id.</summary>
    /// <exception cref="RequestException">Something is wrong with it; nothing was changed.</exception>
    public static Outing Replace(Workspace workspace, Outing changed)
    {
        IReadOnlyList<Outing> logged = workspace.Logbook.Outings(changed.PaddlerId);
        IReadOnlyList<string> problems = OutingProblems.Of(changed, workspace.Logbook.Paddles(), logged, workspace.Today);
        if (problems.Count > 0)
            throw new RequestException(string.Join(Environment.NewLine, problems) + Environment.NewLine + "Nothing was changed.");
        if (logged.FirstOrDefault(outing => outing.Id == changed.Id) is { } before)
            changed = changed
                with
            {
                Pieces = [
                .. changed.Pieces.Select(piece => TypedOver(before.Pieces.FirstOrDefault(old => old.Id == piece.Id), piece))]
            };
        workspace.Logbook.Change($"Changed the outing {FindOuting.NameOf(changed)}", logbook => logbook.Put(changed));
        return changed;
    }

    // A time or distance that was typed over is no longer the watch's, and the watch's error no longer its own.
    private static Piece TypedOver(Piece? before, Piece piece) =>
        before is null || (before.Time == piece.Time && before.Distance == piece.Distance) ? piece
        : piece with
        {
            SpeedErrorPercent = null,
            TimedBy = before.TimedBy == piece.TimedBy && piece.TimedBy == TimedBy.Watch ? TimedBy.Hand
            : piece.TimedBy
        };

    /// <summary>Leaves a piece out of every analysis, with the reason; the piece stays in the log.</summary>
    public static Outing Exclude(Workspace workspace, Outing outing, int order, string because)
    {
        if (string.IsNullOrWhiteSpace(because) || because.Length > 400)
            throw new InvalidValueException("A piece is left out for a reason, 1 to 400 characters: --because \"rudder caught weed\".");
        return Put(workspace, outing, order, piece => piece with { ExcludedBecause = because.Trim() },
            $"Left out piece {order} of {FindOuting.NameOf(outing)}: {because.Trim()}");
    }

    /// <summary>Lets a piece count again.</summary>
    public static Outing Include(Workspace workspace, Outing outing, int order) =>
        Put(workspace, outing, order, piece => piece with { ExcludedBecause = null },
            $"Let piece {order} of {FindOuting.NameOf(outing)} count again");

    /// <summary>Deletes an outing.</summary>
    public static void Delete(Workspace workspace, Outing outing) =>
        workspace.Logbook.Change($"Deleted the outing {FindOuting.NameOf(outing)}", logbook => logbook.RemoveOuting(outing.Id));

    /// <summary>Deletes one piece; the rest keep their numbers.</summary>
    public static Outing DeletePiece(Workspace workspace, Outing outing, int order)
    {
        Piece piece = FindOuting.Piece(outing, order);
        if (outing.Pieces.Count == 1)
            throw new RequestException($"Piece {order} is the only one of {FindOuting.NameOf(outing)}; delete the outing instead.");
        Outing changed = outing with { Pieces = [.. outing.Pieces.Where(other => other.Id != piece.Id)] };
        workspace.Logbook.Change($"Deleted piece {order} of {FindOuting.NameOf(outing)}", logbook => logbook.Put(changed));
        return changed;
    }

    /// <summary>Takes back the newest thing done.</summary>
    public static ChangeSummary Undo(Workspace workspace) =>
        workspace.Logbook.Undo() ?? throw new RequestException("There is nothing to undo.");

    /// <summary>Does again what was taken back last, as long as nothing else was done since.</summary>
    public static ChangeSummary Redo(Workspace workspace) =>
        workspace.Logbook.Redo() ?? throw new RequestException("There is nothing to do again.");

    private static Outing Put(Workspace workspace, Outing outing, int order, Func<Piece, Piece> change, string what)
    {
        Piece piece = FindOuting.Piece(outing, order);
        Outing changed = outing with { Pieces = [.. outing.Pieces.Select(other => other.Id == piece.Id ? change(other) : other)] };
        workspace.Logbook.Change(what, logbook => logbook.Put(changed));
        return changed;
    }
}
