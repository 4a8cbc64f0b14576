using System.Buffers.Binary;
using System.Text;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Recordings.Formats.Fit;

/// <summary>What a step of a workout is for.</summary>
public enum WorkoutStepKind
{
    /// <summary>Easy paddling before.</summary>
    WarmUp,

    /// <summary>A piece.</summary>
    Piece,

    /// <summary>Easy paddling or rest between pieces.</summary>
    Rest,

    /// <summary>Easy paddling after.</summary>
    CoolDown,
}

/// <summary>A step that a watch leads through. With neither distance nor time it lasts until the lap button is pressed.</summary>
/// <param name="Name">What the watch shows; watches show some fifteen characters.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="Distance">After which it ends.</param>
/// <param name="Time">After which it ends, where no distance is given.</param>
public sealed record WorkoutStep(string Name, WorkoutStepKind Kind, Distance? Distance = null, PieceTime? Time = null);

/// <summary>
/// Writes a workout for a watch by the published FIT protocol: the messages file_id, workout and workout_step, little-endian, with
/// checksums.
/// </summary>
public static class FitWorkout
{
    /// <summary>The most bytes of a name, in UTF-8; longer ones are cut.</summary>
    public const int LongestName = 30;

    // Global message numbers, values of enumerations, and base types of the protocol's profile.
    private const int FileId = 0, Workout = 26, Step = 27;
    private const byte Enumeration = 0x00, Text = 0x07, Word = 0x84, Long = 0x86;
    private const byte WorkoutFile = 5, Paddling = 19, OpenTarget = 2;
    private const byte ByTime = 0, ByDistance = 1, Open = 5;
    private const byte Active = 0, Resting = 1, WarmingUp = 2, CoolingDown = 3;
    private const ushort Development = 255;

    /// <summary>The file's bytes; the same name, steps and time give the same bytes.</summary>
    /// <param name="name">The workout's name.</param>
    /// <param name="steps">Its steps in order, at least one.</param>
    /// <param name="created">When it was made.</param>
    /// <exception cref="ArgumentException">There is no step.</exception>
    public static byte[] Write(string name, IReadOnlyList<WorkoutStep> steps, DateTimeOffset created)
    {
        if (steps.Count == 0)
            throw new ArgumentException("A workout has at least one step.", nameof(steps));
        var data = new List<byte>();
        Define(data, 0, FileId, [(0, 1, Enumeration), (1, 2, Word), (2, 2, Word), (4, 4, Long)]);
        Message(data, 0, [(WorkoutFile, 1), (Development, 2), (0, 2), ((long)(created.ToUnixTimeSeconds() - FitProfile.Epoch), 4)]);

        byte[] title = Name(name);
        Define(data, 1, Workout, [(4, 1, Enumeration), (6, 2, Word), (8, (byte)title.Length, Text)]);
        Message(data, 1, [(Paddling, 1), (steps.Count, 2)], title);

        for (int i = 0; i < steps.Count; i++)
        {
            WorkoutStep step = steps[i];
            byte[] label = Name(step.Name);
            // Distances are told in centimetres, times in milliseconds.
            (byte type, long value) = step.Distance is { } distance ? (ByDistance, (long)Math.Round(100 * distance.Metres))
                : step.Time is { } time ? (ByTime, (long)Math.Round(1000 * time.Seconds))
                : (Open, 0L);
            byte intensity = step.Kind switch
            {
                WorkoutStepKind.WarmUp => WarmingUp,
                WorkoutStepKind.Rest => Resting,
                WorkoutStepKind.CoolDown => CoolingDown,
                _ => Active,
            };
            Define(data, 2, Step,
                [(254, 2, Word), (1, 1, Enumeration), (2, 4, Long), (3, 1, Enumeration), (4, 4, Long), (7, 1, Enumeration),
                (0, (byte)label.Length, Text)]);
            Message(data, 2, [(i, 2), (type, 1), (value, 4), (OpenTarget, 1), (0, 4), (intensity, 1)], label);
        }

        return File(data);
    }

    // Whole characters, ended by a zero.
    private static byte[] Name(string text)
    {
        var bytes = new List<byte>();
        foreach (Rune rune in text.EnumerateRunes())
        {
            byte[] character = Encoding.UTF8.GetBytes(rune.ToString());
            if (bytes.Count + character.Length > LongestName)
                break;
            bytes.AddRange(character);
        }

        return [.. bytes, 0];
    }

    private static void Define(List<byte> data, int local, int message, (byte Number, byte Size, byte Type)[] fields)
    {
        data.AddRange([(byte)(0x40 | local), 0, 0, (byte)message, (byte)(message >> 8), (byte)fields.Length]);
        foreach ((byte number, byte size, byte type) in fields)
            data.AddRange([number, size, type]);
    }

    private static void Message(List<byte> data, int local, (long Value, int Size)[] numbers, byte[]? text = null)
    {
        data.Add((byte)local);
        foreach ((long value, int size) in numbers)
        {
            for (int i = 0; i < size; i++)
                data.Add((byte)(value >> (8 * i)));
        }

        data.AddRange(text ?? []);
    }

    private static byte[] File(List<byte> data)
    {
        const int header = 14;
        var file = new byte[header + data.Count + 2];
        file[0] = header;
        file[1] = 0x10;
        BinaryPrimitives.WriteUInt16LittleEndian(file.AsSpan(2), 2132);
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(4), data.Count);
        ".FIT"u8.CopyTo(file.AsSpan(8));
        BinaryPrimitives.WriteUInt16LittleEndian(file.AsSpan(12), FitChecksum.Of(file.AsSpan(0, 12)));
        data.CopyTo(file, header);
        BinaryPrimitives.WriteUInt16LittleEndian(file.AsSpan(file.Length - 2), FitChecksum.Of(file.AsSpan(0, file.Length - 2)));
        return file;
    }
}
