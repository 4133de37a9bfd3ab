using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mountings;

/// <summary>Numbers that come with their unit beside them.</summary>
public static class CheckTorque
{
    /// <summary>No propeller nut takes more [N.m]; a larger number is a slip of the pen or of the unit.</summary>
    public const double MostNewtonMetres = 400;

    /// <summary>A torque as read, with its unit; both or neither.</summary>
    /// <param name="check">What collects the refusals.</param>
    /// <param name="value">The torque as sent.</param>
    /// <param name="unit">Its unit as sent.</param>
    /// <param name="field">Where the torque stands.</param>
    /// <param name="unitField">Where its unit stands; beside the torque when left out.</param>
    public static (double? Value, TorqueUnit? Unit) Torque(this Check check, double? value, string? unit, string field, string? unitField = null) =>
        check.WithUnit<TorqueUnit>(value, unit, field, 1, Most(unit == Words.Of(TorqueUnit.PoundForceFoot) ? TorqueUnit.PoundForceFoot : TorqueUnit.NewtonMetre), unitField);

    /// <summary>The largest torque that is believed, in a unit.</summary>
    public static double Most(TorqueUnit unit) =>
        unit == TorqueUnit.PoundForceFoot ? Math.Floor(MostNewtonMetres / 1.3558179483314004) : MostNewtonMetres;

    /// <summary>A number and its unit; both or neither.</summary>
    public static (double? Value, T? Unit) WithUnit<T>(
        this Check check, double? value, string? unit, string field, double least, double most, string? unitField = null)
        where T : struct, Enum
    {
        if (value is null && unit is null) return (null, null);
        if (value is null)
        {
            check.Refuse(field, "missing", "missing: a unit stands here without its number");
            return (null, null);
        }

        var known = check.OneOf<T>(unit, unitField ?? field + "Unit");
        return (check.Number(value, field, least, most, unit ?? "?"), known);
    }
}
