using System.CommandLine;
using TrialLog.Application.Files;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Formats;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Commands;

/// <summary>The options of <c>import</c> beyond the common ones, most of them for what a recording cannot tell.</summary>
internal sealed class RecordingOptions
{
    public Option<string?> Lengths { get; } = PaddlerCommand.Text(
        "--lengths", "Recording: the length of each piece in order; else the open card's.", "L,L,...");

    public Option<string?> Drop { get; } = PaddlerCommand.Text("--drop", "Recording: numbers of found pieces to leave out.", "N,N,...");

    public Option<string?> Keep { get; } = PaddlerCommand.Text(
        "--keep", "Recording: numbers of pieces left out that are to count.", "N,N,...");

    public Option<string[]> Split { get; } = new(
        "--split")
    { Description = "Recording: make two of a piece, cut at a time since the start or at its turn.", HelpName = "N@TIME|N@turn" };

    public Option<string[]> Join { get; } = new(
        "--join")
    { Description = "Recording: make one of a piece and the next.", HelpName = "N,M" };

    public Option<string?> Pieces { get; } = PaddlerCommand.Text(
        "--pieces", "Recording: the pieces by time since the start, each with its length.", "A..B=L,...");

    public Option<string?> As { get; } = PaddlerCommand.Text(
        "--as", "Recording: how the stretches were paddled.", RecordingWords.AllShapes);

    public Option<bool> AsShown { get; } = new("--as-shown") { Description = "Recording: what was asked is right as shown." };

    public Option<bool> Look { get; } = new("--look") { Description = "Recording: show what was found and save nothing." };

    public Option<string?> Outing { get; } = PaddlerCommand.Text("--outing", "Recording of several outings: which one, or all.", "N|all");

    public Option<bool> Over { get; } = new(
        "--over")
    { Description = "Recording: lay it over the outing of that time in the log, whose times stay." };

    public Option<bool> Beside { get; } = new(
        "--beside")
    { Description = "Recording: another outing than the one of that time in the log." };

    public Option<string?> Start { get; } = PaddlerCommand.Text(
        "--start", "Recording: when it began, where its clock is wrong.", "\"YYYY-MM-DD HH:MM\"");

    public Option<bool> EvenIfCutOff { get; } = new(
        "--even-if-cut-off")
    { Description = "Recording: take what is whole of a file whose end is missing." };

    public Option<string?> Effort { get; } = PaddlerCommand.Text(
        "--effort", "Recording: effort, CR10, of all pieces or of each in order.", "E or E,E,...");

    public Option<string?> Soreness { get; } = PaddlerCommand.Text(
        "--soreness", "Recording: soreness of shoulder, elbow or back.", "0..10");

    public Option<string?> Wind { get; } = PaddlerCommand.Text("--wind", "Recording: wind, Beaufort.", "0..12");

    public Option<string?> Place { get; } = PaddlerCommand.Text(
        "--place", "Recording: a coarse place, as you call it. Positions are never kept.", "TEXT");

    public Option<bool> Again { get; } = new(
        "--again")
    { Description = "Also a file that was imported before, to bring back what was deleted since." };

    public IEnumerable<Option> All =>
        [Again, Lengths, Pieces, Keep, Drop, Split, Join, As, AsShown, Look, Outing, Over, Beside, Start, EvenIfCutOff, Effort, Soreness,
            Wind, Place];

    /// <summary>The corrections that were typed.</summary>
    public RecordingMends Mends(ParseResult parsed) => new()
    {
        Keep = parsed.GetValue(Keep),
        Drop = parsed.GetValue(Drop),
        Split = parsed.GetValue(Split) ?? [],
        Join = parsed.GetValue(Join) ?? [],
        Pieces = parsed.GetValue(Pieces),
    };
}
