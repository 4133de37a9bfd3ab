namespace FleetWake.Reports.Digests.Templates;

/// <summary>How one operator has its digests laid out.</summary>
/// <param name="Own">Files that it saved in the office, by name; they go before the folder's.</param>
/// <param name="LastGood">Whole templates by name that laid out the last digest without fault, for when a newer one fails.</param>
public sealed record OperatorLayout(IReadOnlyDictionary<string, string> Own, IReadOnlyDictionary<string, string> LastGood)
{
    /// <summary>Nothing of its own: the folder's templates, or the shipped ones.</summary>
    public static OperatorLayout None { get; } = new(new Dictionary<string, string>(), new Dictionary<string, string>());
}
