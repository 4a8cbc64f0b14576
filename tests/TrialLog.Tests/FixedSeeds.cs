using CsCheck;

namespace TrialLog.Tests;

/// <summary>
/// Random laws with fixed seeds, so that no test fails by chance: the compiler takes these before the library's own methods of the
/// same name, which fix the first draw only. Fresh draws: <c>TRIALLOG_FRESH_SEEDS=1 dotnet test</c>. What fails is drawn once more by
/// the library, which names its seed and looks for a smaller example.
/// </summary>
internal static class FixedSeeds
{
    private const long Usual = 100;

    private static readonly ulong Start = Environment.GetEnvironmentVariable("TRIALLOG_FRESH_SEEDS") is { Length: > 0 }
        ? (ulong)Random.Shared.NextInt64() : 20_260_501;

    // tests/mutation/run looks for nothing smaller and draws a quarter: there a failure is all that is asked, many thousand times.
    private static readonly bool First = Environment.GetEnvironmentVariable("TRIALLOG_FIRST_FAILURE") is { Length: > 0 };

    public static void Sample<T>(this Gen<T> gen, Action<T> assert, long iter = Usual)
    {
        var draws = new PCG(1, Start);
        for (long i = 0; i < (First ? (iter + 3) / 4 : iter); i++)
        {
            string seed = draws.ToString();
            T drawn = gen.Generate(draws, null, out _);
            try
            {
                assert(drawn);
            }
            catch (Exception) when (!First)
            {
                Check.Sample(gen, assert, seed: seed, iter: 1000, threads: 1);
                throw;
            }
        }
    }

    public static void Sample<T>(this Gen<T> gen, Func<T, bool> holds, long iter = Usual) =>
        gen.Sample((Action<T>)(drawn => Assert.True(holds(drawn))), iter);

    public static void Sample<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> assert, long iter = Usual) =>
        gen.Sample((Action<(T1, T2)>)(drawn => assert(drawn.Item1, drawn.Item2)), iter);

    public static void Sample<T1, T2>(this Gen<(T1, T2)> gen, Func<T1, T2, bool> holds, long iter = Usual) =>
        gen.Sample((Action<(T1, T2)>)(drawn => Assert.True(holds(drawn.Item1, drawn.Item2))), iter);

    public static void Sample<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> assert, long iter = Usual) =>
        gen.Sample((Action<(T1, T2, T3)>)(drawn => assert(drawn.Item1, drawn.Item2, drawn.Item3)), iter);

    public static void Sample<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Func<T1, T2, T3, bool> holds, long iter = Usual) =>
        gen.Sample((Action<(T1, T2, T3)>)(drawn => Assert.True(holds(drawn.Item1, drawn.Item2, drawn.Item3))), iter);

    public static void Sample<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> assert, long iter = Usual) =>
        gen.Sample((Action<(T1, T2, T3, T4)>)(drawn => assert(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4)), iter);

    public static void Sample<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> gen, Action<T1, T2, T3, T4, T5> assert, long iter = Usual) =>
        gen.Sample((Action<(T1, T2, T3, T4, T5)>)(drawn => assert(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4, drawn.Item5)), iter);

    public static void Sample<T1, T2, T3, T4, T5, T6>(
        this Gen<(T1, T2, T3, T4, T5, T6)> gen, Action<T1, T2, T3, T4, T5, T6> assert, long iter = Usual) =>
        gen.Sample(
            (Action<(T1, T2, T3, T4, T5, T6)>)(
                drawn => assert(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4, drawn.Item5, drawn.Item6)), iter);
}
