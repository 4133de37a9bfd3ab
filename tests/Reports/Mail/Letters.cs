using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Mail;
using FleetWake.Reports.Pictures;
using MimeKit;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>A digest of the invented fleet and whom it goes to.</summary>
internal static class Letters
{
    public static readonly RenderedDigest Digest = new DigestRenderer(new PngRenderer())
        .Render(WeeklyWearDraft.Of(WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, SkerryBay.Fleet())));

    public static readonly MailAddressing To = new(
        "skerry-bay", SkerryBay.Hire, "weekly-wear", "2026-W47", "person-4", "Mo Ness", "mo@skerry.example", "FleetWake", "digest@mail.example", null, null,
        new DateTimeOffset(2026, 11, 16, 6, 30, 0, TimeSpan.Zero));

    public static MimeMessage Message(MailAddressing? to = null) => MailComposer.Compose(Digest, to ?? To);

    public static byte[] Bytes(MimeMessage message)
    {
        using var stream = new MemoryStream();
        message.WriteTo(stream, TestContext.Current.CancellationToken);
        return stream.ToArray();
    }
}
