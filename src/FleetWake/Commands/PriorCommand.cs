using System.CommandLine;
using System.Text.Json;
using FleetWake.Drift;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet;
using FleetWake.Settings;
using FleetWake.Store.Fleet;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace FleetWake.Commands;

internal static class PriorCommand
{
    public static Command Make()
    {
        var show = new Option<bool>("--show") { Description = "Only show the newest recorded fit." };
        var always = new Option<bool>("--always") { Description = "Record the fit even if nothing moved enough to matter." };
        var json = new Option<bool>("--json") { Description = "Print as JSON, as /api/fleet/prior answers." };
        var command = new Command(
            "prior",
            "Fits what an operator's fleet has shown of itself (wear by material and water, scatter of trials, use over the year, false alarms), records it if it moved, and prints it. \"fleetwake work\" does the same each night. Needs FLEETWAKE_DB.")
        {
            OperatorCommand.Operator, show, always, json,
        };
        command.SetAction(async (parsed, ct) =>
        {
            if (parsed.GetValue(show) && parsed.GetValue(always)) throw new CommandException("--show fits nothing and --always records a fit: give one of them.");
            await using var source = NpgsqlDataSource.Create(FleetSettings.FromEnvironment().NeedDatabase());
            using var store = FleetStore.Open(source);
            var (operators, reading) = (new FleetOperators(store, TimeProvider.System), new FleetReading(store, source));
            var card = await OperatorCommand.NeedAsync(operators, parsed.GetRequiredValue(OperatorCommand.Operator), ct);
            if (!parsed.GetValue(show))
            {
                // What the daemon has not folded is not in the fit, and a fleet nobody ever worked on would look empty.
                if (!await reading.UpToDateAsync(ct, card.Id)) Tell("the record is ahead of its findings: \"fleetwake work\" catches up, and what it has not folded is not in this fit");
                var step = new FleetFitStep(store, source, reading, operators, TimeProvider.System, NullLogger<FleetFitStep>.Instance);
                var fit = await step.FitAsync(card, parsed.GetValue(always) ? FitWish.Always : FitWish.Now, ct);
                if (fit.LeftOut.Count > 0) Tell($"left out, for their histories cannot be told or assessed: {string.Join(", ", fit.LeftOut)}");
                Tell($"{(fit.Outcome == FitOutcome.Recorded ? "recorded" : "not recorded")}: {fit.Why}");
            }

            var shown = FleetPriorCard.Of(await reading.FittedPriorAsync(card.Id, ct));
            if (parsed.GetValue(json)) Console.WriteLine(JsonSerializer.Serialize(shown, LogbookJson.Options));
            else foreach (var line in PriorText.Of(shown)) Console.WriteLine(line);
            return 0;
        });
        return command;
    }

    /// <summary>Beside the answer, so that a program reads that alone.</summary>
    private static void Tell(string line) => Console.Error.WriteLine($"prior: {line}");
}
