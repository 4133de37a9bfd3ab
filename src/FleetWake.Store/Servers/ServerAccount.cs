namespace FleetWake.Store.Servers;

/// <summary>The user that runs postgres for us when we are root, which postgres refuses to be.</summary>
internal sealed record ServerAccount(uint Uid, uint Gid)
{
    public static ServerAccount? ForThisProcess() =>
        OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess ? In(File.ReadLines("/etc/passwd")) : null;

    /// <summary>postgres, where the package made it; else nobody, whom every system has.</summary>
    private static ServerAccount In(IEnumerable<string> passwd)
    {
        var users = passwd
            .Select(line => line.Split(':'))
            .Where(user => user.Length >= 4)
            .ToLookup(user => user[0], user => new ServerAccount(uint.Parse(user[2]), uint.Parse(user[3])));
        return users["postgres"].Concat(users["nobody"]).FirstOrDefault()
            ?? throw new InvalidOperationException("postgres does not run as root, and there is neither a user postgres nor a user nobody.");
    }
}
