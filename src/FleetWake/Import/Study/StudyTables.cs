using System.Globalization;
using FleetWake.Commands;
using nietras.SeparatedValues;

namespace FleetWake.Import.Study;

/// <summary>A boat of a drift study.</summary>
internal sealed record StudyBoat(string Fleet, string Boat, string Water, string Location, double BandLowRpm, double BandHighRpm);

/// <summary>A mounting of a drift study; weeks count from the study's first Monday.</summary>
internal sealed record StudyMounting(string Mounting, string Boat, int Number, string Material, decimal FittedWeek);

/// <summary>Something that happened during a mounting: a trial with its RPM, or an event with its type.</summary>
internal sealed record StudyPoint(string Mounting, decimal Week, decimal Hours, string Type, double? Rpm, double? AirTemperatureCelsius, double? LoadDeltaKilograms);

/// <summary>The four tables of a drift study, as their columns name them.</summary>
internal sealed record StudyTables(IReadOnlyList<StudyBoat> Boats, IReadOnlyList<StudyMounting> Mountings, ILookup<string, StudyPoint> Points)
{
    /// <summary>The type of a point that is a trial.</summary>
    public const string Trial = "trial";

    /// <summary>Reads boats.csv, mountings.csv, trials.csv and events.csv of a folder.</summary>
    public static StudyTables Read(string folder)
    {
        var trials = Read(folder, "trials.csv", r => new StudyPoint(
            r("mounting_id"), Decimal(r("week")), Decimal(r("hours_since_fitting")), Trial, Number(r("wot_rpm_normalised")), Number(r("air_temp_c")), Number(r("load_delta_kg"))));
        var events = Read(folder, "events.csv", r => new StudyPoint(
            r("mounting_id"), Decimal(r("week")), Decimal(r("hours_since_fitting")), r("type"), null, null, null));
        return new StudyTables(
            Read(folder, "boats.csv", r => new StudyBoat(
                r("fleet_id"), r("boat_id"), r("water"), r("location"), Number(r("rated_min_rpm")), Number(r("rated_max_rpm")))),
            Read(folder, "mountings.csv", r => new StudyMounting(
                r("mounting_id"), r("boat_id"), int.Parse(r("mounting_no"), CultureInfo.InvariantCulture), r("material"), Decimal(r("fitted_week")))),
            trials.Concat(events).ToLookup(p => p.Mounting, StringComparer.Ordinal));
    }

    private static List<T> Read<T>(string folder, string name, Func<Func<string, string>, T> make)
    {
        var path = Path.Combine(folder, name);
        if (!File.Exists(path)) throw new CommandException($"There is no {name} in \"{folder}\": a study is boats.csv, mountings.csv, trials.csv and events.csv.");
        var rows = new List<T>();
        using var reader = Sep.New(',').Reader().FromFile(path);
        foreach (var row in reader)
        {
            // A row lives until the next is read; its cells are taken out by name while it does.
            var cells = reader.Header.ColNames.ToDictionary(c => c, c => "", StringComparer.Ordinal);
            foreach (var column in reader.Header.ColNames) cells[column] = row[column].ToString();
            try
            {
                rows.Add(make(column => cells[column]));
            }
            catch (Exception e) when (e is FormatException or KeyNotFoundException)
            {
                throw new CommandException($"{name} line {row.LineNumberFrom} cannot be read: {e.Message}");
            }
        }

        return rows;
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static decimal Decimal(string text) => decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
