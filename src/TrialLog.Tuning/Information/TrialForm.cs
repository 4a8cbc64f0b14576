using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Information;

/// <summary>
/// What a trial outing looks like: how many pieces, how far, how timed. As told; else from the time there is; else as the log has it, in
/// round numbers; else six pieces for the first outings and four after that.
/// </summary>
/// <param name="Pieces">Pieces of the outing, an even number from 4 to 16.</param>
/// <param name="Distance">Of each.</param>
/// <param name="TimedBy">How they are timed.</param>
/// <param name="PieceSeconds">How long one takes at the paddler's pace.</param>
/// <param name="PiecesAreOpen">Whether nobody told pieces or minutes, so that they are ours to choose.</param>
internal sealed record TrialForm(int Pieces, Distance Distance, TimedBy TimedBy, double PieceSeconds, bool PiecesAreOpen)
{
    /// <summary>Pieces of late whose recordings told their error, before those speak for the pieces to come: an outing's. Chosen.</summary>
    private const int EnoughRecorded = 4;

    /// <summary>How many times as large as usual the paddler's own recordings err, as a variance; 1 where they have not told.</summary>
    private double OwnError { get; init; } = 1;

    /// <summary>Pieces for three lengths, in their mirrored order.</summary>
    public const int ThreeLengths = 6;

    /// <summary>So many outings compare three lengths where there is room: what they add to honesty they add then.</summary>
    public const int OutingsOfThree = 2;

    /// <summary>More even pieces than this nobody paddles. Chosen, no source.</summary>
    private const int MostByTime = 10;

    /// <summary>A kilometre where no piece tells the pace, seconds. Chosen: a solo outrigger canoe at an easy pace.</summary>
    private const double SecondsPerKilometre = 330;

    /// <summary>No piece is proposed shorter than this, metres. Chosen.</summary>
    private const double ShortestPiece = 500;

    /// <summary>Goals up to so many seconds are short.</summary>
    private const double ShortGoal = 360;

    /// <summary>Riegel 1981, American Scientist 69:285-90.</summary>
    private const double Riegel = 1.06;

    /// <summary>
    /// Minutes that do not go into pieces: warm-up, easy paddling between pieces with so much more a kilometre, a change of setting.
    /// Chosen.
    /// </summary>
    private const double WarmUp = 10, Easy = 0.5, EasyPerKilometre = 2, Change = 1;

    /// <summary>Distances that a person would paddle, metres.</summary>
    private static readonly double[] Round = [250, 500, 750, 1000, 1500, 2000, 3000, 4000, 5000];

    /// <summary>Distances that a person would paddle, metres, the shortest first.</summary>
    public static IReadOnlyList<double> RoundDistances => Round;

    /// <summary>The form of the next outing.</summary>
    /// <param name="input">What was asked.</param>
    /// <param name="table">The pieces so far.</param>
    /// <param name="comparing">Outings so far that compare lengths.</param>
    public static TrialForm Of(AnalysisInput input, PieceTable table, int comparing)
    {
        TrialHabits told = input.Trials;
        TimedBy timedBy = told.TimedBy ?? (table.Count > 0 ? table.Pieces[^1].TimedBy : null) ?? TimedBy.Hand;
        double pace = Pace(table);
        double ownError = OwnErrorOf(table, timedBy, input.Settings);
        int? pieces = told.Pieces is { } asked ? Math.Clamp(asked / 2 * 2, TrialHabits.FewestPieces, TrialHabits.MostPieces) : null;
        if (told.Minutes is { } minutes && pieces is null)
        {
            double metres = told.Distance?.Metres ?? BestFor(minutes, pace, timedBy, ownError, GoalSeconds(input, table), input.Settings);
            return new(Math.Clamp(Fitting(minutes, metres, pace), TrialHabits.FewestPieces, MostByTime),
                told.Distance ?? Distance.FromMetres(metres),
                timedBy, Seconds(metres, pace), false)
            { OwnError = ownError };
        }

        Distance distance = told.Distance
            ?? Distance.FromMetres(table.Count > 0 ? Usual(table) : GoalSeconds(input, table) <= ShortGoal ? 500 : 1000);
        int open = comparing < OutingsOfThree && input.Paddler.SwapsOnWater ? Math.Max(ThreeLengths, input.Settings.CardPieces)
            : input.Settings.CardPieces;
        return new(pieces ?? open, distance, timedBy, Seconds(distance.Metres, pace), pieces is null)
        {
            OwnError = ownError,
        };
    }

    /// <summary>
    /// The error that recordings of late have told of their pieces against what is usual for such a piece: a good watch's pieces to come
    /// are as good.
    /// </summary>
    private static double OwnErrorOf(PieceTable table, TimedBy timedBy, TuningSettings settings)
    {
        double told = 0, usual = 0;
        int count = 0;
        foreach (Piece piece in Late(table))
        {
            if (piece.SpeedErrorPercent is not { } percent || (piece.TimedBy ?? TimedBy.Hand) != timedBy)
                continue;
            told += percent * percent;
            usual += KnownError.Variance(timedBy, piece.Distance.Metres, piece.Time.Seconds, settings);
            count++;
        }

        return count < EnoughRecorded ? 1 : told / usual;
    }

    /// <summary>Logarithm of how long a piece takes over the reference duration.</summary>
    public double LogDuration(TuningSettings settings) => Math.Log(PieceSeconds / settings.ReferenceSeconds);

    /// <summary>The same with another number of pieces.</summary>
    public TrialForm With(int pieces) => this with { Pieces = pieces, PiecesAreOpen = PiecesAreOpen && pieces == Pieces };

    /// <summary>The same with pieces of another distance.</summary>
    public TrialForm Over(Distance distance) =>
        this with { Distance = distance, PieceSeconds = PieceSeconds * Math.Pow(distance.Metres / Distance.Metres, Riegel) };

    /// <summary>Minutes on the water: warm-up, pieces, easy paddling between them and changes of setting.</summary>
    /// <param name="changes">How often the length changes.</param>
    public double Minutes(int changes) => Minutes(Pieces, Distance.Metres, PieceSeconds, changes);

    /// <summary>
    /// Variance of a piece that is known beforehand, from timing and distance and what the paddler's recordings have told, percent squared.
    /// </summary>
    public double KnownVariance(TuningSettings settings) =>
        OwnError * KnownError.Variance(TimedBy, Distance.Metres, PieceSeconds, settings);

    /// <summary>
    /// The distance that tells most in that time: the mean of what it tells if the noise of a piece is the same at every distance and if it
    /// falls with the fourth root of the duration, since nobody knows which is true.
    /// </summary>
    private static double BestFor(
        double minutes, double pace, TimedBy timedBy, double ownError, double? goalSeconds, TuningSettings settings)
    {
        (double shortest, bool longestThatFits) = ForGoal(goalSeconds);
        if (Fitting(minutes, shortest, pace) < TrialHabits.FewestPieces)
            (shortest, longestThatFits) = (ShortestPiece, false);
        double best = shortest, most = -1;
        foreach (double metres in Round)
        {
            int pieces = Math.Min(MostByTime, Fitting(minutes, metres, pace));
            if (metres < shortest || pieces < TrialHabits.FewestPieces)
                continue;
            if (longestThatFits && pieces >= ThreeLengths)
                (best, most) = (metres, double.MaxValue);
            double seconds = Seconds(metres, pace);
            double known = ownError * KnownError.Variance(timedBy, metres, seconds, settings);
            double tells = pieces / 4.0 * (0.5 / (1 + known) + 0.5 / (Math.Sqrt(SecondsPerKilometre / seconds) + known));
            if (tells > most)
                (best, most) = (metres, tells);
        }

        return best;
    }

    /// <summary>
    /// What the goal asks of a piece: one far shorter than the goal leaves open how the best length moves with duration, which no number of
    /// such pieces takes away. Chosen: 500 m up to six minutes, a kilometre up to twenty, above that the longest of which six fit.
    /// </summary>
    private static (double Shortest, bool LongestThatFits) ForGoal(double? seconds) => seconds switch
    {
        null => (ShortestPiece, false),
        <= ShortGoal => (ShortestPiece, false),
        <= 20 * 60 => (1000, false),
        _ => (1000, true),
    };

    private static double? GoalSeconds(AnalysisInput input, PieceTable table) => Durations.GoalSeconds(input, table);

    private static int Fitting(double minutes, double metres, double pace)
    {
        int pieces = 0;
        for (int tried = TrialHabits.FewestPieces; tried <= TrialHabits.MostPieces; tried += 2)
            if (Minutes(tried, metres, Seconds(metres, pace), tried / 2) <= minutes + 0.5)
                pieces = tried;
        return pieces;
    }

    private static double Minutes(int pieces, double metres, double seconds, int changes) =>
        WarmUp + pieces * seconds / 60 + (pieces - 1) * (Easy + EasyPerKilometre * metres / 1000) + changes * Change;

    private static double Seconds(double metres, double pace) => pace * Math.Pow(metres / 1000, Riegel);

    /// <summary>Seconds that a kilometre takes, by the pieces of the last outings.</summary>
    private static double Pace(PieceTable table)
    {
        if (table.Count == 0)
            return SecondsPerKilometre;
        double[] paces = [
            .. Late(table).Select(static piece => piece.Time.Seconds * Math.Pow(1000 / piece.Distance.Metres, Riegel)).Order()];
        return paces[paces.Length / 2];
    }

    /// <summary>The round distance nearest to what was paddled of late.</summary>
    private static double Usual(PieceTable table)
    {
        double[] metres = [.. Late(table).Select(static piece => piece.Distance.Metres).Order()];
        double middle = metres[metres.Length / 2];
        return Round.MinBy(round => Math.Abs(Math.Log(round / middle)));
    }

    private static IEnumerable<Piece> Late(PieceTable table) => table.Pieces.Skip(Math.Max(0, table.Count - 20));
}
