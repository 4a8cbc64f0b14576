using TrialLog.Screens.Base;
using TrialLog.Screens.Bodies;
using TrialLog.Screens.Curves;
using TrialLog.Screens.Entry;
using TrialLog.Screens.Log;
using TrialLog.Screens.Next;
using TrialLog.Screens.Squads;

namespace TrialLog.Screens.Shell;

/// <summary>The seven screens in the order of their numbers.</summary>
internal static class ScreenList
{
    public const int Count = 7;

    /// <summary>Makes them; the order is that of <see cref="Place"/>.</summary>
    public static IReadOnlyList<Screen> Of(Session session) =>
    [
        new Next.HomeScreen(session),
        new Entry.EntryScreen(session),
        new Log.LogbookScreen(session),
        new Curves.CurveScreen(session),
        new Curves.ProgressScreen(session),
        new Bodies.BodyScreen(session),
        new Squads.SquadScreen(session),
    ];
}
