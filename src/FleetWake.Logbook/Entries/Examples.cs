namespace FleetWake.Logbook.Entries;

/// <summary>
/// One invented boat whose records are the worked examples of the API description and of the docs. Sent in the order of
/// <see cref="RecordKind.All"/> to an operator that has no records yet, every one is recorded.
/// </summary>
internal static class Examples
{
    public const string Boat = "linnet";
    public const string Engine = "engine-7";
    public const string Prop = "lin-13";
    public const string Zone = "Europe/Oslo";

    /// <summary>A stamp with an id made of a number, at a local date and time.</summary>
    public static Stamp At(int number, string local = "2026-05-03T10:15:00") =>
        new(Id(number), "mech-1", local, Zone, number);

    /// <summary>The entry id of an example.</summary>
    public static Guid Id(int number) => new($"5f0d7c1e-8a35-4c5e-9a4e-{number:x12}");
}
