using TrialLog.Application.Wording;
using TrialLog.Reports.Documents;

namespace TrialLog.Commands.Json;

/// <summary>What <c>import --json</c> prints for one file.</summary>
internal sealed record ImportFacts(
    string File, int PiecesAdded, int PiecesAlreadyThere, int RowsRefused,
        IReadOnlyList<RefusedRowFacts> Refused, IReadOnlyList<string> Warnings, IReadOnlyList<RecordingFacts>? Recordings = null);

internal sealed record RefusedRowFacts(int Line, string? Column, string Reason);
