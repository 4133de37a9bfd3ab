using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Fleet;

/// <summary>Which boats somebody wants to see, as the address tells it.</summary>
/// <param name="Text">Part of a name, an id or a tag; empty for all.</param>
/// <param name="Dock">Id of a dock.</param>
/// <param name="Model">Engine model.</param>
/// <param name="Size">Prop size as written on the page.</param>
/// <param name="State">A hire state, by its word.</param>
public sealed record FleetFilter(string Text, string Dock, string Model, string Size, string State)
{
    /// <summary>Longest text that is looked for.</summary>
    public const int LongestText = 60;

    public bool Any => Text.Length + Dock.Length + Model.Length + Size.Length + State.Length > 0;

    public static FleetFilter Of(HttpRequest request)
    {
        string Read(string name) => request.Query[name].ToString().Trim() is var text && text.Length > LongestText ? text[..LongestText] : text;
        return new FleetFilter(Read("q"), Read("dock"), Read("engine"), Read("prop"), Read("hire"));
    }

    /// <summary>Whether a row is one of them. Boats that left are shown to whoever asks for them.</summary>
    public bool Takes(FleetRow row) =>
        (State.Length == 0 ? row.State != FleetState.Left : Word(row.State) == State)
        && (Dock.Length == 0 || row.Dock == Dock)
        && (Model.Length == 0 || row.Positions.Any(p => p.Model == Model))
        && (Size.Length == 0 || row.Positions.Any(p => SizeOf(p) == Size))
        && (Text.Length == 0 || row.Words.Contains(Text.ToUpperInvariant(), StringComparison.Ordinal));

    public static string Word(FleetState state) => Logbook.Entries.Words.Of(state);

    /// <summary>A prop's size as the trade writes it; null while its numbers are not known.</summary>
    public static string? SizeOf(FleetPosition position) => position.Prop is { DiameterInches: { } d, PitchInches: { } p } ? PropWords.Size(d, p) : null;
}
