using Weasel.Postgresql;
using Weasel.Postgresql.Tables;

namespace FleetWake.Store.Schema;

/// <summary>Plain tables of the dock's phones. Their rows change a column at a time, from several nodes: a document written back whole would undo what another node just wrote.</summary>
internal static class DockTables
{
    public const string Devices = FleetStore.SchemaName + ".devices";
    public const string EnrolmentCodes = FleetStore.SchemaName + ".enrolment_codes";

    public const string KeptEntries = FleetStore.SchemaName + ".kept_entries";
    public const string Pins = FleetStore.SchemaName + ".dock_pins";
    public const string Signatures = FleetStore.SchemaName + ".dock_signatures";
    public const string Notes = FleetStore.SchemaName + ".entry_notes";
    public const string Photos = FleetStore.SchemaName + ".photos";
    public const string EntryPhotos = FleetStore.SchemaName + ".entry_photos";

    public static IReadOnlyList<Table> All { get; } =
        [MakeDevices(), MakeEnrolmentCodes(), MakeKeptEntries(), MakePins(), MakeSignatures(), MakeNotes(), MakePhotos(), MakeEntryPhotos()];

    private static Table MakeDevices()
    {
        var table = new Table(Name("devices"));
        table.AddColumn("id", "text").AsPrimaryKey();
        table.AddColumn("operator", "text").NotNull();
        table.AddColumn("dock", "text").NotNull();
        table.AddColumn("name", "text").NotNull();
        table.AddColumn("public_key", "text").NotNull();
        table.AddColumn("hash", "text").NotNull();
        table.AddColumn("token_until", "timestamptz").NotNull();
        table.AddColumn("former_hash", "text");
        table.AddColumn("former_until", "timestamptz");
        table.AddColumn("signed_at", "timestamptz");
        table.AddColumn("enrolled_at", "timestamptz").NotNull();
        table.AddColumn("seen_at", "timestamptz");
        table.AddColumn("revoked_at", "timestamptz");
        return table;
    }

    private static Table MakeEnrolmentCodes()
    {
        var table = new Table(Name("enrolment_codes"));
        table.AddColumn("hash", "text").AsPrimaryKey();
        table.AddColumn("operator", "text").NotNull();
        table.AddColumn("dock", "text").NotNull();
        table.AddColumn("name", "text").NotNull();
        table.AddColumn("device", "text").NotNull();
        table.AddColumn("entry", "uuid").NotNull();
        table.AddColumn("made_by", "text").NotNull();
        table.AddColumn("until", "timestamptz").NotNull();
        return table;
    }

    private static Table MakeKeptEntries()
    {
        var table = new Table(Name("kept_entries"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("entry", "uuid").AsPrimaryKey();
        table.AddColumn("kind", "text").NotNull();
        table.AddColumn("raw", "text").NotNull();
        table.AddColumn("hash", "text").NotNull();
        table.AddColumn("device", "text").NotNull();
        table.AddColumn("received_at", "timestamptz").NotNull();
        table.AddColumn("sent_at", "timestamptz");
        table.AddColumn("state", "text").NotNull();
        table.AddColumn("decided_at", "timestamptz");
        table.AddColumn("decided_by", "text");
        table.AddColumn("refusal", "text");
        table.AddColumn("release_entry", "uuid").NotNull();
        return table;
    }

    private static Table MakePins()
    {
        var table = new Table(Name("dock_pins"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("person", "text").AsPrimaryKey();
        table.AddColumn("hash", "text");
        table.AddColumn("start_hash", "text");
        table.AddColumn("start_until", "timestamptz");
        table.AddColumn("tries", "integer").NotNull();
        table.AddColumn("locked_until", "timestamptz");
        return table;
    }

    private static Table MakeSignatures()
    {
        var table = new Table(Name("dock_signatures"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("entry", "uuid").AsPrimaryKey();
        table.AddColumn("person", "text").AsPrimaryKey();
        table.AddColumn("device", "text").AsPrimaryKey();
        table.AddColumn("confirmed_at", "timestamptz").NotNull();
        return table;
    }

    private static Table MakeNotes()
    {
        var table = new Table(Name("entry_notes"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("entry", "uuid").AsPrimaryKey();
        table.AddColumn("text", "text").NotNull();
        table.AddColumn("device", "text").NotNull();
        table.AddColumn("put_at", "timestamptz").NotNull();
        return table;
    }

    private static Table MakePhotos()
    {
        var table = new Table(Name("photos"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("hash", "text").AsPrimaryKey();
        table.AddColumn("jpeg", "bytea").NotNull();
        table.AddColumn("bytes", "integer").NotNull();
        table.AddColumn("width", "integer").NotNull();
        table.AddColumn("height", "integer").NotNull();
        table.AddColumn("made_at", "timestamptz").NotNull();
        return table;
    }

    private static Table MakeEntryPhotos()
    {
        var table = new Table(Name("entry_photos"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("entry", "uuid").AsPrimaryKey();
        table.AddColumn("n", "integer").AsPrimaryKey();
        table.AddColumn("hash", "text").NotNull();
        table.AddColumn("captured_at", "timestamptz");
        table.AddColumn("original_hash", "text");
        table.AddColumn("sent_hash", "text").NotNull();
        table.AddColumn("device", "text").NotNull();
        table.AddColumn("put_at", "timestamptz").NotNull();
        return table;
    }

    private static PostgresqlObjectName Name(string table) => new(FleetStore.SchemaName, table, SchemaUtils.IdentifierUsage.General);
}
