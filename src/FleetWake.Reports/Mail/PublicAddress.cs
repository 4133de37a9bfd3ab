using System.Net;
using System.Net.Sockets;

namespace FleetWake.Reports.Mail;

/// <summary>
/// Whether an address is one of the public Internet: what an operator names must not lead the program into the network that it stands in. By the
/// registries of special-purpose addresses (RFC 6890 and its updates, for IPv4 and IPv6); multicast by RFC 5771 and RFC 4291.
/// </summary>
public static class PublicAddress
{
    private static readonly IPNetwork[] Special =
    [
        .. ((string[])
        [
            "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12", "192.0.0.0/24", "192.0.2.0/24", "192.88.99.0/24", "192.168.0.0/16",
            "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24", "224.0.0.0/4", "240.0.0.0/4",
        ]).Select(n => IPNetwork.Parse(n)),
    ];

    private static readonly IPNetwork Global6 = IPNetwork.Parse("2000::/3");

    private static readonly IPNetwork[] Special6 =
    [
        // Teredo, benchmarking, ORCHID and the like; documentation; 6to4, which carries an IPv4 address; documentation again.
        .. ((string[])["2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20"]).Select(n => IPNetwork.Parse(n)),
    ];

    /// <summary>Whether it is. An IPv4 address within an IPv6 one is looked at as what it is.</summary>
    public static bool Is(IPAddress address)
    {
        if (address.IsIPv4MappedToIPv6) return Is(address.MapToIPv4());
        return address.AddressFamily == AddressFamily.InterNetwork
            ? !Special.Any(n => n.Contains(address))
            : address.AddressFamily == AddressFamily.InterNetworkV6 && Global6.Contains(address) && !Special6.Any(n => n.Contains(address));
    }
}
