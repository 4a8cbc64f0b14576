using System.Globalization;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Coaching;

/// <summary>A card of the history, numbered in the order given.</summary>
/// <param name="Number">From 1, among the paddler's cards.</param>
/// <param name="Advice">The card and what was paddled by it.</param>
/// <param name="MovedInches">Best length known then, less that of the card before for the same hull and paddle; null for the first.</param>
internal sealed record NumberedAdvice(int Number, Advice Advice, double? MovedInches)
{
    /// <summary>What the outing that followed the card taught; null where none followed, or it does not count.</summary>
    public Lesson? Lesson { get; init; }

    public GivenCard Card => Advice.Card;
}

/// <summary>What an outing taught about the best length.</summary>
/// <param name="Before">Best length known before it.</param>
/// <param name="After">Best length known after it.</param>
/// <param name="Percent">What going from the one to the other should gain, percent of speed.</param>
/// <param name="Seconds">The same over their race.</param>
internal sealed record Lesson(Length Before, Length After, double Percent, double Seconds)
{
    /// <summary>In a sentence: <c>This outing moved the best length from 49¾ to 49½ in, worth 3 s over the 12 km.</c></summary>
    public string InWords(Paddler paddler, Voice voice) => Before == After
        ? $"This outing left the best length at {Say.Length(After, paddler.Unit)}."
        : $"This outing moved the best length from {Say.Length(Before, paddler.Unit)} to {Say.Length(After, paddler.Unit)}, worth " +
            $"{Say.Seconds(Seconds)} {Say.OverTheRace(paddler, voice)} on average.";
}

/// <summary>A suggestion, derived anew from the log as it was when the card was given.</summary>
/// <param name="Given">The card as it was given.</param>
/// <param name="Again">What the log as it was then says now.</param>
internal sealed record Rederived(NumberedAdvice Given, Analysis Again)
{
    // A card is kept to the last digit; what is told of it is compared as it is told.
    private const double PercentToldTo = 0.005;

    /// <summary>Each thing that differs, with what was given and what comes out now.</summary>
    public IReadOnlyList<(string What, string Given, string Again)> Differences { get; } = Compare(Given.Card, Again);

    public bool Same => Differences.Count == 0;

    private static List<(string, string, string)> Compare(GivenCard given, Analysis again)
    {
        LengthUnit unit = again.Paddler.Unit;
        string Lengths(TrialCard card) => string.Join(", ", card.Lengths.Select(length => length.ToText(unit)));
        string Plan(TrialCard card) => $"{card.Distance}, effort {card.Effort}, {card.Rest} between";
        var all = new List<(string What, string Given, string Again, bool Same)>
        {
            ("lengths", Lengths(given.Card), Lengths(again.Card), given.Card.Lengths.SequenceEqual(again.Card.Lengths)),
            ("distance, effort and rest", Plan(given.Card), Plan(again.Card),
                (given.Card.Distance, given.Card.Effort, given.Card.Rest) == (again.Card.Distance, again.Card.Effort, again.Card.Rest)),
            ("best length", given.Best.ToText(unit), again.Best.Length.ToText(unit), given.Best == again.Best.Length),
            ("likely range", Say.Range(given.LikelyLow, given.LikelyHigh, unit),
                Say.Range(again.Best.LikelyLow, again.Best.LikelyHigh, unit),
                (given.LikelyLow, given.LikelyHigh) == (again.Best.LikelyLow, again.Best.LikelyHigh)),
            ("gain left", Say.Percent(given.GainLeftPercent), Say.Percent(again.GainLeftPercent),
                Math.Abs(given.GainLeftPercent - again.GainLeftPercent) < PercentToldTo),
            ("diminishing returns", given.DiminishingReturns ? "yes" : "no", again.DiminishingReturns ? "yes" : "no",
                given.DiminishingReturns == again.DiminishingReturns),
            ("data", $"{given.Outings} outings, {given.Pieces} pieces", $"{again.Outings} outings, {again.Pieces} pieces",
                (given.Outings, given.Pieces) == (again.Outings, again.Pieces)),
        };
        return [.. all.Where(one => !one.Same).Select(one => (one.What, one.Given, one.Again))];
    }
}

/// <summary>What was suggested, from how much data, what was paddled, and how the best length moved.</summary>
internal static class AdviceReview
{
    /// <summary>The cards with what the outings that followed them taught.</summary>
    public static IReadOnlyList<NumberedAdvice> WithLessons(Workspace workspace, Paddler paddler)
    {
        var known = new Dictionary<(Guid, Guid), IReadOnlyDictionary<Guid, Lesson>>();
        return Of(workspace, paddler,
            card => known.TryGetValue((card.HullId, card.PaddleId), out IReadOnlyDictionary<Guid, Lesson>? found) ? found
            : known[(card.HullId, card.PaddleId)] = Lessons(workspace, paddler, card));
    }

    private static IReadOnlyDictionary<Guid, Lesson> Lessons(Workspace workspace, Paddler paddler, GivenCard card)
    {
        if (workspace.Logbook.Hulls().FirstOrDefault(hull => hull.Id == card.HullId) is not { } hull
            || workspace.Logbook.Paddles().FirstOrDefault(paddle => paddle.Id == card.PaddleId) is not { } paddle)
            return new Dictionary<Guid, Lesson>();
        AnalysisInput question = workspace.Question(new Chosen(paddler, hull, paddle));
        double goal = Tuner.Analyse(question).GoalSeconds;
        IReadOnlyList<ProgressPoint> points = Tuner.Progress(question);
        return points.Skip(1).Zip(points).Where(pair => pair.First.OutingId is not null)
            .ToDictionary(pair => pair.First.OutingId!.Value,
                pair =>
                new Lesson(pair.Second.Best, pair.First.Best, pair.First.TaughtPercent,
                goal * (1 - Math.Exp(-pair.First.TaughtPercent / 100))));
    }

    public static IReadOnlyList<NumberedAdvice> Of(Workspace workspace, Paddler paddler) => Of(workspace, paddler, null);

    private static List<NumberedAdvice> Of(
        Workspace workspace, Paddler paddler, Func<GivenCard, IReadOnlyDictionary<Guid, Lesson>>? lessons)
    {
        var before = new Dictionary<(Guid, Guid), Length>();
        var all = new List<NumberedAdvice>();
        foreach (Advice advice in AdviceHistory.Of(
            workspace.Logbook.Cards(paddler.Id), workspace.Logbook.Outings(paddler.Id), workspace.DayOf))
        {
            GivenCard card = advice.Card;
            Lesson? lesson = advice.Paddled is { } paddled && lessons is not null ? lessons(card).GetValueOrDefault(paddled.Id) : null;
            all.Add(
                new NumberedAdvice(all.Count + 1, advice, before.TryGetValue((card.HullId, card.PaddleId), out Length last)
                ? card.Best.InchesMoreThan(last) : null)
                { Lesson = lesson });
            before[(card.HullId, card.PaddleId)] = card.Best;
        }

        return all;
    }

    /// <summary>The card of that number or id; the beginning of an id will do.</summary>
    public static NumberedAdvice CardNamed(Workspace workspace, Paddler paddler, string name)
    {
        IReadOnlyList<NumberedAdvice> all = Of(workspace, paddler);
        if (all.Count == 0)
            throw new RequestException($"{paddler.Name} was given no card yet; see: triallog next");
        string plain = name.Trim();
        List<NumberedAdvice> found = int.TryParse(plain, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && number <= all.Count
            ? [.. all.Where(one => one.Number == number)]
            : [.. all.Where(one => plain.Length >= 8 && one.Card.Id.ToString("D").StartsWith(plain, StringComparison.OrdinalIgnoreCase))];
        return found.Count switch
        {
            1 => found[0],
            0 => throw new RequestException(
                $"There is no card “{Quoted.Brief(name)}”; the cards are numbered 1 to {all.Count}. See: triallog history --advice"),
            _ => throw new RequestException(
                $"“{Quoted.Brief(name)}” begins the ids of {found.Count} cards; give more of it, or the card's number."),
        };
    }

    /// <summary>Derives a suggestion again from the log as it was when the card was given.</summary>
    /// <exception cref="RequestException">The log as it was then is not known here.</exception>
    public static Rederived Rederive(Workspace workspace, NumberedAdvice given)
    {
        GivenCard card = given.Card;
        if (card.AsOfChange < 1 || card.AsOfChange > workspace.Logbook.LastChange)
            throw new RequestException(
                $"Card {given.Number} was given from another copy of the log, so the log as it was then is not here; ask whoever gave it.");
        LogbookSnapshot then = workspace.Logbook.AsOf(card.AsOfChange);
        if (then.Paddlers.FirstOrDefault(one => one.Id == card.PaddlerId) is not { } paddler
            || then.Hulls.FirstOrDefault(one => one.Id == card.HullId) is not { } hull
            || then.Paddles.FirstOrDefault(one => one.Id == card.PaddleId) is not { } paddle)
            throw new RequestException($"The log as it was when card {given.Number} was given does not hold its paddler, hull and " +
                $"paddle, so it cannot be derived again.");
        return new Rederived(given, Tuner.Analyse(new AnalysisInput
        {
            Paddler = paddler,
            Hull = hull,
            Paddle = paddle,
            Hulls = then.Hulls,
            Paddles = then.Paddles,
            Outings = [.. then.Outings.Where(outing => outing.PaddlerId == paddler.Id)],
            TechniqueChecks = [.. then.TechniqueChecks.Where(check => check.PaddlerId == paddler.Id)],
            Squad = workspace.LearnsFromSquad ? SquadLessons.For(paddler, then, workspace.DayOf(card.GivenAt)) : null,
            Today = workspace.DayOf(card.GivenAt),
        }));
    }
}
