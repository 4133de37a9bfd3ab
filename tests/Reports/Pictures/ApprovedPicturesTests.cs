using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Tests.Pictures;

/// <summary>
/// Every kind of picture beside the image that a person has looked at and approved, pixel by pixel. <c>docs/pictures.md</c> names the
/// commands that approve and that show the difference.
/// </summary>
public class ApprovedPicturesTests
{
    private static readonly PngRenderer Renderer = new();

    public static TheoryData<string> Names => [.. SamplePictures.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_picture_is_the_one_that_was_approved(string name)
    {
        var received = Renderer.Render(SamplePictures.All[name]);
        var file = Path.Combine(Folder("Approved"), name + ".png");
        if (Environment.GetEnvironmentVariable("APPROVE_PICTURES") == "1")
        {
            // The bytes stay where the pixels do: another version of a library packs alike pixels otherwise.
            if (!File.Exists(file) || PictureDifference.Of(File.ReadAllBytes(file), received) is not null) File.WriteAllBytes(file, received);
            return;
        }

        Assert.True(File.Exists(file), $"No image of {name} was approved yet. Look at it, then: APPROVE_PICTURES=1 dotnet test tests/Reports --filter ApprovedPictures");
        if (PictureDifference.Of(File.ReadAllBytes(file), received) is not { } difference) return;
        var folder = Directory.CreateDirectory(Folder("Received")).FullName;
        File.WriteAllBytes(Path.Combine(folder, name + ".received.png"), received);
        File.WriteAllBytes(Path.Combine(folder, name + ".difference.png"), difference.Png);
        PictureDifference.WritePage(folder, Folder("Approved"));
        Assert.Fail($"{name} differs from the approved image in {difference.Pixels} pixels, the farthest by {difference.Most} of 255. See {Path.Combine("tests", "Reports", "Pictures", "Received", "index.html")}");
    }

    [Fact]
    public void No_approved_image_is_left_over() =>
        Assert.Equal(SamplePictures.All.Keys.Order(StringComparer.Ordinal), Directory.GetFiles(Folder("Approved"), "*.png").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal));

    [Fact]
    public void A_single_pixel_makes_a_difference_and_none_makes_none()
    {
        var png = Renderer.Render(SamplePictures.All["strip-one"]);
        Assert.Null(PictureDifference.Of(png, png));
        Assert.Equal((1, 3), PictureDifference.Of(png, PictureDifference.WithOnePixelChanged(png, 3)) is { } one ? (one.Pixels, one.Most) : default);
    }

    [Fact]
    public void Two_drawings_of_a_picture_are_the_same_bytes() =>
        Assert.All(SamplePictures.All.Values, p => Assert.Equal(Renderer.Render(p), Renderer.Render(p)));

    private static string Folder(string name) => RepositoryFolder.Of("tests", "Reports", "Pictures", name);
}
