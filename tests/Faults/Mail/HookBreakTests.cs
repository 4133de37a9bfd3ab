using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using FleetWake.Tests.Kit;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>An alert whose handing over breaks in a way that nobody thought of.</summary>
public sealed class HookBreakTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_waits_like_any_other_that_was_not_taken_and_is_not_left_half_sent()
    {
        await using var source = NpgsqlDataSource.Create(await postgres.NewDatabaseAsync("hookbreak", Ct));
        using var store = FleetStore.Open(source);
        var (time, hooks) = (TimeProvider.System, new AlertHooks(store, source, TimeProvider.System));
        var card = await new FleetOperators(store, time).OpenAsync("skerry-bay", "Skerry Bay Hire", "Pacific/Auckland", Ct);
        await hooks.SetAsync(card, new Uri("https://hook.example/"), null, Ct);
        await using (var session = store.LightweightSession(card.Id))
        {
            hooks.Queue(session, card.Id, "a-1", "{}");
            await session.SaveChangesAsync(Ct);
        }

        using var sender = new HookSender(hooks, new HookPost(time, (_, _) => throw new InvalidOperationException("nobody thought of it")), time, NullLogger<HookSender>.Instance);
        Assert.True(await sender.SendOneAsync(Ct));
        var one = Assert.Single(await hooks.ListAsync(card.Id, 10, Ct));
        Assert.Equal(("a-1", MailState.Deferred, 1, "nobody thought of it"), (one.Alert, one.State, one.Attempts, one.Why));
        Assert.NotNull(one.NextAt);
    }
}
