using System.Text;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>How columns are spelled: lower case, words joined by underscores, the unit last.</summary>
internal static class CsvColumns
{
    /// <summary>Every column, in the order in which it is written.</summary>
    public static readonly IReadOnlyList<CsvColumn> All = Enum.GetValues<CsvColumn>();

    /// <summary>Columns about a hull, stated on one row of that hull.</summary>
    public static readonly IReadOnlyList<CsvColumn> OfHull = [CsvColumn.HullCrew, CsvColumn.SeatHeightIn];

    /// <summary>Columns about a paddle, stated on one row of that paddle.</summary>
    public static readonly IReadOnlyList<CsvColumn> OfPaddle =
        [CsvColumn.BladeLengthIn, CsvColumn.BladeAreaIn2, CsvColumn.Steering, CsvColumn.PaddleShortestIn, CsvColumn.PaddleLongestIn,
            CsvColumn.PaddleStepIn, CsvColumn.Owner];

    /// <summary>Columns of body measures.</summary>
    public static readonly IReadOnlyList<(CsvColumn Column, BodyMeasure Measure)> OfBody =
    [
        (CsvColumn.SeatedReachIn, BodyMeasure.SeatedReach), (CsvColumn.StatureIn, BodyMeasure.Stature),
        (CsvColumn.SittingShoulderHeightIn, BodyMeasure.SittingShoulderHeight), (CsvColumn.ShoulderElbowIn, BodyMeasure.ShoulderElbow),
        (CsvColumn.ElbowGripIn, BodyMeasure.ElbowGrip), (CsvColumn.EyeHeightIn, BodyMeasure.EyeHeight),
        (CsvColumn.ShoulderBreadthIn, BodyMeasure.ShoulderBreadth), (CsvColumn.ArmSpanIn, BodyMeasure.ArmSpan),
        (CsvColumn.OverheadReachIn, BodyMeasure.OverheadReach), (CsvColumn.HandLengthIn, BodyMeasure.HandLength),
        (CsvColumn.PalmLengthIn, BodyMeasure.PalmLength),
    ];

    /// <summary>Columns about a paddler, stated on one row of that paddler.</summary>
    public static readonly IReadOnlyList<CsvColumn> OfPaddler =
    [
        CsvColumn.PaddlerUnit, CsvColumn.SwapsOnWater, CsvColumn.WorthwhilePct, CsvColumn.KnownLengthIn,
        CsvColumn.GoalHull, CsvColumn.GoalDistanceM, CsvColumn.GoalTime,
        CsvColumn.TrialPieces, CsvColumn.TrialDistanceM, CsvColumn.TrialMinutes, CsvColumn.TrialTimed, CsvColumn.TrialPricePct,
        .. OfBody.Select(body => body.Column),
    ];

    /// <summary>Columns that a file must have; any one of a group will do.</summary>
    public static readonly IReadOnlyList<IReadOnlyList<CsvColumn>> Required =
    [
        [CsvColumn.Date], [CsvColumn.Hull], [CsvColumn.LengthIn, CsvColumn.LengthCm],
        [CsvColumn.DistanceM, CsvColumn.DistanceKm], [CsvColumn.Time, CsvColumn.TimeS],
    ];

    private static readonly string[] Names = [.. All.Select(Spell)];

    private static readonly Dictionary<string, CsvColumn> ByName =
        All.ToDictionary(column => Names[(int)column], StringComparer.OrdinalIgnoreCase);

    /// <summary>The column's name in a file: <c>heart_rate</c>.</summary>
    public static string Name(this CsvColumn column) => Names[(int)column];

    /// <summary>The column of that name; case does not matter, nor whether words are joined by underscores, hyphens or blanks.</summary>
    public static CsvColumn? Find(string name) =>
        ByName.TryGetValue(name.Trim().Replace(' ', '_').Replace('-', '_'), out CsvColumn column) ? column : null;

    private static string Spell(CsvColumn column)
    {
        var name = new StringBuilder();
        foreach (char c in column.ToString())
        {
            if (char.IsUpper(c) && name.Length > 0)
                name.Append('_');
            name.Append(char.ToLowerInvariant(c));
        }

        return name.ToString();
    }
}
