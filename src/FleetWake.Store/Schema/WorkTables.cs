using Weasel.Postgresql;
using Weasel.Postgresql.Tables;

namespace FleetWake.Store.Schema;

/// <summary>Plain tables that workers claim rows from with SKIP LOCKED.</summary>
internal static class WorkTables
{
    public const string DirtyBoats = FleetStore.SchemaName + ".dirty_boats";
    public const string OutgoingMail = FleetStore.SchemaName + ".outgoing_mail";

    public const string OutgoingHooks = FleetStore.SchemaName + ".outgoing_hooks";

    public const string Nodes = FleetStore.SchemaName + ".nodes";

    public const string FleetFits = FleetStore.SchemaName + ".fleet_fits";

    public const string SignInTries = FleetStore.SchemaName + ".sign_in_tries";

    public const string BrowserKeys = FleetStore.SchemaName + ".browser_keys";

    public const string ImportDrafts = FleetStore.SchemaName + ".import_drafts";

    public const string AlertsSeen = FleetStore.SchemaName + ".alerts_seen";

    public static IReadOnlyList<Table> All { get; } = [MakeDirtyBoats(), MakeOutgoingMail(), MakeOutgoingHooks(), MakeNodes(), MakeFleetFits(), MakeSignInTries(), MakeBrowserKeys(), MakeImportDrafts(), MakeAlertsSeen()];

    private static Table MakeDirtyBoats()
    {
        var table = new Table(Name("dirty_boats"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("boat", "text").AsPrimaryKey();
        table.AddColumn("sequence", "bigint").NotNull();
        table.AddColumn("marked_at", "timestamptz").NotNull();
        table.AddColumn("attempts", "integer").NotNull();
        table.AddColumn("not_before", "timestamptz");
        table.AddColumn("parked_at", "timestamptz");
        table.AddColumn("last_error", "text");
        return table;
    }

    private static Table MakeOutgoingMail()
    {
        var table = new Table(Name("outgoing_mail"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("message", "text").AsPrimaryKey();
        table.AddColumn("recipient", "text").NotNull();
        table.AddColumn("state", "text").NotNull();
        table.AddColumn("attempts", "integer").NotNull();
        table.AddColumn("unclear", "integer").NotNull();
        table.AddColumn("not_before", "timestamptz").NotNull();
        table.AddColumn("last_error", "text");
        table.AddColumn("mime", "bytea").NotNull();

        // What lists of mail show and what its sending goes by. Rows of earlier versions lack them.
        foreach (var column in (string[])["digest", "period", "dock", "subject", "message_id", "host", "again_of"]) table.AddColumn(column, "text");
        foreach (var column in (string[])["issued_at", "until_at", "settled_at"]) table.AddColumn(column, "timestamptz");

        // How many tries beyond the usual were granted where it is not known whether they arrived; none where it is null.
        table.AddColumn("granted", "integer");
        table.Indexes.Add(new IndexDefinition("outgoing_mail_state") { Columns = ["state", "not_before"] });
        table.Indexes.Add(new IndexDefinition("outgoing_mail_message_id") { Columns = ["message_id"] });
        return table;
    }

    private static Table MakeOutgoingHooks()
    {
        var table = new Table(Name("outgoing_hooks"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("alert", "text").AsPrimaryKey();
        table.AddColumn("state", "text").NotNull();
        table.AddColumn("attempts", "integer").NotNull();
        table.AddColumn("not_before", "timestamptz").NotNull();
        table.AddColumn("until_at", "timestamptz").NotNull();

        // Rows of earlier versions lack it.
        table.AddColumn("queued_at", "timestamptz");
        table.AddColumn("last_error", "text");
        table.AddColumn("body", "text").NotNull();
        return table;
    }

    private static Table MakeNodes()
    {
        var table = new Table(Name("nodes"));
        table.AddColumn("node", "text").AsPrimaryKey();
        table.AddColumn("roles", "text").NotNull();
        table.AddColumn("version", "text").NotNull();
        table.AddColumn("started_at", "timestamptz").NotNull();
        table.AddColumn("beat_at", "timestamptz").NotNull();
        return table;
    }

    private static Table MakeFleetFits()
    {
        var table = new Table(Name("fleet_fits"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("through_sequence", "bigint").NotNull();
        table.AddColumn("records", "bigint").NotNull();
        table.AddColumn("looked_at", "timestamptz");
        table.AddColumn("left_out", "text");
        table.AddColumn("failed_at", "timestamptz");
        table.AddColumn("last_error", "text");
        return table;
    }

    private static Table MakeSignInTries()
    {
        var table = new Table(Name("sign_in_tries"));
        table.AddColumn("name", "text").AsPrimaryKey();
        table.AddColumn("wrong", "integer").NotNull();
        table.AddColumn("tried_at", "timestamptz").NotNull();
        table.AddColumn("not_before", "timestamptz");
        return table;
    }

    private static Table MakeBrowserKeys()
    {
        var table = new Table(Name("browser_keys"));
        table.AddColumn("name", "text").AsPrimaryKey();
        table.AddColumn("xml", "text").NotNull();
        table.AddColumn("made_at", "timestamptz").NotNull();
        return table;
    }

    private static Table MakeImportDrafts()
    {
        var table = new Table(Name("import_drafts"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("id", "uuid").AsPrimaryKey();
        table.AddColumn("person", "text").NotNull();
        table.AddColumn("made_at", "timestamptz").NotNull();
        table.AddColumn("done", "integer").NotNull();
        table.AddColumn("draft", "text").NotNull();
        table.AddColumn("bytes", "bytea").NotNull();
        return table;
    }

    private static Table MakeAlertsSeen()
    {
        var table = new Table(Name("alerts_seen"));
        table.AddColumn("operator", "text").AsPrimaryKey();
        table.AddColumn("scope", "text").AsPrimaryKey();
        table.AddColumn("cause", "text").AsPrimaryKey();
        table.AddColumn("seen_at", "timestamptz").NotNull();
        return table;
    }

    private static PostgresqlObjectName Name(string table) => new(FleetStore.SchemaName, table, SchemaUtils.IdentifierUsage.General);
}
