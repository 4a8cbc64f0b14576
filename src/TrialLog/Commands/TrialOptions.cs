using System.CommandLine;
using System.Globalization;
using TrialLog.Application.Setup;
using TrialLog.Application.Text;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Commands;

/// <summary>The options for what a trial outing looks like, spelled alike for a paddler and for one card.</summary>
internal sealed class TrialOptions
{
    private readonly Option<string?>
        _pieces = PaddlerCommand.Text("--pieces", "Pieces of a trial outing, an even number from 4 to 16.", "N"),
        _distance = PaddlerCommand.Text("--distance", "Distance of a piece.", "D"),
        _minutes = PaddlerCommand.Text("--minutes", "Time on the water, warm-up and rests included.", "N"),
        _timed = PaddlerCommand.Text("--timed", "How pieces are timed: hand or watch.", "hand|watch");

    /// <summary>In the order of the help.</summary>
    public IReadOnlyList<Option<string?>> All => [_pieces, _distance, _minutes, _timed];

    /// <summary>What was given; what was not, or given as <c>none</c>, is null.</summary>
    /// <exception cref="InvalidValueException">One cannot be read, or cannot be.</exception>
    public TrialHabits Read(ParseResult parsed)
    {
        string? Given(Option<string?> option) => parsed.GetValue(option) is { } text && !Spelling.IsNone(text) ? text : null;
        return Habits.Checked(new TrialHabits
        {
            Pieces = Whole(Given(_pieces), "pieces"),
            Distance = TextForms.Distance.ReadIfAny(Given(_distance)),
            Minutes = Whole(Given(_minutes), "minutes"),
            TimedBy = TextForms.TimedBy.ReadIfAny(Given(_timed)),
        });
    }

    /// <summary>What was given as <c>none</c>.</summary>
    public PaddlerFields Cleared(ParseResult parsed)
    {
        PaddlerFields Clears(Option<string?> option, PaddlerFields field) =>
            Spelling.IsNone(parsed.GetValue(option)) ? field : PaddlerFields.None;
        return Clears(_pieces, PaddlerFields.Pieces) | Clears(_distance, PaddlerFields.Distance) | Clears(
            _minutes, PaddlerFields.Minutes) | Clears(_timed, PaddlerFields.TimedBy);
    }

    private static int? Whole(string? text, string what) => text is null ? null
        : int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number
        : throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a number of {what}.");
}
