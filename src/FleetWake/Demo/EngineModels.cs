namespace FleetWake.Demo;

/// <summary>An engine model with the page of its invented manual and the prop it usually turns.</summary>
/// <param name="Name">Invented model name.</param>
/// <param name="Horsepower">Rated power [hp].</param>
/// <param name="BandLow">Bottom of the rated band [RPM].</param>
/// <param name="BandHigh">Top of the rated band [RPM].</param>
/// <param name="Gear">Engine turns per prop turn.</param>
/// <param name="NutTorque">Propeller-nut torque, in its unit.</param>
/// <param name="NutTorqueUnit">Unit of the torque.</param>
/// <param name="Diameter">Diameter of the usual prop [in].</param>
/// <param name="Pitch">Pitch of the usual prop [in].</param>
/// <param name="Displacement">The boat that hangs on it, ready to go [kg].</param>
/// <param name="Slip">Slip of a sound prop on that boat.</param>
/// <param name="UsualRpm">Wide-open-throttle speed with a sound prop and two aboard [RPM].</param>
/// <param name="Shaft">What its shaft takes.</param>
internal sealed record EngineModel(
    string Name,
    double Horsepower,
    double BandLow,
    double BandHigh,
    double Gear,
    double NutTorque,
    string NutTorqueUnit,
    double Diameter,
    double Pitch,
    double Displacement,
    double Slip,
    double UsualRpm,
    PropShaft Shaft);

/// <summary>What holds the prop, and which props go on.</summary>
/// <param name="Fastening">What holds the nut, or the prop.</param>
/// <param name="Teeth">Teeth of its spline.</param>
/// <param name="HubKit">Id of the hub kit that fits it.</param>
/// <param name="ThrustWasher">Id of its thrust washer.</param>
/// <param name="LargestDiameter">The largest prop that clears the plate [in].</param>
/// <param name="Pin">Id of the pin that is new at every fitting.</param>
internal sealed record PropShaft(string Fastening, int Teeth, string HubKit, string ThrustWasher, double LargestDiameter, string Pin)
{
    /// <summary>A castle nut is looked at again after the first outing; a shear pin has no torque to settle.</summary>
    public bool Retorqued => Fastening == "castle_nut_cotter_pin";

    public static readonly PropShaft Small = new("shear_pin", 8, "hub-8", "washer-8", 9.5, "shear-pin-6");
    public static readonly PropShaft Middle = new("castle_nut_cotter_pin", 13, "hub-13", "washer-13", 12, "pin-3x25");
    public static readonly PropShaft Large = new("castle_nut_cotter_pin", 15, "hub-15", "washer-15", 15.5, "pin-4x32");
}

/// <summary>
/// The models. Bands, ratios and sizes are common practice for engines of such power, without a source;
/// torques are made up. In earnest each is read from the owner's manual.
/// </summary>
internal static class EngineModels
{
    //                                          name           hp   band        gear  nut torque               prop         kg    slip  RPM   shaft
    public static readonly EngineModel E10 = new("Brannoc 9.9", 9.9, 4500, 5500, 2.08, 17, "newton_metre", 9.25, 8.5, 350, 0.19, 5080, PropShaft.Small);
    public static readonly EngineModel E15 = new("Brannoc 15", 15, 5000, 6000, 2.08, 17, "newton_metre", 9.25, 9, 420, 0.20, 5480, PropShaft.Small);
    public static readonly EngineModel E50 = new("Brannoc 50", 50, 5000, 6000, 2.08, 35, "newton_metre", 11.5, 13, 900, 0.17, 5500, PropShaft.Middle);
    public static readonly EngineModel E115 = new("Ostrey 115", 115, 5000, 6000, 2.15, 40, "pound_force_foot", 13.25, 17, 1400, 0.13, 5520, PropShaft.Large);
    public static readonly EngineModel E150 = new("Ostrey 150", 150, 5000, 6000, 2.00, 55, "pound_force_foot", 14.5, 17, 1800, 0.12, 5500, PropShaft.Large);
    public static readonly EngineModel E200 = new("Ostrey 200", 200, 5000, 6000, 1.86, 55, "pound_force_foot", 14.5, 19, 2200, 0.10, 5560, PropShaft.Large);
}
