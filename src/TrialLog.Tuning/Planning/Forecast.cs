using MathNet.Numerics.Distributions;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Information;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Planning;

/// <summary>
/// How many more outings until it is time to stop. Seasons are drawn from what is believed, outliers of the start length and the doubt
/// about the noise of a piece included, at evenly spread points (not random, so the answer does not wobble); each is paddled with cards as
/// the planner makes them until the stop rule ends it. Given the curvature the best length stays normal, so a season costs next to nothing.
/// Water is not as even as a simulation: how many times as long a real search takes is believed with a spread of its own, and learns from
/// forecasts that came too short.
/// </summary>
internal sealed class Forecast
{
    private const int Seasons = 160;

    /// <summary>
    /// How many times as long as simulated a search may take, and what is believed of each beforehand: where effort is held, and where
    /// heart rate shows that it strays. What a length costs and how hard it makes one push are then parted slowly, which a simulated season
    /// does not know. Chosen so that ranges hold in the study's worlds.
    /// </summary>
    private static readonly (double Times, double Held, double Strays)[] Slowness =
    [
        (0.4, 0.2, 0.04), (0.65, 0.5, 0.16), (1, 0.2, 0.24), (1.7, 0.07, 0.24), (3.3, 0.025, 0.20), (6, 0.005, 0.12),
    ];

    /// <summary>Effort strays wholly from the second of these spreads on, not at all up to the first, CR10 points. Chosen.</summary>
    private const double HeldBelow = 0.2, StraysAbove = 0.5;

    /// <summary>Forecasts of one search that follow each other are mistaken together, so each counts for a fifth. Chosen.</summary>
    private const double EarlierCountsFor = 0.2;

    /// <summary>
    /// By what the simulated value of an outing is multiplied before it is weighed against its price: a season knows its own noise, the
    /// search does not and thinks each outing worth less. Settled in the study's main and windy worlds on seed 301.
    /// </summary>
    private const double ThoughtWorth = 0.65;

    private static readonly int[] OutingsAhead = [1, 2, 3, 4, 6, 8, 12];
    private readonly Part[] _prior, _now;
    private readonly PosteriorComponent[] _truths;
    private readonly Marginal _logPiece;
    private readonly SkewGivenCurve _skew;
    private readonly double _share, _worthwhile, _stopBelow, _price, _tails, _known, _betweenVariance, _halfWidth, _cardTop;
    private readonly int _pieces, _piecesLater, _comparing, _least;
    private readonly bool _swaps, _tooShort;

    private Forecast(AssessedFit assessed, PlannedLengths planned, bool swaps)
    {
        (AnalysisInput input, Fit fit) = (assessed.Input, assessed.Fit);
        Posterior posterior = fit.Posterior;
        _swaps = swaps;
        _share = posterior.Share;
        _skew = fit.Skew;
        _logPiece = posterior.LogPiece;
        _worthwhile = assessed.Says.WorthwhilePercent;
        _price = assessed.Says.PricePercent;
        _comparing = Comparisons.Of(fit.Table).Count;
        _stopBelow = input.Settings.StopBelow * (swaps || _comparing > 0 ? 1 : input.Settings.StopBetweenOutings);
        double nu = input.Settings.DegreesOfFreedom, tails = double.IsPositiveInfinity(nu) ? 1 : (nu + 3) / (nu + 1);
        _tails = tails;
        _known = tails * planned.Form.KnownVariance(input.Settings);
        _tooShort = assessed.Says.TooShort is { } tooShort && planned.Form.Distance.Metres <= tooShort.Distance.Metres;
        _betweenVariance = posterior.LogOuting.Mean(static log => Math.Exp(2 * log));
        _pieces = planned.Form.Pieces;
        _piecesLater = planned.Form.PiecesAreOpen ? input.Settings.CardPieces : planned.Form.Pieces;
        _halfWidth = swaps && planned.Spread > 0 ? 0.5 * planned.Spread : 0.5 * input.Settings.CardWidthInches;
        _cardTop = fit.Skew.Top;
        _least = Math.Max(1, 2 - fit.Table.Outings.Select(static outing => outing.Date).Distinct().Count());
        PosteriorComponent[] parts = posterior.ByCurvature(planned.Form.LogDuration(input.Settings));
        _prior = [.. parts.Select(static part => new Part(part))];
        _now = new Part[_prior.Length];
        _truths = [.. posterior.Components];
    }

    /// <summary>The forecast.</summary>
    /// <param name="assessed">What is believed, and what it means.</param>
    /// <param name="planned">The next card.</param>
    /// <param name="swaps">Whether lengths are changed on the water.</param>
    public static OutingsToGo Of(AssessedFit assessed, PlannedLengths planned, bool swaps)
    {
        Forecast forecast = new(assessed, planned, swaps);
        // Pieces that have told what they can tell no more, however many are paddled.
        if (forecast._tooShort && assessed.Says.Why.Contains(StandingReason.PiecesTooShort))
            return new(OutingsToGo.Most, OutingsToGo.Most, OutingsToGo.Most);
        int[] outings = new int[Seasons];
        for (int season = 0; season < Seasons; season++)
            outings[season] = forecast.Season(season);
        (double Times, double Belief)[] slowness = Learnt(assessed);
        List<(int Outings, double Weight)> all = [];
        foreach (int simulated in outings)
            foreach ((double times, double belief) in slowness)
                all.Add((Taking(simulated, times), belief / Seasons));
        all.Sort(static (a, b) => a.Outings.CompareTo(b.Outings));
        return new(Quantile(all, 0.5), Quantile(all, 0.1), Quantile(all, 0.9));

        // A season that had not ended is that long or longer, however fast real ones are.
        int Taking(int simulated, double times) => simulated >= OutingsToGo.Most ? simulated
            : Math.Clamp((int)Math.Ceiling(simulated * times - 1e-9), forecast._least, OutingsToGo.Most);
    }

    private static int Quantile(List<(int Outings, double Weight)> sorted, double share)
    {
        double below = 0;
        foreach ((int outings, double weight) in sorted)
        {
            below += weight;
            if (below >= share - 1e-9)
                return outings;
        }

        return sorted[^1].Outings;
    }

    /// <summary>
    /// What earlier forecasts of this search say of its slowness: each that has been outlived makes slow ones likelier, by how likely it is
    /// under each that the search still goes on.
    /// </summary>
    private static (double Times, double Belief)[] Learnt(AssessedFit assessed)
    {
        double strays = Math.Clamp(((assessed.Fit.Effort?.UntoldSd ?? 0) - HeldBelow) / (StraysAbove - HeldBelow), 0, 1);
        int now = assessed.Fit.Table.Outings.Count;
        double[] beliefs = [.. Slowness.Select(one => Math.Log((1 - strays) * one.Held + strays * one.Strays))];
        IEnumerable<GivenCard> earlier = assessed.Input.GivenCards
            .Where(card => card.HullId == assessed.Input.Hull.Id && card.PaddleId == assessed.Input.Paddle.Id && card.Outings < now
                && card.OutingsToGo is { Median: > 0 })
            .GroupBy(static card => card.Outings).Select(static cards => cards.MaxBy(static card => card.GivenAt)!);
        foreach (GivenCard card in earlier)
        {
            (int median, int low, int high) = card.OutingsToGo!.Value;
            double spread = Math.Max(0.35, Math.Log((high + 0.5) / (Math.Max(1, low) - 0.5 + 1e-9)) / (2 * 1.2816)),
                passed = now - card.Outings;
            for (int k = 0; k < beliefs.Length; k++)
                beliefs[k] += EarlierCountsFor * Math.Log(
                    1e-6 + StandardNormal.Below((Math.Log(median * Slowness[k].Times) - Math.Log(passed + 0.5)) / Math.Min(spread, 1)));
        }

        double most = beliefs.Max(), total = beliefs.Sum(belief => Math.Exp(belief - most));
        return [.. Slowness.Select((one, k) => (one.Times, Math.Exp(beliefs[k] - most) / total))];
    }

    private int Season(int season)
    {
        // One low-discrepancy point a season: which curvature and prior component, where in it the best length lies, and how noisy pieces
        // are.
        double share = (season + 0.5) / Seasons, place = (0.5 + season * 0.7548776662466927) % 1,
            noise = (0.5 + season * 0.5698402909980532) % 1;
        PosteriorComponent truth = Truth(share);
        double best = truth.Card + Math.Sqrt(truth.CardVariance) * Normal.InvCDF(0, 1, Math.Clamp(place, 1e-3, 1 - 1e-3));
        // How noisy pieces are a search learns within an outing or two, so a season goes by its own noise from the start.
        double sigma = Math.Exp(_logPiece.Quantile(Math.Clamp(noise, 0.02, 0.98))), piece = _tails * sigma * sigma + _known;
        _prior.CopyTo(_now, 0);
        double halfWidth = _halfWidth;
        for (int outing = 0; outing < OutingsToGo.Most; outing++)
        {
            double centre = Centre();
            if (outing >= _least && Ended(centre, halfWidth, piece))
                return outing;
            int pieces = _comparing + outing < TrialForm.OutingsOfThree ? _pieces : _piecesLater;
            double variance = _swaps ? 4 * piece / pieces : 4 * (_betweenVariance + piece / pieces);
            double first = Noise(season, outing), second = Noise(season + Seasons, outing);
            // Off the middle by turns, as cards that also tell the curvature are.
            double aside = outing % 2 == 0 ? 0 : (outing % 4 == 1 ? 0.5 : -0.5) * halfWidth;
            if (_swaps && _comparing + outing < TrialForm.OutingsOfThree && pieces >= TrialForm.ThreeLengths)
            {
                Learn(centre, halfWidth, 1.5 * variance, truth.Curvature, best, first);
                Bend(halfWidth, 0.75 * 1.5 * variance, truth.Curvature, second);
            }
            else
            {
                Learn(centre + aside, halfWidth, variance, truth.Curvature, best, first);
            }

            if (_comparing + outing >= TrialForm.OutingsOfThree)
                halfWidth = Math.Max(0.75, halfWidth * 0.97);
        }

        return OutingsToGo.Most;
    }

    private PosteriorComponent Truth(double share)
    {
        double below = 0;
        foreach (PosteriorComponent part in _truths)
        {
            below += part.Weight;
            if (below >= share)
                return part;
        }

        return _truths[^1];
    }

    /// <summary>
    /// A standard normal from a low-discrepancy sequence; the plastic number's powers, Roberts 2018, "The unreasonable effectiveness of
    /// quasirandom sequences".
    /// </summary>
    private static double Noise(int season, int outing)
    {
        double share = (0.5 + season * 0.7548776662466927 + (outing + 1) * (season + 1) * 0.5698402909980532) % 1;
        return Normal.InvCDF(0, 1, Math.Clamp(share, 1e-4, 1 - 1e-4));
    }

    /// <summary>Two lengths a half width to each side of a centre: their difference in speed is 4 s c w (θ − centre).</summary>
    private void Learn(double centre, double halfWidth, double variance, double curvature, double best, double deviate)
    {
        double lopsided = _swaps ? Skewed(centre + halfWidth) - Skewed(centre - halfWidth) : 0;
        double believed = variance + _share * _share * lopsided * lopsided * _skew.Variance(curvature);
        double perInch = 4 * _share * halfWidth, seen = perInch * curvature * (best - centre) + Math.Sqrt(variance) * deviate, total = 0;
        for (int k = 0; k < _now.Length; k++)
        {
            Part part = _now[k];
            double slope = perInch * part.Curvature, spread = slope * slope * part.CardVariance + believed,
                away = seen - slope * (part.Card - centre);
            double weight = part.Weight * Math.Exp(-0.5 * away * away / spread) / Math.Sqrt(spread) + 1e-15, gain = slope / spread;
            _now[k] = part with
            {
                Weight = weight,
                Card = part.Card + gain * part.CardVariance * away,
                Goal = part.Goal + gain * part.Covariance * away,
                CardVariance = part.CardVariance - gain * slope * part.CardVariance * part.CardVariance,
                GoalVariance = part.GoalVariance - gain * slope * part.Covariance * part.Covariance,
                Covariance = part.Covariance - gain * slope * part.CardVariance * part.Covariance,
            };
            total += weight;
        }

        for (int k = 0; k < _now.Length; k++)
            _now[k] = _now[k] with { Weight = _now[k].Weight / total };
    }

    /// <summary>The middle against both ends: s c w² by how much it is faster, which tells the curvature.</summary>
    private void Bend(double halfWidth, double variance, double curvature, double deviate)
    {
        double square = _share * halfWidth * halfWidth, seen = square * curvature + Math.Sqrt(variance) * deviate, total = 0;
        for (int k = 0; k < _now.Length; k++)
        {
            double away = seen - square * _now[k].Curvature, weight = _now[k].Weight * Math.Exp(-0.5 * away * away / variance) + 1e-15;
            _now[k] = _now[k] with { Weight = weight };
            total += weight;
        }

        for (int k = 0; k < _now.Length; k++)
            _now[k] = _now[k] with { Weight = _now[k].Weight / total };
    }

    private double Skewed(double at) => (at - _cardTop) * Math.Abs(at - _cardTop);

    private double Centre()
    {
        double curvature = 0, pull = 0;
        foreach (Part part in _now)
        {
            curvature += part.Weight * part.Curvature;
            pull += part.Weight * part.Curvature * part.Goal;
        }

        return pull / curvature;
    }

    private bool Ended(double centre, double halfWidth, double piece)
    {
        double left = 0, curvature = 0, square = 0, with = 0, spread = 0, mean = 0;
        foreach (Part part in _now)
        {
            double within = Math.Sqrt(_worthwhile / (_share * part.Curvature)), sd = Math.Sqrt(part.GoalVariance);
            left += part.Weight * (
                StandardNormal.Below((part.Goal - centre - within) / sd) + StandardNormal.Below((centre - part.Goal - within) / sd));
            curvature += part.Weight * part.Curvature;
        }

        // Where pieces like these can never make the chance low enough, the search ends when they have told what they can.
        if (left >= _stopBelow && !_tooShort)
            return false;
        double perInch = 4 * _share * halfWidth, goal = 0;
        foreach (Part part in _now)
        {
            double weight = part.Weight * part.Curvature / curvature, told = perInch * part.Curvature * (part.Card - centre);
            mean += weight * told;
            goal += weight * part.Goal;
            square += weight * (told * told + perInch * perInch * part.Curvature * part.Curvature * part.CardVariance);
            with += weight * (told * part.Goal + perInch * part.Curvature * part.Covariance);
        }

        spread = square - mean * mean;
        with -= mean * goal;
        double variance = _swaps ? 4 * piece / _piecesLater : 4 * (_betweenVariance + piece / _piecesLater);
        foreach (int outings in OutingsAhead)
            if (ThoughtWorth * _share * curvature * with * with / (spread + variance / outings) > outings * _price)
                return false;
        return true;
    }

    /// <summary>With this curvature, the best length at the card's and at the goal's duration.</summary>
    private readonly record struct Part(
        double Weight, double Curvature, double Card, double CardVariance, double Goal, double GoalVariance, double Covariance)
    {
        public Part(PosteriorComponent part)
            : this(part.Weight, part.Curvature, part.Card, part.CardVariance, part.Goal, part.GoalVariance, part.Covariance) { }
    }
}
