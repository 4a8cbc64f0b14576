using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// A log so odd that the model cannot weigh it: its posterior lies outside the grid it is added up on. Better no answer than a wrong one.
/// </summary>
/// <param name="what">The quantity whose grid is too small.</param>
public sealed class UnweighableLogException(string what) : InvalidValueException(
    $"This log cannot be weighed: {what} would have to lie beyond anything the model looks at. Look for lengths, times or distances " +
        $"typed wrong, and leave those pieces out.");
