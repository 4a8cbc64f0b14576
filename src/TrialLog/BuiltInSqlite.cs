using System.Runtime.InteropServices;
using SQLitePCL;

namespace TrialLog;

/// <summary>
/// The SQLite of a program compiled to machine code: it stands within the program's one file, and is loaded from memory, so that nothing is
/// unpacked and nothing is left behind. Where the system forbids that, one beside the program is looked for.
/// </summary>
internal static class BuiltInSqlite
{
    /// <summary>Has SQLite's functions found within the program, where it holds them; called before a logbook is opened.</summary>
    public static void Use()
    {
        if (typeof(BuiltInSqlite).Assembly.GetManifestResourceStream("e_sqlite3") is not { } library)
            return;
        // Once, whoever asks first: two SQLites in one process would not know of each other's locks on a logbook.
        var loaded = new Lazy<nint>(() => Loaded(library));
        NativeLibrary.SetDllImportResolver(typeof(SQLite3Provider_e_sqlite3).Assembly, (_, _, _) => loaded.Value);
    }

    private static nint Loaded(Stream library)
    {
        const uint NotForChildren = 1;
        int file = MemoryFile("e_sqlite3", NotForChildren);
        if (file < 0)
            return 0;
        string path = $"/proc/self/fd/{file}";
        using (FileStream memory = File.OpenWrite(path))
            library.CopyTo(memory);
        return NativeLibrary.TryLoad(path, out nint loaded) ? loaded : 0;
    }

    [DllImport("libc", EntryPoint = "memfd_create", CharSet = CharSet.Ansi, ExactSpelling = true)]
    private static extern int MemoryFile(string name, uint flags);
}
