using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;

namespace TrialLog.Application.Workspaces;

/// <summary>An open logbook and today's date: what every use case works on.</summary>
internal sealed class Workspace(LogbookFile logbook, TimeProvider clock)
{
    /// <summary>Years that a clock may say: outside them a day a few weeks on has no date, and a change no place in time.</summary>
    private const int FirstYear = 1971, LastYear = 2999;

    private readonly TimeProvider _clock = clock.GetUtcNow().Year is >= FirstYear and <= LastYear ? clock
        : throw new RequestException($"The clock of this computer says {clock.GetUtcNow():yyyy-MM-dd}; set it, then try again.");

    private readonly SquadLessons _lessons = new();

    private const string LastPaddler = "last-paddler", DefaultUnit = "unit", SquadTeaches = "squad-teaches", Off = "off";

    public LogbookFile Logbook => logbook;

    public DateTimeOffset Now => _clock.GetUtcNow();

    public DateOnly Today => DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);

    /// <summary>The local day of a moment.</summary>
    public DateOnly DayOf(DateTimeOffset moment) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(moment, _clock.LocalTimeZone).DateTime);

    /// <summary>
    /// The unit of a bare length where no paddler is in question, and of what is shown then: as set, else as the paddler last
    /// worked with or the only one chose, inches at first.
    /// </summary>
    public LengthUnit Unit => logbook.Setting(DefaultUnit) switch
    {
        "cm" => LengthUnit.Centimetres,
        "in" => LengthUnit.Inches,
        _ => (LatestPaddler() ?? (logbook.Paddlers() is [var only] ? only : null))?.Unit ?? LengthUnit.Inches,
    };

    /// <summary>Sets the unit of a bare length.</summary>
    public void UseUnit(LengthUnit unit) => logbook.SaveSetting(DefaultUnit, unit == LengthUnit.Centimetres ? "cm" : "in");

    /// <summary>Whether the settled logs of other paddlers here teach about a start length; they do at first.</summary>
    public bool LearnsFromSquad
    {
        get => logbook.Setting(SquadTeaches) != Off;
        set => logbook.SaveSetting(SquadTeaches, value ? "on" : Off);
    }

    /// <summary>The paddler of that name; without a name the only one, else the one last worked with.</summary>
    public Paddler PaddlerNamed(string? name)
    {
        IReadOnlyList<Paddler> all = logbook.Paddlers();
        if (name is not null)
            return Named(all, name, paddler => paddler.Name, "paddler", "triallog paddler add NAME --reach 50in");
        if (all.Count == 0)
            throw new RequestException("The logbook has no paddler yet; add one with: triallog paddler add NAME --reach 50in");
        string? last = logbook.Setting(LastPaddler);
        return all.Count == 1 ? all[0]
            : all.FirstOrDefault(paddler => paddler.Id.ToString() == last)
            ?? throw new RequestException(
                $"The logbook has {all.Count} paddlers; say which with --paddler NAME ({Names(all, paddler => paddler.Name)}).");
    }

    /// <summary>The paddler last worked with; null where nobody was or they are gone.</summary>
    public Paddler? LatestPaddler() =>
        logbook.Setting(LastPaddler) is { } last ? logbook.Paddlers().FirstOrDefault(paddler => paddler.Id.ToString() == last) : null;

    /// <summary>The hull of that name.</summary>
    public Hull HullNamed(string name) => Named(logbook.Hulls(), name, hull => hull.Name, "hull", "triallog hull add NAME --crew N");

    /// <summary>The paddle of that name.</summary>
    public Paddle PaddleNamed(string name) =>
        Named(logbook.Paddles(), name, paddle => paddle.Name, "paddle", "triallog paddle add NAME --blade 18.5in --range 48in..54in");

    /// <summary>What is asked for, gaps filled by <see cref="UsualChoice"/>.</summary>
    /// <exception cref="RequestException">There is no paddler or paddle of that name, or nobody can tell which paddle is meant.</exception>
    public Chosen Choose(string? paddlerName, string? hullName, string? paddleName)
    {
        Paddler paddler = PaddlerNamed(paddlerName);
        return Choose(paddler, hullName, paddleName, logbook.Outings(paddler.Id));
    }

    /// <summary>As <see cref="Choose(string?, string?, string?)"/>, for a paddler whose outings are at hand.</summary>
    public Chosen Choose(Paddler paddler, string? hullName, string? paddleName, IReadOnlyList<Outing> outings)
    {
        Hull hull = hullName is null ? UsualChoice.Hull(this, paddler, outings) : HullNamed(hullName);
        return new Chosen(paddler, hull, paddleName is not null ? PaddleNamed(paddleName) : UsualPaddle(paddler, hull, outings));
    }

    /// <summary>Everything an analysis looks at.</summary>
    public AnalysisInput Question(Chosen chosen) => Question(chosen, logbook.Outings(chosen.Paddler.Id));

    /// <summary>As <see cref="Question(Chosen)"/>, for outings that are at hand.</summary>
    public AnalysisInput Question(Chosen chosen, IReadOnlyList<Outing> outings) => new()
    {
        Paddler = chosen.Paddler,
        Hull = chosen.Hull,
        Paddle = chosen.Paddle,
        Hulls = logbook.Hulls(),
        Paddles = logbook.Paddles(),
        Outings = outings,
        TechniqueChecks = logbook.TechniqueChecks(chosen.Paddler.Id),
        SorenessClearances = logbook.SorenessClearances(chosen.Paddler.Id),
        GivenCards = logbook.Cards(chosen.Paddler.Id),
        Squad = LearnsFromSquad ? _lessons.For(this, chosen.Paddler) : null,
        Today = Today,
    };

    /// <summary>Remembers whom the user works with, so that the name need not be typed again.</summary>
    public void Remember(Paddler paddler)
    {
        if (!logbook.IsReadOnly && logbook.Setting(LastPaddler) != paddler.Id.ToString())
            logbook.SaveSetting(LastPaddler, paddler.Id.ToString());
    }

    private Paddle UsualPaddle(Paddler paddler, Hull hull, IReadOnlyList<Outing> outings)
    {
        IReadOnlyList<Paddle> usual = UsualChoice.Paddles(this, paddler, hull, outings);
        if (usual is [var one])
            return one;
        throw usual.Count == 0 ? NoPaddleFor(paddler)
            : new RequestException($"{Quoted.Visible(paddler.Name)} has {usual.Count} paddles; say which with --paddle NAME " +
                $"({Names(usual, paddle => paddle.Name)}).");
    }

    /// <summary>What is said where no paddle is a paddler's or the club's; another's is not named.</summary>
    public RequestException NoPaddleFor(Paddler paddler)
    {
        IReadOnlyList<Paddle> all = [.. logbook.Paddles().Where(paddle => !paddle.Steering)];
        IReadOnlyList<Paddle> nobodys = [.. all.Where(paddle => paddle.OwnerId is null)];
        return new(all.Count == 0
            ? "The logbook has no paddle yet; add one with: triallog paddle add NAME --blade 18.5in --range 48in..54in"
            : $"No paddle here is {Quoted.Visible(paddler.Name)}'s or the club's; say which with --paddle NAME" +
                $"{(nobodys.Count == 0 ? "" : $" ({Names(nobodys, paddle => paddle.Name)})")}, or whose it is: triallog paddle set NAME " +
                $"--owner \"{Quoted.Visible(paddler.Name)}\", or --club.");
    }

    private static T Named<T>(IReadOnlyList<T> all, string name, Func<T, string> nameOf, string kind, string toAdd) where T : class =>
        all.FirstOrDefault(one => string.Equals(nameOf(one), name.Trim(), StringComparison.OrdinalIgnoreCase))
        ?? throw new RequestException(all.Count == 0
            ? $"There is no {kind} “{Quoted.Brief(name)}”; add one with: {toAdd}"
            : new CloseNames(all.Select(nameOf)).To(name.Trim()) is { } close
            ? $"There is no {kind} “{Quoted.Brief(name)}”; did you mean “{Quoted.Visible(close)}”?"
            : $"There is no {kind} “{Quoted.Brief(name)}”; known: {Names(all, nameOf)}. To add one: {toAdd}");

    private static string Names<T>(IReadOnlyList<T> all, Func<T, string> nameOf) =>
        string.Join(", ", all.Take(8).Select(one => Quoted.Visible(nameOf(one)))) + (all.Count > 8 ? ", …" : "");
}
