using System.CommandLine;
using System.Globalization;
using FleetWake.Import;
using FleetWake.Store.Import;

namespace FleetWake.Commands;

internal static class AssessCommand
{
    public static Command Make()
    {
        var day = new Option<string?>("--day") { Description = "Leave out what happened after this day, YYYY-MM-DD." };
        var output = new Option<string>("--out") { Description = "CSV file to write, one line a mounting.", Required = true };
        var @operator = new Option<string>("--operator")
        {
            Description = "Operator whose record the rows are or would be; settles the order of two rows of one kind and moment as there.",
            DefaultValueFactory = _ => "",
        };
        var prior = new Option<string>("--prior") { Description = "\"fleet\" fits what the folder's fleet has shown first, as the nightly fit does; \"trade\" takes what the trade expects of any.", DefaultValueFactory = _ => "fleet" };
        prior.AcceptOnlyFromAmong("fleet", "trade");
        var report = new Option<string?>("--report") { Description = $"File for the rows that cannot be read; {ImportFolder.ReportName} in the folder when not given." };
        var command = new Command(
            "assess",
            "Assesses every mounting of a folder of CSV files as \"import\" takes them, without a database: the numbers are those that the findings have after an import and a fit.")
        {
            ImportCommand.Folder, day, output, @operator, ImportCommand.By, ImportCommand.Zone, report, prior,
        };
        command.SetAction((parsed, ct) =>
        {
            DateOnly? until = null;
            if (parsed.GetValue(day) is { } text)
            {
                if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var given))
                    throw new CommandException($"\"{text}\" is no date: give it as 2026-05-04.");
                until = given;
            }

            var path = ImportFolder.NoSheet(parsed.GetRequiredValue(output), "--out");
            var request = new ImportRequest(
                Path.GetFullPath(parsed.GetRequiredValue(ImportCommand.Folder)),
                parsed.GetRequiredValue(@operator),
                new RowDefaults(parsed.GetValue(ImportCommand.By), parsed.GetValue(ImportCommand.Zone)),
                Report: parsed.GetValue(report),
                Output: path);
            if (path == request.ReportPath) throw new CommandException("--out and --report name the same file: give each its own.");
            var totals = new AssessRun(TimeProvider.System).Run(request, until, parsed.GetValue(prior) != "trade", () => new StreamWriter(path), ct);
            Console.WriteLine($"assess: {totals} in {path}");
            return Task.FromResult(totals.Refused > 0 ? Outcome.Wrong : 0);
        });
        return command;
    }
}
