using FleetWake.Logbook.Boats;

namespace FleetWake.Demo;

/// <summary>A finer prop for winter work, the usual one for summer. Each mounting has a baseline of its own.</summary>
internal static class SeasonSwap
{
    public static void Curlew(Notebook log)
    {
        var boat = Fleet.Named("Curlew");
        var life = Life.With(log, boat, (_, going) => going with { NewRpm = 5450, Wear = 4 });
        var summer = life.On("single", log.Days.Start);
        var winter = summer with { Prop = "P-922", Going = summer.Going with { NewRpm = 5690, Pitch = 16 } };

        var bought = DockCalendar.At(log.Days.Start.AddDays(1), 15, 30);
        Usual.RegisterProp(log, boat, winter, bought, bought);
        foreach (var (day, toWinter) in Changes(log.Days))
        {
            var next = toWinter ? winter : summer;
            if (life.On("single", day).Prop != next.Prop) Usual.Swap(log, life, next with { From = day }, "other_size");
        }

        Plan(log, boat, "usual", summer.Going.Pitch);
        Plan(log, boat, "winter", winter.Going.Pitch);
        Usual.Years(log, life, watchedUntil: 6);
    }

    private static void Plan(Notebook log, BoatLine boat, string use, double pitch) =>
        log.Write(Pen.Office, DockCalendar.At(log.Days.Start.AddDays(1), 16, 0), $"{boat.Id} {use} prop", s => new PlanProp(
            s, boat.Id, "single", use, boat.Model.Diameter, pitch, 3, boat.Material));

    private static IEnumerable<(DateOnly Day, bool ToWinter)> Changes(DockCalendar days) =>
        Enumerable.Range(days.Start.Year, 3)
            .SelectMany(y => ((DateOnly Day, bool ToWinter)[])[(new DateOnly(y, 4, 20), true), (new DateOnly(y, 10, 10), false)])
            .Where(c => c.Day > days.Start.AddDays(14) && c.Day < days.DaysAgo(14));
}
