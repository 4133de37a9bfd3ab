using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using FleetWake.Store.Mail;

namespace FleetWake.Reports.Mail;

/// <summary>
/// Notes each attempt outside the database. When that is restored from a backup, it no longer knows what went out since; this does, so that no message
/// goes out a second time. It holds no address. Each process writes a file of its own, a new one each day, which is kept for <see cref="KeptDays"/> days.
/// </summary>
/// <param name="folder">The folder, best on another disk than the database's.</param>
/// <param name="time">The clock.</param>
public sealed partial class MailJournal(string folder, TimeProvider time) : IDisposable
{
    /// <summary>For how many days a file is kept: what a backup older than that has waiting serves nobody any more.</summary>
    public const int KeptDays = 60;

    private const string Begun = "begun", Taken = "sent", Not = "not", Unclear = "unclear";
    private readonly Lock gate = new();
    private readonly string process = RandomNumberGenerator.GetHexString(8, lowercase: true);
    private readonly Dictionary<string, long> readTo = new(StringComparer.Ordinal);
    private Dictionary<string, Known>? known;
    private FileStream? file;
    private DateOnly day;
    private string own = "";

    /// <summary>
    /// What is known of an attempt that the database takes for a new one: that the message was taken at this attempt or a later one, or at the one whose sender never
    /// reported; or that more attempts ended without a clear answer than the database knows of. Null where it knows as much, as it does unless it was restored or was
    /// away when it was to be told: its own number of the attempt is beyond those that are noted here.
    /// </summary>
    public Delivery? Before(ClaimedMail mail)
    {
        lock (gate)
        {
            // Whoever had it before may have been another process, which noted what it could not tell the database any more.
            if (mail.AfterSilence) ReadOn();
            if (!All().TryGetValue(KeyOf(mail.Operator, mail.Message), out var noted)) return null;

            // First what may lie there twice, so that it stays listed; then, with the next attempt, that it is there.
            if (noted.WithoutAnswer > mail.Unclear) return new Delivery.Unclear("it was tried before without a clear answer and the database did not hear of it, by the journal of mail");
            return noted.TakenAtAttempt >= mail.Attempt - (mail.AfterSilence ? 1 : 0) ? new Delivery.Sent("it went out before and the database did not hear of it, by the journal of mail") : null;
        }
    }

    /// <summary>Whether a message was taken, by what is noted here, though the database has it waiting.</summary>
    /// <param name="mail">What waits.</param>
    public bool WasTaken(WaitingMail mail)
    {
        lock (gate)
        {
            // Of one that the database has under way, it may have been this very attempt at which it was taken.
            var next = mail.State == MailState.Sending ? mail.Attempts : mail.Attempts + 1;
            return All().TryGetValue(KeyOf(mail.Operator, mail.Message), out var noted) && noted.TakenAtAttempt >= next;
        }
    }

    /// <summary>Notes that an attempt begins. Throws when it cannot be noted: then nothing may be sent.</summary>
    public void Begin(ClaimedMail mail) => Note(mail, Begun);

    /// <summary>Notes what became of an attempt. One whose end could not be noted counts as unclear.</summary>
    public void End(ClaimedMail mail, Delivery delivery) => Note(mail, delivery switch { Delivery.Sent => Taken, Delivery.Unclear => Unclear, _ => Not });

    /// <inheritdoc/>
    public void Dispose() => file?.Dispose();

    private void Note(ClaimedMail mail, string what)
    {
        lock (gate)
        {
            var now = time.GetUtcNow();
            var today = DateOnly.FromDateTime(now.UtcDateTime);
            if (file is null || today != day) Turn(today);

            var all = All();
            file!.Write(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{now.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'}\t{mail.Operator}\t{mail.Message}\t{mail.Attempt}\t{what}\n")));

            // On the disk before the message is on its way: after a crash of the machine as well.
            file.Flush(flushToDisk: true);
            Count(all, mail.Operator, mail.Message, mail.Attempt, what);
            readTo[own] = file.Position;
        }
    }

    /// <summary>Begins the file of a day. What is too old to matter goes, here and from memory.</summary>
    private void Turn(DateOnly today)
    {
        file?.Dispose();
        file = null;
        known = null;
        foreach (var path in Files().Where(p => IsOld(p, today)))
        {
            try
            {
                File.Delete(path);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // Somebody looks at it, or it is another's: it is not read any more and goes another day.
            }
        }

        own = Path.Combine(folder, $"sent-{today:yyyy-MM-dd}-{process}.tsv");
        file = new FileStream(own, FileMode.Append, FileAccess.Write, FileShare.Read);
        day = today;
    }

    private Dictionary<string, Known> All()
    {
        if (known is null) ReadOn();
        return known!;
    }

    /// <summary>Reads what was noted since it last did, by whichever process.</summary>
    private void ReadOn()
    {
        var all = known ?? new(StringComparer.Ordinal);
        if (known is null) readTo.Clear();

        // Until all is read nothing is known: half of it would let messages go twice.
        known = null;
        var today = DateOnly.FromDateTime(time.GetUtcNow().UtcDateTime);
        foreach (var path in Files().Where(p => !IsOld(p, today)))
        {
            using var open = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            open.Position = readTo.GetValueOrDefault(path);
            using var rest = new MemoryStream();
            open.CopyTo(rest);

            // The last line of a process that was killed may be half written: its attempt had not begun, or its end is not known.
            var whole = rest.GetBuffer().AsSpan(0, (int)rest.Length);
            whole = whole[..(whole.LastIndexOf((byte)'\n') + 1)];
            foreach (var line in Encoding.UTF8.GetString(whole).Split('\n'))
            {
                if (line.Split('\t') is [_, var @operator, var message, var number, var what] && what is Begun or Taken or Not or Unclear && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var attempt))
                    Count(all, @operator, message, attempt, what);
            }

            readTo[path] = readTo.GetValueOrDefault(path) + whole.Length;
        }

        known = all;
    }

    private IEnumerable<string> Files() => Directory.EnumerateFiles(folder, "sent-*.tsv").Order(StringComparer.Ordinal);

    private static bool IsOld(string path, DateOnly today) =>
        Path.GetFileName(path) is { Length: > 15 } name && DateOnly.TryParseExact(name.AsSpan(5, 10), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var on) && on < today.AddDays(-KeptDays);

    private static void Count(Dictionary<string, Known> all, string @operator, string message, int attempt, string what)
    {
        var key = KeyOf(@operator, message);
        var noted = all.GetValueOrDefault(key);
        all[key] = what switch
        {
            Begun => noted with { WithoutAnswer = noted.WithoutAnswer + 1 },
            Taken => new(Math.Max(noted.TakenAtAttempt, attempt), noted.WithoutAnswer - 1),
            Not => noted with { WithoutAnswer = noted.WithoutAnswer - 1 },
            _ => noted,
        };
    }

    // An alert's key begins with the minute of its telling, which is another when the same is found again after a restore; what it tells of, and whom, is not.
    private static string KeyOf(string @operator, string message) => $"{@operator}\t{AlertMinute().Replace(message, "alert-")}";

    [GeneratedRegex(@"^alert-\d{4}-\d{2}-\d{2}T\d{2}:\d{2}Z-")]
    private static partial Regex AlertMinute();

    /// <summary>What is noted of a message.</summary>
    /// <param name="TakenAtAttempt">The last attempt at which it was taken; 0 for none.</param>
    /// <param name="WithoutAnswer">How many attempts began and ended without a clear answer.</param>
    private readonly record struct Known(int TakenAtAttempt, int WithoutAnswer);
}
