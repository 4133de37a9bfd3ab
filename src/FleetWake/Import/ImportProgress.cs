namespace FleetWake.Import;

/// <summary>Says about once a second how far an import is.</summary>
/// <param name="folder">The folder.</param>
/// <param name="time">The clock.</param>
internal sealed class ImportProgress(ImportFolder folder, TimeProvider time)
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);
    private readonly int all = folder.Count;
    private readonly long start = time.GetTimestamp();
    private long last = time.GetTimestamp();

    /// <summary>Says it, unless it did a moment ago.</summary>
    public void Tell(string sheet, int rows)
    {
        if (time.GetElapsedTime(last) < Pause) return;
        last = time.GetTimestamp();
        Console.WriteLine($"  {rows} of {all} rows, {Rate(rows):0} a second, now in {sheet}");
    }

    /// <summary>Says how long it took, and what was taken for granted.</summary>
    public void End(int rows)
    {
        if (folder.DatesAlone > 0) Console.WriteLine($"  {folder.DatesAlone} rows without a time of day: taken as noon");
        Console.WriteLine($"  {rows} of {all} rows in {time.GetElapsedTime(start).TotalSeconds:0.0} s, {Rate(rows):0} a second");
    }

    private double Rate(int rows) => rows / Math.Max(time.GetElapsedTime(start).TotalSeconds, 0.001);
}
