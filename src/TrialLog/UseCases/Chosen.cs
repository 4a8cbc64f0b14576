using TrialLog.Domain;

namespace TrialLog.UseCases;

/// <summary>Whose length is asked for, in which hull, with which paddle.</summary>
internal sealed record Chosen(Paddler Paddler, Hull Hull, Paddle Paddle);
