using System.Text.Json;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet.Figures;

namespace FleetWake.Figures;

/// <summary>All figures of a fleet, as the command prints them.</summary>
/// <param name="UsedUp">How long props last until another is needed.</param>
/// <param name="Worn">How long they last until they are worn.</param>
/// <param name="Costs">What a hundred engine hours cost.</param>
/// <param name="Strikes">How often the fleet strikes.</param>
/// <param name="Spares">What spares to hold.</param>
internal sealed record FleetFigures(PropLives UsedUp, PropLives Worn, WearCost Costs, StrikeRates Strikes, SpareNeeds Spares)
{
    private static readonly JsonSerializerOptions s_indented = new(LogbookJson.Options) { WriteIndented = true };

    public static FleetFigures Of(FleetRecord fleet, SpareQuestion question) => new(
        PropLives.Of(fleet), PropLives.Of(fleet, LifeQuestion.Worn), WearCost.Of(fleet), StrikeRates.Of(fleet), SpareNeeds.Of(fleet, question));

    /// <summary>One object, each member as the API answers it.</summary>
    public string Json() => JsonSerializer.Serialize(new { life = new { UsedUp, Worn }, Costs, Strikes, Spares }, s_indented);
}
