using TrialLog.Application.Files;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Shared;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Coaching;

/// <summary>Hands a paddler's record over, or the squad's.</summary>
internal static class ShareRecord
{
    private static readonly (string Name, LeftOut Part)[] Parts =
    [
        ("notes", LeftOut.Notes), ("heart-rate", LeftOut.HeartRate), ("body-measures", LeftOut.BodyMeasures),
    ];

    /// <summary>What may be left out, as it is spelled.</summary>
    public static string PartNames => string.Join(", ", Parts.Select(part => part.Name));

    /// <summary>Reads what to leave out.</summary>
    /// <exception cref="InvalidValueException">Something cannot be left out.</exception>
    public static LeftOut Without(IEnumerable<string> names)
    {
        LeftOut without = LeftOut.Nothing;
        foreach (
            string name in names.SelectMany(
            text => text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)))
        {
            int at = Array.FindIndex(Parts, part => string.Equals(part.Name, name.Replace('_', '-'), StringComparison.OrdinalIgnoreCase));
            without |= at >= 0 ? Parts[at].Part
                : throw new InvalidValueException($"“{Quoted.Brief(name)}” cannot be left out; {PartNames} can.");
        }

        return without;
    }

    /// <summary>Writes the record to a file and reads it back, so that what is handed over is known to be whole.</summary>
    /// <param name="workspace">The workspace.</param>
    /// <param name="paddler">Whose record; null for the squad's.</param>
    /// <param name="without">What to leave out.</param>
    /// <param name="file">The file.</param>
    public static SharedRecord To(Workspace workspace, Paddler? paddler, LeftOut without, string file)
    {
        NewFile.Refuse(workspace, file);
        Sharing.Save(workspace.Logbook, new ShareOptions(paddler?.Id, without), file);
        return Sharing.Load(file);
    }
}
