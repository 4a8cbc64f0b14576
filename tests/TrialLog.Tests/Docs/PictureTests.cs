using TrialLog.TestData.Screens;
using TrialLog.Tests.Plots;
using TrialLog.Tests.Screens;

namespace TrialLog.Tests.Docs;

/// <summary>The pictures that the documents show are the screens as they are.</summary>
[Collection(nameof(ScreensTests))]
public sealed class PictureTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-pictures-").FullName;

    [Fact]
    public void The_pictures_in_the_documents_are_what_the_command_draws_now()
    {
        string kept = Repository.File("docs/pictures");
        string[] drawn = [.. ScreenPictures.DrawOfTheDocuments(_folder, (80, 24), dark: false)
            .Select(path => Path.GetFileName(path)).Order()];
        Assert.Equal(Directory.GetFiles(kept).Select(path => Path.GetFileName(path)).Order(), drawn);
        Assert.All(drawn, name => Assert.True(File.ReadAllText(Path.Combine(kept, name)) == File.ReadAllText(Path.Combine(_folder, name)),
            $"docs/pictures/{name} is not as the screen is: dotnet run --project tests/TrialLog.Study -- screen-pictures"));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
