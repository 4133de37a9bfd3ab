namespace FleetWake.Store.Layouts;

/// <summary>Which version of an operator's own template is in force.</summary>
/// <param name="Id">Name of the template file.</param>
/// <param name="InForce">The version; null when everybody's template serves.</param>
/// <param name="Newest">The newest version that was ever saved.</param>
public sealed record OwnTemplate(string Id, int? InForce, int Newest);

/// <summary>One version of an operator's own template. It is never changed.</summary>
/// <param name="Id">File and version, e.g. <c>style.css@3</c>.</param>
/// <param name="File">Name of the template file.</param>
/// <param name="Version">Version, from 1.</param>
/// <param name="Text">The text.</param>
/// <param name="By">Who saved it.</param>
/// <param name="At">When.</param>
public sealed record OwnTemplateVersion(string Id, string File, int Version, string Text, string By, DateTimeOffset At);

/// <summary>How the layout of a digest fared.</summary>
/// <param name="Id">The digest.</param>
/// <param name="LastGood">Whole templates by name that laid it out last without fault, where they are not everybody's.</param>
/// <param name="Why">Why its own layout could not be used the last time; null when it served.</param>
/// <param name="FailedAt">When that was.</param>
public sealed record LayoutState(string Id, IReadOnlyDictionary<string, string> LastGood, string? Why, DateTimeOffset? FailedAt);
