using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Squads;

/// <summary>One outing of a squad's plan.</summary>
/// <param name="Day">The day to paddle it.</param>
/// <param name="Paddle">The paddle lent for it.</param>
/// <param name="Analysis">What the log says of who paddles it, in their hull with that paddle: its card is the one for the first
/// outing.</param>
/// <param name="Outing">Which of this paddler's outings in the plan, from 1.</param>
/// <param name="StandingCard">For the first outing, the coach's or blind card that stands for it; the analysis then carries its
/// card.</param>
public sealed record PlannedOuting(DateOnly Day, Paddle Paddle, Analysis Analysis, int Outing, GivenCard? StandingCard = null);

/// <summary>What the plan has for one paddler.</summary>
/// <param name="Row">The paddler's row.</param>
/// <param name="Outings">How many outings.</param>
/// <param name="WonPercent">What they are expected to win, percent of speed.</param>
/// <param name="WonSeconds">The same over their race, seconds.</param>
/// <param name="WhyNone">Why there is no outing for them; empty where there is.</param>
public sealed record PlannedPaddler(SquadRow Row, int Outings, double WonPercent, double WonSeconds, string WhyNone);

/// <summary>Who tests what in which week.</summary>
/// <param name="First">The day of the first week's practice; the others follow a week apart.</param>
/// <param name="Weeks">How many weeks.</param>
/// <param name="Paddles">The paddles lent.</param>
/// <param name="Outings">The outings, by day and paddle.</param>
/// <param name="Paddlers">Everybody: who wins most by the plan first, then those without an outing.</param>
/// <param name="Version">The program's version.</param>
public sealed record SquadPlan(DateOnly First, int Weeks,
    IReadOnlyList<Paddle> Paddles, IReadOnlyList<PlannedOuting> Outings, IReadOnlyList<PlannedPaddler> Paddlers, string Version)
{
    /// <summary>The day of a week's practice, from week 1.</summary>
    public DateOnly DayOf(int week) => First.AddDays(7 * (week - 1));
}

/// <summary>
/// Plans who tests when with the adjustable paddles there are, from what the log says today. Asked again next week, it plans anew from
/// what was paddled.
/// </summary>
internal static class PlanSquad
{
    /// <summary>A paddle fits a paddler where it tells at least this share of what the most telling one tells. Chosen, no source.</summary>
    private const double Fits = 0.8;

    /// <param name="workspace">The open logbook.</param>
    /// <param name="weeks">How many weeks, 1 to 26.</param>
    /// <param name="paddleNames">The paddles to lend.</param>
    /// <param name="outingsAWeek">How often a week each can be lent.</param>
    /// <param name="first">The day of the first practice.</param>
    /// <param name="races">Race days: by the paddler's id, and under the empty id for everybody else.</param>
    /// <exception cref="RequestException">A paddle is not known, cannot be adjusted, or steers.</exception>
    public static SquadPlan Of(Workspace workspace, int weeks,
        IReadOnlyList<string> paddleNames, int outingsAWeek, DateOnly first, IReadOnlyDictionary<Guid, DateOnly> races)
    {
        List<Paddle> paddles = [.. paddleNames.Select(name => Adjustable(workspace.PaddleNamed(name))).DistinctBy(paddle => paddle.Id)];
        SquadContents squad = SquadReview.Look(workspace, null, null);
        List<Candidate> candidates = [.. squad.Rows.Where(row => row.Tests || row.Place == SquadPlace.NoPaddle).AsParallel().AsOrdered()
            .Select(row => Candidate.Of(workspace, row, paddles, weeks)).AsEnumerable().OfType<Candidate>()];
        List<Tester> testers = [
            .. candidates.Select(
            candidate => new Tester(candidate.Won, candidate.Price, candidate.Fitting, LastWeek(candidate.Row.Paddler.Id)))];
        IReadOnlyList<PlannedTest> plan = WeekPlanner.Plan(testers, paddles.Count, weeks, outingsAWeek);

        // Only what is lent is analysed whole, on all processors.
        plan.Select(test => candidates[test.Tester].With[test.Paddle]).Distinct().AsParallel().ForAll(lent => _ = lent.Value);
        var count = new int[candidates.Count];
        List<PlannedOuting> outings = [
            .. plan.Select(test =>
            Planned(first.AddDays(7 * (test.Week - 1)), paddles[test.Paddle], candidates[test.Tester].Row.StandingCard,
            candidates[test.Tester].With[test.Paddle].Value, ++count[test.Tester]))];
        List<PlannedPaddler> paddlers = [.. squad.Rows.Select(row =>
        {
            int at = candidates.FindIndex(candidate => candidate.Row.Paddler.Id == row.Paddler.Id), given = at < 0 ? 0 : count[at];
            double won = at < 0 ? 0 : candidates[at].Won[given];
            return new PlannedPaddler(row, given, won, at < 0 ? 0 : candidates[at].Seconds(won),
                given > 0 ? "" : WhyNone(row, at < 0 ? null : candidates[at], LastWeek(row.Paddler.Id)));
        }).OrderByDescending(one => one.WonPercent).ThenBy(one => one.Row.Place)
            .ThenBy(one => one.Row.Paddler.Name, StringComparer.OrdinalIgnoreCase)];
        return new SquadPlan(first, weeks, paddles, outings, paddlers, ProgramVersion.Text);

        // An outing counts that comes before the race.
        int LastWeek(Guid paddler) => races.TryGetValue(paddler, out DateOnly race) || races.TryGetValue(Guid.Empty, out race)
            ? Math.Clamp((race.DayNumber - first.DayNumber + 6) / 7, 0, weeks)
            : weeks;
    }

    private static PlannedOuting Planned(DateOnly day, Paddle paddle, GivenCard? standing, Analysis analysis, int outing) =>
        outing == 1 && standing is not null && standing.PaddleId == paddle.Id && standing.HullId == analysis.Hull.Id
            ? new(day, paddle, analysis with { Card = standing.Card }, outing, standing) : new(day, paddle, analysis, outing);

    private static Paddle Adjustable(Paddle paddle) =>
        paddle.Steering ? throw new RequestException(
            $"{Quoted.Visible(paddle.Name)} is a steering paddle, which is never tuned for speed; name another.")
        : paddle.IsFixed
            ? throw new RequestException($"{Quoted.Visible(paddle.Name)} cannot be set to another length; name an adjustable paddle.")
        : paddle;

    private static string WhyNone(SquadRow row, Candidate? candidate, int lastWeek) => row switch
    {
        { IsSore: true } => "sore: rest first",
        { IsFinished: true } => "time to stop",
        { Analysis: not null, Tests: false } => "a large crew tells nothing: try a solo hull",
        _ when candidate is null => "none of these paddles may be lent to them, or fits",
        _ when lastWeek == 0 => "the race comes first",
        { Paddler.SwapsOnWater: false } =>
            candidate.Won[^1] <= candidate.Price ? "an outing of one length tells too little; changes ashore between pieces would tell more"
            : "others win more; changes ashore between pieces would tell more",
        _ => candidate.Won[1] <= candidate.Price ? "an outing would win less than it costs" : "others win more",
    };

    /// <summary>Who may test, and what outings with each paddle are worth to them.</summary>
    private sealed record Candidate(
        SquadRow Row, IReadOnlyList<Lazy<Analysis>> With, IReadOnlyList<double> Won, IReadOnlyList<int> Fitting, double Price)
    {
        public double Seconds(double percent) => (Row.Analysis ?? With[Fitting[0]].Value).GoalSeconds * (1 - Math.Exp(-percent / 100));

        /// <summary>Null where no paddle may be lent to them.</summary>
        public static Candidate? Of(Workspace workspace, SquadRow row, List<Paddle> paddles, int weeks)
        {
            IReadOnlyList<Outing> outings = workspace.Logbook.Outings(row.Paddler.Id);
            Hull hull = row.Hull ?? UsualChoice.Hull(workspace, row.Paddler, outings);
            // A coach may lend what is the club's or nobody's, and to its owner what is theirs: never one paddler's paddle to another.
            int[] open = [.. Enumerable.Range(0, paddles.Count)
                .Where(at => paddles[at].OwnerId is null || paddles[at].IsFor(row.Paddler.Id))];
            if (open.Length == 0)
                return null;
            var with = new Lazy<Analysis>[paddles.Count];
            var won = new IReadOnlyList<double>?[paddles.Count];
            AnalysisInput input = workspace.Question(new Chosen(row.Paddler, hull, paddles[open[0]]), outings);
            IReadOnlyList<IReadOnlyList<double>> values = Tuner.ValueOfOutings(input, [.. open.Select(at => paddles[at])], weeks);
            foreach ((int at, IReadOnlyList<double> its) in open.Zip(values))
            {
                won[at] = its;
                with[at] = row.Analysis is { } known && known.Hull.Id == hull.Id && known.Paddle.Id == paddles[at].Id
                    && row.StandingCard is null
                    ? new(known) : new(() => Tuner.Analyse(input with { Paddle = paddles[at] }));
            }

            double most = won.Max(values => values?[^1] ?? 0);
            List<int> fitting = [.. Enumerable.Range(0, paddles.Count).Where(at => won[at] is { } values && values[^1] >= Fits * most)
                .OrderByDescending(at => paddles[at].Id == row.Paddle?.Id).ThenByDescending(at => won[at]![^1]).ThenBy(at => at)];
            if (fitting.Count == 0)
                return null;
            double price = row.Analysis?.PricePercent ?? row.Paddler.Trials.PricePercent ?? TuningSettings.Default.PricePercent;
            return new(row, with, [.. Enumerable.Range(0, weeks + 1).Select(outing => fitting.Max(at => won[at]![outing]))],
                fitting, price);
        }
    }
}
