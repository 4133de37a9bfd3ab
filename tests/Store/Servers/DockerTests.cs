using System.Diagnostics;
using FleetWake.Store.Servers;

namespace FleetWake.Store.Tests.Servers;

/// <summary>
/// Whether a container is tried. The engines here are sockets that answer like one, or do not; a container itself needs a
/// real engine, and these tests need none.
/// </summary>
public sealed class DockerTests : IDisposable
{
    private readonly TemporaryFolder _place = new();
    private readonly List<string> _said = [];

    public void Dispose() => _place.Dispose();

    private string Socket => _place.In("docker.sock");

    [Fact]
    public async Task An_engine_that_answers_nothing_is_passed_over_within_two_seconds()
    {
        using var hung = StubRegistry.OnSocket(Socket, _ => null);
        var watch = Stopwatch.StartNew();

        await RefusedAsync(DockerOnly, "no Docker engine answers");

        Assert.InRange(watch.Elapsed.TotalSeconds, 1.9, 15);
        Assert.Equal(["/_ping"], hung.Asked);
    }

    [Fact]
    public async Task A_socket_on_which_nobody_listens_is_no_engine() => await RefusedAsync(DockerOnly, "no Docker engine answers");

    [Fact]
    public async Task An_engine_that_is_ill_is_no_engine()
    {
        using var ill = StubRegistry.OnSocket(Socket, _ => new StubRegistry.Reply(500, [], 0));
        await RefusedAsync(DockerOnly, "no Docker engine answers");
    }

    [Fact]
    public async Task An_engine_that_answers_but_runs_no_container_says_why()
    {
        using var engine = StubRegistry.OnSocket(Socket, path => path == "/_ping"
            ? new StubRegistry.Reply(200, "OK"u8.ToArray(), 2)
            : new StubRegistry.Reply(500, "no space left on device"u8.ToArray(), 23));

        var refused = await Assert.ThrowsAsync<ServerNotFoundException>(() => OpenAsync(DockerOnly));

        Assert.StartsWith("FLEETWAKE_PG_SOURCE asks for PostgreSQL from docker, but the container did not start (", refused.Message);
        Assert.Equal([$"Starting the image postgres:17 in Docker at unix://{Socket}."], _said);
        Assert.NotEqual(["/_ping"], engine.Asked);
    }

    [Fact]
    public async Task Docker_host_when_set_is_the_only_engine_asked()
    {
        using var other = StubRegistry.OnSocket(Socket, _ => new StubRegistry.Reply(200, "OK"u8.ToArray(), 2));
        Machine machine = DockerOnly with
        {
            Variable = name => name switch
            {
                "FLEETWAKE_PG_SOURCE" => "docker",
                "DOCKER_HOST" => "ssh://somewhere.else",
                _ => null,
            },
        };
        await RefusedAsync(machine, "no Docker engine answers");
        Assert.Empty(other.Asked);
    }

    [Fact]
    public async Task A_kept_data_folder_is_not_put_into_a_container()
    {
        var kept = new LocalServerOptions(_place.In("data"), Durable: false);
        var refused = await Assert.ThrowsAsync<ServerNotFoundException>(() => DatabaseServer.OpenAsync(
            DockerOnly, kept, _said.Add, TimeProvider.System, TestContext.Current.CancellationToken));
        Assert.EndsWith("but a container keeps no data folder.", refused.Message);
    }

    [Fact]
    public async Task Unless_it_was_asked_for_the_search_goes_on_after_it_and_says_so()
    {
        var refused = await Assert.ThrowsAsync<ServerNotFoundException>(() => OpenAsync(Server.Bare("debian")));
        Assert.Equal("PostgreSQL 15 or newer was not found; install it with: sudo apt-get install -y postgresql", refused.Message);
        Assert.Equal(
        [
            "PostgreSQL from npm: there is no package for this kind of machine.",
            "PostgreSQL from docker: no Docker engine answers.",
        ], _said);
    }

    [Fact]
    public async Task A_source_that_does_not_exist_is_refused_by_name()
    {
        Machine machine = Server.Bare("debian") with { Variable = name => name == "FLEETWAKE_PG_SOURCE" ? "podman" : null };
        var refused = await Assert.ThrowsAsync<ServerNotFoundException>(() => OpenAsync(machine));
        Assert.Equal("FLEETWAKE_PG_SOURCE is podman; it can be installed, npm or docker.", refused.Message);
    }

    private async Task RefusedAsync(Machine machine, string why)
    {
        var refused = await Assert.ThrowsAsync<ServerNotFoundException>(() => OpenAsync(machine));
        Assert.Equal($"FLEETWAKE_PG_SOURCE asks for PostgreSQL from docker, but {why}.", refused.Message);
    }

    private Task<DatabaseServer> OpenAsync(Machine machine) =>
        DatabaseServer.OpenAsync(machine, Server.Quick, _said.Add, TimeProvider.System, TestContext.Current.CancellationToken);

    private Machine DockerOnly => Server.Bare("debian") with
    {
        Variable = name => name == "FLEETWAKE_PG_SOURCE" ? "docker" : null,
        DockerSockets = [new Uri($"unix://{Socket}")],
    };
}
