using FleetWake.Store.Findings;
using FleetWake.Store.Mail;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace FleetWake.Reports.Mail;

/// <summary>
/// Takes reports of undeliverable mail out of a folder that a mail server puts them into, one .eml each. What was taken is deleted, for it
/// holds addresses; what is no report is put aside for a person.
/// </summary>
public sealed partial class BounceFolder(string folder, MailBounces bounces, TimeProvider time, ILogger<BounceFolder> log) : BackgroundService
{
    /// <summary>Where what is no report goes, within the folder.</summary>
    public const string Aside = "no-reports";

    private const int AtATime = 200;
    private const long MostBytes = 5 * 1024 * 1024;
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(5);

    /// <summary>A file that was written to within this time may not be whole yet: what is taken is deleted, and half a report with it would be lost.</summary>
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(10);

    /// <summary>Takes what lies there now, but for what is still being written; returns how many files. One that cannot be taken keeps no other from being taken.</summary>
    public async Task<int> TakeAsync(CancellationToken ct)
    {
        var taken = 0;
        foreach (var file in Directory.EnumerateFiles(folder, "*.eml").Order(StringComparer.Ordinal).ToList())
        {
            if (await TryAsync(file, ct)) taken++;
            if (taken == AtATime) break;
        }

        return taken;
    }

    private async Task<bool> TryAsync(string file, CancellationToken ct)
    {
        try
        {
            var look = new FileInfo(file);
            if ((time.GetUtcNow() - look.LastWriteTimeUtc).Duration() < Quiet) return false;
            var reports = look.Length <= MostBytes ? BounceReading.Of(await File.ReadAllBytesAsync(file, ct)) : [];
            foreach (var report in reports) await bounces.TakeAsync(null, report, ct);
            if (reports.Count > 0) File.Delete(file);
            else PutAside(file);
            return true;
        }
        catch (FileNotFoundException)
        {
            // Another worker was quicker; a report that is taken twice is taken once.
            return false;
        }
        catch (Exception e) when (e is not OperationCanceledException && !(FindingStep.IsDatabaseDown(e) && !IsRefusedValue(e)))
        {
            LogNotTaken(e, Path.GetFileName(file));
            try
            {
                PutAside(file);
                return true;
            }
            catch (Exception again) when (again is IOException or UnauthorizedAccessException)
            {
                // It stays where it is, and is tried again with the next look.
                return false;
            }
        }
    }

    private void PutAside(string file) => File.Move(file, Path.Combine(Directory.CreateDirectory(Path.Combine(folder, Aside)).FullName, Path.GetFileName(file)), overwrite: true);

    // The database answered: what is wrong is in the file (class 22, data exception).
    private static bool IsRefusedValue(Exception e) =>
        e is Npgsql.PostgresException { SqlState: ['2', '2', ..] } || (e.InnerException is { } inner && IsRefusedValue(inner));

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (await TakeAsync(stoppingToken) == AtATime) continue;
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e)
            {
                // The database or the folder is away: the files stay, and are taken when it is back.
                LogWaiting(e);
            }

            await Task.Delay(Pause, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "{File} could not be taken as a report of undeliverable mail and is put aside.")]
    private partial void LogNotTaken(Exception e, string file);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Reports of undeliverable mail wait: the database or their folder cannot be used.")]
    private partial void LogWaiting(Exception e);
}
