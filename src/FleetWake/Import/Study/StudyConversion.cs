using FleetWake.Commands;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Import.Study;

/// <summary>
/// Writes a drift study as folders of sheets, one a fleet. Its RPM is brought to reference conditions already and becomes
/// <c>normalised_rpm_read</c>. What the study does not say and a record must is the same for every boat (see
/// <see cref="StandIns"/>); none of it bears on drift, margin or band exit.
/// </summary>
public static class StudyConversion
{
    private const string Zone = "Etc/UTC";
    private const string By = "study";
    private const string Single = "single";
    private const decimal MinutesOfWeek = 7 * 24 * 60;

    // Week 0 of a study, a Monday.
    private static readonly DateTime Start = new(2020, 1, 6, 0, 0, 0, DateTimeKind.Unspecified);

    /// <summary>Converts a study; returns fleets and rows.</summary>
    /// <param name="folder">The study's folder.</param>
    /// <param name="output">A folder for one import folder a fleet, each named for its fleet in lower case.</param>
    public static (int Fleets, int Rows) Convert(string folder, string output)
    {
        var study = StudyTables.Read(folder);
        var mountings = study.Mountings.ToLookup(m => m.Boat, StringComparer.Ordinal);
        var (fleets, rows) = (0, 0);
        foreach (var fleet in study.Boats.GroupBy(b => b.Fleet, StringComparer.Ordinal))
        {
            // It names a folder.
            var check = new Check();
            var name = check.Id(fleet.Key, "/fleet_id");
            if (check.Decide(() => new Decision.Keep([], [])) is Decision.Refuse refused)
                throw new CommandException($"boats.csv, fleet_id: {refused.Refusals[0].Message}.");
            var sheets = new SheetWriter(By, Zone);
            foreach (var boat in fleet) Tell(boat, [.. mountings[boat.Boat].OrderBy(m => m.Number)], study.Points, sheets);
            sheets.WriteTo(Path.Combine(output, name.ToLowerInvariant()));
            (fleets, rows) = (fleets + 1, rows + sheets.Rows);
        }

        return (fleets, rows);
    }

    private static void Tell(StudyBoat boat, IReadOnlyList<StudyMounting> mountings, ILookup<string, StudyPoint> points, SheetWriter sheets)
    {
        var engine = "engine-" + boat.Boat;
        sheets.Add(boat.Boat, Start, new RegisterBoat(null, boat.Boat, boat.Boat, boat.Location, Zone, Water(boat.Water), [Single]));
        sheets.Add(engine, Start, new RegisterEngine(null, engine, StandIns.EngineModel, boat.BandLowRpm, boat.BandHighRpm, StandIns.GearRatio));
        sheets.Add(engine, Start, new FitEngine(null, boat.Boat, Single, engine, 0));

        // The study counts hours from each fitting; an engine's meter goes on, at least to where the mounting was last seen.
        var (hours, at, before) = (0m, Start, (StudyMounting?)null);
        foreach (var mounting in mountings)
        {
            sheets.Add(mounting.Mounting, Start, new RegisterProp(
                null, mounting.Mounting, StandIns.DiameterInches, StandIns.PitchInches, StandIns.Blades, mounting.Material, StandIns.Rotation));
            at = After(at, mounting.FittedWeek);
            if (before is not null)
                sheets.Add(before.Mounting, at, new RemoveProp(null, boat.Boat, Single, StandIns.WhyRemoved, before.Mounting, (double)hours));
            sheets.Add(mounting.Mounting, at, new MountProp(null, boat.Boat, Single, mounting.Mounting, (double)hours));
            foreach (var (i, point) in points[mounting.Mounting].OrderBy(p => p.Week).ThenBy(p => p.Hours).Index())
            {
                at = After(at, point.Week);
                Tell(boat.Boat, engine, point, $"{mounting.Mounting}/{i + 1}", at, (double)(hours + point.Hours), sheets);
            }

            hours += points[mounting.Mounting].Select(p => p.Hours).DefaultIfEmpty().Max();
            before = mounting;
        }
    }

    private static void Tell(string boat, string engine, StudyPoint point, string key, DateTime at, double hours, SheetWriter sheets)
    {
        switch (point.Type)
        {
            case StudyTables.Trial:
                sheets.Add(key, at, new ReadNormalisedRpm(null, boat, Single, point.Rpm, hours, point.AirTemperatureCelsius, point.LoadDeltaKilograms));
                break;
            case "strike":
                sheets.Add(key, at, new ReportStrike(null, boat, Single, StandIns.StruckObject, StandIns.StrikeSeverity, hours));
                break;
            case "inspection":
                sheets.Add(key, at, new Inspect(null, boat, Single, StandIns.Verdict, Hours: hours));
                break;
            case "repitch":
                // A repitch is the shop's and knows no engine: the meter is read beside it.
                sheets.Add(key, at, new RepitchProp(null, point.Mounting, StandIns.PitchInches));
                sheets.Add(key, at, new ReadHours(null, engine, hours));
                break;
            default:
                throw new CommandException($"events.csv has \"{point.Type}\" at {point.Mounting}: strike, inspection and repitch are known.");
        }
    }

    /// <summary>The moment of a week, and a minute after the one before at least: weeks are rounded, and what came later must stay later.</summary>
    private static DateTime After(DateTime before, decimal week)
    {
        var at = Start.AddMinutes((double)Math.Round(week * MinutesOfWeek));
        return at > before ? at : before.AddMinutes(1);
    }

    private static string Water(string water) => water == "coastal" ? "salt" : water;
}

/// <summary>What a study leaves out and a record must have. Invented.</summary>
internal static class StandIns
{
    public const string EngineModel = "not told by the study";
    public const double GearRatio = 2;
    public const double DiameterInches = 13;
    public const double PitchInches = 15;
    public const int Blades = 3;
    public const string Rotation = "right";
    public const string WhyRemoved = "worn";
    public const string StruckObject = "unknown";

    /// <summary>The least that left a mark: a logged strike begins a new baseline in the study.</summary>
    public const string StrikeSeverity = "chipped";

    /// <summary>The boats of a study go on after a look.</summary>
    public const string Verdict = "fit";
}
