using ScottPlot;

namespace FleetWake.Reports.Pictures;

/// <summary>A kind of mark: its shape says what its colour says, for whoever sees no colour.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Hex">The colour, #RRGGBB.</param>
/// <param name="Size">Its size beside the others [1].</param>
internal sealed record Sign(SignShape Shape, string Hex, float Size = 1)
{
    /// <summary>Over the top of its band.</summary>
    public static readonly Sign Above = new(SignShape.TriangleUp, Ink.Alarm, 1.15f);

    /// <summary>Under the bottom of its band.</summary>
    public static readonly Sign Below = new(SignShape.TriangleDown, Ink.Alarm, 1.15f);

    /// <summary>Inside, and likely to leave within 100 engine hours.</summary>
    public static readonly Sign Leaving = new(SignShape.Diamond, Ink.Second, 1.1f);

    /// <summary>Inside.</summary>
    public static readonly Sign Inside = new(SignShape.Circle, Ink.First, 0.82f);

    /// <summary>Stands out from what it is held against.</summary>
    public static readonly Sign Stands = new(SignShape.Diamond, Ink.Alarm, 1.1f);

    /// <summary>Does not stand out.</summary>
    public static readonly Sign Usual = new(SignShape.Circle, Ink.First);

    /// <summary>Within the doubt of its readings.</summary>
    public static readonly Sign Unsure = new(SignShape.Ring, Ink.Pale);

    /// <summary>The pairs that stand in one picture, by picture: a test holds them apart.</summary>
    public static IReadOnlyList<(string Picture, IReadOnlyList<Sign> Signs)> Together { get; } =
    [
        ("fleet strip", [Above, Below, Leaving, Inside]),
        ("limits", [Stands, Usual]),
        ("slip map", [Stands, Unsure]),
        ("panels", [Above, Below, Leaving, Inside]),
    ];

    /// <summary>The same colour for the plotting library.</summary>
    public Color Color => Color.FromHex(Hex);
}

/// <summary>Shapes that stay apart at the size they have in a phone's mail.</summary>
internal enum SignShape
{
    /// <summary>Full circle.</summary>
    Circle,

    /// <summary>Circle of a line.</summary>
    Ring,

    /// <summary>Full triangle, point up.</summary>
    TriangleUp,

    /// <summary>Full triangle, point down.</summary>
    TriangleDown,

    /// <summary>Full square on its corner.</summary>
    Diamond,
}
