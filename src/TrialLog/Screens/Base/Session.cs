using TrialLog.Application.Logging;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Base;

/// <summary>What all screens share: the open logbook, whose length is looked at, and what was found so far.</summary>
internal sealed class Session
{
    private readonly OutingsRead _outings;

    public Session(Workspace workspace, LogVersion version, OutingsRead outings, Look look, BackgroundAnalyses findings)
    {
        (Workspace, Version, _outings, Look, BackgroundAnalyses) = (workspace, version, outings, look, findings);
        Chosen = Choose();
        findings.Found += () => Shell?.Redraw();
    }

    public Workspace Workspace { get; }

    public LogVersion Version { get; }

    public Look Look { get; }

    public BackgroundAnalyses BackgroundAnalyses { get; }

    /// <summary>The window; set before any key is pressed.</summary>
    public IShell Shell { get; set; } = null!;

    /// <summary>Whose length, in which hull, with which paddle; null while the logbook lacks a paddler or a paddle.</summary>
    public Chosen? Chosen { get; private set; }

    /// <summary>The unit in which lengths are shown and typed.</summary>
    public LengthUnit Unit => Chosen?.Paddler.Unit ?? Workspace.Unit;

    /// <summary>The log or the choice changed.</summary>
    public event Action? Changed;

    /// <summary>The chosen paddler's outings; read again only when the log changed.</summary>
    public IReadOnlyList<Outing> Outings() => Chosen is { } chosen ? _outings.Of(chosen.Paddler) : [];

    /// <summary>A paddler's outings; read again only when the log changed.</summary>
    public IReadOnlyList<Outing> OutingsOf(Paddler paddler) => _outings.Of(paddler);

    /// <summary>Whether an outing is half typed.</summary>
    public bool HasDraft => Chosen is { } chosen && HalfTypedOuting.Exists(Workspace, chosen.Paddler);

    /// <summary>Whose log it is, in a line.</summary>
    public string Whose() => Chosen is { } chosen ? $"{chosen.Paddler.Name} · {chosen.Hull.Name} · {chosen.Paddle.Name}" : "";

    /// <summary>Looks at another paddler, hull or paddle.</summary>
    public void LookAt(Chosen chosen)
    {
        Chosen = chosen;
        UsualChoice.Keep(Workspace, chosen);
        Changed?.Invoke();
    }

    /// <summary>Says that the log changed.</summary>
    public void LogChanged()
    {
        Chosen = Choose();
        Changed?.Invoke();
    }

    private Chosen? Choose()
    {
        if (Chosen is not { } before)
            return UsualChoice.Of(Workspace);
        Paddler? paddler = Workspace.Logbook.Paddlers().FirstOrDefault(known => known.Id == before.Paddler.Id);
        Hull? hull = Workspace.Logbook.Hulls().FirstOrDefault(known => known.Id == before.Hull.Id);
        Paddle? paddle = Workspace.Logbook.Paddles().FirstOrDefault(known => known.Id == before.Paddle.Id);
        return paddler is not null && hull is not null && paddle is not null ? new Chosen(paddler, hull, paddle) : UsualChoice.Of(Workspace);
    }
}
