using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Tracks;

/// <summary>A smoothed position and velocity.</summary>
internal readonly record struct SmoothedFix(double Time, Point3 Position, Point3 Velocity);

/// <summary>
/// Takes the noise out of positions: a Kalman filter with the Rauch-Tung-Striebel smoother (1965, AIAA Journal
/// 3(8):1445-50) over a craft whose velocity wanders (integrated white-noise acceleration), each axis alike. Fixes that lie
/// far off the smoothed track count less and it is run again (Huber weights).
/// </summary>
internal static class TrackSmoother
{
    /// <summary>
    /// Density of the craft's acceleration, m²/s³. No source: chosen so that noise of 0.4 m a second is averaged over about a second.
    /// </summary>
    public const double AccelerationDensity = 0.16;

    private const double HuberLimit = 3;

    /// <summary>Smooths one unbroken stretch of fixes, at least two, in order of time.</summary>
    /// <param name="fixes">The fixes.</param>
    /// <param name="noise">Standard deviation of a fix on each axis, metres; see <see cref="FixNoise"/>.</param>
    public static SmoothedFix[] Smooth(ReadOnlySpan<Fix> fixes, double noise)
    {
        var weights = new double[fixes.Length];
        Array.Fill(weights, 1);
        double density = AccelerationDensity / (noise * noise);
        SmoothedFix[] smooth = Pass(fixes, weights, density);
        if (Reweight(fixes, smooth, weights))
            smooth = Pass(fixes, weights, density);
        return smooth;
    }

    /// <summary>
    /// Seconds over which noise is averaged, for fixes so many seconds apart: (noise variance × interval / acceleration density)^¼.
    /// </summary>
    public static double Blur(double noise, double interval) => Math.Sqrt(Math.Sqrt(noise * noise * interval / AccelerationDensity));

    private static bool Reweight(ReadOnlySpan<Fix> fixes, SmoothedFix[] smooth, double[] weights)
    {
        var residuals = new double[fixes.Length];
        for (int i = 0; i < residuals.Length; i++)
            residuals[i] = (fixes[i].Position - smooth[i].Position).Norm;
        double[] sorted = [.. residuals];
        Array.Sort(sorted);
        // The rounding of coordinates alone leaves about a decimetre.
        double limit = HuberLimit * Math.Max(0.1, sorted[sorted.Length / 2]);
        bool any = false;
        for (int i = 0; i < residuals.Length; i++)
        {
            weights[i] = residuals[i] <= limit ? 1 : limit / residuals[i];
            any |= weights[i] < 1;
        }

        return any;
    }

    // Covariances are in units of the noise variance of a fix; they are the same on all three axes.
    private static SmoothedFix[] Pass(ReadOnlySpan<Fix> fixes, double[] weights, double density)
    {
        int n = fixes.Length;
        Point3 origin = fixes[0].Position;
        var states = new State[n];
        var predicted = new State[n];
        var state = new State(default, default, 1, 0, 100);
        for (int i = 0; i < n; i++)
        {
            if (i > 0)
                state = state.After(fixes[i].Time - fixes[i - 1].Time, density);
            predicted[i] = state;
            double noise = 1 / (weights[i] * weights[i]);
            double gainPosition = state.A / (state.A + noise), gainVelocity = state.B / (state.A + noise);
            Point3 surprise = fixes[i].Position - origin - state.Position;
            if (i == 0)
                state = new State(surprise, default, noise, 0, 100);
            else
            {
                state = new State(
                    state.Position + gainPosition * surprise,
                    state.Velocity + gainVelocity * surprise,
                    (1 - gainPosition) * state.A,
                    (1 - gainPosition) * state.B,
                    state.C - gainVelocity * state.B);
            }

            states[i] = state;
        }

        var smooth = new SmoothedFix[n];
        smooth[n - 1] = new SmoothedFix(fixes[n - 1].Time, origin + state.Position, state.Velocity);
        for (int i = n - 2; i >= 0; i--)
        {
            State now = states[i], next = predicted[i + 1];
            double step = fixes[i + 1].Time - fixes[i].Time;
            // Smoother gain: P Fᵀ (P⁻)⁻¹ for 2 × 2 matrices.
            double determinant = next.A * next.C - next.B * next.B;
            double pa = now.A + step * now.B, pb = now.B + step * now.C;
            double gain11 = (pa * next.C - now.B * next.B) / determinant, gain12 = (now.B * next.A - pa * next.B) / determinant;
            double gain21 = (pb * next.C - now.C * next.B) / determinant, gain22 = (now.C * next.A - pb * next.B) / determinant;
            Point3 positionError = smooth[i + 1].Position - origin - next.Position, velocityError = smooth[i + 1].Velocity - next.Velocity;
            smooth[i] = new SmoothedFix(
                fixes[i].Time,
                origin + now.Position + gain11 * positionError + gain12 * velocityError,
                now.Velocity + gain21 * positionError + gain22 * velocityError);
        }

        return smooth;
    }

    /// <summary>Position and velocity, with their variances A and C and covariance B.</summary>
    private readonly record struct State(Point3 Position, Point3 Velocity, double A, double B, double C)
    {
        public State After(double step, double density) => new(
            Position + step * Velocity,
            Velocity,
            A + 2 * step * B + step * step * C + density * step * step * step / 3,
            B + step * C + density * step * step / 2,
            C + density * step);
    }
}
