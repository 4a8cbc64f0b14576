using TrialLog.Domain.Values;

namespace TrialLog.Logbook;

/// <summary>Where a logbook lies when the user names no place.</summary>
public static class LogbookPlace
{
    /// <summary>The logbook in the user's own data folder, which is made if it is not there.</summary>
    /// <exception cref="LogbookException">There is no such folder and it cannot be made.</exception>
    public static string UsersOwn()
    {
        string data = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        if (data.Length == 0)
            throw new LogbookException("There is no user's data folder on this machine; say where the logbook is with --store FILE.");
        string folder = Path.Combine(data, "triallog");
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new LogbookException($"The folder {folder} cannot be made; say where the logbook is with --store FILE.", e);
        }
        return Path.Combine(folder, "logbook.triallog");
    }
}
