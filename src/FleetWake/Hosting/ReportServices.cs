using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.AnalystPack;
using FleetWake.Reports.Digests.DueList;
using FleetWake.Reports.Digests.Alert;
using FleetWake.Reports.Digests.Issue;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Mail;
using FleetWake.Reports.Pictures;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Store.Layouts;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Hosting;

/// <summary>Puts the reports room together from the settings.</summary>
internal static class ReportServices
{
    /// <summary>What lays digests out, for those who send them and for those who look at them beforehand.</summary>
    public static void AddFleetLayouts(this IServiceCollection services, FleetSettings settings)
    {
        // Made here and not when first asked for: a missing font stops the start, not Monday's digest.
        services.AddSingleton(new DigestRenderer(new PngRenderer(), settings.TemplateFolder));
        services.AddSingleton<DigestDesk>();
    }

    public static void AddFleetReports(this IServiceCollection services, FleetSettings settings)
    {
        services.AddSingleton(settings.Mail.Sending);
        if (settings.Mail.Signing is { } signing) services.AddSingleton(signing);
        if (settings.Mail.Journal is { } journal) services.AddSingleton(p => new MailJournal(journal, p.GetRequiredService<TimeProvider>()));
        services.AddSingleton<IPost>(settings.Mail.Smtp is { } smtp ? new SmtpPost(smtp) : new PickupFolder(settings.Mail.Folder));
        services.AddSingleton(new IssueSettings(settings.CatchUp));
        services.AddSingleton<IDigestKind, WeeklyWearKind>();
        services.AddSingleton<IDigestKind, DueListKind>();
        services.AddSingleton<IDigestKind, AnalystPackKind>();
        services.AddSingleton<DigestMails>();
        services.AddSingleton<DigestIssue>();
        services.AddSingleton<AlertIssue>();
        services.AddSingleton<MailSender>();
        services.AddHostedService(p => p.GetRequiredService<MailSender>());
        services.AddHostedService<HookSender>();
        if (settings.Mail.Bounces is { } folder)
            services.AddHostedService(p => new BounceFolder(folder, p.GetRequiredService<Store.Mail.MailBounces>(), p.GetRequiredService<TimeProvider>(), p.GetRequiredService<Microsoft.Extensions.Logging.ILogger<BounceFolder>>()));
    }

    /// <summary>What both the pages and the work need to know of mail.</summary>
    public static void AddFleetSender(this IServiceCollection services, FleetSettings settings)
    {
        services.AddSingleton(settings.Sender);
        services.AddSingleton(new Store.Mail.MailKeeping(settings.Mail.Kept));
        services.AddSingleton(p => new HookPost(p.GetRequiredService<TimeProvider>()));
    }

    /// <summary>Writes a digest of any day into a folder, addressed to nobody in particular; returns the file and how many boats it tells of.</summary>
    public static async Task<(string Path, int Boats)> WriteDigestAsync(
        FleetSettings settings, OperatorCard card, DateOnly day, FleetReading reading, FleetPeople people, LayoutBook layouts, string folder, CancellationToken ct)
    {
        // As it would go out: with the operator's own prices, addresses and layout.
        var period = Periods.Week(day);
        var composed = await new WeeklyWearKind(reading, people, settings.Sender).ComposeAsync(new Wanted(card, null, period, day, true, null), ct);
        var (draft, boats) = composed is Composed.Ready ready ? (ready.Draft, ready.Boats) : (WeeklyWearDraft.Of(WeeklyWear.Build(card.Name, period, day, [])), 0);
        var digest = await new DigestDesk(new DigestRenderer(new PngRenderer(), settings.TemplateFolder), layouts).RenderAsync(card.Id, draft, ct);
        if (digest.WhyFallback is { } why) Console.Error.WriteLine($"fleetwake: the plain form was used: {why}");
        var reader = new Recipient("reader", "reader@localhost.localdomain", WeeklyWear.Digest, "", true);
        var addressing = (settings.Sender with { PublicUrl = null }).To(card, reader, WeeklyWear.Digest, period, new DateTimeOffset(day.ToDateTime(new TimeOnly(6, 0)), TimeSpan.Zero));
        var message = MailComposer.Compose(digest, addressing);
        return await new PickupFolder(folder).SendAsync(message, ct) is Delivery.Deferred failed
            ? throw new IOException(failed.Why)
            : (Path.Combine(folder, PickupFolder.NameOf(message) + ".eml"), boats);
    }
}
