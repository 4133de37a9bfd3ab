using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Components;
using QRCoder;

namespace FleetWake.Web.Frame;

/// <summary>A QR code as one path of an SVG: it prints sharp at any size, and needs no style of its own.</summary>
internal static class QrCode
{

    /// <summary>The code of a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="says">What it is, for those who cannot see it.</param>
    public static MarkupString Of(string text, string says)
    {
        using var generator = new QRCodeGenerator();
        // A quarter may be lost: tags are scratched, and phones are wet.
        using var code = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.Q);

        // The library's matrix has the quiet zone about it.
        var rows = code.ModuleMatrix;
        var path = new StringBuilder();
        for (var y = 0; y < rows.Count; y++)
        {
            for (var x = 0; x < rows.Count; x++)
            {
                if (!rows[y][x]) continue;
                var run = 1;
                while (x + run < rows.Count && rows[y][x + run]) run++;
                path.Append(CultureInfo.InvariantCulture, $"M{x} {y}h{run}v1h-{run}z");
                x += run;
            }
        }

        var size = rows.Count;
        return (MarkupString)$"<svg class=\"qr\" viewBox=\"0 0 {size} {size}\" role=\"img\" aria-label=\"{System.Net.WebUtility.HtmlEncode(says)}\" shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h{size}v{size}h-{size}z\"/><path fill=\"#000\" d=\"{path}\"/></svg>";
    }
}
