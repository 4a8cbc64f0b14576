using TrialLog.Logbook.Exchange;

namespace TrialLog.Logbook;

/// <summary>
/// What counts as one field of a record when logbooks are merged, by table: a column, or columns that mean something
/// only together. Columns that are not named are a logbook's own (<c>name_key</c>) and never merged.
/// </summary>
internal static class RecordFields
{
    /// <summary>The field that stands for a record's being there at all.</summary>
    public const string Presence = "";

    /// <summary>
    /// Beside the fields of a record: under which records that are gone it was logged, where a merge gave it to the ones that they had
    /// become. Nobody's edit (<see cref="Exchange.Origin"/>).
    /// </summary>
    public const string Origin = "origin of";

    /// <summary>Each table's columns with the field that they belong to.</summary>
    public static readonly IReadOnlyDictionary<string, IReadOnlyList<(string Column, string Field)>> ByTable =
        new Dictionary<string, IReadOnlyList<(string, string)>>
        {
            ["hulls"] = Of("name name, crew crew, seat_height_nm seat_height_in"),
            ["paddles"] = Of("""
                name name, blade_nm range, shortest_nm range, longest_nm range, step_nm range, blade_in2 blade_area_in2, steering steering,
                owner_id owner, belongs_to_club owner
                """),
            ["paddlers"] = Of("""
                name name, unit unit, seated_reach_nm seated_reach_in, stature_nm stature_in,
                sitting_shoulder_height_nm sitting_shoulder_height_in, shoulder_elbow_nm shoulder_elbow_in, elbow_grip_nm elbow_grip_in,
                eye_height_nm eye_height_in, shoulder_breadth_nm shoulder_breadth_in, arm_span_nm arm_span_in,
                overhead_reach_nm overhead_reach_in, hand_length_nm hand_length_in, palm_length_nm palm_length_in,
                known_length_nm known_length_in, goal_hull_id goal, goal_distance_um goal, goal_time_ms goal, swaps_on_water swaps_on_water,
                worthwhile_percent worthwhile_pct, trial_pieces trial_pieces, trial_distance_um trial_distance_m,
                trial_minutes trial_minutes, trial_timed_by trial_timed_by, trial_price_percent trial_price_pct
                """),
            ["outings"] = Of("""
                paddler_id paddler, hull_id hull, date date, time time, label label, place place, wind wind, water water, notes notes,
                blind blind
                """),
            ["pieces"] = Of("""
                outing_id outing, piece_order order, paddle_id paddle, length_nm length_in, distance_um run, time_ms run,
                effort_halves effort, heart_rate heart_rate, stroke_rate_tenths stroke_rate, course course, soreness_halves soreness,
                fade_percent fade_pct, excluded_because excluded_because, notes notes, origin origin, timed_by timed_by,
                speed_error_percent speed_error_pct
                """),
            ["cards"] = Of("""
                paddler_id paddler, hull_id card, paddle_id card, given_at card, lengths_nm card, distance_um card, effort_halves card,
                rest_ms card, reason card, best_nm card, likely_low_nm card, likely_high_nm card, gain_left_percent card,
                diminishing_returns card, outings card, pieces card, blind card, given_by card, given_because card, own_lengths_nm card,
                to_go_median card, to_go_low card, to_go_high card, paddled_as paddled_as
                """),
            ["technique_checks"] = Of("""
                paddler_id paddler, hull_id check, paddle_id check, length_nm check, hand_above_eye_inches check, shaft_lean_degrees check,
                from_photo check, date check
                """),
            ["notes"] = Of("about_id about, about about, author note, written_at note, text note"),
            ["soreness_clearances"] = Of("paddler_id paddler, date clearance, said_by clearance, because clearance"),
            ["decisions"] = Of("""
                paddler_id paddler, hull_id decision, paddle_id decision, length_nm decision, kind decision, date decision,
                decided_by decision, because decision
                """),
        };

    private static IReadOnlyList<(string Column, string Field)> Of(string pairs) =>
        [.. pairs.Split(',').Select(pair => pair.Trim().Split(' ')).Select(pair => (pair[0], pair[1]))];
}
