using System.Globalization;

namespace FleetWake.Web.Office.Charts;

/// <summary>A frame on a drawing, with its scales: where a value lies, and which round values are written beside it.</summary>
/// <param name="Left">Left edge [px].</param>
/// <param name="Top">Top [px].</param>
/// <param name="Right">Right edge [px].</param>
/// <param name="Bottom">Bottom [px].</param>
/// <param name="FromX">Value at the left.</param>
/// <param name="ToX">Value at the right.</param>
/// <param name="FromY">Value at the bottom.</param>
/// <param name="ToY">Value at the top.</param>
public sealed record Plane(double Left, double Top, double Right, double Bottom, double FromX, double ToX, double FromY, double ToY)
{
    /// <summary>Place of a value from left to right [px], kept near the frame.</summary>
    public double X(double value) => Left + (Math.Clamp((value - FromX) / (ToX - FromX), -0.5, 1.5) * (Right - Left));

    /// <summary>Place of a value from top to bottom [px], kept near the frame.</summary>
    public double Y(double value) => Bottom - (Math.Clamp((value - FromY) / (ToY - FromY), -0.5, 1.5) * (Bottom - Top));

    /// <summary>The same kept within the frame.</summary>
    public double InY(double value) => Math.Clamp(Y(value), Top, Bottom);

    /// <summary>The same kept within the frame.</summary>
    public double InX(double value) => Math.Clamp(X(value), Left, Right);

    /// <summary>Round values between two ends, about as many as asked for.</summary>
    public static IReadOnlyList<double> Ticks(double from, double to, int about)
    {
        var raw = (to - from) / Math.Max(1, about);
        if (!(raw > 0) || !double.IsFinite(raw)) return [];
        var power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        var step = power * ((raw / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 });
        var first = Math.Ceiling((from / step) - 1e-9) * step;
        var ticks = new List<double>();
        for (var i = 0; first + (i * step) <= to + (1e-9 * step); i++) ticks.Add(first + (i * step));
        return ticks;
    }

    /// <summary>A coordinate as it is written.</summary>
    public static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>A text's width by a guess that errs on the wide side [px]: the browser chooses the font.</summary>
    public static float Wide(string text, double size) => (float)(text.Length * size * 0.56);
}
