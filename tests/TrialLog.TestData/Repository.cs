using System.IO.Compression;

namespace TrialLog.TestData;

/// <summary>Files of the repository that tests and studies read: samples, schemas, stored references.</summary>
internal static class Repository
{
    private static readonly string Root = Find();

    /// <summary>The full path of a file or folder named from the repository's top, with forward slashes.</summary>
    public static string File(string name) => Path.Combine(Root, name.Replace('/', Path.DirectorySeparatorChar));

    /// <summary>The bytes of a file, unpacked if its name ends in .gz.</summary>
    public static byte[] Bytes(string name)
    {
        byte[] bytes = System.IO.File.ReadAllBytes(File(name));
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
        {
            if (System.IO.File.Exists(Path.Combine(at.FullName, "TrialLog.sln")))
                return at.FullName;
        }

        throw new DirectoryNotFoundException("This runs from a folder below the repository.");
    }
}
