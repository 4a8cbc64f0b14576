using System.Text.Json;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Supply;

/// <summary>Whatever the program is made of is named, with its licence, wherever that is told.</summary>
public class NoticesTests
{
    // Name and version of every package that the last restore of the program resolved.
    private static IEnumerable<(string Name, string Version)> Packages()
    {
        using var assets = JsonDocument.Parse(File.ReadAllText(Repository.File("src/TrialLog/obj/project.assets.json")));
        foreach (JsonProperty library in assets.RootElement.GetProperty("libraries").EnumerateObject())
        {
            // What only a published build needs comes and goes with it.
            if (library.Value.GetProperty("type").GetString() == "package"
                && !library.Name.StartsWith("Microsoft.NET.ILLink", StringComparison.Ordinal))
                yield return (library.Name.Split('/')[0], library.Name.Split('/')[1]);
        }
    }

    [Fact]
    public void Every_package_is_in_the_notices_and_the_bill_of_materials()
    {
        string notices = File.ReadAllText(Repository.File("THIRD-PARTY-NOTICES.txt"));
        string bill = File.ReadAllText(Repository.File("bill-of-materials.json"));
        Assert.NotEmpty(Packages());
        Assert.All(Packages(), package =>
        {
            Assert.Contains($"  {package.Name} {package.Version}  ", notices);
            Assert.Contains($"pkg:nuget/{package.Name}@{package.Version}\"", bill);
        });
    }

    [Fact]
    public void Every_package_that_is_used_by_name_has_its_reason_in_the_docs()
    {
        string reasons = File.ReadAllText(Repository.File("docs/dependencies.md"));
        string[] used =
        [
            .. Directory.EnumerateFiles(Repository.File("."), "*.csproj", SearchOption.AllDirectories).SelectMany(File.ReadLines)
                .Where(line => line.Contains("<PackageReference Include=", StringComparison.Ordinal)).Select(line => line.Split('"')[1])
                    .Distinct(),
        ];
        Assert.True(used.Length > 8);
        Assert.All(used, package => Assert.Contains(package, reasons));
    }
}
