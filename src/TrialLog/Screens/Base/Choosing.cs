using Terminal.Gui.Input;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Base;

/// <summary>The keys by which any screen looks at another hull, paddle or paddler.</summary>
internal static class Choosing
{
    /// <summary>The three hints; a paddler is offered only where there are several.</summary>
    public static IEnumerable<KeyHint> Keys(Session session)
    {
        if (session.Chosen is not { } chosen)
            yield break;
        yield return new KeyHint('h', "hull", () => Hull(session, chosen));
        yield return new KeyHint('p', "paddle", () => Paddle(session, chosen));
        if (session.State.Paddlers is { Count: > 1 } paddlers)
            yield return new KeyHint('l', "whose log", () => Paddler(session, chosen, paddlers));
    }

    /// <summary>What stops or resumes the working out, whichever makes sense now.</summary>
    public static IEnumerable<KeyHint> Work(Session session)
    {
        if (session.Found.IsWorking)
            yield return new KeyHint(Key.Esc, "Esc", "stop working it out", session.Found.Stop);
        else if (session.Found.Stopped)
            yield return new KeyHint(Key.F5, "F5", "work it out", session.Found.Resume);
    }

    private static void Hull(Session session, Chosen chosen)
    {
        IReadOnlyList<Hull> hulls = session.State.Hulls;
        Lay(session, "In which hull?", [.. hulls.Select(hull => hull.Name)], hulls.ToList().FindIndex(hull => hull.Id == chosen.Hull.Id),
            index => session.LookAt(chosen with { Hull = hulls[index] }));
    }

    private static void Paddle(Session session, Chosen chosen)
    {
        List<Paddle> paddles = [.. session.State.Paddles.Where(paddle => !paddle.Steering)];
        Lay(session, "With which paddle?", [.. paddles.Select(paddle => paddle.Name)],
            paddles.FindIndex(paddle => paddle.Id == chosen.Paddle.Id),
            index => session.LookAt(chosen with { Paddle = paddles[index] }));
    }

    private static void Paddler(Session session, Chosen chosen, IReadOnlyList<Paddler> paddlers) =>
        Lay(session, "Whose log?", [.. paddlers.Select(paddler => paddler.Name)],
            paddlers.ToList().FindIndex(paddler => paddler.Id == chosen.Paddler.Id),
            index => session.LookAt(workspace => UsualChoice.Of(workspace, paddlers[index])));

    private static void Lay(Session session, string title, IReadOnlyList<string> names, int at, Action<int> picked) =>
        session.Shell.Lay(new ChoiceSheet(session.Look, session.Shell, title, [.. names.Select(name => Quoted.Visible(name))], at, picked));
}
