using FleetWake.Reports.Mail;
using MimeKit;

namespace FleetWake.Reports.Tests.Mail;

public class PickupFolderTests
{
    private readonly string folder = Path.Combine(Directory.CreateTempSubdirectory().FullName, "pickup");

    private Task<Delivery> Put(MimeMessage message) => new PickupFolder(folder).SendAsync(message, TestContext.Current.CancellationToken);

    [Fact]
    public async Task A_message_lies_there_whole_with_its_html_and_pictures_for_a_person_to_open()
    {
        var message = Letters.Message();
        Assert.IsType<Delivery.Sent>(await Put(message));
        var name = PickupFolder.NameOf(message);
        Assert.Matches("^skerry-bay-hire-week-47-4-stay-4-to-decide-2-overdue-[0-9a-f]{12}$", name);
        Assert.Equal(
            [$"{name}-1.png", $"{name}-2.png", $"{name}-3.png", $"{name}-4.png", $"{name}-5.png", $"{name}.eml", $"{name}.html"],
            Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        var html = await File.ReadAllTextAsync(Path.Combine(folder, $"{name}.html"), TestContext.Current.CancellationToken);
        Assert.DoesNotContain("cid:", html, StringComparison.Ordinal);
        Assert.Contains($"src=\"{name}-5.png\"", html, StringComparison.Ordinal);
        Assert.Equal(Letters.Digest.Pictures[4].Png, await File.ReadAllBytesAsync(Path.Combine(folder, $"{name}-5.png"), TestContext.Current.CancellationToken));
        var read = await MimeMessage.LoadAsync(Path.Combine(folder, $"{name}.eml"), TestContext.Current.CancellationToken);
        Assert.Equal(message.MessageId, read.MessageId);
    }

    [Fact]
    public async Task A_repeat_replaces_and_does_not_double()
    {
        await Put(Letters.Message());
        await Put(Letters.Message(Letters.To with { Date = Letters.To.Date.AddHours(1) }));
        Assert.Single(Directory.GetFiles(folder, "*.eml"));
        await Put(Letters.Message(Letters.To with { Recipient = "person-5" }));
        Assert.Equal(2, Directory.GetFiles(folder, "*.eml").Length);
    }

    [Fact]
    public async Task No_subject_leads_out_of_the_folder()
    {
        var message = MailComposer.Compose(Letters.Digest with { Subject = "../../etc/passwd & \"C:\\x\" ÆØÅ" }, Letters.To);
        await Put(message);
        Assert.Matches("^[a-z0-9-]+$", PickupFolder.NameOf(message));
        Assert.Single(Directory.GetFiles(folder, "*.eml"));
    }

    [Fact]
    public async Task A_folder_that_cannot_be_written_defers()
    {
        await File.WriteAllTextAsync(folder, "a file where the folder should be", TestContext.Current.CancellationToken);
        Assert.IsType<Delivery.Deferred>(await Put(Letters.Message()));
    }
}
