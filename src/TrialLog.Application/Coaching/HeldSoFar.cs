using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Coaching;

/// <summary>
/// The tool's own report card, from the log: how many of the likely ranges and forecasts that it gave with its cards have held so far. A
/// range is judged by the best length known now, and by the chance that it holds the true one by all that the log knows now, since nobody
/// knows the true best length; a forecast by the outing after which it was time to stop.
/// </summary>
/// <param name="Ranges">Ranges given with at least one outing since.</param>
/// <param name="RangesHeld">Those that hold the best length known now.</param>
/// <param name="RangesChance">How many of them hold the true best length by all that the log knows now, on average.</param>
/// <param name="Forecasts">Forecasts of outings to go that can be judged: the search ended since, or went on for longer.</param>
/// <param name="ForecastsHeld">Those in whose range it ended.</param>
/// <param name="ForecastsOpen">Forecasts that cannot be judged yet.</param>
internal sealed record HeldSoFar(int Ranges, int RangesHeld, double RangesChance, int Forecasts, int ForecastsHeld, int ForecastsOpen)
{
    /// <summary>That of some paddlers' cards.</summary>
    public static HeldSoFar Of(Workspace workspace, IEnumerable<Paddler> paddlers)
    {
        var total = new HeldSoFar(0, 0, 0, 0, 0, 0);
        Dictionary<Guid, Hull> hulls = workspace.Logbook.Hulls().ToDictionary(hull => hull.Id);
        Dictionary<Guid, Paddle> paddles = workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id);
        foreach (Paddler paddler in paddlers)
        {
            foreach (IGrouping<(Guid Hull, Guid Paddle),
                GivenCard> cards in workspace.Logbook.Cards(paddler.Id).GroupBy(card => (card.HullId, card.PaddleId)))
            {
                if (hulls.TryGetValue(cards.Key.Hull, out Hull? hull) && paddles.TryGetValue(cards.Key.Paddle, out Paddle? paddle))
                    total = total.With([.. cards], Tuner.Analyse(workspace.Question(new Chosen(paddler, hull, paddle))));
            }
        }

        return total;
    }

    /// <summary>With the cards of one search, judged by what the log says of it now.</summary>
    public HeldSoFar With(IReadOnlyList<GivenCard> cards, Analysis now)
    {
        List<GivenCard> before = [.. cards.Where(card => card.Outings < now.Outings).OrderBy(card => card.Outings)];
        int? ended = before.Where(card => card.DiminishingReturns).Select(card => (int?)card.Outings).FirstOrDefault()
            ?? (now.DiminishingReturns ? now.Outings : null);
        HeldSoFar all = this with
        {
            Ranges = Ranges + before.Count,
            RangesHeld = RangesHeld + before.Count(card => card.LikelyLow <= now.Best.Length && now.Best.Length <= card.LikelyHigh),
            RangesChance = RangesChance + before.Sum(card => Chance(now.Best.Probabilities, card)),
        };
        foreach (GivenCard card in before.Where(card => !card.DiminishingReturns))
        {
            if (card.OutingsToGo is not { } told)
                continue;
            bool endless = told.High >= OutingsToGo.Most;
            if (ended is { } end && end >= card.Outings)
                all = all
                    with
                {
                    Forecasts = all.Forecasts + 1,
                    ForecastsHeld = all.ForecastsHeld
                    + (end - card.Outings >= told.Low && (endless || end - card.Outings <= told.High) ? 1 : 0)
                };
            else if (!endless && now.Outings - card.Outings > told.High)
                all = all with { Forecasts = all.Forecasts + 1 };
            else
                all = all with { ForecastsOpen = all.ForecastsOpen + 1 };
        }

        return all;
    }

    // The chance of each setting spread evenly halfway to the next ones, since a range ends between settings.
    private static double Chance(IReadOnlyList<StepProbability> settings, GivenCard card)
    {
        double held = 0, low = card.LikelyLow.Inches, high = card.LikelyHigh.Inches;
        for (int at = 0; at < settings.Count; at++)
        {
            double here = settings[at].Length.Inches;
            double from = at == 0 ? here : (here + settings[at - 1].Length.Inches) / 2;
            double to = at == settings.Count - 1 ? here : (here + settings[at + 1].Length.Inches) / 2;
            double within = to > from ? Math.Max(0, Math.Min(to, high) - Math.Max(from, low)) / (to - from)
                : low <= here && here <= high ? 1 : 0;
            held += within * settings[at].Probability;
        }

        return held;
    }

    /// <summary>In sentences.</summary>
    public IReadOnlyList<string> Sentences =>
    [
        Ranges == 0 ? "No likely range can be judged yet: none was given before the last outing."
            : $"Of {Say.Count(Ranges, "likely range")} given before the last outing, {RangesHeld} hold{(RangesHeld == 1 ? "s" : "")} the " +
                $"best length known now; by all that the log knows now, {Say.Chance(RangesChance / Ranges)} hold the true one (9 in 10 " +
                $"should). Nobody knows the true one.",
        Forecasts == 0 ? $"No forecast of outings to go can be judged yet{(ForecastsOpen == 0 ? "" : $"; {ForecastsOpen} wait")}."
            : $"Of {Say.Count(Forecasts, "forecast")} of outings to go, {ForecastsHeld} came true (8 in 10 " +
                $"should){(ForecastsOpen == 0 ? "" : $"; {ForecastsOpen} wait")}.",
    ];
}
