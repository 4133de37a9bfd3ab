using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.People;

/// <summary>A device was given to a dock to record with.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Device">Id of the device.</param>
/// <param name="Dock">Id of the dock.</param>
[StoredAs("device_enrolled", 1)]
public sealed record DeviceEnrolled(Entry Entry, string Device, string Dock) : IFact;

/// <summary>A device records no more: lost, sold or broken. What it recorded stands.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Device">Id of the device.</param>
[StoredAs("device_revoked", 1)]
public sealed record DeviceRevoked(Entry Entry, string Device) : IFact;

/// <summary>Enrols a device.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Device">Id of the device.</param>
/// <param name="Dock">Id of the dock.</param>
public sealed record EnrolDevice(Stamp? Entry, string? Device, string? Dock) : ICommand<EnrolDevice>
{
    /// <inheritdoc/>
    public static string Kind => "device_enrolled";

    /// <inheritdoc/>
    public static EnrolDevice Example => new(Examples.At(243, "2026-05-01T07:10:00"), "phone-4", "north-pier");

    /// <inheritdoc/>
    public static string Summary => "Records that a device was given to a dock.";

    /// <inheritdoc/>
    public static Decision Decide(EnrolDevice command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var device = check.Id(command.Device, "/device");
        var dock = check.Id(command.Dock, "/dock");
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new DeviceEnrolled(entry!, device, dock))], []));
    }
}

/// <summary>Revokes a device.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Device">Id of the device.</param>
public sealed record RevokeDevice(Stamp? Entry, string? Device) : ICommand<RevokeDevice>
{
    /// <inheritdoc/>
    public static string Kind => "device_revoked";

    /// <inheritdoc/>
    public static RevokeDevice Example => new(Examples.At(244, "2026-10-30T16:00:00"), "phone-4");

    /// <inheritdoc/>
    public static string Summary => "Records that a device records no more; what it recorded stands.";

    /// <inheritdoc/>
    public static Decision Decide(RevokeDevice command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var device = check.Id(command.Device, "/device");
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new DeviceRevoked(entry!, device))], []));
    }
}
