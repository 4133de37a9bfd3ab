using System.CommandLine;
using System.Globalization;
using FleetWake.Drift;
using FleetWake.Reports.Pictures;
using FleetWake.Statistics.Drift;
using FleetWake.Trials;

namespace FleetWake.Commands;

internal static class DriftCommand
{
    public static Command Make()
    {
        var data = new Option<string>("--data") { Description = "Folder with mountings.csv, trials.csv and events.csv of one or more fleets.", Required = true };
        var output = new Option<string?>("--out") { Description = "CSV file to write the estimates to, one line a mounting." };
        var alarms = new Option<string?>("--alarms") { Description = "CSV file to write the alarms of alarm_mountings.csv, alarm_trials.csv and alarm_events.csv to." };
        var explain = new Option<string?>("--explain") { Description = "A mounting whose evidence is told in plain words." };
        var picture = new Option<string?>("--picture") { Description = "PNG file to draw the mounting of --explain to: its level over the hours." };
        var cusum = new Option<bool>("--cusum") { Description = "The picture shows its sums trial by trial instead, and what they are for is told." };
        var threshold = new Option<double?>("--threshold")
        {
            Description = $"Logarithm of the evidence that raises an alarm, 0.1 to 20; without it each fleet's own, calibrated on its trials, from {DriftAlarm.RecommendedThreshold.ToString(CultureInfo.InvariantCulture)} upward.",
        };
        var command = new Command(
            "drift",
            "Estimates the RPM drift of every mounting in tables of trials, without a database: rate, interval, when it leaves its band, alarm. Each fleet is fitted by itself.")
        {
            data, output, alarms, explain, picture, cusum, threshold,
        };
        command.SetAction(parsed =>
        {
            foreach (var (option, path) in new[] { ("--data", parsed.GetValue(data)), ("--out", parsed.GetValue(output)), ("--alarms", parsed.GetValue(alarms)), ("--picture", parsed.GetValue(picture)) })
                if (path is not null && string.IsNullOrWhiteSpace(path)) throw new CommandException($"{option} is empty: name a {(option == "--data" ? "folder" : "file")}.");
            var folder = Path.GetFullPath(parsed.GetRequiredValue(data));
            var limit = parsed.GetValue(threshold);
            if (limit is { } given && !(given is >= 0.1 and <= 20)) throw new CommandException($"--threshold {limit}: give a number from 0.1 to 20.");
            if (parsed.GetValue(output) is null && parsed.GetValue(alarms) is null && parsed.GetValue(explain) is null)
                throw new CommandException("Say what to make: --out FILE, --alarms FILE or --explain MOUNTING.");
            if (parsed.GetValue(explain) is null && (parsed.GetValue(picture) is not null || parsed.GetValue(cusum)))
                throw new CommandException("--picture and --cusum are of one mounting: name it with --explain.");
            if (parsed.GetValue(cusum) && parsed.GetValue(picture) is null) throw new CommandException("--cusum says what --picture shows: name its file.");
            if (!Directory.Exists(folder)) throw new CommandException($"There is no folder \"{folder}\".");
            foreach (var (option, path) in new[] { ("--out", parsed.GetValue(output)), ("--alarms", parsed.GetValue(alarms)), ("--picture", parsed.GetValue(picture)) })
            {
                if (path is not null && DriftTables.IsInput(folder, path)) throw new CommandException($"{option} \"{path}\" is one of the tables that are read: name another file.");
            }

            var others = DriftTables.Has(folder, DriftTables.AlarmSet) ? DriftTables.Read(folder, DriftTables.AlarmSet) : [];
            if (parsed.GetValue(alarms) is not null && others.Count == 0)
                throw new CommandException($"--alarms needs {DriftTables.AlarmSet}mountings.csv in \"{folder}\"; the alarms of mountings.csv are in the file of --out.");
            Run(folder, others, limit, parsed.GetValue(output), parsed.GetValue(alarms), parsed.GetValue(explain), parsed.GetValue(picture), parsed.GetValue(cusum));
            return 0;
        });
        return command;
    }

    private static void Run(string folder, IReadOnlyList<DriftRow> others, double? limit, string? output, string? alarms, string? explain, string? picture, bool cusum)
    {
        var rows = DriftTables.Read(folder, "");
        var run = new DriftRun(rows, limit);
        if (output is not null)
        {
            File.WriteAllLines(output, run.Estimates());
            Console.WriteLine($"drift: {rows.Count} mountings in {Path.GetFullPath(output)}");
        }

        if (alarms is not null)
        {
            File.WriteAllLines(alarms, run.Alarms(others));
            Console.WriteLine($"drift: {others.Count} mountings looked at for alarms in {Path.GetFullPath(alarms)}");
        }

        if (explain is null) return;
        var row = rows.Concat(others).FirstOrDefault(r => r.Member.Id == explain)
            ?? throw new CommandException($"There is no mounting \"{explain}\" in \"{folder}\".");
        var (of, fleet) = (run.Of(row), run.Fleet(row));
        foreach (var line in DriftExplanation.Of(of, fleet)) Console.WriteLine(line);
        if (picture is not null) Draw(picture, of, cusum ? DriftPictureFile.Sums(of, fleet) : null);
    }

    private static void Draw(string path, DriftOutcome of, CusumPicture? sums)
    {
        var renderer = new PngRenderer();
        NamedFile.Write("--picture", path, sums is null ? renderer.Render(DriftPictureFile.Level(of)) : renderer.Render(sums));
        Console.WriteLine();
        if (sums is not null) Console.WriteLine(sums.Statement);
        Console.WriteLine($"drift: picture in {Path.GetFullPath(path)}");
    }
}
