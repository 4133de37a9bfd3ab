using SkiaSharp;

namespace FleetWake.Reports.Tests.Pictures;

/// <summary>
/// Colours as people with a missing kind of cone see them: Machado, Oliveira and Fernandes, IEEE Transactions on Visualization and
/// Computer Graphics 15 (2009) 1291-1298, matrices of severity 1.0 (from memory; each row sums to 1, which a test holds), on linear sRGB.
/// Lightness and difference: CIE 1976 L*a*b*, white D65, from memory.
/// </summary>
internal static class ColourVision
{
    public static readonly IReadOnlyDictionary<string, double[,]> Kinds = new Dictionary<string, double[,]>(StringComparer.Ordinal)
    {
        ["as most see"] = new[,] { { 1.0, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } },
        ["protan"] = new[,] { { 0.152286, 1.052583, -0.204868 }, { 0.114503, 0.786281, 0.099216 }, { -0.003882, -0.048116, 1.051998 } },
        ["deutan"] = new[,] { { 0.367322, 0.860646, -0.227968 }, { 0.280085, 0.672501, 0.047413 }, { -0.011820, 0.042940, 0.968881 } },
        ["tritan"] = new[,] { { 1.255528, -0.076749, -0.178779 }, { -0.078411, 0.930809, 0.147602 }, { 0.004733, 0.691367, 0.303900 } },
    };

    /// <summary>Difference of two colours as a kind of eye sees them [CIE 1976 units].</summary>
    public static double Difference(string hexA, string hexB, double[,] kind)
    {
        var (a, b) = (Lab(Seen(hexA, kind)), Lab(Seen(hexB, kind)));
        return Math.Sqrt(Math.Pow(a.L - b.L, 2) + Math.Pow(a.A - b.A, 2) + Math.Pow(a.B - b.B, 2));
    }

    /// <summary>Lightness L*, which is all that grey keeps [0 to 100].</summary>
    public static double Lightness(string hex) => Lab(Linear(hex)).L;

    /// <summary>Contrast of a colour on white, WCAG 2.2, "contrast ratio" [1 to 21].</summary>
    public static double OnWhite(string hex)
    {
        var (r, g, b) = Linear(hex);
        return 1.05 / ((0.2126 * r) + (0.7152 * g) + (0.0722 * b) + 0.05);
    }

    private static (double R, double G, double B) Seen(string hex, double[,] m)
    {
        var (r, g, b) = Linear(hex);
        double Row(int i) => Math.Clamp((m[i, 0] * r) + (m[i, 1] * g) + (m[i, 2] * b), 0, 1);
        return (Row(0), Row(1), Row(2));
    }

    private static (double R, double G, double B) Linear(string hex)
    {
        static double Part(byte v) => v / 255.0 is var c && c <= 0.04045 ? c / 12.92 : Math.Pow(((v / 255.0) + 0.055) / 1.055, 2.4);
        var color = SKColor.Parse(hex);
        return (Part(color.Red), Part(color.Green), Part(color.Blue));
    }

    private static (double L, double A, double B) Lab((double R, double G, double B) c)
    {
        static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : ((24389.0 / 27 * t) + 16) / 116;
        var x = F(((0.4124 * c.R) + (0.3576 * c.G) + (0.1805 * c.B)) / 0.95047);
        var y = F((0.2126 * c.R) + (0.7152 * c.G) + (0.0722 * c.B));
        var z = F(((0.0193 * c.R) + (0.1192 * c.G) + (0.9505 * c.B)) / 1.08883);
        return ((116 * y) - 16, 500 * (x - y), 200 * (y - z));
    }
}
