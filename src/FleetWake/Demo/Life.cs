namespace FleetWake.Demo;

/// <summary>A prop at a position from a day on.</summary>
internal sealed record Mounted(string Position, string Prop, DateOnly From, Going Going);

/// <summary>A boat through the two years: which prop it turned when, and how it went with it.</summary>
internal sealed class Life(BoatLine boat, DateOnly from, Dice dice)
{
    private readonly List<Mounted> mounted = [];

    public BoatLine Boat { get; } = boat;

    /// <summary>Its first day in the record.</summary>
    public DateOnly From { get; } = from;

    /// <summary>The boat's own chance.</summary>
    public Dice Dice { get; } = dice;

    /// <summary>The props it came with.</summary>
    public IEnumerable<Mounted> First => mounted.Where(m => m.From == From);

    /// <summary>What is fitted at a position on a day.</summary>
    public Mounted On(string position, DateOnly day) =>
        mounted.Where(m => m.Position == position && m.From <= day).MaxBy(m => m.From)!;

    public void Fit(Mounted next) => mounted.Add(next);

    /// <summary>A boat with nothing wrong with it: inside its band, hardly any wear.</summary>
    public static Life Healthy(Notebook log, BoatLine boat) => With(log, boat, (_, going) => going);

    /// <summary>A boat that would be healthy but for what <paramref name="change"/> does to how it goes at a position.</summary>
    public static Life With(Notebook log, BoatLine boat, Func<string, Going, Going> change) => With(boat, log.Days.Start, change);

    /// <summary>The same for a boat that came later.</summary>
    public static Life With(BoatLine boat, DateOnly from, Func<string, Going, Going> change)
    {
        var dice = new Dice(boat.Id);
        var life = new Life(boat, from, dice);
        foreach (var position in boat.Positions)
        {
            var model = boat.Model;
            var going = new Going(model.UsualRpm + dice.Between(-110, 110), dice.Between(0, 7), model.Slip + dice.Between(-0.015, 0.015), model.Pitch, model.Gear);
            life.Fit(new Mounted(position, boat.Tag(position), from, change(position, going)));
        }

        return life;
    }
}
