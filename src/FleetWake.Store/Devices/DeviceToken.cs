using FleetWake.Store.Operators;

namespace FleetWake.Store.Devices;

/// <summary>The written form of a device's token: a key's (<see cref="KeySecret"/>), with <c>fwd_</c> before it and the device's id in it; and of the codes that enrol one.</summary>
public static class DeviceToken
{
    private const string Prefix = "fwd_";
    private const int CodeLength = 20;

    /// <summary>A new id of a device, which its records name.</summary>
    public static string NewId() => KeySecret.NewId();

    /// <summary>A new enrolment code: a hundred random bits in letters that a hand can type.</summary>
    public static string NewCode() => KeySecret.Typed(CodeLength);

    /// <summary>A new token of a device; it is told once and never stored.</summary>
    public static string New(string device) => KeySecret.Whole(Prefix, device);

    /// <summary>The device within a token; null when the text is no token.</summary>
    public static string? IdOf(string token) => KeySecret.IdOf(Prefix, token);
}
