using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>An authority made for one test, and the certificates that it signs: real ones, known to nobody else.</summary>
internal sealed class Certificates : IDisposable
{
    private static readonly DateTimeOffset Begin = TimeProvider.System.GetUtcNow().AddYears(-2);
    private readonly X509Certificate2 authority;
    private readonly List<X509Certificate2> signed = [];

    public Certificates(string name = "Skerry Bay authority")
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, true));
        authority = request.CreateSelfSigned(Begin, Begin.AddYears(10));
    }

    /// <summary>What is trusted: the authority without its key, as it stands in a PEM file.</summary>
    public X509Certificate2Collection Authorities => X509Certificate2CollectionOf(authority.ExportCertificatePem());

    /// <summary>The authority's PEM.</summary>
    public string Pem => authority.ExportCertificatePem();

    /// <summary>A server's certificate for a name and for this machine's address, unless <paramref name="here"/> is false.</summary>
    public X509Certificate2 Server(string name = "localhost", bool here = true, bool expired = false)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName(name);
        if (here) names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], false));
        using var bare = request.Create(authority, Begin, expired ? Begin.AddYears(1) : Begin.AddYears(5), [1, 2, 3, 4, (byte)(signed.Count + 1)]);
        var whole = bare.CopyWithPrivateKey(key);
        signed.Add(whole);
        return whole;
    }

    public void Dispose()
    {
        authority.Dispose();
        foreach (var certificate in signed) certificate.Dispose();
    }

    private static X509Certificate2Collection X509Certificate2CollectionOf(string pem)
    {
        var collection = new X509Certificate2Collection();
        collection.ImportFromPem(pem);
        return collection;
    }
}
