using System.Runtime.InteropServices;

namespace TrialLog.Tests.Logbook;

/// <summary>Somebody without rights: root, who may write anything, acts as another user on a thread of its own.</summary>
internal static class Nobody
{
    /// <summary>Everybody may read and write.</summary>
    public const UnixFileMode Everything = (UnixFileMode)0x1FF;

    /// <summary>Everybody may read, and nobody write.</summary>
    public const UnixFileMode Read = UnixFileMode.UserRead | UnixFileMode.GroupRead | UnixFileMode.OtherRead;

    /// <summary>Everybody may look into a folder, and nobody write into it.</summary>
    public const UnixFileMode Enter = Read | UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;

    // LibraryImport would need unsafe code for this one call.
#pragma warning disable SYSLIB1054, CA5392
    [DllImport("libc", EntryPoint = "setfsuid")]
    private static extern int SetFileSystemUser(uint user);
#pragma warning restore SYSLIB1054, CA5392

    /// <summary>Runs an action as that user, and fails as it fails. Skips the test where there are no Unix file permissions.</summary>
    public static void Does(Action action) => OnThread(action, user: 65534);

    /// <summary>Within such an action: does something as oneself again, who may take rights and give them back.</summary>
    public static void Aside(Action action) => OnThread(action, user: 0);

    /// <summary>Sets the mode of a folder and of all files in it.</summary>
    public static void Set(string folder, UnixFileMode ofFolder, UnixFileMode ofFiles)
    {
        if (OperatingSystem.IsWindows())
            return;
        File.SetUnixFileMode(folder, Everything);
        foreach (string file in Directory.EnumerateFiles(folder))
            File.SetUnixFileMode(file, ofFiles);
        File.SetUnixFileMode(folder, ofFolder);
    }

    // A thread begins as the user of the one that starts it.
    private static void OnThread(Action action, uint user)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Needs Unix file permissions.");
        Exception? failure = null;
        var thread = new Thread(() =>
        {
            try
            {
                if (Environment.IsPrivilegedProcess && OperatingSystem.IsLinux())
                    _ = SetFileSystemUser(user);
                action();
            }
            catch (Exception e)
            {
                failure = e;
            }
        });
        thread.Start();
        thread.Join();
        if (failure is not null)
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(failure);
    }
}
