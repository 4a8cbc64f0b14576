using System.Globalization;
using TrialLog.Domain.Values;
using TrialLog.Recordings;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Pieces;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>What became of one outing that was paddled by a card and read from its recording.</summary>
/// <param name="True">Pieces paddled.</param>
/// <param name="Missed">Of these, how many no kept piece covers.</param>
/// <param name="Asked">Whether a question came before it could be saved.</param>
/// <param name="Right">Whether the kept pieces are the paddled ones, one for one.</param>
/// <param name="Edges">Found less true time of the starts and ends of the pieces found, seconds.</param>
/// <param name="Speeds">Of the pieces found: speed error in percent, and the ± stated, one standard deviation.</param>
internal sealed record CardScore(
    int True, int Missed, bool Asked, bool Right, IReadOnlyList<double> Edges, IReadOnlyList<(double Error, double Stated)> Speeds)
{
    /// <summary>Saved without a word, and wrong.</summary>
    public bool WrongButPlausible => !Asked && !Right;
}

/// <summary>Outings paddled by a card under slow noise: what is found, what is asked, and what is wrong and yet looks right.</summary>
internal static class CardStudy
{
    // A found piece is the paddled one if what they share is four fifths of what they cover together.
    private const double SamePiece = 0.8;

    /// <summary>The rows: a name, and the plan and card of an outing.</summary>
    public static IReadOnlyList<(string Name, Func<Random, (OutingPlan Plan, CardFor Card)> Draw)> Rows { get; } =
    [
        ("round trips, 1 km", random => ByCard(random, OutingShape.RoundTrips, 1000)),
        ("round trips, 400 to 750 m", random => ByCard(random, OutingShape.RoundTrips, Short(random))),
        ("round trips, 2 km", random => ByCard(random, OutingShape.RoundTrips, 2000)),
        ("round trips, 1 km, short rests", random => ByCard(random, OutingShape.RoundTrips, 1000, shortRests: true)),
        ("round trips, 1 km, laps pressed", random => ByCard(random, OutingShape.RoundTrips, 1000, laps: true)),
        ("one way by turns, 1 km", random => ByCard(random, OutingShape.Alternating, 1000)),
        ("one way by turns, 400 to 750 m", random => ByCard(random, OutingShape.Alternating, Short(random))),
        ("one way by turns, 1 km, short rests", random => ByCard(random, OutingShape.Alternating, 1000, shortRests: true)),
        ("one way by turns, 1 km, laps pressed", random => ByCard(random, OutingShape.Alternating, 1000, laps: true)),
        ("one way, easy way back, 1 km", random => ByCard(random, OutingShape.EasyReturn, 1000)),
        ("one way, easy way back, 400 to 750 m", random => ByCard(random, OutingShape.EasyReturn, Short(random))),
        ("one way, easy way back, 1 km, laps pressed", random => ByCard(random, OutingShape.EasyReturn, 1000, laps: true)),
        ("one way in a row, 1 km", random => ByCard(random, OutingShape.InARow, 1000)),
        ("one way in a row, 400 to 750 m", random => ByCard(random, OutingShape.InARow, Short(random))),
        ("one way in a row, 1 km, short rests", random => ByCard(random, OutingShape.InARow, 1000, shortRests: true)),
        ("round trips, 1 km, led by the watch", random => Led(ByCard(random, OutingShape.RoundTrips, 1000))),
        ("one way, easy way back, 1 km, led by the watch", random => Led(ByCard(random, OutingShape.EasyReturn, 1000))),
        ("round trips, 1 km, lengths typed", random => ByCard(random, OutingShape.RoundTrips, 1000, onlyCount: true)),
        ("one way by turns, 1 km, lengths typed", random => ByCard(random, OutingShape.Alternating, 1000, onlyCount: true)),
        ("one way, easy way back, 1 km, lengths typed", random => ByCard(random, OutingShape.EasyReturn, 1000, onlyCount: true)),
        ("one way, easy way back at once, 1 km, lengths typed",
            random => AtOnce(ByCard(random, OutingShape.EasyReturn, 1000, onlyCount: true))),
        ("round trips, 1 km, lengths typed beside a card of 1 km", random => Beside(ByCard(random, OutingShape.RoundTrips, 1000))),
        ("one way, easy way back, 1 km, lengths typed beside a card of 1 km",
            random => Beside(ByCard(random, OutingShape.EasyReturn, 1000))),
        ("500 m pieces, card of 1 km", random => Other(random, metres: 500)),
        ("one piece fewer than the card", random => Other(random, fewer: 1)),
        ("one piece more than the card", random => Other(random, fewer: -1)),
        ("no noise: round trips, 1 km", random => ByCard(random, OutingShape.RoundTrips, 1000, noise: false)),
        ("no noise: one way by turns, 500 m", random => ByCard(random, OutingShape.Alternating, 500, noise: false)),
        ("no noise: one way, easy way back, 1 km", random => ByCard(random, OutingShape.EasyReturn, 1000, noise: false)),
    ];

    /// <summary>Prints the table.</summary>
    public static void Run(TextWriter output, int outings, int seed, string? only = null)
    {
        output.WriteLine("| outings by a card | pieces missed | edges within 5 s | speed error, sd | ± stated holds at 90 % | asked | " +
            "asked though right | wrong but plausible |");
        output.WriteLine("|---|---|---|---|---|---|---|---|");
        foreach (
            (string name, Func<Random, (OutingPlan, CardFor)> draw) in Rows.Where(
            row => only is null || row.Name.Contains(only, StringComparison.Ordinal)))
            output.WriteLine(Row(name, [.. Enumerable.Range(seed, outings).Select(i => Score(draw, i))]));
    }

    /// <summary>The outing of that seed, paddled, recorded, read back and scored.</summary>
    public static CardScore Score(
        Func<Random, (OutingPlan Plan, CardFor Card)> draw, int seed, Action<SimulatedOuting, RecordedOuting, double>? notRight = null)
    {
        (OutingPlan plan, CardFor card) = draw(new Random(seed));
        SimulatedOuting outing = Simulator.Run(plan, seed);
        RecordedOuting read = RecordingReader.Read(
            new MemoryStream(FitWriter.Activity(outing.Recorded, outing.Presses, outing.Offset, laps: outing.Laps)), "simulated.fit");
        read = read.For(new PieceCard(card.Pieces, Metres(card.Metres), Usual: Metres(card.Usual)));
        bool asked = read.Questions.Count > 0;
        // The recording counts from its first position, which a dropout can have taken or a wild time put too early.
        double lead = read.StartedAt.ToUnixTimeSeconds() - outing.True[0].Time;
        CardScore score = Compare(outing.Pieces, read.Kept, asked, lead);
        if (!score.Right)
            notRight?.Invoke(outing, read, lead);
        return score;
    }

    /// <summary>Lists the outings of a row that were not read as paddled: what was paddled, and what was found.</summary>
    public static void Explain(TextWriter output, int outings, int seed, string name)
    {
        Func<Random, (OutingPlan, CardFor)> draw = Rows.First(row => row.Name == name).Draw;
        for (int i = seed; i < seed + outings; i++)
        {
            CardScore score = Score(draw, i, (outing, read, lead) =>
            {
                output.WriteLine($"seed {i}: {read.Shape}, {string.Join(" ", read.Questions.Select(q => q.Says))}");
                output.WriteLine($"  paddled {string.Join(", ", outing.Pieces.Select(p => $"{p.Start - lead:0}-{p.End - lead:0}"))}");
                foreach (PieceReading reading in read.Readings)
                    output.WriteLine(
                        $"  {reading.Shape} {string.Join(", ", reading.Proposals.Select(Brief))} {reading.Against}");
            });
        }
    }

    private static string Brief(PieceProposal piece) =>
        $"{piece.Start.TotalSeconds:0}-{piece.End.TotalSeconds:0} {piece.Distance.Metres:0} m {piece.MetresPerSecond:0.00}" +
            (piece.Kept ? "" : " ✗");

    private static CardScore Compare(IReadOnlyList<TruePiece> paddled, IReadOnlyList<PieceProposal> kept, bool asked, double lead)
    {
        var edges = new List<double>();
        var speeds = new List<(double, double)>();
        int missed = 0;
        foreach (TruePiece piece in paddled)
        {
            PieceProposal? found = kept.FirstOrDefault(k => IsSame(piece, k, lead));
            if (found is null)
            {
                missed++;
                continue;
            }

            edges.Add(lead + found.Start.TotalSeconds - piece.Start);
            edges.Add(lead + found.End.TotalSeconds - piece.End);
            speeds.Add((100 * (found.MetresPerSecond / piece.OverGround - 1), found.SpeedErrorPercent));
        }

        bool right = kept.Count == paddled.Count && kept.Zip(paddled).All(pair => IsSame(pair.Second, pair.First, lead));
        return new CardScore(paddled.Count, missed, asked, right, edges, speeds);
    }

    private static bool IsSame(TruePiece piece, PieceProposal found, double lead)
    {
        double start = lead + found.Start.TotalSeconds, end = lead + found.End.TotalSeconds;
        double shared = Math.Min(end, piece.End) - Math.Max(start, piece.Start),
            covered = Math.Max(end, piece.End) - Math.Min(start, piece.Start);
        return shared >= SamePiece * covered && (found.Legs.Count > 1) == piece.RoundTrip;
    }

    private static string Row(string name, List<CardScore> scores)
    {
        int pieces = scores.Sum(s => s.True);
        double[] edges = [.. scores.SelectMany(s => s.Edges)];
        (double Error, double Stated)[] speeds = [.. scores.SelectMany(s => s.Speeds)];
        double Share(int part, int of) => 100.0 * part / Math.Max(1, of);
        return string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {Share(scores.Sum(s => s.Missed), pieces):0.0} % | " +
                $"{Share(edges.Count(e => Math.Abs(e) <= 5), edges.Length):0.0} % | " +
                $"{Math.Sqrt(speeds.Sum(s => s.Error * s.Error) / Math.Max(1, speeds.Length)):0.00} % | " +
                $"{Share(speeds.Count(s => Math.Abs(s.Error) <= 1.6449 * s.Stated), speeds.Length):0.0} % | " +
                $"{Share(scores.Count(s => s.Asked), scores.Count):0.0} % | " +
                $"{Share(scores.Count(s => s.Asked && s.Right), scores.Count):0.0} % | " +
                $"{Share(scores.Count(s => s.WrongButPlausible), scores.Count):0.0} % |");
    }

    private static Distance? Metres(double? metres) => metres is { } known ? Distance.FromMetres(known) : null;

    private static double Short(Random random) => 400 + 350 * random.NextDouble();

    private static (OutingPlan Plan, CardFor Card) ByCard(
        Random random, OutingShape shape, double metres, bool shortRests = false, bool laps = false, bool noise = true,
            bool onlyCount = false)
    {
        OutingPlan plan = OutingPlan.OfCard(random, shape, metres, shortRests ? (15, 45) : (90, 240), laps, noise);
        return (plan, new CardFor(plan.Speeds.Count, onlyCount ? null : metres));
    }

    private static (OutingPlan Plan, CardFor Card) Led((OutingPlan Plan, CardFor Card) outing) =>
        (outing.Plan with { Programmed = true }, outing.Card);

    private static (OutingPlan Plan, CardFor Card) AtOnce((OutingPlan Plan, CardFor Card) outing) =>
        (outing.Plan with { PauseBeforeReturn = 0 }, outing.Card);

    private static (OutingPlan Plan, CardFor Card) Beside((OutingPlan Plan, CardFor Card) outing) =>
        (outing.Plan, new CardFor(outing.Card.Pieces, null, outing.Card.Metres));

    // Not what the card says is paddled.
    private static (OutingPlan Plan, CardFor Card) Other(Random random, double metres = 1000, int fewer = 0)
    {
        OutingPlan plan = OutingPlan.OfCard(random, (OutingShape)random.Next(4), metres, (90, 240), laps: false);
        return (plan, new CardFor(plan.Speeds.Count + fewer, 1000));
    }
}

/// <summary>What the card of a simulated outing says.</summary>
/// <param name="Pieces">Their number.</param>
/// <param name="Metres">Of each; null where only the lengths are typed.</param>
/// <param name="Usual">Of the card that was open where the lengths are typed.</param>
internal sealed record CardFor(int Pieces, double? Metres, double? Usual = null);
