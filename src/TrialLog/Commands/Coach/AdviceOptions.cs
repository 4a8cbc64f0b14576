using System.CommandLine;
using TrialLog.Application.Coaching;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Coach;

/// <summary>
/// <c>triallog history --advice</c>: what was suggested, from how much data, what was paddled, how the best length moved;
/// <c>--rederive CARD</c> derives one suggestion again from the log as it was then.
/// </summary>
internal sealed class AdviceOptions
{
    private readonly Option<bool> _advice = new(
        "--advice")
    { Description = "The cards given: from how much data, what was paddled, how the best length moved." };

    private readonly Option<string?> _rederive = new("--rederive")
    {
        Description = "Derive a card again from the log as it was then, and say whether it comes out the same.",
        HelpName = "CARD",
    };

    private readonly Option<bool> _held = new(
        "--held")
    { Description = "How many of the ranges and forecasts given to the whole squad have held so far." };

    public AdviceOptions(Command history)
    {
        history.Options.Add(_held);
        history.Options.Add(_advice);
        history.Options.Add(_rederive);
    }

    public bool Asked(ParseResult parsed) => parsed.GetValue(_advice) || parsed.GetValue(_rederive) is not null;

    /// <summary>Says how the tool has done for the whole squad, if that was asked; whether it was.</summary>
    public bool ShowHeld(CommandFrame frame, ParseResult parsed, Workspace workspace)
    {
        if (!parsed.GetValue(_held))
            return false;
        HeldSoFar held = HeldSoFar.Of(workspace, workspace.Logbook.Paddlers());
        if (parsed.GetValue(frame.Json))
            JsonOutput.Write(
                frame.Out, new HeldFacts(held.Ranges, held.RangesHeld,
                    held.Ranges == 0 ? 0 : JsonOutput.Rounded(held.RangesChance / held.Ranges),
                    held.Forecasts, held.ForecastsHeld, held.ForecastsOpen));
        else
            WriteAll(frame, held.Sentences);
        return true;
    }

    public void Show(CommandFrame frame, ParseResult parsed, Workspace workspace, Paddler paddler)
    {
        Dictionary<Guid, string> hulls = workspace.Logbook.Hulls().ToDictionary(hull => hull.Id, hull => hull.Name);
        Dictionary<Guid, string> paddles = workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id, paddle => paddle.Name);
        bool json = parsed.GetValue(frame.Json);
        if (parsed.GetValue(_rederive) is { } name)
        {
            Rederived again = AdviceReview.Rederive(workspace, AdviceReview.CardNamed(workspace, paddler, name));
            if (json)
                JsonOutput.Write(frame.Out, RederivedFacts.Of(again, paddler, hulls, paddles));
            else
                AdviceText.Write(frame, again);
            return;
        }

        Guid? only = parsed.GetValue(frame.Hull) is { } hullName ? workspace.HullNamed(hullName).Id : null;
        List<NumberedAdvice> all = [
            .. AdviceReview.WithLessons(workspace, paddler).Where(advice => only is null || advice.Card.HullId == only)];
        if (json)
            JsonOutput.Write<IReadOnlyList<AdviceFacts>>(
                frame.Out, [.. all.Select(advice => AdviceFacts.Of(advice, paddler, hulls, paddles))]);
        else
        {
            AdviceText.Write(frame, workspace, all, paddler, hulls, paddles);
            WriteAll(frame, workspace.Logbook.Decisions(paddler.Id).OrderBy(decision => decision.Date)
                .Select(decision => $"{Quoted.Visible(hulls.GetValueOrDefault(decision.HullId, "?"))}: " +
                    $"{DecisionWords.Sentence(decision, paddler.Unit)}"));
        }
    }

    private static void WriteAll(CommandFrame frame, IEnumerable<string> sentences)
    {
        foreach (string sentence in sentences)
            Wrapped.Write(frame.Out, sentence, frame.ConsoleHost.Width);
    }
}
