using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Json;

/// <summary>What <c>plan --json</c> prints.</summary>
internal sealed record PlanFacts(string From, int Weeks,
    IReadOnlyList<string> Paddles, IReadOnlyList<PlannedOutingFacts> Outings, IReadOnlyList<PlannedPaddlerFacts> Paddlers)
{
    public static PlanFacts Of(SquadPlan plan) => new(
        Say.Day(plan.First), plan.Weeks, [.. plan.Paddles.Select(paddle => paddle.Name)],
        [.. plan.Outings.Select(outing =>
            new PlannedOutingFacts(Say.Day(outing.Day), outing.Paddle.Name, outing.Analysis.Paddler.Name, outing.Analysis.Hull.Name,
            outing.Outing,
            outing.Outing == 1 && outing.StandingCard is not { Blind: true }
                ? [.. outing.Analysis.Card.Lengths.Select(JsonOutput.Inches)] : null))],
        [.. plan.Paddlers.Select(
            one => new PlannedPaddlerFacts(
            one.Row.Paddler.Name, one.Outings, JsonOutput.Rounded(one.WonPercent), JsonOutput.Rounded(one.WonSeconds), one.WhyNone))]);
}

/// <summary>One outing; its lengths where they are known already.</summary>
internal sealed record PlannedOutingFacts(
    string Day, string Paddle, string Paddler, string Hull, int Outing, IReadOnlyList<double>? LengthsIn);

/// <summary>One paddler of the plan.</summary>
internal sealed record PlannedPaddlerFacts(string Paddler, int Outings, double ShouldWinPct, double ShouldWinS, string WhyNone);
