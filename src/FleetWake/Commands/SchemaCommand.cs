using System.CommandLine;
using FleetWake.Settings;
using FleetWake.Store.Schema;
using FleetWake.Ticks;
using Npgsql;

namespace FleetWake.Commands;

internal static class SchemaCommand
{
    public static Command Make()
    {
        var check = new Option<bool>("--check") { Description = "Only say whether the schema is there; exit 1 when it is not." };
        var command = new Command("schema", "Brings the database to this version's schema. Needs FLEETWAKE_DB; may be run again, and by many at once.") { check };
        command.SetAction(async (parsed, ct) =>
        {
            var database = FleetSettings.FromEnvironment().NeedDatabase();
            await using var source = NpgsqlDataSource.Create(database);
            if (!parsed.GetValue(check))
            {
                await SchemaSteps.ApplyAsync(source, ct);
                await TickSetup.ProvisionAsync(database, ct);
            }

            if (await SchemaSteps.DifferenceAsync(source, ct) is { } difference)
            {
                Console.Error.WriteLine($"schema: differs from this version's.\n{difference}");
                return Outcome.Wrong;
            }

            if (!await TickSetup.IsProvisionedAsync(source, ct))
            {
                Console.Error.WriteLine("schema: the scheduler's tables are missing.");
                return Outcome.Wrong;
            }

            Console.WriteLine("schema: up to date");
            return 0;
        });
        return command;
    }
}
