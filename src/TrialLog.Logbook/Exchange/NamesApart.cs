using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>
/// What records are called in this logbook once a merge is done. Names are unique here, so a record whose true name is
/// another's here is shown with a number, <c>Club adjustable (2)</c>; what travels is the true name, so numbers never pile up.
/// </summary>
internal sealed class NamesApart
{
    private readonly Dictionary<Guid, string> _shown = [];
    private readonly Dictionary<(Type, string), Guid> _taken = [];
    private readonly List<string> _remarks = [];

    public NamesApart(RecordSet here, IReadOnlyCollection<MergeWrite> writes)
    {
        List<NamedItem> named = [.. writes.OfType<PutRecord>().GroupBy(put => put.Id).Select(puts => puts.Last().Item).OfType<NamedItem>()];
        HashSet<Guid> renamed = [
            .. named.Where(item => here.Items.GetValueOrDefault(item.Id) is not NamedItem held || held.Name != item.Name)
            .Select(item => item.Id)];
        HashSet<Guid> leaving = [.. writes.OfType<RemoveRecord>().Select(write => write.Id)];
        foreach (
            NamedItem item in here.Items.Values.OfType<NamedItem>().Where(item => !renamed.Contains(item.Id) && !leaving.Contains(item.Id)))
        {
            _taken[Key(item, here.ShownNames[item.Id])] = item.Id;
            _shown[item.Id] = here.ShownNames[item.Id];
        }

        foreach (NamedItem item in named.Where(item => renamed.Contains(item.Id)).OrderBy(item => item.Id))
        {
            string shown = Of(item);
            if (shown != item.Name)
                _remarks.Add($"The {item.Kind()} “{item.Name}” of the file is shown as “{shown}”, since another here has that name.");
        }
    }

    /// <summary>A sentence for each name that is shown with a number.</summary>
    public IReadOnlyList<string> Remarks => _remarks;

    /// <summary>
    /// What a record is called here. One that was to go and stays since it is needed, or comes back since it is, may find its name
    /// given to another by then: it too is kept apart.
    /// </summary>
    public string Of(NamedItem item)
    {
        if (_shown.TryGetValue(item.Id, out string? known))
            return known;
        string shown = item.Name;
        for (int i = 2; _taken.ContainsKey(Key(item, shown)); i++)
            shown = With(item.Name, i);
        _taken[Key(item, shown)] = item.Id;
        return _shown[item.Id] = shown;
    }

    private static (Type, string) Key(NamedItem item, string name) => (item.GetType(), name.ToUpperInvariant());

    private static string With(string name, int number)
    {
        string suffix = $" ({number})";
        string stem = name.Length + suffix.Length <= NameRule.Longest ? name : name[..(NameRule.Longest - suffix.Length)];
        return (char.IsHighSurrogate(stem[^1]) ? stem[..^1] : stem).TrimEnd() + suffix;
    }
}
