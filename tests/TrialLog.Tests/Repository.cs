namespace TrialLog.Tests;

/// <summary>Files of the repository that tests read: samples, schemas, stored references.</summary>
internal static class Repository
{
    private static readonly string Root = Find();

    /// <summary>The full path of a file named from the repository's top, with forward slashes.</summary>
    public static string File(string name) => Path.Combine(Root, name.Replace('/', Path.DirectorySeparatorChar));

    private static string Find()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (System.IO.File.Exists(Path.Combine(at.FullName, "TrialLog.sln")))
                return at.FullName;
        }

        throw new DirectoryNotFoundException("The tests run from a folder below the repository.");
    }
}
