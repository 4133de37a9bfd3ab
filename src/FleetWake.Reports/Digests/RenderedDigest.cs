namespace FleetWake.Reports.Digests;

/// <summary>A digest ready to be put into messages.</summary>
/// <param name="Subject">Subject, on one line.</param>
/// <param name="Html">The HTML part.</param>
/// <param name="Text">The plain text part, in 78 columns.</param>
/// <param name="Pictures">The pictures that the HTML refers to.</param>
/// <param name="UsedFallback">A template failed and another layout took its place.</param>
/// <param name="WhyFallback">Why, in one line; null when the templates served.</param>
public sealed record RenderedDigest(
    string Subject, string Html, string Text, IReadOnlyList<RenderedPicture> Pictures, bool UsedFallback, string? WhyFallback = null)
{
    /// <summary>Files that go along.</summary>
    public IReadOnlyList<DigestAttachment> Attachments { get; init; } = [];

    /// <summary>What was wrong with the templates that were meant to serve.</summary>
    public IReadOnlyList<Templates.TemplateFault> Faults { get; init; } = [];

    /// <summary>Whole templates by name that laid this out, when they are not the shipped ones: what to fall back on next time.</summary>
    public IReadOnlyDictionary<string, string> Served { get; init; } = new Dictionary<string, string>();
}

/// <summary>A picture of a digest.</summary>
/// <param name="ContentId">Its Content-ID, which the HTML names as <c>cid:</c>.</param>
/// <param name="FileName">A safe file name.</param>
/// <param name="Png">The image.</param>
/// <param name="Alt">Its statement in words.</param>
public sealed record RenderedPicture(string ContentId, string FileName, byte[] Png, string Alt);
