using System.Security.Claims;

namespace FleetWake.Web.Dock;

/// <summary>What is known of a phone that calls.</summary>
internal static class DockClaims
{
    /// <summary>Claim type of the device.</summary>
    public const string Device = "device";

    /// <summary>Claim type of the dock that the device was given to.</summary>
    public const string Dock = "dock";

    /// <summary>Claim type of when the device was revoked.</summary>
    public const string Revoked = "revoked";

    /// <summary>Id of the device.</summary>
    public static string DeviceOf(this ClaimsPrincipal user) =>
        user.FindFirstValue(Device) ?? throw new InvalidOperationException("The route does not ask for a device.");

    /// <summary>Id of the device's dock.</summary>
    public static string DockOf(this ClaimsPrincipal user) =>
        user.FindFirstValue(Dock) ?? throw new InvalidOperationException("The route does not ask for a device.");

    /// <summary>The device was revoked.</summary>
    public static bool IsRevoked(this ClaimsPrincipal user) => user.HasClaim(c => c.Type == Revoked);
}
