using System.Buffers.Binary;
using System.Security.Cryptography;

namespace TrialLog.Logbook.Exchange;

/// <summary>
/// Remembers of a record that a merge gave it to another paddler, since the one under whom it was logged had been joined into that one. It
/// travels with the record: a logbook that joined the first into somebody else can then ask whose it is, in whichever order they meet.
/// </summary>
internal static class Origin
{
    /// <summary>
    /// The mark of a record: of whom it was logged under, and of the edits behind that. Once somebody moves the record or answers whose it
    /// is, the edits are others and the mark means nothing any more.
    /// </summary>
    /// <param name="loggedUnder">The record that is gone.</param>
    /// <param name="edits">The edits behind the field that names it.</param>
    public static long Mark(Guid loggedUnder, IReadOnlySet<long> edits)
    {
        byte[] told = new byte[16 + 8 * edits.Count];
        loggedUnder.TryWriteBytes(told);
        int at = 16;
        foreach (long edit in edits.Order())
        {
            BinaryPrimitives.WriteInt64BigEndian(told.AsSpan(at), edit);
            at += 8;
        }

        return BinaryPrimitives.ReadInt64BigEndian(SHA256.HashData(told));
    }
}
