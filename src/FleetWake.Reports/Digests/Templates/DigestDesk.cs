using FleetWake.Store.Layouts;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>Lays digests out as their operator has it, and remembers what served.</summary>
public sealed class DigestDesk(DigestRenderer renderer, LayoutBook layouts)
{
    /// <summary>Renders a digest of an operator.</summary>
    public async Task<RenderedDigest> RenderAsync(string @operator, DigestDraft draft, CancellationToken ct)
    {
        var state = await layouts.StateAsync(@operator, draft.Digest, ct);
        var own = await layouts.OwnAsync(@operator, ct);
        var digest = renderer.Render(draft, new OperatorLayout(own, state?.LastGood ?? OperatorLayout.None.LastGood));
        await layouts.KeepAsync(@operator, draft.Digest, digest.Served, digest.WhyFallback, ct);
        return digest;
    }
}
