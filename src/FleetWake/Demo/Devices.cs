namespace FleetWake.Demo;

/// <summary>A device that sends records on Sunday evenings.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Minute">Minutes after seven at which it sends, so that no two send at once.</param>
/// <param name="ClockAhead">How far its clock runs ahead.</param>
/// <param name="SilentFromDaysAgo">First day on which it could not send, counted back from the showing; 0 when it always could.</param>
/// <param name="SilentToDaysAgo">Day on which it could again.</param>
internal sealed record Device(string Id, int Minute, TimeSpan ClockAhead = default, int SilentFromDaysAgo = 0, int SilentToDaysAgo = 0);

/// <summary>The devices of the fleet.</summary>
internal static class Devices
{
    public static readonly Device Office = new("office-1", 5);
    public static readonly Device Mole1 = new("phone-mole-1", 10);
    public static readonly Device Mole2 = new("phone-mole-2", 14);
    public static readonly Device Quay1 = new("phone-quay-1", 21);

    /// <summary>Lay without a card for more than five weeks, then sent all it had, the newest first.</summary>
    public static readonly Device Quay2 = new("phone-quay-2", 26, default, SilentFromDaysAgo: 150, SilentToDaysAgo: 112);

    public static readonly Device Mere1 = new("phone-mere-1", 33);

    /// <summary>A spare whose date was never set right: a day ahead.</summary>
    public static readonly Device Spare = new("phone-spare", 41, TimeSpan.FromDays(1));
}

/// <summary>Who writes, and on what.</summary>
internal sealed record Pen(Device Device, string By)
{
    public static readonly Pen Office = new(Devices.Office, "office-01");

    /// <summary>Somebody of the dock with one of its phones.</summary>
    public static Pen At(Dock dock, Dice dice) => new(dice.Pick(dock.Phones), dice.Pick(dock.People));
}
