namespace FleetWake.Propulsion.Atmosphere;

/// <summary>Which formula brings power to reference air. Within their validity the two differ by less than 0.2 % (a test holds it).</summary>
public enum PowerCorrectionForm
{
    /// <summary>SAE J1349 in its form of 1990, with 15 % friction that does not follow the air.</summary>
    SaeJ1349,

    /// <summary>The form of ISO 1585 and UN Regulation 85 for spark ignition.</summary>
    Iso1585,
}
