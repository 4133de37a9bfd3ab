using Microsoft.AspNetCore.Http;

namespace FleetWake.Settings;

/// <summary>Judges the addresses that the program listens on, before a server stumbles over them.</summary>
internal static class Listening
{
    /// <summary>The addresses as they were given, one or several with semicolons between.</summary>
    public static string Checked(string name, string urls, string instead = "") =>
        urls.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) is { Length: > 0 } all && all.All(CanBe)
            ? urls
            : throw new SettingsException($"{name} is \"{urls}\": give an http address as in http://127.0.0.1:5080{instead}; several with semicolons between.");

    private static bool CanBe(string url)
    {
        try
        {
            // The server's own reading, which knows * and + for every address of the machine. TLS ends in front of the program.
            var address = BindingAddress.Parse(url);
            return address.Scheme.Equals(Uri.UriSchemeHttp, StringComparison.OrdinalIgnoreCase) && (address.IsUnixPipe || IsPlace(address));
        }
        catch (FormatException)
        {
            return false;
        }
    }

    // A port that is no number is read as part of the host, and such a host as every address of the machine.
    private static bool IsPlace(BindingAddress address) =>
        address.PathBase.Length == 0 && address.Port is >= 0 and <= 65535
        && (address.Host is "*" or "+" || Uri.CheckHostName(address.Host.Trim('[', ']')) != UriHostNameType.Unknown);
}
