using System.Net.Security;
using System.Security.Cryptography.X509Certificates;
using MailKit.Net.Smtp;

namespace FleetWake.Reports.Mail;

/// <summary>Judges the certificate that a mail server shows, and says in words what is wrong with it: it is read months later, by somebody who was not there.</summary>
internal sealed class ServerCertificate(SmtpSettings settings)
{
    private const X509ChainStatusFlags OutOfTime = X509ChainStatusFlags.NotTimeValid;

    private const X509ChainStatusFlags NotTrusted = X509ChainStatusFlags.UntrustedRoot | X509ChainStatusFlags.PartialChain;

    private const X509ChainStatusFlags NoWordOfRevocation = X509ChainStatusFlags.RevocationStatusUnknown | X509ChainStatusFlags.OfflineRevocation;

    /// <summary>Why the certificate was not taken; null when none was refused.</summary>
    public string? WhyNot { get; private set; }

    /// <summary>Lets a client talk to a server whose certificate holds, and to no other.</summary>
    public void Guard(SmtpClient client)
    {
        // An authority of one's own seldom publishes what it has revoked; its file is what is trusted.
        client.CheckCertificateRevocation = settings.Authorities is null;
        client.ServerCertificateValidationCallback = (_, certificate, chain, errors) => Holds(certificate, chain, errors);
    }

    private bool Holds(X509Certificate? shown, X509Chain? chain, SslPolicyErrors errors)
    {
        WhyNot = shown is not X509Certificate2 certificate || chain is null || errors.HasFlag(SslPolicyErrors.RemoteCertificateNotAvailable)
            ? $"{settings.Host} shows no certificate"
            : Name(certificate, errors) ?? Chain(certificate, chain, errors);
        return WhyNot is null;
    }

    private string? Name(X509Certificate2 certificate, SslPolicyErrors errors) => errors.HasFlag(SslPolicyErrors.RemoteCertificateNameMismatch)
        ? $"the certificate is for {certificate.GetNameInfo(X509NameType.DnsName, false)}, not for {settings.Host}: is FLEETWAKE_SMTP_HOST the name in the certificate?"
        : null;

    private string? Chain(X509Certificate2 certificate, X509Chain shown, SslPolicyErrors errors)
    {
        if (settings.Authorities is not { } authorities)
            return errors.HasFlag(SslPolicyErrors.RemoteCertificateChainErrors) ? Said(certificate, shown) : null;

        using var own = new X509Chain();
        own.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        own.ChainPolicy.CustomTrustStore.AddRange(authorities);
        own.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        own.ChainPolicy.ApplicationPolicy.Add(new System.Security.Cryptography.Oid("1.3.6.1.5.5.7.3.1", "server authentication"));
        foreach (var element in shown.ChainElements) own.ChainPolicy.ExtraStore.Add(element.Certificate);
        return own.Build(certificate) ? null : Said(certificate, own);
    }

    private static string Said(X509Certificate2 certificate, X509Chain chain)
    {
        var wrong = chain.ChainStatus.Aggregate(X509ChainStatusFlags.NoError, (all, one) => all | one.Status);
        if ((wrong & OutOfTime) != 0)
            return $"a certificate on the way is out of its time; the server's own holds from {Day(certificate.NotBefore)} to {Day(certificate.NotAfter)}: renew it, or look at this machine's clock";
        if ((wrong & NotTrusted) != 0)
            return $"the certificate is signed by an authority that is not trusted here ({certificate.Issuer}): name that authority's PEM file in FLEETWAKE_SMTP_CA if it is yours";
        if ((wrong & X509ChainStatusFlags.Revoked) != 0) return "the certificate was revoked by its authority";
        if ((wrong & NoWordOfRevocation) != 0)
            return "the authority does not say whether the certificate was revoked: its list must be reachable from this machine";
        return $"the certificate does not hold: {wrong}";
    }

    private static string Day(DateTime local) => local.ToUniversalTime().ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
