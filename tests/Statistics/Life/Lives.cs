using FleetWake.Statistics.Life;

namespace FleetWake.Statistics.Tests.Life;

/// <summary>The data sets of survival analysis that every textbook has (see Reference), by group.</summary>
internal static class Lives
{
    internal static Lifetime[] Aml => All(ByGroup("aml.csv", 0, 1, 2, "1"));

    /// <summary>Maintained first, as in the reference.</summary>
    internal static Lifetime[][] AmlByGroup => ByGroup("aml.csv", 0, 1, 2, "1");

    internal static Lifetime[] Ovarian => All(OvarianByTreatment);

    internal static Lifetime[][] OvarianByTreatment => ByGroup("ovarian.csv", 0, 1, 4, "1");

    internal static Lifetime[] Lung => All(LungBySex);

    internal static Lifetime[][] LungBySex => ByGroup("lung.csv", 1, 2, 4, "2");

    internal static Lifetime[] Veteran => All(VeteranByTreatment);

    internal static Lifetime[][] VeteranByTreatment => ByGroup("veteran.csv", 2, 3, 0, "1");

    internal static Lifetime[][] VeteranByCell => ByGroup("veteran.csv", 2, 3, 1, "1");

    internal static void Close(double expected, double actual, double relative) =>
        Assert.Equal(expected, actual, relative * Math.Max(Math.Abs(expected), 1e-3));

    private static Lifetime[] All(Lifetime[][] groups) => [.. groups.SelectMany(group => group)];

    private static Lifetime[][] ByGroup(string file, int time, int status, int group, string ended) =>
    [
        .. ReferenceTable.Rows(file)
            .GroupBy(row => row[group], row => new Lifetime(ReferenceTable.Number(row[time]), row[status] == ended))
            .Select(rows => rows.ToArray()),
    ];
}
