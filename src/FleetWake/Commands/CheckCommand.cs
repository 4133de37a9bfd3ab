using System.CommandLine;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Digests.Templates.Checks;
using FleetWake.Reports.Mail;
using FleetWake.Reports.Pictures;
using FleetWake.Settings;
using FleetWake.Store.Fleet;
using FleetWake.Store.Histories;
using FleetWake.Store.Mail;
using FleetWake.Store.Nodes;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using FleetWake.Ticks;
using Npgsql;

namespace FleetWake.Commands;

internal static class CheckCommand
{
    // Older ones were looked at or never will be: they must not hide what is wrong today.
    private static readonly TimeSpan RecentlyRefused = TimeSpan.FromDays(7);

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
        var state = new WorkStateReading(source, new NodeBook(source), ledger);

        var checks = new Checks();
        var server = default(ServerFacts);
        await checks.RunAsync("templates", () => Task.FromResult(Templates(settings)));
        await checks.RunAsync("zones", () => Task.FromResult(Zones()));
        await checks.RunAsync("database", async () =>
        {
            server = await ServerFacts.AskAsync(source, ct);
            return server.Major >= SchemaSteps.OldestServerMajor
                ? $"PostgreSQL {server.Version}"
                : throw new CommandException($"PostgreSQL {server.Version}: {SchemaSteps.OldestServerMajor} or newer is needed");
        });
        await checks.ThenAsync("schema", async () => await SchemaSteps.DifferenceAsync(source, ct) is null && await TickSetup.IsProvisionedAsync(source, ct)
            ? "up to date"
            : throw new CommandException("differs from this version's: run \"fleetwake schema\""));
        await checks.ThenEachAsync(
            ("nodes", async () => Nodes(await state.NowAsync(ct))),
            ("daemon", async () => Daemon(await state.NowAsync(ct))),
            ("findings", async () => Findings(await state.NowAsync(ct), await reading.BacklogAsync(ct))),
            ("fits", async () => Fits(await reading.FitLooksAsync(ct))),
            ("ticks", async () => Ticks(await TickSetup.LateAsync(source, ct), await state.NowAsync(ct))),
            ("mail", async () => Mail(await state.NowAsync(ct), await ledger.RefusedSinceAsync(TimeProvider.System.GetUtcNow() - RecentlyRefused, ct))),
            ("readers", async () => await ReadersAsync(new FleetOperators(store, TimeProvider.System), reading, ct)),
            ("release", async () => await new MailHolds(store, TimeProvider.System).SinceAsync(ct) is { } since
                ? throw new NoteException($"all mail is kept in since {since:u}: \"fleetwake mail release\" lets it go out")
                : "mail goes out"),
            ("durability", () => Task.FromResult(server!.Durable
                ? "what is acknowledged survives a crash"
                : throw new CommandException("fsync, full_page_writes or synchronous_commit is off: an acknowledged record could be lost; set them on"))));
        return checks.AllWell ? 0 : Outcome.Wrong;
    }

    private static string Templates(FleetSettings settings)
    {
        var wrong = TemplateCheck.All(new DigestRenderer(new PngRenderer(), settings.TemplateFolder)).SelectMany(c => c.Faults).ToList();
        return wrong.Count == 0 ? "render" : throw new CommandException($"{wrong[0]}{(wrong.Count > 1 ? $" (and {wrong.Count - 1} more)" : "")}; \"fleetwake templates check\" says how to mend it, and until then a layout that serves stands in");
    }

    private static string Zones()
    {
        if (ZoneData.Version() is not { } version) throw new NoteException("this system does not say how old its time zones are; keep its tzdata up to date, or due times are an hour off somewhere");
        return ZoneData.IsOld(version, TimeProvider.System.GetUtcNow())
            ? throw new NoteException($"tzdata {version} is old: countries change their clocks every year, and due times would be an hour off there; update the system's tzdata")
            : $"tzdata {version}";
    }

    private static string Nodes(WorkState now)
    {
        var silent = now.Nodes.Where(n => n.IsSilent).ToList();
        if (silent.Count > 0)
            throw new CommandException($"not heard of: {string.Join(", ", silent.Select(n => $"{n.Id} ({n.Roles}) for {WorkState.Words(n.Since)}"))}; the others end its database sessions and take its work: look at that process");
        if (now.Nodes.Any(n => n.Does("work"))) return string.Join(", ", now.Nodes.Select(n => $"{n.Id} ({n.Roles}, {n.Version})"));
        return now.EventsBehind > 0 || now.Waiting > 0
            ? throw new CommandException("no work node runs, and records wait to be assessed: start \"fleetwake work\"")
            : throw new NoteException("no work node runs: start \"fleetwake work\" for findings, digests and mail");
    }

    private static string Daemon(WorkState now) => now.DaemonLag > WorkState.LongestLag
        ? throw new CommandException($"{now.EventsBehind} events are not folded, the oldest for {WorkState.Words(now.DaemonLag)}: the log of \"fleetwake work\" says what stops it")
        : $"{now.EventsBehind} events behind";

    private static string Findings(WorkState now, Backlog backlog) => backlog.Parked.Count > 0
        ? throw new CommandException($"could not assess {string.Join(", ", backlog.Parked.Select(p => $"{p.Boat} of {p.Operator} ({p.Error})"))}: mend the record by an amendment, or report the error")
        : now.OldestWait > WorkState.LongestWait
            ? throw new CommandException($"{now.Waiting} boats wait, the first for {WorkState.Words(now.OldestWait)}: start another \"fleetwake work\"")
            : $"{now.Waiting} boats waiting, none parked";

    private static string Fits(IReadOnlyList<(string Operator, FitLook Look)> looks)
    {
        var failed = looks.Where(l => l.Look.FailedAt is not null).ToList();
        if (failed.Count > 0)
            throw new CommandException($"could not fit the fleet of {string.Join(", ", failed.Select(l => $"{l.Operator} ({l.Look.LastError})"))}: its findings stay under the fit before; report the error");
        var without = looks.Where(l => l.Look.LeftOut is not null).ToList();
        return without.Count > 0
            ? throw new NoteException($"left out of the fit: {string.Join(", ", without.SelectMany(l => l.Look.LeftOut!.Split('\n').Select(b => $"{b} of {l.Operator}")))}")
            : $"{looks.Count(l => l.Look.LookedAt is not null)} fleets looked at";
    }

    private static string Ticks(TimeSpan? late, WorkState now) => late switch
    {
        null => throw new NoteException("the scheduler has not run yet: it begins with \"fleetwake work\""),
        { TotalMinutes: > 10 } when now.Nodes.Any(n => n.Does("work")) =>
            throw new CommandException($"the digest tick is late by {WorkState.Words(late.Value)} though a work node runs: restart \"fleetwake work\", its log says why"),
        _ => "the scheduler keeps time",
    };

    /// <summary>Whether each reader has something to read of, and each boat somebody who reads of it.</summary>
    private static async Task<string> ReadersAsync(FleetOperators operators, FleetReading reading, CancellationToken ct)
    {
        var (gaps, count) = (new List<string>(), 0);
        foreach (var card in await operators.AllAsync(ct))
        {
            var readers = await operators.AllRecipientsAsync(card.Id, ct);
            var boats = (await reading.FindingsAsync(card.Id, ct)).Select(f => f.Finding).ToList();
            count += readers.Count(r => r.Subscribed);
            gaps.AddRange(FleetDocks.Gaps(card.Id, readers, FleetDocks.Of(await reading.OfficeAsync(card.Id, ct), boats), boats));
        }

        return gaps.Count > 0 ? throw new NoteException(string.Join("; ", gaps)) : $"{count} subscriptions";
    }

    private static string Mail(WorkState now, int refused)
    {
        var listed = now.Mails.Count == 0 ? "nothing yet" : string.Join(", ", now.Mails.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => $"{c.Value} {c.Key}"));
        if (refused > 0) throw new CommandException($"{listed}: {refused} refused in the last week, given up or come back: \"fleetwake mail list --operator NAME\" or the page of mail says which and why");
        return now.Mails.GetValueOrDefault(MailState.Unclear) > 0
            ? throw new NoteException($"{listed}: an unclear one may or may not have arrived; it is sent again under its old Message-ID, {MailState.MostUnclearAttempts} times at most")
            : listed;
    }
}
