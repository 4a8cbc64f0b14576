using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// The pieces that count, as numbers: log speed, aligned length, log duration and what else explains speed. Outings stand
/// in the order of the calendar, so that the order in which they were entered cannot change the answer.
/// </summary>
internal sealed record PieceTable
{
    /// <summary>Columns of a row that make the response: log speed, then x², x, x·t, t², t, then the lopsided part.</summary>
    public const int ResponseColumns = 7;

    /// <summary>Those of them that each hull has for itself: x², x, x·t, t², t.</summary>
    public const int HullColumns = 5;

    /// <summary>Distances within this factor of the next shorter one are the same kind of piece.</summary>
    private const double AboutAsFar = 1.15;


    /// <summary>The pieces in order.</summary>
    public required IReadOnlyList<Piece> Pieces { get; init; }

    /// <summary>The outings that have such pieces, in order.</summary>
    public required IReadOnlyList<Outing> Outings { get; init; }

    /// <summary>Where each outing's pieces begin; one more entry than outings.</summary>
    public required int[] OutingStart { get; init; }

    /// <summary>The hulls that have pieces, and after them the hull asked for if it has none.</summary>
    public required IReadOnlyList<Hull> Hulls { get; init; }

    /// <summary>How many of <see cref="Hulls"/> have pieces.</summary>
    public required int HullsWithPieces { get; init; }

    /// <summary>Which of <see cref="Hulls"/> was asked for.</summary>
    public required int AskedHull { get; init; }

    /// <summary>Hull of each outing.</summary>
    public required int[] OutingHull { get; init; }

    /// <summary>Share of the boat's propulsion in each hull: 1/crew.</summary>
    public required double[] Share { get; init; }

    /// <summary>Aligned length, inches.</summary>
    public required double[] Aligned { get; init; }

    /// <summary>Mean blade of the pieces in the hull asked for, else of all pieces; the reference blade where there are none.</summary>
    public required Length MeanBlade { get; init; }

    /// <summary>Logarithm of duration over the reference duration: the mean of the hull's pieces that are about as far.</summary>
    public required double[] LogDuration { get; init; }

    /// <summary>Whether no hull has pieces of clearly different duration.</summary>
    public bool OneDurationAHull
    {
        get
        {
            double[] of = new double[HullsWithPieces];
            Array.Fill(of, double.NaN);
            for (int j = 0; j < OutingHull.Length; j++)
                for (int i = OutingStart[j]; i < OutingStart[j + 1]; i++)
                    if (double.IsNaN(of[OutingHull[j]]))
                        of[OutingHull[j]] = LogDuration[i];
                    else if (Math.Abs(LogDuration[i] - of[OutingHull[j]]) > 1e-9)
                        return false;
            return true;
        }
    }

    /// <summary>Variance of each piece that is known beforehand: timing, distance, effort not told; percent squared.</summary>
    public required double[] KnownVariance { get; init; }

    /// <summary>+1 outbound, −1 homebound, 0 where wind along the course cancels.</summary>
    public required double[] Direction { get; init; }

    /// <summary>Effort as told.</summary>
    public required ToldEffort Effort { get; init; }

    /// <summary>What explains speed in any log, before heart rate.</summary>
    public required IReadOnlyList<Covariate> PlainCovariates { get; init; }

    /// <summary>What else explains speed.</summary>
    public required Covariates Covariates { get; init; }

    /// <summary>
    /// Row-major: 1, the covariates, log speed less its prior mean, x², x, x·t, t², t, and what a lopsided curve adds around
    /// <see cref="Tops"/>, for each piece.
    /// </summary>
    public required double[] Rows { get; init; }

    /// <summary>Aligned length around which the lopsided part stands, in each hull that has pieces.</summary>
    public required double[] Tops { get; init; }

    /// <summary>Columns in a row.</summary>
    public int Width => 1 + Covariates.Count + ResponseColumns;

    /// <summary>Pieces.</summary>
    public int Count => Pieces.Count;

    /// <summary>
    /// The same pieces with the column of a lopsided curve, s (x − top) |x − top|. The top is the posterior's own, found by turns
    /// with it, so that the term stays linear.
    /// </summary>
    /// <param name="tops">Aligned length of the curve's top in each hull that has pieces.</param>
    public PieceTable WithTops(ReadOnlySpan<double> tops)
    {
        double[] rows = [.. Rows];
        for (int j = 0; j < OutingHull.Length; j++)
            for (int i = OutingStart[j]; i < OutingStart[j + 1]; i++)
            {
                double away = Aligned[i] - tops[OutingHull[j]];
                rows[(i + 1) * Width - 1] = Share[OutingHull[j]] * away * Math.Abs(away);
            }

        return this with { Rows = rows, Tops = [.. tops] };
    }

    /// <summary>Collects the pieces of a question that count.</summary>
    public static PieceTable Of(AnalysisInput question, Alignment alignment)
    {
        List<Outing> sorted = [.. question.Outings];
        sorted.Sort(ByCalendar);
        List<Outing> outings = [];
        List<Piece> pieces = [];
        List<double> aligned = [], blades = [], bladesHere = [];
        List<int> starts = [0], outingHull = [];
        List<Hull> withPieces = [];
        foreach (Outing outing in sorted)
        {
            if (question.HullWith(outing.HullId) is not { } hull)
                continue;
            int before = pieces.Count;
            foreach (Piece piece in InOrder(outing.Pieces))
            {
                if (piece.ExcludedBecause is not null || question.PaddleWith(piece.PaddleId) is not { Steering: false } paddle)
                    continue;
                pieces.Add(piece);
                aligned.Add(alignment.Align(piece.Length, hull, paddle.Blade));
                (hull.Id == question.Hull.Id ? bladesHere : blades).Add(paddle.Blade.Inches);
            }

            if (pieces.Count == before)
                continue;
            outings.Add(outing);
            starts.Add(pieces.Count);
            int index = withPieces.FindIndex(known => known.Id == hull.Id);
            if (index < 0)
            {
                index = withPieces.Count;
                withPieces.Add(hull);
            }

            outingHull.Add(index);
        }

        int asked = withPieces.FindIndex(known => known.Id == question.Hull.Id);
        List<Hull> all = [.. withPieces];
        if (asked < 0)
        {
            asked = all.Count;
            all.Add(question.Hull);
        }

        return Build(question.Settings, pieces, outings, [.. starts], [.. outingHull], all, withPieces.Count, asked, [.. aligned],
            MeanOf(bladesHere, blades));
    }

    private static Length MeanOf(List<double> here, List<double> elsewhere) =>
        here.Count > 0 ? Length.FromInches(here.Average()) : elsewhere.Count > 0 ? Length.FromInches(elsewhere.Average())
            : ExposedShaftRule.ReferenceBlade;

    private static PieceTable Build(TuningSettings settings, List<Piece> pieces, List<Outing> outings, int[] starts, int[] outingHull,
        List<Hull> hulls, int withPieces, int asked, double[] aligned, Length meanBlade)
    {
        double[] logDuration = LogDurations(settings, pieces, starts, outingHull);
        ToldEffort effort = ToldEffort.Of(settings, pieces, starts);
        double[] share = new double[hulls.Count];
        for (int h = 0; h < share.Length; h++)
            share[h] = 1.0 / Math.Max(1, hulls[h].Crew);
        IReadOnlyList<Covariate> plain = Covariates.Plain(settings, pieces, outings, starts, effort.Points);
        Covariates covariates = Covariates.Of(plain);
        PieceTable table = new()
        {
            Pieces = pieces,
            Outings = outings,
            OutingStart = starts,
            Hulls = hulls,
            HullsWithPieces = withPieces,
            AskedHull = asked,
            OutingHull = outingHull,
            Share = share,
            Aligned = aligned,
            MeanBlade = meanBlade,
            LogDuration = logDuration,
            Effort = effort,
            KnownVariance = [.. pieces.Select((piece, i) => KnownError.Variance(piece, settings) + effort.KnownVariance[i])],
            Direction = [.. pieces.Select(piece => piece.Course switch { Course.Out => 1.0, Course.Back => -1, _ => 0 })],
            PlainCovariates = plain,
            Covariates = covariates,
            Rows = [],
            Tops = new double[withPieces],
        };
        return table.With(covariates, table.KnownVariance);
    }

    /// <summary>The same pieces with other explanations beside the length.</summary>
    /// <param name="covariates">What explains speed beside the length.</param>
    /// <param name="knownVariance">Variance of each piece that is known beforehand.</param>
    public PieceTable With(Covariates covariates, double[] knownVariance)
    {
        double[] response = Centred([.. Pieces.Select(piece => 100 * Math.Log(piece.Distance.Metres / piece.Time.Seconds))], covariates,
            OutingHull, OutingStart, HullsWithPieces);
        int width = 1 + covariates.Count + ResponseColumns;
        double[] rows = new double[Count * width];
        for (int i = 0; i < Count; i++)
        {
            int at = i * width;
            double x = Aligned[i], t = LogDuration[i];
            rows[at++] = 1;
            for (int k = 0; k < covariates.Count; k++)
                rows[at++] = covariates.Values[i * covariates.Count + k];
            rows[at++] = response[i];
            rows[at++] = x * x;
            rows[at++] = x;
            rows[at++] = x * t;
            rows[at++] = t * t;
            rows[at] = t;
        }

        return (this with { Covariates = covariates, KnownVariance = knownVariance, Rows = rows }).WithTops(Tops);
    }

    /// <summary>
    /// ln(duration / reference) of each piece, as the mean of the pieces of its hull that are about as far. A piece's own
    /// time would put its speed on both sides of the model: with lengths that hardly vary, κ times duration could then stand
    /// for the speed itself. So only distances clearly apart, by more than 15 % (chosen, no source), tell durations apart.
    /// </summary>
    private static double[] LogDurations(TuningSettings settings, List<Piece> pieces, int[] starts, int[] outingHull)
    {
        double[] logDuration = new double[pieces.Count];
        for (int hull = 0; hull < pieces.Count; hull++)
        {
            List<int> members = [];
            for (int j = 0; j < outingHull.Length; j++)
                for (int i = starts[j]; outingHull[j] == hull && i < starts[j + 1]; i++)
                    members.Add(i);
            if (members.Count == 0)
                break;
            members.Sort((a, b) => pieces[a].Distance != pieces[b].Distance ? pieces[a].Distance.CompareTo(pieces[b].Distance)
                : a.CompareTo(b));
            for (int first = 0, next; first < members.Count; first = next)
            {
                double sum = 0;
                for (next = first; next < members.Count
                    && (next == first || pieces[members[next]].Distance.Metres < AboutAsFar * pieces[members[next - 1]].Distance.Metres);
                        next++)
                    sum += Math.Log(pieces[members[next]].Time.Seconds / settings.ReferenceSeconds);
                for (int k = first; k < next; k++)
                    logDuration[members[k]] = sum / (next - first);
            }
        }

        return logDuration;
    }

    /// <summary>Log speed less what the covariates' prior means explain, centred in each hull so that digits are not lost.</summary>
    private static double[] Centred(double[] logSpeed, Covariates covariates, int[] outingHull, int[] starts, int hulls)
    {
        double[] response = new double[logSpeed.Length], sums = new double[hulls];
        int[] counts = new int[hulls];
        for (int j = 0; j < outingHull.Length; j++)
            for (int i = starts[j]; i < starts[j + 1]; i++)
            {
                response[i] = logSpeed[i];
                for (int k = 0; k < covariates.Count; k++)
                    response[i] -= covariates.Values[i * covariates.Count + k] * covariates.PriorMean[k];
                sums[outingHull[j]] += response[i];
                counts[outingHull[j]]++;
            }

        for (int j = 0; j < outingHull.Length; j++)
            for (int i = starts[j]; i < starts[j + 1]; i++)
                response[i] -= sums[outingHull[j]] / counts[outingHull[j]];
        return response;
    }

    private static List<Piece> InOrder(IReadOnlyList<Piece> pieces)
    {
        List<Piece> sorted = [.. pieces];
        sorted.Sort(static (a, b) => a.Order != b.Order ? a.Order.CompareTo(b.Order) : a.Id.CompareTo(b.Id));
        return sorted;
    }

    private static int ByCalendar(Outing a, Outing b)
    {
        int byDate = a.Date.CompareTo(b.Date);
        if (byDate != 0)
            return byDate;
        int byTime = Nullable.Compare(a.Time, b.Time);
        if (byTime != 0)
            return byTime;
        int byLabel = string.CompareOrdinal(a.Label, b.Label);
        return byLabel != 0 ? byLabel : a.Id.CompareTo(b.Id);
    }
}
