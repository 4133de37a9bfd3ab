using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;

namespace FleetWake.Logbook.Tests.People;

/// <summary>The whole table once more, written out: role x verb x matter. A change of it is a decision, made in two places.</summary>
public sealed class Who_may_do_what
{
    // M mechanic, O operator, G manager, N analyst, A administrator; a dot where that role may not.
    private const string Table =
        """
        matter       read   record decide
        fleet        MOGNA  .....  .....
        dock_work    MOGNA  MOG.A  .OG.A
        hire         MOGNA  MOG.A  MOG.A
        register     MOGNA  .OG.A  .OG.A
        stock        MOGNA  MOG.A  .OG.A
        money        .OGNA  .OG.A  ..G.A
        questions    MOGNA  .....  .OG.A
        rules        MOGNA  .....  ..G.A
        quarantine   .OG.A  .....  .OG.A
        import       .OG.A  .....  .OG.A
        export       .OGNA  .....  .....
        reports      .OGNA  .....  ..G.A
        people       ..G.A  .....  ....A
        devices      .OG.A  .....  .OG.A
        keys         ....A  .....  ....A
        """;

    private static readonly Role[] Roles = [Role.Mechanic, Role.Operator, Role.Manager, Role.Analyst, Role.Administrator];

    [Fact]
    public void Every_role_verb_and_matter_is_as_written_here()
    {
        var rows = Table.Split('\n', StringSplitOptions.TrimEntries).Skip(1).Select(r => r.Split(' ', StringSplitOptions.RemoveEmptyEntries)).ToList();
        Assert.Equal(Words.All(typeof(Matter)), rows.Select(r => r[0]));
        Assert.Equal(Enum.GetValues<Role>(), Roles);
        foreach (var row in rows)
        {
            Assert.True(Words.TryRead<Matter>(row[0], out var matter));
            foreach (var verb in Enum.GetValues<Verb>())
                Assert.Equal(row[1 + (int)verb], new string([.. Roles.Select((r, i) => Permissions.Allow(r, verb, matter) ? "MOGNA"[i] : '.')]));
        }
    }

    [Fact]
    public void What_sending_a_record_is_stands_for_every_kind_of_record() =>
        Assert.All(RecordKind.All, kind => Permissions.Of(kind));

    [Theory]
    [InlineData("strike_reported", "MOG.A")]
    [InlineData("inspected", "MOG.A")]
    [InlineData("back_in_hire", "MOG.A")]
    [InlineData("part_used", "MOG.A")]
    [InlineData("boat_registered", ".OG.A")]
    [InlineData("contradiction_settled", ".OG.A")]
    [InlineData("device_enrolled", ".OG.A")]
    [InlineData("quarantined_entry_released", ".OG.A")]
    [InlineData("price_set", "..G.A")]
    [InlineData("claim_closed", "..G.A")]
    [InlineData("hire_states_set", "..G.A")]
    [InlineData("schedule_set", "..G.A")]
    [InlineData("role_given", "....A")]
    public void Who_may_send_a_record(string kind, string who)
    {
        var (verb, matter) = Permissions.Of(RecordKind.Find(kind)!);
        Assert.Equal(who, new string([.. Roles.Select((r, i) => Permissions.Allow(r, verb, matter) ? "MOGNA"[i] : '.')]));
    }

    [Fact]
    public void A_mechanic_takes_back_what_was_done_at_the_dock_and_not_what_the_office_decided()
    {
        var kind = RecordKind.Find(Retract.Kind)!;
        Assert.True(Permissions.Allow(Role.Mechanic, kind, Retract.Example));
        Assert.False(Permissions.Allow(Role.Mechanic, kind, Retract.Example with { Boat = null, Office = true }));
        Assert.True(Permissions.Allow(Role.Manager, kind, Retract.Example with { Boat = null, Office = true }));
    }

    [Theory]
    [InlineData("short", PasswordFault.Short)]
    [InlineData("elevenchars", PasswordFault.Short)]
    [InlineData("aaaaaaaaaaaaaaaa", PasswordFault.Monotonous)]
    [InlineData("121212121212", PasswordFault.Monotonous)]
    [InlineData("SkerryBayHire", PasswordFault.Known)]
    [InlineData("kit-marlow-2026", PasswordFault.Known)]
    [InlineData("skerry bay hire kit", PasswordFault.Known)]
    [InlineData("twelve chars", null)]
    [InlineData("Kit likes wet varnish", null)]
    [InlineData("høje bølger slår", null)]
    public void A_password_is_long_and_not_what_anybody_would_try_first(string password, PasswordFault? fault) =>
        Assert.Equal(fault, PasswordRule.Of(password, "Kit Marlow", "kit.marlow@skerry-bay.example", "Skerry Bay Hire"));

    [Fact]
    public void Nobody_has_to_hash_a_novel() => Assert.Equal(PasswordFault.Long, PasswordRule.Of(new string('x', 100) + string.Concat(Enumerable.Range(0, 40))));
}
