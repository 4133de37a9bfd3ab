using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>How much needs a person, for headline and subject: each number is that of a section below.</summary>
/// <param name="Stay">Boats that stay until released.</param>
/// <param name="Look">Of them those that wait for a look only.</param>
/// <param name="Decide">Boats to decide on.</param>
/// <param name="Questions">Questions of the record.</param>
/// <param name="Overdue">What is overdue.</param>
internal sealed record WearCounts(int Stay, int Look, int Decide, int Questions, IReadOnlyList<DueItem> Overdue)
{
    /// <summary>A sentence.</summary>
    /// <param name="span">This week, this month or today.</param>
    public string Sentence(string span)
    {
        var look = Look == 0 ? "" : Look == Stay ? Stay == 1 ? " (a look)" : " (a look each)" : $" ({Look} of them for a look only)";
        string?[] parts =
        [
            Stay == 0 ? null : $"{Phrases.Count(Stay, "boat")} {(Stay == 1 ? "stays" : "stay")} until released{look}",
            Decide == 0 ? null : Stay > 0 ? $"{Decide} to decide on" : $"{Phrases.Count(Decide, "boat")} to decide on",
            Questions == 0 ? null : $"{Phrases.Count(Questions, "question")} to answer",
        ];
        var thing = Overdue.All(d => d.Kind is DutyKind.AfterStrikeInspection or DutyKind.SixMonthlyInspection or DutyKind.BeforeRelaunch)
            ? (One: "inspection", Many: "inspections")
            : (One: "duty", Many: "duties");
        var late = Overdue.Count == 0 ? "" : $"; {(Overdue.Count == 1 ? $"1 {thing.One} is overdue" : $"{Overdue.Count} {thing.Many} are overdue")}";
        var said = parts.OfType<string>().ToList();
        return $"{(said.Count == 0 ? $"Nothing to decide {span}" : string.Join(", ", said))}{late}.";
    }

    /// <summary>The same for a subject.</summary>
    public string Short()
    {
        string?[] parts =
        [
            Stay == 0 ? null : $"{Stay} {(Stay == 1 ? "stays" : "stay")}",
            Decide == 0 ? null : $"{Decide} to decide",
            Questions == 0 ? null : Phrases.Count(Questions, "question"),
            Overdue.Count == 0 ? null : $"{Overdue.Count} overdue",
        ];
        return parts.OfType<string>().ToList() is { Count: > 0 } said ? string.Join(", ", said) : "nothing to decide";
    }
}
