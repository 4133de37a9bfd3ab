using System.CommandLine;
using System.Globalization;
using FleetWake.Hosting;
using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Digests;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Store.Layouts;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Store.Records;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Commands;

internal static class DigestCommand
{
    public static Command Make()
    {
        var date = new Option<string>("--date") { Description = "Day of the digest, YYYY-MM-DD: what happened later is left out.", Required = true };
        var folder = new Option<string>("--out") { Description = "Folder to write the .eml, its HTML and pictures to.", Required = true };
        var command = new Command(
            "digest",
            "Writes an operator's weekly wear digest of any day into a folder, from the record as it is known now. Sends nothing and marks nothing as sent. Needs FLEETWAKE_DB.")
        {
            OperatorCommand.Operator, date, folder,
        };
        command.SetAction(async (parsed, ct) =>
        {
            var text = parsed.GetRequiredValue(date);
            if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
                throw new CommandException($"\"{text}\" is no date: give it as 2026-05-04.");
            var settings = FleetSettings.FromEnvironment();
            await using var source = NpgsqlDataSource.Create(settings.NeedDatabase());
            using var store = FleetStore.Open(source);
            var card = await OperatorCommand.NeedAsync(new FleetOperators(store, TimeProvider.System), parsed.GetRequiredValue(OperatorCommand.Operator), ct);
            var reading = new FleetReading(store, source);
            var people = new FleetPeople(store, source, new Recorder(store), TimeProvider.System);
            var (path, boats) = await ReportServices.WriteDigestAsync(settings, card, day, reading, people, new LayoutBook(store, TimeProvider.System), Path.GetFullPath(parsed.GetRequiredValue(folder)), ct);
            Console.WriteLine($"digest: {Periods.Week(day)}, {boats} boats, {path}");
            return 0;
        });
        return command;
    }
}
