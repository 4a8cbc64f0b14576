using TrialLog.Domain;
using TrialLog.Tuning;

namespace TrialLog.UseCases;

/// <summary>A length to begin with for a steering paddle.</summary>
internal static class ProposeSteering
{
    /// <summary>From the paddler's best forward length in that hull, carried to the steering blade.</summary>
    public static SteeringProposal For(Desk desk, Paddler paddler, Hull hull, Paddle paddle)
    {
        // To the tuning, the same blade without the mark: its forward length, not a tuned steering length.
        Paddle forward = paddle with { Steering = false };
        CarriedLength carried = Tuner.Carry(desk.Question(new Chosen(paddler, hull, forward)), [hull], [forward]).Single();
        return SteeringRule.Propose(carried.Best, paddle);
    }
}
