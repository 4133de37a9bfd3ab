using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Text.RegularExpressions;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Nodes;
using FleetWake.Store.Records;
using FleetWake.Store.Telemetry;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Telemetry;

/// <summary>What is measured, under which names, and with which labels.</summary>
public sealed partial class FleetMeterTests(PostgresFixture postgres) : IDisposable
{
    private readonly ConcurrentQueue<(string Name, double Value, string Labels)> heard = new();
    private readonly List<Instrument> instruments = [];
    private readonly MeterListener listener = new();

    public void Dispose() => listener.Dispose();

    [Fact]
    public async Task Records_are_counted_by_kind_and_outcome()
    {
        Listen();
        await using var database = await FleetDatabase.OnAsync(await postgres.NewDatabaseAsync("meter", TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        var recorder = new Recorder(database.Store);
        var kind = RecordKind.Find(RegisterBoat.Kind)!;
        var tern = new RegisterBoat(new Stamp(new Guid(1, 2, 3, new byte[8]), "mech-1", "2026-05-04T08:00:00", "Pacific/Auckland", 1), "metered", "Tern", "old-mole", "Pacific/Auckland", "salt", ["single"]);
        foreach (var command in (RegisterBoat[])[tern, tern, tern with { Name = "Another" }, tern with { Boat = "no id", Entry = tern.Entry! with { Id = new Guid(2, 2, 3, new byte[8]) } }])
            await recorder.TakeAsync("metered", kind, command, new Arrival("dock-1", new DateTimeOffset(2026, 5, 4, 9, 0, 0, TimeSpan.Zero), null), TestContext.Current.CancellationToken);
        foreach (var outcome in (string[])["recorded", "repeated", "conflict", "refused"])
            Assert.Contains(heard, h => h.Name == "fleetwake.records" && h.Value == 1 && h.Labels == $"fleetwake.outcome={outcome} fleetwake.record.kind=boat_registered");
    }

    [Fact]
    public void How_the_work_stands_is_measured_with_every_state_of_mail_also_those_with_none()
    {
        Listen();
        WorkStateGauges.Record(new WorkState(
            7, TimeSpan.FromSeconds(61), 3, TimeSpan.FromMinutes(11), 2, new Dictionary<string, int> { ["sent"] = 5 },
            [new Node("a", "work", "1", default, TimeSpan.Zero), new Node("b", "serve", "1", default, TimeSpan.FromMinutes(1))]));
        Assert.Contains(("fleetwake.daemon.events_behind", 7, ""), heard);
        Assert.Contains(("fleetwake.daemon.lag", 61, ""), heard);
        Assert.Contains(("fleetwake.boats.oldest_wait", 660, ""), heard);
        Assert.Contains(("fleetwake.boats.parked", 2, ""), heard);
        Assert.Contains(("fleetwake.mail.messages", 5, "fleetwake.state=sent"), heard);
        Assert.Contains(("fleetwake.mail.messages", 0, "fleetwake.state=unclear"), heard);
        Assert.Contains(("fleetwake.nodes", 1, "fleetwake.state=silent"), heard);
    }

    [Fact]
    public void Every_instrument_has_a_name_by_the_conventions_a_unit_and_a_sentence()
    {
        Listen();
        FleetMeter.Records.Add(0);
        Assert.True(instruments.Count >= 12);
        Assert.All(instruments, i =>
        {
            Assert.Matches(Name(), i.Name);
            Assert.Matches(@"^(s|\{[a-z]+\})$", i.Unit);
            Assert.EndsWith(".", i.Description, StringComparison.Ordinal);
            // A name must not be the beginning of another's: collectors make trees of them.
            Assert.DoesNotContain(instruments, other => other.Name.StartsWith(i.Name + ".", StringComparison.Ordinal));
        });
    }

    [Fact]
    public void What_is_not_as_it_should_be_is_said_once_each_and_names_no_boat()
    {
        Node alive = new("a", "serve work", "1", default, TimeSpan.Zero);
        var well = new WorkState(5, TimeSpan.FromSeconds(2), 3, TimeSpan.FromSeconds(9), 0, new Dictionary<string, int>(), [alive]);
        Assert.Empty(well.Complaints());
        Assert.Equal("daemon", Assert.Single((well with { DaemonLag = TimeSpan.FromMinutes(2) }).Complaints()).Part);
        Assert.Equal("findings", Assert.Single((well with { OldestWait = TimeSpan.FromHours(1) }).Complaints()).Part);
        Assert.Equal("findings", Assert.Single((well with { Parked = 1 }).Complaints()).Part);
        Assert.Equal("mail", Assert.Single((well with { Mails = new Dictionary<string, int> { ["unclear"] = 1 } }).Complaints()).Part);
        Assert.Contains("for 3 min", Assert.Single((well with { Nodes = [alive, alive with { Since = TimeSpan.FromMinutes(3) }] }).Complaints()).Says, StringComparison.Ordinal);
        Assert.Contains("no work node", Assert.Single((well with { Nodes = [alive with { Roles = "serve" }] }).Complaints()).Says, StringComparison.Ordinal);
    }

    private void Listen()
    {
        listener.InstrumentPublished = (instrument, self) =>
        {
            if (instrument.Meter.Name != FleetMeter.Name) return;
            instruments.Add(instrument);
            self.EnableMeasurementEvents(instrument);
        };
        listener.SetMeasurementEventCallback<long>((i, value, labels, _) => Hear(i, value, labels));
        listener.SetMeasurementEventCallback<int>((i, value, labels, _) => Hear(i, value, labels));
        listener.SetMeasurementEventCallback<double>((i, value, labels, _) => Hear(i, value, labels));
        listener.Start();
    }

    private void Hear(Instrument instrument, double value, ReadOnlySpan<KeyValuePair<string, object?>> labels)
    {
        var words = new List<string>();
        foreach (var label in labels) words.Add($"{label.Key}={label.Value}");
        heard.Enqueue((instrument.Name, value, string.Join(' ', words.Order(StringComparer.Ordinal))));
    }

    [GeneratedRegex(@"^fleetwake(\.[a-z]+(_[a-z]+)*)+$")]
    private static partial Regex Name();
}
