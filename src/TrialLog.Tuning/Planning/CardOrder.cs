namespace TrialLog.Tuning.Planning;

/// <summary>
/// The order of lengths on a card. Mirrored, so that a straight fade touches every length alike; 0 stands for the length to begin with.
/// </summary>
internal static class CardOrder
{
    /// <summary>
    /// Two lengths: A B B A; with two pieces more A B B A A B, which leaves a third of a piece of a straight fade and cancels a bent one; A
    /// B B A B A A B cancels both.
    /// </summary>
    /// <param name="pieces">An even number from 4 on.</param>
    public static int[] OfTwo(int pieces)
    {
        int[] order = new int[pieces];
        for (int k = 0; k < pieces; k++)
        {
            int block = k / 4, place = k % 4;
            // Every second whole block is turned round; a last half block goes on as a whole one would, the other way round.
            bool turned = pieces % 4 == 0 ? int.PopCount(block) % 2 == 1 : block % 2 == 1 && (block + 1) * 4 <= pieces;
            order[k] = (place is 0 or 3) != turned ? 0 : 1;
        }

        return order;
    }

    /// <summary>Three lengths, 0 and 2 the outer ones: A B C C B A, A B B C C B B A, longer ones after the same mould.</summary>
    /// <param name="pieces">An even number from 6 on.</param>
    public static int[] OfThree(int pieces)
    {
        int half = pieces / 2;
        int[] first = half switch
        {
            3 => [0, 1, 2],
            4 => [0, 1, 1, 2],
            5 => [0, 1, 2, 0, 2],
            6 => [0, 1, 2, 2, 1, 0],
            7 => [0, 1, 2, 0, 1, 2, 1],
            8 => [0, 1, 1, 2, 2, 1, 1, 0],
            _ => throw new ArgumentOutOfRangeException(nameof(pieces), pieces, "Three lengths take an even number of pieces from 6 to 16."),
        };
        return [.. first, .. first.Reverse()];
    }

    /// <summary>How often the length changes.</summary>
    public static int Changes<T>(IReadOnlyList<T> lengths) where T : IEquatable<T>
    {
        int changes = 0;
        for (int k = 1; k < lengths.Count; k++)
            if (!lengths[k].Equals(lengths[k - 1]))
                changes++;
        return changes;
    }
}
