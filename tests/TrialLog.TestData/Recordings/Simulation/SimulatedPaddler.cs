using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Pieces;

namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>Moves a canoe over invented water second by second, and notes what it truly did.</summary>
internal sealed class SimulatedPaddler
{
    // A start gets up to speed within about five seconds and a canoe left alone glides down over about as many: chosen.
    private const double Acceleration = 0.7;
    private const double Glide = 5;

    private readonly Random random;
    private readonly OutingPlan plan;
    private readonly Wander surge;
    private readonly double start;
    private double latitude, longitude, course, speed, heartRate = 90;

    public SimulatedPaddler(OutingPlan plan, Random random)
    {
        this.plan = plan;
        this.random = random;
        surge = new Wander(random, 0.025, 12);
        start = plan.Start.ToUnixTimeMilliseconds() / 1000.0;
        (latitude, longitude, course) = (plan.Latitude, plan.Longitude, plan.Course);
    }

    /// <summary>Every second so far.</summary>
    public List<RecordedPoint> Points { get; } = [];

    /// <summary>Seconds since the start.</summary>
    public double Now => Points.Count;

    /// <summary>Drifts for so many seconds.</summary>
    public void Rest(double seconds)
    {
        for (int i = 0; i < seconds; i++)
        {
            speed -= speed / Glide;
            Step(0, 100, plan.Drift);
        }
    }

    /// <summary>Paddles easily over so many metres of ground.</summary>
    public void EasyWay(double metres, double target)
    {
        for (double done = 0; done < metres; done += OverGround(speed))
            Paddle(target, 52, 120);
    }

    /// <summary>Paddles so many seconds at that speed through the water.</summary>
    public void Easy(double seconds, double target)
    {
        for (int i = 0; i < seconds; i++)
            Paddle(target, 52, 120);
    }

    /// <summary>Paddles a leg of a piece; returns when it was paddled at full speed, and the mean speed then.</summary>
    public (double Start, double End, double Speed) Leg(double metres, double target)
    {
        double done = 0, full = 0;
        while (speed <= 0.9 * target)
            done += Way(Paddle(target, 62, 158));
        double from = Now;
        while (done < metres)
        {
            double moved = Paddle(target, 62, 158);
            done += Way(moved);
            full += moved;
        }

        return (from, Now, full / (Now - from));
    }

    /// <summary>Turns about within about a dozen seconds, at about half speed.</summary>
    public void TurnAbout(double target)
    {
        int seconds = random.Next(9, 15);
        for (int i = 0; i < seconds; i++)
        {
            course += 180.0 / seconds;
            Paddle(0.55 * target, 50, 150);
        }
    }

    /// <summary>Turns about on the spot, drifting.</summary>
    public void ComeAbout() => course += 180;

    private double Way(double speed) => plan.OverGround ? OverGround(speed) : speed;

    private double OverGround(double speed) => speed + plan.Current * Math.Cos(double.DegreesToRadians(course - plan.Course));

    private double Paddle(double target, double cadence, double beats)
    {
        double wanted = target * (1 + surge.Next());
        speed += Math.Clamp(wanted - speed, -speed / Glide, Acceleration);
        Step(cadence, beats);
        return speed;
    }

    private void Step(double cadence, double beats, (double Along, double Across) drift = default)
    {
        heartRate += (beats - heartRate) / 40;
        double angle = double.DegreesToRadians(course), flow = double.DegreesToRadians(plan.Course);
        double north = speed * Math.Cos(angle) + plan.Current * Math.Cos(flow),
            east = speed * Math.Sin(angle) + plan.Current * Math.Sin(flow);
        north += drift.Along * Math.Cos(flow) - drift.Across * Math.Sin(flow);
        east += drift.Along * Math.Sin(flow) + drift.Across * Math.Cos(flow);
        (latitude, longitude) = Water.Moved(latitude, longitude, north, east);
        double strokes = cadence > 0 ? Math.Round(cadence + Noise.Normal(random)) : 0;
        Points.Add(plan.Sensors
            ? new RecordedPoint(start + Points.Count, latitude, longitude, Math.Round(heartRate), strokes)
            : new RecordedPoint(start + Points.Count, latitude, longitude, double.NaN, double.NaN));
    }
}

/// <summary>Small moves on the WGS-84 ellipsoid by its radii of curvature: another way than the program's own.</summary>
internal static class Water
{
    /// <summary>The position so many metres north and east.</summary>
    public static (double Latitude, double Longitude) Moved(double latitude, double longitude, double north, double east)
    {
        const double a = 6_378_137, f = 1 / 298.257223563, e2 = f * (2 - f);
        double sin = Math.Sin(double.DegreesToRadians(latitude)), w = Math.Sqrt(1 - e2 * sin * sin);
        double meridian = a * (1 - e2) / (w * w * w), normal = a / w;
        double newLatitude = latitude + double.RadiansToDegrees(north / meridian);
        double newLongitude = longitude + double.RadiansToDegrees(east / (normal * Math.Cos(double.DegreesToRadians(latitude))));
        return (newLatitude, newLongitude - 360 * Math.Round(newLongitude / 360));
    }
}
