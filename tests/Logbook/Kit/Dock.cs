using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests;

/// <summary>A dock's usual records, each with everything true about it; a specification changes what it is about.</summary>
internal static class Dock
{
    public const string Kea = "kea";
    public const string Zone = "Pacific/Auckland";

    /// <summary>An importer's arrival long after everything; no phone clock was measured.</summary>
    public static Arrival Arrived { get; } = new("phone-1", new DateTimeOffset(2027, 6, 1, 0, 0, 0, TimeSpan.Zero), null);

    /// <summary>The entry id that goes by a label.</summary>
    public static Guid Id(string label) => new(SHA256.HashData(Encoding.UTF8.GetBytes(label)).AsSpan(0, 16));

    /// <summary>A stamp of a local time at the dock; the label stands for the entry id.</summary>
    public static Stamp At(string time, string label, string? amends = null) =>
        new(Id(label), "mech-1", time, Zone, 1, amends is null ? null : time, amends is null ? null : Id(amends));

    /// <summary>The stamp as it is kept when nothing was wrong with it.</summary>
    public static Entry Kept(Stamp stamp, string? happened = null)
    {
        var at = happened is null ? Local(stamp.HappenedAt!) : DateTimeOffset.Parse(happened, CultureInfo.InvariantCulture);
        var typed = stamp.EnteredAt is null ? at : Local(stamp.EnteredAt);
        return new Entry(stamp.Id!.Value, stamp.By!, Arrived.Device, stamp.Count ?? 0, at, stamp.Zone!, typed, Arrived.ReceivedAt, 0, stamp.Amends);
    }

    public static RegisterBoat Boat(string time = "2026-01-05T08:00", string boat = Kea, params string[] positions) =>
        new(At(time, "boat " + boat), boat, boat.ToUpperInvariant(), "jetty", Zone, "salt", positions.Length == 0 ? ["single"] : positions);

    public static RegisterEngine Engine(string time = "2026-01-05T08:01", string engine = "e1") =>
        new(At(time, "engine " + engine), engine, "Four-stroke 50", 5000, 6000, 2.08, 50, "hp", 25, "pound_force_foot", 10);

    public static FitEngine Fitted(string time = "2026-01-05T08:02", string engine = "e1", string position = "single", string boat = Kea, double? hours = 100) =>
        new(At(time, $"fit {engine} {boat} {time}"), boat, position, engine, hours);

    public static RegisterProp Prop(string time = "2026-01-05T08:03", string prop = "p1", double pitch = 13) =>
        new(At(time, "prop " + prop), prop, 13.25, pitch, 3, "aluminium", "right");

    public static MountProp Mounted(string time = "2026-01-05T09:00", string prop = "p1", string position = "single", string boat = Kea, double? hours = null) =>
        new(At(time, $"mount {prop} {boat} {time}"), boat, position, prop, hours, true, true, true, 25, "pound_force_foot", 1, true);

    public static RemoveProp Removed(string time, string? prop = "p1", string position = "single", string boat = Kea) =>
        new(At(time, $"remove {prop} {boat} {time}"), boat, position, "service", prop);

    public static ReportStrike Strike(string time, string severity = "bent", string position = "single", string boat = Kea, string label = "strike") =>
        new(At(time, label), boat, position, "rock", severity);

    public static Inspect Look(string time, string verdict = "fit", string position = "single", params string[] marks) =>
        new(At(time, "look " + time), Kea, position, verdict, marks);

    public static ReadHours Hours(string time, double hours, string engine = "e1") => new(At(time, $"hours {engine} {time}"), engine, hours);

    /// <summary>A trial of two opposed runs at one RPM.</summary>
    public static RunTrial Trial(string time, double rpm, double? hours = null, double knots = 22.5, string position = "single", string throttle = "wide_open", bool limiter = false) =>
        new(
            At(time, "trial " + time),
            Kea,
            throttle,
            [Run(knots, 0, (position, rpm, limiter)), Run(knots, 180, (position, rpm, limiter))],
            hours is null ? null : [new MeterSent(position, hours)]);

    public static TrialRunSent Run(double knots, double heading, params (string Position, double Rpm, bool Limiter)[] gauges) =>
        new(knots, "kn", heading, [.. gauges.Select(g => new TachometerSent(g.Position, g.Rpm, g.Limiter))]);

    /// <summary>A boat with one engine and one prop, at 100 h on 5 January.</summary>
    public static Fleet OneBoat() => new Fleet().With(Boat(), Engine(), Fitted(), Prop(), Mounted());

    private static DateTimeOffset Local(string time)
    {
        var local = DateTime.Parse(time, CultureInfo.InvariantCulture);
        return new DateTimeOffset(local, TimeZoneInfo.FindSystemTimeZoneById(Zone).GetUtcOffset(local));
    }
}
