namespace FleetWake.Logbook.Entries;

/// <summary>Names of streams: one per boat, engine, prop and small part, one for the operator's settings, one for what the fleet has shown of itself, one per mail message and per mounting's alarms.</summary>
public static class StreamName
{
    /// <summary>The stream of the operator's own settings.</summary>
    public const string Operator = "operator";

    /// <summary>The stream of what the operator's fleet has shown of itself.</summary>
    public const string Fleet = "fleet";

    private const string BoatPrefix = "boat/";
    private const string EnginePrefix = "engine/";
    private const string PropPrefix = "prop/";
    private const string PartPrefix = "part/";

    /// <summary>Stream of a boat.</summary>
    public static string Boat(string boat) => BoatPrefix + boat;

    /// <summary>Stream of an engine.</summary>
    public static string Engine(string engine) => EnginePrefix + engine;

    /// <summary>Stream of a prop.</summary>
    public static string Prop(string prop) => PropPrefix + prop;

    /// <summary>Stream of a small part: its stock and its uses.</summary>
    public static string Part(string part) => PartPrefix + part;

    /// <summary>Stream of one mail message.</summary>
    public static string Mail(string message) => "mail/" + message;

    /// <summary>Stream of the alarms of one mounting.</summary>
    public static string Alarms(string mounting) => "alarms/" + mounting;

    /// <summary>The boat whose stream this is, or null.</summary>
    public static string? BoatOf(string stream) => After(stream, BoatPrefix);

    /// <summary>The engine whose stream this is, or null.</summary>
    public static string? EngineOf(string stream) => After(stream, EnginePrefix);

    /// <summary>The prop whose stream this is, or null.</summary>
    public static string? PropOf(string stream) => After(stream, PropPrefix);

    /// <summary>The small part whose stream this is, or null.</summary>
    public static string? PartOf(string stream) => After(stream, PartPrefix);

    private static string? After(string stream, string prefix) =>
        stream.StartsWith(prefix, StringComparison.Ordinal) ? stream[prefix.Length..] : null;
}
