using System.Security.Cryptography;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>A chart as a template sees it. Without an image it still has its statement and a reason.</summary>
/// <param name="Key">By what a template tells it from the others.</param>
/// <param name="Title">Title.</param>
/// <param name="Alt">The finding in a sentence.</param>
/// <param name="Cid">Content-ID; empty when the image could not be drawn.</param>
/// <param name="WhyNot">Why there is no image; empty when there is one.</param>
[InTemplates]
internal sealed record DrawnChart(string Key, string Title, string Alt, string Cid, string WhyNot)
{
    /// <summary>Draws all charts. One that cannot be drawn must not stop the mail: its statement stays.</summary>
    public static (IReadOnlyList<DrawnChart> Charts, IReadOnlyList<RenderedPicture> Pictures) Draw(IEnumerable<DraftPicture> pictures, Func<DraftPicture, byte[]> draw)
    {
        var charts = new List<DrawnChart>();
        var images = new List<RenderedPicture>();
        foreach (var picture in pictures)
        {
            try
            {
                var png = draw(picture);
                var name = $"chart-{images.Count + 1}";

                // The content names the image, so that a message rendered again is the same message.
                var cid = $"{name}.{Convert.ToHexStringLower(SHA256.HashData(png))[..16]}@fleetwake";
                images.Add(new RenderedPicture(cid, $"{name}.png", png, picture.Statement));
                charts.Add(new DrawnChart(picture.Key, picture.Title, picture.Statement, cid, ""));
            }
#pragma warning disable CA1031 // Whatever fails in a drawing library: the manager's mail goes out with the sentence.
            catch (Exception e)
#pragma warning restore CA1031
            {
                charts.Add(new DrawnChart(picture.Key, picture.Title, picture.Statement, "", $"The chart could not be drawn ({e.GetType().Name})."));
            }
        }

        return (charts, images);
    }
}
