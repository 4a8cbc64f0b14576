using System.CommandLine;
using TrialLog.Application.Files;
using TrialLog.Application.Next;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Logbook;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands;

/// <summary><c>triallog demo</c>: a sample season in a scratch file, told step by step.</summary>
internal static class DemoCommand
{
    private const string Sample = "settles.csv";

    public static Command Build(CommandFrame frame)
    {
        var command = new Command("demo", "A logbook of sample sessions in a scratch file, and its next trial card, told step by step.");
        frame.WithoutLogbook(command, _ =>
        {
            string file = Path.Combine(Directory.CreateTempSubdirectory("triallog-demo-").FullName, "demo.db");
            using LogbookFile logbook = LogbookFile.Open(file);
            Tell(frame, new Workspace(logbook, frame.ConsoleHost.Clock));
            frame.Out.WriteLine();
            Tell(frame, $"The logbook of this demo is a scratch file; look around in it, then delete it: triallog --store {file}");
        });
        return command;
    }

    private static void Tell(CommandFrame frame, Workspace workspace)
    {
        TextWriter to = frame.Out;
        int width = frame.ConsoleHost.Width;
        using (Stream sample = typeof(DemoCommand).Assembly.GetManifestResourceStream(Sample)
            ?? throw new InvalidOperationException(Sample))
            ImportCsv.From(workspace, sample, Sample, new CsvReadOptions { Today = workspace.Today });
        Chosen chosen = workspace.Choose(null, null, null);
        Paddler paddler = chosen.Paddler;
        AnalysisInput whole = workspace.Question(chosen);
        List<Outing> outings = [.. whole.Outings];

        to.WriteLine("1. Where to start");
        StartLength start = StartLength.Of(paddler);
        Tell(frame, $"{paddler.Name} (invented, as are the water and the times) paddles {chosen.Hull.Name}; the shaft of " +
            $"{chosen.Paddle.Name} can be set from {Say.Lengths(chosen.Paddle.Shortest, chosen.Paddle.Longest, paddler.Unit)}. She is " +
            $"told: {StartWords.Explain(paddler.Body, paddler.KnownLength, paddler.Unit)}");
        to.WriteLine();

        to.WriteLine("2. The first trial card, before any outing");
        Analysis first = Tuner.Analyse(whole with { Outings = [] });
        NextText.WriteCard(to, first.Card, CardReason.Of(first), paddler.Unit, width, "Next outing");
        Tell(frame, "One outing's wind and water are the same for all its pieces.");
        to.WriteLine();

        to.WriteLine("3. The first outing, as logged");
        Dictionary<Guid, Paddle> paddles = workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id);
        HistoryText.Write(to, outings[0], workspace.Logbook.Hulls().First(hull => hull.Id == outings[0].HullId), paddles, paddler.Unit);
        to.WriteLine();

        to.WriteLine("4. What the log said after each outing");
        Tell(frame, "The likely range holds your true best length 9 times in 10. Gain left is what testing could still gain on average, " +
            "if it found that length.");
        ProgressText.Write(to, Tuner.Progress(whole), first.WorthwhilePercent, paddler.Unit, width);
        to.WriteLine();

        to.WriteLine($"5. Today, after {outings.Count} outings (triallog next)");
        to.WriteLine();
        (Analysis today, GivenCard card) = NextOuting.For(workspace, chosen, CardWish.None);
        NextText.Write(to, today, card, width);
    }

    private static void Tell(CommandFrame frame, string text) => Wrapped.Write(frame.Out, text, frame.ConsoleHost.Width, "   ", 3);
}
