using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary>Asks for an outing step by step. An empty answer takes what stands in brackets; a wrong one is asked again.</summary>
internal sealed class LogQuestions(ConsoleHost surroundings, Workspace workspace, Chosen chosen)
{
    private delegate bool Reader<T>(string text, out T value, out string? problem);

    /// <summary>Whether what was answered is kept as the half-typed outing, to be dropped once it is saved.</summary>
    public bool KeepsDraft { get; private set; }

    /// <summary>The outing as answered, or null where the input ended or the paddler said no.</summary>
    public OutingEntry? Ask()
    {
        TextWriter to = surroundings.Out;
        LengthUnit unit = chosen.Paddler.Unit;
        GivenCard? card = OpenCard.Of(workspace, chosen);
        OutingDraft? kept = HalfTypedOuting.Of(workspace, chosen.Paddler);
        bool keeps = kept is null
            || (kept.Editing is null && kept.Hull == chosen.Hull.Id.ToString() && kept.Paddle == chosen.Paddle.Id.ToString());
        OutingDraft before = kept is not null && keeps ? kept
            : new(chosen.Paddler.Id, null, $"{workspace.Today:yyyy-MM-dd}", chosen.Hull.Id.ToString(), chosen.Paddle.Id.ToString(), "", "",
                "", "", []);
        to.WriteLine($"{chosen.Paddler.Name}, {chosen.Hull.Name}, {chosen.Paddle.Name}. An empty answer takes what stands in [brackets].");
        if (kept is not null)
            to.WriteLine(keeps ? "An outing is half typed; what you typed is there."
                : "Another outing is half typed on the screens; it is left as it is.");
        if (!Question("Date", ReadDate(before.Date, out DateOnly day, out _) ? day : workspace.Today, date => $"{date:yyyy-MM-dd}",
            ReadDate, out DateOnly date)
            || !Question("Wind, Beaufort", Typed<Beaufort>(before.Wind, Beaufort.TryParse), Text, Optional<Beaufort>(Beaufort.TryParse),
                out Beaufort? wind))
            return null;

        bool keepsForLater = true;
        var usual = UsualSpeed.Of(workspace.Logbook.Outings(chosen.Paddler.Id), chosen.Hull.Id);
        var pieces = new List<PieceEntry>();
        while (pieces.Count < OutingProblems.MostPieces)
        {
            int next = pieces.Count;
            bool byCard = card is not null && next < card.Card.Lengths.Count, hidden = byCard && card!.Blind;
            PieceDraft? typed = next < before.Pieces.Count ? before.Pieces[next] : null;
            Length? length = !hidden && typed is not null && ReadLength(typed.Length, out Length? setTo, out _) ? setTo : byCard
                ? card!.Card.Lengths[next] : pieces.LastOrDefault()?.Length;
            Distance? distance = Typed<Distance>(typed?.Distance, Distance.TryParse)
                ?? (byCard ? card!.Card.Distance : pieces.LastOrDefault()?.Distance);
            to.WriteLine($"Piece {next + 1}{(byCard ? " (by the card)" : "; an empty time ends")}");
            if (!Question("  Time", Typed<PieceTime>(typed?.Time, PieceTime.TryParse), Text,
                Optional<PieceTime>((string? text, out PieceTime value, out string? problem) =>
                TimeText.TryRead(text, distance, usual.Fits, out value, out problem)), out PieceTime? time))
                return null;
            if (time is null && !byCard && pieces.Count > 0)
                break;
            if (time is null)
            {
                to.WriteLine("  A piece needs a time, like 5:32.");
                continue;
            }

            if ((!hidden && !Question("  Length", length, value => value?.ToText(unit) ?? "", ReadLength, out length))
                || !Question("  Distance", distance, value => value?.ToString() ?? "", Optional<Distance>(Distance.TryParse), out distance)
                || !Question("  Effort, 0 to 10", Typed<Effort>(typed?.Effort, Effort.TryParse), Text, Optional<Effort>(Effort.TryParse),
                    out Effort? effort))
                return null;
            if (length is null || distance is null)
            {
                to.WriteLine("  A piece needs a length and a distance; this one is asked again.");
                continue;
            }

            var piece = new PieceEntry(chosen.Paddle, length.Value, distance.Value, time.Value) { Effort = effort };
            if (LogOuting.ProblemWith(piece) is { } problem)
                to.WriteLine($"  {problem} This piece is asked again.");
            else
                pieces.Add(piece);
            if (keeps)
                HalfTypedOuting.Keep(
                    workspace,
                    before with
                    {
                        Date = $"{date:yyyy-MM-dd}",
                        Wind = $"{wind}",
                        Pieces = [.. pieces.Select(Draft), .. Planned(card, before).Skip(pieces.Count)]
                    });
            if (usual.Doubt(piece.Distance, piece.Time) is { } doubt)
                to.WriteLine($"  That is {doubt} than your other pieces. If it is wrong, answer no at the end, or change it later " +
                    $"with: triallog edit");
        }

        if (!Question("Soreness of shoulder, elbow or back, 0 to 10", Typed<Soreness>(before.Soreness, Soreness.TryParse), Text,
            Optional<Soreness>(Soreness.TryParse), out Soreness? soreness)
            || !Question("Notes", before.Notes.Length > 0 ? before.Notes : null, value => value ?? "", ReadText, out string? notes)
            || !Question("Save? yes or no", true, YesOrNo, ReadYes, out bool save)
            || (!save && keeps && !Question("Keep it for later? yes or no", true, YesOrNo, ReadYes, out keepsForLater)))
            return null;
        if (keeps && !keepsForLater)
            HalfTypedOuting.Drop(workspace, chosen.Paddler);
        KeepsDraft = keeps;
        return !save ? null : new OutingEntry
        {
            Paddler = chosen.Paddler,
            Hull = chosen.Hull,
            Date = date,
            Label = before.Label,
            Wind = wind,
            Notes = notes,
            Pieces = [.. pieces.Select(piece => piece with { Soreness = soreness })],
        };
    }

    // What is left of the draft or the card comes after what was typed.
    private IEnumerable<PieceDraft> Planned(GivenCard? card, OutingDraft before) => before.Pieces.Count > 0 || card is null ? before.Pieces
        : card.Card.Lengths.Select(
            length => new PieceDraft(null, length.Typed(chosen.Paddler.Unit), card.Card.Distance.ToString(), "", ""));

    private PieceDraft Draft(PieceEntry piece) =>
        new(null, piece.Length.Typed(chosen.Paddler.Unit), piece.Distance.ToString(), piece.Time.ToString(),
            piece.Effort?.ToString() ?? "");

    private static T? Typed<T>(string? text, Parser<T> parse) where T : struct => parse(text, out T value, out _) ? value : null;

    private static string YesOrNo(bool value) => value ? "yes" : "no";

    // False where the input ended.
    private bool Question<T>(string question, T otherwise, Func<T, string> show, Reader<T> read, out T answer)
    {
        answer = otherwise;
        while (true)
        {
            string bracket = show(otherwise);
            surroundings.Out.Write(bracket.Length > 0 ? $"{question} [{bracket}]: " : $"{question}: ");
            surroundings.Out.Flush();
            if (surroundings.In.ReadLine() is not { } text)
                return false;
            if (string.IsNullOrWhiteSpace(text))
            {
                answer = otherwise;
                return true;
            }

            if (read(text, out answer, out string? problem))
                return true;
            surroundings.Out.WriteLine($"  {problem}");
        }
    }

    private static string Text<T>(T? value) where T : struct => value?.ToString() ?? "";

    private delegate bool Parser<T>(string? text, out T value, out string? problem);

    private static Reader<T?> Optional<T>(Parser<T> parse) where T : struct => (string text, out T? value, out string? problem) =>
    {
        bool read = parse(text, out T plain, out problem);
        value = read ? plain : null;
        return read;
    };

    private bool ReadLength(string text, out Length? value, out string? problem)
    {
        bool read = Length.TryParse(text, chosen.Paddler.Unit, out Length plain, out problem);
        value = read ? plain : null;
        return read;
    }

    private bool ReadDate(string text, out DateOnly date, out string? problem)
    {
        problem = TextForms.Date(workspace.Today).TryRead(text, out date, out string? wrong)
            ? Plausible.ProblemWithDate(date, workspace.Today) : wrong;
        return problem is null;
    }

    private static bool ReadText(string text, out string? value, out string? problem)
    {
        (value, problem) = (text.Trim(), null);
        return true;
    }

    private static bool ReadYes(string text, out bool value, out string? problem)
    {
        value = text.Trim().StartsWith('y') || text.Trim().StartsWith('Y');
        bool read = value || text.Trim().StartsWith('n') || text.Trim().StartsWith('N');
        problem = read ? null : "Answer yes or no.";
        return read;
    }
}
