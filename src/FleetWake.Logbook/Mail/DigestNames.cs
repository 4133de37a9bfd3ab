namespace FleetWake.Logbook.Mail;

/// <summary>Names of what is mailed, as ledger, templates, List-Id and commands write them.</summary>
public static class DigestNames
{
    /// <summary>What a dock's manager reads once a week.</summary>
    public const string WeeklyWear = "weekly-wear";

    /// <summary>What a mechanic has to do.</summary>
    public const string DueList = "due-list";

    /// <summary>What cannot wait.</summary>
    public const string Alert = "alert";

    /// <summary>The month's figures for whoever reckons with them.</summary>
    public const string AnalystPack = "analyst-pack";

    /// <summary>The question whether an address wants one of them; nobody subscribes to it.</summary>
    public const string Confirmation = "confirmation";

    /// <summary>Every one that somebody can subscribe to.</summary>
    public static IReadOnlyList<string> All { get; } = [WeeklyWear, DueList, Alert, AnalystPack];
}
