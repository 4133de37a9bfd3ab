using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Demo;
using FleetWake.Logbook.Entries;

namespace FleetWake.Journey.Tests.Demo;

public class InventedFleetTests
{
    public static TheoryData<DateOnly> Days => [.. DemoDays.All];

    [Fact]
    public void There_are_forty_different_days() => Assert.Equal(40, DemoDays.All.Distinct().Count());

    [Theory]
    [MemberData(nameof(Days))]
    public void The_same_day_gives_the_same_record(DateOnly today) =>
        Assert.Equal(DecidedRecords.Json(DemoDays.Records[today]), DecidedRecords.Json(InventedFleet.Write(today)));

    [Theory]
    [MemberData(nameof(Days))]
    public void Every_record_is_kept(DateOnly today) =>
        Assert.All(Sent(today), x => Assert.True(
            DecidedRecords.Decide(x.Record, x.Batch) is Decision.Keep,
            $"{BatchJson.Write(x.Record)} refused: {DecidedRecords.Decide(x.Record, x.Batch)}"));

    [Theory]
    [MemberData(nameof(Days))]
    public void Nothing_happened_after_the_evening_before(DateOnly today)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(DemoDays.Records[today].Zone);
        var evening = today.AddDays(-1).ToDateTime(new TimeOnly(19, 0));
        foreach (var fact in DecidedRecords.Facts(DemoDays.Records[today]).Select(p => p.Fact))
        {
            Assert.True(fact.Entry.Happened().DateTime <= evening, $"{fact}");
            Assert.True(fact.Entry.Entered() <= fact.Entry.ReceivedAt, $"{fact}");
            Assert.Equal(zone.GetUtcOffset(fact.Entry.Happened()), fact.Entry.Happened().Offset);
        }

        Assert.All(DemoDays.Records[today].Batches, b => Assert.True(b.ReceivedAt.DateTime < today.ToDateTime(TimeOnly.MinValue)));
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void Only_the_repeats_share_an_id_and_they_are_the_same_to_the_letter(DateOnly today)
    {
        var repeats = Sent(today).GroupBy(x => x.Record.Entry!.Id).Where(g => g.Count() > 1).ToList();
        Assert.Equal(3, repeats.Count);
        Assert.All(repeats, g =>
        {
            Assert.Equal(2, g.Count());
            Assert.Single(g.Select(x => BatchJson.Write(x.Record).ToJsonString()).Distinct());
            Assert.Equal(2, g.Select(x => x.Batch).Distinct().Count());
        });
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void Records_name_only_what_is_registered_but_for_one_boat(DateOnly today)
    {
        var records = Sent(today).Select(x => BatchJson.Write(x.Record)).ToList();
        Assert.Equal(["loaner-7", "loaner-7"], Unknown(records, "boat", "boat_registered"));
        Assert.Empty(Unknown(records, "engine", "engine_registered"));
        Assert.Empty(Unknown(records, "prop", "prop_registered"));
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void There_are_as_many_as_a_fleet_of_forty_five_would_have(DateOnly today)
    {
        var record = DemoDays.Records[today];
        Assert.Equal(45, record.Boats);
        Assert.InRange(Sent(today).Count, 2500, 3100);
        Assert.InRange(record.Batches.Count, 200, 700);
        Assert.All(record.Batches, b => Assert.InRange(b.Records.Count, 1, 100));
        Assert.Equal(RecordKind.All.Select(k => k.Name).Order(), Sent(today).Select(x => BatchJson.Kind(x.Record)).Distinct().Order());
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void A_device_counts_its_records_without_a_gap(DateOnly today)
    {
        foreach (var device in Sent(today).GroupBy(x => x.Batch.Device))
        {
            var counts = device.Select(x => x.Record.Entry!.Count!.Value).Distinct().Order().ToList();
            Assert.Equal(Enumerable.Range(1, counts.Count).Select(i => (long)i), counts);
        }
    }

    [Fact]
    public void A_record_reads_back_as_it_was_written()
    {
        foreach (var (record, _) in Sent(DemoDays.Usual))
        {
            var json = BatchJson.Write(record).AsObject();
            json.Remove("kind");
            var back = (ICommand)json.Deserialize(record.GetType(), LogbookJson.Options)!;
            Assert.Equal(BatchJson.Write(record).ToJsonString(), BatchJson.Write(back).ToJsonString());
        }
    }

    [Fact]
    public void People_are_known_by_pseudonyms_only() =>
        Assert.All(Sent(DemoDays.Usual), x => Assert.Matches(@"\A(mech|office)-\d\d\z", x.Record.Entry!.By));

    [Theory]
    [MemberData(nameof(Days))]
    public void What_is_to_be_refused_is_refused_for_its_one_reason(DateOnly today) =>
        Assert.All(DemoDays.Records[today].Refusable, r =>
        {
            var decision = DecidedRecords.Decide(Assert.Single(r.Batch.Records), r.Batch);
            var refusal = Assert.Single(Assert.IsType<Decision.Refuse>(decision).Refusals);
            Assert.Equal((r.Field, r.Reason), (refusal.Field, refusal.Reason));
        });

    private static List<(ICommand Record, DeviceBatch Batch)> Sent(DateOnly today) =>
        [.. DemoDays.Records[today].Batches.SelectMany(b => b.Records.Select(r => (r, b)))];

    private static IEnumerable<string> Unknown(List<JsonNode> records, string field, string registeredBy)
    {
        var known = records.Where(r => (string)r["kind"]! == registeredBy).Select(r => (string)r[field]!).ToHashSet();
        return records.Select(r => (string?)r[field]).OfType<string>().Where(name => !known.Contains(name));
    }
}
