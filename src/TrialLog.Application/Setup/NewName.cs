using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Setup;

/// <summary>Asks before a slip in a name starts a second paddler, hull or paddle.</summary>
internal static class NewName
{
    /// <summary>How a user insists on a name that is close to a known one.</summary>
    public const string Option = "--new-name";

    /// <exception cref="RequestException">The name is close to a known one.</exception>
    /// <param name="known">The names that are known.</param>
    /// <param name="name">The name to be added.</param>
    /// <param name="kind">What is named.</param>
    /// <param name="insist">How to insist.</param>
    public static void Refuse(IEnumerable<string> known, string name, string kind, string insist = $"say so with {Option}")
    {
        if (new CloseNames(known).To(name.Trim()) is { } close)
            throw new RequestException($"Did you mean the {kind} “{Quoted.Visible(close)}”? If “{Quoted.Brief(name)}” is another, {insist}.");
    }
}
