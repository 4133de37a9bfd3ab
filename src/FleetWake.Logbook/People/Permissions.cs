namespace FleetWake.Logbook.People;

/// <summary>What somebody wants to do with a matter.</summary>
public enum Verb
{
    /// <summary>Look at it.</summary>
    Read,

    /// <summary>Add to its record what was seen or done.</summary>
    Record,

    /// <summary>Decide on it.</summary>
    Decide,
}

/// <summary>What a permission is about.</summary>
public enum Matter
{
    /// <summary>Boats, engines, props, mountings, findings, what is due.</summary>
    Fleet,

    /// <summary>Work on a boat: strikes, looks, inspections, mountings, trials, hours, cleaning, parts used.</summary>
    DockWork,

    /// <summary>Whether a boat may go out on hire.</summary>
    Hire,

    /// <summary>Which boats, engines, props and docks there are, and what their manuals say.</summary>
    Register,

    /// <summary>Stock of props and parts, and the shop.</summary>
    Stock,

    /// <summary>Prices, costs and claims.</summary>
    Money,

    /// <summary>Records that contradict each other.</summary>
    Questions,

    /// <summary>Rules of inspection and hire.</summary>
    Rules,

    /// <summary>Entries kept back.</summary>
    Quarantine,

    /// <summary>Bringing in tables.</summary>
    Import,

    /// <summary>Taking the whole record out.</summary>
    Export,

    /// <summary>Schedules and recipients of what is mailed.</summary>
    Reports,

    /// <summary>Who keeps the record, and as what.</summary>
    People,

    /// <summary>Phones at the docks.</summary>
    Devices,

    /// <summary>Keys of programs.</summary>
    Keys,
}

/// <summary>The one table of who may do what: role, verb, matter. Whoever asks, asks here.</summary>
public static partial class Permissions
{
    private const string Nobody = "";

    // One row a matter: who reads, who records, who decides. M mechanic, O operator, G manager, N analyst, A administrator.
    private static readonly Dictionary<Matter, (string Read, string Record, string Decide)> Table = new()
    {
        [Matter.Fleet] = ("MOGNA", Nobody, Nobody),
        [Matter.DockWork] = ("MOGNA", "MOGA", "OGA"),
        [Matter.Hire] = ("MOGNA", "MOGA", "MOGA"),
        [Matter.Register] = ("MOGNA", "OGA", "OGA"),
        [Matter.Stock] = ("MOGNA", "MOGA", "OGA"),
        [Matter.Money] = ("OGNA", "OGA", "GA"),
        [Matter.Questions] = ("MOGNA", Nobody, "OGA"),
        [Matter.Rules] = ("MOGNA", Nobody, "GA"),
        [Matter.Quarantine] = ("OGA", Nobody, "OGA"),
        [Matter.Import] = ("OGA", Nobody, "OGA"),
        [Matter.Export] = ("OGNA", Nobody, Nobody),
        [Matter.Reports] = ("OGNA", Nobody, "GA"),
        [Matter.People] = ("GA", Nobody, "A"),
        [Matter.Devices] = ("OGA", Nobody, "OGA"),
        [Matter.Keys] = ("A", Nobody, "A"),
    };

    /// <summary>Whether a role may do something with a matter.</summary>
    public static bool Allow(Role role, Verb verb, Matter matter)
    {
        var (read, record, decide) = Table[matter];
        var who = verb switch { Verb.Read => read, Verb.Record => record, _ => decide };
        return who.Contains(Letter(role), StringComparison.Ordinal);
    }

    private static char Letter(Role role) => role switch
    {
        Role.Mechanic => 'M',
        Role.Operator => 'O',
        Role.Manager => 'G',
        Role.Analyst => 'N',
        _ => 'A',
    };
}
