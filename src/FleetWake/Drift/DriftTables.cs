using System.Globalization;
using FleetWake.Commands;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;
using nietras.SeparatedValues;

namespace FleetWake.Drift;

/// <summary>A mounting of the tables, with its fleet and the numbers that its trials have there.</summary>
internal sealed record DriftRow(string Fleet, FleetMember Member, IReadOnlyList<string> TrialNumbers);

/// <summary>Reads the tables of drift: mountings.csv, trials.csv and events.csv, or their like-named ones of another set.</summary>
internal static class DriftTables
{
    /// <summary>Before the names of the tables whose mountings are looked at for alarms only.</summary>
    public const string AlarmSet = "alarm_";

    private static readonly string[] Names = ["mountings.csv", "trials.csv", "events.csv", "boats.csv"];

    /// <summary>Whether a file is one of the tables of a folder: what is read must not be written over.</summary>
    public static bool IsInput(string folder, string path) =>
        Path.GetDirectoryName(Path.GetFullPath(path)) == Path.GetFullPath(folder).TrimEnd(Path.DirectorySeparatorChar)
        && Names.Any(t => Path.GetFileName(path) == t || Path.GetFileName(path) == AlarmSet + t);

    /// <summary>Whether a folder has a set.</summary>
    public static bool Has(string folder, string set) => File.Exists(Path.Combine(folder, set + "mountings.csv"));

    /// <summary>Reads a set in the order of its mountings.csv.</summary>
    /// <exception cref="CommandException">A table or a column is not there, or a cell cannot be read.</exception>
    public static IReadOnlyList<DriftRow> Read(string folder, string set)
    {
        var trials = Rows(folder, set + "trials.csv", r => (Id: r("mounting_id"), Number: r("trial_seq"), Trial: new DriftTrial(
            Number(r("week")), Number(r("hours_since_fitting")), Number(r("wot_rpm_normalised")), Maybe(r("air_temp_c")), Maybe(r("load_delta_kg")))))
            .ToLookup(t => t.Id, StringComparer.Ordinal);
        var events = Rows(folder, set + "events.csv", r => (Id: r("mounting_id"), Event: new DriftEvent(Number(r("week")), Kind(r("type")))))
            .ToLookup(e => e.Id, e => e.Event, StringComparer.Ordinal);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        return Rows(folder, set + "mountings.csv", r =>
        {
            var id = r("mounting_id");
            if (!seen.Add(id)) throw new FormatException($"\"{id}\" is there twice.");
            var own = trials[id].ToArray();
            var (low, high) = (Maybe(r("rated_min_rpm")) ?? double.NaN, Maybe(r("rated_max_rpm")) ?? double.NaN);
            if (low > high)
            {
                Console.Error.WriteLine($"drift: {set}mountings.csv: the ends of the band of {id} stand the wrong way round; they are exchanged.");
                (low, high) = (high, low);
            }

            var series = new DriftSeries(low, high, [.. own.Select(t => t.Trial)], [.. events[id]]);
            return new DriftRow(r("fleet_id"), new(id, r("boat_id?") is { Length: > 0 } boat ? boat : null, r("material"), r("water"), series), [.. own.Select(t => t.Number)]);
        });
    }

    private static StepKind Kind(string type) => type switch
    {
        "inspection" => StepKind.None,
        "strike" => StepKind.Strike,
        "repitch" or "repair" => StepKind.Repitch,
        "hub" or "cleaning" or "engine" or "tachometer" or "rig" or "relaunch" => StepKind.NewBaseline,
        _ => throw new FormatException($"\"{type}\" is no event: inspection, strike, repitch, repair, hub, cleaning, engine, tachometer, rig and relaunch are."),
    };

    /// <summary>Reads a table; a column whose name ends in a question mark may be absent.</summary>
    private static List<T> Rows<T>(string folder, string name, Func<Func<string, string>, T> make)
    {
        var path = Path.Combine(folder, name);
        if (!File.Exists(path)) throw new CommandException($"There is no {name} in \"{folder}\": drift reads mountings.csv, trials.csv and events.csv.");
        var rows = new List<T>();
        try
        {
            Fill(path, name, make, rows);
        }
        catch (Exception e) when (e is InvalidDataException or ArgumentException)
        {
            // A row with too few cells, or a column named twice: the reader's own words say which, in its terms.
            throw new CommandException($"{name} line {rows.Count + 2}: {e.Message.Split('\n')[0].TrimEnd('.', '\r')}. Each row has as many cells as the head, and each column its own name.");
        }

        return rows;
    }

    private static void Fill<T>(string path, string name, Func<Func<string, string>, T> make, List<T> rows)
    {
        using var reader = Sep.New(',').Reader(o => o with { Unescape = true }).FromFile(path);
        var columns = reader.Header.ColNames.ToHashSet(StringComparer.Ordinal);
        foreach (var row in reader)
        {
            // A row lives until the next is read; its cells are taken out by name while it does.
            var cells = columns.ToDictionary(c => c, _ => "", StringComparer.Ordinal);
            foreach (var column in columns) cells[column] = row[column].ToString().Trim();
            var line = row.LineNumberFrom;
            try
            {
                rows.Add(make(column => column[^1] == '?'
                    ? cells.GetValueOrDefault(column[..^1], "")
                    : cells.GetValueOrDefault(column) ?? throw new FormatException($"there is no column {column}.")));
            }
            catch (FormatException e)
            {
                throw new CommandException($"{name} line {line}: {e.Message}");
            }
        }
    }

    private static double? Maybe(string text) => text.Length == 0 ? null : Number(text);

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? value
            : throw new FormatException($"\"{text}\" is no number: give it as 1234.5.");
}
