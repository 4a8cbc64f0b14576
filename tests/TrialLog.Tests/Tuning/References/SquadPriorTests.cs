using System.Text.Json;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning.References;

/// <summary>What a squad teaches, against JAGS, and what it never does.</summary>
public class SquadPriorTests
{
    private static readonly Paddler Ninth =
        new() { Id = new(99, 0, 0, new byte[8]), Name = "Ilse Maro", KnownLength = Length.FromInches(50) };

    public static TheoryData<string> Squads =>
        [.. ReferenceFile.Json("posterior/squad.json").GetProperty("squads").EnumerateArray().Select(squad => squad.Text("squad"))];

    [Theory, MemberData(nameof(Squads))]
    public void The_common_offset_and_the_spread_agree_with_JAGS(string name)
    {
        JsonElement squad = ReferenceFile.Json("posterior/squad.json").GetProperty("squads").EnumerateArray()
            .Single(one => one.Text("squad") == name);
        (double offset, double variance, double ownSquare, double logOwn) = SquadPrior.Pooled(
            [.. squad.Numbers("offset")
                .Zip(squad.Numbers("sd"), (at, sd) => new SquadEvidence(Guid.Empty, StartLengthBasis.KnownPaddle, at, sd * sd))], 0.8);
        double sd = squad.Number("mu_sd");
        Assert.Equal(squad.Number("mu"), offset, 0.05 * sd);
        Assert.Equal(sd, Math.Sqrt(variance), 0.03 * sd);
        Assert.Equal(squad.Number("tau2"), ownSquare, 0.04 * squad.Number("tau2"));
        Assert.Equal(squad.Number("ln_tau"), logOwn, 0.02);
    }

    [Fact]
    public void Eight_who_lie_below_the_start_draw_the_ninth_there_and_make_it_surer()
    {
        SquadPrior squad = SquadPrior.Of(Ninth, Squad(-0.8, -0.7, -0.9, -0.75, -0.6, -0.8, -0.7, -0.85), TuningSettings.Default)!;
        Assert.Equal(8, squad.Paddlers);
        Assert.InRange(squad.OffsetInches, -0.8, -0.6);
        Assert.InRange(squad.SdInches, 0.2, 0.6);
        AnalysisInput empty = LogOf.Rows() with { Squad = squad };
        Posterior before = Fit.Of(LogOf.Rows()).Posterior, taught = Fit.Of(empty).Posterior;
        Assert.Equal(squad.OffsetInches, taught.Mean, 1e-6);
        Assert.True(taught.Quantile(0.95) - taught.Quantile(0.05) < before.Quantile(0.95) - before.Quantile(0.05));
    }

    [Fact]
    public void A_squad_that_contradicts_itself_makes_nobody_surer() =>
        Assert.True(SquadPrior.Of(Ninth, Squad(-2, 2, -1.8, 2.1, 0, -1.5), TuningSettings.Default)!.SdInches > 0.8);

    [Fact]
    public void One_other_and_ones_own_log_teach_nothing()
    {
        Assert.Null(SquadPrior.Of(Ninth, Squad(-0.8), TuningSettings.Default));
        SquadEvidence own = new(Ninth.Id, StartLengthBasis.KnownPaddle, 3, 0.01);
        Assert.Equal(SquadPrior.Of(Ninth, Squad(-0.8, -0.6), TuningSettings.Default),
            SquadPrior.Of(Ninth, [own, .. Squad(-0.8, -0.6)], TuningSettings.Default));
    }

    [Fact]
    public void Start_lengths_that_rest_on_something_else_teach_nothing() =>
        Assert.Null(
            SquadPrior.Of(Ninth, Squad(-0.8, -0.6, -0.7).Select(one => one with { Basis = StartLengthBasis.Stature }),
            TuningSettings.Default));

    [Fact]
    public void A_log_speaks_once_it_has_settled_and_never_with_what_others_taught_it()
    {
        Assert.Null(SquadEvidence.Of(LogOf.Rows()));
        Assert.Null(SquadEvidence.Of(LogOf.Rows(LogOf.Healthy(outings: 1))));
        AnalysisInput settled = LogOf.Rows(LogOf.Healthy(outings: 14));
        SquadEvidence evidence = SquadEvidence.Of(settled)!;
        Assert.Equal(evidence, SquadEvidence.Of(settled with { Squad = new(8, -3, 0.2, StartLengthBasis.KnownPaddle) }));
        // The log's truth is 0.25 in above its start.
        Assert.InRange(evidence.OffsetInches, 0.25 - 3 * Math.Sqrt(evidence.Variance), 0.25 + 3 * Math.Sqrt(evidence.Variance));
    }

    private static IEnumerable<SquadEvidence> Squad(params double[] offsets) =>
        offsets.Select((offset, at) => new SquadEvidence(new(at + 1, 0, 0, new byte[8]), StartLengthBasis.KnownPaddle, offset, 0.04));
}
