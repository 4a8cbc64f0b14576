using TrialLog.Application.Squads;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Paint;
using TrialLog.Study.Seasons;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Planning;

namespace TrialLog.Study.Squads;

/// <summary>How the club's paddles are lent out.</summary>
internal enum Lending
{
    /// <summary>By the plan, made anew each week from what was paddled.</summary>
    Planned,

    /// <summary>By turns, everybody alike.</summary>
    Turns,

    /// <summary>By turns among those for whom it is not yet time to stop.</summary>
    TurnsOfTheUnfinished,
}

/// <summary>Some weeks of an invented squad with a few paddles to lend.</summary>
internal static class SquadSeason
{
    private static readonly Hull Canoe = StandardHulls.All[0];

    private static readonly Paddle Lent = new()
    {
        Id = new Guid(2, 0, 0, new byte[8]),
        Name = "adjustable",
        Blade = ExposedShaftRule.ReferenceBlade,
        Shortest = Length.FromInches(44),
        Longest = Length.FromInches(56),
        Step = Length.FromInches(0.25),
        BelongsToClub = true,
    };

    /// <summary>
    /// True loss of speed at the length that each paddler races, percent: mean over the squad before the first week and after each.
    /// </summary>
    /// <param name="lending">How the paddles are lent.</param>
    /// <param name="seed">Seed of all chance; the squad and its water are the same for every way of lending.</param>
    /// <param name="number">Which squad.</param>
    /// <param name="paddlers">How many paddlers.</param>
    /// <param name="paddles">How many paddles.</param>
    /// <param name="weeks">How many weeks.</param>
    public static double[] Run(Lending lending, ulong seed, int number, int paddlers, int paddles, int weeks)
    {
        List<Member> squad = [.. Enumerable.Range(0, paddlers).Select(at => new Member(seed, number * paddlers + at))];
        List<double> loss = [squad.Average(member => member.Loss)];
        int turn = 0;
        for (int week = 1; week <= weeks; week++)
        {
            foreach (Member member in Chosen())
                member.Test();
            loss.Add(squad.Average(member => member.Loss));

            IEnumerable<Member> Chosen()
            {
                if (lending == Lending.Planned)
                {
                    List<Member> open = [.. squad.Where(member => !member.Finished)];
                    int left = weeks - week + 1;
                    List<Tester> testers = [
                        .. open.Select(member =>
                        new Tester(member.Won(left), TuningSettings.Default.PricePercent, [.. Enumerable.Range(0, paddles)], left))];
                    return [.. WeekPlanner.Plan(testers, paddles, left).Where(test => test.Week == 1).Select(test => open[test.Tester])];
                }

                List<Member> chosen = [];
                for (int tries = 0; tries < paddlers && chosen.Count < paddles; tries++)
                {
                    Member next = squad[turn++ % paddlers];
                    if (lending == Lending.Turns || !next.Finished)
                        chosen.Add(next);
                }

                return chosen;
            }
        }

        return [.. loss];
    }

    /// <summary>A paddler of one of three worlds who has tested up to three times before.</summary>
    private sealed class Member
    {
        private static readonly string[] Worlds = ["main", "start-off", "flat"];
        private readonly SimulatedPaddler _paddler;
        private readonly Paddler _self;
        private readonly List<Outing> _outings = [];
        private AssessedFit _assessed = null!;
        private double[]? _won;

        public Member(ulong seed, int number)
        {
            World world = World.All.First(one => one.Name == Worlds[number % Worlds.Length]);
            _paddler = new(world, seed, number);
            _self = new()
            {
                Id = new Guid(1, 0, 0, new byte[8]), Name = $"Paddler {number}",
                Body = new() { SeatedReach = SimulatedPaddler.Start }, Trials = new() { Pieces = 4 }
            };
            Look();
            for (int before = number / Worlds.Length % 4; before > 0; before--)
                Test();
        }

        /// <summary>True loss at the length raced, percent.</summary>
        public double Loss => _paddler.Loss(_assessed.Says.Best.Length.Inches);

        public bool Finished => _assessed.Says.DiminishingReturns || _outings.Count == SimulatedPaddler.Outings;

        public IReadOnlyList<double> Won(int outings)
        {
            if (_won is null || _won.Length <= outings)
                _won = [.. Tuner.ValueOfOutings(Input(), [Input().Paddle], outings)[0]];
            return [.. _won.Take(outings + 1)];
        }

        public void Test()
        {
            if (_outings.Count == SimulatedPaddler.Outings)
                return;
            _outings.Add(_paddler.Paddle(_outings.Count, CardPlanner.Plan(_assessed).Lengths, _outings, _self, Canoe, Lent));
            Look();
        }

        private void Look() => (_assessed, _won) = (AssessedFit.Of(Input()), null);

        private AnalysisInput Input() => new()
        {
            Paddler = _self,
            Hull = Canoe,
            Paddle = Lent,
            Hulls = [Canoe],
            Paddles = [Lent],
            Outings = [.. _outings],
            Today = _outings.Count == 0 ? new DateOnly(2026, 1, 1) : _outings[^1].Date,
        };
    }
}
