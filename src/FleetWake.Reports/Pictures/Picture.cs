namespace FleetWake.Reports.Pictures;

/// <summary>
/// A picture as data: what it shows, laid out in numbers and words, so that whoever draws it adds nothing and two drawings of
/// it say the same. <see cref="PngRenderer"/> draws each kind.
/// </summary>
/// <param name="Title">What it is of; written above it, not in it.</param>
/// <param name="Statement">The finding in a sentence or two: the alternative text of the picture.</param>
public abstract record Picture(string Title, string Statement);
