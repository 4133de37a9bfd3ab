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

    /// <summary>Takes what lies there now; returns how many files.</summary>
    public async Task<int> TakeAsync(CancellationToken ct)
    {
        var files = Directory.EnumerateFiles(folder, "*.eml").Order(StringComparer.Ordinal).Take(AtATime).ToList();
        foreach (var file in files)
        {
            try
            {
                var reports = new FileInfo(file).Length <= MostBytes ? BounceReading.Of(await File.ReadAllBytesAsync(file, ct)) : [];
                foreach (var report in reports) await bounces.TakeAsync(null, report, ct);
                if (reports.Count > 0) File.Delete(file);
                else File.Move(file, Path.Combine(Directory.CreateDirectory(Path.Combine(folder, Aside)).FullName, Path.GetFileName(file)), overwrite: true);
            }
            catch (FileNotFoundException)
            {
                // Another worker was quicker; a report that is taken twice is taken once.
            }
        }

        return files.Count;
    }

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

    [LoggerMessage(Level = LogLevel.Warning, Message = "Reports of undeliverable mail wait: the database or their folder cannot be used.")]
    private partial void LogWaiting(Exception e);
}
