namespace TrialLog.Application.Workspaces;

/// <summary>A request that cannot be met: one sentence that says why and what to do next. Exit code 1.</summary>
internal sealed class RequestException(string message) : Exception(message);
