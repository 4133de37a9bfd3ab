namespace FleetWake.Journey.Tests.Docs;

/// <summary>What a client author reads is what the code says.</summary>
public sealed class DocsFromTheCodeTests
{
    [Fact]
    public void The_table_of_kinds_is_the_codes() => DocsFolder.HoldPart("records.md", "kinds", RecordTables.Kinds());

    [Fact]
    public void The_fields_of_each_kind_are_the_codes() => DocsFolder.Hold("record-fields.md", RecordTables.Fields());

    [Fact]
    public void The_table_of_routes_is_the_codes() => DocsFolder.HoldPart("reading.md", "routes", RouteTables.Reading());

    [Fact]
    public void The_table_of_parameters_is_the_codes() => DocsFolder.HoldPart("reading.md", "parameters", RouteTables.Parameters());

    [Fact]
    public void The_table_of_who_may_do_what_is_the_codes() => DocsFolder.HoldPart("people.md", "permissions", PeopleTable.Write());

    [Fact]
    public void The_examples_are_the_codes()
    {
        DocsFolder.Hold(Path.Combine("examples", "1-records.http"), ExampleFiles.Records());
        DocsFolder.Hold(Path.Combine("examples", "2-reading.http"), ExampleFiles.Reading());
    }
}
