namespace FleetWake.Store.Nodes;

/// <summary>How the work stands, in numbers; those of every operator together.</summary>
/// <param name="EventsBehind">Events that the daemon has not folded yet; 100 001 stands for any larger number.</param>
/// <param name="DaemonLag">Age of the oldest of them.</param>
/// <param name="Waiting">Boats that wait to be assessed.</param>
/// <param name="OldestWait">How long the first of them has waited.</param>
/// <param name="Parked">Boats that could not be assessed.</param>
/// <param name="Mails">Messages by state.</param>
/// <param name="Nodes">Nodes on the list.</param>
public sealed record WorkState(
    long EventsBehind, TimeSpan DaemonLag, int Waiting, TimeSpan OldestWait, int Parked, IReadOnlyDictionary<string, int> Mails, IReadOnlyList<Node> Nodes)
{
    /// <summary>From this age of an event on, something keeps the daemon from folding it.</summary>
    public static readonly TimeSpan LongestLag = TimeSpan.FromSeconds(60);

    /// <summary>As far as events are counted.</summary>
    public const long MostCounted = 100_000;

    /// <summary>From this wait on, findings are too slow for the record.</summary>
    public static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(10);

    /// <summary>What is not as it should be, in words; empty when all is well. It names nobody's boats: anybody may ask.</summary>
    public IReadOnlyList<Complaint> Complaints()
    {
        var complaints = new List<Complaint>();
        if (!Nodes.Any(n => n.Does("work") && !n.IsSilent))
            complaints.Add(new("nodes", "no work node is heard of: findings, digests and mail wait for \"fleetwake work\""));
        foreach (var silent in Nodes.Where(n => n.IsSilent))
            complaints.Add(new("nodes", $"{silent.Id} ({silent.Roles}) has not been heard of for {Words(silent.Since)}"));
        if (DaemonLag > LongestLag)
            complaints.Add(new("daemon", $"{(EventsBehind > MostCounted ? $"over {MostCounted}" : EventsBehind)} events are not folded, the oldest for {Words(DaemonLag)}: the log of \"fleetwake work\" says what stops it"));
        if (OldestWait > LongestWait)
            complaints.Add(new("findings", $"{Waiting} boats wait to be assessed, the first for {Words(OldestWait)}: start another \"fleetwake work\""));
        if (Parked > 0)
            complaints.Add(new("findings", $"{Parked} boats could not be assessed: \"fleetwake check\" names them"));
        if (Mails.GetValueOrDefault(Mail.MailState.Unclear) is > 0 and var unclear)
            complaints.Add(new("mail", $"{unclear} messages may or may not have arrived; they are sent again under their old Message-ID, a few times at most"));
        return complaints;
    }

    /// <summary>A length of time as people say it.</summary>
    public static string Words(TimeSpan time) => time switch
    {
        { TotalSeconds: < 120 } => $"{time.TotalSeconds:0} s",
        { TotalMinutes: < 120 } => $"{time.TotalMinutes:0} min",
        { TotalHours: < 48 } => $"{time.TotalHours:0} h",
        _ => $"{time.TotalDays:0} days",
    };
}

/// <summary>Something that is not as it should be.</summary>
/// <param name="Part">Which part: nodes, daemon, findings, mail.</param>
/// <param name="Says">What is wrong, and what to do about it.</param>
public sealed record Complaint(string Part, string Says);
