using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;

namespace TrialLog.Logbook.Sync;

/// <summary>
/// Keeps several laptops' logbooks in step through a folder that something else carries from one to the other: a drive, a
/// stick, a shared disk. Each logbook writes one file there, its own, and takes in the others'. So files never conflict, and it does not
/// matter in which order, how late or how often they arrive; one that is cut short is passed over until it is whole.
/// </summary>
public static class FolderSync
{
    private const string IdSetting = "sync.id", WrittenSetting = "sync.written", Pattern = "triallog-*.json";

    /// <summary>Takes in what others wrote, then writes what this logbook knows.</summary>
    /// <param name="logbook">This laptop's logbook.</param>
    /// <param name="folder">The folder, which is there.</param>
    /// <param name="choose">Decides each question; <see cref="MergeChoice.Later"/> leaves it waiting.</param>
    /// <param name="today">The day: outings of a later one are not believed.</param>
    /// <exception cref="LogbookException">The folder is not there or cannot be written, or the logbook cannot; what was taken in by then is
    /// kept.</exception>
    public static SyncResult Run(LogbookFile logbook, string folder, Func<MergeQuestion, MergeChoice> choose, DateOnly today)
    {
        if (!Directory.Exists(folder))
            throw new LogbookException($"The folder {folder} is not there; make it, or name another.");
        string own = Path.Combine(folder, OwnName(logbook));
        var result = new SyncResult { File = own };
        foreach (
            string file in Directory.EnumerateFiles(folder, Pattern)
            .Where(file => !Path.GetFileName(file).Equals(Path.GetFileName(own), StringComparison.OrdinalIgnoreCase))
            .Order(StringComparer.Ordinal))
            TakeIn(logbook, file, choose, today, result);
        Write(logbook, own);
        return result;
    }

    private static void TakeIn(LogbookFile logbook, string file, Func<MergeQuestion, MergeChoice> choose, DateOnly today, SyncResult result)
    {
        MergePlan plan;
        try
        {
            plan = Merge.Plan(logbook, Sharing.Load(file), today);
        }
        catch (LogbookException e)
        {
            result.Unread.Add($"{Path.GetFileName(file)}: {e.Message}");
            return;
        }

        plan.Apply(logbook, question =>
        {
            MergeChoice choice = choose(question);
            // Two of a name are both here from now on, and no later exchange asks of them again: so it is said.
            if (choice == MergeChoice.Later && question.Kind == MergeQuestionKind.SameName)
                result.Remarks.Add($"{char.ToUpperInvariant(question.What[0])}{question.What[1..]} may be one that was here already: " +
                    $"{question.Here}, {question.InFile}. Both are kept; if they are the same, join them.");
            else if (choice == MergeChoice.Later)
                result.Waiting.Add(question);
            return choice;
        });
        result.FilesTakenIn++;
        result.Add(plan);
    }

    private static void Write(LogbookFile logbook, string own)
    {
        // Written anew only when something is new, so that what carries the folder is not kept busy.
        string State() =>
            string.Create(CultureInfo.InvariantCulture,
            $"{Path.GetFileName(own)} {logbook.LastChange} {(File.Exists(own) ? new FileInfo(own).Length : -1)}");
        if (logbook.Setting(WrittenSetting) == State())
            return;
        Sharing.Save(logbook, new ShareOptions(), own);
        logbook.SaveSetting(WrittenSetting, State());
    }

    // A logbook that was copied to another laptop goes by another name there, so that the two do not write one file.
    private static string OwnName(LogbookFile logbook)
    {
        string? id = logbook.Setting(IdSetting);
        if (id is null)
            logbook.SaveSetting(IdSetting, id = Guid.NewGuid().ToString("N"));
        byte[] print = SHA256.HashData(Encoding.UTF8.GetBytes($"{id}\n{Environment.MachineName}\n{logbook.Path}"));
        return $"triallog-{Convert.ToHexStringLower(print)[..12]}.json";
    }
}

/// <summary>What an exchange through a folder did.</summary>
public sealed class SyncResult
{
    /// <summary>This logbook's own file.</summary>
    public required string File { get; init; }

    /// <summary>How many others' files were taken in.</summary>
    public int FilesTakenIn { get; internal set; }

    /// <summary>Records that are new here, by kind.</summary>
    public SortedDictionary<string, int> Added { get; } = new(StringComparer.Ordinal);

    /// <summary>Records with fields that were newer elsewhere, by kind.</summary>
    public SortedDictionary<string, int> Updated { get; } = new(StringComparer.Ordinal);

    /// <summary>Records that were removed elsewhere and are removed here, by kind.</summary>
    public SortedDictionary<string, int> Removed { get; } = new(StringComparer.Ordinal);

    /// <summary>Questions left for later. They are asked again, here or on another laptop, until one answers; then nowhere.</summary>
    public List<MergeQuestion> Waiting { get; } = [];

    /// <summary>What else the user should know, a sentence each.</summary>
    public List<string> Remarks { get; } = [];

    /// <summary>Files that could not be read, with the reason: most often they are still on their way.</summary>
    public List<string> Unread { get; } = [];

    internal void Add(MergePlan plan)
    {
        foreach (
            (SortedDictionary<string, int> into, IReadOnlyDictionary<string, int> from) in new[] { (Added, plan.Added),
            (Updated, plan.Updated), (Removed, plan.Removed) })
        {
            foreach ((string kind, int count) in from)
                into[kind] = into.GetValueOrDefault(kind) + count;
        }

        Remarks.AddRange(plan.Remarks);
    }
}
