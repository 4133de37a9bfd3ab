namespace FleetWake.Demo;

/// <summary>Boats whose prop and shaft nobody has looked at for more than six months.</summary>
internal static class Overdue
{
    public static void Neglected(Notebook log)
    {
        foreach (var name in (string[])["Puffin", "Auklet", "Merganser", "Diver"])
            Usual.Years(log, Life.Healthy(log, Fleet.Named(name)), neglected: true);
    }
}
