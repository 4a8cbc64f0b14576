using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Application.Workspaces;

/// <summary>Whose length is asked for, in which hull, with which paddle.</summary>
internal sealed record Chosen(Paddler Paddler, Hull Hull, Paddle Paddle);
