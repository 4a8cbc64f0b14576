using System.CommandLine;
using TrialLog.Commands.Json;
using TrialLog.Domain;
using TrialLog.UseCases.Coach;

namespace TrialLog.Commands.Coach;

/// <summary>
/// <c>triallog history --advice</c>: what was suggested, from how much data, what was paddled, how the best length moved;
/// <c>--rederive CARD</c> derives one suggestion again from the log as it was then.
/// </summary>
internal sealed class AdviceOptions
{
    private readonly Option<bool> _advice = new("--advice") { Description = "The cards given: from how much data, what was paddled, how the best length moved." };

    private readonly Option<string?> _rederive = new("--rederive")
    {
        Description = "Derive a card again from the log as it was then, and say whether it comes out the same.",
        HelpName = "CARD",
    };

    public AdviceOptions(Command history)
    {
        history.Options.Add(_advice);
        history.Options.Add(_rederive);
    }

    public bool Asked(ParseResult parsed) => parsed.GetValue(_advice) || parsed.GetValue(_rederive) is not null;

    public void Show(CommandFrame frame, ParseResult parsed, UseCases.Desk desk, Paddler paddler)
    {
        Dictionary<Guid, string> hulls = desk.Logbook.Hulls().ToDictionary(hull => hull.Id, hull => hull.Name);
        Dictionary<Guid, string> paddles = desk.Logbook.Paddles().ToDictionary(paddle => paddle.Id, paddle => paddle.Name);
        bool json = parsed.GetValue(frame.Json);
        if (parsed.GetValue(_rederive) is { } name)
        {
            Rederived again = AdviceReview.Rederive(desk, AdviceReview.CardNamed(desk, paddler, name));
            if (json)
                Facts.Write(frame.Out, RederivedFacts.Of(again, paddler, hulls, paddles));
            else
                AdviceText.Write(frame, again);
            return;
        }

        Guid? only = parsed.GetValue(frame.Hull) is { } hullName ? desk.HullNamed(hullName).Id : null;
        List<NumberedAdvice> all = [.. AdviceReview.Of(desk, paddler).Where(advice => only is null || advice.Card.HullId == only)];
        if (json)
            Facts.Write<IReadOnlyList<AdviceFacts>>(frame.Out, [.. all.Select(advice => AdviceFacts.Of(advice, paddler, hulls, paddles))]);
        else
            AdviceText.Write(frame, desk, all, paddler, hulls, paddles);
    }
}
