using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.TestData.OddLogs;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Tuning.Answers;

/// <summary>
/// All that the tuning answers to a fixed set of logs stands in the text files beside this one. That it is right other tests say; this one
/// says what a change moves: whoever changes the engine reads in the difference which answers are others now, and that the rest kept their
/// digits. <c>TRIALLOG_REWRITE_ANSWERS=1</c> writes the files anew.
/// </summary>
public class StoredAnswersTests
{
    private const int LongestList = 7;

    // What was asked, or follows from what stands there.
    private static readonly HashSet<string> LeftOut =
    [
        nameof(Analysis.Paddler), nameof(Analysis.Hull), nameof(Analysis.Paddle), nameof(Analysis.LearntFromSquad), nameof(Analysis.Start),
        nameof(Analysis.HasCard), nameof(Analysis.DiminishingReturns),
    ];

    [Theory]
    [InlineData("varied", 0, 11)]
    [InlineData("varied", 11, 11)]
    [InlineData("varied", 22, 11)]
    [InlineData("varied", 33, 11)]
    [InlineData("varied", 44, 11)]
    [InlineData("varied", 55, 11)]
    [InlineData("odd", 1, 12)]
    [InlineData("odd", 13, 12)]
    public void The_tuning_answers_as_it_did(string kind, int first, int count)
    {
        string now = string.Concat(Enumerable.Range(first, count)
            .Select(number => Told($"{kind} {number}", kind == "odd" ? OddLog.Of(number) : VariedLog.Of(number))));
        string stored = Repository.File($"tests/TrialLog.Tests/Tuning/Answers/{kind}-{first}.txt");
        if (Environment.GetEnvironmentVariable("TRIALLOG_REWRITE_ANSWERS") == "1")
            File.WriteAllText(stored, now);
        string[] before = File.ReadAllLines(stored), after = now.Split('\n')[..^1];
        Assert.Empty(after.Zip(before).Where(lines => lines.First != lines.Second)
            .Select(lines => $"was {lines.Second}\n is {lines.First}").Take(12));
        Assert.Equal(before.Length, after.Length);
    }

    private static string Told(string name, AnalysisInput log)
    {
        var told = new StringBuilder();
        told.Append(CultureInfo.InvariantCulture, $"{name}: {log.Hull.Name}, {log.Paddle.Shortest.Inches:0.##} to ")
            .Append(CultureInfo.InvariantCulture, $"{log.Paddle.Longest.Inches:0.##} in\n");
        Analysis analysis = Tuner.Analyse(log);
        foreach (PropertyInfo property in Properties(typeof(Analysis)))
            told.Append(CultureInfo.InvariantCulture, $"  {property.Name}: {Text(property.GetValue(analysis))}\n");
        // What is carried to the other paddle and to a crew's hull.
        foreach (Assessment carried in Tuner.Carry(log, [log.Hull, StandardHulls.All[1]], log.Paddles))
            told.Append(CultureInfo.InvariantCulture, $"  to {carried.Hull.Name}: {Short(carried)}\n");
        return told.ToString();
    }

    private static string Short(Assessment carried) =>
        $"{Text(carried.Best.Length)} ({Text(carried.Best.LikelyLow)} to {Text(carried.Best.LikelyHigh)}), " +
        $"within a quarter {Number(carried.Best.WithinQuarterInch)}, {carried.Standing} {Text(carried.Why)}, " +
        $"ideal {Text(carried.Ideal.Length)}, left {Number(carried.GainLeftPercent)} {Number(carried.ProbabilityWorthwhileLeft)}";

    private static IEnumerable<PropertyInfo> Properties(Type type) => type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(property => property.GetIndexParameters().Length == 0 && !LeftOut.Contains(property.Name)
            && property.PropertyType != typeof(Guid) && property.PropertyType != typeof(Guid?))
        .OrderBy(property => property.Name, StringComparer.Ordinal);

    private static string Text(object? value) => value switch
    {
        null => "none",
        double number => Number(number),
        Length length => Number(length.Inches),
        Distance distance => Number(distance.Metres),
        Hull hull => hull.Name,
        Paddle paddle => paddle.Name,
        string or bool or int or Enum or DateOnly or Guid => string.Create(CultureInfo.InvariantCulture, $"{value}"),
        IEnumerable list => List([.. list.Cast<object?>().Select(Text)]),
        _ when value.GetType().Namespace!.StartsWith("TrialLog.", StringComparison.Ordinal) => $"({string.Join(
            "; ", Properties(value.GetType()).Select(property => $"{property.Name} {Text(property.GetValue(value))}"))})",
        _ => string.Create(CultureInfo.InvariantCulture, $"{value}"),
    };

    // The last digits may be another processor's; what is nothing is nothing on all.
    private static string Number(double number) =>
        Math.Abs(number) < 1e-9 ? "0" : number.ToString("G5", CultureInfo.InvariantCulture);

    // Of a long list, as of a curve's points, some.
    private static string List(IReadOnlyList<string> all) => all.Count <= LongestList ? $"[{string.Join(", ", all)}]"
        : $"[{all.Count}: {string.Join(", ", all.Where((_, i) => i % (all.Count / (LongestList - 1)) == 0))}]";
}
