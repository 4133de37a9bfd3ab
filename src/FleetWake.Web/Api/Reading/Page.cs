namespace FleetWake.Web.Api.Reading;

/// <summary>One page of a list.</summary>
/// <typeparam name="T">What it lists.</typeparam>
/// <param name="Items">The items, in the list's order.</param>
/// <param name="Next">Give it as <c>after</c> for the page that follows; absent on the last one.</param>
public sealed record Page<T>(IReadOnlyList<T> Items, string? Next)
{
    /// <summary>The same page with something made of each item.</summary>
    public Page<TOther> With<TOther>(Func<T, TOther> make) => new([.. Items.Select(make)], Next);
}
