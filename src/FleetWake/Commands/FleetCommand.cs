using System.CommandLine;
using FleetWake.Figures;
using FleetWake.Import;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Store.Import;

namespace FleetWake.Commands;

internal static class FleetCommand
{
    public static Command Make()
    {
        var usual = new SpareQuestion();
        var json = new Option<bool>("--json") { Description = "Print the figures as one JSON object, as the API answers them." };
        var lead = new Option<double>("--lead-time") { Description = "Days from ordering a prop or part to having it, 1 to 730.", DefaultValueFactory = _ => usual.LeadTimeDays };
        var service = new Option<double>("--service") { Description = "Share of the time in which nobody is to wait for a spare, 0.5 to 0.999.", DefaultValueFactory = _ => usual.ServiceLevel };
        var season = new Option<double>("--season") { Description = "How much busier the time ahead is than the year's average, 0 to 10.", DefaultValueFactory = _ => usual.SeasonFactor };
        var report = new Option<string?>("--report") { Description = $"File for the rows that cannot be read; {ImportFolder.ReportName} in the folder when not given." };
        var command = new Command(
            "fleet",
            "Tells from a folder of CSV files as \"import\" takes them how long props last, what 100 engine hours cost, how often the fleet strikes and what spares to hold. Needs no database.")
        {
            ImportCommand.Folder, json, lead, service, season, ImportCommand.By, ImportCommand.Zone, report,
        };
        command.SetAction((parsed, ct) =>
        {
            var question = new SpareQuestion(
                Within(parsed.GetValue(lead), "--lead-time", 1, 730), Within(parsed.GetValue(service), "--service", 0.5, 0.999), Within(parsed.GetValue(season), "--season", 0, 10));
            var request = new ImportRequest(
                Path.GetFullPath(parsed.GetRequiredValue(ImportCommand.Folder)),
                "",
                new RowDefaults(parsed.GetValue(ImportCommand.By), parsed.GetValue(ImportCommand.Zone)),
                Report: parsed.GetValue(report));
            var read = FolderLogs.Read(request, TimeProvider.System, ct);
            var figures = FleetFigures.Of(FleetRecord.Of(read.Logs), question);
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json)) output.WriteLine(figures.Json());
            else foreach (var line in FiguresText.Of(figures)) output.WriteLine(line);

            // Beside the JSON, so that what reads it reads nothing else.
            (parsed.GetValue(json) ? parsed.InvocationConfiguration.Error : output).WriteLine($"fleet: {read.Totals.Rows} rows, refused {read.Totals.Refused}");
            return Task.FromResult(read.Totals.Refused > 0 ? Outcome.Wrong : 0);
        });
        return command;
    }

    private static double Within(double value, string option, double least, double most) =>
        value >= least && value <= most ? value : throw new CommandException($"{option} {value}: give a number from {least} to {most}.");
}
