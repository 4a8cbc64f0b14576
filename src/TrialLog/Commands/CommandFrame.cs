using System.CommandLine;
using TrialLog.Application.Setup;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary>
/// What all commands share: the options that go everywhere, opening the logbook, and turning a request that cannot
/// be met into one sentence and exit code 1.
/// </summary>
internal sealed class CommandFrame(ConsoleHost surroundings)
{
    private const int Done = 0, CannotBeMet = 1;
    private const string StoreVariable = "TRIALLOG_STORE";

    public ConsoleHost ConsoleHost => surroundings;

    public TextWriter Out => surroundings.Out;

    public Option<string?> Store { get; } = new("--store")
    {
        Description = "The logbook's file; else TRIALLOG_STORE, else the user's data folder.",
        HelpName = "FILE",
        Recursive = true,
    };

    public Option<bool> Json { get; } = new("--json") { Description = "The same facts for programs." };

    public Option<string?> Paddler { get; } = new(
        "--paddler")
    { Description = "Whose; else the only paddler, or the one last worked with.", HelpName = "NAME" };

    public Option<string?> Hull { get; } = new("--hull") { Description = "Which hull; else the latest outing's.", HelpName = "NAME" };

    public Option<string?> Paddle { get; } = new("--paddle") { Description = "Which paddle; else the latest outing's.", HelpName = "NAME" };

    public Option<bool> NewName { get; } = new(
        Application.Setup.NewName.Option)
    { Description = "Take a name as new though it is close to a known one." };

    public Option<bool> NewLogbook { get; } = new("--new-logbook")
    {
        Description = "Begin a new logbook at FILE though one of much the same name is there.",
        Recursive = true,
    };

    /// <summary>Gives a command an action that works on the open logbook.</summary>
    /// <param name="command">The command.</param>
    /// <param name="action">What it does.</param>
    /// <param name="begins">Whether it may begin a new logbook at a place that the user named.</param>
    public void OnDesk(Command command, Action<ParseResult, Workspace> action, bool begins = false) =>
        command.SetAction(parsed => Guarded(() =>
    {
        using LogbookFile logbook = Open(parsed, begins);
        action(parsed, new Workspace(logbook, surroundings.Clock));
    }, parsed.GetValue(Json)));

    /// <summary>
    /// Opens the logbook; a new one only at the usual place, or where a command begins one and nothing looks like a slip. That it is new is
    /// said where its name was typed for this one run.
    /// </summary>
    public LogbookFile Open(ParseResult parsed, bool begins)
    {
        string path = StorePath(parsed);
        bool isTyped = parsed.GetValue(Store) is not null, isNamed = isTyped || surroundings.Environment(StoreVariable) is { Length: > 0 };
        if (isNamed && NamedLogbook.IsToBegin(path, begins, parsed.GetValue(NewLogbook)) && isTyped && !parsed.GetValue(Json))
            surroundings.Error.WriteLine($"A new logbook is begun: {Quoted.Visible(path)}");
        return LogbookFile.Open(path);
    }

    /// <summary>Gives a command an action that needs no logbook.</summary>
    public void WithoutLogbook(Command command, Action<ParseResult> action) =>
        command.SetAction(parsed => Guarded(() => action(parsed), parsed.GetValue(Json)));

    /// <summary>The logbook's file by option, environment or custom.</summary>
    public string StorePath(ParseResult parsed) => parsed.GetValue(Store) ?? StorePath(surroundings.Environment);

    /// <summary>The logbook's file by environment or custom; the user's data folder is made if it is missing.</summary>
    public static string StorePath(Func<string, string?> environment)
    {
        if (environment(StoreVariable) is { Length: > 0 } named)
            return named;
        string home = Environment.GetFolderPath(
            Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        string folder = Path.Combine(home.Length > 0 ? home : ".", "triallog");
        try
        {
            if (OperatingSystem.IsWindows())
                Directory.CreateDirectory(folder);
            else if (!Directory.Exists(folder))
                Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new RequestException($"The folder for the logbook, {folder}, cannot be made; name a file with --store FILE.");
        }

        return Path.Combine(folder, "logbook.db");
    }

    /// <summary>
    /// Runs an action; a request that cannot be met is said in one sentence on the error stream, as JSON where that was asked for.
    /// </summary>
    public int Guarded(Action action, bool json = false)
    {
        try
        {
            action();
            return Done;
        }
        catch (Exception failure) when (failure is RequestException or InvalidValueException or LogbookException)
        {
            Say(failure.Message, json);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            Say($"A file could not be read or written: {failure.Message}", json);
        }

        return CannotBeMet;
    }

    private void Say(string message, bool json)
    {
        if (json)
            JsonOutput.Write(surroundings.Error, ErrorFacts.Of(message));
        else
            surroundings.Error.WriteLine(message);
    }
}
