using Marten;

namespace FleetWake.Store.People;

/// <summary>How somebody likes to read numbers and pages. A row of its own beside the person's card, erased with it.</summary>
/// <param name="Id">Key of the person, as of the card.</param>
/// <param name="Speed">Unit of speeds.</param>
/// <param name="Torque">Unit of torques, beside that of the engine's manual.</param>
/// <param name="Temperature">Unit of temperatures.</param>
/// <param name="Dates">How dates are written.</param>
/// <param name="Numbers">How numbers are written.</param>
/// <param name="Theme">Light or dark.</param>
public sealed record PersonPreferences(
    string Id,
    SpeedReading Speed = SpeedReading.Knots,
    TorqueReading Torque = TorqueReading.NewtonMetres,
    TemperatureReading Temperature = TemperatureReading.Celsius,
    DateReading Dates = DateReading.YearFirst,
    NumberReading Numbers = NumberReading.Point,
    ThemeReading Theme = ThemeReading.System);

/// <summary>Unit of speeds.</summary>
public enum SpeedReading
{
    /// <summary>Knots.</summary>
    Knots,

    /// <summary>Statute miles an hour.</summary>
    MilesPerHour,

    /// <summary>Kilometres an hour.</summary>
    KilometresPerHour,
}

/// <summary>Unit of torques.</summary>
public enum TorqueReading
{
    /// <summary>N m.</summary>
    NewtonMetres,

    /// <summary>lbf ft.</summary>
    PoundFeet,
}

/// <summary>Unit of temperatures.</summary>
public enum TemperatureReading
{
    /// <summary>°C.</summary>
    Celsius,

    /// <summary>°F.</summary>
    Fahrenheit,
}

/// <summary>How dates are written.</summary>
public enum DateReading
{
    /// <summary>2026-05-03, as records have it.</summary>
    YearFirst,

    /// <summary>3 May 2026.</summary>
    DayFirst,

    /// <summary>May 3, 2026.</summary>
    MonthFirst,
}

/// <summary>How numbers are written.</summary>
public enum NumberReading
{
    /// <summary>1,234.5.</summary>
    Point,

    /// <summary>1 234,5.</summary>
    Comma,
}

/// <summary>Light or dark.</summary>
public enum ThemeReading
{
    /// <summary>As the machine has it.</summary>
    System,

    /// <summary>Light.</summary>
    Light,

    /// <summary>Dark.</summary>
    Dark,
}

/// <summary>Keeps what people prefer.</summary>
public sealed class FleetPreferences(IDocumentStore store)
{
    /// <summary>What somebody prefers; the usual while nothing was chosen.</summary>
    public async Task<PersonPreferences> OfAsync(string @operator, string person, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        var key = PersonCard.KeyOf(@operator, person);
        return await session.LoadAsync<PersonPreferences>(key, ct) ?? new PersonPreferences(key);
    }

    /// <summary>Keeps what somebody chose.</summary>
    public async Task KeepAsync(PersonPreferences preferences, CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        session.Store(preferences);
        await session.SaveChangesAsync(ct);
    }
}
