using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Sizing;

/// <summary>A length to begin with for a steering paddle.</summary>
internal static class ProposeSteering
{
    /// <summary>From the paddler's best forward length in that hull, carried to the steering blade.</summary>
    public static SteeringProposal For(Workspace workspace, Paddler paddler, Hull hull, Paddle paddle)
    {
        // To the tuning, the same blade without the mark: its forward length, not a tuned steering length.
        Paddle forward = paddle with { Steering = false };
        Assessment carried = Tuner.Carry(workspace.Question(new Chosen(paddler, hull, forward)), [hull], [forward]).Single();
        return SteeringRule.Propose(carried.Ideal.Length, paddle);
    }
}
