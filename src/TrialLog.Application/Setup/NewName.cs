using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Setup;

/// <summary>Asks before a slip in a name starts a second paddler, hull or paddle.</summary>
internal static class NewName
{
    /// <summary>How a user insists on a name that is close to a known one.</summary>
    public const string Option = "--new-name";

    /// <summary>The name as it may be kept.</summary>
    /// <param name="known">The names that are taken.</param>
    /// <param name="name">The name that was typed.</param>
    /// <param name="kind">What is named.</param>
    /// <param name="insists">Whether it is meant though it is close to a known one.</param>
    /// <exception cref="InvalidValueException">It cannot be a name.</exception>
    /// <exception cref="RequestException">It is taken, or close to a known one.</exception>
    public static string Checked(IEnumerable<string> known, string name, string kind, bool insists)
    {
        string checkedName = NameRule.Checked(name, kind);
        List<string> names = [.. known];
        if (names.Any(taken => string.Equals(taken, checkedName, StringComparison.OrdinalIgnoreCase)))
            throw new RequestException($"There is a {kind} “{Quoted.Brief(checkedName)}” already; change it with: triallog {kind} set " +
                $"\"{Quoted.Visible(checkedName)}\" …");
        if (!insists)
            Refuse(names, checkedName, kind);
        return checkedName;
    }

    /// <exception cref="RequestException">The name is close to a known one.</exception>
    /// <param name="known">The names that are known.</param>
    /// <param name="name">The name to be added.</param>
    /// <param name="kind">What is named.</param>
    /// <param name="insist">How to insist.</param>
    public static void Refuse(IEnumerable<string> known, string name, string kind, string insist = $"say so with {Option}")
    {
        if (new CloseNames(known).To(name.Trim()) is { } close)
            throw new RequestException(
                $"Did you mean the {kind} “{Quoted.Visible(close)}”? If “{Quoted.Brief(name)}” is another, {insist}.");
    }
}
