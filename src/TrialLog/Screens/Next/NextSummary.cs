using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Screens.Base;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Next;

/// <summary>What the screen says of the search, from an analysis or, until there is one, from the card given last.</summary>
internal sealed record NextSummary(
    TrialCard Card, string Best, string Likely, string GainLeft, string ToGo, string RestsOn, string Verdict, bool Stop, IReadOnlyList<string> Cautions)
{
    /// <summary>The facts; null while there is neither an analysis nor a card.</summary>
    public static NextSummary? Of(Session session, Chosen chosen, Analysis? analysis)
    {
        LengthUnit unit = session.Unit;
        if (analysis is not null)
        {
            return new NextSummary(
                analysis.Card,
                Say.Length(analysis.Best.Length, unit),
                Say.Range(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit),
                Answer.ShortGainLeft(analysis),
                Say.OutingsToGo(analysis.OutingsToGo),
                Basis(analysis),
                Application.Wording.Verdict.Of(analysis),
                analysis.DiminishingReturns,
                [.. Application.Wording.Cautions.Of(analysis), .. Warnings.BesideTheVerdict(analysis)]);
        }

        return OpenCard.Of(session.Workspace, chosen) is not { } given ? null : new NextSummary(
            given.Card,
            Say.Length(given.Best, unit),
            Say.Range(given.LikelyLow, given.LikelyHigh, unit),
            Say.Percent(given.GainLeftPercent),
            "",
            $"as of {given.GivenAt.ToLocalTime():yyyy-MM-dd}",
            given.Reason,
            given.DiminishingReturns,
            []);
    }

    /// <summary>Everything behind the card, in paragraphs; the cautions first while the paddler is sore.</summary>
    public static string Why(Analysis analysis, bool sore)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        List<string> text =
        [
            CardReason.Of(analysis),
            "# What the log says",
            Application.Wording.Verdict.Of(analysis),
            .. Answer.Figures(analysis).Select(figure => $"{figure.Label}: {figure.Value}."),
            $"From {Answer.Basis(analysis)}.",
        ];
        IEnumerable<string> cautions = Application.Wording.Cautions.Of(analysis).Select(caution => "! " + caution);
        if (sore)
            text.InsertRange(0, [.. cautions, "# The card, when it no longer hurts"]);
        text.Add("# Warnings");
        text.AddRange(analysis.Checks.Count == 0 ? [Warnings.None] : Warnings.Of(analysis).Select(warning => "! " + warning));
        if (!sore)
            text.AddRange(["# Cautions", .. cautions]);
        return string.Join('\n', text.Select((line, index) => line.StartsWith('#') && index > 0 ? "\n" + line : line));
    }

    private static string Basis(Analysis analysis) => analysis.Pieces == 0
        ? "from the start length alone; no piece counts yet"
        : $"from {Count(analysis.Outings, "outing")} and {Count(analysis.Pieces, "piece")}";

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
