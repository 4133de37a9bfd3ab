namespace FleetWake.Demo;

/// <summary>A dock: its water, what its boats' logs show, how hard it runs past, and who works there with what.</summary>
/// <param name="Id">Id of the dock.</param>
/// <param name="Name">Its name.</param>
/// <param name="Water">Its water.</param>
/// <param name="Bottom">Its bottom.</param>
/// <param name="SpeedUnit">Unit that its boats' logs show.</param>
/// <param name="CurrentKnots">Strongest current on its measured course [kn].</param>
/// <param name="People">Who works there.</param>
/// <param name="Phones">The dock's phones.</param>
internal sealed record Dock(
    string Id, string Name, string Water, string Bottom, string SpeedUnit, double CurrentKnots, IReadOnlyList<string> People, IReadOnlyList<Device> Phones);

/// <summary>The three docks.</summary>
internal static class Docks
{
    public static readonly Dock OldMole = new(
        "old-mole", "Old Mole", "salt", "rock", "kn", 1.4, ["mech-01", "mech-02", "mech-03"], [Devices.Mole1, Devices.Mole2]);

    public static readonly Dock KittiwakeQuay = new(
        "kittiwake-quay", "Kittiwake Quay", "brackish", "sand", "km_per_h", 2.1, ["mech-04", "mech-05"], [Devices.Quay1, Devices.Quay2]);

    public static readonly Dock SallowMere = new(
        "sallow-mere", "Sallow Mere", "fresh", "mud", "mph", 0.2, ["mech-06", "mech-07"], [Devices.Mere1]);

    public static IReadOnlyList<Dock> All { get; } = [OldMole, KittiwakeQuay, SallowMere];
}
