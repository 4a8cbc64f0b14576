using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Calendars;

/// <summary>A week's card to be put into a calendar.</summary>
/// <param name="Analysis">Whose card it is, for which hull, and why.</param>
/// <param name="Today">The day it is put there; the entry is for this day's ISO week where no day is named.</param>
/// <param name="Day">The day to paddle it, if one was named; else today, or the day where the week's entry already stands.</param>
/// <param name="Change">The logbook's change number: the newer the log, the newer the entry.</param>
public sealed record CalendarCard(Analysis Analysis, DateOnly Today, DateOnly? Day, long Change)
{
    /// <summary>The coach's or blind card that stands; null where the log's own is handed out.</summary>
    public GivenCard? StandingCard { get; init; }

    /// <summary>
    /// Whether there is nothing to paddle in that week: sore, done, or not in the plan. Then no entry is made, and one that stands there is
    /// called off.
    /// </summary>
    public bool CalledOff { get; init; }

    /// <summary>Whether this is a later outing of a plan, whose lengths follow from the outings before it.</summary>
    public bool LengthsFollow { get; init; }

    /// <summary>Whether a coach reads it: then it speaks of the paddler by name.</summary>
    public bool ForTheCoach { get; init; }

    internal Voice Voice => ForTheCoach ? new(PlainText.Line(Analysis.Paddler.Name)) : Voice.ToThePaddler;

    /// <summary>
    /// The same for one paddler, hull and ISO week, and for nothing else, so that a calendar replaces the entry that it
    /// has. A version 8 UUID (RFC 9562) of their SHA-256.
    /// </summary>
    public string Uid => CardCalendar.Uid(Analysis.Paddler.Id, Analysis.Hull.Id, Day ?? Today);
}
