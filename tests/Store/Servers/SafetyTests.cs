using FleetWake.Store.Servers;
using Npgsql;

namespace FleetWake.Store.Tests.Servers;

public sealed class SafetyTests
{
    [Fact]
    public async Task A_durable_server_has_every_safeguard_on()
    {
        await using LocalServer server = await Server.StartAsync(new LocalServerOptions(DataFolder: null, Durable: true));
        Assert.Equal("on", await Server.AskAsync(server, "SHOW fsync"));
        Assert.Equal("on", await Server.AskAsync(server, "SHOW synchronous_commit"));
        Assert.Equal("on", await Server.AskAsync(server, "SHOW full_page_writes"));
        Assert.EndsWith("private cluster, fsync on", server.Source.ToString());
    }

    [Fact]
    public async Task A_server_that_could_lose_a_record_is_not_taken_for_a_durable_one()
    {
        await using LocalServer server = await Server.StartAsync(Server.Quick);
        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => server.AssertDurableAsync(TestContext.Current.CancellationToken));
        Assert.Contains("fsync = off", refused.Message);
        Assert.EndsWith("private cluster, fsync off", server.Source.ToString());
    }

    [Fact]
    public async Task Another_user_of_the_machine_needs_the_password_and_cannot_read_it()
    {
        await using LocalServer server = await Server.StartAsync(Server.Quick);
        var guess = new NpgsqlConnectionStringBuilder(server.ConnectionString("postgres")) { Password = "fleetwake" };

        var refused = await Assert.ThrowsAsync<PostgresException>(() => Server.AskAsync(guess.ConnectionString, "SELECT 1"));

        Assert.Equal(PostgresErrorCodes.InvalidPassword, refused.SqlState);
        if (OperatingSystem.IsWindows())
            return; // no file modes there; its temporary folders are the user's own
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(server.Folder, "password")));
        const UnixFileMode others = UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite;
        Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(server.Folder) & others);
        Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(Path.Combine(server.Folder, "data")) & others);
    }

    [Fact]
    public async Task A_folder_with_somebody_s_files_is_refused_and_left_as_it_was()
    {
        using var place = new TemporaryFolder();
        Directory.CreateDirectory(place.In("papers"));
        await File.WriteAllTextAsync(place.In("papers/letter.txt"), "dear", TestContext.Current.CancellationToken);

        await Assert.ThrowsAsync<InvalidOperationException>(
            () => Server.StartAsync(new LocalServerOptions(place.In("papers"), Durable: false)));

        Assert.Equal([place.In("papers/letter.txt")], Directory.GetFileSystemEntries(place.In("papers")));
    }

    [Fact]
    public async Task A_data_folder_serves_one_program_at_a_time_and_is_kept_for_the_next()
    {
        using var place = new TemporaryFolder();
        var kept = new LocalServerOptions(place.In("cluster"), Durable: false);
        LocalServer first = await Server.StartAsync(kept);
        await Server.AskAsync(first, "CREATE TABLE props (serial text); INSERT INTO props VALUES ('4471') RETURNING serial");

        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => Server.StartAsync(kept));
        Assert.Contains("is in use by another program", refused.Message);
        Assert.Equal("4471", await Server.AskAsync(first, "SELECT serial FROM props"));

        await first.DisposeAsync();
        await using LocalServer next = await Server.StartAsync(kept);
        Assert.Equal("4471", await Server.AskAsync(next, "SELECT serial FROM props"));
    }
}
