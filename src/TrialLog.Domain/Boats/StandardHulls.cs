namespace TrialLog.Domain.Boats;

/// <summary>
/// The hulls every logbook starts with. Their ids are fixed, so that two logbooks mean the same hull when they are
/// merged. OC: outrigger canoe with a rudder; V: without. The number is the crew.
/// </summary>
public static class StandardHulls
{
    /// <summary>OC1, OC2, OC6, V1, V6.</summary>
    public static readonly IReadOnlyList<Hull> All =
    [
        Of("OC1", 1, "0c100000-0000-4000-8000-000000000001"),
        Of("OC2", 2, "0c200000-0000-4000-8000-000000000002"),
        Of("OC6", 6, "0c600000-0000-4000-8000-000000000006"),
        Of("V1", 1, "0f100000-0000-4000-8000-000000000001"),
        Of("V6", 6, "0f600000-0000-4000-8000-000000000006"),
    ];

    private static Hull Of(string name, int crew, string id) => new() { Id = Guid.Parse(id), Name = name, Crew = crew };
}
