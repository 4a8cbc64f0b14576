using System.Reflection;

namespace TrialLog.Application.Workspaces;

/// <summary>The program's version: <c>0.1.0</c>.</summary>
internal static class ProgramVersion
{
    public static string Text { get; } =
        typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";
}
