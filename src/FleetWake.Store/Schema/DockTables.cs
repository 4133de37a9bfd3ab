using Weasel.Postgresql;
using Weasel.Postgresql.Tables;

namespace FleetWake.Store.Schema;

/// <summary>Plain tables of the dock's phones. Their rows change a column at a time, from several nodes: a document written back whole would undo what another node just wrote.</summary>
internal static class DockTables
{
    public const string Devices = FleetStore.SchemaName + ".devices";
    public const string EnrolmentCodes = FleetStore.SchemaName + ".enrolment_codes";

    public static IReadOnlyList<Table> All { get; } = [MakeDevices(), MakeEnrolmentCodes()];

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

    private static PostgresqlObjectName Name(string table) => new(FleetStore.SchemaName, table, SchemaUtils.IdentifierUsage.General);
}
