using System.Diagnostics;
using FleetWake.Benchmarks.Pages;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Digests.Wear;
using FleetWake.Reports.Mail;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Operators;

namespace FleetWake.Benchmarks.Digests;

/// <summary>
/// The weekly wear digest of a thousand boats with twelve charts: from findings in memory to the bytes of one message. A reader is shown five charts at
/// the most; the others are drawn here by the same code and laid out by the same template, so that twelve are paid for.
/// </summary>
internal static class DigestTimes
{
    private const int Boats = 1000, ChartsDrawn = 12, Rounds = 9;
    private const double AskedSeconds = 3, AskedMegabytes = 300, Megabyte = 1e6;
    private static readonly DateOnly Day = new(2026, 10, 19);

    internal static async Task<int> RunAsync(TextWriter output)
    {
        var began = Stopwatch.GetTimestamp();
        var findings = Findings();
        await output.WriteLineAsync($"{findings.Count} boats of {findings.Sum(f => f.LastTrials.Count)} trials assessed beforehand in {Stopwatch.GetElapsedTime(began).TotalSeconds:0.0} s, not counted below; {Environment.ProcessorCount} cores");
        var held = Resident();
        var renderer = new DigestRenderer(new PngRenderer());
        var times = new List<double[]>();
        for (var round = 0; round <= Rounds; round++)
        {
            ForgetPeak();
            var allocated = GC.GetTotalAllocatedBytes(precise: true);
            var (seconds, message, digest) = Once(findings, renderer);
            if (digest.Pictures.Count != ChartsDrawn || digest.UsedFallback) throw new InvalidOperationException($"{digest.Pictures.Count} charts: {digest.WhyFallback}");
            var megabytes = (GC.GetTotalAllocatedBytes(precise: true) - allocated) / Megabyte;
            await output.WriteLineAsync(
                $"{(round == 0 ? "first, which compiles" : $"round {round}")}: {seconds.Sum():0.00} s (put together {seconds[0]:0.00}, drawn and laid out {seconds[1]:0.00}, made a message {seconds[2]:0.00}), "
                + $"{megabytes:0} MB allocated, at most {Peak():0} MB resident; message {message.Length / 1e3:0} kB, HTML {digest.Html.Length / 1e3:0} kB");
            if (round > 0) times.Add(seconds);
        }

        var all = times.Select(t => t.Sum()).Order().ToList();
        await output.WriteLineAsync($"a digest of {Boats} boats with {ChartsDrawn} charts: {all[Rounds / 2]:0.00} s (median of {Rounds}; {all[0]:0.00} to {all[^1]:0.00}); {AskedSeconds:0} s and {AskedMegabytes:0} MB were asked for");
        await output.WriteLineAsync($"resident before the first: {held:0} MB, the findings among it; the peak is that of the whole process");
        return 0;
    }

    private static (double[] Seconds, byte[] Message, RenderedDigest Digest) Once(IReadOnlyList<BoatFinding> findings, DigestRenderer renderer)
    {
        var began = Stopwatch.GetTimestamp();
        var news = WearNews.None with { Since = Day.AddDays(-7), Pages = new Uri("https://fleet.example/") };
        var draft = WeeklyWearDraft.Of(WeeklyWear.Build("Skerry Bay Hire", "2026-W43", Day, findings, policy: null, news: news));
        draft = draft with { Pictures = [.. draft.Pictures, .. More(findings).Take(ChartsDrawn - draft.Pictures.Count)] };
        var built = Stopwatch.GetElapsedTime(began).TotalSeconds;
        var digest = renderer.Render(draft);
        var rendered = Stopwatch.GetElapsedTime(began).TotalSeconds;
        var card = new OperatorCard("skerry-bay", "Skerry Bay Hire", ThousandBoats.Zone);
        var reader = new Recipient("r-1", "boss@skerry-bay.example", WeeklyWear.Digest, "token", true);
        var message = Outgoing.Of(MailComposer.Compose(digest, new Sender("digest@fleet.example", news.Pages).To(card, reader, WeeklyWear.Digest, "2026-W43", DateTimeOffset.UnixEpoch)), "m-1", reader);
        return ([built, rendered - built, Stopwatch.GetElapsedTime(began).TotalSeconds - rendered], message.Mime, digest);
    }

    /// <summary>Charts that no reader is shown, of boats from the end of the list.</summary>
    private static IEnumerable<DraftPicture> More(IReadOnlyList<BoatFinding> findings) =>
        findings.Reverse().SelectMany(f => f.Positions.Select(p => DriftPictures.Of(f, p))).OfType<DriftPicture>().Select(p => new DraftPicture("other", p.Title, p.Statement, r => r.Render(p)));

    private static List<BoatFinding> Findings()
    {
        var logs = new FleetLogs();
        var arrival = new Arrival("dock-1", new DateTimeOffset(2026, 10, 19, 0, 0, 0, TimeSpan.Zero), null);
        foreach (var record in ThousandBoats.Records(Boats))
        {
            var decided = RecordKind.All.First(k => k.CommandType == record.GetType()).Decide(record, arrival);
            logs.Add(decided is Decision.Keep keep ? keep.Facts : throw new InvalidOperationException($"refused: {record}"));
        }

        return [.. logs.Boats.Select(b => Assess.Boat(logs.DossierOf(b)))];
    }

    private static double Resident() => Environment.WorkingSet / Megabyte;

    /// <summary>Largest resident set since the last <see cref="ForgetPeak"/>, where the system can forget one; else since the start.</summary>
    private static double Peak()
    {
        using var own = Process.GetCurrentProcess();
        return own.PeakWorkingSet64 / Megabyte;
    }

    private static void ForgetPeak()
    {
        try
        {
            File.WriteAllText("/proc/self/clear_refs", "5");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Not Linux: the peak is then that since the start, which is the harder figure.
        }
    }
}
