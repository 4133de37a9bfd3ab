using System.Security.Cryptography;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>A chart as a template sees it. Without an image it still has its statement and a reason.</summary>
/// <param name="Title">Title.</param>
/// <param name="Alt">The finding in a sentence.</param>
/// <param name="Cid">Content-ID; empty when the image could not be drawn.</param>
/// <param name="WhyNot">Why there is no image; empty when there is one.</param>
internal sealed record DrawnChart(string Title, string Alt, string Cid, string WhyNot)
{
    /// <summary>Draws all charts. One that cannot be drawn must not stop the mail: its statement stays.</summary>
    public static (IReadOnlyList<DrawnChart> Charts, IReadOnlyList<RenderedPicture> Pictures) Draw(IEnumerable<(string Title, string Statement, Func<byte[]> Draw)> pictures)
    {
        var charts = new List<DrawnChart>();
        var images = new List<RenderedPicture>();
        foreach (var (title, statement, draw) in pictures)
        {
            try
            {
                var png = draw();
                var name = $"chart-{images.Count + 1}";

                // The content names the image, so that a message rendered again is the same message.
                var cid = $"{name}.{Convert.ToHexStringLower(SHA256.HashData(png))[..16]}@fleetwake";
                images.Add(new RenderedPicture(cid, $"{name}.png", png, statement));
                charts.Add(new DrawnChart(title, statement, cid, ""));
            }
#pragma warning disable CA1031 // Whatever fails in a drawing library: the manager's mail goes out with the sentence.
            catch (Exception e)
#pragma warning restore CA1031
            {
                charts.Add(new DrawnChart(title, statement, "", $"The chart could not be drawn ({e.GetType().Name})."));
            }
        }

        return (charts, images);
    }
}
