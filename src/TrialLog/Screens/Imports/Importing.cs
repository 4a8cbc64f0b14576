using TrialLog.Application.Files;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Imports;

/// <summary>Asks for files, reads them, and brings the pieces of each recorded outing up to be looked at.</summary>
internal sealed class Importing(Session session)
{
    private readonly List<RecordingInHand> _inHand = [];
    private IReadOnlyList<string> _notRead = [];

    private IShell Shell => session.Shell;

    /// <summary>Takes up the recordings that were not saved yet, or asks for files.</summary>
    public void Begin()
    {
        if (_inHand.Count > 0)
            Show();
        else
            session.Ask(RecentFiles.Of, recent => Shell.Lay(new QuestionSheet(
                session.Look, Shell, "Import which file?",
                "The path of a recording (GPX, TCX or FIT, also gzipped) or of a CSV, such as ~/Downloads/morning.fit; several apart by " +
                    "semicolons, or with a star, as in ~/Downloads/*.fit. Of a recording nothing is kept but its pieces: no positions.", "",
                Problem, typed => Read(FileToImport.Several(typed)))
            { Completions = PathCompletion.OfLast, Recent = recent }));
    }

    private static string? Problem(string typed) => FileToImport.Several(typed) is { Count: > 0 } paths
        ? paths.Select(FileToImport.Problem).FirstOrDefault(problem => problem is not null) : "Type the path of a file.";

    private void Read(IReadOnlyList<string> paths)
    {
        string name = paths.Count == 1 ? Path.GetFileName(paths[0]) : Say.Count(paths.Count, "file");
        var sheet = new ReadingSheet(session.Look, Shell, name, (rows, stop) => ReadAll(paths, rows, stop));
        Shell.Lay(sheet);
        sheet.Begin();
    }

    // Of several files one that cannot be read does not keep the others from being looked at.
    private Action ReadAll(IReadOnlyList<string> paths, IProgress<int> rows, CancellationToken stop)
    {
        List<RecordingInHand> found = [];
        List<string> added = [], notRead = [];
        List<Action<Workspace>> remember = [];
        foreach (string path in paths)
        {
            string name = Path.GetFileName(path);
            try
            {
                using FileStream stream = FileToImport.Open(path);
                bool recorded = FileToImport.LooksLikeRecording(stream);
                remember.Add(recorded ? workspace => RecentFiles.RememberFolderOf(workspace, path)
                    : workspace => RecentFiles.Remember(workspace, path));
                // At once, since a wrong row of a CSV, put right, comes again.
                Action<Workspace>[] latest = [.. remember.AsEnumerable().Reverse()];
                session.PutLatest("recent-files", workspace => Array.ForEach(latest, put => put(workspace)));
                if (recorded)
                    found.AddRange(ImportRecording.ReadAll(session.Workspace, stream, name, evenIfCutOff: true)
                        .Select(outing => new RecordingInHand(session, outing)));
                else
                    added.Add(Csv(stream, name, rows, stop));
            }
            catch (Exception failure) when (paths.Count > 1 && failure is RequestException or InvalidValueException)
            {
                notRead.Add(failure.Message.Split('\n', 2)[0].Trim());
            }

            // What a CSV before it added stands, so that it is told.
            if (added.Count == 0)
                stop.ThrowIfCancellationRequested();
            else if (stop.IsCancellationRequested)
                break;
        }

        return () =>
        {
            _inHand.AddRange(found);
            _notRead = notRead;
            if (added.Count > 0)
                session.Change(_ => { }, Told);
            else
                Told();
        };

        void Told()
        {
            if (found.Count > 0)
                Show();
            if (added.Count + notRead.Count > 0 && found.Count < 2)
                Shell.Say(string.Join(" ", added.Concat(notRead)), notRead.Count > 0 ? Tone.Problem : Tone.Best);
        }
    }

    private string Csv(FileStream stream, string name, IProgress<int> rows, CancellationToken stop)
    {
        var options = new CsvReadOptions
        {
            Today = session.Workspace.Today,
            Unit = session.State.Unit,
            Paddler = session.Chosen?.Paddler.Name,
            Paddle = session.Chosen?.Paddle.Name,
        };
        CsvAdditions additions = ImportCsv.From(session.Workspace, stream, name, options, rowsRead: rows, stop: stop);
        return string.Join(" ", additions.Warnings.Prepend(additions.Says()));
    }

    private void Show()
    {
        if (_inHand is [var only])
            Look(only);
        else
            Shell.Lay(new RecordingsSheet(session, _inHand, _notRead, Look, Leave));
    }

    private void Look(RecordingInHand inHand) => Shell.Lay(new RecordingSheet(
        session, inHand,
        done: () =>
        {
            _inHand.Remove(inHand);
            Next();
        },
        leave: () =>
        {
            // Of several it stays among those to be looked at.
            if (_inHand.Count == 1)
                _inHand.Clear();
            Next();
        },
        isOneOfSeveral: _inHand.Count > 1));

    private void Next()
    {
        if (_inHand.Count > 0)
            Shell.Lay(new RecordingsSheet(session, _inHand, _notRead, Look, Leave));
        else
            Shell.Lift();
    }

    private void Leave()
    {
        _inHand.Clear();
        Shell.Lift();
        Shell.Say("Left; nothing more was saved.");
    }
}
