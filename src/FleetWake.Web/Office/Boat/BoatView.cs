using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Fleet;

namespace FleetWake.Web.Office.Boat;

/// <summary>All that the page of a boat shows of its finding.</summary>
public sealed record BoatView
{
    /// <summary>Id of the boat.</summary>
    public required string Boat { get; init; }

    /// <summary>Its name for people.</summary>
    public required string Name { get; init; }

    /// <summary>Name of its dock; null while it is not registered.</summary>
    public required string? Dock { get; init; }

    /// <summary>IANA zone of its dock, or of the office.</summary>
    public required string Zone { get; init; }

    /// <summary>The finding.</summary>
    public required BoatFinding Finding { get; init; }

    /// <summary>Whether it goes out.</summary>
    public required FleetState State { get; init; }

    /// <summary>What keeps it.</summary>
    public required HireState Hire { get; init; }

    /// <summary>What keeps it, as a mark that changes with it: a form that lets the boat go tells by it what its reader saw.</summary>
    public string HireMark => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', Hire.Reasons.Select(r => $"{r.Word} {r.Position} {r.Sentence}")))))[..16];

    /// <summary>What else needs a person.</summary>
    public required IReadOnlyList<Attention> Others { get; init; }

    /// <summary>What is due, most overdue first.</summary>
    public required IReadOnlyList<DueItem> Due { get; init; }

    /// <summary>Each position.</summary>
    public required IReadOnlyList<PositionCard> Positions { get; init; }

    /// <summary>Every mounting with its sheet.</summary>
    public required IReadOnlyList<MountingSheet> Mountings { get; init; }

    /// <summary>Every record of it is in the finding.</summary>
    public required bool UpToDate { get; init; }

    /// <summary>How the reader reads numbers.</summary>
    public required Measures Measures { get; init; }

    /// <summary>Names of what its sentences call by id.</summary>
    public Namings Namings { get; init; } = Namings.None;

    /// <summary>A sentence of the logbook's as the reader reads names, dates and numbers.</summary>
    public string Say(string sentence) => Measures.Say(Namings.Say(sentence));

    /// <summary>When the finding was made.</summary>
    public required DateTimeOffset AssessedAt { get; init; }

    internal static BoatView Of(StoredFinding stored, OfficeState office, DateOnly today, string officeZone, IReadOnlyList<MountingSheet> mountings, bool upToDate, Measures measures)
    {
        var finding = stored.Finding;
        var row = FleetRow.Of(stored, office, today, behind: !upToDate);
        return new BoatView
        {
            Boat = finding.Boat,
            Name = row.Name,
            Dock = row.DockName,
            Zone = finding.Registered?.DockZone ?? officeZone,
            Finding = finding,
            State = row.State,
            Hire = row.Hire,
            Others = row.Others,
            Due = Outlook.Of(finding, today, office.Policy),
            Positions = [.. finding.Positions.Select(p => PositionCard.Of(finding, p, measures))],
            Mountings = mountings,
            UpToDate = upToDate,
            Measures = measures,
            AssessedAt = stored.AssessedAt,
        };
    }

    /// <summary>The position, where the boat has more than one.</summary>
    public string? Where(Logbook.Position position) => Positions.Count > 1 || position != Logbook.Position.Single ? Logbook.Entries.Words.Prose(position) : null;
}
