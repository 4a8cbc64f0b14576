using TrialLog.Application.Files;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Imports;

/// <summary>Asks for a file, reads it, and brings a recording's pieces up to be looked at.</summary>
internal sealed class Importing(Session session)
{
    private RecordingInHand? _inHand;

    private IShell Shell => session.Shell;

    /// <summary>Takes up the recording that was not saved yet, or asks for a file.</summary>
    public void Begin()
    {
        if (_inHand is { } unfinished)
            Look(unfinished);
        else
            session.Ask(RecentFiles.Of, recent => Shell.Lay(new QuestionSheet(
                session.Look, Shell, "Import which file?",
                "The path of a recording (GPX, TCX or FIT, also gzipped) or of a CSV, such as ~/Downloads/morning.fit. Of a recording " +
                    "nothing is kept but its pieces: no positions.", "",
                typed => string.IsNullOrWhiteSpace(typed) ? "Type the path of a file." : FileToImport.Problem(FileToImport.Path(typed)),
                typed => Read(FileToImport.Path(typed)))
            { Completions = PathCompletion.Of, Recent = recent }));
    }

    private void Read(string path)
    {
        string name = Path.GetFileName(path);
        session.PutLatest("recent-files", workspace => RecentFiles.Remember(workspace, path));
        var sheet = new ReadingSheet(session.Look, Shell, name, (rows, stop) =>
        {
            using FileStream stream = FileToImport.Open(path);
            return FileToImport.LooksLikeRecording(stream) ? Recording(stream, name, stop) : Csv(stream, name, rows, stop);
        });
        Shell.Lay(sheet);
        sheet.Begin();
    }

    private Action Recording(FileStream stream, string name, CancellationToken stop)
    {
        RecordedOuting recording = ImportRecording.Read(session.Workspace, stream, name);
        stop.ThrowIfCancellationRequested();
        return () => Look(_inHand = new RecordingInHand(session, recording));
    }

    private Action Csv(FileStream stream, string name, IProgress<int> rows, CancellationToken stop)
    {
        var options = new CsvReadOptions
        {
            Today = session.Workspace.Today,
            Unit = session.State.Unit,
            Paddler = session.Chosen?.Paddler.Name,
            Paddle = session.Chosen?.Paddle.Name,
        };
        CsvAdditions additions = ImportCsv.From(session.Workspace, stream, name, options, rowsRead: rows, stop: stop);
        return () =>
        {
            session.LookForChanges();
            Shell.Say(string.Join(" ", additions.Warnings.Prepend(additions.Says())), additions.AddsNothing ? Tone.Plain : Tone.Best);
        };
    }

    private void Look(RecordingInHand inHand) => Shell.Lay(new RecordingSheet(session, inHand, () => _inHand = null));
}
