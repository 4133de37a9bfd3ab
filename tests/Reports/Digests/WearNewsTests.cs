using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Advice;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Office;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Wear;

namespace FleetWake.Reports.Tests.Digests;

/// <summary>What the weekly digest tells beside margins: what changes Monday, what waiting costs, what changed, what the record lacks.</summary>
public sealed class WearNewsTests
{
    private static readonly OfficeRecord Priced = OfficeRecord.Of(FactLog.Empty(StreamName.Operator)) with
    {
        Prices =
        [
            new Price(PricedThing.HireDay, null, new Money(140m, "DKK"), SkerryBay.Monday.AddDays(-100)),
            new Price(PricedThing.LabourHour, null, new Money(90m, "DKK"), SkerryBay.Monday.AddDays(-100)),
            new Price(PricedThing.ShopRepitch, null, new Money(1450.5m, "DKK"), SkerryBay.Monday.AddDays(-100)),
        ],
    };

    [Fact]
    public void A_blocked_boat_changes_Monday_with_what_releases_it_in_minutes_and_lost_hire()
    {
        var rows = Build(new WearNews { Office = Priced, Pages = new Uri("https://fleet.example/") }, SkerryBay.StruckBoat()).Monday;
        var row = Assert.Single(rows);
        Assert.Equal("blocked", row.Kind);
        Assert.Equal(("Razorbill", "stays at the dock: strike on rock (chipped) on 2026-10-02. Released by an inspection dated after the strike with the verdict fit; about 30 min."), (row.Name, row.Sentence));
        Assert.Equal("https://fleet.example/office/boats/boat-razorbill", row.Link);
    }

    [Fact]
    public void Without_prices_of_the_operator_no_cost_is_told_but_that_they_are_not_set()
    {
        var content = Build(WearNews.None, SkerryBay.StruckBoat(), SkerryBay.WornSkiff());
        Assert.Equal("It loses hire: prices not set. Releasing it is about 30 min of work, parts apart.", content.Waiting);
        Assert.Equal("Cost of waiting: prices not set (shop work, a new prop).", Assert.Single(content.Decisions).Waiting);
        Assert.All(content.Decisions, d => Assert.Equal("", d.Link));
    }

    [Fact]
    public void What_the_boats_that_stay_lose_is_told_once_for_all_of_them()
    {
        var content = Build(new WearNews { Office = Priced }, SkerryBay.StruckBoat(), SkerryBay.TakenOff(), SkerryBay.Unregistered());
        Assert.Equal(
            "Of these the 2 registered lose up to 280.00\u00A0DKK of hire a day, 1,960.00\u00A0DKK a week. Releasing them is about 1 h 30 min of work (135.00\u00A0DKK), parts apart.",
            content.Waiting);
        Assert.Equal("", Build(new WearNews { Office = Priced }, SkerryBay.Quiet()).Waiting);
    }

    [Fact]
    public void Waiting_with_wear_may_cost_what_a_new_prop_is_dearer_than_shop_work_by_the_operators_own_prices()
    {
        string Waiting(params Price[] prices) => Assert.Single(Build(new WearNews { Office = Priced with { Prices = prices } }, SkerryBay.WornSkiff()).Decisions).Waiting;
        Price Of(PricedThing what, decimal amount, string? item = null, string currency = "DKK") => new(what, item, new Money(amount, currency), SkerryBay.Monday.AddDays(-100));
        Assert.Equal("Cost of waiting: prices not set (a new prop); shop work is 1,450.50\u00A0DKK.", Waiting(Of(PricedThing.ShopRepitch, 1450.5m)));
        Assert.Equal("Cost of waiting: up to 549.50\u00A0DKK, a new prop (2,000.00\u00A0DKK) in place of shop work (1,450.50\u00A0DKK).", Waiting(Of(PricedThing.ShopRepitch, 1450.5m), Of(PricedThing.NewProp, 2000m)));

        // Priced by shop and by size only: from the least to the most.
        Assert.Equal(
            "Cost of waiting: up to 1,100.00\u00A0DKK, a new prop (1,800.00 to 2,100.00\u00A0DKK) in place of shop work (1,000.00 to 1,200.00\u00A0DKK).",
            Waiting(Of(PricedThing.ShopRepitch, 1200m, "a-shop"), Of(PricedThing.ShopRepitch, 1000m, "b-shop"), Of(PricedThing.NewProp, 1800m, "12x11"), Of(PricedThing.NewProp, 2100m, "14x13")));
        Assert.StartsWith("Cost of waiting: none by your prices", Waiting(Of(PricedThing.ShopRepitch, 1450m), Of(PricedThing.NewProp, 900m)), StringComparison.Ordinal);
        Assert.Equal("Cost of waiting: a new prop (200.00\u00A0EUR) in place of shop work (1,450.00\u00A0DKK).", Waiting(Of(PricedThing.ShopRepitch, 1450m), Of(PricedThing.NewProp, 200m, null, "EUR")));
        Assert.Contains("no price on record", Assert.Single(Build(WearNews.None, SkerryBay.LuggingBoat()).Decisions).Waiting, StringComparison.Ordinal);
    }

    [Fact]
    public void A_boat_that_is_laid_up_loses_no_hire_and_is_counted_alike_everywhere()
    {
        var laidUp = SkerryBay.StruckBoat() with { LayUp = new LayUpCard(SkerryBay.Monday.AddDays(-20), null, null, []) };
        var content = Build(new WearNews { Office = Priced }, laidUp, SkerryBay.TakenOff());
        Assert.Equal("Dipper", Assert.Single(content.Monday).Name);
        Assert.StartsWith("1 boat stays until released.", content.Headline, StringComparison.Ordinal);
        Assert.Empty(content.Decisions);
        Assert.Equal("Laid up, and not to go out before something is settled: Razorbill.", content.LaidUp);
    }

    [Fact]
    public void A_decision_has_its_chart_beside_it_and_there_are_five_with_the_strip()
    {
        var content = WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, SkerryBay.Fleet());
        var draft = WeeklyWearDraft.Of(content);
        Assert.NotNull(content.Strip);
        Assert.Equal(WeeklyWear.MostCharts, draft.Pictures.Count);
        Assert.Equal("strip", draft.Pictures[^1].Key);
        Assert.Equal(content.Decisions.Select(d => d.Chart).Where(c => c.Length > 0), draft.Pictures.SkipLast(1).Select(p => p.Key));
    }

    [Fact]
    public void What_changed_since_the_edition_before_is_told_and_nothing_of_before()
    {
        var content = Build(new WearNews { Since = SkerryBay.Monday.AddDays(-7) }, SkerryBay.WornSkiff(), SkerryBay.TakenOff());
        Assert.Contains(content.Changes, c => c.Contains("Dipper (take off)", StringComparison.Ordinal));
        Assert.DoesNotContain(content.Changes, c => c.StartsWith("Prop fitted", StringComparison.Ordinal));
        Assert.Empty(Build(WearNews.None, SkerryBay.WornSkiff()).Changes);
        Assert.Equal(["Nothing new is on record since 2026-11-15."], Build(new WearNews { Since = SkerryBay.Monday.AddDays(-1) }, SkerryBay.Quiet()).Changes);
    }

    [Fact]
    public void What_was_received_after_the_edition_before_is_told_also_when_it_happened_on_that_ones_day_or_earlier_and_nothing_is_told_twice()
    {
        var (struck, off) = (SkerryBay.StruckBoat(), SkerryBay.TakenOff() with { Hold = new HoldCard(SkerryBay.Monday.AddDays(-7), Logbook.Hire.OutOfHireReason.Office) });
        struck = struck with { Positions = [struck.Positions[0] with { Struck = [Struck(71, -7), Struck(72, -7), Struck(73, -9)] }] };
        var news = new WearNews { Since = SkerryBay.Monday.AddDays(-7), Received = [Got(72, struck, -7), Got(73, struck, -9), Got(90, off, -7)] };
        var changes = Build(news, struck, off).Changes;
        Assert.Equal(["Struck: Razorbill (chipped, 2026-11-09), Razorbill (chipped, 2026-11-07).", "Taken out of hire: Dipper."], changes);

        static StruckCard Struck(int n, int days) => new(SkerryBay.Id(n), SkerryBay.Monday.AddDays(days), Logbook.Strikes.StrikeSeverity.Chipped, null, []);
        static Store.Histories.ReceivedRecord Got(int n, BoatFinding boat, int days) => new(SkerryBay.Id(n), boat.Boat, SkerryBay.Monday.AddDays(days));
    }

    [Fact]
    public void Boats_that_had_no_trial_for_ninety_days_are_counted_and_named()
    {
        var old = SkerryBay.Boat("Knot", new Fitted(5000, 6000, Rpm: [5500, 5510, 5505], FirstHours: 20, Every: 10) { EveryDays = 60, LookedAt = SkerryBay.Monday.AddDays(-10) }.Position());
        Assert.DoesNotContain(Build(WearNews.None, SkerryBay.Quiet()).DataQuality, l => l.Contains("no trial", StringComparison.Ordinal));
        Assert.DoesNotContain(Build(WearNews.None, old).DataQuality, l => l.Contains("no trial", StringComparison.Ordinal)); // 60 days ago
        var content = WeeklyWear.Build("x", "2026-W52", SkerryBay.Monday.AddDays(60), [old, SkerryBay.Quiet()]);
        Assert.Contains("1 boat has had no trial for 90 days: Knot.", content.DataQuality);
    }

    [Fact]
    public void A_new_prop_takes_no_trial_off_the_record()
    {
        var changed = SkerryBay.Boat("Knot", SkerryBay.Quiet().Positions[0] with { Mounting = SkerryBay.Quiet().Positions[0].Mounting! with { Trials = [] } });
        var news = new WearNews { Since = SkerryBay.Monday.AddDays(-7) };
        changed = changed with { Registered = changed.Registered! with { RegisteredOn = SkerryBay.Monday.AddDays(-300) } };
        Assert.Contains(Build(news, changed).DataQuality, l => l.Contains("no trial for 90 days: Knot", StringComparison.Ordinal));
        changed = changed with { LastTrials = [new TrialDay(SkerryBay.Id(60), SkerryBay.Monday.AddDays(-3))] };
        Assert.DoesNotContain(Build(news, changed).DataQuality, l => l.Contains("no trial", StringComparison.Ordinal));
        Assert.Contains("1 trial of 1 boat.", Build(news, changed).Changes);
    }

    [Fact]
    public void Strikes_cluster_at_a_dock_when_chance_would_seldom_heap_them_there()
    {
        // Binomial tail, worked by hand: all 3 of 3 at a dock with a quarter of the boats, (1/4)^3 = 0.0156; all 3 at one with half of them, 0.125.
        Assert.Equal(0.015625, DockStrikes.Tail(3, 3, 0.25), 12);
        Assert.Equal(0.125, DockStrikes.Tail(3, 3, 0.5), 12);
        Assert.Equal(1, DockStrikes.Tail(5, 0, 0.3), 12);
        BoatFinding At(string name, string dock, int strikes) => SkerryBay.Quiet(name) is var quiet ? quiet with
        {
            Registered = quiet.Registered! with { Dock = dock },
            Positions = [quiet.Positions[0] with { Struck = [.. Enumerable.Range(0, strikes).Select(n => new StruckCard(SkerryBay.Id((name[0] * 10) + n), SkerryBay.Monday.AddDays(-n), Logbook.Strikes.StrikeSeverity.Chipped, null, []))] }],
        } : quiet;
        var rows = Build(WearNews.None, At("Auk", "reef", 3), At("Brant", "bay", 0), At("Coot", "bay", 0), At("Diver", "bay", 0)).Monday;
        Assert.Contains(rows, r => r is { Kind: "strikes" } && r.Sentence.StartsWith("3 of the fleet's 3 strikes", StringComparison.Ordinal));
        Assert.DoesNotContain(Build(WearNews.None, At("Auk", "reef", 2), At("Brant", "bay", 1), At("Coot", "bay", 0)).Monday, r => r.Kind == "strikes");
    }

    [Fact]
    public void A_docks_own_reader_is_told_that_strikes_cluster_there_and_nothing_of_another_dock()
    {
        BoatFinding At(string name, string dock, int strikes) => SkerryBay.Quiet(name) is var quiet ? quiet with
        {
            Registered = quiet.Registered! with { Dock = dock },
            Positions = [quiet.Positions[0] with { Struck = [.. Enumerable.Range(0, strikes).Select(n => new StruckCard(SkerryBay.Id((name[0] * 10) + n), SkerryBay.Monday.AddDays(-n), Logbook.Strikes.StrikeSeverity.Chipped, null, []))] }],
        } : quiet;
        BoatFinding[] all = [At("Auk", "reef", 3), At("Brant", "bay", 0), At("Coot", "bay", 0), At("Diver", "bay", 0)];
        Assert.Contains(Build(new WearNews { Dock = "reef", Everywhere = all }, all[0]).Monday, r => r.Kind == "strikes");
        Assert.DoesNotContain(Build(new WearNews { Dock = "bay", Everywhere = all }, all[1..]).Monday, r => r.Kind == "strikes");
    }

    [Fact]
    public void Spares_to_order_names_what_boats_want_by_their_own_trials_and_never_that_all_is_enough_beside_it()
    {
        var wanted = PropWanted.Of([SkerryBay.WornSkiff(), SkerryBay.Quiet()], []);
        var enough = new SpareNeeds(new SpareQuestion(), SkerryBay.Monday, [], [], 0, 0.8, "By the record, what is in store is enough for 42 days at 95 %.");
        var lines = Build(new WearNews { Spares = enough, PropsWanted = wanted }, SkerryBay.WornSkiff()).SparesToOrder;
        Assert.StartsWith("Gannet (", lines[0], StringComparison.Ordinal);
        Assert.Equal("Besides: by the record, what is in store is enough for 42 days at 95 %.", lines[1]);
        Assert.Equal([enough.Sentence], Build(new WearNews { Spares = enough }, SkerryBay.Quiet()).SparesToOrder);
    }

    [Fact]
    public void Docks_and_people_are_called_by_name()
    {
        var names = new MailNames(new Dictionary<string, string> { ["North slip"] = "The North Slip" }, new Dictionary<string, string> { ["mech-1"] = "Mo Ness" }, null);
        var content = Build(new WearNews { Names = names }, SkerryBay.WornSkiff(), SkerryBay.Quiet("Turnstone", 190));
        Assert.Equal("The North Slip", content.Decisions[0].Dock);
        Assert.Equal("The North Slip", content.Overdue[0].Dock);
        Assert.Equal("The North Slip", content.Trials[0].Dock);
    }

    [Fact]
    public void In_winter_it_speaks_of_the_month()
    {
        var content = WeeklyWear.Build(SkerryBay.Hire, "2026-12", SkerryBay.Monday, [SkerryBay.Quiet()]);
        Assert.Equal("Nothing to decide this month.", content.Headline);
        Assert.Equal("Skerry Bay Hire, December 2026: nothing to decide", content.Subject);
    }

    [Fact]
    public void Everything_stands_in_the_plain_form_as_well()
    {
        var content = Build(new WearNews { Office = Priced, Since = SkerryBay.Monday.AddDays(-7) }, [.. SkerryBay.Fleet()]);
        var plain = string.Join('\n', WeeklyWearDraft.Of(content).Plain.SelectMany(s => s.Lines));
        foreach (var said in content.Monday.Select(m => m.Sentence).Concat(content.Changes).Concat(content.DataQuality).Append(content.Waiting).Append(content.OtherBoats!).Append(content.DueLeftOut!).Concat(content.Decisions.Select(d => d.Waiting)).Concat(content.Decisions.Select(d => d.Exit)))
            Assert.Contains(said, plain, StringComparison.Ordinal);
    }

    private static WeeklyWearContent Build(WearNews news, params BoatFinding[] boats) => WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, boats, news: news);
}
