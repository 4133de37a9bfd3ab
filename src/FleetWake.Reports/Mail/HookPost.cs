using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using FleetWake.Store.Mail;

namespace FleetWake.Reports.Mail;

/// <summary>
/// Hands an alert to an operator's address: signed, by https, never into a private network. The host is looked up once and that very address is connected to,
/// so that a name cannot be one thing when it is judged and another when it is used; no redirect is followed, no proxy used.
/// </summary>
/// <param name="time">The clock.</param>
/// <param name="lookUp">Looks a host up; the system's way when left out.</param>
/// <param name="isPublic">Whether an address may be connected to; <see cref="PublicAddress"/> when left out. Tests have a server of their own.</param>
/// <param name="tls">How the connection is secured; the system's way when left out.</param>
public sealed class HookPost(
    TimeProvider time, Func<string, CancellationToken, Task<IPAddress[]>>? lookUp = null, Func<IPAddress, bool>? isPublic = null, System.Net.Security.SslClientAuthenticationOptions? tls = null)
{
    /// <summary>Header with the moment and the signature: <c>t=SECONDS,v1=HEX</c>, of HMAC-SHA256 over <c>SECONDS.BODY</c>.</summary>
    public const string SignatureHeader = "FleetWake-Signature";

    /// <summary>Header with the alert's id: the same at every attempt, so that a repeat can be told.</summary>
    public const string AlertHeader = "FleetWake-Alert";

    /// <summary>Why a host that is not of the public Internet gets nothing.</summary>
    private const string NotPublic = "its host has an address that is not of the public Internet";

    private static readonly TimeSpan Timeout = TimeSpan.FromSeconds(15);
    private static readonly TimeSpan LookTime = TimeSpan.FromSeconds(5);

    /// <summary>Why an address cannot be set; null when it can.</summary>
    public static string? WhyNot(string address) => !Uri.TryCreate(address, UriKind.Absolute, out var uri) || uri.Scheme != Uri.UriSchemeHttps || uri.UserInfo.Length > 0 || uri.Fragment.Length > 0
        ? "give an https address without a name or password in it"
        : IPAddress.TryParse(uri.Host.Trim('[', ']'), out var ip) && !PublicAddress.Is(ip) || uri.Host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
            ? "that address is not of the public Internet"
            : null;

    /// <summary>
    /// Why an address cannot be set for where its host leads to; null when it can. A host that is not found yet is let through: whoever sets the address
    /// may publish the name afterwards, and it is looked at again with every alert.
    /// </summary>
    public async Task<string?> WhyNotThereAsync(Uri address, CancellationToken ct)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(ct);
        limit.CancelAfter(LookTime);
        try
        {
            return (await LookUpAsync(address, limit.Token)).All(IsPublic) ? null : NotPublic;
        }
        catch (Exception e) when (e is SocketException or ArgumentException || (e is OperationCanceledException && !ct.IsCancellationRequested))
        {
            return null;
        }
    }

    /// <summary>The signature of a body at a moment.</summary>
    public static string Sign(string secret, long seconds, string body) =>
        Convert.ToHexStringLower(HMACSHA256.HashData(Encoding.UTF8.GetBytes(secret), Encoding.UTF8.GetBytes($"{seconds}.{body}")));

    /// <summary>Tries once.</summary>
    public async Task<Delivery> SendAsync(ClaimedHook hook, CancellationToken ct)
    {
        var address = new Uri(hook.Address);
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(ct);
        limit.CancelAfter(Timeout);
        try
        {
            // One that is private spoils them all: which of them a library takes is not ours to guess.
            var found = await LookUpAsync(address, limit.Token);
            if (found.Length == 0) return new Delivery.Deferred("its host has no address");
            if (!found.All(IsPublic)) return new Delivery.Refused(NotPublic);
            return await SendAsync(hook, address, found[0], limit.Token);
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            return new Delivery.Deferred("it took too long to answer");
        }
        catch (Exception e) when (e is HttpRequestException or SocketException or IOException)
        {
            return new Delivery.Deferred(Redaction.Of(e.Message));
        }
    }

    private Task<IPAddress[]> LookUpAsync(Uri address, CancellationToken ct) => (lookUp ?? Dns.GetHostAddressesAsync)(address.DnsSafeHost, ct);

    private bool IsPublic(IPAddress address) => isPublic is null ? PublicAddress.Is(address) : isPublic(address);

    private async Task<Delivery> SendAsync(ClaimedHook hook, Uri address, IPAddress to, CancellationToken ct)
    {
        using var handler = new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            UseProxy = false,
            UseCookies = false,
            ConnectCallback = async (context, token) =>
            {
                var socket = new Socket(to.AddressFamily, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
                try
                {
                    await socket.ConnectAsync(to, context.DnsEndPoint.Port, token);
                    return new NetworkStream(socket, ownsSocket: true);
                }
                catch
                {
                    socket.Dispose();
                    throw;
                }
            },
        };
        if (tls is not null) handler.SslOptions = tls;
        using var http = new HttpClient(handler);
        using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = new StringContent(hook.Json, Encoding.UTF8, new MediaTypeHeaderValue("application/json")) };
        var seconds = time.GetUtcNow().ToUnixTimeSeconds();
        request.Headers.Add(SignatureHeader, $"t={seconds},v1={Sign(hook.Secret, seconds, hook.Json)}");
        request.Headers.TryAddWithoutValidation(AlertHeader, hook.Alert);
        using var answer = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, ct);
        var said = $"{(int)answer.StatusCode}";
        return (int)answer.StatusCode switch
        {
            >= 200 and < 300 => new Delivery.Sent(said),
            >= 300 and < 400 => new Delivery.Refused($"{said}: it leads elsewhere, and no redirect is followed"),
            408 or 425 or 429 or >= 500 => new Delivery.Deferred(said),
            _ => new Delivery.Refused(said),
        };
    }
}
