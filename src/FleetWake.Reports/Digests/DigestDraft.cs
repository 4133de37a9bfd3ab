using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>
/// A digest before anybody lays it out: every sentence is worded and every number written. Templates and the plain form
/// only arrange it, so none of them can lose or reword a finding.
/// </summary>
/// <param name="Digest">Which digest, e.g. <c>weekly-wear</c>; its templates bear that name.</param>
/// <param name="Subject">Subject of the message, on one line.</param>
/// <param name="Content">A record marked <see cref="InTemplatesAttribute"/>; its members are what a template sees.</param>
/// <param name="Plain">The same in bare sections, for when a template fails. Nothing may be missing here.</param>
public sealed record DigestDraft(string Digest, string Subject, object Content, IReadOnlyList<PlainSection> Plain)
{
    /// <summary>The pictures in the order in which they are shown; a template sees them as <c>charts</c>.</summary>
    public IReadOnlyList<DraftPicture> Pictures { get; init; } = [];

    /// <summary>Files that go along.</summary>
    public IReadOnlyList<DigestAttachment> Attachments { get; init; } = [];
}

/// <summary>A picture that is not drawn yet. One that cannot be drawn leaves its statement.</summary>
/// <param name="Key">By what a template tells it from the others, e.g. <c>strip</c>; may repeat.</param>
/// <param name="Title">Title.</param>
/// <param name="Statement">The finding in a sentence: its alternative text.</param>
/// <param name="Draw">Draws it as PNG.</param>
public sealed record DraftPicture(string Key, string Title, string Statement, Func<PngRenderer, byte[]> Draw);

/// <summary>A section of the plain form.</summary>
/// <param name="Title">Title; empty for the opening.</param>
/// <param name="Lines">Items; a line break inside one keeps its parts together.</param>
/// <param name="Small">Small print, which stands after the pictures.</param>
public sealed record PlainSection(string Title, IReadOnlyList<string> Lines, bool Small = false);

/// <summary>A file that goes along with a digest.</summary>
/// <param name="FileName">A safe file name.</param>
/// <param name="MediaType">Media type, e.g. <c>text/calendar; charset=utf-8</c>.</param>
/// <param name="Bytes">Content.</param>
public sealed record DigestAttachment(string FileName, string MediaType, byte[] Bytes);
