using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Coaching;

/// <summary>What the tool said of one search after so many outings.</summary>
/// <param name="Outings">How many outings it rested on.</param>
/// <param name="Low">Lower end of the likely range.</param>
/// <param name="High">Upper end of it.</param>
/// <param name="Stop">Whether it said that it is time to stop.</param>
/// <param name="ToGo">The outings to go; null where no forecast was given.</param>
internal sealed record SaidThen(int Outings, Length Low, Length High, bool Stop, (int Median, int Low, int High)? ToGo);

/// <summary>
/// The tool's own report card, from the log: how many of its likely ranges and forecasts have held so far. Each is taken as it was said:
/// the words of the card that was given then, and where none was, the log as it stood after that outing, without what others taught since.
/// A range is judged by the best length known now, and by the chance that it holds the true one by all that the log knows now, since nobody
/// knows the true best length; a forecast by the outing after which it was first said that it is time to stop. A forecast supposes that the
/// cards are paddled: it is judged where a card gave it, and none is worked out afterwards for outings that followed no card.
/// </summary>
/// <param name="Ranges">Ranges said with at least one outing since.</param>
/// <param name="RangesHeld">Those that hold the best length known now.</param>
/// <param name="RangesChance">How many of them hold the true best length by all that the log knows now, on average.</param>
/// <param name="Forecasts">Forecasts of outings to go that can be judged: the search ended since, or went on for longer.</param>
/// <param name="ForecastsHeld">Those in whose range it ended.</param>
/// <param name="ForecastsOpen">Forecasts that cannot be judged yet.</param>
internal sealed record HeldSoFar(int Ranges, int RangesHeld, double RangesChance, int Forecasts, int ForecastsHeld, int ForecastsOpen)
{
    /// <summary>That of some paddlers' searches.</summary>
    public static HeldSoFar Of(Workspace workspace, IEnumerable<Paddler> paddlers)
    {
        Dictionary<Guid, Hull> hulls = workspace.Logbook.Hulls().ToDictionary(hull => hull.Id);
        Dictionary<Guid, Paddle> paddles = workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id);
        List<(AnalysisInput Question, IReadOnlyList<GivenCard> Cards)> searches = [];
        foreach (Paddler paddler in paddlers)
        {
            IReadOnlyList<Outing> outings = workspace.Logbook.Outings(paddler.Id);
            ILookup<(Guid, Guid), GivenCard> cards = workspace.Logbook.Cards(paddler.Id).ToLookup(card => (card.HullId, card.PaddleId));
            List<(Guid Hull, Guid Paddle)> looked = [.. cards.Select(search => search.Key)];
            if (outings.Count > 0 && UsualChoice.Hull(workspace, paddler, outings) is { } usual
                && UsualChoice.Paddles(workspace, paddler, usual, outings) is [var only])
                looked.Add((usual.Id, only.Id));
            foreach ((Guid hull, Guid paddle) in looked.Distinct())
                if (hulls.TryGetValue(hull, out Hull? its) && paddles.TryGetValue(paddle, out Paddle? own) && !own.IsFixed)
                    searches.Add((workspace.Question(new Chosen(paddler, its, own), outings), [.. cards[(hull, paddle)]]));
        }

        return searches.AsParallel().AsOrdered()
            .Select(search => (Said: Said(search.Cards, Tuner.Progress(search.Question with { Squad = null })),
                Now: Tuner.Analyse(search.Question)))
            .AsEnumerable().Aggregate(new HeldSoFar(0, 0, 0, 0, 0, 0), (total, search) => total.With(search.Said, search.Now));
    }

    /// <summary>What was said after each outing: by the card where one was given, else by the log as it stood.</summary>
    public static IReadOnlyList<SaidThen> Said(IEnumerable<GivenCard> cards, IEnumerable<ProgressPoint> replayed)
    {
        SortedDictionary<int, SaidThen> said = [];
        foreach (ProgressPoint point in replayed)
            said[point.Outings] = new(point.Outings, point.LikelyLow, point.LikelyHigh, point.DiminishingReturns, null);
        foreach (GivenCard card in cards.OrderBy(card => card.GivenAt))
            said[card.Outings] = new(card.Outings, card.LikelyLow, card.LikelyHigh, card.DiminishingReturns, card.OutingsToGo);
        return [.. said.Values];
    }

    /// <summary>With what was said of one search, judged by what the log says of it now.</summary>
    public HeldSoFar With(IReadOnlyList<SaidThen> said, Analysis now)
    {
        List<SaidThen> before = [.. said.Where(then => then.Outings < now.Outings).OrderBy(then => then.Outings)];
        int? ended = before.Where(then => then.Stop).Select(then => (int?)then.Outings).FirstOrDefault()
            ?? (now.DiminishingReturns ? now.Outings : null);
        HeldSoFar all = this with
        {
            Ranges = Ranges + before.Count,
            RangesHeld = RangesHeld + before.Count(then => then.Low <= now.Best.Length && now.Best.Length <= then.High),
            RangesChance = RangesChance + before.Sum(then => Chance(now.Best.Probabilities, then)),
        };
        foreach (SaidThen then in before.Where(then => !then.Stop))
        {
            if (then.ToGo is not { } told)
                continue;
            bool endless = told.High >= OutingsToGo.Most;
            if (ended is { } end && end >= then.Outings)
                all = all
                    with
                {
                    Forecasts = all.Forecasts + 1,
                    ForecastsHeld = all.ForecastsHeld
                    + (end - then.Outings >= told.Low && (endless || end - then.Outings <= told.High) ? 1 : 0)
                };
            else if (!endless && now.Outings - then.Outings > told.High)
                all = all with { Forecasts = all.Forecasts + 1 };
            else
                all = all with { ForecastsOpen = all.ForecastsOpen + 1 };
        }

        return all;
    }

    // The chance of each setting spread evenly halfway to the next ones, since a range ends between settings.
    private static double Chance(IReadOnlyList<StepProbability> settings, SaidThen said)
    {
        double held = 0, low = said.Low.Inches, high = said.High.Inches;
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
        Ranges == 0 ? "No likely range can be judged yet: there is none from before the last outing."
            : $"Of {Say.Count(Ranges, "likely range")} from before the last outing, as said then, {RangesHeld} hold" +
                $"{(RangesHeld == 1 ? "s" : "")} the " +
                $"best length known now; by all that the log knows now, {Say.Chance(RangesChance / Ranges)} hold the true one (9 in 10 " +
                $"should). Nobody knows the true one.",
        Forecasts == 0
            ? "No forecast of outings to go can be judged yet" +
                $"{(ForecastsOpen == 0 ? ": no card has given one" : $"; {ForecastsOpen} wait")}."
            : $"Of {Say.Count(Forecasts, "forecast")} of outings to go, {ForecastsHeld} came true (8 in 10 " +
                $"should){(ForecastsOpen == 0 ? "" : $"; {ForecastsOpen} wait")}.",
    ];
}
