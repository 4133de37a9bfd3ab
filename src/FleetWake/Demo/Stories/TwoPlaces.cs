namespace FleetWake.Demo;

/// <summary>
/// Turnstone's prop P-118 came off for service and went back on, but its tag was read as P-117, which is Oystercatcher's
/// and never left it. Both records are kept; a person settles which is right. Nor was its nut looked at again since.
/// </summary>
internal static class TwoPlaces
{
    public static void Turnstone(Notebook log)
    {
        var oystercatcher = Life.Healthy(log, Fleet.Named("Oystercatcher"));
        var turnstone = Life.Healthy(log, Fleet.Named("Turnstone"));
        Usual.Years(log, oystercatcher);
        Usual.Years(log, turnstone);

        var day = log.Days.DaysAgo(24);
        var pen = Pen.At(turnstone.Boat.Dock, turnstone.Dice);
        Usual.Remove(log, turnstone, "single", "service", pen, DockCalendar.At(day, 7, 30));
        var misread = turnstone.On("single", day) with { Prop = oystercatcher.Boat.Tag("single") };
        Usual.Mount(log, turnstone, misread, pen, DockCalendar.At(day, 8, 15), retorqued: false);
    }
}
