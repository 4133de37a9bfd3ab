using System.CommandLine;
using FleetWake.Import;
using FleetWake.Store.Import;

namespace FleetWake.Commands;

internal static class LearnCommand
{
    public static Command Make()
    {
        var report = new Option<string?>("--report") { Description = $"File for the rows that cannot be read; {ImportFolder.ReportName} in the folder when not given." };
        var command = new Command(
            "learn",
            "Learns from a folder of CSV files as \"import\" takes them how the engines of each model answer power and pitch: from trials in unlike air, repitches and swapped props. Says what to give to \"trial\" and \"pitch\". Needs no database.")
        {
            ImportCommand.Folder, ImportCommand.By, ImportCommand.Zone, report,
        };
        command.SetAction((parsed, ct) =>
        {
            var request = new ImportRequest(
                Path.GetFullPath(parsed.GetRequiredValue(ImportCommand.Folder)),
                "",
                new RowDefaults(parsed.GetValue(ImportCommand.By), parsed.GetValue(ImportCommand.Zone)),
                Report: parsed.GetValue(report));
            var read = FolderLogs.Read(request, TimeProvider.System, ct);
            var families = LearnRun.Of(read.Logs);
            foreach (var line in LearnRun.Told(families)) Console.WriteLine(line);
            Console.WriteLine($"learn: {read.Totals.Rows} rows, refused {read.Totals.Refused}: {families.Count} engine families taught something");
            return Task.FromResult(read.Totals.Refused > 0 ? Outcome.Wrong : 0);
        });
        return command;
    }
}
