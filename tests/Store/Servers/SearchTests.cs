using FleetWake.Store.Servers;

namespace FleetWake.Store.Tests.Servers;

public sealed class SearchTests
{
    private static readonly string[] Debian = ["/usr/lib/postgresql/9", "/usr/lib/postgresql/15", "/usr/lib/postgresql/17"];

    [Fact]
    public void The_newest_of_the_packages_is_taken_by_number_not_by_spelling()
    {
        ServerBinaries? found = ServerBinaries.Find(WithDebianPackages());
        Assert.Equal(new ServerBinaries("/usr/lib/postgresql/17/bin", new Version(17, 2)), found);
    }

    [Fact]
    public void A_package_is_preferred_to_a_program_on_the_path()
    {
        Machine machine = WithDebianPackages() with
        {
            Variable = name => name == "PATH" ? $"/opt/newer{Path.PathSeparator}/usr/bin" : null,
            VersionIn = folder => folder == "/opt/newer" ? new Version(18, 0) : DebianVersion(folder),
        };
        Assert.Equal("/usr/lib/postgresql/17/bin", ServerBinaries.Find(machine)?.Folder);
        Assert.Equal("/opt/newer", ServerBinaries.Find(machine with { Subfolders = _ => [] })?.Folder);
    }

    [Fact]
    public void A_named_folder_is_taken_before_a_newer_package()
    {
        Machine machine = WithDebianPackages() with { Variable = name => name == "FLEETWAKE_PG_BIN" ? "/usr/lib/postgresql/15/bin" : null };
        Assert.Equal("/usr/lib/postgresql/15/bin", ServerBinaries.Find(machine)?.Folder);
    }

    [Fact]
    public void A_named_folder_without_a_server_is_refused_not_passed_over()
    {
        Machine machine = WithDebianPackages() with { Variable = name => name == "FLEETWAKE_PG_BIN" ? "/nowhere" : null };
        var refused = Assert.Throws<ServerNotFoundException>(() => ServerBinaries.Find(machine));
        Assert.Equal("FLEETWAKE_PG_BIN names /nowhere, which holds no PostgreSQL 15 or newer (postgres and initdb).", refused.Message);
    }

    [Theory]
    [InlineData("/opt/homebrew/opt", "/opt/homebrew/opt/postgresql@17", "/opt/homebrew/opt/postgresql@17/bin")]
    [InlineData("/usr/libexec", "/usr/libexec/postgresql17", "/usr/libexec/postgresql17")]
    [InlineData("/usr", "/usr/pgsql-16", "/usr/pgsql-16/bin")]
    public void Packages_of_other_systems_are_found_where_those_put_them(string parent, string package, string programs)
    {
        Machine machine = Server.Bare() with
        {
            Subfolders = folder => folder == parent ? [package] : [],
            VersionIn = folder => folder == programs ? new Version(16, 0) : null,
        };
        Assert.Equal(programs, ServerBinaries.Find(machine)?.Folder);
    }

    [Fact]
    public void Servers_that_are_too_old_do_not_count()
    {
        Machine machine = WithDebianPackages() with { VersionIn = _ => new Version(14, 9) };
        Assert.Null(ServerBinaries.Find(machine));
    }

    private static Machine WithDebianPackages() => Server.Bare("debian") with
    {
        Subfolders = parent => parent == "/usr/lib/postgresql" ? Debian : [],
        VersionIn = DebianVersion,
    };

    private static Version? DebianVersion(string folder) => folder switch
    {
        "/usr/lib/postgresql/9/bin" => new Version(9, 6),
        "/usr/lib/postgresql/15/bin" => new Version(15, 18),
        "/usr/lib/postgresql/17/bin" => new Version(17, 2),
        _ => null,
    };
}
