using System.Text.Json;
using System.Text.Json.Nodes;
using TrialLog.Domain.Log;

namespace TrialLog.Logbook.Shared;

/// <summary>
/// A record of a shared file as the fields that are merged one by one. The fields are those of <see cref="RecordFields"/>;
/// what means something only together is one field.
/// </summary>
internal sealed class ItemFields
{
    /// <summary>The field of a piece that says in which outing it is.</summary>
    public const string Outing = "outing";

    private static readonly Dictionary<(string Table, string Property), string> Grouped = new()
    {
        [("paddles", "blade_in")] = "range",
        [("paddles", "shortest_in")] = "range",
        [("paddles", "longest_in")] = "range",
        [("paddles", "step_in")] = "range",
        [("paddles", "belongs_to_club")] = "owner",
        [("paddlers", "goal_hull")] = "goal",
        [("paddlers", "goal_distance_m")] = "goal",
        [("paddlers", "goal_time")] = "goal",
        [("pieces", "distance_m")] = "run",
        [("pieces", "time")] = "run",
        [("notes", "about_id")] = "about",
    };

    // Records of which all but what is named here is one field.
    private static readonly Dictionary<string, (string Field, string[] Apart)> Whole = new()
    {
        ["cards"] = ("card", ["paddler", "paddled_as"]),
        ["technique_checks"] = ("check", ["paddler"]),
        ["notes"] = ("note", ["about", "about_id"]),
        ["soreness_clearances"] = ("clearance", ["paddler"]),
        ["decisions"] = ("decision", ["paddler"]),
    };

    private static readonly string[] Body = [.. ((JsonObject)JsonSerializer.SerializeToNode(new SharedBody
    {
        SeatedReachIn = 0,
        StatureIn = 0,
        SittingShoulderHeightIn = 0,
        ShoulderElbowIn = 0,
        ElbowGripIn = 0,
        EyeHeightIn = 0,
        ShoulderBreadthIn = 0,
        ArmSpanIn = 0,
        OverheadReachIn = 0,
        HandLengthIn = 0,
        PalmLengthIn = 0,
    }, SharedOptions.Compact.GetTypeInfo(typeof(SharedBody)))!).Select(property => property.Key)];

    /// <summary>Whether a paddler's field is a body measure.</summary>
    public static bool IsBodyMeasure(string field) => Body.Contains(field);

    private readonly SharedItem _item;
    private readonly SortedDictionary<string, JsonNode> _properties = new(StringComparer.Ordinal);

    public ItemFields(SharedItem item, Guid? outing)
    {
        _item = item;
        foreach ((string name, JsonNode? value) in item.ToJson())
        {
            if (name == "body")
            {
                foreach ((string measure, JsonNode? length) in (JsonObject)value!)
                    _properties[measure] = length!;
            }
            else if (name != "id" && value is not null)
            {
                _properties[name] = value;
            }
        }

        if (outing is Guid id)
            _properties[Outing] = id;
    }

    private ItemFields(SharedItem item, SortedDictionary<string, JsonNode> properties) => (_item, _properties) = (item, properties);

    /// <summary>The fields that have a value.</summary>
    public IEnumerable<string> Names => _properties.Keys.Select(FieldOf).Distinct();

    /// <summary>A field's value as JSON, to compare; null where it has none.</summary>
    public string? this[string field]
    {
        get
        {
            List<KeyValuePair<string, JsonNode>> parts = [.. Parts(field)];
            return parts.Count == 0 ? null
                : string.Join(",", parts.Select(part => $"{part.Key}:{part.Value.ToJsonString(SharedOptions.Compact)}"));
        }
    }

    /// <summary>A field's value for a person; null where it has none.</summary>
    /// <param name="field">The field.</param>
    /// <param name="nameOf">The name of a record by its id, where it has one.</param>
    public string? Said(string field, Func<Guid, string?> nameOf)
    {
        List<KeyValuePair<string, JsonNode>> parts = [.. Parts(field)];
        return parts.Count == 0 ? null
            : string.Join(
                ", ", parts.Select(
                part => parts.Count == 1 && part.Key == field ? Text(part.Value) : $"{part.Key.Replace('_', ' ')} {Text(part.Value)}"));

        string Text(JsonNode value)
        {
            string text = value is JsonValue simple && simple.TryGetValue(out string? said) ? said
                : value.ToJsonString(SharedOptions.Compact);
            return Guid.TryParse(text, out Guid id) && nameOf(id) is { } name ? name : text;
        }
    }

    /// <summary>The record with those fields as they are in another version of it.</summary>
    public ItemFields With(IReadOnlyCollection<string> fields, ItemFields from)
    {
        var properties = new SortedDictionary<string, JsonNode>(StringComparer.Ordinal);
        foreach ((string name, JsonNode value) in _properties.Where(property => !fields.Contains(FieldOf(property.Key))))
            properties[name] = value;
        foreach ((string name, JsonNode value) in from._properties.Where(property => fields.Contains(FieldOf(property.Key))))
            properties[name] = value;
        return new ItemFields(_item, properties);
    }

    /// <summary>The outing of a piece.</summary>
    public Guid? OutingId => _properties.TryGetValue(Outing, out JsonNode? id) && _item is SharedPiece ? id.GetValue<Guid>() : null;

    /// <summary>The record.</summary>
    public SharedItem ToItem()
    {
        var json = new JsonObject { ["id"] = _item.Id };
        var body = new JsonObject();
        foreach ((string name, JsonNode value) in _properties.Where(property => !(property.Key == Outing && _item is SharedPiece)))
            (_item is SharedPaddler && Body.Contains(name) ? body : json)[name] = value.DeepClone();
        if (body.Count > 0)
            json["body"] = body;
        return (SharedItem)json.Deserialize(SharedOptions.Compact.GetTypeInfo(_item.GetType()))!;
    }

    private IEnumerable<KeyValuePair<string, JsonNode>> Parts(string field) =>
        _properties.Where(property => FieldOf(property.Key) == field);

    private string FieldOf(string property) =>
        Whole.TryGetValue(_item.Table(), out var whole) && !whole.Apart.Contains(property) ? whole.Field
        : Grouped.GetValueOrDefault((_item.Table(), property), property);
}
