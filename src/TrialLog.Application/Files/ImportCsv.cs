using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Application.Files;

/// <summary>Imports a CSV in one change: all of it, or nothing.</summary>
internal static class ImportCsv
{
    /// <exception cref="RequestException">Rows are wrong and were not to be skipped; nothing was imported.</exception>
    public static CsvAdditions From(Workspace workspace, Stream file, string fileName, CsvReadOptions options, bool again = false,
        IProgress<int>? rowsRead = null, CancellationToken stop = default)
    {
        CsvLogContents contents = CsvLog.Read(file, options, rowsRead, stop);
        // The rows themselves are let go once they are outings: nothing below may hold the contents.
        string hash = contents.FileHash;
        if (!again && workspace.Logbook.HasImported(hash))
            return new CsvAdditions
            {
                Warnings = [
                $"{Quoted.Brief(fileName, 80)} was imported before. To bring back what was deleted since: --again"]
            };
        LogbookFile logbook = workspace.Logbook;
        var reach = CsvReach.Of(contents);
        var known = new KnownLog(
            logbook.Paddlers(), logbook.Hulls(), logbook.Paddles(), logbook.Outings(reach.Days, reach.HasOrigin));
        CsvAdditions additions = CsvAssembly.Plan(contents, known, options, () => Guid.CreateVersion7(workspace.Now));
        if (additions.RefusedRows > 0 && !options.SkipBad)
            throw new RequestException(Refusal(fileName, additions));
        if (!additions.AddsNothing)
        {
            var put = new Dictionary<Guid, int>();
            var whose = new HashSet<Guid>();
            logbook.Change($"Imported {Quoted.Brief(fileName, 80)}: {additions.Says().TrimEnd('.')}", writer =>
            {
                foreach (Hull hull in additions.Hulls)
                    writer.Put(hull);
                foreach (Paddler paddler in additions.Paddlers)
                    writer.Put(paddler);
                foreach (Paddle paddle in additions.Paddles)
                    writer.Put(paddle);
                foreach ((Outing outing, _) in additions.Outings)
                {
                    writer.Put(outing);
                    put.Add(outing.Id, put.Count);
                    whose.Add(outing.PaddlerId);
                }

                // A file of which rows were left out may come again, put right.
                if (additions.RefusedRows == 0)
                    writer.RememberImport(hash, fileName);
            });
            additions = additions with
            {
                Warnings = [.. additions.Warnings,
                    .. OutingDoubts.OfImport(logbook, known.Outings, whose, put)],
            };
        }

        return additions;
    }

    private static string Refusal(string fileName, CsvAdditions additions)
    {
        const int shown = 20;
        IEnumerable<string> lines = additions.Problems.Take(shown).Select(problem => problem.ToString());
        string more = additions.Problems.Count > shown ? $"{Environment.NewLine}… and more." : "";
        return $"{Quoted.Brief(fileName, 80)}: {additions.RefusedRows:N0} {(additions.RefusedRows == 1 ? "row is" : "rows are")} wrong, " +
            $"so nothing was imported. Fix them, or import the others with --skip-bad."
            + Environment.NewLine + string.Join(Environment.NewLine, lines) + more;
    }
}
