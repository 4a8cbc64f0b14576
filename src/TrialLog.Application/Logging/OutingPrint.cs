using System.Security.Cryptography;
using System.Text;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;

namespace TrialLog.Application.Logging;

/// <summary>A fingerprint of everything in an outing, by which a change made meanwhile is noticed.</summary>
internal static class OutingPrint
{
    /// <summary>What stands for an outing that is not in the logbook.</summary>
    public const string Gone = "gone";

    /// <summary>The fingerprint: equal for equal outings, different for different ones.</summary>
    public static string Of(Outing outing)
    {
        // Records write out all their properties.
        var text = new StringBuilder($"{outing with { Pieces = [] }}");
        foreach (Piece piece in outing.Pieces)
            text.Append('\n').Append(piece);
        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..24];
    }

    /// <summary>What refuses a change of an outing that is no longer as it was shown.</summary>
    public static RequestException ChangedElsewhere(Outing shown) =>
        new($"The outing of {shown.Date:yyyy-MM-dd} was changed elsewhere just now. Look at it again.");

    /// <summary>The fingerprint of that outing as it is in the logbook now.</summary>
    public static string Of(Workspace workspace, Outing outing) =>
        workspace.Logbook.Outings(outing.PaddlerId).FirstOrDefault(known => known.Id == outing.Id) is { } now ? Of(now) : Gone;
}
