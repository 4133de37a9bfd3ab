using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;

namespace FleetWake.Store.Servers;

internal static class FreePort
{
    /// <summary>
    /// Below the range from which systems number outgoing connections: while a server is stopped, a client that keeps
    /// trying its port could be given that very number as its own, connect to itself and keep the server out.
    /// </summary>
    public static int Pick()
    {
        while (true)
        {
            int port = RandomNumberGenerator.GetInt32(15_000, 32_000);
            try
            {
                using var probe = new TcpListener(IPAddress.Loopback, port);
                probe.Start();
                return port;
            }
            catch (SocketException)
            {
                // taken, or reserved by the system; there are enough others
            }
        }
    }
}
