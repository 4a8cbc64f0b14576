using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Commands.Json;

/// <summary>One decision of <c>decide --json</c>.</summary>
internal sealed record DecisionFacts(
    string Paddler, string Hull, string Paddle, double LengthIn, string Kind, string Date, string? By, string? Because)
{
    public static DecisionFacts Of(Decision decision, string paddler, string hull, string paddle) => new(
        paddler, hull, paddle, JsonOutput.Inches(decision.Length), JsonOutput.Kebab(decision.Kind), decision.Date.ToString("yyyy-MM-dd"),
            decision.By, decision.Because);
}

/// <summary>What <c>soreness clear --json</c> prints.</summary>
internal sealed record ClearanceFacts(string Paddler, string Date, string By, string? Because, double WasPoints, string LastTold);
