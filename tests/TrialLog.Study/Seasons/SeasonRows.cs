using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Shell;
using TrialLog.Study.Seasons.Methods;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Study.Seasons;

/// <summary>
/// What the tool said and what was true, one row a paddler and outing, in a CSV file that runs add to: a long study can be made in parts,
/// and its tables be made anew without it.
/// </summary>
internal static class SeasonRows
{
    private const string Header = "world,seed,paddler,outings,loss,held,near,standing,worthwhile,quarter_inch,gain_left,to_go,to_go_low,"
        + "to_go_high,card_width,other_hull_held,goal_held";

    /// <summary>Adds the seasons of a world to a file.</summary>
    public static void Append(string file, World world, ulong seed, int first, IReadOnlyList<SeasonResult> results)
    {
        bool begun = File.Exists(file);
        using StreamWriter writer = new(file, append: true);
        if (!begun)
            writer.WriteLine(Header);
        for (int at = 0; at < results.Count; at++)
            for (int outings = 0; outings <= SimulatedPaddler.Outings; outings++)
            {
                SeasonResult one = results[at];
                Claims said = one.Claims[outings];
                writer.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{world.Name},{seed},{first + at},{outings},{one.Loss[outings]:R},{Bit(one.Covered![outings])}," +
                        $"{Bit(one.Near[outings])},"
                    + $"{said.Standing},{said.WorthwhileLeft:R},{said.WithinQuarterInch:R},{said.GainLeftPercent:R},{said.ToGo.Median},"
                    + $"{said.ToGo.Low},{said.ToGo.High},{said.CardWidthInches:R},{Carried(one.OtherHullHeld)},{Carried(one.GoalHeld)}"));

                string Carried(IReadOnlyDictionary<int, bool> held) => held.TryGetValue(outings, out bool value) ? Bit(value) : "";
            }
    }

    /// <summary>
    /// The seasons in such files by world, in the order of <see cref="World.All"/>; a paddler that is there twice counts once.
    /// </summary>
    public static IReadOnlyList<(World World, SeasonResult[] Results)> Read(IEnumerable<string> files)
    {
        Dictionary<string, SortedDictionary<(ulong Seed, int Paddler), SortedDictionary<int, string[]>>> rows = [];
        foreach (string[] cells in files.SelectMany(File.ReadLines).Where(line => line != Header).Select(line => line.Split(',')))
        {
            if (!rows.TryGetValue(cells[0], out var paddlers))
                rows[cells[0]] = paddlers = [];
            (ulong, int) key = (ulong.Parse(cells[1], CultureInfo.InvariantCulture), int.Parse(cells[2], CultureInfo.InvariantCulture));
            if (!paddlers.TryGetValue(key, out var outings))
                paddlers[key] = outings = [];
            outings[int.Parse(cells[3], CultureInfo.InvariantCulture)] = cells;
        }

        return [.. World.All.Where(world => rows.ContainsKey(world.Name)).Select(world => (world, rows[world.Name].Values
            .Where(outings => outings.Count == SimulatedPaddler.Outings + 1).Select(outings => Season([.. outings.Values])).ToArray()))];
    }

    private static SeasonResult Season(string[][] rows) => new(
        [.. rows.Select(row => Number(row[4]))], [.. rows.Select(row => row[5] == "1")], [.. rows.Select(row => row[6] == "1")],
        [.. rows.Select(row => new Claims(Enum.Parse<Standing>(row[7]), Number(row[8]), Number(row[9]), Number(row[10]),
            new OutingsToGo((int)Number(row[11]), (int)Number(row[12]), (int)Number(row[13])), Number(row[14]), null, null))],
        Held(rows, 15), Held(rows, 16));

    private static Dictionary<int, bool> Held(string[][] rows, int column) => rows.Select((row, outings) => (row, outings))
        .Where(one => one.row[column].Length > 0).ToDictionary(one => one.outings, one => one.row[column] == "1");

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Bit(bool value) => value ? "1" : "0";
}
