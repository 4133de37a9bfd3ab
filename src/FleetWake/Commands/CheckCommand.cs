using System.CommandLine;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Pictures;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Store.Mail;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Commands;

internal static class CheckCommand
{
    public static Command Make()
    {
        var command = new Command("check", "Looks whether everything is in place, says what is not and how to mend it; exit 1 when something is wrong. Needs FLEETWAKE_DB.");
        command.SetAction((_, ct) => RunAsync(ct));
        return command;
    }

    private static async Task<int> RunAsync(CancellationToken ct)
    {
        var settings = FleetSettings.FromEnvironment();
        await using var source = NpgsqlDataSource.Create(settings.NeedDatabase());
        using var store = FleetStore.Open(source);
        var reading = new FleetReading(store, source);
        var ledger = new MailLedger(store, source, TimeProvider.System);

        var checks = new Checks();
        var durable = false;
        await checks.RunAsync("templates", () =>
        {
            var empty = WeeklyWear.Build("Check", "2026-W01", new DateOnly(2026, 1, 1), []);
            var tried = new DigestRenderer(new PngRenderer(), settings.TemplateFolder).Render(empty);
            return Task.FromResult(tried.WhyFallback is null ? "render" : throw new CommandException($"{tried.WhyFallback}; digests go out in a plain form until it is mended"));
        });
        await checks.RunAsync("database", async () =>
        {
            var server = await ServerFacts.AskAsync(source, ct);
            if (server.Major < SchemaSteps.OldestServerMajor)
                throw new CommandException($"PostgreSQL {server.Version}: {SchemaSteps.OldestServerMajor} or newer is needed");
            durable = server.Durable;
            return $"PostgreSQL {server.Version}";
        });
        await checks.ThenAsync("schema", async () => await SchemaSteps.DifferenceAsync(source, ct) is null
            ? "up to date"
            : throw new CommandException("differs from this version's: run \"fleetwake schema\""));
        await checks.ThenAsync("findings", async () =>
        {
            var backlog = await reading.BacklogAsync(ct);
            return backlog.Parked.Count == 0
                ? $"{backlog.Waiting} boats waiting, none parked"
                : throw new CommandException($"could not assess {string.Join(", ", backlog.Parked.Select(p => $"{p.Boat} of {p.Operator} ({p.Error})"))}: mend the record by an amendment, or report the error");
        });
        await checks.ThenAsync("mail", async () =>
        {
            var counts = await ledger.CountsAsync(ct);
            var refused = counts.GetValueOrDefault(MailState.Refused);
            var listed = counts.Count == 0 ? "nothing yet" : string.Join(", ", counts.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => $"{c.Value} {c.Key}"));
            return refused == 0 ? listed : throw new CommandException($"{listed}: look at the addresses that refused");
        });
        await checks.ThenAsync("durability", () => Task.FromResult(durable
            ? "what is acknowledged survives a crash"
            : throw new CommandException("fsync, full_page_writes or synchronous_commit is off: an acknowledged record could be lost; set them on")));
        return checks.AllWell ? 0 : Outcome.Wrong;
    }

    private sealed class Checks
    {
        public bool AllWell { get; private set; } = true;

        /// <summary>Looks at something that rests on what came before; nothing is told of it when that was wrong.</summary>
        public async Task ThenAsync(string name, Func<Task<string>> look)
        {
            if (AllWell) await RunAsync(name, look);
            else Console.WriteLine($"-     {name,-10} not looked at: mend the above first");
        }

        public async Task RunAsync(string name, Func<Task<string>> look)
        {
            try
            {
                Console.WriteLine($"ok    {name,-10} {await look()}");
            }
            catch (Exception e) when (e is CommandException or IOException || Outcome.Database(e) is not null)
            {
                AllWell = false;
                Console.WriteLine($"WRONG {name,-10} {(Outcome.Database(e) is { } database ? Outcome.Mend(database) : e.Message)}");
            }
        }
    }
}
