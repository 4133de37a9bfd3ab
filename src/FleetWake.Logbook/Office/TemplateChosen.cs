using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Office;

/// <summary>By which template a digest is laid out from now on. The text itself lies in a row: a fact holds no free text.</summary>
/// <param name="Entry">The stamp; <c>by</c> is who chose it.</param>
/// <param name="File">Name of the template file, e.g. <c>weekly-wear.html.liquid</c>.</param>
/// <param name="Version">Version of the operator's own text; null for the one that everybody has.</param>
/// <param name="Sha256">SHA-256 of that text, lower-case hex; null with no version.</param>
[StoredAs("template_chosen", 1)]
public sealed record TemplateChosen(Entry Entry, string File, int? Version, string? Sha256) : IFact;
