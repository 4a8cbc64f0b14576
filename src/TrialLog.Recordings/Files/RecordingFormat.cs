namespace TrialLog.Recordings.Files;

/// <summary>The formats of recordings that can be read.</summary>
public enum RecordingFormat
{
    /// <summary>GPS Exchange Format 1.1 (and 1.0, whose tracks look the same).</summary>
    Gpx,

    /// <summary>Training Center XML, version 2.</summary>
    Tcx,

    /// <summary>Flexible and Interoperable Data Transfer, the binary format of watches.</summary>
    Fit,
}
