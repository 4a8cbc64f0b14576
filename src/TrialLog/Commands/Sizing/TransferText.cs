using TrialLog.Application.Sizing;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Sizing;

/// <summary>Carried lengths as tables, one for each paddle.</summary>
internal static class TransferText
{
    public static void Write(TextWriter to, IReadOnlyList<CarriedRow> rows, IReadOnlyList<string> questions, LengthUnit unit, int width)
    {
        foreach (IGrouping<Guid, CarriedRow> paddle in rows.GroupBy(row => row.Paddle.Id))
        {
            Paddle its = paddle.First().Paddle;
            to.WriteLine();
            to.WriteLine($"{Quoted.Visible(its.Name)}: blade {Say.Quarter(its.Blade, unit)}, "
                + (its.IsFixed ? $"fixed at {Say.Quarter(its.Shortest, unit)}"
                    : $"adjustable {Say.Range(its.Shortest, its.Longest, unit)}"));
            int name = Math.Clamp(paddle.Max(row => Quoted.Brief(row.Hull.Name, 16).Length), 4, 16);
            foreach (CarriedRow row in paddle)
            {
                string likely = row.Likely is { } range ? $"{$"likely {Say.Range(range.Low, range.High, unit)}",-24}  " : "";
                string first = $"  {Quoted.Brief(row.Hull.Name, 16).PadRight(name)}  {Say.Quarter(row.Best, unit),-8}  {likely}";
                Wrapped.Write(to, row.RestsOn(unit), width, first, first.Length);
                if (row.OutOfRange(unit) is { } beyond)
                    to.WriteLine($"{new string(' ', name + 4)}out of range: {beyond}");
            }
        }

        to.WriteLine();
        Wrapped.Write(to, $"{Seats(rows, unit)} Blades differ by their length: as much more blade, as much more paddle. Both rules: " +
            $"common practice, no source.", width);
        foreach (string question in questions)
            Wrapped.Write(to, question, width, "Please check: ", 14);
        if (rows.Any(row => !row.InRange))
            to.WriteLine("Out of range: that paddle cannot be set so. " + Cautions.PastTheMark);
    }

    /// <summary>While it hurts: hull by hull and paddle by paddle the longest length that is open once it no longer does.</summary>
    public static void WriteForNow(TextWriter to, IReadOnlyList<CarriedRow> rows, LengthUnit unit)
    {
        to.WriteLine();
        to.WriteLine("When it no longer hurts, no longer than");
        foreach (CarriedRow row in rows)
            to.WriteLine($"  {(row.ForNow is { } open ? Say.Quarter(open, unit) : "none"),-8}  {Quoted.Brief(row.Hull.Name, 16)}, " +
                $"{Quoted.Brief(row.Paddle.Name, 40)}");
    }

    private static string Seats(IReadOnlyList<CarriedRow> rows, LengthUnit unit)
    {
        string inch = Say.Amount(1, unit);
        string[] measured = [.. rows.Select(row => row.Hull).DistinctBy(hull => hull.Id).Where(hull => hull.SeatHeight is not null)
            .Select(hull => $"{Quoted.Brief(hull.Name, 16)} {Say.Tenth(hull.SeatHeight!.Value, unit)}")];
        string crew = $"by crew: three seats and more {inch} longer than solo, two seats {inch} shorter";
        return measured.Length == 0
            ? $"Hulls differ {crew}; seat heights measured say more: triallog hull set NAME --seat-height L."
            : $"Hulls differ by seat height where measured ({string.Join(", ", measured)}), else {crew}.";
    }
}
