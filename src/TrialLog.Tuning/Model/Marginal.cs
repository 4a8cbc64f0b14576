namespace TrialLog.Tuning.Model;

/// <summary>The posterior of one quantity on evenly spaced values.</summary>
/// <param name="Values">The values, rising.</param>
/// <param name="Probabilities">Their probabilities, which sum to one.</param>
internal sealed record Marginal(double[] Values, double[] Probabilities)
{
    /// <summary>The mean of a function of the quantity.</summary>
    public double Mean(Func<double, double> of)
    {
        double sum = 0;
        for (int k = 0; k < Values.Length; k++)
            sum += Probabilities[k] * of(Values[k]);
        return sum;
    }

    /// <summary>The value below which that share of the probability lies; each value stands for the cell around it.</summary>
    public double Quantile(double share)
    {
        if (Values.Length == 1)
            return Values[0];
        double step = Values[1] - Values[0], below = 0;
        for (int k = 0; k < Values.Length; k++)
        {
            if (below + Probabilities[k] >= share && Probabilities[k] > 0)
                return Values[k] + step * ((share - below) / Probabilities[k] - 0.5);
            below += Probabilities[k];
        }

        return Values[^1];
    }
}
