using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Import;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Import;

namespace FleetWake.Journey.Tests.Import;

/// <summary>Whatever a device can send, a sheet can hold.</summary>
public sealed class EveryKindTests : IDisposable
{
    private readonly SheetFolder folder = new();

    public static TheoryData<string> Kinds => [.. RecordKind.All.Select(k => k.Name)];

    public void Dispose() => folder.Dispose();

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_example_of_every_kind_comes_back_from_a_sheet_as_it_went_in(string name)
    {
        var kind = RecordKind.Find(name)!;
        var cells = Templates.Cells(kind, kind.Example).Append(("happened_at", kind.Example.Entry!.HappenedAt!)).ToDictionary();
        var header = Templates.Header(kind);
        Assert.Equal(header.Distinct(), header);
        folder.With(name + ".csv", string.Join(';', header), string.Join(';', header.Select(c => cells.GetValueOrDefault(c))));
        var row = Assert.Single(folder.Read());
        Assert.Empty(row.Bad);
        Assert.Equal(Fields(kind, kind.Example), Fields(kind, row.Command!));
    }

    [Fact]
    public void Templates_hold_every_kind_and_leave_what_is_there()
    {
        folder.With(SheetFolder.Strikes, "mine");
        Assert.Equal((RecordKind.All.Count - 1, 1), Templates.Write(folder.Path));
        Assert.Equal("mine\n", File.ReadAllText(Path.Combine(folder.Path, SheetFolder.Strikes)));
        File.Delete(Path.Combine(folder.Path, SheetFolder.Strikes));
        Assert.Empty(folder.Read());
    }

    private static string Fields(RecordKind kind, ICommand command)
    {
        var node = JsonSerializer.SerializeToNode(command, kind.CommandType, LogbookJson.Options)!.AsObject();
        node.Remove("entry");
        return node.ToJsonString();
    }
}
