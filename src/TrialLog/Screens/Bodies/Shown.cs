using TrialLog.Application.Workspaces;

namespace TrialLog.Screens.Bodies;

/// <summary>
/// What a form began from. Where another program changed it since, saving is refused once, in words; whoever saves again means it.
/// </summary>
/// <param name="shown">As it was when the form came up.</param>
/// <param name="now">As it is in the logbook; null where it is gone.</param>
internal sealed class Shown<T>(T shown, Func<Workspace, T?> now)
    where T : class
{
    private T? _told;

    /// <summary>Saves what was typed, but not over a change that the user has not heard of.</summary>
    /// <exception cref="RequestException">It was changed elsewhere; nothing was saved.</exception>
    public void Change(Workspace workspace, Action change) => workspace.Logbook.Provided(() => Check(workspace), change);

    private void Check(Workspace workspace)
    {
        if (now(workspace) is not { } other || other.Equals(shown) || other.Equals(_told))
            return;
        _told = other;
        throw new RequestException(
            "This was changed elsewhere while you typed. Esc shows it as it is now; saving again puts yours over it.");
    }
}
