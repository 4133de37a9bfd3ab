using System.CommandLine;
using FleetWake.Import;
using FleetWake.Settings;
using FleetWake.Store.Import;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Commands;

internal static class ImportCommand
{
    public static readonly Argument<string> Folder = new("folder") { Description = "Folder of CSV files, each named for its kind of record, as in prop_mounted.csv." };
    public static readonly Option<string?> By = new("--by") { Description = "Id of the person for rows that do not name one, e.g. office." };
    public static readonly Option<string?> Zone = new("--zone") { Description = "IANA zone for rows that do not name one, e.g. Europe/Oslo." };

    public static Command Make()
    {
        var @operator = new Option<string?>("--operator") { Description = "Id of the operator." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would come of it, and record nothing." };
        var report = new Option<string?>("--report") { Description = $"File for the rows that cannot be recorded; {ImportFolder.ReportName} in the folder when not given." };
        var templates = new Option<bool>("--write-templates") { Description = "Write an empty CSV file for each kind of record into the folder, with its columns, and end." };
        var command = new Command(
            "import",
            "Brings CSV files into the record. May be run again: what is recorded is not recorded twice. Exit 1 when rows are bad; the good ones are recorded. Needs FLEETWAKE_DB.")
        {
            Folder, @operator, dryRun, By, Zone, report, templates,
        };
        command.SetAction((parsed, ct) =>
        {
            var folder = Path.GetFullPath(parsed.GetRequiredValue(Folder));
            if (parsed.GetValue(templates)) return Task.FromResult(WriteTemplates(folder));
            var name = parsed.GetValue(@operator) ?? throw new CommandException("Say whose record it is: --operator NAME.");
            var defaults = new RowDefaults(parsed.GetValue(By), parsed.GetValue(Zone));
            return RunAsync(new ImportRequest(folder, name, defaults, parsed.GetValue(dryRun), parsed.GetValue(report)), ct);
        });
        return command;
    }

    private static async Task<int> RunAsync(ImportRequest request, CancellationToken ct)
    {
        await using var source = NpgsqlDataSource.Create(FleetSettings.FromEnvironment().NeedDatabase());
        using var store = FleetStore.Open(source);
        await OperatorCommand.NeedAsync(new FleetOperators(store, TimeProvider.System), request.Operator, ct);
        var totals = await new ImportRun(store, TimeProvider.System).RunAsync(request, ct);
        if (ct.IsCancellationRequested) Console.WriteLine("  stopped: run the same command again to go on; what is recorded is not recorded twice");
        if (request.DryRun) Console.WriteLine("  dry run: nothing was recorded");
        Console.WriteLine($"import: {totals}");
        return ct.IsCancellationRequested ? Outcome.Interrupted : totals.Bad > 0 ? Outcome.Wrong : 0;
    }

    private static int WriteTemplates(string folder)
    {
        var (written, there) = Templates.Write(folder);
        Console.WriteLine($"import: wrote {written} empty files into {folder}{(there > 0 ? $", left {there} that were there" : "")}. Fill in those you need; the others may stay empty or go.");
        return 0;
    }
}
