using TrialLog.Logbook;

namespace TrialLog.Commands.Json;

/// <summary>What <c>backup --json</c> prints: full paths.</summary>
internal sealed record BackupFacts(string Logbook, string Backup);

/// <summary>What <c>restore --json</c> prints: full paths; kept is where the logbook that was there is now, null where none was.</summary>
internal sealed record RestoreFacts(string Logbook, string Backup, string? Kept);

/// <summary>What <c>verify --json</c> prints: a sentence for each problem, and the backups beside the logbook, newest first.</summary>
internal sealed record VerifyFacts(string Logbook, bool Sound, IReadOnlyList<string> Problems, IReadOnlyList<string> Backups);
