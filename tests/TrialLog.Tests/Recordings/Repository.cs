using System.IO.Compression;

namespace TrialLog.Tests.Recordings;

/// <summary>Files of the repository that the tests read.</summary>
internal static class Repository
{
    private static readonly string Root = Find();

    public static string PathOf(string name) => Path.Combine(Root, name);

    /// <summary>The bytes, unpacked if the name ends in .gz.</summary>
    public static byte[] Bytes(string name)
    {
        byte[] bytes = File.ReadAllBytes(PathOf(name));
        if (!name.EndsWith(".gz", StringComparison.Ordinal))
            return bytes;
        using var gzip = new GZipStream(new MemoryStream(bytes), CompressionMode.Decompress);
        using var unpacked = new MemoryStream();
        gzip.CopyTo(unpacked);
        return unpacked.ToArray();
    }

    private static string Find()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "TrialLog.sln")))
                return at.FullName;
        throw new DirectoryNotFoundException("No TrialLog.sln above the tests.");
    }
}
