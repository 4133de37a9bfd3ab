namespace FleetWake.Web.Dock;

/// <summary>What a photo may be.</summary>
internal static class PhotoRules
{
    /// <summary>Bytes at the most: the phone sends its photos made smaller.</summary>
    public const int MostBytes = 2 * 1024 * 1024;

    /// <summary>Pixels at the most, asked of the file's head before anything is decoded.</summary>
    public const int MostPixels = 4096 * 4096;

    /// <summary>The same, as a phone is told.</summary>
    public static PhotoLimits Limits { get; } = new(MostBytes, MostPixels);
}
