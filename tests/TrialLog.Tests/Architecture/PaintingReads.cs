using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Dependencies;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Architecture;

/// <summary>Painting shows a state that was read before: from a paint method no call leads to the logbook or to an analysis.</summary>
public class PaintingReads
{
    /// <summary>What a paint method may ask of the workspace: the clock, which reads nothing.</summary>
    private static readonly string[] Clock = ["get_Today", "get_Now", "DayOf"];

    [Fact]
    public void No_paint_method_leads_to_the_logbook_or_to_an_analysis()
    {
        MethodMember[] paint =
        [
            .. from type in House.Types
               where House.FolderOf(type).StartsWith("TrialLog.Screens", StringComparison.Ordinal)
               from method in type.Members.OfType<MethodMember>()
               where Name(method) is "Paint" || Name(method).StartsWith("OnDraw", StringComparison.Ordinal)
               select method,
        ];
        Assert.True(paint.Length > 10);

        // Every method that painting leads to, with the one that called it.
        Dictionary<string, string> caller = paint.ToDictionary(method => method.FullName, method => "");
        var next = new Queue<MethodMember>(paint);
        List<string> found = [];
        while (next.TryDequeue(out MethodMember? at))
        {
            foreach (MethodMember called in at.MemberDependencies.OfType<MethodCallDependency>().Select(call => call.TargetMember)
                .OfType<MethodMember>())
            {
                string of = called.DeclaringType.FullName;
                if (of.StartsWith("TrialLog.Logbook.", StringComparison.Ordinal) || of == "TrialLog.Tuning.Tuner"
                    || (of == "TrialLog.Application.Workspaces.Workspace" && !Clock.Contains(Name(called))))
                    found.Add($"{Way(at.FullName)} > {called.DeclaringType.Name}.{Name(called)}");
                else if (of.StartsWith("TrialLog.", StringComparison.Ordinal) && caller.TryAdd(called.FullName, at.FullName))
                    next.Enqueue(called);
            }
        }

        Assert.Empty(found.Distinct());

        string Way(string method) => caller[method] is { Length: > 0 } before ? $"{Way(before)} > {Short(method)}" : Short(method);
    }

    private static string Name(MethodMember method) => method.Name.Split('(')[0];

    // TrialLog.Screens.Next.NextScreen::Paint(…) is enough as Paint.
    private static string Short(string fullName) => fullName.Split("::")[^1].Split('(')[0];
}
