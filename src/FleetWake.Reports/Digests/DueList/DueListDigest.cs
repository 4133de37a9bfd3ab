using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Digests.Wear;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.DueList;

/// <summary>Puts what is due into a list for whoever does it. Pure: the day is passed in.</summary>
public static class DueListDigest
{
    /// <summary>Name of the digest in subscriptions, ledgers and headers.</summary>
    public const string Digest = "due-list";

    /// <summary>How far ahead work is listed [days], the day itself included.</summary>
    public const int SoonDays = 7;

    /// <summary>Most tasks that are written out for a dock: mail programs cut a message off at about 100 KB. The rest is counted; the calendar has all.</summary>
    public const int MostTasks = 80;

    /// <summary>The list of a day.</summary>
    /// <param name="operatorName">The operator's name.</param>
    /// <param name="period">A week or a day.</param>
    /// <param name="day">The day on which it is told, in the docks' calendar.</param>
    /// <param name="findings">The boats, in any order.</param>
    /// <param name="names">Names of docks and people, and the office's address.</param>
    /// <param name="policy">The operator's policy; the usual one when left out.</param>
    public static DueListContent Build(string operatorName, string period, DateOnly day, IReadOnlyList<BoatFinding> findings, MailNames names, FleetPolicy? policy = null)
    {
        var name = Phrases.Plain(operatorName);
        var until = day.AddDays(SoonDays - 1);
        var due = Items(day, findings, policy);
        var kept = KeptBoat.Of(findings.Where(f => f.Registered is not null), policy);
        var things = NamedThings.Of(findings);
        var docks = due.Select(d => d.Item.Dock).Concat(kept.Select(k => k.Finding.Registered!.Dock)).Distinct(StringComparer.Ordinal)
            .Select(dock => Dock(names.Dock(dock), [.. due.Where(d => d.Item.Dock == dock)], [.. kept.Where(k => k.Finding.Registered!.Dock == dock)], names, things))
            .OrderBy(d => d.Dock, StringComparer.OrdinalIgnoreCase).ToList();
        var (late, soon) = (due.Count(d => d.Item.Overdue()), due.Count(d => !d.Item.Overdue()));
        return new DueListContent(
            name,
            Phrases.Plain(period),
            day,
            until,
            $"{name}{(docks is [var only] ? $", {only.Dock}" : "")}: {Counted(kept.Count, late, soon)}",
            Sentence(kept.Count, late, soon, until),
            docks,
            [
                "Engine off, key out, lanyard off before anybody touches a propeller.",
                "The owner's manual, local rules and a licensed technician come first. What is done counts when it is recorded.",
            ]);
    }

    /// <summary>Everything that the list and its calendar hold, most overdue first.</summary>
    public static IReadOnlyList<(BoatFinding Finding, DueItem Item)> Items(DateOnly day, IReadOnlyList<BoatFinding> findings, FleetPolicy? policy) =>
    [
        .. findings.Where(f => f.Registered is not null)
            .SelectMany(f => Outlook.Of(f, day, policy).Select(d => (Finding: f, Item: d)))
            .Where(d => d.Item.DaysOverdue > -SoonDays)
            .OrderByDescending(d => d.Item.DaysOverdue).ThenBy(d => d.Item.BoatName, StringComparer.OrdinalIgnoreCase).ThenBy(d => d.Item.Position).ThenBy(d => d.Item.RuleId, StringComparer.Ordinal),
    ];

    private static DueDock Dock(string dock, IReadOnlyList<(BoatFinding Finding, DueItem Item)> due, IReadOnlyList<KeptBoat> kept, MailNames names, NamedThings things)
    {
        // What a strike or a relaunch calls for stands under its duty, so that nobody is told of it twice; what else keeps the boat, as a verdict of take off does, is told here.
        var stay = kept.Where(k => !due.Any(d => d.Finding.Boat == k.Finding.Boat && d.Item.Kind is DutyKind.AfterStrikeInspection or DutyKind.BeforeRelaunch) || k.Reasons.Count > 1).Take(MostTasks).ToList();
        var shown = due.Take(MostTasks).ToList();
        var sections = new List<DueSection>
        {
            new("Stays until released", true, [.. stay.Select(k => Task(k, names, things))]),

            // What a strike calls for comes first: the boat waits for it.
            Section("After a strike", shown, d => d.Kind == DutyKind.AfterStrikeInspection, names),
            Section("Overdue", shown, d => d.Kind is not (DutyKind.AfterStrikeInspection or DutyKind.FirstOutingRetorque) && d.Overdue(), names),
            Section("Re-torque", shown, d => d.Kind == DutyKind.FirstOutingRetorque, names),
            Section("Due this week", shown, d => d.Kind is not (DutyKind.AfterStrikeInspection or DutyKind.FirstOutingRetorque) && !d.Overdue(), names),
        };
        var more = due.Count > MostTasks ? $"; {due.Count - MostTasks} more are in the calendar and in the office" : "";
        return new DueDock(Phrases.Plain(dock), Counted(kept.Count, due.Count(d => d.Item.Overdue()), due.Count(d => !d.Item.Overdue())) + more, [.. sections.Where(s => s.Tasks.Count > 0)]);
    }

    private static DueSection Section(string title, IReadOnlyList<(BoatFinding Finding, DueItem Item)> due, Func<DueItem, bool> takes, MailNames names)
    {
        var tasks = due.Where(d => takes(d.Item)).ToList();
        return new DueSection(title, tasks.Any(t => t.Item.Overdue()), [.. tasks.Select(t => Task(t.Finding, t.Item, names))]);
    }

    private static DueTask Task(KeptBoat kept, MailNames names, NamedThings things) => new(
        Phrases.Plain(kept.Finding.DisplayName()), kept.Sentence(things).TrimEnd('.'), kept.Word == HireWord.Out ? "not for hire" : "look first", "", "", "", Link(kept.Finding.Boat, names));

    private static string Link(string boat, MailNames names) => names.Office is { } office ? new Uri(office, $"office/boats/{Uri.EscapeDataString(boat)}").AbsoluteUri : "";

    private static DueTask Task(BoatFinding finding, DueItem item, MailNames names) => new(
        finding.Positions.FirstOrDefault(p => p.Position == item.Position) is { } position ? Phrases.Name(finding, position) : Phrases.Plain(item.BoatName),
        Phrases.Plain(item.What),
        When(item),
        Phrases.Plain(item.Why),
        item.HoursLeft is { } left ? (left >= 0 ? $"{left:0} h left" : $"{-left:0} h over") : "",
        item.TakenBy is { } by ? $"taken by {Phrases.Plain(names.Person(by))}" : "",
        Link(item.Boat, names));

    private static string When(DueItem item) => item.DaysOverdue switch
    {
        > 0 => $"{item.DueOn:yyyy-MM-dd}, {Phrases.Count(item.DaysOverdue, "day")} overdue",
        0 => $"{item.DueOn:yyyy-MM-dd}, today",
        -1 => $"{item.DueOn:yyyy-MM-dd}, tomorrow",
        _ => $"{item.DueOn:yyyy-MM-dd}, in {Phrases.Count(-item.DaysOverdue, "day")}",
    };

    private static string Counted(int stay, int late, int soon)
    {
        string?[] parts = [stay > 0 ? $"{stay} to release" : null, late > 0 ? $"{late} overdue" : null, soon > 0 ? $"{soon} due" : null];
        return parts.OfType<string>().ToList() is { Count: > 0 } some ? string.Join(", ", some) : "nothing is due";
    }

    private static string Sentence(int stay, int late, int soon, DateOnly until)
    {
        var stays = stay == 0 ? "" : $"{Phrases.Count(stay, "boat")} {(stay == 1 ? "stays" : "stay")} until released. ";
        if (late + soon == 0) return $"{stays}Nothing is due until {until:yyyy-MM-dd}.";
        var overdue = late == 0 ? "Nothing is overdue" : late == 1 ? "1 duty is overdue" : $"{late} duties are overdue";
        return $"{stays}{overdue}; {(soon == 0 ? "nothing more" : soon == 1 ? "1 more" : $"{soon} more")} until {until:yyyy-MM-dd}.";
    }
}
