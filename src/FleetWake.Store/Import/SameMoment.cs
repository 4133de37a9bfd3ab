namespace FleetWake.Store.Import;

/// <summary>
/// Sheets write whole minutes, so a swap stands there as a prop that came off and one that went on at the same time. Such
/// rows take place in the order in which a dock does things, unless their <c>count</c> says otherwise.
/// </summary>
internal static class SameMoment
{
    // The rank is part of what is recorded: changed, every row would come again with other content.
    private static readonly string[][] Order =
    [
        ["prop_removed", "engine_removed"],
        ["engine_fitted"],
        ["prop_mounted", "found_fitted"],
        ["strike_reported"],
        ["inspected"],
    ];

    /// <summary>Place of a kind among rows of one moment; 0 for kinds that are first or need none.</summary>
    public static int Rank(string kind) => Array.FindIndex(Order, kinds => kinds.Contains(kind)) + 1;
}
