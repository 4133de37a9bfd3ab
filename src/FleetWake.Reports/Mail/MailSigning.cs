using MimeKit;
using MimeKit.Cryptography;

namespace FleetWake.Reports.Mail;

/// <summary>
/// Signs what goes out (DKIM, RFC 6376). With two keys the later one takes over at its moment; the DNS record of the earlier stays
/// until the last message under it has been read.
/// </summary>
/// <param name="keys">The keys.</param>
public sealed class MailSigning(IReadOnlyList<DkimKey> keys)
{
    // Those whose change would change what a reader sees or where an answer goes. RFC 8058, 4: both headers of the one-click way out must be signed.
    private static readonly HeaderId[] Signed =
    [
        HeaderId.From, HeaderId.To, HeaderId.ReplyTo, HeaderId.Subject, HeaderId.Date, HeaderId.MessageId, HeaderId.MimeVersion, HeaderId.ContentType,
        HeaderId.ListId, HeaderId.ListUnsubscribe, HeaderId.ListUnsubscribePost, HeaderId.AutoSubmitted,
    ];

    /// <summary>The keys.</summary>
    public IReadOnlyList<DkimKey> Keys { get; } = keys;

    /// <summary>The key that signs at a moment.</summary>
    public DkimKey KeyAt(DateTimeOffset now) => Keys.Where(k => k.From is null || k.From <= now).OrderBy(k => k.From ?? DateTimeOffset.MinValue).LastOrDefault() ?? Keys[0];

    /// <summary>Signs a message.</summary>
    public void Sign(MimeMessage message, DateTimeOffset now)
    {
        var key = KeyAt(now);

        // As it goes over the wire, whatever the server can take: a later change of encoding would break the signature.
        message.Prepare(EncodingConstraint.SevenBit);
        new Signer(key, now).Sign(message, [.. Signed.Where(message.Headers.Contains)]);
    }

    private sealed class Signer : DkimSigner
    {
        private readonly DateTimeOffset now;

        public Signer(DkimKey key, DateTimeOffset now)
            : base(key.Private, key.Domain, key.Selector, key.Algorithm)
        {
            this.now = now;
            HeaderCanonicalizationAlgorithm = DkimCanonicalizationAlgorithm.Relaxed;
            BodyCanonicalizationAlgorithm = DkimCanonicalizationAlgorithm.Relaxed;
        }

        protected override long GetTimestamp() => now.ToUnixTimeSeconds();
    }
}
