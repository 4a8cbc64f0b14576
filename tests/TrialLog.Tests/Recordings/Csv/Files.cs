using System.Text;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Shell;

namespace TrialLog.Tests.Recordings.Csv;

/// <summary>Small CSV files for tests, dated before a fixed today.</summary>
internal static class Files
{
    public static readonly DateOnly Today = new(2026, 6, 1);

    public static readonly CsvReadOptions Options = new() { Today = Today };

    public const string Header = "paddler,date,outing,piece,hull,paddle,length_in,distance_m,time,effort,wind,notes";

    public static CsvLogContents Read(string text, Encoding? encoding = null) =>
        CsvLog.Read(Bytes(text, encoding), Options);

    public static MemoryStream Bytes(string text, Encoding? encoding = null)
    {
        encoding ??= new UTF8Encoding(false);
        return new MemoryStream([.. encoding.GetPreamble(), .. encoding.GetBytes(text)]);
    }

    public static string Rows(params string[] rows) => Header + "\n" + string.Join("\n", rows) + "\n";

    public static CsvAdditions Import(string text, KnownLog known, bool skipBad = false) =>
        CsvAssembly.Assemble(Read(text), known, Options with { SkipBad = skipBad });

    public static string Export(KnownLog log)
    {
        using var to = new MemoryStream();
        CsvLog.Write(to, log);
        return Encoding.UTF8.GetString(to.ToArray());
    }

    /// <summary>The log after what is added has been put into it.</summary>
    public static KnownLog Plus(this KnownLog log, CsvAdditions additions) => new(
        Put(log.Paddlers, additions.Paddlers, paddler => paddler.Id), Put(log.Hulls, additions.Hulls, hull => hull.Id),
        Put(log.Paddles, additions.Paddles, paddle => paddle.Id),
        Put(log.Outings, [.. additions.NewOutings, .. additions.GrownOutings], outing => outing.Id));

    private static List<T> Put<T>(IReadOnlyList<T> held, IReadOnlyList<T> put, Func<T, Guid> id)
    {
        Dictionary<Guid, T> all = held.ToDictionary(id);
        foreach (T thing in put)
            all[id(thing)] = thing;
        return [.. all.Values];
    }
}
