using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Setup;

/// <summary>Something that two records of one person say differently.</summary>
/// <param name="Field">What it is, in words: <c>seated reach</c>.</param>
/// <param name="Ours">What the record says that stays.</param>
/// <param name="Theirs">What the other says.</param>
internal sealed record JoinQuestion(string Field, string Ours, string Theirs);

/// <summary>Makes one paddler of two records of one person; nothing that was logged is lost.</summary>
internal static class JoinPaddlers
{
    /// <summary>What the two say differently, to be asked about.</summary>
    public static IReadOnlyList<JoinQuestion> Questions(Workspace workspace, Paddler into, Paddler from)
    {
        IReadOnlyList<Hull> hulls = workspace.Logbook.Hulls();
        return
        [
            .. Fields(hulls).Select(field => (field.Name, Ours: field.Text(into), Theirs: field.Text(from)))
                .Where(field => field.Ours is not null && field.Theirs is not null && field.Ours != field.Theirs)
                .Select(field => new JoinQuestion(field.Name, field.Ours!, field.Theirs!)),
        ];
    }

    /// <summary>
    /// Joins them: outings, cards, checks, notes, decisions and paddles go to <paramref name="into"/>, and the other record goes.
    /// </summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="into">The record that stays.</param>
    /// <param name="from">The record that is taken up.</param>
    /// <param name="takesTheirs">For each question whether the other's value is taken.</param>
    /// <exception cref="RequestException">They are one record.</exception>
    public static Paddler Join(Workspace workspace, Paddler into, Paddler from, Func<JoinQuestion, bool> takesTheirs)
    {
        if (into.Id == from.Id)
            throw new RequestException($"{into.Name} is one paddler already; name two.");
        Paddler joined = into;
        foreach (Field field in Fields(workspace.Logbook.Hulls()))
        {
            string? ours = field.Text(joined), theirs = field.Text(from);
            if (theirs is not null && (ours is null || (ours != theirs && takesTheirs(new JoinQuestion(field.Name, ours, theirs)))))
                joined = field.Take(joined, from);
        }

        IReadOnlyList<Outing> kept = workspace.Logbook.Outings(into.Id), moved = workspace.Logbook.Outings(from.Id);
        HashSet<(DateOnly, string)> taken = [.. kept.Select(outing => (outing.Date, outing.Label.ToUpperInvariant()))];
        workspace.Logbook.Change($"Joined {from.Name} into {into.Name}", logbook =>
        {
            logbook.Put(joined);
            foreach (Outing outing in moved)
                logbook.Put(outing with { Label = Free(taken, outing) });

            // The logbook remembers it, so that what another laptop logs for the record that goes finds its way.
            logbook.JoinPaddlers(from.Id, into.Id);
        });
        workspace.Remember(joined);
        return joined;
    }

    private static string Free(HashSet<(DateOnly, string)> taken, Outing outing)
    {
        string label = outing.Label;
        for (int number = 2; !taken.Add((outing.Date, label.ToUpperInvariant())); number++)
            label = outing.Label.Length == 0 ? $"{number}" : $"{outing.Label} {number}";
        return label;
    }

    private sealed record Field(string Name, Func<Paddler, string?> Text, Func<Paddler, Paddler, Paddler> Take);

    private static IEnumerable<Field> Fields(IReadOnlyList<Hull> hulls) =>
    [
        .. Enum.GetValues<BodyMeasure>().Select(measure => new Field(
            Domain.Sizing.BodyChecks.Name(measure).Split(' ', 2)[1], paddler => paddler.Body[measure]?.ToText(paddler.Unit),
            (into, from) => into with { Body = into.Body.With(measure, from.Body[measure]) })),
        new("known length", paddler => paddler.KnownLength?.ToText(paddler.Unit),
            (into, from) => into with { KnownLength = from.KnownLength }),
        new("goal race", paddler => Text.GoalText.Of(paddler.Goal, hulls), (into, from) => into with { Goal = from.Goal }),
        new("worthwhile change", paddler => paddler.WorthwhilePercent is { } percent ? Wording.Say.ChosenPercent(percent) : null,
            (into, from) => into with { WorthwhilePercent = from.WorthwhilePercent }),
        new("pieces of a trial", paddler => paddler.Trials.Pieces?.ToString(System.Globalization.CultureInfo.InvariantCulture),
            (into, from) => into with { Trials = into.Trials with { Pieces = from.Trials.Pieces } }),
        new("distance of a piece", paddler => paddler.Trials.Distance?.ToString(),
            (into, from) => into with { Trials = into.Trials with { Distance = from.Trials.Distance } }),
        new("minutes of a trial", paddler => paddler.Trials.Minutes?.ToString(System.Globalization.CultureInfo.InvariantCulture),
            (into, from) => into with { Trials = into.Trials with { Minutes = from.Trials.Minutes } }),
        new("timing", paddler => Text.TextForms.TimedBy.Write(paddler.Trials.TimedBy) is { Length: > 0 } timed ? timed : null,
            (into, from) => into with { Trials = into.Trials with { TimedBy = from.Trials.TimedBy } }),
        new("price of an outing", paddler => paddler.Trials.PricePercent is { } price ? Wording.Say.ChosenPercent(price) : null,
            (into, from) => into with { Trials = into.Trials with { PricePercent = from.Trials.PricePercent } }),
    ];
}
