using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Logging;

/// <summary>Puts an outing that was typed over in place of the logged one; what the form does not show is kept.</summary>
internal static class EditedOuting
{
    /// <summary>Saves it.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="outingId">The logged outing.</param>
    /// <param name="entry">What was typed.</param>
    /// <param name="pieceIds">For each typed piece the logged piece it replaces; null for a new one.</param>
    /// <exception cref="RequestException">The outing is gone, or something is wrong with what was typed; nothing was changed.</exception>
    public static Outing Save(Workspace workspace, Guid outingId, OutingEntry entry, IReadOnlyList<Guid?> pieceIds)
    {
        Outing before = workspace.Logbook.Outings(entry.Paddler.Id).FirstOrDefault(outing => outing.Id == outingId)
            ?? throw new RequestException("This outing is no longer in the logbook, so it cannot be changed; start over to log it anew.");
        return CorrectOuting.Replace(workspace, before with
        {
            HullId = entry.Hull.Id,
            Date = entry.Date,
            Label = entry.Label,
            Wind = entry.Wind,
            Notes = entry.Notes,
            Pieces = [.. entry.Pieces.Select((piece, index) => Merged(workspace, before, piece, pieceIds[index], index + 1))],
        });
    }

    private static Piece Merged(Workspace workspace, Outing before, PieceEntry typed, Guid? pieceId, int order)
    {
        Piece? logged = before.Pieces.FirstOrDefault(piece => piece.Id == pieceId);
        Piece piece = logged ?? new Piece
        {
            Id = Guid.CreateVersion7(workspace.Now),
            Order = order,
            PaddleId = typed.Paddle.Id,
            Length = typed.Length,
            Distance = typed.Distance,
            Time = typed.Time,
        };
        return piece with
        {
            Order = order,
            PaddleId = typed.Paddle.Id,
            Length = typed.Length,
            Distance = typed.Distance,
            Time = typed.Time,
            Effort = typed.Effort,
            Soreness = typed.Soreness,
        };
    }
}
