using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Pieces;

/// <summary>What a question is about.</summary>
public enum QuestionKind
{
    /// <summary>The number of pieces is not the number of lengths.</summary>
    Count,

    /// <summary>Pieces are of another distance than the card's, or of very different ones.</summary>
    Distance,

    /// <summary>The stretches can be read as pieces in more than one way.</summary>
    Shape,

    /// <summary>The recording says it is of something else than paddling.</summary>
    Sport,

    /// <summary>The local time may be wrong.</summary>
    Clock,

    /// <summary>The end of the file is missing.</summary>
    CutOff,
}

/// <summary>Something that must be settled before a recording is saved.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Says">One or two plain sentences.</param>
/// <param name="CanBeConfirmed">Whether saying that it is right as shown settles it; else something must be corrected.</param>
public sealed record RecordingQuestion(QuestionKind Kind, string Says, bool CanBeConfirmed);
