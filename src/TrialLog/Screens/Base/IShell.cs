using TrialLog.Application.Next;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Base;

/// <summary>The seven screens.</summary>
internal enum Place
{
    NextOuting,
    EnterOuting,
    Logbook,
    Curve,
    Progress,
    BodyAndBoats,
    Squad,
}

/// <summary>What a screen may ask of the window it is in.</summary>
internal interface IShell
{
    /// <summary>Brings a screen up.</summary>
    void Open(Place place);

    /// <summary>Brings the new outing up to be typed.</summary>
    void TypeOuting();

    /// <summary>Brings an outing of the log up to be changed.</summary>
    void Edit(Outing outing);

    /// <summary>Says something on the line above the keys; the next key clears it.</summary>
    void Say(string sentence, Tone tone = Tone.Plain);

    /// <summary>Lays a sheet over the screen; it takes the keys until it is lifted.</summary>
    void Lay(Sheet sheet);

    /// <summary>As <see cref="Lay"/>, over whatever sheet is there: that is back, with what was typed on it, once this is lifted.</summary>
    void LayOver(Sheet sheet);

    /// <summary>Lifts the sheet.</summary>
    void Lift();

    /// <summary>Whether a sheet may be left: where that would lose what was typed, only if the same key says so twice.</summary>
    bool MayLeave(Sheet sheet);

    /// <summary>Runs an action that the user asked for; what cannot be done is said in its own sentence.</summary>
    bool Try(Action action);

    /// <summary>Says what went wrong, if it is of a kind that the user can do something about; else false.</summary>
    bool Says(Exception failure);

    /// <summary>Something on the screen changed.</summary>
    void Redraw();

    /// <summary>Ends the program.</summary>
    void Quit();
}
