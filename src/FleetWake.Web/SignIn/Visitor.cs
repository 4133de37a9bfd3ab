using System.Net;
using System.Net.Sockets;
using FleetWake.Logbook.Entries;
using FleetWake.Store.People;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.SignIn;

/// <summary>What a request tells of where it comes from.</summary>
public static class Visitor
{
    /// <summary>The hand of who is signed in.</summary>
    public static Hand HandOf(this HttpContext http) => new(http.User.PersonOf()!, Arrival.Office, http.Whence());

    /// <summary>What kind of place a request comes from.</summary>
    public static Whence Whence(this HttpContext http) => http.Connection.RemoteIpAddress switch
    {
        null => Store.People.Whence.Here,
        var address when IPAddress.IsLoopback(address) => Store.People.Whence.Here,
        var address => IsPrivate(address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address) ? Store.People.Whence.PrivateNetwork : Store.People.Whence.Internet,
    };

    /// <summary>The browser in a few words, so that its owner knows it again in a list.</summary>
    public static string BrowserWords(this HttpRequest request)
    {
        var agent = request.Headers.UserAgent.ToString();
        var browser = First(agent, ("Edg/", "Edge"), ("OPR/", "Opera"), ("SamsungBrowser", "Samsung browser"), ("Firefox", "Firefox"), ("FxiOS", "Firefox"), ("Chrome/", "Chromium"), ("CriOS", "Chromium"), ("Safari", "Safari"), ("curl", "curl"));
        var system = First(agent, ("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android"), ("Windows", "Windows"), ("Mac OS", "macOS"), ("CrOS", "ChromeOS"), ("Linux", "Linux"));
        return (browser, system) switch
        {
            (null, null) => "a browser",
            (null, _) => system,
            (_, null) => browser,
            _ => $"{browser} on {system}",
        };
    }

    private static string? First(string agent, params (string Sign, string Word)[] known) =>
        known.FirstOrDefault(k => agent.Contains(k.Sign, StringComparison.Ordinal)).Word;

    private static bool IsPrivate(IPAddress address)
    {
        if (address.AddressFamily == AddressFamily.InterNetworkV6) return address.IsIPv6UniqueLocal || address.IsIPv6LinkLocal;
        var b = address.GetAddressBytes();
        return b[0] == 10 || (b[0] == 172 && b[1] is >= 16 and < 32) || (b[0] == 192 && b[1] == 168) || (b[0] == 169 && b[1] == 254);
    }
}
