using FleetWake.Logbook.Entries;

namespace FleetWake.Demo;

/// <summary>A whole invented record, ready to be sent.</summary>
/// <param name="OperatorName">The operator.</param>
/// <param name="Zone">IANA zone of its docks.</param>
/// <param name="Batches">What the devices sent, in the order in which the server took it.</param>
/// <param name="Boats">How many boats are registered.</param>
/// <param name="Refusable">Records that the server refuses, each with the reason to expect.</param>
public sealed record InventedRecord(
    string OperatorName,
    string Zone,
    IReadOnlyList<DeviceBatch> Batches,
    int Boats,
    IReadOnlyList<Refusable> Refusable);

/// <summary>What one device sent at once.</summary>
/// <param name="Device">The device.</param>
/// <param name="SentAt">Time of sending by the device's own clock, which may be wrong.</param>
/// <param name="ReceivedAt">When the server took it.</param>
/// <param name="Records">The records, in the order sent.</param>
public sealed record DeviceBatch(string Device, DateTimeOffset SentAt, DateTimeOffset ReceivedAt, IReadOnlyList<ICommand> Records)
{
    /// <summary>
    /// How far the device's clock runs ahead. Who sends the whole record at one go says
    /// <c>sentAt = now + ClockAhead</c>: an old time of sending would be taken for a clock that is years behind.
    /// </summary>
    public TimeSpan ClockAhead => SentAt - ReceivedAt;

    /// <summary>The arrival of its records, were the server's clock to show <see cref="ReceivedAt"/>.</summary>
    public Arrival Arrival() => new(Device, ReceivedAt.ToUniversalTime(), SentAt);
}

/// <summary>A record that cannot be true of anything.</summary>
/// <param name="Batch">The record alone in its batch.</param>
/// <param name="Field">The field at fault.</param>
/// <param name="Reason">The refusal's stable code.</param>
/// <param name="Story">How it came about.</param>
public sealed record Refusable(DeviceBatch Batch, string Field, string Reason, string Story);
