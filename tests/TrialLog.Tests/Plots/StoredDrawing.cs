namespace TrialLog.Tests.Plots;

/// <summary>
/// Compares a drawing with the one that is kept beside the tests and that somebody has looked at. A drawing that differs is
/// written beside it with the ending <c>.seen</c>; who finds it right renames it.
/// </summary>
internal static class StoredDrawing
{
    public static void Matches(string folder, string name, string drawing)
    {
        string directory = Repository.File($"tests/TrialLog.Tests/{folder}/drawings");
        string kept = Path.Combine(directory, name + ".txt"), seen = Path.Combine(directory, name + ".seen");
        string text = string.Join('\n', drawing.Split('\n').Select(line => line.TrimEnd())).TrimEnd('\n') + "\n";
        if (File.Exists(kept) && File.ReadAllText(kept) == text)
        {
            File.Delete(seen);
            return;
        }

        Directory.CreateDirectory(directory);
        File.WriteAllText(seen, text);
        Assert.Fail($"The drawing differs from {kept}; what was drawn is in {seen}:\n{text}");
    }
}
