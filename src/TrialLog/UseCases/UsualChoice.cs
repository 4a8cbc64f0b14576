using TrialLog.Domain;

namespace TrialLog.UseCases;

/// <summary>Whose length to look at when nobody said: never a question, always the likeliest.</summary>
internal static class UsualChoice
{
    private const string LastHull = "last-hull:", LastPaddle = "last-paddle:";

    /// <summary>
    /// The paddler last worked with, in the hull and with the paddle they last looked at, else those of their latest outing;
    /// null while the logbook lacks a paddler or a paddle to tune.
    /// </summary>
    public static Chosen? Of(Desk desk)
    {
        IReadOnlyList<Paddler> paddlers = desk.Logbook.Paddlers();
        return paddlers.Count == 0 ? null : Of(desk, desk.LatestPaddler() ?? paddlers[0]);
    }

    /// <summary>As <see cref="Of(Desk)"/>, for that paddler, whose outings may be at hand.</summary>
    public static Chosen? Of(Desk desk, Paddler paddler, IReadOnlyList<Outing>? atHand = null)
    {
        IReadOnlyList<Paddle> paddles = [.. desk.Logbook.Paddles().Where(paddle => !paddle.Steering)];
        IReadOnlyList<Hull> hulls = desk.Logbook.Hulls();
        if (paddles.Count == 0 || hulls.Count == 0)
            return null;
        Hull? hull = hulls.FirstOrDefault(known => known.Id.ToString() == desk.Logbook.Setting(LastHull + paddler.Id));
        Paddle? paddle = paddles.FirstOrDefault(known => known.Id.ToString() == desk.Logbook.Setting(LastPaddle + paddler.Id));
        if (hull is null || paddle is null)
        {
            // Only now is the whole log read: it may be long.
            IReadOnlyList<Outing> outings = atHand ?? desk.Logbook.Outings(paddler.Id);
            hull ??= desk.UsualHull(paddler, outings);
            paddle ??= desk.LatestPaddle(hull, outings) ?? paddles[0];
        }

        return new Chosen(paddler, hull, paddle);
    }

    /// <summary>Remembers what was looked at.</summary>
    public static void Keep(Desk desk, Chosen chosen)
    {
        if (desk.Logbook.IsReadOnly)
            return;
        desk.Remember(chosen.Paddler);
        desk.Logbook.SaveSetting(LastHull + chosen.Paddler.Id, chosen.Hull.Id.ToString());
        desk.Logbook.SaveSetting(LastPaddle + chosen.Paddler.Id, chosen.Paddle.Id.ToString());
    }
}
