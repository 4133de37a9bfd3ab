using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;

namespace FleetWake.Demo;

/// <summary>A batch as a device writes it: <c>{"device", "sentAt", "records": [{"kind", ...}]}</c>.</summary>
public static class BatchJson
{
    private static readonly Dictionary<Type, string> Kinds = RecordKind.All.ToDictionary(k => k.CommandType, k => k.Name);

    /// <summary>The batch with its own time of sending.</summary>
    public static JsonObject Write(DeviceBatch batch) => Write(batch, batch.SentAt);

    /// <summary>The batch as if sent at another time by the device's clock.</summary>
    public static JsonObject Write(DeviceBatch batch, DateTimeOffset sentAt) => new()
    {
        ["device"] = batch.Device,
        ["sentAt"] = DockCalendar.Text(sentAt),
        ["records"] = new JsonArray([.. batch.Records.Select(Write)]),
    };

    /// <summary>One record with its kind in front.</summary>
    public static JsonNode Write(ICommand record)
    {
        var fields = JsonSerializer.SerializeToNode(record, record.GetType(), LogbookJson.Options)!.AsObject();
        fields.Insert(0, "kind", Kind(record));
        return fields;
    }

    /// <summary>The kind of a record, e.g. <c>strike_reported</c>.</summary>
    public static string Kind(ICommand record) => Kinds[record.GetType()];
}
