using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Architecture;

/// <summary>Which way the arrows point, read from the compiled assemblies. The laws are told in DEVELOPERS.md.</summary>
public class LawsOfTheHouse
{
    /// <summary>
    /// Arrows that point backwards, so that two folders use each other, each with its reason. Whatever is not listed here points one
    /// way; an arrow that is gone must go from the list too.
    /// </summary>
    private static readonly Dictionary<(string From, string To), string> Backwards = new()
    {
        [("TrialLog.Tuning.Assessments", "TrialLog.Tuning")] = "the input and the settings are the project's front door, read by all rooms",
        [("TrialLog.Tuning.Checks", "TrialLog.Tuning")] = "as above",
        [("TrialLog.Tuning.Classical", "TrialLog.Tuning")] = "as above",
        [("TrialLog.Tuning.Information", "TrialLog.Tuning")] = "as above",
        [("TrialLog.Tuning.Model", "TrialLog.Tuning")] = "as above",
        [("TrialLog.Tuning.Planning", "TrialLog.Tuning")] = "as above",
        [("TrialLog.Commands.Coach", "TrialLog.Commands")] = "the frame that all commands stand in lies above them",
        [("TrialLog.Commands.Sizing", "TrialLog.Commands")] = "the frame that all commands stand in lies above them",
    };

    [Fact]
    public void Projects_point_one_way() =>
        Assert.Empty(
            from use in House.Uses
            let user = ProjectOf(use.From)
            let used = ProjectOf(use.To)
            where user != used && !House.Projects[user].Contains(used)
            select $"{use.User} uses {use.Used}");

    [Fact]
    public void No_two_folders_use_each_other_but_those_that_are_named_with_a_reason()
    {
        ILookup<(string From, string To), Use> arrows = House.Uses.ToLookup(use => (use.From, use.To));
        Assert.Empty(
            from arrow in arrows
            where string.CompareOrdinal(arrow.Key.From, arrow.Key.To) < 0 && arrows.Contains((arrow.Key.To, arrow.Key.From))
            where !Backwards.ContainsKey(arrow.Key) && !Backwards.ContainsKey((arrow.Key.To, arrow.Key.From))
            select $"{arrow.Key.From} uses {Named(arrow)}; {arrow.Key.To} uses {Named(arrows[(arrow.Key.To, arrow.Key.From)])}");
    }

    [Fact]
    public void Without_those_there_is_no_circle_at_all()
    {
        List<(string From, string To)> arrows = [
            .. House.Uses.Select(use => (use.From, use.To)).Distinct().Where(arrow => !Backwards.ContainsKey(arrow))];
        HashSet<string> left = [.. arrows.SelectMany(arrow => new[] { arrow.From, arrow.To })];
        // Folders that use nothing that is left go, until none does; what then remains goes in circles.
        while (left.RemoveWhere(folder => !arrows.Any(arrow => arrow.From == folder && left.Contains(arrow.To))) > 0)
        {
        }

        while (left.RemoveWhere(folder => !arrows.Any(arrow => arrow.To == folder && left.Contains(arrow.From))) > 0)
        {
        }

        Assert.Empty(House.Uses.Where(use => left.Contains(use.From) && left.Contains(use.To) && arrows.Contains((use.From, use.To)))
            .Select(use => $"{use.From} -> {use.To}: {use.User} uses {use.Used}"));
    }

    [Fact]
    public void An_arrow_that_no_longer_points_backwards_is_no_longer_listed()
    {
        ILookup<string, string> arrows = House.Uses.Select(use => (use.From, use.To)).Distinct()
            .ToLookup(arrow => arrow.From, arrow => arrow.To);
        Assert.All(
            Backwards.Keys, arrow =>
            Assert.True(arrows[arrow.From].Contains(arrow.To) && Reaches(arrow.To, arrow.From), $"{arrow} is gone"));

        bool Reaches(string from, string to)
        {
            HashSet<string> seen = [from];
            for (Queue<string> next = new([from]); next.TryDequeue(out string? at);)
            {
                foreach (string further in arrows[at].Where(seen.Add))
                    next.Enqueue(further);
            }

            return seen.Contains(to);
        }
    }

    [Fact]
    public void Namespaces_equal_folders()
    {
        string sources = Repository.File("src");
        Assert.Empty(
            from file in Directory.EnumerateFiles(sources, "*.cs", SearchOption.AllDirectories)
            let path = Path.GetRelativePath(sources, file).Replace('\\', '/').Split('/')
            where !path.Contains("obj") && !path.Contains("bin")
            let declared = File.ReadLines(file).FirstOrDefault(line => line.StartsWith("namespace ", StringComparison.Ordinal))
            where declared is not null && declared != $"namespace {string.Join('.', path[..^1])};"
            select $"{string.Join('/', path)}: {declared}");
    }

    // What stands on the right may use what stands on the left; nothing else may.
    [Theory]
    [InlineData("System.Console", "TrialLog.Commands", "TrialLog.Screens", "TrialLog")]
    [InlineData("Terminal.Gui", "TrialLog.Screens", "TrialLog.Plots")]
    [InlineData("System.CommandLine", "TrialLog.Commands")]
    [InlineData("Microsoft.Data.Sqlite", "TrialLog.Logbook")]
    [InlineData("Dapper", "TrialLog.Logbook")]
    [InlineData("CsvHelper", "TrialLog.Recordings", "TrialLog.Reports")]
    [InlineData("Ical.Net", "TrialLog.Reports")]
    [InlineData("OxyPlot", "TrialLog.Reports")]
    [InlineData("MathNet", "TrialLog.Tuning")]
    public void Only_its_own_room_touches_a_library(string library, params string[] rooms) =>
        Assert.Empty(
            from use in House.UsersOf(library)
            where !rooms.Any(
                room => use.Folder == room || (room != "TrialLog" && use.Folder.StartsWith(room + ".", StringComparison.Ordinal)))
            select $"{use.User} uses {use.Used}");

    // Else the law above would hold because nothing is seen.
    [Theory]
    [InlineData("System.Console")]
    [InlineData("Terminal.Gui")]
    [InlineData("System.CommandLine")]
    [InlineData("Microsoft.Data.Sqlite")]
    [InlineData("MathNet")]
    public void The_room_of_a_library_does_touch_it(string library) => Assert.NotEmpty(House.UsersOf(library));

    [Fact]
    public void Domain_uses_no_package() =>
        Assert.Empty(
            from type in House.Types
            where House.FolderOf(type).StartsWith("TrialLog.Domain.", StringComparison.Ordinal)
            from dependency in type.Dependencies
            where dependency.Target.Assembly is not null
            let assembly = House.ShortName(dependency.Target.Assembly.Name)
            where assembly != "TrialLog.Domain" && !assembly.StartsWith("System.", StringComparison.Ordinal)
                && assembly is not ("mscorlib" or "netstandard")
            select $"{type.FullName} uses {dependency.Target.FullName} of {assembly}");

    // A message of an exception is for whoever calls wrongly.
    [Theory]
    [InlineData("src/TrialLog.Tuning")]
    [InlineData("src/TrialLog.Domain/Sizing")]
    public void Statistics_and_sizing_give_facts_and_no_sentences(string folder) =>
        Assert.Empty(
            from file in Directory.EnumerateFiles(Repository.File(folder), "*.cs", SearchOption.AllDirectories)
            where !file.Replace('\\', '/').Contains("/obj/", StringComparison.Ordinal)
            where !file.EndsWith("Exception.cs", StringComparison.Ordinal)
            from line in File.ReadLines(file)
            where !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && !line.Contains("Exception", StringComparison.Ordinal)
            where System.Text.RegularExpressions.Regex.IsMatch(line, "\"[A-Z][^\"]* [^\"]* [^\"]*[.!?]\"")
            select $"{Path.GetFileName(file)}: {line.Trim()}");

    /// <summary>A library does not know which program it is part of: what to type is said by whoever has commands.</summary>
    [Fact]
    public void No_library_names_a_command() =>
        Assert.Empty(
            from project in (string[])["Domain", "Tuning", "Logbook", "Recordings"]
            from file in Directory.EnumerateFiles(Repository.File($"src/TrialLog.{project}"), "*.cs", SearchOption.AllDirectories)
            where !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
            from line in File.ReadLines(file)
            where !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && line.Contains("triallog ", StringComparison.Ordinal)
            select $"{Path.GetFileName(file)}: {line.Trim()}");

    /// <summary>
    /// How rows become records is written when the program is built (Dapper.AOT); a query for which that cannot be done, as for tuples or
    /// private types, would end the program that is compiled to machine code.
    /// </summary>
    [Fact]
    public void No_query_is_left_to_be_compiled_when_it_runs()
    {
        using var file = new PEReader(File.OpenRead(typeof(LogbookFile).Assembly.Location));
        MetadataReader assembly = file.GetMetadataReader();
        List<string> called = [
            .. from handle in assembly.MemberReferences
               let member = assembly.GetMemberReference(handle)
               where member.Parent.Kind == HandleKind.TypeReference
               let type = assembly.GetTypeReference((TypeReferenceHandle)member.Parent)
               where assembly.GetString(type.Namespace) == "Dapper" && assembly.GetString(type.Name) == "SqlMapper"
               select assembly.GetString(member.Name)];
        Assert.All(called, name => Assert.Equal("AsList", name));
    }

    [Fact]
    public void Lines_keep_to_140_columns() =>
        Assert.Empty(
            from folder in (string[])["src", "tests"]
            from file in Directory.EnumerateFiles(Repository.File(folder), "*.cs", SearchOption.AllDirectories)
            where !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
            from line in File.ReadLines(file)
            where line.Length > 140
            select $"{Path.GetFileName(file)}: {line.Trim()}");

    // A law drawn by the library's own method would fail by chance.
    [Fact]
    public void Every_random_law_has_a_fixed_seed() =>
        Assert.Empty(
            from file in Directory.EnumerateFiles(Repository.File("tests/TrialLog.Tests"), "*.cs", SearchOption.AllDirectories)
            where !file.EndsWith("FixedSeeds.cs", StringComparison.Ordinal) && !file.EndsWith("LawsOfTheHouse.cs", StringComparison.Ordinal)
            let text = File.ReadAllText(file)
            where text.Contains("Check.Sample", StringComparison.Ordinal) || text.Contains("SampleModelBased", StringComparison.Ordinal)
                || text.Contains("SampleParallel", StringComparison.Ordinal) || text.Contains("threads:", StringComparison.Ordinal)
                || text.Contains("new Random()", StringComparison.Ordinal) || text.Contains("Random.Shared", StringComparison.Ordinal)
            select Path.GetFileName(file));

    private static string ProjectOf(string folder) =>
        folder.Split('.') is ["TrialLog", var second, ..] && House.Projects.ContainsKey("TrialLog." + second)
        ? "TrialLog." + second : "triallog";

    private static string Named(IEnumerable<Use> uses) => string.Join(", ", uses.Select(use => use.Used).Distinct());
}
