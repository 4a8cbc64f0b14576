using ArchUnitNET.Domain;
using ArchUnitNET.Loader;

namespace TrialLog.Tests.Architecture;

/// <summary>The compiled house: which type uses which, read from the assemblies once.</summary>
internal static class House
{
    /// <summary>The projects, each with those it may use; nothing below uses what is above.</summary>
    public static readonly IReadOnlyDictionary<string, string[]> Projects = new Dictionary<string, string[]>
    {
        ["TrialLog.Domain"] = [],
        ["TrialLog.Tuning"] = ["TrialLog.Domain"],
        ["TrialLog.Logbook"] = ["TrialLog.Domain"],
        ["TrialLog.Recordings"] = ["TrialLog.Domain"],
        ["TrialLog.Application"] = ["TrialLog.Domain", "TrialLog.Tuning", "TrialLog.Logbook", "TrialLog.Recordings"],
        ["TrialLog.Reports"] = ["TrialLog.Domain", "TrialLog.Tuning", "TrialLog.Logbook", "TrialLog.Recordings", "TrialLog.Application"],
        ["triallog"] = ["TrialLog.Domain", "TrialLog.Tuning", "TrialLog.Logbook", "TrialLog.Recordings", "TrialLog.Application",
            "TrialLog.Reports"],
    };

    private static readonly ArchUnitNET.Domain.Architecture Built =
        new ArchLoader().LoadAssemblies([.. Projects.Keys.Select(name => System.Reflection.Assembly.Load(name))]).Build();

    /// <summary>Every type of ours, those that the compiler makes inside them included.</summary>
    public static readonly IReadOnlyList<IType> Types = [.. Built.Types.Where(IsOurs)];

    /// <summary>Whether a type lies in one of our assemblies; a type parameter lies in none.</summary>
    public static bool IsOurs(IType type) => type.Assembly is { } assembly && Projects.ContainsKey(ShortName(assembly.Name));

    /// <summary>An assembly's name without its version.</summary>
    public static string ShortName(string assembly) => assembly.Split(',')[0];

    /// <summary>
    /// The folder of a type: its namespace. Nested types, and what the compiler makes, lie where the type around them does.
    /// </summary>
    public static string FolderOf(IType type)
    {
        string name = type.FullName.Split('+', '/')[0];
        int dot = name.Split('`')[0].LastIndexOf('.');
        return dot < 0 ? "" : name[..dot];
    }

    // A generic type made with one of ours is named after itself and lies in no folder of ours.
    private static bool IsFolder(string folder) => folder == "TrialLog" || folder.StartsWith("TrialLog.", StringComparison.Ordinal);

    /// <summary>The type around a nested one, by its full name.</summary>
    public static string Outermost(IType type) => type.FullName.Split('+', '/')[0];

    /// <summary>Every use of one of our types by another that lies in another folder.</summary>
    public static readonly IReadOnlyList<Use> Uses =
    [
        .. (from type in Types
            from dependency in type.Dependencies
            let target = dependency.Target
            where IsOurs(target)
            let use = new Use(FolderOf(type), FolderOf(target), Outermost(type), Outermost(target))
            where use.From != use.To && IsFolder(use.From) && IsFolder(use.To)
            select use).Distinct(),
    ];

    /// <summary>Our types that use something of a foreign namespace, with what they use.</summary>
    public static IEnumerable<(string Folder, string User, string Used)> UsersOf(params string[] namespaces) =>
        (from type in Types
         from dependency in type.Dependencies
         let used = dependency.Target.FullName
         where namespaces.Any(name => used == name || used.StartsWith(name + ".", StringComparison.Ordinal))
         select (FolderOf(type), Outermost(type), used)).Distinct();
}

/// <summary>A type of one folder uses a type of another.</summary>
internal sealed record Use(string From, string To, string User, string Used);
