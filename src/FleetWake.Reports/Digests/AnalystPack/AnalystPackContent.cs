namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>The month for an analyst as data: every sentence is worded, so that the templates only lay out.</summary>
/// <param name="OperatorName">The operator.</param>
/// <param name="Period">The month, e.g. <c>2026-11</c>.</param>
/// <param name="Day">Its last day.</param>
/// <param name="Subject">Subject of the message, on one line.</param>
/// <param name="Headline">The month in one sentence.</param>
/// <param name="Figures">The fleet's figures in words.</param>
/// <param name="Files">What goes along.</param>
/// <param name="FilesLeftOut">What found no room in the message, and where it is; empty when all went along.</param>
/// <param name="Link">Address of the files in the office; empty when no address is set.</param>
/// <param name="Method">How the numbers came about.</param>
/// <param name="Caution">What the numbers are not.</param>
[InTemplates]
public sealed record AnalystPackContent(
    [property: InTemplates("operator")] string OperatorName,
    string Period,
    DateOnly Day,
    string Subject,
    string Headline,
    IReadOnlyList<string> Figures,
    IReadOnlyList<PackFile> Files,
    string FilesLeftOut,
    string Link,
    IReadOnlyList<string> Method,
    IReadOnlyList<string> Caution);

/// <summary>A file of the pack.</summary>
/// <param name="Name">Its name.</param>
/// <param name="What">What a row of it is, and how many there are.</param>
[InTemplates]
public sealed record PackFile(string Name, string What);
