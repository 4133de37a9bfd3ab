namespace FleetWake.Store.Servers;

/// <summary>The data of a private server: how it is made, and with what settings it runs.</summary>
internal static class Cluster
{
    public const string User = "fleetwake";

    /// <summary>Returns the password. Other users of this machine reach the port too, so loopback alone is no door.</summary>
    public static async Task<string> OpenOrMakeAsync(
        ServerBinaries binaries, ServerFolder folder, ServerLauncher launcher, bool durable, TimeProvider time, CancellationToken ct)
    {
        if (Directory.Exists(folder.Data))
            return await File.ReadAllTextAsync(folder.PasswordFile, ct);

        string password = Secret.Text(40);
        Modes.WritePrivate(folder.PasswordFile, password);
        // Under another name until it is whole, so that a cluster half made is never taken for one.
        string making = folder.Data + ".new";
        await Removal.DeleteAsync(making);
        Modes.MakePrivate(making);
        if (launcher.Account is { } account)
        {
            Libc.GiveTo(folder.PasswordFile, account);
            Libc.GiveTo(making, account);
        }
        string[] arguments =
        [
            "--pgdata", making, "--username", User, "--auth=scram-sha-256", "--pwfile", folder.PasswordFile,
            "--encoding=UTF8", "--locale=C", "--no-instructions", .. durable ? [] : new[] { "--no-sync" },
        ];
        ServerProcess initdb = await ServerProcess.StartAsync(launcher.Prepare(binaries.Program("initdb"), folder.Path, arguments));
        try
        {
            if (await initdb.Ended.WaitAsync(ct) != 0)
                throw new ServerStartException("initdb failed", initdb.Log.ToString());
        }
        catch (OperationCanceledException)
        {
            await initdb.StopAsync(() => Libc.Signal(initdb.Id, Libc.Interrupt), TimeSpan.FromSeconds(5), time);
            throw;
        }
        Directory.Move(making, folder.Data);
        return password;
    }

    /// <summary>Said in full on the command line: it outranks the settings files, which distributions patch.</summary>
    public static IEnumerable<string> Settings(string data, int port, bool durable)
    {
        string[] settings =
        [
            "listen_addresses=127.0.0.1", $"port={port}", "unix_socket_directories=", "ssl=off",
            $"max_connections={LocalServerOptions.Connections}", "timezone=UTC", "log_timezone=UTC", "lc_messages=C",
            "logging_collector=off", "log_destination=stderr",
            .. LocalServerOptions.Safeguards.Select(name => $"{name}={(durable ? "on" : "off")}"),
        ];
        return ["-D", data, .. settings.SelectMany(setting => new[] { "-c", setting })];
    }

    /// <summary>Asks the running server, since what it was told is not yet what it does.</summary>
    public static async Task AssertDurableAsync(string connection, CancellationToken ct)
    {
        foreach (string name in LocalServerOptions.Safeguards)
        {
            if (await Databases.AskAsync(connection, $"SHOW {name}", ct) is var value and not "on")
                throw new InvalidOperationException($"PostgreSQL runs with {name} = {value}; a record could be lost. Refusing to go on.");
        }
    }
}
