using System.CommandLine;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Formats;
using TrialLog.Screens.Base;

namespace TrialLog.Commands;

/// <summary>The options of <c>import</c> beyond the common ones, most of them for what a recording cannot tell.</summary>
internal sealed class RecordingOptions
{
    public Option<string?> Lengths { get; } = PaddlerCommand.Text("--lengths", "Recording: the length of each piece in order; else the open card's.", "L,L,...");

    public Option<string?> Drop { get; } = PaddlerCommand.Text("--drop", "Recording: numbers of found pieces to leave out.", "N,N,...");

    public Option<string?> Effort { get; } = PaddlerCommand.Text("--effort", "Recording: effort of the pieces, CR10.", "0..10");

    public Option<string?> Soreness { get; } = PaddlerCommand.Text("--soreness", "Recording: soreness of shoulder, elbow or back.", "0..10");

    public Option<string?> Wind { get; } = PaddlerCommand.Text("--wind", "Recording: wind, Beaufort.", "0..12");

    public Option<string?> Place { get; } = PaddlerCommand.Text("--place", "Recording: a coarse place, as you call it. Positions are never kept.", "TEXT");

    public Option<bool> Again { get; } = new("--again") { Description = "Also a file that was imported before, to bring back what was deleted since." };

    public IEnumerable<Option> All => [Again, Lengths, Drop, Effort, Soreness, Wind, Place];
}
