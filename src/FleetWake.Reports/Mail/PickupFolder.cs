using System.Text;
using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>
/// Puts messages into a folder: for a mail server that collects them there, and for a person without one, who finds the
/// HTML with its pictures beside each message. The name follows from the message: a repeat replaces, never doubles.
/// </summary>
/// <param name="folder">The folder; made when missing.</param>
public sealed class PickupFolder(string folder) : IPost
{
    /// <inheritdoc/>
    public async Task<Delivery> SendAsync(MimeMessage message, CancellationToken cancellationToken)
    {
        try
        {
            Directory.CreateDirectory(folder);
            var name = NameOf(message);
            await ForReading(message, name, cancellationToken);

            // Last, and whole at once: whoever sees the .eml may take it.
            await Write($"{name}.eml", s => message.WriteToAsync(s, cancellationToken), cancellationToken);
            return new Delivery.Sent();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Delivery.Deferred($"pickup folder: {e.Message}");
        }
    }

    /// <summary>File name of a message, without its ending.</summary>
    public static string NameOf(MimeMessage message) => $"{SafeName.Of(message.Subject ?? "", 80)}-{SafeName.Of(message.MessageId ?? "", 12)}";

    private async Task ForReading(MimeMessage message, string name, CancellationToken cancellationToken)
    {
        if (message.HtmlBody is not { } html) return;
        var number = 0;
        foreach (var picture in message.BodyParts.OfType<MimePart>().Where(p => p is { ContentId: not null, Content: not null } && p.ContentType.IsMimeType("image", "png")))
        {
            var file = $"{name}-{++number}.png";
            await Write(file, s => picture.Content!.DecodeToAsync(s, cancellationToken), cancellationToken);
            html = html.Replace($"cid:{picture.ContentId}", file, StringComparison.Ordinal);
        }

        await Write($"{name}.html", async s => await s.WriteAsync(Encoding.UTF8.GetBytes(html), cancellationToken), cancellationToken);
    }

    private async Task Write(string name, Func<Stream, Task> write, CancellationToken cancellationToken)
    {
        var target = Path.Combine(folder, name);
        var half = target + ".tmp";
        await using (var file = new FileStream(half, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            await write(file);
            await file.FlushAsync(cancellationToken);
            file.Flush(flushToDisk: true);
        }

        File.Move(half, target, overwrite: true);
    }
}
